using Thoubook.Appraisal.Oil;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;
using Thoubook.Workshop.Oil;

namespace Thoubook.Web.Pages.Oil;

/// <summary>What one oil system has been asked, each thing once: kept beside it until something is written.</summary>
public sealed class OilFindings
{
    public const int DrainHours = 12;

    private const int MapSteps = 24;
    private const double MapOilStep = 20;
    private const int MostOils = 6;

    private readonly Lazy<IReadOnlyList<Outcome<StateAnswer>>> _states;
    private readonly Lazy<Outcome<IReadOnlyList<PressureCost>>> _costs;
    private readonly Lazy<Outcome<IReadOnlyList<MeasureNext>>> _next;
    private readonly Lazy<IReadOnlyList<TrialAnswer>> _usual;
    private readonly Lazy<Outcome<TrialAnswer>> _untouched;
    private readonly Lazy<Outcome<OilMap>> _map;
    private readonly Lazy<Outcome<double>> _drained;

    public OilFindings(OilSystem system)
    {
        System = system;
        var idle = system.HotIdle;
        _states = new(() => system.Circuit.States.Count > 0 ? system.States() : [system.At(idle).Then<StateAnswer>(answer => Unnamed(answer))]);
        _costs = new(() => system.Costs(idle));
        _next = new(() => system.MeasureNext(idle));
        _usual = new(() => [.. system.UsualTrials(idle).Select(t => system.Try(t, idle).IsOk(out var answer, out _) ? answer : null).OfType<TrialAnswer>()]);
        _untouched = new(() => system.Try(new OilTrial("as it stands"), idle));
        _map = new(() => MapOf(system));
        _drained = new(() => system.DrainDown(DrainHours));
    }

    public OilSystem System { get; }

    /// <summary>Every state of the circuit, or why it has no answer.</summary>
    public IReadOnlyList<Outcome<StateAnswer>> States => _states.Value;

    public Outcome<IReadOnlyList<PressureCost>> Costs => _costs.Value;

    public Outcome<IReadOnlyList<MeasureNext>> Next => _next.Value;

    public IReadOnlyList<TrialAnswer> Usual => _usual.Value;

    public Outcome<TrialAnswer> Untouched => _untouched.Value;

    public Outcome<OilMap> Map => _map.Value;

    /// <summary>[m³] through the standing pump overnight.</summary>
    public Outcome<double> Drained => _drained.Value;

    private static Outcome<OilMap> MapOf(OilSystem system)
    {
        var range = OilMapRange.Of(system.Circuit, system.HotIdle);
        var (first, last) = (range.Speeds[0], range.Speeds[^1]);
        return system.Map(
            [.. Enumerable.Range(0, MapSteps + 1).Select(i => first + ((last - first) * i / MapSteps))],
            // That of hot idle, and colder and hotter ones as far apart as their lines can be told apart.
            [.. range.Temperatures.Where((t, i) => i == range.Temperatures.Count - 1 || Math.Abs(Math.IEEERemainder(t - system.HotIdle.OilTemperature, MapOilStep)) < 1).TakeLast(MostOils)]);
    }

    /// <summary>A circuit that names no state is shown at an ordinary hot idle, with nothing asked of it.</summary>
    private static StateAnswer Unnamed(OilAnswer answer)
    {
        var (speed, oil) = (TradeUnit.RevolutionPerMinute, TradeUnit.Celsius);
        var state = new OilState(
            OilState.HotIdle,
            new(answer.Point.Speed, speed.Kind, speed, speed.Show(answer.Point.Speed, 0)),
            new(answer.Point.OilTemperature, oil.Kind, oil, oil.Show(answer.Point.OilTemperature, 0)));
        return new(state, answer, [.. answer.Gauges.Select(g => new GaugeVerdict(g, null, null, 1, "Nothing is asked of it."))]);
    }
}
