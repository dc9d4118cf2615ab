using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Metrology;

/// <summary>Several readings of one thing, summed up.</summary>
/// <param name="Count">[-] number of readings.</param>
/// <param name="Mean">[any] their mean.</param>
/// <param name="Scatter">[any] their sample standard deviation; 0 for a single reading, which shows none.</param>
/// <param name="Least">[any] the least of them.</param>
/// <param name="Greatest">[any] the greatest of them.</param>
public readonly record struct ReadingsSummary(int Count, double Mean, double Scatter, double Least, double Greatest)
{
    /// <summary>[any] standard uncertainty of the mean from the scatter alone; not a number for a single reading.</summary>
    public double StandardUncertaintyOfMean => Count > 1 ? Scatter / Math.Sqrt(Count) : double.NaN;

    /// <summary>[any] greatest less least.</summary>
    public double Range => Greatest - Least;
}

/// <summary>Mean and scatter of repeated readings.</summary>
public static class Readings
{
    /// <summary>Mean, scatter and extremes of repeated readings, without loss where the readings are large and their scatter small.</summary>
    /// <param name="readings">[any] at least one reading, in any order; not changed.</param>
    /// <returns>[any] the summary.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No reading, or one that is not finite.</exception>
    /// <remarks>Model: mean = Σx/n; scatter = √(Σ(x − mean)²/(n − 1)), in two passes with the mean corrected once. Source: JCGM 100:2008, 4.2.1 and 4.2.2 (published). Check: ReadingsTests.</remarks>
    public static ReadingsSummary Summarise(ReadOnlySpan<double> readings)
    {
        Guard.AtLeast(readings.Length, 1, "number of readings");
        var (sum, least, greatest) = (0.0, double.PositiveInfinity, double.NegativeInfinity);
        foreach (var x in readings)
        {
            Guard.Finite(x, "", "reading");
            sum += x;
            least = Math.Min(least, x);
            greatest = Math.Max(greatest, x);
        }

        var n = readings.Length;
        var mean = sum / n;
        var correction = 0.0;
        foreach (var x in readings)
            correction += x - mean;
        mean += correction / n;

        var (squares, rest) = (0.0, 0.0);
        foreach (var x in readings)
        {
            var difference = x - mean;
            squares += difference * difference;
            rest += difference;
        }

        squares -= rest * rest / n;
        return new ReadingsSummary(n, mean, n > 1 ? Math.Sqrt(Math.Max(0, squares) / (n - 1)) : 0, least, greatest);
    }

    /// <summary>One scatter from the scatters at several places that share a method.</summary>
    /// <param name="counts">[-] readings at each place; a single reading adds nothing.</param>
    /// <param name="scatters">[any] scatter at each place, same order.</param>
    /// <returns>[any] the pooled scatter, and its degrees of freedom [-]; 0 and 0 where no place was read twice.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Lists of unlike length, a count below 1 or a scatter below 0.</exception>
    /// <remarks>Model: √(Σ(n_i − 1)s_i²/Σ(n_i − 1)). Assumes: the same repeatability at every place. Source: JCGM 100:2008, H.3.6 note and 4.2.4 (from memory). Check: ReadingsTests.</remarks>
    public static (double Scatter, int DegreesOfFreedom) PooledScatter(ReadOnlySpan<int> counts, ReadOnlySpan<double> scatters)
    {
        Guard.SameCount(scatters.Length, counts.Length, "number of scatters");
        var (squares, degrees) = (0.0, 0);
        for (var i = 0; i < counts.Length; i++)
        {
            Guard.AtLeast(counts[i], 1, "readings at a place");
            Guard.ZeroOrMore(scatters[i], "", "scatter");
            squares += (counts[i] - 1) * scatters[i] * scatters[i];
            degrees += counts[i] - 1;
        }

        return degrees == 0 ? (0, 0) : (Math.Sqrt(squares / degrees), degrees);
    }
}
