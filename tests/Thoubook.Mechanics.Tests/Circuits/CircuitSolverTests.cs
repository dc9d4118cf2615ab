using Thoubook.Mechanics.Circuits;
using Thoubook.Mechanics.Flow;
using Thoubook.Mechanics.Valves;
using Thoubook.OutsideChecks;

namespace Thoubook.Mechanics.Tests.Circuits;

/// <summary>What holds of any circuit, and what solving costs.</summary>
public sealed class CircuitSolverTests
{
    private static readonly OperatingPoint At = new(90, 0.012, 870) { ViscosityAtRise = rise => 0.012 * Math.Exp(-0.02 * rise) };

    [Fact]
    public void NothingIsAllocated_BySolvingAndItsSensitivities()
    {
        var network = Network.Large[0];
        var solver = SolverOf(network.Nodes, network.Elements);
        var slopes = new double[solver.Circuit.ParameterCount];
        var node = solver.Circuit.NodeCount - 1;
        for (var i = 0; i < 3; i++)
            Once();
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 20; i++)
            Once();
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);

        void Once()
        {
            solver.StartFrom(null);
            Assert.True(solver.Solve(Network.Point(600, 0.01)).Converged);
            Assert.True(solver.Solve(Network.Point(900, 0.012)).Converged);
            solver.Sensitivities(node, slopes);
        }
    }

    [Fact]
    public void DoublingTheViscosity_HalvesTheFlows_WhereAllIsLaminar()
    {
        var solver = SolverOf(
            [new("tank", 4e5), new("A"), new("B"), new("sump", 0)],
            [new LaminarPassage("one", 0, 1, 3e-14), new LaminarPassage("two", 1, 2, 1e-14), new LaminarPassage("three", 1, 3, 2e-14), new Pipe("slow", 2, 3, 0.002, 900, 0)]);
        solver.Solve(new(0, 0.02, 870));
        var thin = Enumerable.Range(0, 4).Select(solver.Flow).ToArray();
        solver.Solve(new(0, 0.04, 870));
        Assert.All(Enumerable.Range(0, 4), i => Assert.Equal(0.5, solver.Flow(i) / thin[i], 1e-12));
    }

    [Fact]
    public void SplittingAPipeInTwo_ChangesNothing()
    {
        CircuitNode[] nodes = [new("sump", 0), new("A"), new("B"), new("C")];
        CircuitElement[] rest = [new Pump("pump", 0, 1, 2e-5, 1e-15), new Orifice("jet", 2, 0, 0.003, 0.65), new LaminarPassage("bearing", 2, 0, 5e-13)];
        var whole = SolverOf(nodes[..3], [.. rest, new Pipe("pipe", 1, 2, 0.008, 1, 1e-5) { Losses = 1 }]);
        var split = SolverOf(nodes, [.. rest, new Pipe("first", 1, 3, 0.008, 0.3, 1e-5) { Losses = 0.7 }, new Pipe("second", 3, 2, 0.008, 0.7, 1e-5) { Losses = 0.3 }]);
        whole.Solve(At);
        split.Solve(At);
        Assert.Equal(1, split.Pressure(1) / whole.Pressure(1), 1e-12);
        Assert.Equal(1, split.Pressure(2) / whole.Pressure(2), 1e-12);
    }

    [Fact]
    public void TheOrderOfElements_ChangesNothing()
    {
        var network = Network.Small.First(n => n.Id == "N6");
        var asGiven = SolverOf(network.Nodes, network.Elements);
        var reversed = SolverOf(network.Nodes, [.. network.Elements.Reverse()]);
        asGiven.Solve(Network.Point(900, 0.012));
        reversed.Solve(Network.Point(900, 0.012));
        var greatest = Enumerable.Range(0, network.Nodes.Count).Max(asGiven.Pressure);
        Assert.All(Enumerable.Range(0, network.Nodes.Count), i => Assert.Equal(asGiven.Pressure(i) / greatest, reversed.Pressure(i) / greatest, 1e-11));
    }

    [Fact]
    public void MoreClearance_NeverRaisesThePressureThatFeedsIt()
    {
        var network = Network.Small.First(n => n.Id == "N6");
        var solver = SolverOf(network.Nodes, network.Elements);
        var at = Network.Point(600, 0.01);
        var widened = 0;
        for (var i = 0; i < network.Elements.Count; i++)
        {
            if (network.Elements[i] is not LaminarPassage)
                continue;
            solver.Solve(at);
            var (from, before) = (network.Elements[i].From, solver.Pressure(network.Elements[i].From));
            var conductance = solver.Circuit.Find(i, nameof(LaminarPassage.Conductance));
            var value = solver[conductance];
            solver[conductance] = value * Math.Pow(1.2, 3);
            solver.Solve(at);
            Assert.True(solver.Pressure(from) < before + 1e-6, $"{network.Elements[i].Name}: {before} before, {solver.Pressure(from)} with more clearance.");
            solver[conductance] = value;
            widened++;
        }

        Assert.True(widened > 15, $"{widened} widened.");
    }

    [Fact]
    [Published("Churchill, Chemical Engineering 84 (1977) 91: the friction factor")]
    public void EveryPipe_LosesWhatTheFrictionFactorSays_HoweverManyAreReckonedTogether()
    {
        // From creeping to wholly rough, an odd number of them, each alone between two reservoirs.
        CircuitElement[] pipes = [.. Enumerable.Range(0, 39).Select(i => new Pipe($"pipe {i}", 0, 1, 0.002 * (1 + (i % 5)), 0.2 * Math.Pow(10, (i % 7) - 4) * Math.Pow(2, i % 3), i % 4 * 1e-5) { Losses = i % 3 })];
        foreach (var viscosity in new[] { 1e-3, 0.05, 20 })
        {
            var solver = SolverOf([new("main", 4e5), new("sump", 0)], pipes);
            Assert.True(solver.Solve(new(0, viscosity, 870)).Converged);
            for (var i = 0; i < pipes.Length; i++)
            {
                var pipe = (Pipe)pipes[i];
                var v = solver.Flow(i) / (Math.PI / 4 * pipe.Bore * pipe.Bore);
                var f = Friction.Churchill(870 * v * pipe.Bore / viscosity, pipe.Roughness / pipe.Bore);
                Outside.Check($"pressure lost in pipe {i} at {viscosity} Pa s", 4e5, ((f * pipe.Length / pipe.Bore) + pipe.Losses) * 870 * v * v / 2, 4e5 * 1e-9);
            }
        }
    }

    /// <summary>A pump, a valve and a reducing valve that look at a third reservoir, and a drain to a fourth.</summary>
    private static CircuitSolver Vented() => SolverOf(
        [new("sump", 0), new("main"), new("low"), new("air", 2e4), new("drain", 1e4)],
        [
            new Pump("pump", 0, 1, 4e-5, 2e-15), new ReliefValve("vented", 1, 0, 0.012, 30, 6000, 0.004, 0.65) { Vent = 3 }, new ReducingValve("reducing", 1, 2, 0.006, 1.2e5, 4000, 0.012, 0.002, 0.65) { Vent = 3 },
            new LaminarPassage("cam", 2, 0, 8e-12), new LaminarPassage("bearing", 1, 4, 4e-13),
        ]);

    [Fact]
    public void Sensitivities_ToThePressureOfEveryReservoir_AgreeWithSolvingAnew()
    {
        var solver = Vented();
        Assert.True(solver.Solve(At).Converged);
        Assert.True(solver.Lift(1) > 0 && solver.Lift(2) > 0);
        var slopes = new double[solver.Circuit.ParameterCount];
        solver.Sensitivities(1, slopes);
        foreach (var reservoir in new[] { 0, 3, 4 })
        {
            var pressure = solver.Circuit.FindPressure(reservoir);
            var value = solver.Circuit.Nodes[reservoir].FixedPressure!.Value;
            var slope = (With(value + 10) - With(value - 10)) / 20;
            Assert.True(Math.Abs(slope) > 1e-3, $"Nothing hangs on {solver.Circuit.Nodes[reservoir].Name}.");
            Assert.Equal(slope, slopes[pressure.Index], 1e-4);
            solver[pressure] = value;

            double With(double other)
            {
                solver[pressure] = other;
                Assert.True(solver.Solve(At).Converged);
                return solver.Pressure(1);
            }
        }
    }

    [Fact]
    public void AStart_HoldsAllThatASolutionNeeds()
    {
        var solver = Vented();
        Assert.True(solver.Solve(At).Converged);
        var (start, pressure) = (solver.Start(), solver.Pressure(1));
        Assert.True(solver.Solve(At with { Speed = 40, Viscosity = 0.03 }).Converged);
        solver.StartFrom(start);
        Assert.Equal(0, solver.Solve(At).Iterations);
        Assert.Equal(pressure, solver.Pressure(1));
    }

    [Fact]
    public void Sensitivities_OfEveryKind_AgreeWithSolvingAnew()
    {
        var solver = SolverOf(
            [new("sump", 0), new("in", null, 0.1), new("main", null, 0.3), new("far", null, 0.2), new("low"), new("pin")],
            [
                new QuadraticPassage("strainer", 0, 1, 2e9, 3e9), new Pump("pump", 1, 2, 4e-5, 2e-15) { TipDrag = 1e-6, SpeedRatio = 1.2 }, new Pump("starving", 1, 2, 1e-6, 1e-16) { InletLimit = 3e4, FillsAt = 1.4e5 },
                new ReliefValve("disc", 2, 0, 0.012, 30, 6000, 0.004, 0.65) { SeatGap = 1e-5 }, new ReliefValve("poppet", 2, 0, 0.006, 8, 8000, 0.004, 0.65) { Closure = ClosureKind.Poppet },
                new ReliefValve("ball", 2, 0, 0.006, 7.5, 8000, 0.004, 0.65) { Closure = ClosureKind.Ball, Ball = 0.009 }, new ReliefValve("piston", 2, 0, 0.008, 8, 9000, 0.006, 0.65) { Closure = ClosureKind.Piston, Port = 0.003, Overlap = 1e-4 },
                new ReliefValve("vented", 2, 4, 0.006, 5, 8000, 0.004, 0.65) { Vent = 0 }, new ReducingValve("reducing", 2, 4, 0.006, 1.2e5, 4000, 0.012, 0.002, 0.65),
                new Pipe("gallery", 2, 3, 0.008, 0.6, 1e-5) { Losses = 1.5 }, new Pipe("crank", 3, 5, 0.005, 0.1, 1e-6) { FromRadius = 0.02, ToRadius = 0.05 },
                new LaminarPassage("big end", 5, 0, 2e-13) { FilmRise = 10 }, new LaminarPassage("cam", 4, 0, 8e-13), new Orifice("jet", 3, 0, 0.0015, 0.7), new Consumer("governor", 3, 0, 2e-5, 4e6),
            ]);
        Assert.True(solver.Solve(At).Converged);
        var (node, compared) = (solver.Circuit.Node("far"), new HashSet<string>());
        var slopes = new double[solver.Circuit.ParameterCount];
        var byThickness = solver.Sensitivities(node, slopes);
        for (var e = 0; e < solver.Circuit.ElementCount; e++)
        {
            for (var i = solver.Circuit.FirstParameter(e); i < solver.Circuit.FirstParameter(e + 1); i++)
            {
                var value = solver[new ParameterId(i)];
                if (double.IsNaN(value) || value == 0)
                    continue;
                var h = value * 1e-5;
                var slope = (With(i, value + h, At) - With(i, value - h, At)) / (2 * h);
                With(i, value, At);
                if (Math.Abs(slope * value) < 1 && Math.Abs(slopes[i] * value) < 1)
                    continue;
                Assert.True(Math.Abs((slopes[i] / slope) - 1) < 1e-4, $"{solver.Circuit.Elements[e].Name}, number {i - solver.Circuit.FirstParameter(e)}: {slopes[i]} by the adjoint, {slope} by solving anew.");
                compared.Add(solver.Circuit.Elements[e].Name);
            }
        }

        const double Thicker = 1e-5;
        var change = (Thickened(1 + Thicker) - Thickened(1 - Thicker)) / (2 * Thicker);
        Assert.Equal(1, byThickness / change, 1e-4);
        Assert.True(compared.Count >= 12, $"Only {string.Join(", ", compared)} moved the pressure.");

        double With(int parameter, double value, in OperatingPoint at)
        {
            solver[new ParameterId(parameter)] = value;
            Assert.True(solver.Solve(at).Converged);
            return solver.Pressure(node);
        }

        double Thickened(double times)
        {
            Assert.True(solver.Solve(At with { Viscosity = 0.012 * times, ViscosityAtRise = rise => 0.012 * times * Math.Exp(-0.02 * rise) }).Converged);
            return solver.Pressure(node);
        }
    }

    private static CircuitSolver SolverOf(IReadOnlyList<CircuitNode> nodes, IReadOnlyList<CircuitElement> elements) => new(Assert.IsType<CircuitOutcome.Compiled>(Circuit.Compile(nodes, elements)).Circuit);
}
