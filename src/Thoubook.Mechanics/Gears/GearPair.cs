using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Gears;

/// <summary>Why two gears cannot run together as said.</summary>
public enum GearFault
{
    /// <summary>They can.</summary>
    None,

    /// <summary>The tips do not reach into each other: tip radii together not above the centre distance.</summary>
    TipsApart,

    /// <summary>A tip reaches the other gear's base of the teeth or beyond its centre: the centre distance is too small for it.</summary>
    TipsTooDeep,

    /// <summary>The base circles together are larger than the centre distance: module, pressure angle or centre distance is wrong.</summary>
    BaseBeyondCentres,

    /// <summary>A tip lies inside its own base circle: the tooth has no involute.</summary>
    TipInsideBase,
}

/// <summary>Two involute spur gears on their centres.</summary>
/// <param name="First">The gear that drives.</param>
/// <param name="Second">The gear that is driven.</param>
/// <param name="CentreDistance">[m] between the axes.</param>
public readonly record struct GearPair(SpurGear First, SpurGear Second, double CentreDistance)
{
    /// <summary>[-] turns of the second gear for one of the first.</summary>
    public double Ratio => (double)First.Teeth / Second.Teeth;

    /// <summary>[m] working pitch radius of the first gear.</summary>
    public double FirstWorkingRadius => CentreDistance * First.Teeth / (First.Teeth + Second.Teeth);

    /// <summary>[m] working pitch radius of the second gear.</summary>
    public double SecondWorkingRadius => CentreDistance * Second.Teeth / (First.Teeth + Second.Teeth);

    /// <summary>[rad] pressure angle at which they work on these centres.</summary>
    public double WorkingAngle => Math.Acos((First.BaseRadius + Second.BaseRadius) / CentreDistance);

    /// <summary>[m] distance between neighbouring flanks along the line of action.</summary>
    public double BasePitch => 2 * Math.PI * First.BaseRadius / First.Teeth;

    /// <summary>[m] path of contact before the pitch point, set by the tip of the driven gear.</summary>
    public double Approach => Reach(Second) - (SecondWorkingRadius * Math.Sin(WorkingAngle));

    /// <summary>[m] path of contact after the pitch point, set by the tip of the driving gear.</summary>
    public double Recess => Reach(First) - (FirstWorkingRadius * Math.Sin(WorkingAngle));

    /// <summary>[-] pairs of teeth in contact on the average; below 1 they let go of each other.</summary>
    public double ContactRatio => (Approach + Recess) / BasePitch;

    /// <summary>[m] backlash along the working pitch circle; negative where the teeth would bind.</summary>
    public double Backlash => (2 * Math.PI * FirstWorkingRadius / First.Teeth) - First.Thickness(FirstWorkingRadius) - Second.Thickness(SecondWorkingRadius);

    /// <summary>Why they cannot run together, if they cannot.</summary>
    public GearFault Fault =>
        First.TipRadius + Second.TipRadius <= CentreDistance ? GearFault.TipsApart
        : First.BaseRadius + Second.BaseRadius > CentreDistance ? GearFault.BaseBeyondCentres
        : First.TipRadius <= First.BaseRadius || Second.TipRadius <= Second.BaseRadius ? GearFault.TipInsideBase
        : First.TipRadius >= CentreDistance - (0.25 * Second.BaseRadius) || Second.TipRadius >= CentreDistance - (0.25 * First.BaseRadius) ? GearFault.TipsTooDeep
        : GearFault.None;

    /// <summary>A pair as measured, its drawing lost: equal teeth without backlash on the centres found.</summary>
    /// <param name="firstTeeth">[-] 4 or more.</param>
    /// <param name="secondTeeth">[-] 4 or more.</param>
    /// <param name="firstTipRadius">[m] above 0.</param>
    /// <param name="secondTipRadius">[m] above 0.</param>
    /// <param name="centreDistance">[m] above 0.</param>
    /// <param name="basePitch">[m] what a span over the teeth gains for one tooth more, or π m cos α; above 0.</param>
    /// <returns>The pair; ask it for its fault before anything else.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: rb = z pb/2π; each tooth takes half the working pitch. Valid: backlash small beside the pitch. Source: involute geometry, ISO 21771:2007 (from memory). Check: GearPairTests.</remarks>
    public static GearPair Measured(int firstTeeth, int secondTeeth, double firstTipRadius, double secondTipRadius, double centreDistance, double basePitch)
    {
        Guard.AtLeast(firstTeeth, 4);
        Guard.AtLeast(secondTeeth, 4);
        Guard.AboveZero(firstTipRadius, "m");
        Guard.AboveZero(secondTipRadius, "m");
        Guard.AboveZero(centreDistance, "m");
        Guard.AboveZero(basePitch, "m");
        var cosine = basePitch * (firstTeeth + secondTeeth) / (2 * Math.PI * centreDistance);
        var involute = cosine < 1 ? SpurGear.Involute(Math.Acos(cosine)) : 0;
        return new(Gear(firstTeeth, firstTipRadius), Gear(secondTeeth, secondTipRadius), centreDistance);

        SpurGear Gear(int teeth, double tipRadius) => new(teeth, tipRadius, teeth * basePitch / (2 * Math.PI), (Math.PI / (2 * teeth)) + involute);
    }

    private static double Reach(SpurGear gear) => Math.Sqrt((gear.TipRadius * gear.TipRadius) - (gear.BaseRadius * gear.BaseRadius));
}
