using CsCheck;
using Thoubook.Mechanics.Valves;

namespace Thoubook.Mechanics.Tests.Valves;

public sealed class SpringValveTests
{
    private const double Oil = 870;
    private const double Thin = 0.012;

    private static SpringValve Valve(Closure closure) => new(closure, 48.4, 2200, 0.01, 0.65);

    [Fact]
    [Computed("one geometry, several closures, root finding on flow with pressure from the force balance")]
    public void FourClosures_AtFiveFlows()
    {
        foreach (var row in ReferenceTable.Read("relief-valve.csv"))
        {
            var closure = row["closure"] switch
            {
                "disc" => Closure.Disc(0.014),
                "ball" => Closure.Ball(0.014, 0.016),
                "poppet with flow force" => Closure.Poppet(0.014, Math.PI / 4),
                _ => Closure.Poppet(0.014, Math.PI / 4) with { JetCosine = 0 },
            };
            var flow = row.Number("flow_l_min");
            var drop = Valve(closure).DropFor(flow / 60_000, Thin, Oil);
            var state = Valve(closure).At(drop, drop, Thin, Oil);
            // Half a unit of the last of five decimals.
            row.Check($"lift of a {row["closure"]} at {flow} L/min, mm", row.Number("lift_mm"), state.Lift * 1e3, 0.6e-5);
            row.Check($"pressure before a {row["closure"]} at {flow} L/min, MPa", row.Number("pressure_mpa"), drop / 1e6, 0.6e-5);
            Assert.Equal(flow / 60_000, state.Flow, 1e-14);
        }

        Outside.Check("cracking pressure, MPa", 0.31441, Valve(Closure.Disc(0.014)).Cracking / 1e6, 0.5e-5);
    }

    [Fact]
    [Published("A. Esposito, Fluid Power with Applications, chapter 8, first example")]
    public void CrackingAndFullFlow()
    {
        // 0.75 in² and 2500 lbf/in compressed 0.20 in; full flow at 0.10 in more. Printed to the pound.
        const double inch = 25.4e-3, pound = 4.4482216152605, psi = 6894.757293168;
        var rate = 2500 * pound / inch;
        var valve = new SpringValve(Closure.Disc(Math.Sqrt(4 * 0.75 / Math.PI) * inch), 0.2 * inch * rate, rate, inch, 0.65);
        Outside.Check("cracking pressure, psi", 667, valve.Cracking / psi, 0.5);
        Outside.Check("lift at 1000 psi, in", 0.10, valve.At(1000 * psi, 1000 * psi, Thin, Oil).Lift / inch, 1e-9);
    }

    [Fact]
    [Published("A. Esposito, Fluid Power with Applications, example 8.4")]
    public void FlowOfAnOpenBore()
    {
        // The bore of an inch wide open, discharge 0.80, 100 psi, 0.9 times as heavy as water. The printed factor 38.1 is 37.97 with exact units: 0.35 %.
        const double inch = 25.4e-3, psi = 6894.757293168, gallon = 3.785411784e-3;
        var valve = new SpringValve(Closure.Disc(inch), 0, 1, inch, 0.8);
        Outside.CheckRelative("flow through a bore of 1 in at 100 psi, US gal/min", 252, valve.At(100 * psi, 100 * psi, Thin, 900).Flow / gallon * 60, 4e-3);
    }

    [Fact]
    [CommonPractice("back pressure in the spring chamber adds to the setting")]
    public void BackPressure_AddsToTheSetting()
    {
        var valve = Valve(Closure.Disc(0.014));
        const double back = 0.5e5;
        var opens = Enumerable.Range(0, 4_000).Select(k => k * 100.0).First(pressure => valve.At(pressure - back, pressure - back, Thin, Oil).Lift > 0);
        Outside.Check("inlet pressure at which the valve lifts against 0.5 bar in its outlet, above that against none, bar", 0.5, (opens - valve.Cracking) / 1e5, 1.1e-3);
    }

    [Fact]
    [CommonPractice("a leaking seat costs pressure while the valve is shut, hardly any once it lifts")]
    public void LeakingSeat_CountsWhileShut()
    {
        var tight = Valve(Closure.Disc(0.014));
        var worn = tight with { SeatGap = 0.1e-3 };
        Assert.Equal(Math.PI * 0.014 * 1e-12 / (12 * 1e-3), worn.SeatLeak, 1e-20);
        Assert.Equal(worn.SeatLeak * 2e5 / Thin, worn.At(2e5, 2e5, Thin, Oil).Flow, 1e-12);
        Assert.Equal(-worn.SeatLeak * 2e5 / Thin, worn.At(-2e5, -2e5, Thin, Oil).Flow, 1e-12);
        Assert.Equal(0, tight.At(2e5, 2e5, Thin, Oil).Flow);

        // Bearings that take the oil in proportion to pressure, and a pump that gives a fixed flow: shut at idle, lifted at speed.
        double Pressure(SpringValve valve, double flow) => Mechanics.Numerics.Roots.Find(p => valve.At(p, p, Thin, Oil).Flow + (p * 5e-10) - flow, 0, 2e6).Root;
        var idle = 1 - (Pressure(worn, 1.2e-4) / Pressure(tight, 1.2e-4));
        var running = 1 - (Pressure(worn, 5e-4) / Pressure(tight, 5e-4));
        Outside.CheckWord("where a leaking seat costs more", "idle", idle > 10 * running ? "idle" : "running");
        Assert.InRange(running, 0, 0.01);
        Assert.InRange(idle, 0.15, 0.9);
    }

    [Fact]
    public void Lift_BalancesTheForces_BetweenSeatAndStop()
    {
        Gen.Select(ClosureTests.Any, Gen.Double[0, 200], Gen.Double[200, 50_000], Gen.Double[0, 3e6], Gen.Double[-1e6, 3e6]).Sample((closure, preload, rate, lifting, drop) =>
        {
            var valve = new SpringValve(closure, preload, rate, 0.6 * closure.Seat, 0.65);
            var lift = valve.At(drop, lifting, Thin, Oil).Lift;
            double Left(double x) => (lifting * closure.LiftingArea) - preload - (rate * x) - (closure.FlowForce(x, 0.65) * Math.Abs(drop));
            var scale = 1e-9 * ((lifting * closure.LiftingArea) + preload + 1);
            if (lift == 0)
                Assert.True(Left(0) <= scale);
            else if (lift == valve.Lift)
                Assert.True(Left(lift) >= -scale);
            else
                Assert.Equal(0, Left(lift), scale);
        });
    }

    [Fact]
    public void WideOpen_TheFlowClosesNoFurther()
    {
        // Past the lift at which the bore is the narrowest, the spring alone meets what more pressure brings.
        foreach (var closure in (Closure[])[Closure.Poppet(0.014, Math.PI / 4), Closure.Disc(0.014) with { JetCosine = 0.4 }, Closure.Ball(0.014, 0.016) with { JetCosine = 0.4 }])
        {
            var valve = Valve(closure) with { Spring = 400, Lift = 1 };
            const double drop = 6e6;
            var lift = valve.At(drop, drop, Thin, Oil).Lift;
            Assert.Equal(closure.WidestArea, closure.Area(lift));
            Assert.Equal(((drop * closure.LiftingArea) - valve.Preload - (2 * 0.65 * closure.JetCosine * closure.LiftingArea * drop)) / 400, lift, 1e-9);
        }
    }

    [Fact]
    public void AnyClosure_MayBeGivenAForceOfTheFlow()
    {
        Gen.Select(ClosureTests.Any, Gen.Double[0.05, 0.6], Gen.Double[1e4, 1e6]).Sample((closure, cosine, drop) =>
        {
            var pushed = closure with { JetCosine = cosine };
            var valve = new SpringValve(pushed, 0.3 * drop * closure.LiftingArea, drop * closure.LiftingArea / (0.2 * closure.Seat), closure.Seat, 0.65);
            var lift = valve.At(drop, drop, Thin, Oil).Lift;
            Assert.Equal(0, (0.7 * drop * closure.LiftingArea) - (valve.Spring * lift) - (pushed.FlowForce(lift, 0.65) * drop), 1e-9 * drop * closure.LiftingArea);
        });
    }

    [Fact]
    public void Slopes_AreTheDerivatives()
    {
        var checkedCases = 0;
        Gen.Select(ClosureTests.Any, Gen.Double[1e4, 2e6], Gen.Double[1e4, 2e6], Gen.Double[0, 1e-4]).Sample((closure, drop, lifting, gap) =>
        {
            var valve = new SpringValve(closure, 2e5 * closure.LiftingArea, 2e5 * closure.LiftingArea / (0.3 * closure.Seat), 0.4 * closure.Seat, 0.65) { SeatGap = gap };
            var (state, step) = (valve.At(drop, lifting, Thin, Oil), 1.0);
            var (less, more) = (valve.At(drop - step, lifting, Thin, Oil), valve.At(drop + step, lifting, Thin, Oil));
            var (low, high) = (valve.At(drop, lifting - step, Thin, Oil), valve.At(drop, lifting + step, Thin, Oil));
            ValveState[] near = [less, more, low, high];
            if (near.Select(s => (s.Lift == 0, s.Lift == valve.Lift, closure.AreaSlope(s.Lift) == 0)).Distinct().Count() > 1)
                return; // across a kink
            Interlocked.Increment(ref checkedCases);
            var scale = (state.Flow / Math.Min(drop, lifting) * 1e-4) + 1e-16;
            Assert.Equal(state.ByDrop, (more.Flow - less.Flow) / (2 * step), scale);
            Assert.Equal(state.ByLifting, (high.Flow - low.Flow) / (2 * step), scale);
        });
        Assert.True(checkedCases > 50);
    }

    [Fact]
    public void OpenAgainstTheFlow_PassesItBack()
    {
        var valve = Valve(Closure.Disc(0.014));
        var forward = valve.At(1e5, 4e5, Thin, Oil);
        var back = valve.At(-1e5, 4e5, Thin, Oil);
        Assert.Equal(-forward.Flow, back.Flow, 1e-12);
        Assert.Equal(forward.ByDrop, back.ByDrop, 1e-15);
        Assert.Equal(-forward.ByLifting, back.ByLifting, 1e-15);
        Assert.Equal(0, valve.At(0, 4e5, Thin, Oil).Flow);
        Assert.Equal(double.PositiveInfinity, valve.At(0, 4e5, Thin, Oil).ByDrop);
        Assert.Equal(0, valve.At(0, 0, Thin, Oil).ByDrop);
    }

    [Fact]
    public void Override_IsLeastForTheDisc_AndMostForTheCone()
    {
        double Drop(Closure closure) => Valve(closure).DropFor(20 / 60_000.0, Thin, Oil);
        var (disc, ball, cone) = (Drop(Closure.Disc(0.014)), Drop(Closure.Ball(0.014, 0.016)), Drop(Closure.Poppet(0.014, Math.PI / 4)));
        Assert.True(disc < ball && ball < cone);
        Assert.True(Valve(Closure.Disc(0.014)).DropFor(1, Thin, Oil) > 1e6);
        Assert.Throws<ArgumentOutOfRangeException>(() => Valve(Closure.Disc(0.014)).DropFor(0, Thin, Oil));
    }
}
