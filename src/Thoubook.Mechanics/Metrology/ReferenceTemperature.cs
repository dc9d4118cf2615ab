using Thoubook.Mechanics.Heat;
using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Metrology;

/// <summary>A size read warm or cold, brought to 20 °C.</summary>
/// <param name="Size">[any] size at 20 °C.</param>
/// <param name="FromPartExpansion">[any] what one standard uncertainty of the part's coefficient does to it, with its sign.</param>
/// <param name="FromGaugeExpansion">[any] what one standard uncertainty of the gauge's coefficient does to it, with its sign.</param>
/// <param name="FromTemperature">[any] what one standard uncertainty of the temperature of part and gauge together does to it, with its sign.</param>
/// <param name="FromDifference">[any] what one standard uncertainty of the temperature difference between them does to it, with its sign.</param>
public readonly record struct ReducedSize(double Size, double FromPartExpansion, double FromGaugeExpansion, double FromTemperature, double FromDifference);

/// <summary>Reduction of sizes to the reference temperature of 20 °C, for the part and for the gauge.</summary>
public static class ReferenceTemperature
{
    /// <summary>Size at 20 °C of a part read at another temperature with a gauge at another temperature.</summary>
    /// <param name="read">[any] what the gauge read.</param>
    /// <param name="partTemperature">[K] of the part, absolute; 1 to 1500.</param>
    /// <param name="gaugeTemperature">[K] of the gauge, absolute; 1 to 1500.</param>
    /// <param name="partExpansion">[1/K] mean coefficient of the part.</param>
    /// <param name="gaugeExpansion">[1/K] mean coefficient of the gauge.</param>
    /// <returns>[any] size at 20 °C.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input not finite or a temperature outside its range.</exception>
    /// <remarks>Model: L20 = L [1 − α_p (T_p − 20 °C) + α_r (T_r − 20 °C)]. Assumes: first order, relative error below (αΔT)², 1e-6 at 50 K of aluminium. Source: ISO 1:2016 for 20 °C; JCGM 100:2008, H.1 for the model (published). Check: ReferenceTemperatureTests.</remarks>
    public static double To20(double read, double partTemperature, double gaugeTemperature, double partExpansion, double gaugeExpansion)
    {
        Guard.Finite(read);
        Guard.Within(partTemperature, 1, 1500, "K");
        Guard.Within(gaugeTemperature, 1, 1500, "K");
        Guard.Finite(partExpansion, "1/K");
        Guard.Finite(gaugeExpansion, "1/K");
        return read * (1 - (partExpansion * (partTemperature - Expansion.Reference)) + (gaugeExpansion * (gaugeTemperature - Expansion.Reference)));
    }

    /// <summary>The same with what each uncertainty adds.</summary>
    /// <param name="read">[any] what the gauge read.</param>
    /// <param name="partTemperature">[K] of the part, absolute.</param>
    /// <param name="gaugeTemperature">[K] of the gauge, absolute.</param>
    /// <param name="part">Material of the part.</param>
    /// <param name="gauge">Material of the gauge.</param>
    /// <param name="temperatureUncertainty">[K] standard uncertainty of the temperature of both together, 0 or more.</param>
    /// <param name="differenceUncertainty">[K] standard uncertainty of the difference part less gauge, 0 or more.</param>
    /// <returns>[any] size at 20 °C and the contributions to its uncertainty.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: as To20 with T_p = T + d, T_r = T. Where part and gauge are one material the coefficient's error is one and the same and the two contributions belong to one source. Source: JCGM 100:2008, H.1 (published). Check: ReferenceTemperatureTests.</remarks>
    public static ReducedSize To20(double read, double partTemperature, double gaugeTemperature, ExpansionCoefficient part, ExpansionCoefficient gauge, double temperatureUncertainty, double differenceUncertainty)
    {
        Guard.ZeroOrMore(temperatureUncertainty, "K");
        Guard.ZeroOrMore(differenceUncertainty, "K");
        return new ReducedSize(
            To20(read, partTemperature, gaugeTemperature, part.Value, gauge.Value),
            -read * (partTemperature - Expansion.Reference) * part.StandardUncertainty,
            read * (gaugeTemperature - Expansion.Reference) * gauge.StandardUncertainty,
            read * (gauge.Value - part.Value) * temperatureUncertainty,
            -read * part.Value * differenceUncertainty);
    }
}
