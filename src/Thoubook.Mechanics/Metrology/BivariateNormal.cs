using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Metrology;

/// <summary>Two standard normal quantities that are correlated.</summary>
public static class BivariateNormal
{
    /// <summary>Probability that both lie below their points.</summary>
    /// <param name="first">[-] point of the first, in its standard deviations; infinite is allowed.</param>
    /// <param name="second">[-] point of the second, in its standard deviations; infinite is allowed.</param>
    /// <param name="correlation">[-] −1 to 1.</param>
    /// <returns>[-] probability.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Correlation outside −1 to 1, or a point not a number.</exception>
    /// <remarks>Model: the derivative with respect to the correlation, exp(−(h²−2ρhk+k²)/(2(1−ρ²)))/(2π√(1−ρ²)), integrated over arcsin ρ from the nearer case that is known in closed form (0 or 1). Accuracy: about 1e-14. Source: Plackett, A reduction formula for normal multivariate integrals, 1954 (from memory). Check: BivariateNormalTests.</remarks>
    public static double BothBelow(double first, double second, double correlation)
    {
        Guard.Within(correlation, -1, 1, "-");
        if (double.IsNaN(first) || double.IsNaN(second))
            Guard.Finite(first + second, "-");
        if (correlation < 0)
            return Math.Max(0, Normal.Below(first) - BothBelow(first, -second, -correlation));
        if (double.IsInfinity(first) || double.IsInfinity(second))
            return Math.Min(Normal.Below(first), Normal.Below(second));

        var angle = Math.Asin(correlation);
        if (correlation <= 0.7)
            return (Normal.Below(first) * Normal.Below(second)) + (GaussLegendre.Integrate(Slope, 0, angle) / (2 * Math.PI));

        // From full correlation downwards, in steps that shrink towards it, because there the integrand may change quickly.
        var rest = 0.0;
        var gap = 0.5 * Math.PI - angle;
        for (var step = 0; step < 24 && gap > 0; step++)
        {
            var next = step == 23 ? 0 : gap / 2.5;
            rest += GaussLegendre.Integrate(SlopeFromFull, next, gap);
            gap = next;
        }

        return Math.Clamp(Normal.Below(Math.Min(first, second)) - (rest / (2 * Math.PI)), 0, 1);

        double Slope(double theta)
        {
            var (sine, cosine) = Math.SinCos(theta);
            return Math.Exp(-((first * first) - (2 * first * second * sine) + (second * second)) / (2 * cosine * cosine));
        }

        // The same with the angle counted from full correlation: h² − 2hk cos g + k² = (h − k)² + 2hk(1 − cos g), so that nothing cancels.
        double SlopeFromFull(double fromFull)
        {
            var difference = first - second;
            var sine = Math.Sin(fromFull);
            var half = Math.Sin(0.5 * fromFull);
            return sine == 0 ? 0 : Math.Exp(-((difference * difference) + (4 * first * second * half * half)) / (2 * sine * sine));
        }
    }

    /// <summary>Probability that each lies within its own interval.</summary>
    /// <param name="first">[-] interval of the first, in its standard deviations.</param>
    /// <param name="second">[-] interval of the second, in its standard deviations.</param>
    /// <param name="correlation">[-] −1 to 1.</param>
    /// <returns>[-] probability.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Correlation outside −1 to 1.</exception>
    /// <remarks>Model: four corners of BothBelow. Accuracy: about 1e-14 absolute. Source: definition (published as a double integral in JCGM 106:2012, 9.5). Check: BivariateNormalTests.</remarks>
    public static double BothWithin(Interval first, Interval second, double correlation) => Math.Max(0,
        BothBelow(first.Greatest, second.Greatest, correlation)
        - BothBelow(first.Least, second.Greatest, correlation)
        - BothBelow(first.Greatest, second.Least, correlation)
        + BothBelow(first.Least, second.Least, correlation));
}
