using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Metrology;

/// <summary>Standard uncertainties: from what is known, combined, and widened to a stated probability.</summary>
public static class Uncertainty
{
    /// <summary>Standard uncertainty of a value that lies anywhere within ± a half width, all equally likely.</summary>
    /// <param name="halfWidth">[any] 0 or more.</param>
    /// <returns>[any] standard uncertainty.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Half width below 0 or not finite.</exception>
    /// <remarks>Model: a/√3. Source: JCGM 100:2008, 4.3.7 (published). Check: UncertaintyTests.</remarks>
    public static double Rectangular(double halfWidth) => Guard.ZeroOrMore(halfWidth) / Math.Sqrt(3);

    /// <summary>Standard uncertainty of a value within ± a half width, the middle likeliest, falling straight to nothing at the ends.</summary>
    /// <param name="halfWidth">[any] 0 or more.</param>
    /// <returns>[any] standard uncertainty.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Half width below 0 or not finite.</exception>
    /// <remarks>Model: a/√6. Source: JCGM 100:2008, 4.3.9 (published). Check: UncertaintyTests.</remarks>
    public static double Triangular(double halfWidth) => Guard.ZeroOrMore(halfWidth) / Math.Sqrt(6);

    /// <summary>Standard uncertainty of a value that swings between ± a half width, such as a temperature under a thermostat.</summary>
    /// <param name="halfWidth">[any] 0 or more.</param>
    /// <returns>[any] standard uncertainty.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Half width below 0 or not finite.</exception>
    /// <remarks>Model: a/√2. Source: JCGM 100:2008, H.1.3.4 (published). Check: UncertaintyTests.</remarks>
    public static double Arcsine(double halfWidth) => Guard.ZeroOrMore(halfWidth) / Math.Sqrt(2);

    /// <summary>Standard uncertainty of a reading that is rounded to the gauge's step.</summary>
    /// <param name="step">[any] smallest step shown; 0 or more.</param>
    /// <returns>[any] standard uncertainty.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Step below 0 or not finite.</exception>
    /// <remarks>Model: step/√12. Source: JCGM 100:2008, F.2.2.1 (published). Check: UncertaintyTests.</remarks>
    public static double Resolution(double step) => Guard.ZeroOrMore(step) / Math.Sqrt(12);

    /// <summary>Combined standard uncertainty of a result from independent contributions.</summary>
    /// <param name="contributions">[any] sensitivity × standard uncertainty of each source, signs allowed, unit of the result.</param>
    /// <returns>[any] combined standard uncertainty.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A contribution not finite.</exception>
    /// <remarks>Model: √Σ(c_i u_i)². Assumes: independent sources, first order. Source: JCGM 100:2008, 5.1.2 (published). Check: UncertaintyTests.</remarks>
    public static double Combined(ReadOnlySpan<double> contributions)
    {
        var squares = 0.0;
        foreach (var contribution in contributions)
        {
            Guard.Finite(contribution, "", "contribution");
            squares += contribution * contribution;
        }

        return Math.Sqrt(squares);
    }

    /// <summary>Combined standard uncertainty of a result from contributions that may be correlated.</summary>
    /// <param name="contributions">[any] sensitivity × standard uncertainty of each source, with its sign, unit of the result.</param>
    /// <param name="correlations">[-] n × n, row-major, index i*n+j, symmetric, 1 on the diagonal; not changed.</param>
    /// <returns>[any] combined standard uncertainty.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A wrong size, a contribution not finite or a correlation outside −1 to 1.</exception>
    /// <remarks>Model: √ΣΣ r_ij (c_i u_i)(c_j u_j). Assumes: first order. Source: JCGM 100:2008, 5.2.2 (published). Check: UncertaintyTests.</remarks>
    public static double Combined(ReadOnlySpan<double> contributions, ReadOnlySpan<double> correlations)
    {
        var n = contributions.Length;
        Guard.SameCount(correlations.Length, n * n, "number of correlations");
        var variance = 0.0;
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
                variance += Guard.Within(correlations[(i * n) + j], -1, 1, "-", "correlation") * Guard.Finite(contributions[i], "", "contribution") * contributions[j];
        }

        return Math.Sqrt(Math.Max(0, variance));
    }

    /// <summary>Combined standard uncertainty of a result from contributions by named source, where the same source is one and the same error.</summary>
    /// <param name="contributions">Contributions; those that share a source are added with their signs before they are squared.</param>
    /// <returns>[any] combined standard uncertainty.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A contribution not finite.</exception>
    /// <remarks>Model: √Σ_sources(Σ c_i u_i)², that is correlation 1 within a source and 0 between sources. Source: JCGM 100:2008, 5.2.2 and F.1.2.3 (published). Check: UncertaintyTests.</remarks>
    public static double Combined(IEnumerable<Contribution> contributions)
    {
        ArgumentNullException.ThrowIfNull(contributions);
        var squares = 0.0;
        foreach (var amount in BySource(contributions).Values)
            squares += amount * amount;
        return Math.Sqrt(squares);
    }

    /// <summary>Correlation of two results that share sources.</summary>
    /// <param name="first">Contributions to the first.</param>
    /// <param name="second">Contributions to the second.</param>
    /// <returns>[-] −1 to 1; 0 where either has no uncertainty.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A contribution not finite.</exception>
    /// <remarks>Model: Σ over shared sources of c_1 u c_2 u, over the product of the combined uncertainties. Source: JCGM 100:2008, F.1.2.3 (published). Check: UncertaintyTests.</remarks>
    public static double Correlation(IEnumerable<Contribution> first, IEnumerable<Contribution> second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        var (one, other) = (BySource(first), BySource(second));
        var (shared, squaresOne, squaresOther) = (0.0, 0.0, 0.0);
        foreach (var (source, amount) in one)
        {
            squaresOne += amount * amount;
            if (other.TryGetValue(source, out var also))
                shared += amount * also;
        }

        foreach (var amount in other.Values)
            squaresOther += amount * amount;
        return squaresOne == 0 || squaresOther == 0 ? 0 : Math.Clamp(shared / Math.Sqrt(squaresOne * squaresOther), -1, 1);
    }

    /// <summary>Effective degrees of freedom of a combined standard uncertainty.</summary>
    /// <param name="contributions">[any] sensitivity × standard uncertainty of each independent source.</param>
    /// <param name="degreesOfFreedom">[-] of each, same order, above 0; infinite where the uncertainty is taken as known.</param>
    /// <returns>[-] effective degrees of freedom, not truncated; infinite where every uncertainty is known.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Lists of unlike length, or a degree of freedom not above 0.</exception>
    /// <remarks>Model: u⁴/Σ((c_i u_i)⁴/ν_i). Assumes: independent sources. Source: JCGM 100:2008, G.4.1 formula G.2b (published). Check: UncertaintyTests.</remarks>
    public static double EffectiveDegreesOfFreedom(ReadOnlySpan<double> contributions, ReadOnlySpan<double> degreesOfFreedom)
    {
        Guard.SameCount(degreesOfFreedom.Length, contributions.Length, "number of degrees of freedom");
        var scale = Combined(contributions);
        if (scale == 0)
            return double.PositiveInfinity;
        var sum = 0.0;
        for (var i = 0; i < contributions.Length; i++)
        {
            if (double.IsPositiveInfinity(degreesOfFreedom[i]))
                continue;
            var ratio = contributions[i] / scale;
            sum += ratio * ratio * ratio * ratio / Guard.AboveZero(degreesOfFreedom[i], "-", "degrees of freedom");
        }

        return sum == 0 ? double.PositiveInfinity : 1 / sum;
    }

    /// <summary>Factor by which a standard uncertainty is widened so that a two-sided interval holds the stated probability.</summary>
    /// <param name="probability">[-] strictly between 0 and 1, such as 0.95.</param>
    /// <param name="degreesOfFreedom">[-] above 0; infinite gives the normal factor. Truncate before where a table's value is wanted.</param>
    /// <returns>[-] coverage factor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Probability not strictly between 0 and 1, or degrees of freedom not above 0.</exception>
    /// <remarks>Model: Student's t at (1 + p)/2. Source: JCGM 100:2008, G.3 (published). Check: UncertaintyTests.</remarks>
    public static double CoverageFactor(double probability, double degreesOfFreedom) =>
        StudentT.Quantile(0.5 * (1 + Guard.Probability(probability)), degreesOfFreedom);

    /// <summary>Expanded uncertainty: half the width of the interval that holds the stated probability.</summary>
    /// <param name="standardUncertainty">[any] 0 or more.</param>
    /// <param name="probability">[-] strictly between 0 and 1.</param>
    /// <param name="degreesOfFreedom">[-] above 0; infinite is allowed.</param>
    /// <returns>[any] expanded uncertainty.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: U = k u. Source: JCGM 100:2008, 6.2.1 (published). Check: UncertaintyTests.</remarks>
    public static double Expanded(double standardUncertainty, double probability, double degreesOfFreedom) =>
        Guard.ZeroOrMore(standardUncertainty) * CoverageFactor(probability, degreesOfFreedom);

    private static Dictionary<string, double> BySource(IEnumerable<Contribution> contributions)
    {
        var bySource = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var (source, amount, _) in contributions)
            bySource[source] = bySource.GetValueOrDefault(source) + Guard.Finite(amount, "", "contribution");
        return bySource;
    }
}

/// <summary>What one named source adds to the uncertainty of a result.</summary>
/// <param name="Source">Name of the source; the same name is one and the same error wherever it appears.</param>
/// <param name="Amount">[any] sensitivity × standard uncertainty, with the sign of the sensitivity.</param>
/// <param name="DegreesOfFreedom">[-] of its standard uncertainty; infinite where that is taken as known.</param>
public readonly record struct Contribution(string Source, double Amount, double DegreesOfFreedom = double.PositiveInfinity);
