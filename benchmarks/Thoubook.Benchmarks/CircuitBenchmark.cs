using System.Diagnostics;
using System.Globalization;
using Thoubook.Mechanics.Circuits;
using Thoubook.Mechanics.Tests.Circuits;

namespace Thoubook.Benchmarks;

/// <summary>Circuits of 80 elements and of 150 nodes, cold and continued; a map, and draws; beside a peer where one is given, in the same run.</summary>
internal static class CircuitBenchmark
{
    private const int Batches = 101;

    /// <summary>circuits [--peer PROGRAM]: the program prints a tab-separated line for each network and method.</summary>
    public static int Run(string[] args)
    {
        // All once, so that none is timed before it is compiled for good.
        foreach (var network in Network.Large)
            Solving(network, true, isSaid: false);
        var own = new Dictionary<string, double>();
        foreach (var network in Network.Large)
        {
            foreach (var isCold in new[] { true, false })
                own[$"{network.Id} {(isCold ? "cold" : "continued")}"] = Solving(network, isCold);
        }

        Map(Network.Large[0]);
        Draws(Network.Large[0]);
        if (args is ["--peer", var program])
            Beside(program, own);
        return 0;
    }

    private static Circuit CircuitOf(Network network) => ((CircuitOutcome.Compiled)Circuit.Compile(network.Nodes, network.Elements)).Circuit;

    /// <summary>[s] The median of one solution.</summary>
    private static double Solving(Network network, bool isCold, bool isSaid = true)
    {
        var solver = new CircuitSolver(CircuitOf(network));
        var points = network.States.Select(s => Network.Point(s.Rpm, s.Viscosity)).ToArray();
        long steps = 0;
        double residual = 0;
        Once();
        (steps, residual) = (0, 0);
        Once();
        var perSolution = steps / (double)points.Length;
        var seconds = Median(Once) / points.Length;

        // Every element once, at the last solution, as often as a solution has it done.
        var laws = new CircuitLaws(solver.Circuit);
        var values = solver.Circuit.Values;
        laws.Prepare(points[0], values);
        for (var c = 0; c < laws.Carriers.Length; c++)
            laws.Place[c] = laws.Usual(c, values);
        var pressures = new double[solver.Circuit.NodeCount];
        var elements = Median(() =>
        {
            for (var i = 0; i < 100; i++)
            {
                laws.Lose(1e-12);

            }
        }) / 100;
        if (isSaid)
            Say($"{network.Id} {(isCold ? "cold" : "continued")}: {seconds * 1e6:F1} us a solution, {perSolution:F1} steps, {seconds * 1e6 / perSolution:F2} us a step; elements {elements * 1e6:F2} us a pass ({elements * 1e9 / network.Elements.Count:F0} ns each), {elements * (perSolution + 1) / seconds * 100:F0} in 100 of it; at most {residual:G2} of the flow left");
        return seconds;

        void Once()
        {
            var isFirst = true;
            foreach (var point in points)
            {
                if (isCold || isFirst)
                    solver.StartFrom(null);
                isFirst = false;
                var report = solver.Solve(point);
                steps += report.Iterations;
                residual = Math.Max(residual, report.Converged ? report.Residual : double.NaN);
            }
        }
    }

    private static void Map(Network network)
    {
        var solver = new CircuitSolver(CircuitOf(network));
        var seconds = Median(() =>
        {
            for (var v = 0; v < 15; v++)
            {
                for (var s = 0; s < 20; s++)
                    solver.Solve(Network.Point(300 + (120 * (v % 2 == 0 ? s : 19 - s)), 0.006 * Math.Pow(1.3, v)));
            }
        }, 15);
        Say($"map of 300 points of {network.Id}: {seconds * 1e3:F1} ms");
    }

    private static void Draws(Network network)
    {
        const int Count = 20_000;
        var circuit = CircuitOf(network);
        var at = Network.Point(900, 0.012);
        var middle = new CircuitSolver(circuit);
        middle.Solve(at);
        var start = middle.Start();
        var passages = Enumerable.Range(0, circuit.ElementCount).Where(i => circuit.Elements[i] is LaminarPassage).Select(i => circuit.Find(i, nameof(LaminarPassage.Conductance))).ToArray();
        var conductances = Array.ConvertAll(passages, p => middle[p]);
        var node = circuit.NodeCount / 2;
        var sums = new List<double>();
        foreach (var threads in new[] { 1, 2 })
        {
            var pressures = new double[Count];
            var clock = Stopwatch.StartNew();
            Parallel.For(0, 200, new ParallelOptions { MaxDegreeOfParallelism = threads }, () => new CircuitSolver(circuit), (block, _, solver) =>
            {
                for (var draw = block * (Count / 200); draw < (block + 1) * (Count / 200); draw++)
                {
                    var random = new Random(draw);
                    for (var i = 0; i < passages.Length; i++)
                        solver[passages[i]] = conductances[i] * Math.Exp(0.6 * (random.NextDouble() - 0.5));
                    solver.StartFrom(start);
                    pressures[draw] = solver.Solve(at).Converged ? solver.Pressure(node) : double.NaN;
                }

                return solver;
            }, _ => { });
            Say($"{Count} draws of {network.Id} on {threads} {(threads == 1 ? "thread" : "threads")}: {clock.Elapsed.TotalSeconds:F2} s");
            sums.Add(pressures.Sum());
        }

        Say($"draws on one thread and on two: {(sums[0] == sums[1] ? "the same to the last bit" : "NOT the same")}");
    }

    private static void Beside(string program, Dictionary<string, double> own)
    {
        using var peer = Process.Start(new ProcessStartInfo(program, [Path.Combine(AppContext.BaseDirectory, "reference"), "--repeats", "101"]) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;
        peer.ErrorDataReceived += (_, _) => { };
        peer.BeginErrorReadLine();
        while (peer.StandardOutput.ReadLine() is { } line)
        {
            var cells = line.Split('\t');
            var words = cells.Length > 5 ? cells[1].Split(' ') : [];
            if (words is [var id, "KINSOL", var matrix, var how] && own.TryGetValue($"{id} {how}", out var seconds))
                Say($"{id} {how}: KINSOL {matrix} {double.Parse(cells[5], CultureInfo.InvariantCulture) / 1e3:F1} us, {double.Parse(cells[5], CultureInfo.InvariantCulture) * 1e-9 / seconds:F1} times ours; {cells[^1]}");
        }

        peer.WaitForExit();
    }

    private static double Median(Action action, int batches = Batches)
    {
        for (var clock = Stopwatch.StartNew(); clock.Elapsed < TimeSpan.FromSeconds(0.5);)
            action();
        var times = new double[batches];
        for (var i = 0; i < batches; i++)
        {
            var begin = Stopwatch.GetTimestamp();
            action();
            times[i] = Stopwatch.GetElapsedTime(begin).TotalSeconds;
        }

        Array.Sort(times);
        return times[batches / 2];
    }

    private static void Say(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
