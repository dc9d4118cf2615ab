using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Circuits;

/// <summary>What an oil circuit runs at.</summary>
/// <param name="Speed">[rad/s] of the engine; 0 or more.</param>
/// <param name="Viscosity">[Pa s] of the oil as it comes to the elements, above 0.</param>
/// <param name="Density">[kg/m³] of the oil, above 0.</param>
public readonly record struct OperatingPoint(double Speed, double Viscosity, double Density)
{
    /// <summary>Viscosity of the oil that is warmer by so much: rise [K] → [Pa s]; where it is null a film rise changes nothing.</summary>
    public Func<double, double>? ViscosityAtRise { get; init; }

    /// <summary>[Pa] absolute, of the air round the engine.</summary>
    public double Atmosphere { get; init; } = StandardValues.Atmosphere;

    /// <summary>[m/s] free fall in one second.</summary>
    internal static double Gravity => StandardValues.Gravity;
}
