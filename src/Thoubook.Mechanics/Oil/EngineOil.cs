using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Oil;

/// <summary>An oil that lubricates an engine: what it is called, and its properties at any temperature of its range. Never changes; what differs is another oil.</summary>
public sealed record EngineOil
{
    /// <summary>[-] share of its viscosity that an oil keeps between fast surfaces, where the oil is a multigrade and nothing else is known.</summary>
    internal const double MultigradeShearFactor = 0.9;

    /// <summary>[K] below this, wax may make an oil thicker than the line of two points says (common practice): −10 °C.</summary>
    internal const double UsualColdest = 263.15;

    /// <summary>[K] above this, its light ends leave and it oxidises (common practice): 150 °C.</summary>
    private const double Hottest = 423.15;

    /// <summary>[-] from here to 1 may the factor of a multigrade lie that nobody stated.</summary>
    private const double LeastShearFactor = 0.8;

    private readonly double _coldest;

    internal EngineOil(string name, ViscosityLine line, double coldest) => (Name, Line, _coldest) = (name, line, coldest);

    /// <summary>What it is called.</summary>
    public string Name { get; }

    /// <summary>[kg/m³] density at 15 °C, 750 to 1100.</summary>
    public double DensityAt15 { get; private init; } = OilProperties.UsualDensity;

    /// <summary>[-] share of its viscosity that the oil keeps between fast surfaces: 1 but for multigrades.</summary>
    public double ShearFactor { get; internal init; } = 1;

    /// <summary>Its viscosity against temperature.</summary>
    internal ViscosityLine Line { get; }

    /// <summary>Whether the shear factor is that of its kind, not stated for this oil.</summary>
    internal bool ShearIsAssumed { get; init; }

    /// <summary>Between which lines the oil may lie for each reason to doubt.</summary>
    internal IReadOnlyList<Doubt> Doubts { get; init; } = [];

    /// <summary>[-] standard relative uncertainty of a viscosity that was measured.</summary>
    private double MeasuredUncertainty { get; init; }

    /// <summary>Every grade that <see cref="TryGrade"/> knows, by its usual name.</summary>
    public static IReadOnlyList<string> Grades => OilGrades.Names;

    /// <summary>The range of temperatures in which its figures hold, in words.</summary>
    public string Range => $"{Celsius(_coldest)} to {Celsius(Hottest)}";

    /// <summary>An oil whose viscosity is known at two temperatures.</summary>
    /// <param name="first">[K] temperature of one point.</param>
    /// <param name="firstViscosity">[m²/s] kinematic viscosity there.</param>
    /// <param name="second">[K] temperature of the other.</param>
    /// <param name="secondViscosity">[m²/s] kinematic viscosity there.</param>
    /// <param name="name">What it is called.</param>
    /// <param name="viscosityUncertainty">[-] standard relative uncertainty of these viscosities; 2 % is that of a maker's typical figures (common practice).</param>
    /// <returns>The oil.</returns>
    /// <exception cref="ArgumentException">Two points that <see cref="ViscosityLine.Fault"/> finds fault with.</exception>
    /// <remarks>Model: the line of ASTM D341 through both. Source: ASTM D341-20 (published). Check: EngineOilTests.</remarks>
    public static EngineOil FromTwoPoints(double first, double firstViscosity, double second, double secondViscosity, string name = "oil by two points", double viscosityUncertainty = 0.02) =>
        new(name, ViscosityLine.Through(first, firstViscosity, second, secondViscosity), UsualColdest) { MeasuredUncertainty = Guard.Within(viscosityUncertainty, 0, 1) };

    /// <summary>An oil of which only the grade is known: SAE 40, 15W-40, ISO VG 46, aviation 100. Blanks, hyphens, strokes and capitals do not matter.</summary>
    /// <param name="name">The grade as it was written.</param>
    /// <param name="oil">The oil in the middle of the grade.</param>
    /// <param name="nearest">Known grades nearest to one that is not known; empty where it is.</param>
    /// <returns>True where it is known.</returns>
    public static bool TryGrade(string name, [NotNullWhen(true)] out EngineOil? oil, out IReadOnlyList<string> nearest)
    {
        ArgumentNullException.ThrowIfNull(name);
        oil = OilGrades.Find(name, out nearest);
        return oil is not null;
    }

    /// <summary>The same oil of another density.</summary>
    /// <param name="densityAt15">[kg/m³] density at 15 °C, 750 to 1100.</param>
    /// <returns>The oil.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A density that no lubricating oil has.</exception>
    /// <remarks>Source: range of mineral and synthetic lubricating oils (common practice). Check: EngineOilTests.</remarks>
    public EngineOil WithDensity(double densityAt15) =>
        this with { DensityAt15 = Guard.Within(densityAt15, OilProperties.LeastDensity, OilProperties.GreatestDensity, Units.KilogramPerCubicMetre) };

    /// <summary>The same oil with a stated shear factor.</summary>
    /// <param name="shearFactor">[-] share of its viscosity that it keeps between fast surfaces, 0.3 to 1.</param>
    /// <returns>The oil.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A factor outside its range.</exception>
    /// <remarks>Source: temporary loss of multigrades at 1e6 1/s, a tenth to a third (common practice). Check: EngineOilTests.</remarks>
    public EngineOil WithShearFactor(double shearFactor) => this with { ShearFactor = Guard.Within(shearFactor, 0.3, 1), ShearIsAssumed = false };

    /// <summary>Kinematic viscosity at low shear.</summary>
    /// <param name="temperature">[K] of the oil, 203.15 to 643.15.</param>
    /// <returns>[m²/s] the viscosity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature outside the chart.</exception>
    /// <remarks>Source: ASTM D341-20 (published). Check: EngineOilTests.</remarks>
    public double KinematicViscosity(double temperature) => Line.At(temperature);

    /// <summary>Density.</summary>
    /// <param name="temperature">[K] of the oil, 203.15 to 643.15.</param>
    /// <returns>[kg/m³] the density.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature outside the chart.</exception>
    /// <remarks>Source: ASTM D1250-80, table 54D (from memory). Check: EngineOilTests.</remarks>
    public double Density(double temperature) => OilProperties.Density(DensityAt15, temperature);

    /// <summary>Dynamic viscosity between fast surfaces: kinematic viscosity times density times shear factor.</summary>
    /// <param name="temperature">[K] of the oil, 203.15 to 643.15.</param>
    /// <returns>[Pa s] the viscosity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature outside the chart.</exception>
    /// <remarks>Source: definition (published). Check: EngineOilTests.</remarks>
    public double DynamicViscosity(double temperature) => KinematicViscosity(temperature) * Density(temperature) * ShearFactor;

    /// <summary>Specific heat capacity.</summary>
    /// <param name="temperature">[K] of the oil, 203.15 to 643.15.</param>
    /// <returns>[J/(kg K)] the heat capacity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature outside the chart.</exception>
    /// <remarks>Source: Cragoe, NBS Miscellaneous Publication 97, 1929 (from memory). Check: EngineOilTests.</remarks>
    public double HeatCapacity(double temperature) => OilProperties.HeatCapacity(DensityAt15, temperature);

    /// <summary>Thermal conductivity.</summary>
    /// <param name="temperature">[K] of the oil, 203.15 to 643.15.</param>
    /// <returns>[W/(m K)] the conductivity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature outside the chart.</exception>
    /// <remarks>Source: Cragoe, NBS Miscellaneous Publication 97, 1929 (from memory). Check: EngineOilTests.</remarks>
    public double Conductivity(double temperature) => OilProperties.Conductivity(DensityAt15, temperature);

    /// <summary>Standard relative uncertainty of the dynamic viscosity: how far an oil of this grade may lie from its middle.</summary>
    /// <param name="temperature">[K] of the oil, 203.15 to 643.15.</param>
    /// <returns>[-] the uncertainty as a share of the viscosity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature outside the chart.</exception>
    /// <remarks>Model: the width between the lines at the ends of each doubt (limits of the grade; index, or viscosity at cranking; shear factor), taken as rectangular in the logarithm; root sum square. Source: JCGM 100:2008, 4.3.7 (published). Check: EngineOilTests.</remarks>
    public double ViscosityUncertainty(double temperature)
    {
        var variance = MeasuredUncertainty * MeasuredUncertainty;
        foreach (var doubt in Doubts)
            variance += Rectangular(doubt.One.At(temperature), doubt.Other.At(temperature));
        if (ShearIsAssumed)
            variance += Rectangular(LeastShearFactor, 1);
        return Math.Sqrt(variance);

        static double Rectangular(double one, double other) => Math.Pow(Math.Log(other / one), 2) / 12;
    }

    /// <summary>What to know about its figures at a temperature.</summary>
    /// <param name="temperature">[K] of the oil.</param>
    /// <returns>Nothing inside its range; a sentence outside.</returns>
    /// <remarks>Source: cold end of SAE J300, or −10 °C; hot end 150 °C (common practice). Check: EngineOilTests.</remarks>
    public string? Remark(double temperature) =>
        !(temperature is >= ViscosityLine.LeastTemperature and <= ViscosityLine.GreatestTemperature) ? "The viscosity chart of ASTM D341 runs from −70 °C to 370 °C; there is no viscosity outside it."
        : temperature < _coldest ? $"{Name}: below {Celsius(_coldest)} wax may make the oil far thicker than the figure here."
        : temperature > Hottest ? $"{Name}: above {Celsius(Hottest)} the oil loses its light ends and oxidises; the figure holds for fresh oil only."
        : null;

    private static string Celsius(double temperature) => string.Create(CultureInfo.InvariantCulture, $"{temperature - 273.15:0} °C").Replace('-', '−');

    /// <summary>Two lines between which an oil may lie.</summary>
    /// <param name="One">One end.</param>
    /// <param name="Other">The other end.</param>
    internal readonly record struct Doubt(ViscosityLine One, ViscosityLine Other);
}
