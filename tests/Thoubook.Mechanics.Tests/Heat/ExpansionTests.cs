using CsCheck;
using Thoubook.Mechanics.Heat;

namespace Thoubook.Mechanics.Tests.Heat;

public sealed class ExpansionTests
{
    [Fact]
    [CommonPractice("light-alloy hole on a steel shaft of 3 in: 0.6 thou for 20 K")]
    public void Growth_LightAlloyAgainstSteel()
    {
        var warm = Expansion.Reference + 20;
        Assert.True(Materials.TryFind("light alloy", out var alloy, out _));
        Assert.True(Materials.TryFind("steel", out var steel, out _));
        Outside.Check("clearance gained on 3 in for 20 K [thou]", 0.6, Expansion.Growth(3000, alloy.Expansion.Value, warm) - Expansion.Growth(3000, steel.Expansion.Value, warm), 0.05);
    }

    [Fact]
    [CommonPractice("least gap of a cast-iron ring: 0.0035 in per inch of bore, the growth of a ring 100 K hotter than its bore")]
    public void Growth_RingGapPerInchOfBore() =>
        Outside.Check("gap closed per inch of bore for 100 K [in]", 0.0035, Expansion.Growth(Math.PI, 11.0e-6, Expansion.Reference + 100), 0.00005);

    [Fact]
    public void SizeAt_IsSizeAndGrowth() =>
        Gen.Select(Gen.Double[-1, 1], Gen.Double[0, 3e-5], Gen.Double[220, 520]).Sample((size, alpha, t) =>
        {
            Assert.Equal(size + Expansion.Growth(size, alpha, t), Expansion.SizeAt(size, alpha, t));
            Assert.Equal(size * alpha * (t - 293.15), Expansion.Growth(size, alpha, t), 1e-15);
        });

    [Fact]
    public void Growth_At20_IsNil() => Assert.Equal(0, Expansion.Growth(0.1, 2e-5, Expansion.Reference));

    [Theory]
    [InlineData(double.NaN, 1e-5, 300)]
    [InlineData(1, 0.02, 300)]
    [InlineData(1, 1e-5, -20)]
    public void Growth_OutOfRange_IsRefused(double size, double alpha, double temperature) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Expansion.Growth(size, alpha, temperature));
}
