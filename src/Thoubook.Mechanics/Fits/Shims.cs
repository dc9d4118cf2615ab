using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Fits;

/// <summary>Shims chosen from stock.</summary>
/// <param name="Pieces">[m] thickness of each, thickest first; empty where no shim comes nearest.</param>
/// <param name="Thickness">[m] of all together.</param>
/// <param name="Clearance">[m] that is left in the measured gap.</param>
/// <param name="StandardUncertainty">[m] of that clearance.</param>
public sealed record ChosenShims(IReadOnlyList<double> Pieces, double Thickness, double Clearance, double StandardUncertainty);

/// <summary>Selection of shims for a wanted clearance.</summary>
public static class Shims
{
    /// <summary>The pieces of stock that leave the clearance nearest to the wanted one; of equally good ones the fewest.</summary>
    /// <param name="gap">[m] measured with the parts clamped as in service.</param>
    /// <param name="gapUncertainty">[m] standard uncertainty of the gap, 0 or more.</param>
    /// <param name="wanted">[m] clearance to be left.</param>
    /// <param name="stock">[m] thicknesses at hand, each as often as wanted; above 0, 1 to 60 of them.</param>
    /// <param name="shimUncertainty">[m] standard uncertainty of one shim's thickness, 0 or more.</param>
    /// <param name="mostPieces">[-] most pieces in the pack, 1 to 4.</param>
    /// <returns>The choice.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number outside its range.</exception>
    /// <remarks>Model: least |gap − Σ shims − wanted| over all packs; u = √(u_gap² + n u_shim²). Source: practice of the trade, see docs/sums/fits.md (common practice). Check: ShimsTests.</remarks>
    public static ChosenShims Choose(double gap, double gapUncertainty, double wanted, ReadOnlySpan<double> stock, double shimUncertainty, int mostPieces = 2)
    {
        Guard.Finite(gap, "m");
        Guard.ZeroOrMore(gapUncertainty, "m");
        Guard.Finite(wanted, "m");
        Guard.ZeroOrMore(shimUncertainty, "m");
        Guard.Within(stock.Length, 1, 60, "", "number of thicknesses in stock");
        Guard.Within(mostPieces, 1, 4, "", nameof(mostPieces));
        var sorted = stock.ToArray();
        foreach (var thickness in sorted)
            Guard.AboveZero(thickness, "m", "thickness in stock");
        Array.Sort(sorted);

        var needed = gap - wanted;
        var best = new List<double>();
        var bestMiss = Math.Abs(needed);
        var pack = new List<double>();
        for (var pieces = 1; pieces <= mostPieces; pieces++)
            Search(pieces, sorted.Length - 1, needed);

        var total = best.Sum();
        return new ChosenShims(best, total, gap - total, Math.Sqrt((gapUncertainty * gapUncertainty) + (best.Count * shimUncertainty * shimUncertainty)));

        void Search(int left, int thickest, double rest)
        {
            if (left == 0)
            {
                // A larger pack must be clearly nearer, not by rounding alone.
                if (Math.Abs(rest) < bestMiss - 1e-9)
                    (best, bestMiss) = ([.. pack], Math.Abs(rest));
                return;
            }

            for (var i = thickest; i >= 0; i--)
            {
                pack.Add(sorted[i]);
                Search(left - 1, i, rest - sorted[i]);
                pack.RemoveAt(pack.Count - 1);
            }
        }
    }

    /// <summary>Standard uncertainty that rounding to the nearest step of stock adds to a clearance.</summary>
    /// <param name="step">[m] from one thickness in stock to the next, 0 or more.</param>
    /// <returns>[m] standard uncertainty.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Step below 0 or not finite.</exception>
    /// <remarks>Model: step/√12, the error being anywhere within ± half a step. Source: JCGM 100:2008, 4.3.7 (published). Check: ShimsTests.</remarks>
    public static double StepUncertainty(double step) => Metrology.Uncertainty.Resolution(step);
}
