using Thoubook.Appraisal.Estimates;
using Thoubook.Mechanics.Metrology;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal.Oil;

/// <summary>Makes the cards of an engine's gear pumps.</summary>
public static class PumpCards
{
    /// <summary>[-] Risk of nil from which it is said.</summary>
    private const double Binds = 0.025;

    /// <summary>[m] Below this there is nothing to skim.</summary>
    private const double Hardly = 1e-6;

    /// <summary>[m] Where a curve over end floats begins: a quarter of a thou.</summary>
    private const double NearlyNil = 0.25 * 25.4e-6;

    /// <summary>[m] How far beyond the widest choice it goes: two thou.</summary>
    private const double CurveBeyond = 2 * 25.4e-6;

    private const int CurvePoints = 17;

    /// <summary>The gear pumps of an engine: parts with the end float of a gear, by the circuit, by its name or by the depth that it lies in.</summary>
    public static IReadOnlyList<PartName> PumpsOf(EngineAppraisal appraisal) =>
        [.. appraisal.Fits.Where(f => f.Fit.FitKind == FitKind.EndFloat && IsOfPump(appraisal, f)).Select(f => f.Figure.Name.Part).Distinct()];

    /// <summary>The card of one pump, its oil at the first state of the circuit where the engine has one.</summary>
    /// <param name="appraisal">The engine.</param>
    /// <param name="pump">Name of its element in the circuit, path of its part, or the last name of that path.</param>
    /// <param name="trials">What to compare with.</param>
    public static Outcome<PumpCard> Of(EngineAppraisal appraisal, string pump, PumpTrials trials) =>
        Of(appraisal, OilSystem.Of(appraisal).IsOk(out var system, out _) ? system : null, pump, trials, null);

    /// <summary>The card of one pump in an oil system, in which something may be supposed, at one point of it.</summary>
    public static Outcome<PumpCard> Of(OilSystem system, string pump, PumpTrials trials, OilPoint point) => Of(system.Appraisal, system, pump, trials, point);

    private static Outcome<PumpCard> Of(EngineAppraisal appraisal, OilSystem? system, string pump, PumpTrials trials, OilPoint? asked)
    {
        var element = Elements(appraisal).FirstOrDefault(e => e.Name.Text == pump);
        if ((element is null ? PartOf(appraisal, pump) : PartOf(element)) is not { } part)
        {
            var known = PumpsOf(appraisal).Select(p => p.Path).ToArray();
            return new Problem(
                "unknown-pump",
                "",
                $"\"{pump}\"",
                known.Length == 0 ? "No part of this engine has the end floats of a gear pump." : $"Pumps: {string.Join(", ", known)}.",
                known.Length == 0 ? "Add the pump by its starter, or give its fits kind: end float." : Nearest.Advice(pump, known, "Name one of these, or its element of the circuit."));
        }

        var floats = appraisal.Fits.Where(f => f.Figure.Name.Part == part && f.Fit.FitKind == FitKind.EndFloat).OrderBy(f => f.Figure.Name.Local.StartsWith("driven", StringComparison.Ordinal)).ToArray();
        if (floats.FirstOrDefault(f => f.States[0].Expected is null && f.Estimate is null) is { } unknown)
        {
            return new Problem(
                "pump-not-measured",
                unknown.Figure.Name.ToString(),
                unknown.Reason,
                "The end float of each gear, from body depth, gear width and joint, or as measured.",
                $"Measure {string.Join(", ", unknown.Unmeasured.DefaultIfEmpty(unknown.Figure.Name))}.");
        }

        element ??= Elements(appraisal).FirstOrDefault(e => PartOf(e) == part);
        var sizes = floats.SelectMany(f => f.Terms).Select(t => t.Of).DistinctBy(d => d.Figure.Name).ToArray();
        var film = sizes.FirstOrDefault(d => IsFilm(d, floats));
        var body = sizes.FirstOrDefault(d => d != film && floats.All(f => f.Terms.Any(t => t.Of == d && t.Term.Coefficient == 1)));
        List<PumpChoice> choices =
        [
            Choice(system, floats, "as it stands", [], 0, null),
            Choice(system, floats, $"gasket of {Thou(trials.Gasket)}{(film is null ? "" : " in place of the film")}", Changed(film), trials.Gasket - (film?.Details.Counting?.Value ?? 0), (trials.Gasket, film?.Details.Counting)),
        ];
        if (trials.Lapping > 0)
            choices.Add(Choice(system, floats, $"body lapped by {Thou(trials.Lapping)}", Changed(body), -trials.Lapping, null));
        if ((trials.Skim ?? ToMiddle(system, floats)) is { } skim && skim > Hardly)
            choices.Add(Choice(system, floats, $"body skimmed by {Thou(skim)}{(trials.Skim is null ? ", to mid limits" : "")}", Changed(body), -skim, null));
        var (point, curve) = ((OilPoint?)null, (IReadOnlyList<PumpFloatPoint>)[]);
        List<Caution> cautions = [];
        if (element is not null && system is not null)
        {
            var at = asked ?? system.HotIdle;
            if (system.At(at).IsOk(out var now, out var unsolved))
            {
                point = at;
                choices = [.. choices.Select(c => c with { Oil = Oil(system, at, element, c.Trial, now) })];
                if (trials.WithCurve)
                    curve = [.. Curve(system, at, element, now, Changed(body), At20(system, Closest(system, floats)), choices)];
            }
            else if (asked is not null)
            {
                return new Outcome<PumpCard>.Refused(unsolved);
            }
            else
            {
                cautions.Add(new("pump-oil", $"What it does to the oil cannot be said. {string.Join(" ", unsolved)}"));
            }
        }

        return new PumpCard
        {
            Part = part,
            Element = element,
            At = point,
            Curve = curve,
            Sizes = sizes,
            EndFloats = floats,
            Choices = choices,
            Cautions = [.. cautions, .. Cautions(appraisal, sizes, body, choices)],
        };

        // The dimension that is changed, so that every fit it belongs to follows; the end floats themselves where none is known.
        IReadOnlyList<FigureName> Changed(DimensionAppraisal? dimension) => dimension is null ? [.. floats.Select(f => f.Figure.Name)] : [dimension.Figure.Name];
    }

    private static bool IsOfPump(EngineAppraisal appraisal, FitAppraisal fit)
    {
        var (part, local) = (fit.Figure.Name.Part, fit.Figure.Name.Local);
        return Elements(appraisal).Any(e => PartOf(e) == part) || local.StartsWith("driver", StringComparison.Ordinal)
            || (part.Leaf.Contains("pump", StringComparison.Ordinal) && fit.Fit.Gap.Any(t => t is { Coefficient: > 0, Of.Local: "depth" }) && fit.Fit.Gap.Any(t => t is { Coefficient: < 0, Of.Local: "width" }));
    }

    private static IEnumerable<ElementDefinition> Elements(EngineAppraisal appraisal) =>
        appraisal.Record.Circuit?.Elements.Where(e => e.Kind is ElementKind.GearPump or ElementKind.Pump) ?? [];

    private static PartName? PartOf(ElementDefinition element) => element.Value("end-float") is CircuitValue.Taken { Figure: var figure } ? figure.Part : element.Part;

    private static PartName? PartOf(EngineAppraisal appraisal, string pump)
    {
        var pumps = PumpsOf(appraisal);
        return pumps.Where(p => p.Path == pump).ToArray() is [var exact] ? exact : pumps.Where(p => p.Leaf == pump).ToArray() is [var only] ? only : null;
    }

    /// <summary>What lies in the joint: it adds to every float, and is a thickness.</summary>
    private static bool IsFilm(DimensionAppraisal dimension, IReadOnlyList<FitAppraisal> floats) =>
        dimension.Figure.Name.Local.EndsWith("thickness", StringComparison.Ordinal) && floats.All(f => f.Terms.Any(t => t.Of == dimension && t.Term.Coefficient == 1));

    private static double? ToMiddle(OilSystem? system, IReadOnlyList<FitAppraisal> floats)
    {
        var closest = Closest(system, floats);
        return closest.Limits is { NewLeast: { } least, NewGreatest: { } greatest } ? At20(system, closest) - ((least + greatest) / 2) : null;
    }

    private static PumpChoice Choice(OilSystem? system, IReadOnlyList<FitAppraisal> floats, string name, IReadOnlyList<FigureName> changed, double change, (double Thickness, Estimate? Film)? gasket)
    {
        var made = new List<PumpFloat>();
        foreach (var fit in floats)
        {
            foreach (var state in fit.States)
            {
                if (In(system, fit, state) is { } now)
                    made.Add(Float(fit, state, gasket is { } with ? Gasketed(now, with.Thickness, with.Film) : new Estimate(now.Value + change, now.Contributions)));
            }
        }

        var hot = made.Exists(f => f.State == TemperatureState.Hot) ? TemperatureState.Hot : floats[0].States[0].Name;
        var there = made.Where(f => f.State == hot).ToArray();
        var leak = there.Sum(f => Cube(f.Float.Value));
        var before = there.Sum(f => Cube(In(system, f.Fit, f.Fit.States.First(s => s.Name == hot))!.Value));
        return new PumpChoice(name, change, made)
        {
            EndLeak = before > 0 ? leak / before : null,
            Trial = new OilTrial(name) { ChangeBy = changed.ToDictionary(c => c, _ => change) },
        };

        // Ends leak with the cube of the float, whatever its split between the faces; nothing where there is none.
        static double Cube(double endFloat) => Math.Pow(Math.Max(0, endFloat), 3);
    }

    private static PumpOil? Oil(OilSystem system, OilPoint at, ElementDefinition element, OilTrial trial, OilAnswer now)
    {
        if (!system.Suppose(trial).Then(supposed => supposed.At(at)).IsOk(out var then, out _) || then.Pumps.FirstOrDefault(p => p.Element.Element.Name == element.Name) is not { } pump)
            return null;
        return now.Gauges is [var before, ..] && then.Gauges is [var after, ..]
            ? new PumpOil(pump.Slip, after, Estimate.Sum([(1, after.Pressure), (-1, before.Pressure)]))
            : new PumpOil(pump.Slip, null, null);
    }

    private static IEnumerable<PumpFloatPoint> Curve(OilSystem system, OilPoint at, ElementDefinition element, OilAnswer now, IReadOnlyList<FigureName> changed, double stands, IReadOnlyList<PumpChoice> choices)
    {
        var (from, to) = (Math.Min(NearlyNil, stands), stands + Math.Max(0, choices.Max(c => c.Change)) + CurveBeyond);
        for (var i = 0; i < CurvePoints; i++)
        {
            var endFloat = from + ((to - from) * i / (CurvePoints - 1));
            if (Oil(system, at, element, new OilTrial("") { ChangeBy = changed.ToDictionary(c => c, _ => endFloat - stands) }, now) is { } oil)
                yield return new PumpFloatPoint(endFloat, oil);
        }
    }

    private static FitAppraisal Closest(OilSystem? system, IReadOnlyList<FitAppraisal> floats) => floats.MinBy(f => At20(system, f))!;

    private static double At20(OilSystem? system, FitAppraisal fit) => (fit.Estimate ?? fit.States[0].Expected!).Value + (system?.ChangeOf(fit) ?? 0);

    /// <summary>The float in a state, with what a trial changes; where it was measured as such, that and what its parts gain from 20 °C.</summary>
    private static Estimate? In(OilSystem? system, FitAppraisal fit, FitState state) =>
        AsAppraised(fit, state) is { } stands && system?.ChangeOf(fit) is { } change and not 0 ? new Estimate(stands.Value + change, stands.Contributions) : AsAppraised(fit, state);

    private static Estimate? AsAppraised(FitAppraisal fit, FitState state)
    {
        if (fit.Basis is not (FitBasis.Check or FitBasis.Supposed))
            return state.Estimate ?? state.Expected;
        if (ReferenceEquals(state, fit.States[0]))
            return fit.Estimate;
        return state.Expected is { } there && fit.States[0].Expected is { } here ? new Estimate(fit.Estimate!.Value + there.Value - here.Value, fit.Estimate.Contributions) : null;
    }

    /// <summary>With a gasket the film goes, and its doubt with it; the gasket comes with a tenth of its thickness.</summary>
    private static Estimate Gasketed(Estimate now, double thickness, Estimate? film)
    {
        var gasket = new Estimate(thickness, [new(new(SourceKind.Assumed, "compressed thickness of the gasket"), thickness / 10, double.PositiveInfinity)]);
        return film is null ? Estimate.Sum([(1, now), (1, gasket)]) : Estimate.Sum([(1, now), (-1, film), (1, gasket)]);
    }

    private static PumpFloat Float(FitAppraisal fit, FitState state, Estimate value)
    {
        var closest = fit.Least is { } least && fit.Estimate is { } middle ? value.Value - (middle.Value - least.Value) : value.Value;
        var risk = value.StandardUncertainty > 0
            ? Conformance.Within(closest, value.StandardUncertainty, value.DegreesOfFreedom, Interval.AtLeast(0)).Below
            : closest > 0 ? 0 : 1;
        return new PumpFloat(fit, state.Name, value, fit.Estimate is not null, risk);
    }

    private static IEnumerable<Caution> Cautions(EngineAppraisal appraisal, IReadOnlyList<DimensionAppraisal> sizes, DimensionAppraisal? body, IReadOnlyList<PumpChoice> choices)
    {
        foreach (var choice in choices)
        {
            if (choice.Floats.Where(f => f.RiskOfNil > Binds).MaxBy(f => f.RiskOfNil) is { } worst)
                yield return new("pump-may-bind", $"{Capital(choice.Name)}: {worst.Fit.Figure.Name.Local} may be nil at {worst.State}. The pump locks there and breaks its drive.");
        }

        if (sizes.Where(d => !d.Details.IsMeasured).Select(d => d.Figure.Name.ToString()).ToArray() is { Length: > 0 } unmeasured)
            yield return new("pump-not-measured", $"By drawing limits, not measured: {string.Join(", ", unmeasured)}.");
        if (body is not null && appraisal.Record.Index.Part(body.Figure.Name.Part)?.Material is { } material && material.Contains("magnesium", StringComparison.OrdinalIgnoreCase))
            yield return new("magnesium-swarf", "Magnesium swarf burns and water feeds it: lap wet with oil, keep dry sand at hand.");
        yield return new("pump-lapping", "Lap or skim little at a time and measure again; wash every trace of compound out of body, gears and bushes. Size says nothing of cracks.");
        yield return new("pump-turn", "Turn the closed pump by hand, cold, before it is driven: it must go round without a tight place.");
    }

    private static string Thou(double metres) => TradeUnit.Thou.Show(Math.Round(metres / TradeUnit.Thou.Factor, 2) * TradeUnit.Thou.Factor);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
