using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Metrology;

/// <summary>An uncertainty put together from repeated readings and from other sources.</summary>
/// <param name="StandardUncertainty">[any] combined.</param>
/// <param name="DegreesOfFreedom">[-] effective; infinite where every part is taken as known.</param>
/// <param name="CoverageFactor">[-] for the stated probability.</param>
/// <param name="Expanded">[any] expanded uncertainty.</param>
public readonly record struct UncertaintyBudget(double StandardUncertainty, double DegreesOfFreedom, double CoverageFactor, double Expanded)
{
    /// <summary>One source beside the scatter of the readings.</summary>
    /// <param name="Source">Its name; the same name is one and the same error.</param>
    /// <param name="Quantity">[any] standard uncertainty, half width, step or expanded uncertainty, 0 or more.</param>
    /// <param name="Divisor">[-] what makes it a standard uncertainty: 1, √3, √6, √2, √12, 2.</param>
    /// <param name="Sensitivity">[-] what one unit does to the value, with its sign.</param>
    /// <param name="DegreesOfFreedom">[-] above 0; infinite where it is taken as known.</param>
    public readonly record struct Part(string Source, double Quantity, double Divisor, double Sensitivity, double DegreesOfFreedom);

    /// <summary>Combines the scatter of readings with other sources and widens it to a probability.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="readings">[any] none, or two or more; not changed.</param>
    /// <param name="parts">[any] the other sources; may be none where there are readings.</param>
    /// <param name="probability">[-] strictly between 0 and 1.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[any] the budget.</returns>
    /// <exception cref="ArgumentOutOfRangeException">One reading only, neither readings nor parts, or a number outside its range.</exception>
    /// <remarks>Model: u_c² = s²/n + Σ(c_i u_i)² + 2ΣΣ over pairs of one source; effective degrees of freedom by Welch and Satterthwaite; U = t u_c. Assumes: first order; sources independent but for those of one name. Source: JCGM 100:2008, 4.2, 4.3, 5.1, 5.2, G.4 (published). Check: UncertaintyBudgetTests.</remarks>
    public static UncertaintyBudget Of<TTrace>(ReadOnlySpan<double> readings, ReadOnlySpan<Part> parts, double probability, TTrace trace)
        where TTrace : struct, ITrace
    {
        Guard.Probability(probability);
        Guard.AtLeast(readings.Length + parts.Length, 1, "number of readings and parts");
        var (variance, fourth, pairs) = (0.0, 0.0, 0.0);
        if (readings.Length > 0)
        {
            Guard.AtLeast(readings.Length, 2, "number of readings");
            var uA = OfReadings(readings, trace);
            (variance, fourth) = (uA * uA, uA * uA * uA * uA / (readings.Length - 1));
        }

        if (parts.Length > 0)
        {
            (var squares, pairs, var fourths) = OfParts(parts, trace);
            variance += squares + (2 * pairs);
            fourth += fourths;
        }

        var uncertainty = Math.Sqrt(Math.Max(0, variance));
        var degrees = fourth > 0 && uncertainty > 0 ? uncertainty * uncertainty * uncertainty * uncertainty / fourth : double.PositiveInfinity;
        if (TTrace.Writes)
            TellCombined(readings.Length > 0, parts.Length > 0, pairs != 0, uncertainty, degrees, trace);

        trace.Given("p", "probability that the expanded uncertainty holds", probability, Units.None);
        var k = trace.Line("k", "coverage factor", double.IsInfinity(degrees) ? "z((1 + p)/2)" : "t((1 + p)/2, ν_eff)", StudentT.Quantile((1 + probability) / 2, degrees), Units.None, "JCGM 100:2008, G.3");
        var expanded = trace.Line("U", "expanded uncertainty", "k × u_c", k * uncertainty, Units.Any, "JCGM 100:2008, 6.2.1");
        return new UncertaintyBudget(uncertainty, degrees, k, expanded);
    }

    private static void TellCombined<TTrace>(bool hasReadings, bool hasParts, bool hasPairs, double uncertainty, double degrees, TTrace trace)
        where TTrace : struct, ITrace
    {
        var variance = string.Join(" + ", Terms("u_A^2", "sum(e^2)", "2 × sum(e_one × e_other)"));
        trace.Line("u_c", "combined standard uncertainty", $"sqrt(max(0, {variance}))", uncertainty, Units.Any, "JCGM 100:2008, 5.1.2 and 5.2.2");
        if (hasPairs)
            trace.Caution("Contributions of one source were added before squaring. The effective degrees of freedom take the sources as independent and are then only a guide.");
        if (!double.IsInfinity(degrees))
            trace.Line("ν_eff", "effective degrees of freedom", $"u_c^4/({string.Join(" + ", Terms("u_A^4/ν_A", "sum(e^4/ν)", null))})", degrees, Units.None, "JCGM 100:2008, G.4.1");

        IEnumerable<string> Terms(string ofReadings, string ofParts, string? ofPairs)
        {
            if (hasReadings)
                yield return ofReadings;
            if (hasParts)
                yield return ofParts;
            if (hasPairs && ofPairs is not null)
                yield return ofPairs;
        }
    }

    private static double OfReadings<TTrace>(ReadOnlySpan<double> readings, TTrace trace)
        where TTrace : struct, ITrace
    {
        var summary = Readings.Summarise(readings);
        trace.Given("x", "repeated readings", readings, Units.Any);
        trace.Line("n", "number of readings", "count(x)", summary.Count, Units.None);
        trace.Line("x_mean", "mean of the readings", "sum(x)/n", summary.Mean, Units.Any, "JCGM 100:2008, 4.2.1");
        trace.Line("s", "scatter of the readings", "sqrt(sum((x − x_mean)^2)/(n − 1))", summary.Scatter, Units.Any, "JCGM 100:2008, 4.2.2");
        trace.Line("ν_A", "degrees of freedom of the scatter", "n − 1", summary.Count - 1, Units.None);
        return trace.Line("u_A", "standard uncertainty of the mean from the scatter", "s/sqrt(n)", summary.StandardUncertaintyOfMean, Units.Any, "JCGM 100:2008, 4.2.3");
    }

    private static (double Squares, double Pairs, double Fourths) OfParts<TTrace>(ReadOnlySpan<Part> parts, TTrace trace)
        where TTrace : struct, ITrace
    {
        var (squares, pairs, fourths) = (0.0, 0.0, 0.0);
        var (one, other) = TTrace.Writes ? (new List<double>(), new List<double>()) : (null, null);
        for (var i = 0; i < parts.Length; i++)
        {
            var e = Amount(parts[i]);
            squares += e * e;
            if (!double.IsPositiveInfinity(parts[i].DegreesOfFreedom))
                fourths += e * e * e * e / Guard.AboveZero(parts[i].DegreesOfFreedom, "-", "degrees of freedom");
            for (var j = 0; j < i; j++)
            {
                if (parts[i].Source != parts[j].Source)
                    continue;
                pairs += Amount(parts[j]) * e;
                one?.Add(Amount(parts[j]));
                other?.Add(e);
            }
        }

        if (TTrace.Writes)
            Tell(parts, one!, other!, trace);
        return (squares, pairs, fourths);
    }

    private static double Amount(in Part part) =>
        Guard.Finite(part.Sensitivity, "-", "sensitivity") * Guard.ZeroOrMore(part.Quantity, "", "contribution") / Guard.AboveZero(part.Divisor, "-", "divisor");

    private static void Tell<TTrace>(ReadOnlySpan<Part> parts, List<double> one, List<double> other, TTrace trace)
        where TTrace : struct, ITrace
    {
        var (q, d, c, nu, e) = (new double[parts.Length], new double[parts.Length], new double[parts.Length], new double[parts.Length], new double[parts.Length]);
        for (var i = 0; i < parts.Length; i++)
            (q[i], d[i], c[i], nu[i], e[i]) = (parts[i].Quantity, parts[i].Divisor, parts[i].Sensitivity, parts[i].DegreesOfFreedom, Amount(parts[i]));
        trace.Given("q", "what each other source adds", q, Units.Any);
        trace.Given("d", "divisor of each: 1 standard, √3 rectangular, √6 triangular, √2 arcsine, √12 resolution, 2 expanded", d, Units.None, "JCGM 100:2008, 4.3 and F.2.2.1");
        trace.Given("c", "sensitivity of each", c, Units.None);
        trace.Given("ν", "degrees of freedom of each", nu, Units.None);
        trace.Line("e", "contribution of each to the uncertainty of the value", "c × q/d", e, Units.Any, "JCGM 100:2008, 5.1.3");
        if (one.Count > 0)
        {
            trace.Given("e_one", "first of each pair of contributions from one source", one.ToArray(), Units.Any, "picked from e");
            trace.Given("e_other", "second of each pair", other.ToArray(), Units.Any, "picked from e");
        }
    }
}
