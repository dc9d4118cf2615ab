using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Metrology;

/// <summary>How an input is drawn at random.</summary>
public readonly record struct Draw
{
    private enum Shape
    {
        Normal,
        Student,
        Rectangular,
        Triangular,
        Arcsine,
        Trapezoid,
    }

    private readonly Shape _shape;
    private readonly double _middle;
    private readonly double _scale;
    private readonly double _more;

    private Draw(Shape shape, double middle, double scale, double more = 0) => (_shape, _middle, _scale, _more) = (shape, Guard.Finite(middle), Guard.ZeroOrMore(scale), more);

    /// <summary>Normal.</summary>
    /// <param name="mean">[any] mean.</param>
    /// <param name="standardUncertainty">[any] 0 or more.</param>
    /// <returns>The way to draw it.</returns>
    /// <remarks>Source: JCGM 101:2008, 6.4.7 (from memory). Check: MonteCarloTests.</remarks>
    public static Draw Normal(double mean, double standardUncertainty) => new(Shape.Normal, mean, standardUncertainty);

    /// <summary>Student's t about a mean.</summary>
    /// <param name="mean">[any] mean.</param>
    /// <param name="standardUncertainty">[any] scale, 0 or more.</param>
    /// <param name="degreesOfFreedom">[-] above 0.</param>
    /// <returns>The way to draw it.</returns>
    /// <remarks>Model: √(ν (r₁^(−2/ν) − 1)) cos 2πr₂. Source: JCGM 101:2008, 6.4.9; Bailey, Polar generation of random variates with the t-distribution, 1994 (from memory). Check: MonteCarloTests.</remarks>
    public static Draw Student(double mean, double standardUncertainty, double degreesOfFreedom) => new(Shape.Student, mean, standardUncertainty, Guard.AboveZero(degreesOfFreedom, "-"));

    /// <summary>All values within ± a half width equally likely.</summary>
    /// <param name="middle">[any] middle.</param>
    /// <param name="halfWidth">[any] 0 or more.</param>
    /// <returns>The way to draw it.</returns>
    /// <remarks>Source: JCGM 101:2008, 6.4.2 (from memory). Check: MonteCarloTests.</remarks>
    public static Draw Rectangular(double middle, double halfWidth) => new(Shape.Rectangular, middle, halfWidth);

    /// <summary>The middle likeliest, falling straight to nothing at ± a half width.</summary>
    /// <param name="middle">[any] middle.</param>
    /// <param name="halfWidth">[any] 0 or more.</param>
    /// <returns>The way to draw it.</returns>
    /// <remarks>Source: JCGM 101:2008, 6.4.5 (from memory). Check: MonteCarloTests.</remarks>
    public static Draw Triangular(double middle, double halfWidth) => new(Shape.Triangular, middle, halfWidth);

    /// <summary>Swinging as a sine between ± a half width.</summary>
    /// <param name="middle">[any] middle.</param>
    /// <param name="halfWidth">[any] 0 or more.</param>
    /// <returns>The way to draw it.</returns>
    /// <remarks>Source: JCGM 101:2008, 6.4.6 (from memory). Check: MonteCarloTests.</remarks>
    public static Draw Arcsine(double middle, double halfWidth) => new(Shape.Arcsine, middle, halfWidth);

    /// <summary>Rectangular with a half width that is itself not exactly known.</summary>
    /// <param name="middle">[any] middle.</param>
    /// <param name="halfWidth">[any] 0 or more.</param>
    /// <param name="halfWidthDoubt">[any] the half width lies within ± this, 0 to the half width.</param>
    /// <returns>The way to draw it.</returns>
    /// <remarks>Source: JCGM 101:2008, 6.4.3 (from memory). Check: MonteCarloTests.</remarks>
    public static Draw Trapezoid(double middle, double halfWidth, double halfWidthDoubt) => new(Shape.Trapezoid, middle, halfWidth, Guard.Within(halfWidthDoubt, 0, halfWidth));

    internal double Next(ref RandomStream stream)
    {
        var r = stream.Next();
        switch (_shape)
        {
            case Shape.Normal:
                return _middle + (_scale * Metrology.Normal.UncheckedQuantile(r));
            case Shape.Student:
                return _middle + (_scale * Math.Sqrt(_more * (Math.Pow(r, -2 / _more) - 1)) * Math.Cos(2 * Math.PI * stream.Next()));
            case Shape.Rectangular:
                return _middle + (_scale * ((2 * r) - 1));
            case Shape.Triangular:
                return _middle + (_scale * (r + stream.Next() - 1));
            case Shape.Arcsine:
                return _middle + (_scale * Math.Sin(2 * Math.PI * r));
            default:
                var half = _scale + (_more * ((2 * r) - 1));
                return _middle + (half * ((2 * stream.Next()) - 1));
        }
    }
}

/// <summary>A sorted sample of random draws.</summary>
public sealed class Sample
{
    private readonly double[] _sorted;

    internal Sample(double[] values)
    {
        var summary = Readings.Summarise(values);
        (Mean, StandardDeviation) = (summary.Mean, summary.Scatter);
        Array.Sort(values);
        _sorted = values;
    }

    /// <summary>[-] number of draws.</summary>
    public int Count => _sorted.Length;

    /// <summary>[any] mean of the draws.</summary>
    public double Mean { get; }

    /// <summary>[any] standard deviation of the draws.</summary>
    public double StandardDeviation { get; }

    /// <summary>Value below which a share of the draws lies.</summary>
    /// <param name="probability">[-] strictly between 0 and 1.</param>
    /// <returns>[any] the value, between two draws where it falls between them.</returns>
    /// <remarks>Model: the sorted draws at p(n − 1), straight between neighbours. Source: JCGM 101:2008, 7.7 (from memory). Check: MonteCarloTests.</remarks>
    public double Quantile(double probability)
    {
        var at = Guard.Probability(probability) * (_sorted.Length - 1);
        var below = (int)at;
        return below + 1 >= _sorted.Length ? _sorted[^1] : _sorted[below] + ((at - below) * (_sorted[below + 1] - _sorted[below]));
    }

    /// <summary>Share of the draws within an interval.</summary>
    /// <param name="interval">[any] the interval, ends included.</param>
    /// <returns>[-] the share.</returns>
    /// <remarks>Model: a count. Source: JCGM 101:2008, 7.6 (from memory). Check: MonteCarloTests.</remarks>
    public double ShareWithin(Interval interval) => (double)(Below(Math.BitIncrement(interval.Greatest)) - Below(interval.Least)) / _sorted.Length;

    /// <summary>The shortest interval that holds a share of the draws.</summary>
    /// <param name="probability">[-] strictly between 0 and 1.</param>
    /// <returns>[any] the interval.</returns>
    /// <remarks>Model: shortest of all runs of p n sorted draws. Source: JCGM 101:2008, 7.7.4 (from memory). Check: MonteCarloTests.</remarks>
    public Interval Shortest(double probability)
    {
        var run = Math.Clamp((int)Math.Round(Guard.Probability(probability) * _sorted.Length), 1, _sorted.Length - 1);
        var best = 0;
        for (var i = 1; i + run < _sorted.Length; i++)
        {
            if (_sorted[i + run] - _sorted[i] < _sorted[best + run] - _sorted[best])
                best = i;
        }

        return Interval.Between(_sorted[best], _sorted[best + run]);
    }

    private int Below(double value)
    {
        var (low, high) = (0, _sorted.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (_sorted[middle] < value)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }
}

/// <summary>Propagation of distributions by random draws.</summary>
public static class MonteCarlo
{
    /// <summary>A result from one draw of each input; the same numbers give the same result.</summary>
    /// <param name="inputs">[any] one draw of each input, in order.</param>
    /// <returns>[any] the result.</returns>
    public delegate double Model(ReadOnlySpan<double> inputs);

    private const int Block = 4096;

    /// <summary>Draws the inputs again and again and collects the results.</summary>
    /// <param name="inputs">[any] how each input is drawn.</param>
    /// <param name="model">The result from one draw of each; called from several threads.</param>
    /// <param name="draws">[-] number of draws, 2 or more.</param>
    /// <param name="seed">[-] start of the draws; the same seed gives the same sample whatever the number of threads.</param>
    /// <returns>[any] the sample.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 2 draws, or a result that is not finite.</exception>
    /// <remarks>Model: Monte Carlo; the draws go in blocks, each with its own random stream. Accuracy: a probability p is known to √(p(1 − p)/n). Source: JCGM 101:2008, 7 (from memory). Check: MonteCarloTests.</remarks>
    public static Sample Propagate(ReadOnlySpan<Draw> inputs, Model model, int draws, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(model);
        Guard.AtLeast(draws, 2);
        var how = inputs.ToArray();
        var values = new double[draws];
        Parallel.For(0, (draws + Block - 1) / Block, block =>
        {
            var stream = new RandomStream(seed, (ulong)block);
            var x = new double[how.Length];
            var end = Math.Min(draws, (block + 1) * Block);
            for (var i = block * Block; i < end; i++)
            {
                for (var j = 0; j < how.Length; j++)
                    x[j] = how[j].Next(ref stream);
                values[i] = model(x);
            }
        });
        return new Sample(values);
    }
}
