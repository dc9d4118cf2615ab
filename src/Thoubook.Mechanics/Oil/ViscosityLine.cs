using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Oil;

/// <summary>What keeps two points from giving a line of viscosity against temperature.</summary>
public enum ViscosityPointsFault
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>A temperature outside −70 to 370 °C, or a viscosity outside 0.21 to 20,000,000 mm²/s.</summary>
    OutOfRange,

    /// <summary>Both at one temperature.</summary>
    SameTemperature,

    /// <summary>The oil is not thinner at the higher temperature.</summary>
    NotThinnerHot,
}

/// <summary>Kinematic viscosity of an oil against its temperature: a straight line on the chart of ASTM D341.</summary>
/// <param name="A">[-] where the line starts.</param>
/// <param name="B">[-] how steeply it falls.</param>
public readonly record struct ViscosityLine(double A, double B)
{
    /// <summary>[m²/s] least viscosity of the chart.</summary>
    public const double LeastViscosity = 0.21e-6;

    /// <summary>[m²/s] greatest viscosity of the chart.</summary>
    public const double GreatestViscosity = 20;

    /// <summary>[K] least temperature of the chart, −70 °C.</summary>
    public const double LeastTemperature = 203.15;

    /// <summary>[K] greatest temperature of the chart, 370 °C.</summary>
    public const double GreatestTemperature = 643.15;

    /// <summary>What keeps two points from giving a line.</summary>
    /// <param name="first">[K] temperature of one point.</param>
    /// <param name="firstViscosity">[m²/s] kinematic viscosity there.</param>
    /// <param name="second">[K] temperature of the other.</param>
    /// <param name="secondViscosity">[m²/s] kinematic viscosity there.</param>
    /// <returns>The first fault found.</returns>
    /// <remarks>Source: ranges of ASTM D341-20 (from memory). Check: ViscosityLineTests.</remarks>
    public static ViscosityPointsFault Fault(double first, double firstViscosity, double second, double secondViscosity) =>
        !(IsOnChart(first, firstViscosity) && IsOnChart(second, secondViscosity)) ? ViscosityPointsFault.OutOfRange
        : first == second ? ViscosityPointsFault.SameTemperature
        : (first < second) != (firstViscosity > secondViscosity) ? ViscosityPointsFault.NotThinnerHot
        : ViscosityPointsFault.None;

    /// <summary>The line through two points.</summary>
    /// <param name="first">[K] temperature of one point.</param>
    /// <param name="firstViscosity">[m²/s] kinematic viscosity there.</param>
    /// <param name="second">[K] temperature of the other.</param>
    /// <param name="secondViscosity">[m²/s] kinematic viscosity there, less where it is hotter.</param>
    /// <returns>The line.</returns>
    /// <exception cref="ArgumentException">Two points that <see cref="Fault"/> finds fault with.</exception>
    /// <remarks>Model: log log Z = A − B log T with Z = ν + 0.7 + exp(−1.47 − 1.84 ν − 0.51 ν²), ν in mm²/s. Valid: 0.21 to 2e7 mm²/s, −70 to 370 °C. Source: ASTM D341-20 (published: formulas and worked example seen in transcription). Check: ViscosityLineTests.</remarks>
    public static ViscosityLine Through(double first, double firstViscosity, double second, double secondViscosity) =>
        Through(first, firstViscosity, second, secondViscosity, default(Silent));

    /// <summary>The same for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="first">[K] temperature of one point.</param>
    /// <param name="firstViscosity">[m²/s] kinematic viscosity there.</param>
    /// <param name="second">[K] temperature of the other.</param>
    /// <param name="secondViscosity">[m²/s] kinematic viscosity there, less where it is hotter.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>The line.</returns>
    /// <exception cref="ArgumentException">Two points that <see cref="Fault"/> finds fault with.</exception>
    /// <remarks>Source: ASTM D341-20 (published). Check: ViscosityLineTests.</remarks>
    public static ViscosityLine Through<TTrace>(double first, double firstViscosity, double second, double secondViscosity, TTrace trace)
        where TTrace : struct, ITrace
    {
        if (Fault(first, firstViscosity, second, secondViscosity) is not ViscosityPointsFault.None and var fault)
            throw new ArgumentException($"No line goes through these points: {fault}.", nameof(firstViscosity));
        trace.Given("T_1", "temperature of the first point", first, Units.Kelvin);
        trace.Given("ν_1", "kinematic viscosity there", firstViscosity, Units.SquareMetrePerSecond);
        trace.Given("T_2", "temperature of the second point", second, Units.Kelvin);
        trace.Given("ν_2", "kinematic viscosity there", secondViscosity, Units.SquareMetrePerSecond);
        var n1 = trace.Line("n_1", "viscosity of the first point in mm²/s", "1000000 × ν_1", 1e6 * firstViscosity, Units.None);
        var n2 = trace.Line("n_2", "viscosity of the second point in mm²/s", "1000000 × ν_2", 1e6 * secondViscosity, Units.None);
        var z1 = trace.Line("Z_1", "Z of the first point", "n_1 + 0.7 + exp(−1.47 − 1.84 × n_1 − 0.51 × n_1^2)", Z(n1), Units.None, "ASTM D341-20");
        var z2 = trace.Line("Z_2", "Z of the second point", "n_2 + 0.7 + exp(−1.47 − 1.84 × n_2 − 0.51 × n_2^2)", Z(n2), Units.None, "ASTM D341-20");
        var w1 = trace.Line("W_1", "log log Z of the first point", "ln(ln(Z_1) / ln(10)) / ln(10)", Math.Log10(Math.Log10(z1)), Units.None);
        var w2 = trace.Line("W_2", "log log Z of the second point", "ln(ln(Z_2) / ln(10)) / ln(10)", Math.Log10(Math.Log10(z2)), Units.None);
        var b = trace.Line("B", "fall of the line", "(W_1 − W_2) × ln(10) / ln(T_2 / T_1)", (w1 - w2) * Math.Log(10) / Math.Log(second / first), Units.None, "ASTM D341-20");
        var a = trace.Line("A", "start of the line", "W_1 + B × ln(T_1) / ln(10)", w1 + (b * Math.Log10(first)), Units.None, "ASTM D341-20");
        return new ViscosityLine(a, b);
    }

    /// <summary>Kinematic viscosity at a temperature.</summary>
    /// <param name="temperature">[K] of the oil, 203.15 to 643.15.</param>
    /// <returns>[m²/s] the viscosity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature outside the chart.</exception>
    /// <remarks>Model: Z from the line; ν by the inverse of the standard and one step of Newton's on Z(ν), which leaves an error below 1e-7. Source: ASTM D341-20 (published). Check: ViscosityLineTests.</remarks>
    public double At(double temperature) => At(temperature, default(Silent));

    /// <summary>The same for any trace that has heard of the line.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="temperature">[K] of the oil, 203.15 to 643.15.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[m²/s] the viscosity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature outside the chart.</exception>
    /// <remarks>Source: ASTM D341-20 (published). Check: ViscosityLineTests.</remarks>
    public double At<TTrace>(double temperature, TTrace trace)
        where TTrace : struct, ITrace
    {
        Guard.Within(temperature, LeastTemperature, GreatestTemperature, Units.Kelvin);
        trace.Given("T", "temperature of the oil", temperature, Units.Kelvin);
        var w = trace.Line("W", "log log Z at the temperature, no more than the stiffest there is", "min(2, A − B × ln(T) / ln(10))", Math.Min(2, A - (B * Math.Log10(temperature))), Units.None, "ASTM D341-20");
        var z = trace.Line("Z", "Z at the temperature", "10^(10^W)", Math.Pow(10, Math.Pow(10, w)), Units.None);
        var x = trace.Line("x", "Z less 0.7", "Z − 0.7", z - 0.7, Units.None);
        var rough = trace.Line("n_0", "viscosity in mm²/s by the inverse of the standard, near enough", "x − exp(−0.7487 − 3.295 × x + 0.6119 × x^2 − 0.3193 × x^3)", x - Math.Exp(-0.7487 - (3.295 * x) + (0.6119 * x * x) - (0.3193 * x * x * x)), Units.None, "ASTM D341-20");
        var e = trace.Line("e", "last term of Z there", "exp(−1.47 − 1.84 × n_0 − 0.51 × n_0^2)", LastTerm(rough), Units.None, "ASTM D341-20");
        return trace.Line("ν", "kinematic viscosity", "(n_0 − (n_0 + 0.7 + e − Z) / (1 − e × (1.84 + 1.02 × n_0))) / 1000000", (rough - ((rough + 0.7 + e - z) / (1 - (e * (1.84 + (1.02 * rough)))))) / 1e6, Units.SquareMetrePerSecond, "one step of Newton's method on Z");
    }

    /// <summary>Z of the chart.</summary>
    /// <param name="squareMillimetresPerSecond">[-] kinematic viscosity in mm²/s.</param>
    /// <returns>[-] Z.</returns>
    /// <remarks>Source: ASTM D341-20 (published). Check: ViscosityLineTests.</remarks>
    public static double Z(double squareMillimetresPerSecond) => squareMillimetresPerSecond + 0.7 + LastTerm(squareMillimetresPerSecond);

    private static double LastTerm(double n) => Math.Exp(-1.47 - (1.84 * n) - (0.51 * n * n));

    private static bool IsOnChart(double temperature, double viscosity) =>
        temperature is >= LeastTemperature and <= GreatestTemperature && viscosity is >= LeastViscosity and <= GreatestViscosity;
}
