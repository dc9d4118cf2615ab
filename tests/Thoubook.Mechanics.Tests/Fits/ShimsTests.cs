using CsCheck;
using Thoubook.Mechanics.Fits;

namespace Thoubook.Mechanics.Tests.Fits;

public sealed class ShimsTests
{
    private static readonly double[] Stock = [0.05e-3, 0.10e-3, 0.15e-3, 0.50e-3, 1.00e-3];

    [Fact]
    public void Choose_TakesTheNearest_WithTheFewestPieces()
    {
        var one = Shims.Choose(1.13e-3, 2e-6, 0.03e-3, Stock, 1e-6);
        Assert.Equal([1.00e-3, 0.10e-3], one.Pieces);
        Assert.Equal(0.03e-3, one.Clearance, 1e-12);
        Assert.Equal(Math.Sqrt(6) * 1e-6, one.StandardUncertainty, 1e-15);
        Assert.Equal([1.00e-3], Shims.Choose(1.03e-3, 0, 0.03e-3, Stock, 0).Pieces);
    }

    [Fact]
    public void Choose_NothingBetterThanNone_TakesNone()
    {
        var none = Shims.Choose(0.04e-3, 0, 0.03e-3, Stock, 1e-6);
        Assert.Empty(none.Pieces);
        Assert.Equal(0.04e-3, none.Clearance, 1e-15);
        Assert.Equal(0, none.StandardUncertainty);
    }

    [Fact]
    public void Choose_IsNeverFartherThanAnyOtherPack() =>
        Gen.Select(Gen.Double[0, 2.5e-3], Gen.Int[1, 3]).Sample((gap, most) =>
        {
            var chosen = Shims.Choose(gap, 0, 0, Stock, 0, most);
            Assert.True(chosen.Pieces.Count <= most);
            var best = Packs(most).Min(total => Math.Abs(gap - total));
            Assert.Equal(best, Math.Abs(chosen.Clearance), 1.1e-9);
        });

    [Theory]
    [InlineData(0.025, 0.0072)]
    [InlineData(0.05, 0.0144)]
    [InlineData(0.10, 0.0289)]
    [CommonPractice("shims by steps of stock: the error lies within ± half a step, standard uncertainty step/√12")]
    public void StepUncertainty_AgreesWithPractice(double step, double expected) =>
        Outside.Check($"standard uncertainty from a stock step of {step} mm", expected, Shims.StepUncertainty(step), 5e-5);

    private static IEnumerable<double> Packs(int most)
    {
        IEnumerable<double> totals = [0];
        for (var i = 0; i < most; i++)
            totals = totals.SelectMany(total => Stock.Select(shim => total + shim).Prepend(total)).ToList();
        return totals;
    }
}
