namespace Thoubook.Mechanics.Sums;

/// <summary>
/// What a sum tells while it runs. A sum is written once, generic over a trace that is a struct: with <see cref="Silent"/> every call
/// compiles away, with <see cref="Written"/> the same lines become the <see cref="Working"/>. A formula names symbols told before it,
/// uses + − × / ^, brackets and the functions of <see cref="Formulas"/>, and gives the line's value when it is evaluated again.
/// </summary>
public interface ITrace
{
    /// <summary>Whether anything is kept; a constant of the type, so that work only for the telling costs nothing when silent.</summary>
    static abstract bool Writes { get; }

    /// <summary>Tells an input.</summary>
    /// <param name="symbol">Letter used in the formulas that follow.</param>
    /// <param name="what">What it is, in words.</param>
    /// <param name="value">[any] its value.</param>
    /// <param name="unit">SI unit; <see cref="Units.Any"/> stands for the unit of the quantity asked about.</param>
    /// <param name="source">Where it comes from, where it was not the asker.</param>
    void Given(string symbol, string what, double value, string unit, string source = "");

    /// <summary>Tells an input that is a list.</summary>
    /// <param name="symbol">Letter used in the formulas that follow.</param>
    /// <param name="what">What it is, in words.</param>
    /// <param name="values">[any] its values in order; copied where kept.</param>
    /// <param name="unit">SI unit.</param>
    /// <param name="source">Where it comes from, where it was not the asker.</param>
    void Given(string symbol, string what, ReadOnlySpan<double> values, string unit, string source = "");

    /// <summary>Tells a result and gives it back.</summary>
    /// <param name="symbol">Letter used in the formulas that follow.</param>
    /// <param name="what">What it is, in words.</param>
    /// <param name="formula">How it follows from symbols told before.</param>
    /// <param name="value">[any] its value.</param>
    /// <param name="unit">SI unit.</param>
    /// <param name="source">Where the formula comes from; empty where it is plain arithmetic or the source of the whole sum.</param>
    /// <returns>[any] the value.</returns>
    double Line(string symbol, string what, string formula, double value, string unit, string source = "");

    /// <summary>Tells a result that is a list, its formula applied to the lists item by item.</summary>
    /// <param name="symbol">Letter used in the formulas that follow.</param>
    /// <param name="what">What it is, in words.</param>
    /// <param name="formula">How each item follows from the items of lists told before.</param>
    /// <param name="values">[any] its values in order; copied where kept.</param>
    /// <param name="unit">SI unit.</param>
    /// <param name="source">Where the formula comes from.</param>
    void Line(string symbol, string what, string formula, ReadOnlySpan<double> values, string unit, string source = "");

    /// <summary>Tells something true beside the answer that the asker should know.</summary>
    /// <param name="text">One sentence.</param>
    void Caution(string text);
}

/// <summary>The trace that keeps nothing.</summary>
public readonly struct Silent : ITrace
{
    /// <inheritdoc/>
    public static bool Writes => false;

    /// <inheritdoc/>
    public void Given(string symbol, string what, double value, string unit, string source = "")
    {
    }

    /// <inheritdoc/>
    public void Given(string symbol, string what, ReadOnlySpan<double> values, string unit, string source = "")
    {
    }

    /// <inheritdoc/>
    public double Line(string symbol, string what, string formula, double value, string unit, string source = "") => value;

    /// <inheritdoc/>
    public void Line(string symbol, string what, string formula, ReadOnlySpan<double> values, string unit, string source = "")
    {
    }

    /// <inheritdoc/>
    public void Caution(string text)
    {
    }
}

/// <summary>Units that a line may carry.</summary>
public static class Units
{
    /// <summary>The unit of the quantity that was asked about, whatever it is.</summary>
    public const string Any = "any";

    /// <summary>A plain number.</summary>
    public const string None = "-";

    /// <summary>Length.</summary>
    public const string Metre = "m";

    /// <summary>Temperature or temperature difference.</summary>
    public const string Kelvin = "K";

    /// <summary>Coefficient of expansion.</summary>
    public const string PerKelvin = "1/K";

    /// <summary>Pressure or stress.</summary>
    public const string Pascal = "Pa";

    /// <summary>Torque.</summary>
    public const string NewtonMetre = "N m";

    /// <summary>Force.</summary>
    public const string Newton = "N";

    /// <summary>Rate of a spring.</summary>
    public const string NewtonPerMetre = "N/m";

    /// <summary>Mass.</summary>
    public const string Kilogram = "kg";

    /// <summary>Angle.</summary>
    public const string Radian = "rad";

    /// <summary>Area.</summary>
    public const string SquareMetre = "m²";

    /// <summary>Volume.</summary>
    public const string CubicMetre = "m³";

    /// <summary>Flow of volume.</summary>
    public const string CubicMetrePerSecond = "m³/s";

    /// <summary>Speed of turning.</summary>
    public const string RadianPerSecond = "rad/s";

    /// <summary>Time.</summary>
    public const string Second = "s";

    /// <summary>Kinematic viscosity.</summary>
    public const string SquareMetrePerSecond = "m²/s";

    /// <summary>Dynamic viscosity.</summary>
    public const string PascalSecond = "Pa s";

    /// <summary>Density.</summary>
    public const string KilogramPerCubicMetre = "kg/m³";

    /// <summary>Power.</summary>
    public const string Watt = "W";

    /// <summary>Speed along a path.</summary>
    public const string MetrePerSecond = "m/s";

    /// <summary>Specific heat capacity.</summary>
    public const string JoulePerKilogramKelvin = "J/(kg K)";

    /// <summary>Thermal conductivity.</summary>
    public const string WattPerMetreKelvin = "W/(m K)";
}
