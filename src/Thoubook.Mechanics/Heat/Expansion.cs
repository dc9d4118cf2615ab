using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

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
        Growth(sizeAt20, new ExpansionCoefficient(coefficient, 0), temperature, "", default(Silent));

    /// <summary>The same for any trace, which also hears the size and what the coefficient's uncertainty does to it.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="sizeAt20">[any] size at 20 °C.</param>
    /// <param name="coefficient">Mean coefficient of linear expansion with its standard uncertainty.</param>
    /// <param name="temperature">[K] absolute, 1 to 1500.</param>
    /// <param name="source">Where the coefficient comes from; empty where the asker gave it.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[any] growth; negative where it shrinks.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input not finite or outside its range.</exception>
    /// <remarks>Model: ΔL = L20 α (T − 20 °C), u(ΔL) = |L20 (T − 20 °C)| u(α). Source: as SizeAt (published). Check: ExpansionTests.</remarks>
    public static double Growth<TTrace>(double sizeAt20, ExpansionCoefficient coefficient, double temperature, string source, TTrace trace)
        where TTrace : struct, ITrace
    {
        Guard.Finite(sizeAt20);
        var alpha = Guard.Within(coefficient.Value, -1e-4, 1e-3, "1/K", "coefficient");
        Guard.Within(temperature, 1, 1500, "K");
        trace.Given("L_20", "size at 20 °C", sizeAt20, Units.Metre);
        trace.Given("α", "mean coefficient of linear expansion", alpha, Units.PerKelvin, source);
        trace.Given("T", "temperature of the part", temperature, Units.Kelvin);
        var rise = trace.Line("ΔT", "temperature above 20 °C", "T − 293.15", temperature - Reference, Units.Kelvin, "ISO 1:2016");
        var growth = trace.Line("ΔL", "growth from 20 °C", "L_20 × α × ΔT", sizeAt20 * alpha * rise, Units.Metre);
        if (TTrace.Writes)
        {
            trace.Line("L_T", "size at the temperature", "L_20 + ΔL", sizeAt20 + growth, Units.Metre);
            if (coefficient.StandardUncertainty > 0)
            {
                trace.Given("u_α", "standard uncertainty of the coefficient, from the spread of the sources", coefficient.StandardUncertainty, Units.PerKelvin, source);
                trace.Line("u_ΔL", "standard uncertainty of the growth from the coefficient", "abs(L_20 × ΔT) × u_α", Math.Abs(sizeAt20 * rise) * coefficient.StandardUncertainty, Units.Metre);
            }

            if (temperature is < 223 or > 523)
                trace.Caution("Handbook coefficients are means from about 20 to 100 °C; this far from there the growth may be off by a tenth.");
        }

        return growth;
    }
}
