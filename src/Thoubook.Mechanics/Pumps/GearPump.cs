using Thoubook.Mechanics.Flow;
using Thoubook.Mechanics.Gears;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Pumps;

/// <summary>What a pump of two equal gears delivers, loses and takes to turn.</summary>
public static class GearPump
{
    /// <summary>[-] share of the circumference of a gear's ends that stands under delivery pressure.</summary>
    public const double Sector = 0.5;

    /// <summary>[-] share of a gear's teeth that close on the casing at one time.</summary>
    public const double SealingShare = 0.5;

    /// <summary>[-] share of the pressure rise that stands at the inner end of the bushes, the mean round the spindle.</summary>
    public const double BushShare = 0.5;

    /// <summary>[-] eccentricity at which the spindles run in their bushes.</summary>
    public const double BushEccentricity = 0.6;

    /// <summary>[m] least film on which the end of a gear that lies against its face is taken to run.</summary>
    public const double LeastEndFilm = 5e-6;

    /// <summary>Everything that a circuit need know of a gear pump, from what can be measured on it.</summary>
    /// <param name="sizes">The sizes, without fault.</param>
    /// <returns>Displacement, leaks, drag and filling.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The sizes have a fault; ask them first.</exception>
    /// <remarks>Model: Displacement with the trapped oil relieved, PumpGaps for each path. Source: as Displacement and PumpGaps (computed from them). Check: GearPumpTests.</remarks>
    public static PumpCharacteristic Characteristic(in GearPumpSizes sizes) => Characteristic(sizes, default(Silent));

    /// <summary>The same for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="sizes">The sizes, without fault.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>Displacement, leaks, drag and filling.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The sizes have a fault; ask them first.</exception>
    /// <remarks>Model: as the other. Source: as Displacement and PumpGaps (computed from them). Check: GearPumpTests.</remarks>
    public static PumpCharacteristic Characteristic<TTrace>(in GearPumpSizes sizes, TTrace trace)
        where TTrace : struct, ITrace
    {
        if (sizes.Fault != GearPumpFault.None)
            throw new ArgumentOutOfRangeException(nameof(sizes), sizes, $"The pump cannot be as said: {sizes.Fault}.");
        var pair = sizes.Pair;
        var displacement = Carried(sizes, pair, trace);
        var (root, hub, tip) = (sizes.RootRadius, sizes.HubRadius, sizes.TipDiameter / 2);
        trace.Given("r_f", "radius at the roots of the teeth", root, Units.Metre, sizes.RootDiameter > 0 ? "" : "tips and a root clearance of a quarter module");
        trace.Given("r_s", "radius of hub or spindle", hub, Units.Metre, sizes.HubDiameter > 0 ? "" : sizes.BushDiameter > 0 ? "spindle in its bush" : "taken as half the root radius");
        var (endLeak, endDrag) = Ends(sizes, root, hub, tip, trace);
        var (tipLeak, tipCarry, tipDrag) = Tips(sizes, pair.First, trace);
        var (bushLeak, bushDrag) = Bushes(sizes, trace);
        trace.Line("C", "leak by all paths: times Δp/μ it is the slip", "C_end + C_tip + C_bush", endLeak + tipLeak + bushLeak, Units.CubicMetre);
        trace.Line("D", "drag of ends, tips and bushes: times μ ω it is the torque", "D_end + D_tip + D_bush", endDrag + tipDrag + bushDrag, Units.CubicMetre);
        var filling = trace.Line("F", "half the square of the tip radius less that of the root", "(r_a1^2 − r_f^2)/2", ((tip * tip) - (root * root)) / 2, Units.SquareMetre);
        return new PumpCharacteristic(displacement, endLeak, tipLeak, bushLeak, tipCarry, endDrag, tipDrag, bushDrag, filling);
    }

    private static double Carried<TTrace>(in GearPumpSizes sizes, in GearPair pair, TTrace trace)
        where TTrace : struct, ITrace
    {
        var carried = Displacement.Of(pair, sizes.Width, TrappedOil.Relieved, 0.5, trace).Volume;
        if (TTrace.Writes && sizes.Module <= 0)
            trace.Caution("The base pitch is taken from the centre distance; on gears with profile shift the displacement comes out one or two per cent low. The gain of a span for one tooth more gives it exactly.");
        if (sizes.MeasuredDisplacement is not { } measured)
            return carried;
        trace.Given("V_m", "displacement as measured, in place of the geometry", measured, Units.CubicMetre);
        return measured;
    }

    private static (double Leak, double Drag) Ends<TTrace>(in GearPumpSizes sizes, double root, double hub, double tip, TTrace trace)
        where TTrace : struct, ITrace
    {
        var (share, driver, driven) = (sizes.FloatShare, sizes.EndFloat, sizes.DrivenEndFloat ?? sizes.EndFloat);
        trace.Given("e_1", "end float of the driver, total", driver, Units.Metre);
        trace.Given("e_2", "end float of the driven gear, total", driven, Units.Metre);
        trace.Given("f", "share of the float on one face", share, Units.None);
        trace.Given("q", "share of the circumference under pressure", Sector, Units.None, "common practice");
        var leak = Leak(share * driver) + Leak((1 - share) * driver) + Leak(share * driven) + Leak((1 - share) * driven);
        trace.Line("C_end", "leak over the four ends", "q × π × (f^3 + (1 − f)^3) × (e_1^3 + e_2^3)/(6 × ln(r_f/r_s))", leak, Units.CubicMetre, "radial flow between discs");
        trace.Given("h_0", "least film of an end that lies against its face", LeastEndFilm, Units.Metre, "common practice");
        var drag = Drag(share * driver) + Drag((1 - share) * driver) + Drag(share * driven) + Drag((1 - share) * driven);
        trace.Line("D_end", "drag of the four ends", "π/2 × (r_a1^4 − r_s^4) × (1/max(f × e_1, h_0) + 1/max((1 − f) × e_1, h_0) + 1/max(f × e_2, h_0) + 1/max((1 − f) × e_2, h_0))", drag, Units.CubicMetre, "shear in the gap, full ring");
        return (leak, drag);

        double Leak(double gap) => PumpGaps.EndLeak(gap, root, hub, Sector);

        double Drag(double gap) => PumpGaps.EndDrag(Math.Max(gap, LeastEndFilm), tip, hub);
    }

    private static (double Leak, double Carry, double Drag) Tips<TTrace>(in GearPumpSizes sizes, SpurGear gear, TTrace trace)
        where TTrace : struct, ITrace
    {
        var gap = sizes.TipClearance / 2;
        trace.Given("h_t", "gap over the tips, half the diametral clearance", gap, Units.Metre);
        if (gap <= 0)
        {
            trace.Given("C_tip", "leak over the tips, taken as sealing", 0, Units.CubicMetre);
            trace.Given("V_tip", "carried by the tips for one turn", 0, Units.CubicMetre);
            trace.Given("D_tip", "drag of the tips, not counted", 0, Units.CubicMetre);
            return default;
        }

        var module = sizes.ModuleOrFromCentres;
        trace.Given("m", "module", module, Units.Metre, sizes.Module > 0 ? "" : "centre distance over teeth");
        if (TTrace.Writes)
        {
            trace.Line("α_w", "working pressure angle", "acos(z_1 × p_b/(π × a))", sizes.Pair.WorkingAngle, Units.Radian);
            trace.Line("α_a", "pressure angle at the tips", "acos(z_1 × p_b/(2 × π × r_a1))", Math.Acos(gear.BaseRadius / gear.TipRadius), Units.Radian);
        }

        var land = trace.Line("s_a", "thickness of a tooth at its tip, a tenth of the module at least", "max(2 × r_a1 × (π/(2 × z_1) + tan(α_w) − α_w − tan(α_a) + α_a), 0.1 × m)", Math.Max(gear.Thickness(gear.TipRadius), 0.1 * module), Units.Metre);
        var sealing = trace.Line("N", "teeth that close on the casing", "z_1/2", SealingShare * gear.Teeth, Units.None, "common practice");
        var leak = trace.Line("C_tip", "leak over the tips of both gears", "2 × b × h_t^3/(12 × N × s_a)", 2 * PumpGaps.TipLeak(gap, sizes.Width, land, sealing), Units.CubicMetre, "plane slot");
        var carry = trace.Line("V_tip", "carried by the tips of both gears for one turn", "2 × π × b × r_a1 × h_t", 2 * PumpGaps.TipCarry(gap, sizes.Width, gear.TipRadius), Units.CubicMetre, "plane slot with a moving wall");
        var drag = trace.Line("D_tip", "drag of the tips of both gears", "2 × z_1 × s_a × b × r_a1^2/h_t", 2 * PumpGaps.TipDrag(gap, sizes.Width, land, gear.TipRadius, gear.Teeth), Units.CubicMetre, "shear in the gap");
        return (leak, carry, drag);
    }

    private static (double Leak, double Drag) Bushes<TTrace>(in GearPumpSizes sizes, TTrace trace)
        where TTrace : struct, ITrace
    {
        if (!sizes.HasBushes)
        {
            trace.Given("C_bush", "leak past the bushes, taken as none", 0, Units.CubicMetre);
            trace.Given("D_bush", "drag of the bushes, not counted", 0, Units.CubicMetre);
            return default;
        }

        var (diameter, clearance, length) = (sizes.SpindleDiameter, sizes.BushClearance, sizes.BushLength);
        trace.Given("D_s", "diameter of the spindles", diameter, Units.Metre);
        trace.Given("c", "clearance of the bushes, diametral", clearance, Units.Metre);
        trace.Given("L", "length of a bush", length, Units.Metre);
        trace.Given("ε", "eccentricity of the spindles", BushEccentricity, Units.None, "common practice");
        trace.Given("w", "share of the pressure at the inner end of the bushes", BushShare, Units.None, "common practice");
        var leak = trace.Line("C_bush", "leak past two bushes", "2 × w × π × D_s × (c/2)^3 × (1 + 1.5 × ε^2)/(12 × L)", 2 * BushShare * Gaps.Annulus(diameter, clearance, length, BushEccentricity), Units.CubicMetre, "annular gap");
        var drag = trace.Line("D_bush", "drag of two bushes", "2 × 4 × π × (D_s/2)^3 × L/c", 2 * PumpGaps.BushDrag(clearance, diameter, length), Units.CubicMetre, "Petroff's equation");
        return (leak, drag);
    }
}
