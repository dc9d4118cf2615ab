using Thoubook.Appraisal;
using Thoubook.Appraisal.Estimates;
using Thoubook.Appraisal.Oil;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Web.Drawings.Oil;
using Thoubook.Workshop.Oil;

namespace Thoubook.Web.Pages.Oil;

/// <summary>What the oil sheet shows, all of it worked out from one record.</summary>
public sealed class OilSheet
{
    private const int MapSteps = 24;
    private const double MapOilStep = 20;
    private const int MostOils = 6;

    private readonly OilMapRange _range;
    private readonly Lazy<Outcome<OilMap>> _map;

    public OilSheet(EngineAppraisal engine, OilSystem system, string shown)
    {
        Engine = engine;
        System = system;
        Circuit = engine.Record.Circuit!;
        Units = OilUnits.Of(Circuit);
        States = system.States();
        Standing = [.. States.Select(s => s.IsOk(out var state, out _) ? state : null).OfType<StateAnswer>()];
        Idle = Standing.FirstOrDefault(s => s.State == Circuit.States[0]);
        Shown = Standing.FirstOrDefault(s => s.State.Name == shown) ?? Idle ?? (Standing.Count > 0 ? Standing[0] : null);
        _range = OilMapRange.Of(Circuit, system.HotIdle);
        _map = new(() => system.Map(Speeds, Oils));
    }

    public EngineAppraisal Engine { get; }

    public EngineName Name => Engine.Record.Engine.Name;

    public OilSystem System { get; }

    public OilCircuit Circuit { get; }

    public OilUnits Units { get; }

    /// <summary>Every state of the circuit, or why it has no answer.</summary>
    public IReadOnlyList<Outcome<StateAnswer>> States { get; }

    /// <summary>Those that have an answer.</summary>
    public IReadOnlyList<StateAnswer> Standing { get; }

    /// <summary>The first state, by which costs are told; null where it has no answer.</summary>
    public StateAnswer? Idle { get; }

    /// <summary>The one that is drawn.</summary>
    public StateAnswer? Shown { get; }

    public OilPoint Point => System.HotIdle;

    /// <summary>What is asked of the main gauge at hot idle.</summary>
    public GaugeLimit? MainLimit => Idle?.Gauges is [var main, ..] ? main.Limit : null;

    public Outcome<OilMap> Map => _map.Value;

    /// <summary>[K] that of hot idle, and colder and hotter ones as far apart as their lines can be told apart.</summary>
    private IReadOnlyList<double> Oils =>
        [.. _range.Temperatures.Where((t, i) => i == _range.Temperatures.Count - 1 || Math.Abs(Math.IEEERemainder(t - Point.OilTemperature, MapOilStep)) < 1).TakeLast(MostOils)];

    /// <summary>[rad/s] evenly over the range of the map, close enough for a smooth line.</summary>
    private IReadOnlyList<double> Speeds => [.. Enumerable.Range(0, MapSteps + 1).Select(i => _range.Speeds[0] + ((_range.Speeds[^1] - _range.Speeds[0]) * i / MapSteps))];

    /// <summary>[Pa] where a scale of pressures ends that shows all of these.</summary>
    public static double EndOf(IEnumerable<double> pressures) => 1.08 * pressures.DefaultIfEmpty(1).Max();

    /// <summary>Pressure pump driver end float.</summary>
    public static string FigureName(FigureName figure) => $"{Sheets.Said.Title(figure.Part.Leaf)} {Sheets.Said.Words(figure.Local)}";

    /// <summary>A source of doubt; a figure that is not measured is said as a figure.</summary>
    public static string SourceName(UncertaintySource source) =>
        Record.FigureName.TryRead(source.Name, out var figure, out _) ? FigureName(figure) : Sheets.Said.Sentence(source.Name);
}
