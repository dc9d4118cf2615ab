namespace Thoubook.Mechanics.Numerics;

/// <summary>Integrals of smooth functions over an interval by a twenty-point rule, exact for polynomials up to degree 39.</summary>
public static class GaussLegendre
{
    private const int Points = 20;
    private static readonly double[] Nodes = new double[Points];
    private static readonly double[] Weights = new double[Points];

    static GaussLegendre()
    {
        // Zeros of the Legendre polynomial by Newton's method from the usual cosine estimate.
        for (var i = 0; i < Points; i++)
        {
            var x = Math.Cos(Math.PI * (i + 0.75) / (Points + 0.5));
            var slope = 0.0;
            for (var step = 0; step < 10; step++)
            {
                var (before, now) = (1.0, x);
                for (var degree = 2; degree <= Points; degree++)
                    (before, now) = (now, ((((2 * degree) - 1) * x * now) - ((degree - 1) * before)) / degree);
                slope = Points * ((x * now) - before) / ((x * x) - 1);
                x -= now / slope;
            }

            Nodes[i] = x;
            Weights[i] = 2 / ((1 - (x * x)) * slope * slope);
        }
    }

    /// <summary>Integrates a smooth function from one end to the other.</summary>
    /// <param name="function">[any] smooth over the interval.</param>
    /// <param name="from">[any] lower end.</param>
    /// <param name="to">[any] upper end.</param>
    /// <returns>[any] the integral.</returns>
    public static double Integrate(Func<double, double> function, double from, double to)
    {
        ArgumentNullException.ThrowIfNull(function);
        var (middle, half) = (0.5 * (from + to), 0.5 * (to - from));
        var sum = 0.0;
        for (var i = 0; i < Points; i++)
            sum += Weights[i] * function(middle + (half * Nodes[i]));
        return half * sum;
    }
}
