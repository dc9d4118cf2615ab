using System.Diagnostics;
using System.Globalization;
using Thoubook.Mechanics.Tests.Circuits;

namespace Thoubook.Benchmarks;

/// <summary>All the random circuits of which the tests run a share, and what became of them.</summary>
internal static class RandomCircuits
{
    /// <summary>random-circuits [how many] [first]</summary>
    public static int Run(string[] args)
    {
        var count = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 200_000;
        var first = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 0;
        var clock = Stopwatch.StartNew();
        var tallies = new List<RandomCircuitTally>();
        Parallel.For(first, first + count, () => new RandomCircuitTally(), (seed, _, tally) =>
        {
            tally.Try(seed);
            return tally;
        }, tally =>
        {
            lock (tallies)
                tallies.Add(tally);
        });
        var failed = tallies.SelectMany(t => t.PlainFailed.Concat(t.OtherFailed)).ToList();
        foreach (var line in failed.Take(40))
            Console.WriteLine(line);
        var solved = tallies.Sum(t => t.Soluble) + tallies.Sum(t => t.Moved);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} circuits from seed {first}: {tallies.Sum(t => t.Soluble)} soluble, of which {tallies.Sum(t => t.Moved)} solved again at another point and {tallies.Sum(t => t.Compared)} compared with the drawn pressures; {tallies.Sum(t => t.Insoluble)} insoluble."));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{tallies.Sum(t => t.Steps) / (double)Math.Max(solved, 1):F1} steps a solution, at most {tallies.Max(t => t.GreatestSteps)}; {tallies.Sum(t => t.PlainFailed.Count)} of {tallies.Sum(t => t.Plain)} failed that have sizes such as an engine has and no element that looks at a third pressure or may starve, {tallies.Sum(t => t.OtherFailed.Count)} of the others; {clock.Elapsed.TotalSeconds:F1} s."));
        return failed.Count == 0 ? 0 : 1;
    }
}
