using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Metrology;

/// <summary>Student's t distribution, for any degrees of freedom above zero, whole or not. Infinite degrees of freedom give the normal distribution.</summary>
public static class StudentT
{
    private const double Many = 400;

    /// <summary>Density at a point.</summary>
    /// <param name="t">[-] distance from the mean in standard uncertainties.</param>
    /// <param name="degreesOfFreedom">[-] above 0; infinite is allowed.</param>
    /// <returns>[-] density.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Degrees of freedom not above 0.</exception>
    /// <remarks>Model: Γ((ν+1)/2)/(√(νπ) Γ(ν/2)) (1+t²/ν)^(−(ν+1)/2). Source: JCGM 101:2008, 6.4.9 (from memory). Check: StudentTTests.</remarks>
    public static double Density(double t, double degreesOfFreedom)
    {
        CheckDegrees(degreesOfFreedom);
        if (double.IsPositiveInfinity(degreesOfFreedom))
            return Normal.Density(t);
        return GammaRatio(0.5 * degreesOfFreedom) / Math.Sqrt(degreesOfFreedom * Math.PI) * Math.Exp(-0.5 * (degreesOfFreedom + 1) * LogOnePlus(t * t / degreesOfFreedom));
    }

    /// <summary>Probability of lying below a point.</summary>
    /// <param name="t">[-] distance from the mean in standard uncertainties; infinite is allowed.</param>
    /// <param name="degreesOfFreedom">[-] above 0; infinite is allowed.</param>
    /// <returns>[-] probability, with its relative accuracy kept in the tail.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Degrees of freedom not above 0, or t not a number.</exception>
    /// <remarks>Model: half the regularised incomplete beta function at ν/(ν+t²), by its continued fraction; above 400 degrees of freedom Hill's series to the normal deviate. Accuracy: about 1e-13 relative; in tails below 1e-20 with more than 400 degrees of freedom 1e-6. Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.5.8 and 26.7.1 (from memory). Check: StudentTTests.</remarks>
    public static double Below(double t, double degreesOfFreedom)
    {
        CheckDegrees(degreesOfFreedom);
        if (double.IsNaN(t))
            Guard.Finite(t, "-");
        if (double.IsPositiveInfinity(degreesOfFreedom))
            return Normal.Below(t);
        var tail = Tail(Math.Abs(t), degreesOfFreedom);
        return t < 0 ? tail : 1 - tail;
    }

    /// <summary>Point below which a given probability lies.</summary>
    /// <param name="probability">[-] strictly between 0 and 1.</param>
    /// <param name="degreesOfFreedom">[-] above 0; infinite is allowed.</param>
    /// <returns>[-] distance from the mean in standard uncertainties.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Probability not strictly between 0 and 1, or degrees of freedom not above 0.</exception>
    /// <remarks>Model: Newton's method on the logarithm of the tail, kept between bounds. Accuracy: about 1e-13 relative. Valid: answers up to 1e150. Source: definition (published in JCGM 100:2008, table G.2). Check: StudentTTests.</remarks>
    public static double Quantile(double probability, double degreesOfFreedom)
    {
        Guard.Probability(probability);
        CheckDegrees(degreesOfFreedom);
        if (double.IsPositiveInfinity(degreesOfFreedom))
            return Normal.Quantile(probability);
        if (probability == 0.5)
            return 0;
        var tail = Math.Min(probability, 1 - probability);
        var t = UpperQuantile(tail, degreesOfFreedom);
        return probability < 0.5 ? -t : t;
    }

    private static double UpperQuantile(double tail, double nu)
    {
        var (low, high) = (0.0, 1.0);
        while (Tail(high, nu) > tail && high < 1e150)
            (low, high) = (high, high * 4);
        var z = -Normal.UncheckedQuantile(tail);
        var t = z + (((z * z * z) + z) / (4 * nu));
        if (!(t > low && t < high))
            t = 0.5 * (low + high);
        for (var step = 0; step < 200; step++)
        {
            var now = Tail(t, nu);
            if (now > tail)
                low = t;
            else
                high = t;
            var next = t + (now * Math.Log(now / tail) / Density(t, nu));
            if (!(next > low && next < high))
                next = 0.5 * (low + high);
            if (Math.Abs(next - t) <= 4e-16 * Math.Abs(next))
                return next;
            t = next;
        }

        return t;
    }

    /// <summary>P(T > t) for t ≥ 0.</summary>
    private static double Tail(double t, double nu)
    {
        if (double.IsPositiveInfinity(t))
            return 0;
        if (nu > Many)
            return TailOfMany(t, nu);
        var (a, b) = (0.5 * nu, 0.5);
        var square = t * t;
        var x = nu / (nu + square);
        var y = square / (nu + square);
        if (y == 0)
            return 0.5;

        // x^a y^b / B(a, b)
        var front = Math.Exp(-a * LogOnePlus(square / nu)) * Math.Sqrt(y) * GammaRatio(a) / Math.Sqrt(Math.PI);
        return x < (a + 1) / (a + b + 2)
            ? 0.5 * front * Fraction(a, b, x) / a
            : 0.5 - (0.5 * front * Fraction(b, a, y) / b);
    }

    /// <summary>With many degrees of freedom the fraction loses digits; there the normal deviate of equal tail follows from a series in 1/ν² (Hill, Algorithm 395, 1970).</summary>
    private static double TailOfMany(double t, double nu)
    {
        var a = nu - 0.5;
        var b = 48 * a * a;
        var y = a * LogOnePlus(t * t / nu);
        var series = (((((((-0.4 * y) - 3.3) * y) - 24) * y) - 85.5) / ((0.8 * y * y) + 100 + b)) + y + 3;
        return Normal.Above(((series / b) + 1) * Math.Sqrt(y));
    }

    /// <summary>The continued fraction of the incomplete beta function, evaluated forwards.</summary>
    private static double Fraction(double a, double b, double x)
    {
        const double Tiny = 1e-300;
        var c = 1.0;
        var d = 1 - ((a + b) * x / (a + 1));
        d = 1 / (Math.Abs(d) < Tiny ? Tiny : d);
        var value = d;
        for (var m = 1; m < 10_000; m++)
        {
            var even = m * (b - m) * x / ((a + (2 * m) - 1) * (a + (2 * m)));
            Advance(even);
            var odd = -(a + m) * (a + b + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1));
            if (Math.Abs(Advance(odd) - 1) < 3e-16)
                break;
        }

        return value;

        double Advance(double coefficient)
        {
            d = 1 + (coefficient * d);
            d = 1 / (Math.Abs(d) < Tiny ? Tiny : d);
            c = 1 + (coefficient / c);
            if (Math.Abs(c) < Tiny)
                c = Tiny;
            value *= d * c;
            return d * c;
        }
    }

    /// <summary>Γ(a + ½)/Γ(a): moved up to where its asymptotic series is exact to the last digits.</summary>
    private static double GammaRatio(double a)
    {
        var back = 1.0;
        while (a < 32)
        {
            back *= a / (a + 0.5);
            a += 1;
        }

        var r = 1 / a;
        var series = 1 + (r * ((-1.0 / 8) + (r * ((1.0 / 128) + (r * ((5.0 / 1024) + (r * ((-21.0 / 32768) + (r * ((-399.0 / 262144) + (r * ((869.0 / 4194304) + (r * 39325.0 / 33554432)))))))))))));
        return back * Math.Sqrt(a) * series;
    }

    /// <summary>ln(1 + x) to the last digits for small x: the rounding of 1 + x is divided out again.</summary>
    private static double LogOnePlus(double x)
    {
        var sum = 1 + x;
        return sum == 1 ? x : double.IsInfinity(sum) ? sum : Math.Log(sum) * (x / (sum - 1));
    }

    private static void CheckDegrees(double degreesOfFreedom)
    {
        if (!double.IsPositiveInfinity(degreesOfFreedom))
            Guard.AboveZero(degreesOfFreedom, "-");
    }
}
