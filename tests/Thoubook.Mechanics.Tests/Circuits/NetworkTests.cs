using Thoubook.Mechanics.Circuits;
using Thoubook.OutsideChecks;

namespace Thoubook.Mechanics.Tests.Circuits;

/// <summary>Networks solved independently.</summary>
public sealed class NetworkTests
{
    public static TheoryData<string> Ids => [.. Network.Small.Concat(Network.Large).Select(n => n.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    [Computed("Node pressures by MINPACK hybrid with inner pipe solves and by damped Newton in pressures and flows together; they agree to 3e-13")]
    public void NodePressures_AgreeWithIndependentSolutions(string id)
    {
        var network = Network.Small.Concat(Network.Large).First(n => n.Id == id);
        var solver = new CircuitSolver(Assert.IsType<CircuitOutcome.Compiled>(Circuit.Compile(network.Nodes, network.Elements)).Circuit);
        foreach (var (rpm, viscosity, pressures) in network.States)
        {
            Assert.True(solver.Solve(Network.Point(rpm, viscosity)).Converged);
            var greatest = pressures.Values.Max(Math.Abs);
            var (worst, expected) = pressures.MaxBy(p => Math.Abs(p.Value - solver.Pressure(solver.Circuit.Node(p.Key))));
            Outside.Check($"the node pressure of network {id} that differs most, at {rpm} rev/min and {viscosity} Pa s", expected, solver.Pressure(solver.Circuit.Node(worst)), 1e-9 * greatest);
        }
    }

    [Fact]
    public void Sensitivities_AgreeWithSolvingAnew()
    {
        var network = Network.Small.First(n => n.Id == "N6");
        var circuit = ((CircuitOutcome.Compiled)Circuit.Compile(network.Nodes, network.Elements)).Circuit;
        var solver = new CircuitSolver(circuit);
        var at = Network.Point(900, 0.012);
        solver.Solve(at);
        var node = circuit.Node("P");
        var slopes = new double[circuit.ParameterCount];
        solver.Sensitivities(node, slopes);
        var compared = 0;
        for (var i = 0; i < slopes.Length; i++)
        {
            var value = solver[new ParameterId(i)];
            if (double.IsNaN(value) || Math.Abs(value) < 1e-30)
                continue;
            var h = Math.Abs(value) * 1e-5;
            solver[new ParameterId(i)] = value + h;
            solver.Solve(at);
            var more = solver.Pressure(node);
            solver[new ParameterId(i)] = value - h;
            solver.Solve(at);
            var slope = (more - solver.Pressure(node)) / (2 * h);
            solver[new ParameterId(i)] = value;
            if (Math.Abs(slope * value) < 1)
                continue;
            Assert.Equal(1, slopes[i] / slope, 1e-4);
            compared++;
        }

        Assert.True(compared > 60, $"{compared} slopes compared.");
    }
}
