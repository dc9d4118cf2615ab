using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Tests.Numerics;

public sealed class RandomStreamTests
{
    [Fact]
    public void Next_IsUniform_AndStepsAreIndependent()
    {
        // Chi-square over 100 cells of 200,000 draws, and over 20 × 20 cells of pairs; limits at about one in a million.
        const int Draws = 200_000;
        var stream = new RandomStream(1, 0);
        var cells = new int[100];
        var pairs = new int[400];
        var before = stream.Next();
        for (var i = 0; i < Draws; i++)
        {
            var now = stream.Next();
            cells[(int)(now * 100)]++;
            pairs[((int)(before * 20) * 20) + (int)(now * 20)]++;
            before = now;
        }

        Assert.InRange(ChiSquare(cells, Draws), 99 - (5 * Math.Sqrt(198)), 99 + (5 * Math.Sqrt(198)));
        Assert.InRange(ChiSquare(pairs, Draws), 399 - (5 * Math.Sqrt(798)), 399 + (5 * Math.Sqrt(798)));
    }

    [Fact]
    public void Streams_OfOneSeed_AreUnlike()
    {
        var seen = new HashSet<double>();
        for (ulong stream = 0; stream < 1_000; stream++)
        {
            for (ulong seed = 0; seed < 10; seed++)
                Assert.True(seen.Add(new RandomStream(seed, stream).Next()));
        }
    }

    [Fact]
    public void Streams_AreNotCorrelated()
    {
        const int Draws = 100_000;
        var (a, b) = (new RandomStream(1, 0), new RandomStream(1, 1));
        var sum = 0.0;
        for (var i = 0; i < Draws; i++)
            sum += (a.Next() - 0.5) * (b.Next() - 0.5);
        Assert.InRange(sum / Draws * 12, -5 / Math.Sqrt(Draws), 5 / Math.Sqrt(Draws));
    }

    [Fact]
    public void Next_StaysStrictlyBetweenNilAndOne()
    {
        var stream = new RandomStream(0, 0);
        for (var i = 0; i < 100_000; i++)
        {
            var x = stream.Next();
            Assert.True(x is > 0 and < 1);
        }
    }

    private static double ChiSquare(int[] counts, int draws)
    {
        var expected = (double)draws / counts.Length;
        return counts.Sum(count => (count - expected) * (count - expected) / expected);
    }
}
