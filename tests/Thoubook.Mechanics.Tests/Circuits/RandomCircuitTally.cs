using Thoubook.Mechanics.Circuits;

namespace Thoubook.Mechanics.Tests.Circuits;

/// <summary>What became of many random circuits.</summary>
internal sealed class RandomCircuitTally
{
    private const int MostSteps = 40;

    private bool _isPlain;

    /// <summary>What failed of those of sizes such as an engine has in which every element obeys its own pressure difference.</summary>
    public List<string> PlainFailed { get; } = [];

    /// <summary>What failed of the others.</summary>
    public List<string> OtherFailed { get; } = [];

    public int Plain { get; private set; }

    public int Soluble { get; private set; }

    public int Compared { get; private set; }

    public int Moved { get; private set; }

    public int Insoluble { get; private set; }

    public long Steps { get; private set; }

    public int GreatestSteps { get; private set; }


    /// <summary>Makes the circuit of a seed and solves it: cold, and again with other speed and viscosity; one in eight is spoilt instead.</summary>
    public void Try(int seed)
    {
        var random = new RandomCircuit(seed);
        _isPlain = random.IsPlain && random.IsOrdinary;
        if (seed % 8 == 7)
        {
            Insoluble++;
            var (kind, name) = random.Spoil();
            if (Circuit.Compile(random.Nodes, random.Elements) is not CircuitOutcome.Insoluble(var faults))
                Fail(seed, $"{kind} at {name} was not seen");
            else if (!faults.Any(f => f.Kind == kind && (name.Length == 0 || f.Elements.Contains(name) || f.Nodes.Contains(name)) && f.Words.Contains(name, StringComparison.Ordinal)))
                Fail(seed, $"{kind} at {name} was called {string.Join("; ", faults.Select(f => f.Words))}");
            return;
        }

        if (Circuit.Compile(random.Nodes, random.Elements) is not CircuitOutcome.Compiled(var circuit))
        {
            Fail(seed, $"refused: {((CircuitOutcome.Insoluble)Circuit.Compile(random.Nodes, random.Elements)).Faults[0].Words}");
            return;
        }

        Soluble++;
        Plain += _isPlain ? 1 : 0;
        var solver = new CircuitSolver(circuit);
        if (!Solves(seed, solver, random.At, "cold"))
            return;
        if (random.IsOnlySolution && random.IsOrdinary)
            Compare(seed, random, solver);
        Moved++;
        Solves(seed, solver, random.At with { Speed = random.At.Speed * 1.3, Viscosity = random.At.Viscosity * 0.6, ViscosityAtRise = null }, "moved");
    }

    private bool Solves(int seed, CircuitSolver solver, in OperatingPoint at, string how)
    {
        var report = solver.Solve(at);
        Steps += report.Iterations;
        GreatestSteps = Math.Max(GreatestSteps, report.Iterations);
        for (var i = 0; i < solver.Circuit.NodeCount; i++)
        {
            if (!double.IsFinite(solver.Pressure(i)))
            {
                Fail(seed, $"{how}: the pressure at {solver.Circuit.Nodes[i].Name} is no number");
                return false;
            }
        }

        if (report.Converged && report.Iterations <= MostSteps && report.Residual <= 1e-10)
            return Balances(seed, solver, how);
        Fail(seed, $"{how}: {report.Status} after {report.Iterations} steps, {report.Residual:G2} left; {solver.Circuit.NodeCount} nodes, {report.Hint}");
        return false;
    }

    /// <summary>The flows themselves, added up anew.</summary>
    private bool Balances(int seed, CircuitSolver solver, string how)
    {
        var left = new double[solver.Circuit.NodeCount];
        double greatest = 1e-18;
        for (var i = 0; i < solver.Circuit.ElementCount; i++)
        {
            var (e, flow) = (solver.Circuit.Elements[i], solver.Flow(i));
            left[e.From] += flow;
            left[e.To] -= flow;
            greatest = Math.Max(greatest, Math.Abs(flow));
        }

        for (var i = 0; i < left.Length; i++)
        {
            if (solver.Circuit.Nodes[i].FixedPressure is null && !(Math.Abs(left[i]) <= 1e-10 * greatest))
            {
                Fail(seed, $"{how}: {left[i]:G3} m3/s are left at {solver.Circuit.Nodes[i].Name}, of {greatest:G3}");
                return false;
            }
        }

        return true;
    }

    private void Compare(int seed, RandomCircuit random, CircuitSolver solver)
    {
        Compared++;
        var greatest = random.Pressures.Max(Math.Abs);
        var worst = Enumerable.Range(0, random.Nodes.Count).MaxBy(i => Math.Abs(random.Pressures[i] - solver.Pressure(i)));
        if (Math.Abs(random.Pressures[worst] - solver.Pressure(worst)) > 1e-6 * greatest)
            Fail(seed, $"the pressure at {random.Nodes[worst].Name} is {solver.Pressure(worst):R} where {random.Pressures[worst]:R} was drawn, of {greatest:G3}");
    }

    private void Fail(int seed, string what) => (_isPlain ? PlainFailed : OtherFailed).Add($"{seed}: {what}");
}
