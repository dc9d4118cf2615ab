using System.Globalization;
using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Metrology;

/// <summary>What lies between two limits, both allowed. A missing limit is infinite. The default is nil to nil.</summary>
public readonly record struct Interval
{
    private Interval(double least, double greatest)
    {
        Least = least;
        Greatest = greatest;
    }

    /// <summary>[any] lower limit; −∞ where there is none.</summary>
    public double Least { get; }

    /// <summary>[any] upper limit; +∞ where there is none.</summary>
    public double Greatest { get; }

    /// <summary>[any] from the lower limit to the upper; infinite where one is missing.</summary>
    public double Width => Greatest - Least;

    /// <summary>[any] half-way between two limits.</summary>
    public double Middle => 0.5 * (Least + Greatest);

    /// <summary>No limit on either side.</summary>
    public static Interval Unlimited { get; } = new(double.NegativeInfinity, double.PositiveInfinity);

    /// <summary>Between two limits.</summary>
    /// <param name="least">[any] lower limit; −∞ where there is none.</param>
    /// <param name="greatest">[any] upper limit, not below the lower; +∞ where there is none.</param>
    /// <returns>[any] the interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A limit not a number, or the lower above the upper.</exception>
    /// <remarks>Model: closed at both ends. Source: JCGM 106:2012, 3.3 (from memory). Check: ConformanceTests.</remarks>
    public static Interval Between(double least, double greatest)
    {
        if (double.IsNaN(least))
            Guard.Finite(least);
        if (!(greatest >= least))
            Guard.Within(greatest, least, double.PositiveInfinity);
        return new Interval(least, greatest);
    }

    /// <summary>A lower limit only.</summary>
    /// <param name="least">[any] lower limit.</param>
    /// <returns>[any] the interval.</returns>
    /// <remarks>Model: open above. Source: JCGM 106:2012, 3.3 (from memory). Check: ConformanceTests.</remarks>
    public static Interval AtLeast(double least) => Between(least, double.PositiveInfinity);

    /// <summary>An upper limit only.</summary>
    /// <param name="greatest">[any] upper limit.</param>
    /// <returns>[any] the interval.</returns>
    /// <remarks>Model: open below. Source: JCGM 106:2012, 3.3 (from memory). Check: ConformanceTests.</remarks>
    public static Interval AtMost(double greatest) => Between(double.NegativeInfinity, greatest);

    /// <summary>Whether a value lies within, the limits included.</summary>
    /// <param name="value">[any] the value.</param>
    /// <returns>True where it does.</returns>
    /// <remarks>Model: closed at both ends. Source: JCGM 106:2012, 3.3 (from memory). Check: ConformanceTests.</remarks>
    public bool Contains(double value) => value >= Least && value <= Greatest;

    /// <summary>Both limits moved inwards by the same amount.</summary>
    /// <param name="margin">[any] inwards; negative moves outwards.</param>
    /// <returns>[any] the narrower interval, or nothing where none is left.</returns>
    /// <remarks>Model: guard band on both sides. Source: JCGM 106:2012, 8.2.2 (from memory). Check: ConformanceTests.</remarks>
    public Interval? Inwards(double margin)
    {
        var (least, greatest) = (Least + margin, Greatest - margin);
        return greatest >= least ? new Interval(least, greatest) : null;
    }

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Least:G9} to {Greatest:G9}");
}
