using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Gears;

/// <summary>The involute teeth of a spur gear, whatever its cutter was.</summary>
/// <param name="Teeth">[-] number of teeth.</param>
/// <param name="TipRadius">[m] half the diameter over the tips.</param>
/// <param name="BaseRadius">[m] of the circle that the flanks unwind from.</param>
/// <param name="BaseHalfAngle">[rad] half the angle that a tooth takes on the base circle.</param>
public readonly record struct SpurGear(int Teeth, double TipRadius, double BaseRadius, double BaseHalfAngle)
{
    /// <summary>A gear as its drawing gives it.</summary>
    /// <param name="module">[m] of the cutter; one inch divided by the diametral pitch; above 0.</param>
    /// <param name="teeth">[-] 4 or more.</param>
    /// <param name="pressureAngle">[rad] of the cutter, 0.15 to 0.65.</param>
    /// <param name="shift">[-] profile shift in modules, positive outwards.</param>
    /// <param name="tipRadius">[m] above 0.</param>
    /// <returns>The gear.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: rb = m z cos α/2; half the tooth on the base circle (π/2 + 2 x tan α)/z + inv α. Source: ISO 21771:2007, involute geometry (from memory). Check: GearPairTests.</remarks>
    public static SpurGear Drawn(double module, int teeth, double pressureAngle, double shift, double tipRadius)
    {
        Guard.AboveZero(module, "m");
        Guard.AtLeast(teeth, 4);
        Guard.Within(pressureAngle, 0.15, 0.65, "rad");
        Guard.Finite(shift);
        Guard.AboveZero(tipRadius, "m");
        return new(teeth, tipRadius, module * teeth * Math.Cos(pressureAngle) / 2, (((Math.PI / 2) + (2 * shift * Math.Tan(pressureAngle))) / teeth) + Involute(pressureAngle));
    }

    /// <summary>Thickness of a tooth along the arc.</summary>
    /// <param name="radius">[m] where; not below the base circle.</param>
    /// <returns>[m] thickness; negative beyond the point where the flanks meet.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Radius below the base circle or not finite.</exception>
    /// <remarks>Model: 2 r (ψ_b − inv acos(rb/r)). Source: ISO 21771:2007 (from memory). Check: GearPairTests.</remarks>
    public double Thickness(double radius)
    {
        Guard.Within(radius, BaseRadius, double.MaxValue, "m");
        return 2 * radius * (BaseHalfAngle - Involute(Math.Acos(BaseRadius / radius)));
    }

    /// <summary>The involute function.</summary>
    /// <param name="angle">[rad] pressure angle.</param>
    /// <returns>[rad] tan α − α.</returns>
    /// <remarks>Model: tan α − α. Source: ISO 21771:2007 (from memory). Check: GearPairTests.</remarks>
    public static double Involute(double angle) => Math.Tan(angle) - angle;
}
