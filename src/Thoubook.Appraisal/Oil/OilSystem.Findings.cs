using System.Globalization;
using Thoubook.Appraisal.Estimates;
using Thoubook.Mechanics.Metrology;
using Thoubook.Record;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

public sealed partial class OilSystem
{
    /// <summary>[m] 1.5 thou, what a body is usually lapped by.</summary>
    private const double UsualLapping = 1.5 * 25.4e-6;

    /// <summary>[m] No end float is lapped below this: half a thou.</summary>
    private const double LeastFloat = 0.5 * 25.4e-6;

    /// <summary>[Pa] No gauge shows less.</summary>
    private const double LeastSeen = 1;

    /// <summary>How many costs have a trial of their own.</summary>
    private const int CostsTried = 3;

    private static readonly string[] ThickerOils = ["SAE 20", "SAE 30", "SAE 40", "SAE 50", "SAE 60"];

    /// <summary>What each clearance costs at a point: the gain of the main gauge were it at the middle of its new limits. Worst first.</summary>
    public Outcome<IReadOnlyList<PressureCost>> Costs(OilPoint point) => point == HotIdle ? _costsAtIdle.Value : WorkOutCosts(point);

    private Outcome<IReadOnlyList<PressureCost>> WorkOutCosts(OilPoint point) => Solve(point).Then<IReadOnlyList<PressureCost>>(now =>
    {
        if (Gauges is not [var main, ..])
            return NoGauge;
        var pressure = Fitted(now.PressureOf(main.At));
        var costs = new List<PressureCost>();
        foreach (var uses in now.Sizes.Inputs.Where(i => i.Figure is not null).GroupBy(i => i.Figure!.Name))
        {
            var figure = uses.First().Figure!;
            if (_figures.AsNew(figure.Name, point.OilTemperature) is not { } asNew)
                continue;
            var elements = uses.Select(u => u.Element).Distinct().Select(e => _circuit.Elements[e]).ToList();
            if (!now.With(now.Sizes.Exactly(figure.Name, asNew), figure.Name).IsOk(out var then, out _))
                continue;
            costs.Add(new PressureCost(figure, Seen(Estimate.Sum([(1, Fitted(then.PressureOf(main.At))), (-1, pressure)])), asNew, elements));
        }

        return costs.OrderByDescending(c => c.Cost.Value).ToList();
    });

    /// <summary>A difference so small that it is only what two solutions leave over is none.</summary>
    private static Estimate Seen(Estimate difference) => Math.Abs(difference.Value) < LeastSeen ? new Estimate(0, difference.Contributions) : difference;

    /// <summary>What is not measured, by what it adds to the band of the main gauge at a point. Greatest first.</summary>
    public Outcome<IReadOnlyList<MeasureNext>> MeasureNext(OilPoint point) => At(point).Then<IReadOnlyList<MeasureNext>>(answer =>
    {
        if (answer.Gauges is not [var main, ..])
            return NoGauge;
        var all = main.Pressure.StandardUncertainty;
        var byName = _appraisal.Dimensions.Concat<FigureAppraisal>(_appraisal.Fits).ToDictionary(f => $"limits of {f.Figure.Name}", f => f.Figure.Name);
        return main.Pressure.Contributions
            .Where(c => c.Source.Kind == SourceKind.Drawing && byName.ContainsKey(c.Source.Name))
            .Select(c => new MeasureNext(byName[c.Source.Name], BandOf(Math.Abs(c.Value)), BandOf(Math.Sqrt(Math.Max(0, (all * all) - (c.Value * c.Value))))))
            .OrderByDescending(m => m.Adds)
            .ToList();
    });

    /// <summary>What the doubt of the main gauge hangs on, greatest first.</summary>
    public static IReadOnlyList<DoubtShare> Doubt(OilAnswer answer) => answer.Gauges is [var main, ..]
        ? [.. main.Pressure.Contributions.Where(c => c.Value != 0).Select(c => new DoubtShare(c.Source, BandOf(Math.Abs(c.Value)))).OrderByDescending(s => s.HalfWidth)]
        : [];

    /// <summary>What a trial does to the main gauge at a point.</summary>
    public Outcome<TrialAnswer> Try(OilTrial trial, OilPoint point) => Suppose(trial).Then(supposed => At(point).Then(now => supposed.At(point).Then<TrialAnswer>(then =>
        now.Gauges is [var before, ..] && then.Gauges is [var after, ..]
            ? new TrialAnswer(trial, after, Seen(Estimate.Sum([(1, after.Pressure), (-1, before.Pressure)]))) { Remarks = [.. NotUsed(trial), .. then.Cautions.Where(c => c.Code == OilAnswer.NilGap).Select(c => c.Text)] }
            : NoGauge)));

    /// <summary>The trials that a rebuilder would think of first, from the costs at a point.</summary>
    public IReadOnlyList<OilTrial> UsualTrials(OilPoint point)
    {
        var trials = new List<OilTrial>();
        if (Costs(point).IsOk(out var costs, out _))
        {
            var worst = costs.Where(c => c.Cost.Value > c.Cost.StandardUncertainty && c.Cost.Value > 100).Take(CostsTried).ToList();
            trials.AddRange(worst.Select(c => new OilTrial($"{c.Figure.Name} as new") { ChangeBy = AsNew([c]) }));
            if (worst.Count > 1)
                trials.Add(new OilTrial($"the {InWords(worst.Count)} worst as new") { ChangeBy = AsNew(worst) });
        }

        foreach (var pump in _circuit.Elements.Where(e => e.Kind == ElementKind.GearPump && IsPressurePump(e) && !e.Blanked))
        {
            if (LappedBody(pump, point) is { } change)
                trials.Add(new OilTrial($"the body of {pump.Name} lapped by 1.5 thou") { ChangeBy = change });
        }

        if (_circuit.Oil is { Grade: { } grade, Points.Count: 0 } && Array.FindIndex(ThickerOils, g => g.Equals(grade.Trim(), StringComparison.OrdinalIgnoreCase)) is >= 0 and var place && place + 1 < ThickerOils.Length)
            trials.Add(new OilTrial($"{ThickerOils[place + 1]} in place of {grade}") { Oil = _circuit.Oil with { Grade = ThickerOils[place + 1] } });
        trials.AddRange(_circuit.Elements.Where(e => !e.Blanked && e.Shape.Key("seat-gap") is not null && e.Value("seat-gap") is CircuitValue.Given { Quantity.Si: > 0 })
            .Select(e => new OilTrial($"the seat of {e.Name} lapped tight") { Sizes = [new TrialSize(e.Name, "seat-gap", 0)] }));
        trials.AddRange(_circuit.Elements.Where(e => !e.Blanked && e.Kind == ElementKind.Consumer).Take(2).Select(e => new OilTrial($"{e.Name} blanked") { Blanked = [e.Name] }));
        trials.AddRange(_circuit.Elements.Where(e => e.Blanked).Take(2).Select(e => new OilTrial($"{e.Name} fitted again") { Opened = [e.Name] }));
        return trials;

        static Dictionary<FigureName, double> AsNew(IEnumerable<PressureCost> costs) => costs.ToDictionary(c => c.Figure.Name, c => c.AsNew - c.Figure.Value.Value);
    }

    /// <summary>The main gauge over speeds and temperatures; its band is taken by slopes, but where a valve may open or shut within it.</summary>
    /// <param name="speeds">[rad/s]</param>
    /// <param name="temperatures">[K]</param>
    public Outcome<OilMap> Map(IReadOnlyList<double> speeds, IReadOnlyList<double> temperatures)
    {
        if (Gauges is not [var main, ..])
            return NoGauge;
        var rows = new List<IReadOnlyList<MapPoint>>(temperatures.Count);
        foreach (var temperature in temperatures)
        {
            var row = new MapPoint[speeds.Count];
            SolvedCircuit? before = null;
            for (var i = 0; i < row.Length; i++)
            {
                var point = new OilPoint(speeds[i], temperature);
                if (!(before?.Again(point) ?? Solve(point)).IsOk(out var solved, out var problems))
                    return new Outcome<OilMap>.Refused(problems);
                before = solved;
                var bands = Bands(solved);
                var gauge = Gauge(main, solved, bands, bySlopes: true);
                if (bands.ValvesMayChange(main.At, gauge.Pressure))
                    gauge = Gauge(main, solved, bands);
                row[i] = new MapPoint(gauge.Pressure.Value, gauge.Low, gauge.High);
            }

            rows.Add(row);
        }

        return new OilMap(speeds, temperatures, rows);
    }

    /// <summary>[Pa] Draws of the main gauge at a point, everything uncertain drawn together, each draw solved whole and in agreement with the flow test that was accepted.</summary>
    /// <param name="point">Where.</param>
    /// <param name="draws">How many, 2 or more.</param>
    /// <param name="seed">The same seed gives the same draws.</param>
    public Outcome<Sample> Draws(OilPoint point, int draws, ulong seed) => Gauges is [var main, ..]
        ? Solve(point).Then<Sample>(solved => new OilDraws(solved, Tested(solved)).Of(main.At, draws, seed))
        : NoGauge;

    /// <summary>[m³] What runs out of the tank through the standing pumps while the engine rests at 20 °C.</summary>
    /// <param name="hours">How long.</param>
    public Outcome<double> DrainDown(double hours) => Solve(new OilPoint(0, 293.15)).Then<double>(solved =>
    {
        if (Tank is not { } tank)
            return 0;
        double leaves = 0;
        for (var i = 0; i < _circuit.Elements.Count; i++)
        {
            var element = _circuit.Elements[i];
            if (element.From == tank)
                leaves += solved.Flow(i);
            else if (element.To == tank)
                leaves -= solved.Flow(i);
        }

        return Math.Max(0, leaves) * hours * 3600;
    });

    /// <summary>The reservoir that the first pressure pump draws from; null where it draws from none.</summary>
    private NodeName? Tank
    {
        get
        {
            if (_circuit.Elements.FirstOrDefault(e => IsPressurePump(e) && !e.Blanked) is not { } pump)
                return null;
            var upstream = new List<NodeName> { pump.From };
            for (var i = 0; i < upstream.Count; i++)
            {
                if (_circuit.Node(upstream[i])?.Pressure is not null)
                    return upstream[i];
                upstream.AddRange(_circuit.Elements.Where(e => e.To == upstream[i] && !e.Blanked && !IsPump(e)).Select(e => e.From).Except(upstream));
            }

            return null;
        }
    }

    private static Problem NoGauge => new("no-gauge", "gauges", "nothing", "The circuit has no gauge and no pressure pump.", "Say where the main gauge is tapped.");

    private static double BandOf(double standardUncertainty) => Estimate.BandOf(standardUncertainty, double.PositiveInfinity);

    private static string InWords(int count) => count switch { 2 => "two", 3 => "three", _ => count.ToString(CultureInfo.InvariantCulture) };

    /// <summary>The depth that the end floats of a pump have in common, less the lapping; null where that would leave too little.</summary>
    private Dictionary<FigureName, double>? LappedBody(ElementDefinition pump, OilPoint point)
    {
        var floats = new[] { "end-float", "driven-end-float" }.Select(pump.Value).OfType<CircuitValue.Taken>().Select(t => t.Figure).Distinct().ToList();
        if (floats.Count == 0 || floats.Exists(f => _figures.At(f, point.OilTemperature) is not { } now || now.Value.Value - UsualLapping < LeastFloat))
            return null;
        var gaps = floats.Select(f => _appraisal[f]).OfType<FitAppraisal>().Select(f => f.Fit.Gap).ToList();
        foreach (var term in gaps.SelectMany(g => g))
        {
            if (term.Coefficient > 0 && term.Of.Local.Contains("depth", StringComparison.Ordinal) && gaps.TrueForAll(g => g.Any(other => other.Of == term.Of)))
                return new() { [term.Of] = -UsualLapping / term.Coefficient };
        }

        return floats.ToDictionary(f => f, _ => -UsualLapping);
    }
}
