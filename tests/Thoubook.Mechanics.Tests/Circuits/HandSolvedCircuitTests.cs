using Thoubook.Mechanics.Circuits;
using Thoubook.OutsideChecks;

namespace Thoubook.Mechanics.Tests.Circuits;

/// <summary>Circuits small enough to be solved by hand.</summary>
public sealed class HandSolvedCircuitTests
{
    private const double Viscosity = 0.01;
    private const double Density = 870;
    private static readonly OperatingPoint At = new(100, Viscosity, Density);

    [Fact]
    [CommonPractice("volume a turn times turns; Q = Cd A √(2 dp/ρ)")]
    public void APumpThroughAJet()
    {
        var solver = Solved([new("sump", 0), new("A")], new Pump("pump", 0, 1, 2e-6, 0), new Orifice("jet", 1, 0, 0.002, 0.7));
        var flow = 2e-6 * 100 / (2 * Math.PI);
        var v = flow / (0.7 * Math.PI / 4 * 0.002 * 0.002);
        Outside.Check("pressure of a pump before a jet", Density * v * v / 2, solver.Pressure(1), 1e-4);
        Outside.Check("flow of a pump through a jet", flow, solver.Flow(1), flow * 1e-12);
    }

    [Fact]
    [CommonPractice("flows in a laminar net divide as currents do")]
    public void CreepingPassagesDivideAsResistancesDo()
    {
        // 6 bar over 2 and, beyond it, 3 and 6 side by side: half of it falls at the first.
        var solver = Solved([new("tank", 6e5), new("A"), new("sump", 0)], new LaminarPassage("first", 0, 1, 1e-14 / 2), new LaminarPassage("one", 1, 2, 1e-14 / 3), new LaminarPassage("other", 1, 2, 1e-14 / 6));
        Outside.Check("pressure between creeping passages", 3e5, solver.Pressure(1), 1e-7);
        Outside.Check("flow through creeping passages", 3e5 * 1e-14 / 2 / Viscosity, solver.Flow(0), 1e-20);
    }

    [Fact]
    [CommonPractice("the head of a column of oil is ρ g h")]
    public void HeightsAddTheirHead()
    {
        var solver = Solved([new("tank", 0, 2), new("A", null, 0.5), new("sump", 0, 0.5)], new Pipe("down", 0, 1, 0.02, 1, 0), new LaminarPassage("tight", 1, 2, 1e-19));
        Outside.Check("pressure below a tank", Density * 9.80665 * 1.5, solver.Pressure(1), 1);
    }

    [Fact]
    [CommonPractice("a turning column gains ρ ω² (r₂² − r₁²)/2")]
    public void ATurningDrillingGainsPressure()
    {
        var solver = Solved([new("main", 1e5), new("pin"), new("sump", 0)], new Pipe("crank", 0, 1, 0.006, 0.08, 0) { FromRadius = 0.02, ToRadius = 0.06, SpeedRatio = 2 }, new LaminarPassage("tight", 1, 2, 1e-19));
        Outside.Check("pressure at the pin of a turning crank", 1e5 + (Density * 200 * 200 * ((0.06 * 0.06) - (0.02 * 0.02)) / 2), solver.Pressure(1), 1e-3);
    }

    [Fact]
    [CommonPractice("a disc lifts by what its pressure is over the preload, over the rate of the spring")]
    public void AReliefValveHoldsWhatItsSpringAndOpeningHold()
    {
        var relief = new ReliefValve("relief", 1, 0, 0.01, 30, 5000, 0.003, 0.65);
        var solver = Solved([new("sump", 0), new("A")], new Pump("pump", 0, 1, 5e-6, 0), relief);
        var p = solver.Pressure(1);
        var lift = ((p * Math.PI / 4 * 0.01 * 0.01) - 30) / 5000;
        Outside.Check("lift of a disc", lift, solver.Lift(1), 1e-12);
        Outside.Check("flow past a disc", 0.65 * Math.PI * 0.01 * lift * Math.Sqrt(2 * p / Density), 5e-6 * 100 / (2 * Math.PI), 1e-15);
    }

    [Fact]
    [CommonPractice("a reducing valve closes as the pressure behind it nears its setting")]
    public void AReducingValveHoldsThePressureBehindIt()
    {
        var valve = new ReducingValve("reducing", 0, 1, 0.006, 2e5, 4000, 0.012, 0.002, 0.65);
        var solver = Solved([new("main", 5e5), new("low"), new("sump", 0)], valve, new LaminarPassage("bearing", 1, 2, 1e-13));
        var low = solver.Pressure(1);
        var opening = (2e5 - low) * Math.PI / 4 * 0.012 * 0.012 / 4000;
        Outside.Check("opening of a reducing valve", opening, solver.Lift(0), 1e-12);
        Outside.Check("flow through a reducing valve", 0.65 * Math.PI * 0.006 * opening * Math.Sqrt(2 * (5e5 - low) / Density), low * 1e-13 / Viscosity, 1e-14);
        Assert.InRange(low, 1.8e5, 2e5);
    }

    [Fact]
    [CommonPractice("a pump that starves passes what its suction passes")]
    public void APumpThatStarvesTakesWhatComes()
    {
        var solver = Solved([new("tank", 0), new("inlet"), new("out", 3e5)], new LaminarPassage("suction", 0, 1, 2e-12), new Pump("pump", 1, 2, 2e-6, 0) { InletLimit = 3e4, FillsAt = 9e4 });
        // x share filled: Q x = G (−p)/μ and x = (p + atmosphere − 3e4)/6e4.
        var (q, g) = (2e-6 * 100 / (2 * Math.PI), 2e-12 / Viscosity);
        var p = -(q / 6e4) * (101325 - 3e4) / (g + (q / 6e4));
        Outside.Check("inlet pressure of a pump that starves", p, solver.Pressure(1), 1e-6);
        Outside.Check("share that it fills", (p + 101325 - 3e4) / 6e4, solver.Filling(1), 1e-10);
        Assert.Equal(new(CircuitCautionKind.PumpStarved, "pump", solver.Pressure(1) + 101325, solver.Filling(1)), Assert.Single(solver.Cautions()));
    }

    [Fact]
    [CommonPractice("a consumer takes its flow from its full pressure on, below it in proportion")]
    public void AConsumerTakesItsShare()
    {
        var solver = Solved([new("main", 5e5), new("A"), new("sump", 0)], new LaminarPassage("feed", 0, 1, 1e-13), new Consumer("governor", 1, 2, 2e-5, 1e5));
        // G (5e5 − p)/μ = 2e-5 p/1e5
        var g = 1e-13 / Viscosity;
        var p = g * 5e5 / (g + 2e-10);
        Outside.Check("pressure at a consumer that runs short", p, solver.Pressure(1), 1e-6);
        Assert.Equal(new(CircuitCautionKind.ConsumerShort, "governor", solver.Pressure(1) + 101325, solver.Flow(1) / 2e-5), Assert.Single(solver.Cautions()));
    }

    [Fact]
    public void OtherCautionsAreGivenWhereTheyBelong()
    {
        var suction = Solved([new("tank", 0), new("inlet"), new("out", 3e5)], new LaminarPassage("suction", 0, 1, 1e-13), new Pump("pump", 1, 2, 2e-6, 0));
        Assert.Equal((CircuitCautionKind.SuctionBelowVacuum, "pump"), Assert.Single(suction.Cautions().Select(c => (c.Kind, c.Element))));
        var broken = Solved([new("main", -9e4), new("pin"), new("sump", 0)], new Pipe("crank", 0, 1, 0.006, 0.08, 0) { FromRadius = 0.08, ToRadius = 0.12 }, new LaminarPassage("bearing", 1, 2, 1e-13));
        Assert.Equal((CircuitCautionKind.ColumnBroken, "crank"), Assert.Single(broken.Cautions().Select(c => (c.Kind, c.Element))));
    }

    private static CircuitSolver Solved(CircuitNode[] nodes, params CircuitElement[] elements)
    {
        var solver = new CircuitSolver(Assert.IsType<CircuitOutcome.Compiled>(Circuit.Compile(nodes, elements)).Circuit);
        Assert.True(solver.Solve(At).Converged);
        return solver;
    }
}
