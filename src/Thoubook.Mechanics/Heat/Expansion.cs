using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Heat;

/// <summary>A mean coefficient of linear expansion near 20 to 100 °C.</summary>
/// <param name="Value">[1/K] best value.</param>
/// <param name="StandardUncertainty">[1/K] of it, from the spread of the sources.</param>
public readonly record struct ExpansionCoefficient(double Value, double StandardUncertainty);

/// <summary>Sizes at another temperature than 20 °C.</summary>
public static class Expansion
{
    /// <summary>[K] the reference temperature of sizes, 20 °C.</summary>
    public const double Reference = 293.15;

    /// <summary>Size at a temperature.</summary>
    /// <param name="sizeAt20">[any] size at 20 °C.</param>
    /// <param name="coefficient">[1/K] mean coefficient of linear expansion, −1e-4 to 1e-3.</param>
    /// <param name="temperature">[K] absolute, 1 to 1500.</param>
    /// <returns>[any] size at that temperature.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input not finite or outside its range.</exception>
    /// <remarks>Model: L = L20 [1 + α (T − 20 °C)]. Assumes: one temperature throughout, mean coefficient for the range. Valid: about −50 to 250 °C with the coefficients of Materials. Source: definition of the mean coefficient (published in every handbook, such as Callister, appendix B.6). Check: ExpansionTests.</remarks>
    public static double SizeAt(double sizeAt20, double coefficient, double temperature) => Guard.Finite(sizeAt20) + Growth(sizeAt20, coefficient, temperature);

    /// <summary>What a size gains from 20 °C to a temperature.</summary>
    /// <param name="sizeAt20">[any] size at 20 °C.</param>
    /// <param name="coefficient">[1/K] mean coefficient of linear expansion, −1e-4 to 1e-3.</param>
    /// <param name="temperature">[K] absolute, 1 to 1500.</param>
    /// <returns>[any] growth; negative where it shrinks.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input not finite or outside its range.</exception>
    /// <remarks>Model: ΔL = L20 α (T − 20 °C). Source: as SizeAt (published). Check: ExpansionTests.</remarks>
    public static double Growth(double sizeAt20, double coefficient, double temperature) =>
        Guard.Finite(sizeAt20) * Guard.Within(coefficient, -1e-4, 1e-3, "1/K") * (Guard.Within(temperature, 1, 1500, "K") - Reference);
}
