using System.Diagnostics;

namespace Thoubook.Mechanics.Tests.Circuits;

/// <summary>A share of the random circuits; all of them are run by the benchmarks' verb <c>random-circuits</c>.</summary>
public sealed class RandomCircuitTests
{
    [Fact]
    public void RandomCircuits_AreSolvedInFortySteps_OrNamedInsoluble()
    {
        var tally = new RandomCircuitTally();
        var clock = Stopwatch.StartNew();
        for (var seed = 0; seed < 2000 && clock.Elapsed < TimeSpan.FromSeconds(7); seed++)
            tally.Try(seed);
        Assert.True(tally.PlainFailed.Count == 0, $"{tally.PlainFailed.Count} of {tally.Plain}:\n{string.Join("\n", tally.PlainFailed.Take(20))}");

        // Where sizes are out of all proportion, or elements look at a third pressure, a few are not: docs/sums/circuits.md says how many.
        Assert.True(tally.OtherFailed.Count <= 0.015 * (tally.Soluble + tally.Insoluble - tally.Plain), $"{tally.OtherFailed.Count} of the others:\n{string.Join("\n", tally.OtherFailed.Take(20))}");
        Assert.DoesNotContain(tally.OtherFailed, line => line.Contains("no number", StringComparison.Ordinal) || line.Contains("refused", StringComparison.Ordinal) || line.Contains("was not seen", StringComparison.Ordinal) || line.Contains("was called", StringComparison.Ordinal) || line.Contains("its law gives", StringComparison.Ordinal) || line.Contains("names nothing", StringComparison.Ordinal));
        Assert.True(tally is { Soluble: > 50, Insoluble: > 7, Compared: > 2 }, $"{tally.Soluble} soluble, {tally.Insoluble} insoluble, {tally.Compared} compared: too few were tried.");
    }
}
