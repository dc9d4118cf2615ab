using System.Globalization;

namespace Thoubook.Mechanics.Sums;

/// <summary>What sort of thing an input or an output of a sum is; it decides the unit a door reads it in.</summary>
public enum Measure
{
    /// <summary>A plain number.</summary>
    Number,

    /// <summary>Any quantity, the same for every input so marked.</summary>
    Any,

    /// <summary>A difference of that same quantity (for a temperature a difference in kelvins).</summary>
    AnyDifference,

    /// <summary>A length, in metres.</summary>
    Length,

    /// <summary>A temperature, in kelvins.</summary>
    Temperature,

    /// <summary>A coefficient of expansion, in 1/K.</summary>
    Expansion,

    /// <summary>A difference of temperatures, in kelvins.</summary>
    TemperatureDifference,

    /// <summary>A pressure, in pascals; gauge unless its name says otherwise.</summary>
    Pressure,

    /// <summary>A torque, in newton metres.</summary>
    Torque,

    /// <summary>A force, in newtons.</summary>
    Force,

    /// <summary>A spring rate, in N/m.</summary>
    Stiffness,

    /// <summary>A mass, in kilograms.</summary>
    Mass,

    /// <summary>An angle, in radians.</summary>
    Angle,

    /// <summary>An area, in m².</summary>
    Area,

    /// <summary>A volume, in m³.</summary>
    Volume,

    /// <summary>A flow of volume, in m³/s.</summary>
    Flow,

    /// <summary>A speed of turning, in rad/s.</summary>
    RotationalSpeed,

    /// <summary>A time, in seconds.</summary>
    Time,

    /// <summary>A kinematic viscosity, in m²/s.</summary>
    KinematicViscosity,

    /// <summary>A dynamic viscosity, in Pa s.</summary>
    DynamicViscosity,

    /// <summary>A density, in kg/m³.</summary>
    Density,

    /// <summary>A power, in watts; no sum asks for one.</summary>
    Power,

    /// <summary>A speed along a path, in m/s; no sum asks for one.</summary>
    Velocity,

    /// <summary>A specific heat capacity, in J/(kg K); no sum asks for one.</summary>
    HeatCapacity,

    /// <summary>A thermal conductivity, in W/(m K); no sum asks for one.</summary>
    Conductivity,

    /// <summary>A word out of a list.</summary>
    Word,

    /// <summary>A name that the asker chooses, or of a material.</summary>
    Name,
}

/// <summary>The numbers that an input may have.</summary>
/// <param name="Least">[any] lower end.</param>
/// <param name="Greatest">[any] upper end.</param>
/// <param name="Ends">Whether the ends themselves are allowed.</param>
public readonly record struct Allowed(double Least, double Greatest, Ends Ends)
{
    /// <summary>Every finite number.</summary>
    public static Allowed Finite { get; } = new(double.NegativeInfinity, double.PositiveInfinity, Ends.Open);

    /// <summary>Above 0.</summary>
    public static Allowed AboveZero { get; } = new(0, double.PositiveInfinity, Ends.Open);

    /// <summary>0 or more.</summary>
    public static Allowed ZeroOrMore { get; } = new(0, double.PositiveInfinity, Ends.LeastClosed);

    /// <summary>Strictly between 0 and 1.</summary>
    public static Allowed Probability { get; } = new(0, 1, Ends.Open);

    /// <summary>Between two numbers, both allowed.</summary>
    /// <param name="least">[any] least.</param>
    /// <param name="greatest">[any] greatest.</param>
    /// <returns>The range.</returns>
    public static Allowed Between(double least, double greatest) => new(least, greatest, Ends.Closed);

    /// <summary>Whether a number is allowed; never one that is not finite.</summary>
    /// <param name="value">[any] the number.</param>
    /// <returns>True where it is.</returns>
    public bool Contains(double value) => double.IsFinite(value) && Ends switch
    {
        Ends.Closed => value >= Least && value <= Greatest,
        Ends.LeastClosed => value >= Least && value < Greatest,
        _ => value > Least && value < Greatest,
    };

    /// <summary>The range in words.</summary>
    /// <param name="unit">SI unit to name.</param>
    /// <returns>Such as "above 0 m".</returns>
    public string InWords(string unit)
    {
        var suffix = unit is "-" or Units.Any ? "" : " " + unit;
        return (double.IsInfinity(Least), double.IsInfinity(Greatest), Ends) switch
        {
            (true, true, _) => "any finite number" + (suffix.Length > 0 ? $" of{suffix}" : ""),
            (false, true, Ends.Open) => string.Create(CultureInfo.InvariantCulture, $"above {Least:G6}{suffix}"),
            (false, true, _) => string.Create(CultureInfo.InvariantCulture, $"{Least:G6}{suffix} or more"),
            (_, _, Ends.Open) => string.Create(CultureInfo.InvariantCulture, $"above {Least:G6} and below {Greatest:G6}{suffix}"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{Least:G6} to {Greatest:G6}{suffix}"),
        };
    }
}

/// <summary>Which ends of a range are allowed.</summary>
public enum Ends
{
    /// <summary>Neither.</summary>
    Open,

    /// <summary>The lower one.</summary>
    LeastClosed,

    /// <summary>Both.</summary>
    Closed,
}

/// <summary>One input of a sum.</summary>
/// <param name="Key">What the asker writes before the equals sign.</param>
/// <param name="Symbol">Its letter in the working; empty for words and names.</param>
/// <param name="Name">What it is, in words.</param>
/// <param name="Measure">What sort of thing it is.</param>
public sealed record SumInput(string Key, string Symbol, string Name, Measure Measure)
{
    /// <summary>The numbers it may have.</summary>
    public Allowed Allowed { get; init; } = Allowed.Finite;

    /// <summary>[any] what is taken where it is left out; with neither a default nor <see cref="IsOptional"/> it must be given.</summary>
    public double? Default { get; init; }

    /// <summary>Whether it counts something: a whole number.</summary>
    public bool IsWhole { get; init; }

    /// <summary>Whether it may be left out without a default.</summary>
    public bool IsOptional { get; init; }

    /// <summary>Name of the list it belongs to, where it may be given several times; the inputs of one list are given equally often, in the same order, or not at all.</summary>
    public string? List { get; init; }

    /// <summary>The words it may be, where it is a word; the first is taken where it is left out.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>SI unit.</summary>
    public string Unit => UnitOf(Measure);

    /// <summary>SI unit of a sort of thing; <see cref="Units.Any"/> where the asker decides.</summary>
    /// <param name="measure">The sort.</param>
    /// <returns>The unit; empty for words and names.</returns>
    public static string UnitOf(Measure measure) => measure switch
    {
        Measure.Number => Units.None,
        Measure.Any or Measure.AnyDifference => Units.Any,
        Measure.Length => Units.Metre,
        Measure.Temperature => Units.Kelvin,
        Measure.Expansion => Units.PerKelvin,
        Measure.TemperatureDifference => Units.Kelvin,
        Measure.Pressure => Units.Pascal,
        Measure.Torque => Units.NewtonMetre,
        Measure.Force => Units.Newton,
        Measure.Stiffness => Units.NewtonPerMetre,
        Measure.Mass => Units.Kilogram,
        Measure.Angle => Units.Radian,
        Measure.Area => Units.SquareMetre,
        Measure.Volume => Units.CubicMetre,
        Measure.Flow => Units.CubicMetrePerSecond,
        Measure.RotationalSpeed => Units.RadianPerSecond,
        Measure.Time => Units.Second,
        Measure.KinematicViscosity => Units.SquareMetrePerSecond,
        Measure.DynamicViscosity => Units.PascalSecond,
        Measure.Density => Units.KilogramPerCubicMetre,
        Measure.Power => Units.Watt,
        Measure.Velocity => Units.MetrePerSecond,
        Measure.HeatCapacity => Units.JoulePerKilogramKelvin,
        Measure.Conductivity => Units.WattPerMetreKelvin,
        _ => "",
    };
}

/// <summary>One output of a sum.</summary>
/// <param name="Key">Stable name for programs.</param>
/// <param name="Symbol">The line of the working that holds it.</param>
/// <param name="Name">What it is, in words.</param>
/// <param name="Measure">What sort of thing it is.</param>
public sealed record SumOutput(string Key, string Symbol, string Name, Measure Measure);
