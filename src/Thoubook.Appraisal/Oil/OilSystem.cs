using System.Collections.Concurrent;
using Thoubook.Appraisal.Estimates;
using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Oil;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal.Oil;

/// <summary>
/// The oil system of an engine, worked out from its record: what the gauges will read, where the pressure goes, what to measure next, what a change would do.
/// Pure and immutable; the same record gives the same answers.
/// </summary>
public sealed partial class OilSystem
{
    private const double Revolution = Math.PI / 30;

    private readonly EngineAppraisal _appraisal;
    private readonly OilCircuit _circuit;
    private readonly EngineOil? _oil;
    private readonly IReadOnlyDictionary<FigureName, double> _changes;
    private readonly FigureValues _figures;
    private readonly Lazy<FlowFit?> _fit;
    private readonly ConcurrentDictionary<OilPoint, Lazy<Outcome<OilAnswer>>> _answers = new();
    private readonly Lazy<Outcome<IReadOnlyList<PressureCost>>> _costsAtIdle;

    private OilSystem(EngineAppraisal appraisal, OilCircuit circuit, EngineOil? oil, IReadOnlyDictionary<FigureName, double> changes, OilSystem? before)
    {
        _appraisal = appraisal;
        _circuit = circuit;
        _oil = oil;
        _changes = changes;
        _figures = new FigureValues(appraisal, changes);

        // A trial changes the engine after the test that it was fitted to: the fit is that of the engine as it was.
        _costsAtIdle = new(() => WorkOutCosts(HotIdle));
        _fit = before is null ? new(WorkOutFit) : before._fit;
    }

    public EngineRecord Record => _appraisal.Record;

    /// <summary>The engine, supposed values taken in.</summary>
    public EngineAppraisal Appraisal => _appraisal;

    /// <summary>[SI] What a trial changes a fit by.</summary>
    internal double ChangeOf(FitAppraisal fit) => _figures.ChangeOf(fit);

    public OilCircuit Circuit => _circuit;

    /// <summary>Where the first state of the circuit runs; 600 rev/min and 80 °C where it has none.</summary>
    public OilPoint HotIdle => (_circuit.State(OilState.HotIdle) ?? (_circuit.States is [var first, ..] ? first : null)) is { } state ? PointOf(state) : new OilPoint(600 * Revolution, 353.15);

    /// <summary>The oil system of an engine, or what stands against it.</summary>
    public static Outcome<OilSystem> Of(EngineAppraisal appraisal) => appraisal.Record.Circuit is { Elements.Count: > 0 } circuit
        ? OilOf(circuit.Oil).Then<OilSystem>(oil => new OilSystem(appraisal, circuit, oil, new Dictionary<FigureName, double>(), null))
        : new Problem("no-circuit", "circuit", "nothing", "The engine has no oil circuit yet.", "Answer the questions of the circuit's starter, or write a circuit: section in its engine file.");

    /// <summary>The whole system at one point; those at its states are worked out once.</summary>
    public Outcome<OilAnswer> At(OilPoint point) => point == HotIdle || _circuit.States.Any(s => PointOf(s) == point)
        ? _answers.GetOrAdd(point, p => new(() => WorkOut(p))).Value
        : WorkOut(point);

    private Outcome<OilAnswer> WorkOut(OilPoint point) => Solve(point).Then<OilAnswer>(solved => OilAnswers.Of(this, point, solved));

    /// <summary>Every stated condition, judged; one that cannot be worked out says why.</summary>
    public IReadOnlyList<Outcome<StateAnswer>> States() =>
        [.. _circuit.States.Select(state => At(PointOf(state)).Then<StateAnswer>(answer => new StateAnswer(state, answer, GaugeVerdicts.Of(state, answer, Record.Engine.Confidence))))];

    internal static OilPoint PointOf(OilState state) => new(state.Speed.Si, state.OilTemperature.Si);

    internal Outcome<SolvedCircuit> Solve(OilPoint point) =>
        RunningOil.Of(_oil, point).Then(oil =>
            CircuitSizes.Of(_circuit, _figures, point.OilTemperature).Then(sizes => SolvedCircuit.Of(sizes, point, oil)));

    /// <summary>What a gauge will read, fitted to the flow test that was accepted.</summary>
    /// <param name="gauge">Which.</param>
    /// <param name="solved">Where.</param>
    /// <param name="bands">Of that solution.</param>
    /// <param name="bySlopes">Whether the ends of the band are taken by slopes alone.</param>
    internal GaugeAnswer Gauge(OilGauge gauge, SolvedCircuit solved, GaugeBands bands, bool bySlopes = false)
    {
        var pressure = new Estimate(bands.Centre(gauge.At), Fitted(solved.PressureOf(gauge.At)).Contributions);
        var below = gauge.Height is { } height ? solved.Oil.Density * StandardValues.Gravity * ((_circuit.Node(gauge.At)?.Height?.Si ?? 0) - height.Si) : 0;
        IReadOnlyList<Contribution> shares = gauge.Uncertainty is { Si: > 0 } own
            ? [.. pressure.Contributions, new Contribution(new UncertaintySource(SourceKind.Gauge, $"the {gauge.Name} gauge"), own.Si, double.PositiveInfinity)]
            : pressure.Contributions;
        var reading = new Estimate(pressure.Value + below, shares);
        if (bySlopes)
            return new GaugeAnswer(gauge, reading);
        var doubt = gauge.Uncertainty?.Si ?? 0;
        var (down, up) = bands.Around(gauge.At, reading, doubt);
        return new GaugeAnswer(gauge, reading) { Low = reading.Value - down, High = reading.Value + up, Below = limit => { lock (bands) return bands.Below(gauge.At, reading, doubt, limit); } };
    }

    internal GaugeBands Bands(SolvedCircuit solved) => new(solved, Tested(solved));

    /// <summary>The gauges as defined; where none is, one at the outlet of the first pressure pump.</summary>
    internal IReadOnlyList<OilGauge> Gauges => _circuit.Gauges.Count > 0 || _circuit.Elements.FirstOrDefault(IsPressurePump) is not { } pump
        ? _circuit.Gauges
        : [new OilGauge(new OilGaugeName("pump outlet"), pump.To)];

    internal static bool IsPump(ElementDefinition element) => element.Kind is ElementKind.Pump or ElementKind.GearPump;

    internal static bool IsPressurePump(ElementDefinition element) => IsPump(element) && element.Value("need") is null;

    private static Outcome<EngineOil?> OilOf(OilChoice choice)
    {
        if (!choice.IsSaid)
            return new Outcome<EngineOil?>.Ok(null, []);
        EngineOil? oil;
        if (CircuitCheck.Oil(choice).Select(p => p.Placed).ToList() is { Count: > 0 } wrong)
            return new Outcome<EngineOil?>.Refused(wrong);
        if (choice.Points.Count >= 2)
        {
            var (first, last) = (choice.Points.MinBy(p => p.Temperature.Si)!, choice.Points.MaxBy(p => p.Temperature.Si)!);
            oil = EngineOil.FromTwoPoints(first.Temperature.Si, first.Viscosity.Si, last.Temperature.Si, last.Viscosity.Si);
        }
        else if (!EngineOil.TryGrade(choice.Grade!, out oil, out var nearest))
        {
            return new CircuitProblem(CircuitSection.Oil, "", "grade", new("oil-grade", "", choice.Grade!, "A grade of an open standard, such as SAE 40, SAE 20W-50 or ISO VG 100.", nearest.Count > 0 ? $"Did you mean {string.Join(" or ", nearest)}?" : "Give its viscosity at two temperatures instead.")).Placed;
        }

        if (choice.Density is { } density)
            oil = oil.WithDensity(density.Si);
        if (choice.ShearFactor is { } factor)
            oil = oil.WithShearFactor(factor.Si);
        return new Outcome<EngineOil?>.Ok(oil, []);
    }

    private static ElementDefinition Changed(ElementDefinition element, OilTrial trial)
    {
        var blanked = (element.Blanked || trial.Blanked.Contains(element.Name)) && !trial.Opened.Contains(element.Name);
        var sizes = trial.Sizes.Where(s => s.Element == element.Name).ToList();
        if (blanked == element.Blanked && sizes.Count == 0)
            return element;
        return element with
        {
            Blanked = blanked,
            Values =
            [
                .. element.Values.Where(v => !sizes.Exists(s => s.Key == v.Key)),
                .. sizes.Select(s => new ElementValue(s.Key, new CircuitValue.Given(Exactly(s.Value, element.Shape.Key(s.Key)!.Kind) with { Unit = s.Unit ?? element.UnitOf(s.Key) ?? element.Shape.Key(s.Key)!.UsualUnit }))),
            ],
        };
    }

    internal static Quantity Exactly(double si, QuantityKind kind) => new(si, kind, TradeUnit.Default(kind), QuantityText.Full(si, kind));

    private static Dictionary<FigureName, double> Joined(IReadOnlyDictionary<FigureName, double> was, IReadOnlyDictionary<FigureName, double> more, Func<double, double, double> both)
    {
        var joined = was.ToDictionary();
        foreach (var (name, value) in more)
            joined[name] = joined.TryGetValue(name, out var before) ? both(before, value) : value;
        return joined;
    }

    private IEnumerable<string> Figures() => _appraisal.Dimensions.Concat<FigureAppraisal>(_appraisal.Fits).Select(f => f.Figure.Name.ToString());
}
