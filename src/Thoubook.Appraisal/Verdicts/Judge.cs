using Thoubook.Appraisal.Estimates;
using Thoubook.Mechanics.Metrology;
using Thoubook.Record.Measures;

namespace Thoubook.Appraisal.Verdicts;

/// <summary>
/// From estimates and limits to probabilities, and from those to a verdict. Conformance is of all places together, size and form.
/// </summary>
internal static class Judge
{
    /// <summary>What a verdict past the other end is called: a fit that is too close seizes, a part is only off size.</summary>
    public enum OtherEnd
    {
        OffSize,
        TooTight,
    }

    public static Probabilities OfDimension(Dimension dimension, DimensionEstimate estimate, BindingLimits limits)
    {
        var sized = limits.Wear switch
        {
            WearDirection.Shrinks => Both(i => SizeWithin(dimension, estimate, limits, i), limits, p => (p.Below, p.Above)),
            _ => Both(i => SizeWithin(dimension, estimate, limits, i), limits, p => (p.Above, p.Below)),
        };
        return WithForm(WithForm(sized, dimension.Ovality, estimate.Ovality), dimension.Taper, estimate.Taper);
    }

    /// <summary>A gap conforms where both its closest and its widest do.</summary>
    public static Probabilities OfFit(Estimate least, Estimate greatest, BindingLimits limits) =>
        Both(i => GapWithin(least, greatest, i), limits, p => limits.Wear == WearDirection.Shrinks ? (p.Below, p.Above) : (p.Above, p.Below));

    public static Verdict Say(Probabilities p, WearDirection wear, OtherEnd otherEnd, double confidence)
    {
        if (p.New >= confidence)
            return Verdict.AsNew;
        if (p.Worn >= confidence)
            return Verdict.WithinWornLimits;
        if (wear == WearDirection.None)
            return 1 - p.Worn >= confidence ? PastEitherEnd(p, otherEnd) : Verdict.TooCloseToCall;
        if (p.PastWornEnd >= confidence)
            return Verdict.BeyondWornLimits;
        return p.PastOtherEnd >= confidence ? PastOther(otherEnd) : Verdict.TooCloseToCall;
    }

    private static Verdict PastEitherEnd(Probabilities p, OtherEnd otherEnd) => p.PastOtherEnd > p.PastWornEnd ? PastOther(otherEnd) : Verdict.OffSize;

    private static Verdict PastOther(OtherEnd otherEnd) => otherEnd == OtherEnd.TooTight ? Verdict.TooTight : Verdict.OffSize;

    /// <summary>Probability that an error of form is inside its limit worn.</summary>
    public static double FormWithin(FormLimit limit, FormEstimate form) =>
        Conformance.Within(form.Value, form.StandardUncertainty, Interval.AtMost(limit.Worn?.Si ?? limit.New?.Si ?? double.PositiveInfinity)).Within;

    private static Probabilities Both(Func<Interval, ConformanceProbability> within, BindingLimits limits, Func<ConformanceProbability, (double WornEnd, double OtherEnd)> ends)
    {
        var fresh = within(Between(limits.NewLeast, limits.NewGreatest));
        var worn = within(Between(limits.WornLeast, limits.WornGreatest));
        var (wornEnd, otherEnd) = ends(worn);
        return new Probabilities(fresh.Within, worn.Within, wornEnd, otherEnd);
    }

    private static Interval Between(double? least, double? greatest) => Interval.Between(least ?? double.NegativeInfinity, greatest ?? double.PositiveInfinity);

    private static ConformanceProbability SizeWithin(Dimension dimension, DimensionEstimate estimate, BindingLimits limits, Interval interval)
    {
        if (estimate.Places.Count <= 1 || DimensionEstimator.CountingOf(dimension, limits) == Counting.Mean)
            return Conformance.Within(estimate.Counting!.Value, estimate.Counting.StandardUncertainty, estimate.Counting.DegreesOfFreedom, interval);

        var n = estimate.Places.Count;
        Span<double> values = n <= 32 ? stackalloc double[n] : new double[n];
        Span<double> own = n <= 32 ? stackalloc double[n] : new double[n];
        Span<double> shared = n <= 32 ? stackalloc double[n] : new double[n];
        for (var i = 0; i < n; i++)
            (values[i], own[i], shared[i]) = (estimate.Places[i].Value, estimate.Places[i].OwnUncertainty, estimate.Places[i].SharedUncertainty);
        return Conformance.AllWithin(values, own, shared, interval);
    }

    private static ConformanceProbability GapWithin(Estimate least, Estimate greatest, Interval interval)
    {
        var low = Conformance.Within(least.Value, least.StandardUncertainty, least.DegreesOfFreedom, interval);
        if (ReferenceEquals(least, greatest))
            return low;
        var high = Conformance.Within(greatest.Value, greatest.StandardUncertainty, greatest.DegreesOfFreedom, interval);
        double uLow = least.StandardUncertainty, uHigh = greatest.StandardUncertainty;
        var bothEnds = 0.0;
        if (uLow > 0 && uHigh > 0 && low.Below > 1e-9 && high.Above > 1e-9)
        {
            // The closest below the lower limit and the widest above the upper one at once: P(−least > −L, greatest > U).
            var correlation = Math.Clamp(least.CovarianceWith(greatest) / (uLow * uHigh), -1, 1);
            bothEnds = BivariateNormal.BothBelow((interval.Least - least.Value) / uLow, (greatest.Value - interval.Greatest) / uHigh, -correlation);
        }

        return new ConformanceProbability(Math.Clamp(1 - low.Below - high.Above + bothEnds, 0, 1), low.Below, high.Above);
    }

    /// <summary>Form is of the same measurement but of its own errors, which the size does not share: the probabilities multiply.</summary>
    private static Probabilities WithForm(Probabilities size, FormLimit? limit, FormEstimate? form)
    {
        if (limit is null || form is null)
            return size;
        var fresh = Conformance.Within(form.Value, form.StandardUncertainty, Interval.AtMost(limit.New?.Si ?? limit.Worn?.Si ?? double.PositiveInfinity)).Within;
        var worn = FormWithin(limit, form);
        return new Probabilities(size.New * fresh, size.Worn * worn, 1 - ((1 - size.PastWornEnd) * worn), size.PastOtherEnd);
    }
}
