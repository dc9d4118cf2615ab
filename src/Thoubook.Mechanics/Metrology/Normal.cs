namespace Thoubook.Mechanics.Metrology;

/// <summary>The standard normal distribution: mean 0, standard deviation 1.</summary>
public static class Normal
{
    private const double InverseRootPi = 0.56418958354775628695;
    private const double RootHalf = 0.70710678118654752440;
    private const double InverseRootTwoPi = 0.39894228040143267794;

    // Quantile: coefficients of Algorithm AS 241, highest power first.
    private static readonly double[] CentreTop = [2.5090809287301226727e3, 3.3430575583588128105e4, 6.7265770927008700853e4, 4.5921953931549871457e4, 1.3731693765509461125e4, 1.9715909503065514427e3, 1.3314166789178437745e2, 3.3871328727963666080e0];

    private static readonly double[] CentreFoot = [5.2264952788528545610e3, 2.8729085735721942674e4, 3.9307895800092710610e4, 2.1213794301586595867e4, 5.3941960214247511077e3, 6.8718700749205790830e2, 4.2313330701600911252e1, 1];

    private static readonly double[] TailTop = [7.74545014278341407640e-4, 2.27238449892691845833e-2, 2.41780725177450611770e-1, 1.27045825245236838258e0, 3.64784832476320460504e0, 5.76949722146069140550e0, 4.63033784615654529590e0, 1.42343711074968357734e0];

    private static readonly double[] TailFoot = [1.05075007164441684324e-9, 5.47593808499534494600e-4, 1.51986665636164571966e-2, 1.48103976427480074590e-1, 6.89767334985100004550e-1, 1.67638483018380384940e0, 2.05319162663775882187e0, 1];

    private static readonly double[] FarTop = [2.01033439929228813265e-7, 2.71155556874348757815e-5, 1.24266094738807843860e-3, 2.65321895265761230930e-2, 2.96560571828504891230e-1, 1.78482653991729133580e0, 5.46378491116411436990e0, 6.65790464350110377720e0];

    private static readonly double[] FarFoot = [2.04426310338993978564e-15, 1.42151175831644588870e-7, 1.84631831751005468180e-5, 7.86869131145613259100e-4, 1.48753612908506148525e-2, 1.36929880922735805310e-1, 5.99832206555887937690e-1, 1];

    /// <summary>Density at a point.</summary>
    /// <param name="z">[-] standard deviations from the mean.</param>
    /// <returns>[-] density.</returns>
    /// <remarks>Model: exp(−z²/2)/√(2π). Source: JCGM 101:2008, 6.4.7 (from memory). Check: NormalTests.</remarks>
    public static double Density(double z) => InverseRootTwoPi * Math.Exp(-0.5 * z * z);

    /// <summary>Probability of lying below a point (Φ).</summary>
    /// <param name="z">[-] standard deviations from the mean; infinite is allowed.</param>
    /// <returns>[-] probability, with its relative accuracy kept far into the tail.</returns>
    /// <remarks>Model: Φ(z) = erfc(−z/√2)/2 by rational approximations. Accuracy: about 1e-15 relative up to |z| = 8. Source: Cody, Rational Chebyshev approximations for the error function, 1969, coefficients (from memory, confirmed against 40-digit values). Check: NormalTests.</remarks>
    public static double Below(double z) => 0.5 * ErrorComplement(-z * RootHalf);

    /// <summary>Probability of lying above a point.</summary>
    /// <param name="z">[-] standard deviations from the mean; infinite is allowed.</param>
    /// <returns>[-] probability, with its relative accuracy kept far into the tail.</returns>
    /// <remarks>Model: 1 − Φ(z), computed as Φ(−z). Source: as Below (from memory). Check: NormalTests.</remarks>
    public static double Above(double z) => 0.5 * ErrorComplement(z * RootHalf);

    /// <summary>Point below which a given probability lies.</summary>
    /// <param name="probability">[-] strictly between 0 and 1.</param>
    /// <returns>[-] standard deviations from the mean.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Probability not strictly between 0 and 1.</exception>
    /// <remarks>Model: rational approximations in three ranges. Accuracy: about 1e-15 relative. Source: Wichura, Algorithm AS 241, 1988, coefficients (from memory, confirmed against 40-digit values). Check: NormalTests.</remarks>
    public static double Quantile(double probability)
    {
        Numerics.Guard.Probability(probability);
        return UncheckedQuantile(probability);
    }

    internal static double UncheckedQuantile(double p)
    {
        var q = p - 0.5;
        if (Math.Abs(q) <= 0.425)
        {
            var r = 0.180625 - (q * q);
            return q * Polynomial(r, CentreTop) / Polynomial(r, CentreFoot);
        }

        var tail = Math.Sqrt(-Math.Log(q < 0 ? p : 1 - p));
        var z = tail <= 5
            ? Polynomial(tail - 1.6, TailTop) / Polynomial(tail - 1.6, TailFoot)
            : Polynomial(tail - 5, FarTop) / Polynomial(tail - 5, FarFoot);
        return q < 0 ? -z : z;
    }

    private static double ErrorComplement(double x)
    {
        var y = Math.Abs(x);
        if (y <= 0.46875)
        {
            var s = y * y;
            var top = (((((((1.85777706184603153e-1 * s) + 3.16112374387056560e0) * s) + 1.13864154151050156e2) * s) + 3.77485237685302021e2) * s) + 3.20937758913846947e3;
            var foot = ((((((s + 2.36012909523441209e1) * s) + 2.44024637934444173e2) * s) + 1.28261652607737228e3) * s) + 2.84423683343917062e3;
            return 1 - (x * top / foot);
        }

        if (y > 27.3)
            return double.IsNaN(x) ? double.NaN : x > 0 ? 0 : 2;

        double ratio;
        if (y <= 4)
        {
            var top = (((((((((((((((2.15311535474403846e-8 * y) + 5.64188496988670089e-1) * y) + 8.88314979438837594e0) * y) + 6.61191906371416295e1) * y) + 2.98635138197400131e2) * y) + 8.81952221241769090e2) * y) + 1.71204761263407058e3) * y) + 2.05107837782607147e3) * y) + 1.23033935479799725e3;
            var foot = ((((((((((((((y + 1.57449261107098347e1) * y) + 1.17693950891312499e2) * y) + 5.37181101862009858e2) * y) + 1.62138957456669019e3) * y) + 3.29079923573345963e3) * y) + 4.36261909014324716e3) * y) + 3.43936767414372164e3) * y) + 1.23033935480374942e3;
            ratio = top / foot;
        }
        else
        {
            var s = 1 / (y * y);
            var top = (((((((((1.63153871373020978e-2 * s) + 3.05326634961232344e-1) * s) + 3.60344899949804439e-1) * s) + 1.25781726111229246e-1) * s) + 1.60837851487422766e-2) * s) + 6.58749161529837803e-4;
            var foot = ((((((((s + 2.56852019228982242e0) * s) + 1.87295284992346725e0) * s) + 5.27905102951428412e-1) * s) + 6.05183413124413191e-2) * s) + 2.33520497626869185e-3;
            ratio = (InverseRootPi - (s * top / foot)) / y;
        }

        // exp(−y²) with the square split, so that its rounding does not spoil the tail.
        var coarse = Math.Truncate(y * 16) * 0.0625;
        var rest = (y - coarse) * (y + coarse);
        var result = Math.Exp(-coarse * coarse) * Math.Exp(-rest) * ratio;
        return x < 0 ? 2 - result : result;
    }

    private static double Polynomial(double x, ReadOnlySpan<double> coefficients)
    {
        var value = 0.0;
        foreach (var coefficient in coefficients)
            value = (value * x) + coefficient;
        return value;
    }
}
