using Thoubook.Mechanics.Circuits;
using Thoubook.Mechanics.Flow;

namespace Thoubook.Mechanics.Tests.Circuits;

/// <summary>What must hold of every circuit, whatever its sizes.</summary>
public sealed class CircuitPropertyTests
{
    private static readonly OperatingPoint At = new(100, 0.02, 870);

    [Fact]
    public void RoughPipesFourAtATime_LoseWhatThePlainLawSays()
    {
        // Seven pipes, so that a whole four and a part of one are both used; from creeping to wholly rough.
        var random = new Random(7);
        var compared = 0;
        for (var round = 0; round < 200; round++)
        {
            var elements = new List<CircuitElement>();
            for (var i = 0; i < 7; i++)
            {
                var bore = Drawn(random, 1e-3, 5e-2);
                elements.Add(new Pipe($"pipe {i}", 0, 1, bore, Drawn(random, 0.01, 10), random.NextDouble() < 0.2 ? 0 : bore * Drawn(random, 1e-5, 0.05)) { Losses = 3 * random.NextDouble(), Number = random.Next(1, 4) });
            }

            elements.Add(new LaminarPassage("way out", 1, 2, 1e-9));
            var at = new OperatingPoint(0, Drawn(random, 1e-3, 10), 870);
            var solver = Ready([new("main", Drawn(random, 1, 1e7)), new("A"), new("sump", 0)], elements);
            Assert.True(solver.Solve(at).Converged);
            var drop = solver.Pressure(0) - solver.Pressure(1);
            for (var i = 0; i < 7; i++)
            {
                var pipe = (Pipe)elements[i];
                var velocity = solver.Flow(i) / (pipe.Number * Math.PI / 4 * pipe.Bore * pipe.Bore);
                var re = at.Density * velocity * pipe.Bore / at.Viscosity;
                var f = re < 1e-3 ? 64 / re : Friction.Churchill(re, pipe.Roughness / pipe.Bore);
                var lost = ((f * pipe.Length / pipe.Bore) + pipe.Losses) * at.Density * velocity * velocity / 2;
                Assert.True(Math.Abs(lost - drop) <= 1e-9 * solver.Pressure(0), $"round {round}, pipe {i}, Re {re:G4}: {lost:R} where {drop:R} drives it");
                compared++;
            }
        }

        Assert.Equal(1400, compared);
    }

    [Fact]
    public void AnEngineThatStands_IsSolved_AndOilThatNothingDrives_StandsStill()
    {
        var level = Ready(
            [new("tank", 0), new("A"), new("B"), new("sump", 0)],
            [new Pump("pump", 0, 1, 2e-5, 1e-14), new Pipe("pipe", 1, 2, 0.008, 1.2, 1e-5), new Orifice("jet", 2, 3, 0.002, 0.65), new ReliefValve("relief", 1, 3, 0.01, 30, 5000, 0.003, 0.65), new Consumer("governor", 2, 3, 1e-5, 1e4)]);
        Assert.True(level.Solve(At with { Speed = 0 }).Converged);
        Assert.All(Flows(level), flow => Assert.Equal(0, flow, 1e-15));
        Assert.All(Pressures(level), pressure => Assert.Equal(0, pressure, 1e-6));

        // A tank half a metre up drains through the pump and the jet: both carry the same.
        var drains = Ready([new("tank", 0, 0.5), new("A"), new("sump", 0)], [new Pump("pump", 0, 1, 2e-5, 1e-13), new Orifice("jet", 1, 2, 0.002, 0.65)]);
        Assert.True(drains.Solve(At with { Speed = 0 }).Converged);
        var head = 870 * 9.80665 * 0.5;
        Assert.InRange(drains.Pressure(1), 0, head);
        Assert.Equal(1, drains.Flow(0) / (1e-13 / 0.02 * (head - drains.Pressure(1))), 1e-9);
        Assert.Equal(1, drains.Flow(0) / drains.Flow(1), 1e-9);
    }

    [Fact]
    public void AnyNumberOfThreads_EachWithItsSolver_FindTheSame()
    {
        var network = Network.Small.First(n => n.Id == "N6");
        var circuit = ((CircuitOutcome.Compiled)Circuit.Compile(network.Nodes, network.Elements)).Circuit;
        var at = Network.Point(900, 0.012);
        var alone = new double[64];
        for (var block = 0; block < alone.Length; block++)
            alone[block] = Block(block);
        var together = new double[alone.Length];
        Parallel.For(0, together.Length, new ParallelOptions { MaxDegreeOfParallelism = 4 }, block => together[block] = Block(block));
        Assert.Equal(alone, together);
        Assert.True(alone.Distinct().Count() > 32);

        double Block(int block)
        {
            var random = new Random(block);
            var solver = new CircuitSolver(circuit);
            double sum = 0;
            for (var draw = 0; draw < 20; draw++)
            {
                for (var i = 0; i < circuit.ElementCount; i++)
                {
                    if (circuit.Elements[i] is LaminarPassage passage)
                        solver[circuit.Find(i, nameof(LaminarPassage.Conductance))] = passage.Conductance * (0.9 + (0.2 * random.NextDouble()));
                }

                Assert.True(solver.Solve(at).Converged);
                sum += solver.Pressure(circuit.Node("P"));
            }

            return sum;
        }
    }

    private static double Drawn(Random random, double low, double high) => low * Math.Pow(high / low, random.NextDouble());

    private static double[] Flows(CircuitSolver solver) => [.. Enumerable.Range(0, solver.Circuit.ElementCount).Select(solver.Flow)];

    private static double[] Pressures(CircuitSolver solver) => [.. Enumerable.Range(0, solver.Circuit.NodeCount).Select(solver.Pressure)];

    private static CircuitSolver Ready(IReadOnlyList<CircuitNode> nodes, IReadOnlyList<CircuitElement> elements) =>
        new(Assert.IsType<CircuitOutcome.Compiled>(Circuit.Compile(nodes, elements)).Circuit);
}
