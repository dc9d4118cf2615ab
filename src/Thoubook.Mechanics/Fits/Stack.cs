using Thoubook.Mechanics.Metrology;
using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Fits;

/// <summary>How a size is thought to lie within its half width.</summary>
public enum Spread
{
    /// <summary>Anywhere, all equally likely; standard deviation a/√3.</summary>
    Rectangular,

    /// <summary>The middle likeliest; standard deviation a/√6.</summary>
    Triangular,

    /// <summary>Normal, the half width being three standard deviations, not cut off.</summary>
    Normal,

    /// <summary>Swinging between the ends; standard deviation a/√2.</summary>
    Arcsine,
}

/// <summary>One size in a stack.</summary>
/// <param name="Coefficient">[-] what one unit of the size adds to the gap, with its sign.</param>
/// <param name="Nominal">[any] middle of the size, at 20 °C.</param>
/// <param name="HalfWidth">[any] half the width between its limits, 0 or more.</param>
/// <param name="Spread">How it lies between them.</param>
public readonly record struct StackTerm(double Coefficient, double Nominal, double HalfWidth, Spread Spread = Spread.Rectangular)
{
    /// <summary>[1/K] coefficient of linear expansion; 0 keeps the size as at 20 °C.</summary>
    public double Expansion { get; init; }

    /// <summary>[K] its own temperature above 20 °C; negative when colder.</summary>
    public double Rise { get; init; }

    /// <summary>[-] share of the half width that a steady offset of the mean may use up, 0 to 1.</summary>
    public double MeanShift { get; init; }

    /// <summary>[-] coefficient at the size's own temperature.</summary>
    public double HotCoefficient => Coefficient * (1 + (Expansion * Rise));

    /// <summary>[any] standard deviation of the size at 20 °C.</summary>
    public double StandardDeviation => Spread switch
    {
        Spread.Rectangular => HalfWidth / Math.Sqrt(3),
        Spread.Triangular => HalfWidth / Math.Sqrt(6),
        Spread.Normal => HalfWidth / 3,
        _ => HalfWidth / Math.Sqrt(2),
    };

    /// <summary>A measured size: normal about its best value.</summary>
    /// <param name="coefficient">[-] what one unit of the size adds to the gap.</param>
    /// <param name="value">[any] best value at 20 °C.</param>
    /// <param name="standardUncertainty">[any] 0 or more.</param>
    /// <returns>[any] the term.</returns>
    /// <remarks>Model: half width of three standard uncertainties, normal. Source: JCGM 100:2008, 4.3.6 (published). Check: StackTests.</remarks>
    public static StackTerm Measured(double coefficient, double value, double standardUncertainty) =>
        new(coefficient, value, 3 * Guard.ZeroOrMore(standardUncertainty), Spread.Normal);
}

/// <summary>A gap as the sum of sizes, in closed form.</summary>
/// <param name="Nominal">[any] with every size at its middle; also the mean.</param>
/// <param name="WorstHalfWidth">[any] every size at the worse of its limits at once.</param>
/// <param name="RootSumSquareHalfWidth">[any] half widths combined as independent.</param>
/// <param name="InflatedHalfWidth">[any] the same times 1.5, for sizes that are not centred.</param>
/// <param name="ShiftedHalfWidth">[any] steady offsets added straight, the rest combined as independent.</param>
/// <param name="StandardDeviation">[any] of the gap from the spread of each size.</param>
public readonly record struct StackedGap(double Nominal, double WorstHalfWidth, double RootSumSquareHalfWidth, double InflatedHalfWidth, double ShiftedHalfWidth, double StandardDeviation)
{
    /// <summary>[any] from the least to the greatest gap that the limits allow.</summary>
    public Interval Worst => Interval.Between(Nominal - WorstHalfWidth, Nominal + WorstHalfWidth);

    /// <summary>[any] nominal ± the root sum square.</summary>
    public Interval Likely => Interval.Between(Nominal - RootSumSquareHalfWidth, Nominal + RootSumSquareHalfWidth);
}

/// <summary>Linear stacks: end float, interference, backlash, protrusion as sums of sizes of any parts.</summary>
public static class Stack
{
    /// <summary>Factor of the inflated root sum square.</summary>
    public const double InflationFactor = 1.5;

    /// <summary>The gap that sizes make, each at its own temperature.</summary>
    /// <param name="terms">[any] at least one size, in any order; not changed.</param>
    /// <returns>[any] nominal, half widths and standard deviation.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No term, or a number in one outside its range.</exception>
    /// <remarks>Model: g = Σ a_i L_i; worst Σ|a_i|T_i; root sum square √Σ(a_i T_i)²; inflated 1.5 times that; shifted Σ m_i|a_i|T_i + √Σ((1 − m_i)a_i T_i)². Assumes: independent sizes. Source: Scholz, Tolerance stack analysis methods, 1995 (published). Check: StackTests.</remarks>
    public static StackedGap Of(ReadOnlySpan<StackTerm> terms)
    {
        Guard.AtLeast(terms.Length, 1, "number of terms");
        var (nominal, worst, squares, variance, shifted, shiftedSquares) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
        foreach (ref readonly var term in terms)
        {
            Check(term);
            var a = term.HotCoefficient;
            var t = Math.Abs(a) * term.HalfWidth;
            nominal += a * term.Nominal;
            worst += t;
            squares += t * t;
            var deviation = a * term.StandardDeviation;
            variance += deviation * deviation;
            shifted += term.MeanShift * t;
            var rest = (1 - term.MeanShift) * t;
            shiftedSquares += rest * rest;
        }

        var root = Math.Sqrt(squares);
        return new StackedGap(nominal, worst, root, InflationFactor * root, shifted + Math.Sqrt(shiftedSquares), Math.Sqrt(variance));
    }

    internal static void Check(in StackTerm term)
    {
        Guard.Finite(term.Coefficient, "-", "coefficient");
        Guard.Finite(term.Nominal, "", "nominal");
        Guard.ZeroOrMore(term.HalfWidth, "", "half width");
        Guard.Within(term.Expansion, -1e-4, 1e-3, "1/K", "expansion");
        Guard.Within(term.Rise, -293, 1200, "K", "rise above 20 °C");
        Guard.Within(term.MeanShift, 0, 1, "-", "mean shift");
    }
}
