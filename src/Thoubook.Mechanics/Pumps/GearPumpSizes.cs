using Thoubook.Mechanics.Gears;
using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Pumps;

/// <summary>What can be measured on a pump of two equal gears. Zero stands for what is absent or not known, where it says so.</summary>
/// <param name="Teeth">[-] of each gear, 4 or more.</param>
/// <param name="TipDiameter">[m] over the tips.</param>
/// <param name="CentreDistance">[m] between the spindles.</param>
/// <param name="Width">[m] of the gears.</param>
/// <param name="PressureAngle">[rad] of the cutter; 0: 20°.</param>
/// <param name="Module">[m] of the cutter; 0: centre distance over teeth, right for gears without profile shift.</param>
/// <param name="EndFloat">[m] total, 0 or more.</param>
/// <param name="FloatShare">[-] of the end float on one face: 0.5 where the gears run centred, 0 or 1 where they lie against one face.</param>
/// <param name="TipClearance">[m] diametral, pocket less tips; 0: the tips are taken as sealing.</param>
/// <param name="RootDiameter">[m] at the roots of the teeth; 0: from the tips and a root clearance of a quarter module.</param>
/// <param name="HubDiameter">[m] of the hub or spindle within the ends; 0: the spindle's in its bush, or half the root diameter.</param>
/// <param name="BushClearance">[m] diametral; 0: no leak past the bushes.</param>
/// <param name="BushLength">[m] of each of the two bushes that lead outside; 0: no leak past the bushes.</param>
/// <param name="BushDiameter">[m] of the spindles; 0: the hub's.</param>
public readonly record struct GearPumpSizes(
    int Teeth,
    double TipDiameter,
    double CentreDistance,
    double Width,
    double PressureAngle,
    double Module,
    double EndFloat,
    double FloatShare,
    double TipClearance,
    double RootDiameter,
    double HubDiameter,
    double BushClearance,
    double BushLength,
    double BushDiameter)
{
    /// <summary>[m] end float of the driven gear where it differs from the driver's.</summary>
    public double? DrivenEndFloat { get; init; }

    /// <summary>[m³] displacement for one turn as caught or measured in the tooth spaces; stands in place of the geometry.</summary>
    public double? MeasuredDisplacement { get; init; }

    /// <summary>[m] the module, or what stands in for it.</summary>
    public double ModuleOrFromCentres => Module > 0 ? Module : CentreDistance / Teeth;

    /// <summary>[rad] the cutter's pressure angle, or 20°.</summary>
    public double PressureAngleOr20 => PressureAngle > 0 ? PressureAngle : Math.PI / 9;

    /// <summary>[m] radius at the roots, or what stands in for it.</summary>
    public double RootRadius => RootDiameter > 0 ? RootDiameter / 2 : CentreDistance - (TipDiameter / 2) - (0.25 * ModuleOrFromCentres);

    /// <summary>[m] radius of the hub, or what stands in for it.</summary>
    public double HubRadius => HubDiameter > 0 ? HubDiameter / 2 : BushDiameter > 0 ? BushDiameter / 2 : RootRadius / 2;

    /// <summary>[m] diameter of the spindles, or the hub's.</summary>
    public double SpindleDiameter => BushDiameter > 0 ? BushDiameter : 2 * HubRadius;

    /// <summary>Whether oil can get past the bushes.</summary>
    public bool HasBushes => BushClearance > 0 && BushLength > 0;

    /// <summary>The two gears.</summary>
    public GearPair Pair => GearPair.Measured(Teeth, Teeth, TipDiameter / 2, TipDiameter / 2, CentreDistance, Math.PI * ModuleOrFromCentres * Math.Cos(PressureAngleOr20));

    /// <summary>Why such a pump cannot be, if it cannot.</summary>
    public GearPumpFault Fault =>
        Teeth < 4 || !Positive(TipDiameter) || !Positive(CentreDistance) || !Positive(Width) ? GearPumpFault.SizeMissing
        : !ZeroOrMore(Module) || !ZeroOrMore(RootDiameter) || !ZeroOrMore(HubDiameter) || !ZeroOrMore(BushClearance) || !ZeroOrMore(BushLength) || !ZeroOrMore(BushDiameter) || !ZeroOrMore(TipClearance) || !(MeasuredDisplacement is null or > 0) ? GearPumpFault.SizeBelowZero
        : !ZeroOrMore(EndFloat) || !ZeroOrMore(DrivenEndFloat ?? 0) ? GearPumpFault.NoEndFloat
        : !(FloatShare is >= 0 and <= 1) ? GearPumpFault.FloatShare
        : !(PressureAngleOr20 is >= 0.15 and <= 0.65) ? GearPumpFault.PressureAngle
        : Pair.Fault switch
        {
            GearFault.TipsApart => GearPumpFault.TipsApart,
            GearFault.TipsTooDeep => GearPumpFault.TipsTooDeep,
            GearFault.BaseBeyondCentres => GearPumpFault.BaseBeyondCentres,
            GearFault.TipInsideBase => GearPumpFault.TipInsideBase,
            _ => !(RootRadius < TipDiameter / 2) || !(HubRadius < RootRadius) || !(HubRadius > 0) ? GearPumpFault.HubOrRoot
                : HasBushes && !(BushClearance < SpindleDiameter) ? GearPumpFault.BushTooSlack
                : GearPumpFault.None,
        };

    private static bool Positive(double size) => size > 0 && double.IsFinite(size);

    private static bool ZeroOrMore(double size) => size >= 0 && double.IsFinite(size);
}

/// <summary>Why a gear pump cannot be as its sizes say.</summary>
public enum GearPumpFault
{
    /// <summary>It can.</summary>
    None,

    /// <summary>Fewer than four teeth, or tip diameter, centre distance or width not above 0.</summary>
    SizeMissing,

    /// <summary>A size is below 0 or not finite.</summary>
    SizeBelowZero,

    /// <summary>The end float is below nil: the gears are wider than their pocket and the pump locks.</summary>
    NoEndFloat,

    /// <summary>The share of the float on one face is not between 0 and 1.</summary>
    FloatShare,

    /// <summary>The pressure angle is not one of gears (9° to 37°).</summary>
    PressureAngle,

    /// <summary>The tip diameter is not above the centre distance: the teeth do not reach into each other.</summary>
    TipsApart,

    /// <summary>The tips reach too far: the tip diameter or the centre distance is wrong.</summary>
    TipsTooDeep,

    /// <summary>The base circles are larger than the centre distance allows: module, pressure angle or centre distance is wrong.</summary>
    BaseBeyondCentres,

    /// <summary>The tips lie within the base circle.</summary>
    TipInsideBase,

    /// <summary>The clearance of a bush is not below the diameter of its spindle.</summary>
    BushTooSlack,

    /// <summary>Hub, root and tip do not follow each other outwards.</summary>
    HubOrRoot,
}

/// <summary>All that a circuit need know of a gear pump.</summary>
/// <param name="Displacement">[m³] for one turn.</param>
/// <param name="EndLeak">[m³] over the four ends: leak times pressure rise over viscosity is the flow.</param>
/// <param name="TipLeak">[m³] over the tips of both gears.</param>
/// <param name="BushLeak">[m³] past both bushes.</param>
/// <param name="TipDrag">[m³] for one turn, carried by the tips besides the displacement.</param>
/// <param name="EndDrag">[m³] of the four ends: drag times viscosity times speed of turning is the torque.</param>
/// <param name="TipShear">[m³] of the tips of both gears, likewise.</param>
/// <param name="BushDrag">[m³] of both bushes, likewise.</param>
/// <param name="FillingFactor">[m²] times density times the square of the speed of turning it is the pressure that a tooth space loses from tip to root.</param>
public readonly record struct PumpCharacteristic(double Displacement, double EndLeak, double TipLeak, double BushLeak, double TipDrag, double EndDrag, double TipShear, double BushDrag, double FillingFactor)
{
    /// <summary>[m³] by all paths: leak times pressure rise over viscosity is the slip.</summary>
    public double Leak => EndLeak + TipLeak + BushLeak;

    /// <summary>[m³] of ends, tips and bushes: drag times viscosity times speed of turning is the torque.</summary>
    public double Drag => EndDrag + TipShear + BushDrag;

    /// <summary>Flow that reaches the outlet, filled.</summary>
    /// <param name="speed">[rad/s] of the pump.</param>
    /// <param name="pressureRise">[Pa] outlet above inlet.</param>
    /// <param name="viscosity">[Pa s] above 0.</param>
    /// <returns>[m³/s] flow; negative where slip is more than what the gears carry.</returns>
    /// <remarks>Model: (V + V_tips) n − leak Δp/μ. Source: continuity (common practice). Check: GearPumpTests.</remarks>
    public double Flow(double speed, double pressureRise, double viscosity) =>
        ((Displacement + TipDrag) * Guard.Finite(speed, "rad/s") / (2 * Math.PI)) - (Leak * Guard.Finite(pressureRise, "Pa") / Guard.AboveZero(viscosity, "Pa s"));

    /// <summary>Torque to turn the pump.</summary>
    /// <param name="speed">[rad/s] of the pump, 0 or more.</param>
    /// <param name="pressureRise">[Pa] outlet above inlet.</param>
    /// <param name="viscosity">[Pa s] above 0.</param>
    /// <returns>[N m] torque, friction of the mesh left out.</returns>
    /// <remarks>Model: V Δp/2π + drag μ ω. Source: A. Esposito, Fluid Power with Applications, example 5-8 for the first term (published). Check: GearPumpTests.</remarks>
    public double Torque(double speed, double pressureRise, double viscosity) =>
        (Displacement * Guard.Finite(pressureRise, "Pa") / (2 * Math.PI)) + (Drag * Guard.AboveZero(viscosity, "Pa s") * Guard.ZeroOrMore(speed, "rad/s"));

    /// <summary>Power to turn the pump.</summary>
    /// <param name="speed">[rad/s] of the pump, 0 or more.</param>
    /// <param name="pressureRise">[Pa] outlet above inlet.</param>
    /// <param name="viscosity">[Pa s] above 0.</param>
    /// <returns>[W] power.</returns>
    /// <remarks>Model: torque times speed. Source: definition of power (published in every handbook). Check: GearPumpTests.</remarks>
    public double Power(double speed, double pressureRise, double viscosity) => Torque(speed, pressureRise, viscosity) * speed;

    /// <summary>Absolute pressure at the inlet from which the tooth spaces fill right down to their roots.</summary>
    /// <param name="leastPressure">[Pa] absolute, that the oil bears before it lets go of its air; 30 to 50 kPa for engine oil.</param>
    /// <param name="density">[kg/m³] of the oil, above 0.</param>
    /// <param name="speed">[rad/s] of the pump.</param>
    /// <returns>[Pa] absolute.</returns>
    /// <remarks>Model: p_min + ρ ω² (ra² − rf²)/2, the oil in a tooth space turning with it. Source: forced vortex (from memory). Check: GearPumpTests.</remarks>
    public double FillsAt(double leastPressure, double density, double speed) =>
        Guard.ZeroOrMore(leastPressure, "Pa") + (Guard.AboveZero(density, "kg/m³") * Guard.Finite(speed, "rad/s") * speed * FillingFactor);

    /// <summary>Speed up to which the tooth spaces fill.</summary>
    /// <param name="inletPressure">[Pa] absolute, at the pump's inlet.</param>
    /// <param name="leastPressure">[Pa] absolute, that the oil bears before it lets go of its air.</param>
    /// <param name="density">[kg/m³] of the oil, above 0.</param>
    /// <returns>[rad/s] of the pump; 0 where the inlet is below what the oil bears.</returns>
    /// <remarks>Model: √(2 (p_in − p_min)/(ρ (ra² − rf²))). Source: forced vortex (from memory). Check: GearPumpTests.</remarks>
    public double FillingSpeed(double inletPressure, double leastPressure, double density) =>
        Math.Sqrt(Math.Max(0, Guard.ZeroOrMore(inletPressure, "Pa") - Guard.ZeroOrMore(leastPressure, "Pa")) / (Guard.AboveZero(density, "kg/m³") * FillingFactor));
}
