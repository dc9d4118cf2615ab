using Thoubook.Appraisal.Estimates;
using Thoubook.Mechanics.Metrology;
using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal.Verdicts;

/// <summary>For a figure that is too close to call: which reading to take again, and how well.</summary>
internal static class Adviser
{
    /// <summary>Chance that following the advice reaches a verdict.</summary>
    private const double Wanted = 0.85;

    public static Advice? ForDimension(Dimension dimension, DimensionEstimate estimate, BindingLimits limits, double confidence)
    {
        if (estimate.Counting is not { } counting || Intervals(limits) is not { Length: > 0 } intervals)
            return null;

        // The place nearest to the limit in doubt decides; it is read again.
        var place = estimate.Places.Count > 1 && DimensionEstimator.CountingOf(dimension, limits) != Counting.Mean ? NearestToDoubt(estimate.Places, limits) : (PlaceEstimate?)null;
        var value = place?.Value ?? counting.Value;
        var readings = place?.Readings ?? Math.Max(1, estimate.Readings.Count);
        var u = place?.StandardUncertainty ?? counting.StandardUncertainty;
        var repeat = Math.Min(estimate.RepeatScatter, u * Math.Sqrt(readings));
        var floor = Math.Sqrt(Math.Max(0, (u * u) - (repeat * repeat / readings)));
        var advice = Settling.Advise(value, floor, repeat, readings, intervals, confidence, Wanted);
        return Say(advice, dimension, place?.Place, u);
    }

    public static Advice? ForFit(Estimate value, FitEstimator.Terms terms, BindingLimits limits, double confidence)
    {
        if (Intervals(limits) is not { Length: > 0 } intervals)
            return null;

        // The term that the doubt owes most to is read again; the others stay as they are.
        DimensionAppraisal? most = null;
        double share = -1;
        foreach (var (term, of) in terms.List)
        {
            var u = Math.Abs(term.Coefficient) * (of.Details.Counting?.StandardUncertainty ?? 0);
            if (u > share)
                (share, most) = (u, of);
        }

        if (most is null)
            return null;
        var details = most.Details;
        var readings = Math.Max(1, details.Places.Count > 0 ? details.Places.Min(p => p.Readings) : 1);
        var repeat = Math.Min(details.RepeatScatter, share * Math.Sqrt(readings));
        var floor = Math.Sqrt(Math.Max(0, (value.StandardUncertainty * value.StandardUncertainty) - (repeat * repeat / readings)));
        var advice = Settling.Advise(value.Value, floor, repeat, readings, intervals, confidence, Wanted);
        if (advice.By != SettledBy.BetterGauge)
            return Say(advice, most.Figure, null, share);

        // What the better gauge must be good for, with the doubt of the other terms left in.
        var others = (value.StandardUncertainty * value.StandardUncertainty) - (share * share);
        var needed = (advice.StandardUncertainty * advice.StandardUncertainty) - Math.Max(0, others);
        return needed > 0
            ? Say(advice with { StandardUncertainty = Math.Sqrt(needed) }, most.Figure, null, share)
            : new Advice(most.Figure.Name, null, null, advice.StandardUncertainty, IsOutOfReach(most.Figure, advice.StandardUncertainty)
                ? AtItsLimit
                : $"One better reading will not settle it: read every term again, so that together they are good to a standard uncertainty of {SmallAmount.Of(most.Figure, advice.StandardUncertainty)}; or measure the fit itself.");
    }

    private const string AtItsLimit = "It stands at its limit: no gauge of a workshop would settle it. Treat it as at its limit, or accept it on judgement.";

    private static bool IsOutOfReach(Figure figure, double standardUncertainty) => figure.Kind == QuantityKind.Length && standardUncertainty < SmallAmount.BeyondTheWorkshop;

    private static Advice? Say(SettlingAdvice advice, Figure figure, PlaceName? place, double now) => advice.By switch
    {
        SettledBy.MoreReadings => new Advice(figure.Name, place, advice.FurtherReadings, null,
            $"Read it{At(place)} {Times(advice.FurtherReadings)} with the same gauge: {advice.Probability * 100:0} in 100 that this settles it."),
        SettledBy.BetterGauge when IsOutOfReach(figure, advice.StandardUncertainty) => new Advice(figure.Name, place, null, advice.StandardUncertainty, AtItsLimit),
        SettledBy.BetterGauge when advice.StandardUncertainty > 0 => new Advice(figure.Name, place, null, advice.StandardUncertainty,
            $"More readings with this gauge will not settle it. Read it{At(place)} with one whose standard uncertainty is at most {SmallAmount.Of(figure, advice.StandardUncertainty)} (now {SmallAmount.Of(figure, now)})."),
        _ => null,
    };

    private static string At(PlaceName? place) => place is { } p && p != PlaceName.NotNoted ? $" at {p}" : "";

    private static string Times(int more) => more switch { 1 => "once more", 2 => "twice more", _ => $"{more} times more" };

    /// <summary>Each interval whose proof is a verdict: new and worn.</summary>
    private static Interval[] Intervals(BindingLimits limits)
    {
        var fresh = Interval.Between(limits.NewLeast ?? double.NegativeInfinity, limits.NewGreatest ?? double.PositiveInfinity);
        var worn = Interval.Between(limits.WornLeast ?? double.NegativeInfinity, limits.WornGreatest ?? double.PositiveInfinity);
        return fresh == worn ? [fresh] : [fresh, worn];
    }

    private static PlaceEstimate NearestToDoubt(IReadOnlyList<PlaceEstimate> places, BindingLimits limits)
    {
        var nearest = places[0];
        foreach (var place in places)
        {
            if (Distance(place.Value) < Distance(nearest.Value))
                nearest = place;
        }

        return nearest;

        // Signed: inside is positive, so that a place past the limit comes before one that is merely near it.
        double Distance(double value) => Math.Min(value - (limits.WornLeast ?? double.NegativeInfinity), (limits.WornGreatest ?? double.PositiveInfinity) - value);
    }
}
