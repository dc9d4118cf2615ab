using CsCheck;
using Thoubook.Mechanics.Pumps;

namespace Thoubook.Mechanics.Tests.Pumps;

public sealed class GearPumpTests
{
    private const double Thou = 25.4e-6;

    /// <summary>Eleven teeth, 8 to the inch of diameter, an inch and a half wide, 3 thou of float.</summary>
    internal static readonly GearPumpSizes Bench = new(11, 41.275e-3, 34.925e-3, 38.1e-3, 0, 0, 3 * Thou, 0.5, 4 * Thou, 0, 16e-3, 0, 0, 0);

    [Fact]
    [Computed("laminar slots, computed apart from this code; inputs invented")]
    public void EverythingTogether()
    {
        var gears = new WorkedExample("GP7", "gear-pump.csv");
        var example = new WorkedExample("GP30", "gear-pump.csv");
        var pair = InvolutePairs.Of(gears);
        var (width, tip) = (gears.Input("face_width_b") * 1e-3, pair.First.TipRadius);
        var (end, over) = (example.Input("side_clearance_each_face") * 1e-3, example.Input("tip_clearance_radial") * 1e-3);
        var (viscosity, rise, turns) = (example.Input("dynamic_viscosity"), example.Input("pressure_rise"), example.Input("speed") / 60);
        var (hub, root) = (example.Input("shaft_radius") * 1e-3, gears.Input("root_radius_used_for_outline") * 1e-3);
        var land = pair.First.Thickness(tip);
        var endLeak = 4 * PumpGaps.EndLeak(end, root, hub, 0.5);
        var tipLeak = 2 * PumpGaps.TipLeak(over, width, land, example.Input("sealing_teeth_per_gear"));
        var carry = 2 * PumpGaps.TipCarry(over, width, tip);
        var endDrag = 4 * PumpGaps.EndDrag(end, tip, hub);
        var tipDrag = 2 * PumpGaps.TipDrag(over, width, land, tip, 16);
        var pump = new PumpCharacteristic(Displacement.Of(pair, width), endLeak, tipLeak, 0, carry, endDrag, tipDrag, 0, 0);
        const double perMinute = 60_000; // m³/s to L/min
        example.Check("tip_land_width", land * 1e3);
        example.Check("theoretical_flow", pump.Displacement * turns * perMinute);
        example.Check("tip_leakage_pressure_part_both_gears", tipLeak * rise / viscosity * perMinute);
        example.Check("tip_drag_part_both_gears (assists delivery)", carry * turns * perMinute);
        example.Check("tip_leakage_net", ((tipLeak * rise / viscosity) - (carry * turns)) * perMinute);
        example.Check("side_leakage_4_faces_to_shaft", endLeak * rise / viscosity * perMinute);
        var speed = 2 * Math.PI * turns;
        example.Check("delivered_flow", pump.Flow(speed, rise, viscosity) * perMinute);
        example.Check("volumetric_efficiency", 100 * pump.Flow(speed, rise, viscosity) / (pump.Displacement * turns));
        example.Check("pressure_torque", pump.Torque(0, rise, viscosity));
        example.Check("face_drag_torque_4_faces", endDrag * viscosity * speed);
        example.Check("tip_drag_torque_both", tipDrag * viscosity * speed);
        example.Check("torque_total_without_journals", pump.Torque(speed, rise, viscosity));
        Assert.Equal(pump.Torque(speed, rise, viscosity) * speed, pump.Power(speed, rise, viscosity), 1e-9);
    }

    [Fact]
    [Published("B. S. Massey and J. Ward-Smith, Mechanics of Fluids, examples 6.2, 6.3 and 6.6")]
    public void EachGap()
    {
        var disc = new WorkedExample("GP25", "gear-pump.csv");
        disc.Check("flow Q = pi h^3 dp/(6 mu ln(r2/r1))", PumpGaps.EndLeak(disc.Input("gap") * 1e-3, 0.06, 0.06 / disc.Input("radius_ratio"), 1) * disc.Input("pressure") / disc.Input("viscosity"));

        // A slot with a moving wall, here as the gap over a tip: one tooth, a metre wide, turning so that its tip has the wall's speed.
        var slot = new WorkedExample("GP26", "gear-pump.csv");
        var (gap, speed) = (slot.Input("gap") * 1e-3, slot.Input("wall_speed"));
        const double radius = 0.1;
        var pressed = PumpGaps.TipLeak(gap, 1, slot.Input("length"), 1) * slot.Input("pressure_drop") / slot.Input("viscosity");
        slot.Check("flow_per_width q = h^3 dp/(12 mu L) + U h/2", pressed + (PumpGaps.TipCarry(gap, 1, radius) * speed / radius / (2 * Math.PI)));

        // A cup viscometer: the side drags like a bush, the end like the end of a gear.
        var cup = new WorkedExample("GP28", "gear-pump.csv");
        var (diameter, height) = (cup.Input("diameter") * 1e-3, cup.Input("height") * 1e-3);
        var drag = PumpGaps.BushDrag(2 * cup.Input("side_gap") * 1e-3, diameter, height) + PumpGaps.EndDrag(cup.Input("end_gap") * 1e-3, diameter / 2, 0);
        cup.Check("viscosity from T = mu w (pi h D^3/(4 c) + pi D^4/(32 t))", cup.Input("torque") / (drag * cup.Input("speed") * Math.PI / 30));
    }

    [Fact]
    [Published("A. Esposito, Fluid Power with Applications, examples 5-8 and 5-9")]
    public void Efficiencies()
    {
        const double cubicInch = 16.387064e-6, gallon = 3.785411784e-3, psi = 6894.757293168, poundInch = 0.1129848290276;
        var inches = new WorkedExample("GP23", "gear-pump.csv");
        var (volume, rise, torque, turns) = (inches.Input("displacement") * cubicInch, inches.Input("pressure") * psi, inches.Input("input_torque") * poundInch, inches.Input("speed") / 60);
        var leak = ((volume * turns) - (inches.Input("actual_flow") * gallon / 60)) * 0.02 / rise;
        var pump = new PumpCharacteristic(volume, leak, 0, 0, 0, 0, 0, 0, 0);
        var delivered = pump.Flow(2 * Math.PI * turns, rise, 0.02);
        inches.Check("theoretical_torque V p/(2 pi)", pump.Torque(0, rise, 0.02) / poundInch);
        inches.Check("volumetric_efficiency", 100 * delivered / (volume * turns));
        // The source's factors for horsepower, 1714 and 63000, are rounded from 1714.29 and 63025.4: together 2.4e-4.
        inches.Check("mechanical_efficiency", 100 * pump.Torque(0, rise, 0.02) / torque, 2.5e-4);
        inches.Check("overall_efficiency", 100 * delivered * rise / (torque * 2 * Math.PI * turns), 2.5e-4);
        var metric = new WorkedExample("GP24", "gear-pump.csv");
        var other = new PumpCharacteristic(metric.Input("displacement") * 1e-6, 0, 0, 0, 0, 0, 0, 0, 0);
        metric.Check("theoretical_torque", other.Torque(0, metric.Input("pressure") * 1e5, 0.02));
    }

    [Fact]
    [Computed("forced vortex in a tooth space, computed apart from this code")]
    public void FillingLimit()
    {
        var example = new WorkedExample("GP31", "gear-pump.csv");
        var (tip, root) = (example.Input("tip_radius") * 1e-3, example.Input("root_radius") * 1e-3);
        var pump = new PumpCharacteristic(1, 0, 0, 0, 0, 0, 0, 0, ((tip * tip) - (root * root)) / 2);
        var (inlet, least, density) = (example.Input("absolute_inlet_pressure"), example.Input("lowest_permitted_absolute_pressure"), example.Input("density"));
        var speed = pump.FillingSpeed(inlet, least, density);
        // The radii are printed to a tenth of a micrometre, which is 4e-6 in the speed.
        example.Check("filling_limit_speed", speed * 30 / Math.PI, 5e-6);
        example.Check("tip_speed_at_limit", speed * tip, 5e-6);
        Assert.Equal(inlet, pump.FillsAt(least, density, speed), 1e-6);
        Assert.Equal(0, pump.FillingSpeed(least - 1, least, density));
    }

    [Fact]
    [CommonPractice("end float all on one side leaks four times what it leaks centred")]
    public void FloatOnOneSide_LeaksFourfold()
    {
        var centred = GearPump.Characteristic(Bench);
        foreach (var share in (double[])[0, 1])
            Outside.CheckRelative($"end leak with {share} of the float on one face, over that centred", 4, GearPump.Characteristic(Bench with { FloatShare = share }).EndLeak / centred.EndLeak, 1e-12);
    }

    [Fact]
    [CommonPractice("a leak goes with the cube of its gap: doubling the end float multiplies it by eight, 2 thou grown to 2.8 by 2.8")]
    public void EndLeak_GoesWithTheCubeOfTheFloat()
    {
        Outside.CheckRelative("end leak of twice the float", 8, Leak(4 * Thou) / Leak(2 * Thou), 1e-12);
        Outside.Check("end leak of 2.8 thou of float over that of 2 thou", 2.8, Leak(2.8 * Thou) / Leak(2 * Thou), 0.06);

        static double Leak(double endFloat) => GearPump.Characteristic(Bench with { EndFloat = endFloat }).EndLeak;
    }

    [Fact]
    [CommonPractice("two equal spur gears carry about 7 × width × teeth/(diametral pitch)² for one turn: 1.5 in wide, 11 teeth, 8 to the inch, 1.8 in³")]
    public void RuleOfSeven()
    {
        // Standard gears: tips one module over the pitch circle. The rule is a round figure; within a tenth.
        var sizes = Bench with { TipDiameter = 13.0 / 8 * 25.4e-3, CentreDistance = 11.0 / 8 * 25.4e-3, Width = 1.5 * 25.4e-3 };
        Outside.CheckRelative("displacement of 11 teeth, 8 to the inch, 1.5 in wide, in³ a turn", 1.8, GearPump.Characteristic(sizes).Displacement / 16.387064e-6, 0.1);
    }

    [Fact]
    public void Driven_HasItsOwnFloat()
    {
        var both = GearPump.Characteristic(Bench);
        var shut = GearPump.Characteristic(Bench with { DrivenEndFloat = 0 });
        Assert.Equal(both.EndLeak / 2, shut.EndLeak, both.EndLeak * 1e-12);
        Assert.Equal(both.EndLeak, GearPump.Characteristic(Bench with { DrivenEndFloat = Bench.EndFloat }).EndLeak, both.EndLeak * 1e-12);
    }

    [Fact]
    public void Paths_ThatAreAbsent_LeakNothing()
    {
        var closed = GearPump.Characteristic(Bench with { EndFloat = 0, TipClearance = 0 });
        Assert.Equal((0, 0, 0, 0), (closed.EndLeak, closed.TipLeak, closed.BushLeak, closed.TipDrag));
        Assert.True(closed.Drag > 0);
        var bushes = Bench with { BushClearance = 3 * Thou, BushLength = 0.025, BushDiameter = 0.014 };
        var with = GearPump.Characteristic(bushes);
        // Half the pressure at the inner end of two bushes.
        Assert.Equal(Math.PI * 0.014 * Math.Pow(1.5 * Thou, 3) * (1 + (1.5 * 0.36)) / (12 * 0.025), with.BushLeak, with.BushLeak * 1e-12);
        Assert.Equal(with.EndLeak + with.TipLeak + with.BushLeak, with.Leak, with.Leak * 1e-12);
        Assert.Equal(GearPump.Characteristic(Bench).Drag + (2 * PumpGaps.BushDrag(3 * Thou, 0.014, 0.025)), with.Drag, with.Drag * 1e-12);
    }

    [Fact]
    public void Tips_RunInHalfTheDiametralClearance()
    {
        var pump = GearPump.Characteristic(Bench);
        var gear = Bench.Pair.First;
        var land = gear.Thickness(gear.TipRadius);
        Assert.Equal(2 * PumpGaps.TipLeak(2 * Thou, Bench.Width, land, 5.5), pump.TipLeak, pump.TipLeak * 1e-12);
        Assert.Equal(2 * Math.PI * Bench.Width * gear.TipRadius * 2 * Thou, pump.TipDrag, pump.TipDrag * 1e-12);
        Assert.Equal(2 * PumpGaps.TipDrag(2 * Thou, Bench.Width, land, gear.TipRadius, 11), pump.TipShear, pump.TipShear * 1e-12);

        // Teeth that come to a point still seal over a tenth of the module.
        var pointed = Bench with { TipDiameter = 44e-3, HubDiameter = 8e-3 };
        Assert.True(pointed.Pair.First.Thickness(22e-3) < 0.1 * pointed.ModuleOrFromCentres);
        Assert.Equal(2 * PumpGaps.TipLeak(2 * Thou, Bench.Width, 0.1 * pointed.ModuleOrFromCentres, 5.5), GearPump.Characteristic(pointed).TipLeak, 1e-20);
    }

    [Fact]
    public void Gaps_ThatCannotBe_AreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => PumpGaps.EndLeak(1e-4, 0.02, 0.01, 1.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => PumpGaps.EndLeak(1e-4, 0.01, 0.01, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => PumpGaps.EndLeak(-1e-4, 0.02, 0.01, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => PumpGaps.TipLeak(1e-4, 0.02, 0, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => PumpGaps.EndDrag(0, 0.02, 0.01));
    }

    [Fact]
    public void Measured_StandsInPlaceOfTheGeometry()
    {
        var measured = GearPump.Characteristic(Bench with { MeasuredDisplacement = 2.5e-5 });
        Assert.Equal(2.5e-5, measured.Displacement);
        Assert.Equal(GearPump.Characteristic(Bench).Leak, measured.Leak);
    }

    [Fact]
    public void WhatIsNotKnown_IsTakenAsSaid()
    {
        var bare = Bench with { HubDiameter = 0 };
        Assert.Equal(bare.CentreDistance / 11, bare.ModuleOrFromCentres);
        Assert.Equal(Math.PI / 9, bare.PressureAngleOr20);
        Assert.Equal(bare.CentreDistance - (bare.TipDiameter / 2) - (0.25 * bare.CentreDistance / 11), bare.RootRadius, 1e-15);
        Assert.Equal(bare.RootRadius / 2, bare.HubRadius, 1e-15);
        Assert.Equal(0.007, (bare with { BushDiameter = 0.014 }).HubRadius);
        Assert.Equal(0.008, (Bench with { BushDiameter = 0.014 }).HubRadius);
        Assert.Equal(0.014, (Bench with { BushDiameter = 0.014 }).SpindleDiameter);
        Assert.Equal(0.016, Bench.SpindleDiameter);
        Assert.Equal(0.012, (bare with { RootDiameter = 0.024 }).RootRadius);
    }

    [Fact]
    public void Slip_GoesWithPressureOverViscosity_AndNotWithSpeed()
    {
        var pump = GearPump.Characteristic(Bench);
        Gen.Select(Gen.Double[0, 400], Gen.Double[0, 1e6], Gen.Double[0.003, 1]).Sample((speed, rise, viscosity) =>
        {
            var slip = pump.Flow(speed, 0, viscosity) - pump.Flow(speed, rise, viscosity);
            Assert.Equal(pump.Leak * rise / viscosity, slip, 1e-9);
            Assert.Equal(slip, pump.Flow(0, 0, viscosity) - pump.Flow(0, rise, viscosity), 1e-9);
            Assert.Equal((pump.Displacement + pump.TipDrag) * speed / (2 * Math.PI), pump.Flow(speed, 0, viscosity), 1e-12);
        });
    }

    [Fact]
    public void AnEndAgainstItsFace_DragsOnALeastFilm()
    {
        var centred = GearPump.Characteristic(Bench);
        var against = GearPump.Characteristic(Bench with { FloatShare = 0 });
        var full = PumpGaps.EndDrag(1, Bench.TipDiameter / 2, Bench.HubRadius);
        Assert.Equal(2 * full * ((1 / GearPump.LeastEndFilm) + (1 / Bench.EndFloat)) - (4 * full / (Bench.EndFloat / 2)), against.Drag - centred.Drag, against.Drag * 1e-9);
    }

    [Fact]
    public void EachFault_IsNamed()
    {
        Assert.Equal(GearPumpFault.None, Bench.Fault);
        Assert.Equal(GearPumpFault.SizeMissing, (Bench with { Teeth = 3 }).Fault);
        Assert.Equal(GearPumpFault.SizeMissing, (Bench with { TipDiameter = 0 }).Fault);
        Assert.Equal(GearPumpFault.SizeMissing, (Bench with { CentreDistance = double.NaN }).Fault);
        Assert.Equal(GearPumpFault.SizeMissing, (Bench with { Width = -1 }).Fault);
        Assert.Equal(GearPumpFault.SizeBelowZero, (Bench with { Module = -1 }).Fault);
        Assert.Equal(GearPumpFault.SizeBelowZero, (Bench with { TipClearance = -1 }).Fault);
        Assert.Equal(GearPumpFault.SizeBelowZero, (Bench with { MeasuredDisplacement = 0 }).Fault);
        Assert.Equal(GearPumpFault.SizeBelowZero, (Bench with { BushLength = double.PositiveInfinity }).Fault);
        Assert.Equal(GearPumpFault.NoEndFloat, (Bench with { EndFloat = -1e-6 }).Fault);
        Assert.Equal(GearPumpFault.NoEndFloat, (Bench with { DrivenEndFloat = -1e-6 }).Fault);
        Assert.Equal(GearPumpFault.FloatShare, (Bench with { FloatShare = 1.1 }).Fault);
        Assert.Equal(GearPumpFault.PressureAngle, (Bench with { PressureAngle = 1 }).Fault);
        Assert.Equal(GearPumpFault.TipsApart, (Bench with { TipDiameter = 0.034 }).Fault);
        Assert.Equal(GearPumpFault.TipsTooDeep, (Bench with { TipDiameter = 0.065 }).Fault);
        Assert.Equal(GearPumpFault.BaseBeyondCentres, (Bench with { Module = 3.5e-3 }).Fault);
        Assert.Equal(GearPumpFault.HubOrRoot, (Bench with { HubDiameter = 0.03 }).Fault);
        Assert.Equal(GearPumpFault.HubOrRoot, (Bench with { RootDiameter = 0.05 }).Fault);
        Assert.Equal(GearPumpFault.BushTooSlack, (Bench with { BushClearance = 0.01, BushDiameter = 0.01, BushLength = 0.02 }).Fault);
        Assert.Throws<ArgumentOutOfRangeException>(() => GearPump.Characteristic(Bench with { EndFloat = -1e-6 }));
    }

    [Fact]
    public void Characteristic_AllocatesNothing()
    {
        var sizes = Bench with { BushClearance = 3 * Thou, BushLength = 0.025 };
        var sink = GearPump.Characteristic(sizes).Leak;
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 100; i++)
            sink += GearPump.Characteristic(sizes).Leak;
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(sink > 0);
    }
}
