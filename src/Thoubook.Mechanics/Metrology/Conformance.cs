using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Metrology;

/// <summary>How probable it is that a measured thing lies within an interval, below it and above it.</summary>
/// <param name="Within">[-] probability that it (for several places: every one) lies within.</param>
/// <param name="Below">[-] probability that it (any of them) lies below the lower limit.</param>
/// <param name="Above">[-] probability that it (any of them) lies above the upper limit.</param>
public readonly record struct ConformanceProbability(double Within, double Below, double Above);

/// <summary>Probability that measured things conform to their limits.</summary>
public static class Conformance
{
    private const string Jcgm106 = "JCGM 106:2012, 7.2 to 7.4";

    /// <summary>Probability that one measured value lies within an interval.</summary>
    /// <param name="value">[any] best value.</param>
    /// <param name="standardUncertainty">[any] 0 or more; with 0 the value is taken as exact and a limit counts as within.</param>
    /// <param name="interval">[any] the limits.</param>
    /// <returns>[-] probabilities within, below and above.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Value not finite, or uncertainty below 0 or not finite.</exception>
    /// <remarks>Model: normal about the best value. Assumes: no prior knowledge beside the measurement. Source: JCGM 106:2012, 7.2 to 7.4 (from memory). Check: ConformanceTests.</remarks>
    public static ConformanceProbability Within(double value, double standardUncertainty, Interval interval)
    {
        Guard.Finite(value);
        Guard.ZeroOrMore(standardUncertainty);
        return standardUncertainty == 0 ? Exact(value, interval) : Probabilities(value, standardUncertainty, double.PositiveInfinity, interval, default(Silent));
    }

    /// <summary>Probability that one measured value lies within an interval, its standard uncertainty itself known from few readings.</summary>
    /// <param name="value">[any] best value.</param>
    /// <param name="standardUncertainty">[any] 0 or more.</param>
    /// <param name="degreesOfFreedom">[-] above 0; infinite gives the normal case.</param>
    /// <param name="interval">[any] the limits.</param>
    /// <returns>[-] probabilities within, below and above.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: Student's t scaled by u about the best value. Source: JCGM 101:2008, 6.4.9 with JCGM 106:2012, 7.2 (from memory). Check: ConformanceTests.</remarks>
    public static ConformanceProbability Within(double value, double standardUncertainty, double degreesOfFreedom, Interval interval)
    {
        Guard.Finite(value);
        Guard.ZeroOrMore(standardUncertainty);
        return standardUncertainty == 0 ? Exact(value, interval) : Probabilities(value, standardUncertainty, degreesOfFreedom, interval, default(Silent));
    }

    /// <summary>The same for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="value">[any] best value.</param>
    /// <param name="standardUncertainty">[any] above 0.</param>
    /// <param name="degreesOfFreedom">[-] above 0; infinite gives the normal case.</param>
    /// <param name="interval">[any] the limits.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[-] probabilities within, below and above.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: as Within. Source: JCGM 106:2012, 7.2 to 7.4 (from memory). Check: ConformanceTests.</remarks>
    public static ConformanceProbability Within<TTrace>(double value, double standardUncertainty, double degreesOfFreedom, Interval interval, TTrace trace)
        where TTrace : struct, ITrace
    {
        Guard.Finite(value);
        Guard.AboveZero(standardUncertainty);
        return Probabilities(value, standardUncertainty, degreesOfFreedom, interval, trace);
    }

    /// <summary>Probability that all of several places lie within one interval, where they share an error (the gauge's) and each has its own besides.</summary>
    /// <param name="values">[any] best value at each place.</param>
    /// <param name="independent">[any] standard uncertainty of each place on its own, 0 or more; same order.</param>
    /// <param name="shared">[any] what one standard deviation of the shared error does to each place, with its sign; same order.</param>
    /// <param name="interval">[any] the limits, the same for every place.</param>
    /// <returns>[-] probabilities that all lie within, that any lies below, that any lies above.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No place, lists of unlike length, or a number outside its range.</exception>
    /// <remarks>
    /// Model: for each value of the shared error the places are independent; the product is summed over the shared normal error at equal steps fine enough for the sharpest place.
    /// Accuracy: 1e-6; where a place's own part is under 1/48 of its shared part (and not all are 0) it is taken as 1/48, which changes the answer by less than 1e-4.
    /// Source: definition, from JCGM 106:2012, 7.2 and JCGM 102:2011 (from memory). Check: JointConformanceTests.
    /// </remarks>
    public static ConformanceProbability AllWithin(ReadOnlySpan<double> values, ReadOnlySpan<double> independent, ReadOnlySpan<double> shared, Interval interval)
    {
        var n = values.Length;
        Guard.AtLeast(n, 1, "number of places");
        Guard.SameCount(independent.Length, n, "number of independent uncertainties");
        Guard.SameCount(shared.Length, n, "number of shared uncertainties");
        var (anyShared, anyOwn) = (false, false);
        for (var i = 0; i < n; i++)
        {
            Guard.Finite(values[i], "", "value");
            anyOwn |= Guard.ZeroOrMore(independent[i], "", "independent standard uncertainty") > 0;
            anyShared |= Guard.Finite(shared[i], "", "shared standard uncertainty") != 0;
        }

        if (!anyShared)
            return Independent(values, independent, interval);
        return anyOwn ? JointConformance.OverSharedError(values, independent, shared, interval) : JointConformance.SharedErrorOnly(values, shared, interval);
    }

    internal static ConformanceProbability Exact(double value, Interval interval)
    {
        var (below, above) = (value < interval.Least, value > interval.Greatest);
        return new ConformanceProbability(below || above ? 0 : 1, below ? 1 : 0, above ? 1 : 0);
    }

    private static ConformanceProbability Independent(ReadOnlySpan<double> values, ReadOnlySpan<double> own, Interval interval)
    {
        var (within, noneBelow, noneAbove) = (1.0, 1.0, 1.0);
        for (var i = 0; i < values.Length; i++)
        {
            var one = Within(values[i], own[i], interval);
            within *= one.Within;
            noneBelow *= 1 - one.Below;
            noneAbove *= 1 - one.Above;
        }

        return new ConformanceProbability(within, 1 - noneBelow, 1 - noneAbove);
    }

    private static ConformanceProbability Probabilities<TTrace>(double y, double u, double nu, Interval limits, TTrace trace)
        where TTrace : struct, ITrace
    {
        var normal = double.IsPositiveInfinity(nu);
        trace.Given("y", "best value", y, Units.Any);
        trace.Given("u", "standard uncertainty", u, Units.Any);
        if (TTrace.Writes && !normal)
            trace.Given("ν", "degrees of freedom of u", nu, Units.None);
        var (below, above) = (0.0, 0.0);
        if (!double.IsNegativeInfinity(limits.Least))
        {
            trace.Given("L", "lower limit", limits.Least, Units.Any);
            var z = trace.Line("z_L", "lower limit from the best value, in standard uncertainties", "(L − y)/u", (limits.Least - y) / u, Units.None);
            below = normal
                ? trace.Line("P_below", "probability below the lower limit", "Phi(z_L)", Normal.Below(z), Units.None, Jcgm106)
                : trace.Line("P_below", "probability below the lower limit", "T(z_L, ν)", StudentT.Below(z, nu), Units.None, Jcgm106);
        }

        if (!double.IsPositiveInfinity(limits.Greatest))
        {
            trace.Given("U", "upper limit", limits.Greatest, Units.Any);
            var z = trace.Line("z_U", "best value from the upper limit, in standard uncertainties", "(y − U)/u", (y - limits.Greatest) / u, Units.None);
            above = normal
                ? trace.Line("P_above", "probability above the upper limit", "Phi(z_U)", Normal.Below(z), Units.None, Jcgm106)
                : trace.Line("P_above", "probability above the upper limit", "T(z_U, ν)", StudentT.Below(z, nu), Units.None, Jcgm106);
        }

        var formula = (double.IsNegativeInfinity(limits.Least), double.IsPositiveInfinity(limits.Greatest)) switch
        {
            (false, false) => "max(0, 1 − P_below − P_above)",
            (false, true) => "1 − P_below",
            (true, false) => "1 − P_above",
            _ => "1",
        };
        var within = trace.Line("P", "probability of conformance", formula, Math.Max(0, 1 - below - above), Units.None, Jcgm106);
        return new ConformanceProbability(within, below, above);
    }
}
