using Thoubook.Mechanics.Gears;
using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Pumps;

/// <summary>What becomes of the oil trapped between two pairs of teeth in contact.</summary>
public enum TrappedOil
{
    /// <summary>Backlash joins the two halves of the pocket, and relief grooves switch it from delivery to suction at its smallest volume: the usual pump.</summary>
    Relieved,

    /// <summary>Backlash joins the halves, there is no relief groove: the pocket is carried over from the moment the new contact starts.</summary>
    CarriedOver,

    /// <summary>No backlash: both flanks seal, and relief grooves switch each half pocket at its smallest volume.</summary>
    TwoFlanks,
}

/// <summary>What gear pumps carry.</summary>
public static class Displacement
{
    /// <summary>Volume that a pair of gears carries for one turn of the first.</summary>
    /// <param name="pair">The gears, without fault.</param>
    /// <param name="width">[m] of the teeth, above 0.</param>
    /// <param name="trapped">What becomes of the trapped oil.</param>
    /// <param name="thicknessShare">[-] with two flanks sealing, the share of the working pitch that the first gear's tooth takes, above 0 and below 1.</param>
    /// <returns>[m³] for one turn of the first gear.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: V = π b [ra1² − rw1² + i (ra2² − rw2²) − (1 + i) K pb²/12], i = z1/z2; K by what becomes of the trapped oil. Assumes: casing closes on the tips; no leak. Source: virtual work on both gears, as N. D. Manring and S. B. Kasaragadda, J. Dyn. Sys. Meas. Control 2003 announce (from memory). Check: DisplacementTests.</remarks>
    public static double Of(in GearPair pair, double width, TrappedOil trapped = TrappedOil.Relieved, double thicknessShare = 0.5) => Of(pair, width, trapped, thicknessShare, default(Silent)).Volume;

    /// <summary>The same for any trace, with the ripple of the flow.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="pair">The gears, without fault.</param>
    /// <param name="width">[m] of the teeth, above 0.</param>
    /// <param name="trapped">What becomes of the trapped oil.</param>
    /// <param name="thicknessShare">[-] with two flanks sealing, the share of the working pitch that the first gear's tooth takes, above 0 and below 1.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>Volume and ripple.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: as the other; ripple (greatest − least)/mean of the flow = (1 + i) l²/(…), l the farthest that the sealing contact gets from the pitch point. Source: as the other (from memory). Check: DisplacementTests.</remarks>
    public static PumpDisplacement Of<TTrace>(in GearPair pair, double width, TrappedOil trapped, double thicknessShare, TTrace trace)
        where TTrace : struct, ITrace
    {
        Guard.AboveZero(width, "m");
        Guard.Probability(thicknessShare);
        if (pair.Fault != GearFault.None)
            throw new ArgumentOutOfRangeException(nameof(pair), pair, $"The gears cannot run together: {pair.Fault}.");
        var (first, second) = (pair.First, pair.Second);
        trace.Given("z_1", "teeth of the driving gear", first.Teeth, Units.None);
        trace.Given("z_2", "teeth of the driven gear", second.Teeth, Units.None);
        trace.Given("r_a1", "tip radius of the driving gear", first.TipRadius, Units.Metre);
        trace.Given("r_a2", "tip radius of the driven gear", second.TipRadius, Units.Metre);
        trace.Given("a", "centre distance", pair.CentreDistance, Units.Metre);
        trace.Given("p_b", "base pitch", pair.BasePitch, Units.Metre);
        trace.Given("b", "width of the teeth", width, Units.Metre);
        var ratio = trace.Line("i", "turns of the driven gear for one of the driver", "z_1/z_2", pair.Ratio, Units.None);
        var r1 = trace.Line("r_w1", "working pitch radius of the driver", "a × z_1/(z_1 + z_2)", pair.FirstWorkingRadius, Units.Metre);
        var r2 = trace.Line("r_w2", "working pitch radius of the driven gear", "a × z_2/(z_1 + z_2)", pair.SecondWorkingRadius, Units.Metre);
        var reach = trace.Line("R", "what the tips reach over the pitch circles", "r_a1^2 − r_w1^2 + i × (r_a2^2 − r_w2^2)", Square(first.TipRadius) - Square(r1) + (ratio * (Square(second.TipRadius) - Square(r2))), Units.SquareMetre);
        var (factor, farthest) = Trapped(pair, trapped, thicknessShare, trace);
        var pitch = Square(pair.BasePitch);
        var mean = trace.Line("E", "the same less what the mesh carries back, on the average", "R − (1 + i) × K × p_b^2/12", reach - ((1 + ratio) * factor * pitch / 12), Units.SquareMetre);
        var volume = trace.Line("V", "displacement for one turn of the driver", "π × b × E", Math.PI * width * mean, Units.CubicMetre);
        var ripple = trace.Line("δ", "ripple: greatest less least flow, over the mean", "(1 + i) × l^2/E", (1 + ratio) * Square(farthest) / mean, Units.None);
        return new PumpDisplacement(volume, ripple);
    }

    /// <summary>What a pump carries for one turn of the first gear, from the volumes of its tooth spaces.</summary>
    /// <param name="teeth">[-] of the first gear, 4 or more.</param>
    /// <param name="firstSpace">[m³] one tooth space of the first gear, filled level with the tips and faces; above 0.</param>
    /// <param name="secondSpace">[m³] one tooth space of the second gear; above 0.</param>
    /// <param name="pocket">[m³] what is trapped in the mesh with two pairs of teeth equally far from the pitch point, 0 or more.</param>
    /// <returns>[m³] for one turn of the first gear.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: z1 (space 1 + space 2 − pocket). Source: what the tooth spaces carry round less what the mesh carries back, geometry (computed, against the involute form). Check: DisplacementTests.</remarks>
    public static double FromSpaces(int teeth, double firstSpace, double secondSpace, double pocket) =>
        Guard.AtLeast(teeth, 4) * (Guard.AboveZero(firstSpace, "m³") + Guard.AboveZero(secondSpace, "m³") - Guard.ZeroOrMore(pocket, "m³"));

    private static (double Factor, double Farthest) Trapped<TTrace>(in GearPair pair, TrappedOil trapped, double share, TTrace trace)
        where TTrace : struct, ITrace
    {
        var pitch = pair.BasePitch;
        switch (trapped)
        {
            case TrappedOil.Relieved:
                trace.Given("K", "relief grooves, contact on one flank", 1, Units.None);
                return (1, trace.Line("l", "farthest the sealing contact gets from the pitch point", "p_b/2", pitch / 2, Units.Metre));
            case TrappedOil.TwoFlanks:
                trace.Given("s", "share of the pitch that the driver's tooth takes", share, Units.None);
                var both = trace.Line("K", "relief grooves, contact on both flanks", "s^3 + (1 − s)^3", Cube(share) + Cube(1 - share), Units.None);
                return (both, trace.Line("l", "farthest a sealing contact gets from the pitch point", "p_b/2 × max(s, 1 − s)", pitch / 2 * Math.Max(share, 1 - share), Units.Metre));
            default:
                var approach = pair.Approach;
                trace.Given("g_a", "path of contact before the pitch point", approach, Units.Metre);
                var g = approach / pitch;
                var carried = trace.Line("K", "no relief groove, the pocket carried over", "4 × ((1 − g_a/p_b)^3 + (g_a/p_b)^3)", 4 * (Cube(1 - g) + Cube(g)), Units.None);
                return (carried, trace.Line("l", "farthest the sealing contact gets from the pitch point", "max(g_a, p_b − g_a)", Math.Max(approach, pitch - approach), Units.Metre));
        }
    }

    private static double Square(double x) => x * x;

    private static double Cube(double x) => x * x * x;
}

/// <summary>What a pair of gears carries.</summary>
/// <param name="Volume">[m³] for one turn of the driver.</param>
/// <param name="Ripple">[-] greatest less least flow, over the mean.</param>
public readonly record struct PumpDisplacement(double Volume, double Ripple);
