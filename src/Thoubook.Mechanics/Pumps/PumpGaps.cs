using Thoubook.Mechanics.Flow;
using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Pumps;

/// <summary>
/// The narrow gaps of a gear pump beside those of <see cref="Gaps"/>. A leak is a volume: times pressure rise over viscosity it is a flow. A drag is a volume too: times
/// viscosity and speed of turning it is a torque.
/// </summary>
public static class PumpGaps
{
    /// <summary>Leak over one end of a gear, inwards from the roots of the teeth to the hub.</summary>
    /// <param name="gap">[m] between the gear's end and the body or cover, 0 or more.</param>
    /// <param name="rootRadius">[m] of the circle at the roots of the teeth, above the hub's.</param>
    /// <param name="hubRadius">[m] of the hub or spindle, above 0.</param>
    /// <param name="sector">[-] share of the circumference that stands under pressure, 0 to 1.</param>
    /// <returns>[m³] leak.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: sector π h³/(6 ln(rf/rs)). Assumes: laminar, hub at inlet pressure; flow across from tooth to tooth over the hub is not counted. Source: radial flow between discs, B. S. Massey and J. Ward-Smith, Mechanics of Fluids, example 6.2 (published). Check: GearPumpTests.</remarks>
    public static double EndLeak(double gap, double rootRadius, double hubRadius, double sector)
    {
        Guard.ZeroOrMore(gap, "m");
        Guard.AboveZero(hubRadius, "m");
        Guard.Within(rootRadius, double.BitIncrement(hubRadius), double.MaxValue, "m");
        Guard.Within(sector, 0, 1);
        return sector * Math.PI * gap * gap * gap / (6 * Math.Log(rootRadius / hubRadius));
    }

    /// <summary>Leak over the tips of one gear, against its turning.</summary>
    /// <param name="gap">[m] between tip and casing, on radius, 0 or more.</param>
    /// <param name="width">[m] of the teeth, above 0.</param>
    /// <param name="land">[m] thickness of a tooth at its tip, above 0.</param>
    /// <param name="sealingTeeth">[-] teeth that close on the casing at one time, above 0.</param>
    /// <returns>[m³] leak.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: b h³/(12 N s). Assumes: laminar. Source: plane slot, B. S. Massey and J. Ward-Smith, Mechanics of Fluids, example 6.3 (published). Check: GearPumpTests.</remarks>
    public static double TipLeak(double gap, double width, double land, double sealingTeeth)
    {
        Guard.AboveZero(land, "m");
        return Gaps.Slot(width, gap, Guard.AboveZero(sealingTeeth) * land);
    }

    /// <summary>What the tips of one gear drag along in their gap towards the outlet.</summary>
    /// <param name="gap">[m] between tip and casing, on radius, 0 or more.</param>
    /// <param name="width">[m] of the teeth, above 0.</param>
    /// <param name="tipRadius">[m] above 0.</param>
    /// <returns>[m³] for one turn, beside a displacement counted to the tips.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: b u h/2 over one turn = π b ra h. Source: plane slot with a moving wall, B. S. Massey and J. Ward-Smith, Mechanics of Fluids, example 6.3 (published). Check: GearPumpTests.</remarks>
    public static double TipCarry(double gap, double width, double tipRadius) =>
        Math.PI * Guard.AboveZero(width, "m") * Guard.AboveZero(tipRadius, "m") * Guard.ZeroOrMore(gap, "m");

    /// <summary>Drag of one end of a gear.</summary>
    /// <param name="gap">[m] above 0.</param>
    /// <param name="tipRadius">[m] above the hub's.</param>
    /// <param name="hubRadius">[m] of the hub or spindle, 0 or more.</param>
    /// <returns>[m³] drag.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: (π/2)(ra⁴ − rs⁴)/h. Assumes: a full ring; teeth cover part of it, so this is an upper value. Source: end term of B. S. Massey and J. Ward-Smith, Mechanics of Fluids, example 6.6 (published). Check: GearPumpTests.</remarks>
    public static double EndDrag(double gap, double tipRadius, double hubRadius)
    {
        Guard.AboveZero(gap, "m");
        Guard.ZeroOrMore(hubRadius, "m");
        Guard.Within(tipRadius, double.BitIncrement(hubRadius), double.MaxValue, "m");
        return Math.PI / 2 * (Math.Pow(tipRadius, 4) - Math.Pow(hubRadius, 4)) / gap;
    }

    /// <summary>Drag of the tips of one gear.</summary>
    /// <param name="gap">[m] between tip and casing, on radius, above 0.</param>
    /// <param name="width">[m] of the teeth, above 0.</param>
    /// <param name="land">[m] thickness of a tooth at its tip, above 0.</param>
    /// <param name="tipRadius">[m] above 0.</param>
    /// <param name="teeth">[-] of the gear, 1 or more.</param>
    /// <returns>[m³] drag.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: z s b ra²/h, every tip taken as against the casing. Source: shear in a plane gap (from memory). Check: GearPumpTests.</remarks>
    public static double TipDrag(double gap, double width, double land, double tipRadius, int teeth) =>
        Guard.AtLeast(teeth, 1) * Guard.AboveZero(land, "m") * Guard.AboveZero(width, "m") * Guard.AboveZero(tipRadius, "m") * tipRadius / Guard.AboveZero(gap, "m");

    /// <summary>Drag of a spindle in its bush.</summary>
    /// <param name="clearance">[m] diametral, above 0.</param>
    /// <param name="diameter">[m] of the spindle, above 0.</param>
    /// <param name="length">[m] of the bush, above 0.</param>
    /// <returns>[m³] drag.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: 2π r³ L/c, c half the clearance. Assumes: spindle in the middle. Source: Petroff's equation (from memory). Check: GearPumpTests.</remarks>
    public static double BushDrag(double clearance, double diameter, double length)
    {
        var radius = Guard.AboveZero(diameter, "m") / 2;
        return 4 * Math.PI * radius * radius * radius * Guard.AboveZero(length, "m") / Guard.AboveZero(clearance, "m");
    }
}
