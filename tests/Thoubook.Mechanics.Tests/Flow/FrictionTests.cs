using CsCheck;
using Thoubook.Mechanics.Flow;

namespace Thoubook.Mechanics.Tests.Flow;

public sealed class FrictionTests
{
    [Fact]
    public void Churchill_AgreesWithTheLibrary()
    {
        foreach (var row in ReferenceTable.Read("lubrication/friction.csv"))
        {
            var (reynolds, roughness) = (row.Number("reynolds"), row.Number("relative_roughness"));
            var got = Friction.Churchill(reynolds, roughness);
            row.Check($"friction factor by Churchill, Re {row["reynolds"]}, e/d {row["relative_roughness"]}", row.Number("churchill"), got, 1e-10 * got);

            // Churchill's formula follows Colebrook's within 4 % from Re 4000.
            if (row.NumberOrNone("colebrook") is { } colebrook)
                row.Check($"friction factor by Colebrook, Re {row["reynolds"]}, e/d {row["relative_roughness"]}", colebrook, got, 0.04 * colebrook);
        }
    }

    [Theory]
    [InlineData(1e5, 1e-4, 0.0184626)]
    [Published("documentation of the library fluids, friction of Churchill 1977")]
    public void Churchill_AgreesWithThePrintedValues(double reynolds, double roughness, double expected) =>
        Outside.Check($"friction factor, Re {reynolds}, e/d {roughness}", expected, Friction.Churchill(reynolds, roughness), 5.1e-8);

    [Theory]
    [InlineData(1e-9)]
    [InlineData(9e-4)]
    [InlineData(1.1e-3)]
    [InlineData(10)]
    [InlineData(500)]
    [Published("Hagen and Poiseuille: f = 64/Re")]
    public void Churchill_LaminarFlow_Is64OverRe(double reynolds) =>
        Outside.CheckRelative($"friction factor in laminar flow, Re {reynolds}", 64 / reynolds, Friction.Churchill(reynolds, 0.001), 1e-9);

    [Fact]
    public void Slope_IsThatOfTheFactor() =>
        Gen.Select(Gen.Double[-2.9, 8], Gen.Double[-6, -1.3]).Sample((logRe, logRoughness) =>
        {
            var (re, e) = (Math.Pow(10, logRe), Math.Pow(10, logRoughness));
            var step = 1e-5 * re;
            Friction.Churchill(re, e, out var slope);
            var expected = (Friction.Churchill(re + step, e) - Friction.Churchill(re - step, e)) / (2 * step);
            Assert.Equal(expected, slope, 1e-6 * Math.Max(Math.Abs(expected), Friction.Churchill(re, e) / re));
        });

    [Theory]
    [InlineData(0, 0)]
    [InlineData(-1, 0)]
    [InlineData(1000, -0.1)]
    [InlineData(1000, 0.3)]
    [InlineData(double.NaN, 0)]
    public void OutOfRange_IsRefused(double reynolds, double roughness) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Friction.Churchill(reynolds, roughness));
}
