using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Oil;

/// <summary>Density, heat capacity and conductivity of a mineral lubricating oil, from its density at 15 °C.</summary>
public static class OilProperties
{
    /// <summary>[kg/m³] density at 15 °C taken where none is known: the middle of what mineral engine oils have.</summary>
    public const double UsualDensity = 885;

    /// <summary>[kg/m³] least density at 15 °C of a lubricating oil.</summary>
    public const double LeastDensity = 750;

    /// <summary>[kg/m³] greatest density at 15 °C of a lubricating oil.</summary>
    public const double GreatestDensity = 1100;

    /// <summary>[K] the reference temperature of densities, 15 °C.</summary>
    private const double Reference = 288.15;

    private const double WaterDensity = 999.1;

    /// <summary>Density at a temperature.</summary>
    /// <param name="densityAt15">[kg/m³] density at 15 °C, 750 to 1100.</param>
    /// <param name="temperature">[K] of the oil, 203.15 to 643.15.</param>
    /// <returns>[kg/m³] the density.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: ρ = ρ15 exp(−αΔ (1 + 0.8 αΔ)), α = 0.6278/ρ15. Valid: mineral lubricating oils, about −20 to 150 °C. Source: ASTM D1250-80, table 54D (from memory; its constant is 1.8 times the published 0.34878 of API MPMS 11.1). Check: OilPropertiesTests.</remarks>
    public static double Density(double densityAt15, double temperature) => Density(densityAt15, temperature, default(Silent));

    /// <summary>The same for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="densityAt15">[kg/m³] density at 15 °C, 750 to 1100.</param>
    /// <param name="temperature">[K] of the oil, 203.15 to 643.15.</param>
    /// <param name="trace">What hears the lines; it has heard of the temperature T.</param>
    /// <returns>[kg/m³] the density.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Source: ASTM D1250-80, table 54D (from memory). Check: OilPropertiesTests.</remarks>
    public static double Density<TTrace>(double densityAt15, double temperature, TTrace trace)
        where TTrace : struct, ITrace
    {
        Check(densityAt15, temperature);
        trace.Given("ρ_15", "density at 15 °C", densityAt15, Units.KilogramPerCubicMetre);
        var alpha = trace.Line("α", "expansion of the oil's volume at 15 °C", "0.6278 / ρ_15", 0.6278 / densityAt15, Units.PerKelvin, "ASTM D1250, lubricating oils");
        var growth = trace.Line("Δ", "expansion by the temperature", "α × (T − 288.15)", alpha * (temperature - Reference), Units.None);
        return trace.Line("ρ", "density", "ρ_15 × exp(−Δ × (1 + 0.8 × Δ))", densityAt15 * Math.Exp(-growth * (1 + (0.8 * growth))), Units.KilogramPerCubicMetre, "ASTM D1250, lubricating oils");
    }

    /// <summary>Specific heat capacity at a temperature.</summary>
    /// <param name="densityAt15">[kg/m³] density at 15 °C, 750 to 1100.</param>
    /// <param name="temperature">[K] of the oil, 203.15 to 643.15.</param>
    /// <returns>[J/(kg K)] the heat capacity, within about 4 %.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: (1.685 + 0.0034 t)/√s kJ/(kg K), t in °C, s density over that of water. Valid: mineral oils, 0 to 200 °C. Source: Cragoe, NBS Miscellaneous Publication 97, 1929 (from memory). Check: OilPropertiesTests.</remarks>
    public static double HeatCapacity(double densityAt15, double temperature)
    {
        Check(densityAt15, temperature);
        return HeatCapacityOf(RelativeDensity(densityAt15), temperature);
    }

    /// <summary>Thermal conductivity at a temperature.</summary>
    /// <param name="densityAt15">[kg/m³] density at 15 °C, 750 to 1100.</param>
    /// <param name="temperature">[K] of the oil, 203.15 to 643.15.</param>
    /// <returns>[W/(m K)] the conductivity, within about 10 %.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: 0.1172 (1 − 0.00054 t)/s, t in °C, s density over that of water. Valid: mineral oils, 0 to 200 °C. Source: Cragoe, NBS Miscellaneous Publication 97, 1929 (from memory). Check: OilPropertiesTests.</remarks>
    public static double Conductivity(double densityAt15, double temperature)
    {
        Check(densityAt15, temperature);
        return ConductivityOf(RelativeDensity(densityAt15), temperature);
    }

    /// <summary>Tells heat capacity and conductivity to a trace that has heard of density and temperature.</summary>
    internal static void Heat<TTrace>(double densityAt15, double temperature, TTrace trace)
        where TTrace : struct, ITrace
    {
        const string source = "Cragoe, NBS Miscellaneous Publication 97, 1929 (from memory)";
        var s = trace.Line("s", "density over that of water, both at 15 °C", "ρ_15 / 999.1", RelativeDensity(densityAt15), Units.None);
        trace.Line("t", "temperature above 0 °C", "T − 273.15", temperature - 273.15, Units.Kelvin);
        trace.Line("c", "heat capacity, within about 4 %", "1000 × (1.685 + 0.0034 × t) / sqrt(s)", HeatCapacityOf(s, temperature), Units.JoulePerKilogramKelvin, source);
        trace.Line("k", "thermal conductivity, within about 10 %", "0.1172 × (1 − 0.00054 × t) / s", ConductivityOf(s, temperature), Units.WattPerMetreKelvin, source);
    }

    private static double RelativeDensity(double densityAt15) => densityAt15 / WaterDensity;

    private static double HeatCapacityOf(double relativeDensity, double temperature) => 1000 * (1.685 + (0.0034 * (temperature - 273.15))) / Math.Sqrt(relativeDensity);

    private static double ConductivityOf(double relativeDensity, double temperature) => 0.1172 * (1 - (0.00054 * (temperature - 273.15))) / relativeDensity;

    private static void Check(double densityAt15, double temperature)
    {
        Guard.Within(densityAt15, LeastDensity, GreatestDensity, Units.KilogramPerCubicMetre);
        Guard.Within(temperature, ViscosityLine.LeastTemperature, ViscosityLine.GreatestTemperature, Units.Kelvin);
    }
}
