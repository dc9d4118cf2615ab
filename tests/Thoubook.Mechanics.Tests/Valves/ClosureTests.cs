using CsCheck;
using Thoubook.Mechanics.Valves;

namespace Thoubook.Mechanics.Tests.Valves;

public sealed class ClosureTests
{
    internal static readonly Gen<Closure> Any = Gen.Select(Gen.Int[0, 3], Gen.Double[2e-3, 40e-3], Gen.Double[0, 1]).Select((kind, seat, share) => kind switch
    {
        0 => Closure.Disc(seat),
        1 => Closure.Poppet(seat, 0.15 + (1.3 * share)),
        2 => Closure.Ball(seat, seat * (1.02 + share)),
        _ => Closure.Piston(seat, seat * (0.1 + share), share > 0.5 ? seat * 0.1 : 0),
    });

    [Fact]
    public void Slope_IsTheDerivativeOfTheOpening()
    {
        Gen.Select(Any, Gen.Double[0.001, 1.2]).Sample((closure, share) =>
        {
            var (lift, step) = (share * closure.Seat, 1e-6 * closure.Seat);
            var (below, above) = (closure.Area(lift - step), closure.Area(lift + step));
            if (below < closure.WidestArea && above >= closure.WidestArea)
                return; // the kink itself
            if (closure.Kind == ClosureKind.Piston && below == 0 && above > 0)
                return;
            Assert.Equal(closure.AreaSlope(lift), (above - below) / (2 * step), 1e-6 * closure.Seat);
        });
    }

    [Fact]
    public void Opening_BeginsAtNothing_NeverFalls_AndStopsAtTheBore()
    {
        Gen.Select(Any, Gen.Double[0, 5], Gen.Double[0, 5]).Sample((closure, a, b) =>
        {
            Assert.Equal(0, closure.Area(0), 1e-18);
            var (less, more) = (Math.Min(a, b) * closure.Seat, Math.Max(a, b) * closure.Seat);
            Assert.True(closure.Area(less) <= closure.Area(more) * (1 + 1e-12));
            Assert.True(closure.Area(more) <= closure.WidestArea);
            Assert.True(closure.AreaSlope(less) >= 0);
            if (closure.Kind != ClosureKind.Piston)
                Assert.Equal(closure.LiftingArea, closure.Area(100 * closure.Seat), 1e-15);
        });
    }

    [Fact]
    public void Openings_OfSimpleShapes()
    {
        Assert.Equal(Math.PI * 0.014 * 0.0005, Closure.Disc(0.014).Area(0.0005), 1e-15);

        // Until a quarter of the diameter; from there the bore.
        Assert.True(Closure.Disc(0.014).Area(0.00349) < Closure.Disc(0.014).LiftingArea);
        Assert.Equal(Math.PI * 0.007 * 0.007, Closure.Disc(0.014).Area(0.0036), 1e-15);
        Assert.Equal(0, Closure.Disc(0.014).AreaSlope(0.0036));

        // The frustum between the seat's edge and the foot of the perpendicular on the cone: half the sum of the circles times the slant.
        var (seat, lift, half) = (0.014, 0.002, Math.PI / 6);
        var slant = lift * Math.Sin(half);
        var inner = (seat / 2) - (slant * Math.Cos(half));
        Assert.Equal(Math.PI * ((seat / 2) + inner) * slant, Closure.Poppet(seat, half).Area(lift), 1e-15);

        // The frustum between the seat's edge and the nearest point of the ball.
        var (radius, edge) = (0.008, 0.007);
        var height = Math.Sqrt((radius * radius) - (edge * edge)) + lift;
        var distance = Math.Sqrt((edge * edge) + (height * height));
        Assert.Equal(Math.PI * (edge + (edge * radius / distance)) * (distance - radius), Closure.Ball(0.014, 0.016).Area(lift), 1e-15);

        Assert.Equal(0, Closure.Piston(0.01, 0.008, 0.001).Area(0.0009));
        Assert.Equal(0.008 * 0.0005, Closure.Piston(0.01, 0.008, 0.001).Area(0.0015), 1e-15);
        Assert.Equal(Math.PI * 0.005 * 0.005, Closure.Piston(0.01, 0.008).LiftingArea, 1e-15);
    }

    [Fact]
    [FromMemory("H. E. Merritt, Hydraulic Control Systems: steady flow force on a sharp-edged spool 0.43 w x Δp; cone 2 Cd a cos β")]
    public void FlowForce_ByOpening()
    {
        Outside.CheckRelative("closing force of a port of 8 mm open 0.5 mm, over the pressure drop, mm²", 0.43 * 4, Closure.Piston(0.01, 0.008).FlowForce(0.0005, 0.61) * 1e6, 1e-12);
        var cone = Closure.Poppet(0.014, Math.PI / 4);
        Outside.CheckRelative("closing force of a cone of 45° over discharge, opening and pressure drop", Math.Sqrt(2), cone.FlowForce(0.001, 0.65) / (0.65 * cone.Area(0.001)), 1e-12);
        Assert.Equal(0, Closure.Disc(0.014).FlowForce(0.001, 0.65));
        Assert.Equal(0, Closure.Ball(0.014, 0.016).FlowForce(0.001, 0.65));
        Assert.Equal(0, (Closure.Piston(0.01, 0.008) with { JetCosine = 0 }).FlowForce(0.001, 0.65));
    }

    [Fact]
    public void WhatCannotBe_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Closure.Disc(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Closure.Poppet(0.014, 1.6));
        Assert.Throws<ArgumentOutOfRangeException>(() => Closure.Ball(0.014, 0.014));
        Assert.Throws<ArgumentOutOfRangeException>(() => Closure.Piston(0.014, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Closure.Piston(0.014, 0.01, -1e-6));
    }
}
