using Thoubook.Mechanics.Metrology;
using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

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
    public double StandardDeviation => HalfWidth / Divisor;

    /// <summary>[-] half width over standard deviation.</summary>
    internal double Divisor => Spread switch
    {
        Spread.Rectangular => Math.Sqrt(3),
        Spread.Triangular => Math.Sqrt(6),
        Spread.Normal => 3,
        _ => Math.Sqrt(2),
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
    public static StackedGap Of(ReadOnlySpan<StackTerm> terms) => Of(terms, default(Silent));

    /// <summary>The same for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="terms">[any] at least one size; not changed.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[any] nominal, half widths and standard deviation.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No term, or a number in one outside its range.</exception>
    /// <remarks>Model: as Of. Source: Scholz, Tolerance stack analysis methods, 1995 (published). Check: StackTests.</remarks>
    public static StackedGap Of<TTrace>(ReadOnlySpan<StackTerm> terms, TTrace trace)
        where TTrace : struct, ITrace
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

        if (TTrace.Writes)
            Tell(terms, trace);
        const string Scholz = "Scholz, 1995";
        trace.Line("G", "gap with every size at its middle", "sum(a_T × L)", nominal, Units.Metre);
        trace.Line("W", "half width at worst", "sum(abs(a_T) × b)", worst, Units.Metre, Scholz);
        trace.Line("G_worst_least", "least gap that the limits allow", "G − W", nominal - worst, Units.Metre);
        trace.Line("G_worst_greatest", "greatest gap that the limits allow", "G + W", nominal + worst, Units.Metre);
        var root = trace.Line("R", "half width by root sum square", "sqrt(sum((a_T × b)^2))", Math.Sqrt(squares), Units.Metre, Scholz);
        var inflated = trace.Line("R_infl", "half width by root sum square times 1.5, for sizes that are not centred", "1.5 × R", InflationFactor * root, Units.Metre, "Bender's factor (from memory)");
        var withShift = trace.Line("R_shift", "half width with steady offsets", "sum(m × abs(a_T) × b) + sqrt(sum(((1 − m) × a_T × b)^2))", shifted + Math.Sqrt(shiftedSquares), Units.Metre, Scholz);
        var deviationOfGap = trace.Line("σ", "standard deviation of the gap", "sqrt(sum((a_T × b/d)^2))", Math.Sqrt(variance), Units.Metre, "JCGM 100:2008, 5.1.2");
        return new StackedGap(nominal, worst, root, inflated, withShift, deviationOfGap);
    }

    /// <summary>Probability that the gap lies within what is wanted, the gap taken as normal.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="gap">The gap, as told before by <see cref="Of{TTrace}"/>.</param>
    /// <param name="wanted">[any] limits of the gap.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[-] probabilities within, below and above.</returns>
    /// <remarks>Model: normal with the gap's mean and standard deviation. Valid: several terms of like size, or normal terms; else draw. Source: JCGM 100:2008, G.2 (published). Check: StackTests.</remarks>
    public static ConformanceProbability Within<TTrace>(in StackedGap gap, Interval wanted, TTrace trace)
        where TTrace : struct, ITrace
    {
        if (gap.StandardDeviation == 0)
            return Conformance.Exact(gap.Nominal, wanted);
        var (below, above) = (0.0, 0.0);
        if (!double.IsNegativeInfinity(wanted.Least))
        {
            trace.Given("G_min", "least gap wanted", wanted.Least, Units.Metre);
            below = trace.Line("P_below", "probability of less than that", "Phi((G_min − G)/σ)", Normal.Below((wanted.Least - gap.Nominal) / gap.StandardDeviation), Units.None, "JCGM 100:2008, G.2");
        }

        if (!double.IsPositiveInfinity(wanted.Greatest))
        {
            trace.Given("G_max", "greatest gap wanted", wanted.Greatest, Units.Metre);
            above = trace.Line("P_above", "probability of more than that", "Phi((G − G_max)/σ)", Normal.Below((gap.Nominal - wanted.Greatest) / gap.StandardDeviation), Units.None, "JCGM 100:2008, G.2");
        }

        var within = Math.Max(0, 1 - below - above);
        if (TTrace.Writes && wanted != Interval.Unlimited)
        {
            var formula = double.IsNegativeInfinity(wanted.Least) ? "1 − P_above" : double.IsPositiveInfinity(wanted.Greatest) ? "1 − P_below" : "max(0, 1 − P_below − P_above)";
            trace.Line("P", "probability that the gap lies within what is wanted, taken as normal", formula, within, Units.None);
            trace.Caution("The probability takes the gap as normal. With one size much wider than the others and not normal, ask for draws.");
        }

        return new ConformanceProbability(within, below, above);
    }

    /// <summary>Random draws of the gap, each size drawn from its own spread.</summary>
    /// <param name="terms">[any] at least one size; not changed.</param>
    /// <param name="draws">[-] number of draws, 2 or more; 100,000 or more for the tails.</param>
    /// <param name="seed">[-] start of the draws; the same seed gives the same sample whatever the number of threads.</param>
    /// <returns>[any] the sample.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No term, fewer than 2 draws, or a number in a term outside its range.</exception>
    /// <remarks>Model: Monte Carlo of g = Σ a_i L_i. Source: JCGM 101:2008, 7 (from memory). Check: StackTests.</remarks>
    public static Sample Draw(ReadOnlySpan<StackTerm> terms, int draws, ulong seed)
    {
        Guard.AtLeast(terms.Length, 1, "number of terms");
        var inputs = new Draw[terms.Length];
        var coefficients = new double[terms.Length];
        for (var i = 0; i < terms.Length; i++)
        {
            Check(terms[i]);
            coefficients[i] = terms[i].HotCoefficient;
            inputs[i] = terms[i].Spread switch
            {
                Spread.Rectangular => Metrology.Draw.Rectangular(terms[i].Nominal, terms[i].HalfWidth),
                Spread.Triangular => Metrology.Draw.Triangular(terms[i].Nominal, terms[i].HalfWidth),
                Spread.Normal => Metrology.Draw.Normal(terms[i].Nominal, terms[i].HalfWidth / 3),
                _ => Metrology.Draw.Arcsine(terms[i].Nominal, terms[i].HalfWidth),
            };
        }

        return MonteCarlo.Propagate(inputs, Gap, draws, seed);

        double Gap(ReadOnlySpan<double> sizes)
        {
            var sum = 0.0;
            for (var i = 0; i < sizes.Length; i++)
                sum += coefficients[i] * sizes[i];
            return sum;
        }
    }

    private static void Tell<TTrace>(ReadOnlySpan<StackTerm> terms, TTrace trace)
        where TTrace : struct, ITrace
    {
        Given("L", "middle of each size at 20 °C", Units.Metre, static term => term.Nominal, terms, trace);
        Given("a", "what one unit of each size adds to the gap", Units.None, static term => term.Coefficient, terms, trace);
        Given("b", "half the width between the limits of each size", Units.Metre, static term => term.HalfWidth, terms, trace);
        Given("d", "half width over standard deviation of each size: √3 rectangular, √6 triangular, 3 normal, √2 arcsine", Units.None, static term => term.Divisor, terms, trace);
        Given("m", "share of each half width that a steady offset may use up", Units.None, static term => term.MeanShift, terms, trace);
        Given("α", "mean coefficient of linear expansion of each part", Units.PerKelvin, static term => term.Expansion, terms, trace);
        Given("ΔT", "temperature of each part above 20 °C", Units.Kelvin, static term => term.Rise, terms, trace);
        trace.Line("a_T", "the same at each part's own temperature", "a × (1 + α × ΔT)", Values(static term => term.HotCoefficient, terms), Units.None);
    }

    private static void Given<TTrace>(string symbol, string what, string unit, Func<StackTerm, double> of, ReadOnlySpan<StackTerm> terms, TTrace trace)
        where TTrace : struct, ITrace => trace.Given(symbol, what, Values(of, terms), unit);

    private static double[] Values(Func<StackTerm, double> of, ReadOnlySpan<StackTerm> terms)
    {
        var values = new double[terms.Length];
        for (var i = 0; i < terms.Length; i++)
            values[i] = of(terms[i]);
        return values;
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
