using CsCheck;
using Thoubook.Mechanics.Metrology;

namespace Thoubook.Mechanics.Tests.Metrology;

public sealed class FormTests
{
    // Depths top, middle, bottom; axes along and across.
    private static readonly double[] Bore = [80.020, 80.028, 80.015, 80.019, 80.010, 80.011];
    private static readonly int[] Depths = [1, 1, 2, 2, 3, 3];
    private static readonly int[] Axes = [1, 2, 1, 2, 1, 2];

    [Fact]
    public void Ovality_IsTheWorstDepth()
    {
        var ovality = Form.Ovality(Bore, Depths);
        Assert.Equal(0.008, ovality.Amount, 1e-12);
        Assert.Equal((1, 0), (ovality.GreatestAt, ovality.LeastAt));
    }

    [Fact]
    public void Taper_IsTheWorstAxis()
    {
        var taper = Form.Taper(Bore, Axes);
        Assert.Equal(0.017, taper.Amount, 1e-12);
        Assert.Equal((1, 5), (taper.GreatestAt, taper.LeastAt));
    }

    [Fact]
    public void NothingToCompare_IsUnknown_NotNil()
    {
        Assert.False(Form.Ovality([1, 2], [1, 2]).IsKnown);
        Assert.False(Form.Taper([], []).IsKnown);
        Assert.True(Form.Taper([1, 1], [4, 4]).IsKnown);
    }

    [Fact]
    public void Form_OrderDoesNotMatter_AndASizeShiftNeither() =>
        Gen.Select(Gen.Double[0, 1], Gen.Int[0, 3]).Array[1, 12].Select(Gen.Double[-5, 5]).Sample((places, shift) =>
        {
            var amount = Form.Ovality([.. places.Select(p => p.Item1)], [.. places.Select(p => p.Item2)]).Amount;
            var turned = Form.Ovality([.. places.Reverse().Select(p => p.Item1 + shift)], [.. places.Reverse().Select(p => p.Item2)]).Amount;
            Assert.Equal(amount, turned, 1e-12);
        });
}
