using CsCheck;
using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Tests.Numerics;

public sealed class RootsTests
{
    [Fact]
    public void Find_RootChosenFirst_IsFoundAgain() =>
        Gen.Select(Gen.Double[-5, 5], Gen.Double[0.1, 3], Gen.Double[0.1, 4], Gen.Double[0.1, 4]).Sample((root, steep, left, right) =>
        {
            var (x, report) = Roots.Find(x => Math.Tanh(steep * (x - root)) + (0.1 * Math.Pow(x - root, 3)), root - left, root + right, 1e-14);
            Assert.True(report.Converged);
            Assert.Equal(root, x, 1e-13);
            Assert.InRange(report.Iterations, 0, 40);
        });

    [Fact]
    public void Find_CountsItsWork()
    {
        var calls = 0;
        var (x, report) = Roots.Find(x => { calls++; return (x * x * x) - 2; }, 0, 2);
        Assert.Equal(Math.Cbrt(2), x, 1e-15);
        Assert.Equal(report.Iterations + 2, calls);
        Assert.InRange(calls, 5, 14);
    }

    [Fact]
    public void Find_SameSignAtBothEnds_SaysSo()
    {
        var (_, report) = Roots.Find(x => (x * x) + 1, -1, 1);
        Assert.Equal(SolveStatus.NotBracketed, report.Status);
        Assert.NotEmpty(report.Hint);
    }

    [Fact]
    public void Find_TooFewSteps_SaysSo()
    {
        var (_, report) = Roots.Find(x => Math.Exp(x) - 3, -10, 10, steps: 3);
        Assert.Equal(SolveStatus.OutOfSteps, report.Status);
        Assert.False(report.Converged);
    }

    [Fact]
    public void Find_RootAtAnEnd_IsTaken()
    {
        Assert.Equal(1, Roots.Find(x => x - 1, 1, 2).Root);
        Assert.Equal(2, Roots.Find(x => x - 2, 1, 2).Root);
    }

    [Fact]
    public void Find_Tolerance_StopsEarlier()
    {
        var fine = Roots.Find(x => Math.Exp(x) - 3, -3, 10);
        var coarse = Roots.Find(x => Math.Exp(x) - 3, -3, 10, 1e-2);
        Assert.True(coarse.Report.Iterations < fine.Report.Iterations);
        Assert.Equal(Math.Log(3), coarse.Root, 1e-2);
    }
}
