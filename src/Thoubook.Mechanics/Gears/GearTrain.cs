using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Gears;

/// <summary>Which way something turns, looked at from one end throughout.</summary>
public enum Hand
{
    /// <summary>With the clock.</summary>
    Clockwise,

    /// <summary>Against the clock.</summary>
    Anticlockwise,
}

/// <summary>How one wheel drives the next.</summary>
public enum DriveKind
{
    /// <summary>Teeth on the outside of both: the hand is reversed.</summary>
    Outside,

    /// <summary>One wheel inside the other's ring of teeth: the hand is kept.</summary>
    Inside,

    /// <summary>A chain or belt: the hand is kept.</summary>
    Chain,
}

/// <summary>One step of a gear train. Wheels fixed on one shaft need no step; an idler is two steps.</summary>
/// <param name="Driver">[-] teeth of the wheel that drives, 1 or more.</param>
/// <param name="Driven">[-] teeth of the wheel that is driven, 1 or more.</param>
/// <param name="Kind">How it drives.</param>
public readonly record struct Drive(int Driver, int Driven, DriveKind Kind = DriveKind.Outside);

/// <summary>What comes out at the end of a gear train.</summary>
/// <param name="Ratio">[-] turns of the last wheel for one of the first.</param>
/// <param name="Hand">Which way the last wheel turns.</param>
public readonly record struct Driven(double Ratio, Hand Hand);

/// <summary>Where a gear lies beside its mate, looked at from one end.</summary>
public enum Beside
{
    /// <summary>To the left of it.</summary>
    Left,

    /// <summary>Above it.</summary>
    Above,

    /// <summary>To the right of it.</summary>
    Right,

    /// <summary>Below it.</summary>
    Below,
}

/// <summary>Speed, hand and ports through a gear train.</summary>
public static class GearTrain
{
    /// <summary>How the last wheel turns.</summary>
    /// <param name="hand">Which way the first wheel turns, looked at from the same end as the last.</param>
    /// <param name="drives">The steps in order; none where the pump sits on the first shaft.</param>
    /// <returns>Ratio and hand.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A wheel without teeth.</exception>
    /// <remarks>Model: ratio Π z_driver/z_driven; each outside mesh reverses the hand. Assumes: parallel shafts. Source: kinematics of gear trains (common practice). Check: GearTrainTests.</remarks>
    public static Driven Through(Hand hand, ReadOnlySpan<Drive> drives)
    {
        var ratio = 1.0;
        foreach (var drive in drives)
        {
            ratio *= (double)Guard.AtLeast(drive.Driver, 1) / Guard.AtLeast(drive.Driven, 1);
            if (drive.Kind == DriveKind.Outside)
                hand = Other(hand);
        }

        return new Driven(ratio, hand);
    }

    /// <summary>The side of a gear pump that delivers: teeth come out of mesh on the inlet side, and the oil goes round the outside to the other.</summary>
    /// <param name="driver">Which way the pump's driver turns.</param>
    /// <param name="lies">Where the driver lies beside the driven gear, looked at from the same end.</param>
    /// <returns>The side of the line of centres on which the outlet lies.</returns>
    /// <remarks>Model: at the mesh the driver's teeth move clockwise about the driver's centre; there they go from outlet to inlet. Source: how a gear pump works (common practice). Check: GearTrainTests.</remarks>
    public static Beside Outlet(Hand driver, Beside lies) =>
        // Sides are numbered clockwise. A driver to the left that turns clockwise moves its teeth down through the mesh: they part at the bottom, the top delivers.
        (Beside)(((int)lies + (driver == Hand.Clockwise ? 1 : 3)) % 4);

    /// <summary>The side across.</summary>
    /// <param name="side">A side.</param>
    /// <returns>The other.</returns>
    public static Beside Across(Beside side) => (Beside)(((int)side + 2) % 4);

    /// <summary>The hand the other way round.</summary>
    /// <param name="hand">A hand.</param>
    /// <returns>The other.</returns>
    public static Hand Other(Hand hand) => hand == Hand.Clockwise ? Hand.Anticlockwise : Hand.Clockwise;

    /// <summary>Tells a train to a trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="hand">Which way the first wheel turns.</param>
    /// <param name="drives">The steps in order.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>Ratio and hand.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A wheel without teeth.</exception>
    /// <remarks>Model: as the other. Source: kinematics of gear trains (common practice). Check: GearTrainTests.</remarks>
    public static Driven Through<TTrace>(Hand hand, ReadOnlySpan<Drive> drives, TTrace trace)
        where TTrace : struct, ITrace
    {
        var driven = Through(hand, drives);
        if (!TTrace.Writes)
            return driven;
        var (drivers, drivens, reverses) = (new double[drives.Length], new double[drives.Length], new double[drives.Length]);
        for (var i = 0; i < drives.Length; i++)
            (drivers[i], drivens[i], reverses[i]) = (drives[i].Driver, drives[i].Driven, drives[i].Kind == DriveKind.Outside ? 1 : 0);
        trace.Given("z_a", "teeth of each driving wheel", drivers, Units.None);
        trace.Given("z_b", "teeth of each driven wheel", drivens, Units.None);
        trace.Given("m", "1 where the hand is reversed", reverses, Units.None);
        trace.Given("h_0", "hand of the first wheel, 1 with the clock, −1 against it", Sign(hand), Units.None);
        trace.Line("i", "turns of the last wheel for one of the first", "exp(sum(ln(z_a/z_b)))", driven.Ratio, Units.None);
        trace.Line("h", "hand of the last wheel, 1 with the clock, −1 against it", "h_0 × cos(π × sum(m))", Sign(driven.Hand), Units.None);
        return driven;
    }

    private static double Sign(Hand hand) => hand == Hand.Clockwise ? 1 : -1;
}
