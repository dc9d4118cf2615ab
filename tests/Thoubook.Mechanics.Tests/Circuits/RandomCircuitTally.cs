using Thoubook.Mechanics.Circuits;
using Thoubook.Mechanics.Valves;

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

        if (report.Converged && report.Iterations <= MostSteps && report.Residual <= 1e-12)
            return Balances(seed, solver, how) && Obeys(seed, solver, at, how);
        if (!report.Converged && !solver.Circuit.Elements.Any(e => report.Hint.Contains($"{e.Name} did not come to rest", StringComparison.Ordinal) || report.Hint.StartsWith(e.Name + ",", StringComparison.Ordinal)))
            Fail(seed, $"{how}: its message names nothing: {report.Hint}");
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
            if (solver.Circuit.Nodes[i].FixedPressure is null && !(Math.Abs(left[i]) <= 1e-11 * greatest))
            {
                Fail(seed, $"{how}: {left[i]:G3} m3/s are left at {solver.Circuit.Nodes[i].Name}, of {greatest:G3}");
                return false;
            }
        }

        return true;
    }

    /// <summary>What opens, starves or looks at another pressure passes what its law gives at the pressures found, or within their rounding; by the laws of single valves, not by the solver's.</summary>
    private bool Obeys(int seed, CircuitSolver solver, in OperatingPoint at, string how)
    {
        var circuit = solver.Circuit;
        double greatest = 0, rounding = 0;
        for (var i = 0; i < circuit.ElementCount; i++)
            greatest = Math.Max(greatest, Math.Abs(solver.Flow(i)));
        for (var i = 0; i < circuit.NodeCount; i++)
            rounding = Math.Max(rounding, 1e-12 * Math.Abs(solver.Pressure(i)));
        for (var i = 0; i < circuit.ElementCount; i++)
        {
            var (least, most) = (double.PositiveInfinity, double.NegativeInfinity);
            foreach (var (looks, drops) in (ReadOnlySpan<(double, double)>)[(0, 0), (1, 1), (1, -1), (-1, 1), (-1, -1)])
            {
                if (Passed(solver, circuit.Elements[i], at, looks * rounding, drops * rounding) is not { } flow)
                    break;
                (least, most) = (Math.Min(least, flow), Math.Max(most, flow));
            }

            var free = 1e-9 * greatest;
            if (least <= most && !(solver.Flow(i) >= least - free && solver.Flow(i) <= most + free))
            {
                Fail(seed, $"{how}: {circuit.Elements[i].Name}, {circuit.Elements[i].GetType().Name}, passes {solver.Flow(i):R} where its law gives {least:R} to {most:R}, of {greatest:G3}");
                return false;
            }
        }

        return true;
    }

    private static double? Passed(CircuitSolver solver, CircuitElement e, in OperatingPoint at, double looksMore, double dropsMore)
    {
        var nodes = solver.Circuit.Nodes;
        var (from, to) = (solver.Pressure(e.From), solver.Pressure(e.To));
        var drop = from - to + (at.Density * 9.80665 * (nodes[e.From].Height - nodes[e.To].Height)) + dropsMore;
        switch (e)
        {
            case Pump { InletLimit: { } limit, FillsAt: { } full } pump:
                return (pump.Displacement * at.Speed / (2 * Math.PI) * Math.Clamp((from + looksMore + at.Atmosphere - limit) / (full - limit), 0, 1)) + (pump.Leak / at.Viscosity * drop);
            case ReducingValve v:
                var behind = to - (v.Vent is { } air ? solver.Pressure(air) : 0) + looksMore;
                var opening = new Reducer(v.Seat, v.Setting, v.Spring, v.Piston, v.Lift, v.Discharge).Opening(behind);
                return Math.Sign(drop) * v.Discharge * Math.PI * v.Seat * Math.Min(opening, v.Seat / 4) * Math.Sqrt(2 * Math.Abs(drop) / at.Density);
            case Consumer consumer:
                return consumer.Flow * Math.Clamp(drop / consumer.FullAt, 0, 1);
            case ReliefValve v when (v.Vent is { } vent && vent != v.To) || v.Closure is ClosureKind.Disc or ClosureKind.Ball:
                var closure = v.Closure switch
                {
                    ClosureKind.Poppet => Closure.Poppet(v.Seat, v.HalfAngle),
                    ClosureKind.Ball => Closure.Ball(v.Seat, v.Ball),
                    ClosureKind.Piston => Closure.Piston(v.Seat, v.Port, v.Overlap),
                    _ => Closure.Disc(v.Seat),
                };
                var lifting = v.Vent is { } node && node != v.To ? from - solver.Pressure(node) + looksMore : drop;
                return new SpringValve(closure, v.Preload, v.Spring, v.Lift, v.Discharge) { SeatGap = v.SeatGap, SeatWidth = v.SeatWidth }.At(drop, lifting, at.Viscosity, at.Density).Flow;
            default:
                return null;
        }
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
