using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Metrology;

/// <summary>A hint that one reading stands far from the others. Never a reason to drop it without looking.</summary>
public static class Outliers
{
    /// <summary>The reading that stands farthest from the mean of all.</summary>
    /// <param name="At">[-] its index.</param>
    /// <param name="Distance">[-] its distance from the mean in units of the scatter.</param>
    /// <param name="Critical">[-] distance above which it deserves a second look.</param>
    public readonly record struct OutlierHint(int At, double Distance, double Critical)
    {
        /// <summary>Whether the reading deserves a second look.</summary>
        public bool IsSuspect => Distance > Critical;
    }

    /// <summary>The reading farthest from the mean, and how far would be surprising among so many normal readings.</summary>
    /// <param name="readings">[any] repeated readings of one thing; fewer than 3 give no hint.</param>
    /// <param name="significance">[-] probability of a false hint, strictly between 0 and 1.</param>
    /// <returns>[-] the hint, or nothing for fewer than 3 readings or readings that are all alike.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Significance not strictly between 0 and 1, or a reading not finite.</exception>
    /// <remarks>Model: Grubbs' test, two-sided: G = |x − mean|/scatter against its critical value. Assumes: normal readings, at most one outlier. Source: Grubbs, Procedures for detecting outlying observations in samples, 1969 (published). Check: OutliersTests.</remarks>
    public static OutlierHint? Farthest(ReadOnlySpan<double> readings, double significance = 0.05)
    {
        if (readings.Length < 3)
            return null;
        var summary = Readings.Summarise(readings);
        if (!(summary.Scatter > 1e-14 * Math.Max(Math.Abs(summary.Least), Math.Abs(summary.Greatest))))
            return null;
        var at = 0;
        for (var i = 1; i < readings.Length; i++)
        {
            if (Math.Abs(readings[i] - summary.Mean) > Math.Abs(readings[at] - summary.Mean))
                at = i;
        }

        return new OutlierHint(at, Math.Abs(readings[at] - summary.Mean) / summary.Scatter, CriticalDistance(readings.Length, significance));
    }

    /// <summary>Distance from the mean, in units of the scatter, that the farthest of so many normal readings exceeds with the stated probability.</summary>
    /// <param name="count">[-] number of readings, 3 or more.</param>
    /// <param name="significance">[-] two-sided, strictly between 0 and 1.</param>
    /// <returns>[-] critical distance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 3 readings, or significance not strictly between 0 and 1.</exception>
    /// <remarks>Model: ((n − 1)/√n) √(t²/(n − 2 + t²)), t = Student's quantile at 1 − α/(2n) with n − 2 degrees of freedom. Accuracy: Bonferroni's inequality makes it very slightly too large. Source: Grubbs, 1969, as tabulated for one suspected outlier (published). Check: OutliersTests.</remarks>
    public static double CriticalDistance(int count, double significance)
    {
        Guard.AtLeast(count, 3);
        Guard.Probability(significance);
        var t = StudentT.Quantile(1 - (significance / (2.0 * count)), count - 2);
        return (count - 1) / Math.Sqrt(count) * Math.Sqrt(t * t / (count - 2 + (t * t)));
    }
}
