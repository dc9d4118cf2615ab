using CsCheck;
using Thoubook.Mechanics.Oil;
using Thoubook.Mechanics.Sums;
using static Thoubook.Mechanics.Tests.Oil.ViscosityChecks;

namespace Thoubook.Mechanics.Tests.Oil;

public sealed class ViscosityIndexTests
{
    [Fact]
    public void Of_AgreesWithTheExamples()
    {
        foreach (var row in Of("vi_example", "VI_unrounded"))
            Check(row, ViscosityIndex.Of(1e-6 * row.Number("in1_value"), 1e-6 * row.Number("in2_value")));
        foreach (var row in Of("vi_example", "VI_rounded"))
            Check(row, Math.Round(ViscosityIndex.Of(1e-6 * row.Number("in1_value"), 1e-6 * row.Number("in2_value"))));
    }

    [Theory]
    [InlineData("L")]
    [InlineData("H")]
    [InlineData("N")]
    public void Steps_AgreeWithTheExamples(string symbol)
    {
        foreach (var row in Of("vi_example", symbol))
            Check(row, Told(symbol, row.Number("in1_value"), row.Number("in2_value")));
    }

    [Theory]
    [InlineData("L")]
    [InlineData("H")]
    public void Table_AgreesWithTheStandard(string symbol)
    {
        foreach (var row in Of("vi_table", symbol).Where(row => row.Number("in1_value") <= 70))
            Check(row, Told(symbol, 10000, row.Number("in1_value")));

        // At 70 itself the table holds, not the fit.
        foreach (var row in Of("vi_poly", symbol).Where(row => row.Number("in1_value") > 70))
            Check(row, Told(symbol, 10000, row.Number("in1_value")));
    }

    [Fact]
    public void ViscosityAt40_IsTheInverse() =>
        Gen.Select(Gen.Double[0, 400], Gen.Double[2.0, 200]).Sample((index, at100) =>
            Assert.Equal(index, ViscosityIndex.Of(ViscosityIndex.ViscosityAt40(index, at100 * 1e-6), at100 * 1e-6), 1e-6),
            iter: 2000);

    [Fact]
    public void ViscosityAt40_RisesWithViscosityAt100_AndFallsWithTheIndex() =>
        Gen.Select(Gen.Double[0, 200], Gen.Double[2.0, 200]).Sample((index, at100) =>
        {
            var here = ViscosityIndex.ViscosityAt40(index, at100 * 1e-6);
            Assert.True(ViscosityIndex.ViscosityAt40(index, at100 * 1.02e-6) > here);
            Assert.True(ViscosityIndex.ViscosityAt40(index + 1, at100 * 1e-6) < here);
        });

    [Theory]
    [InlineData(50e-6, 1.9e-6)]
    [InlineData(5e-6, 6e-6)]
    [InlineData(double.NaN, 6e-6)]
    public void Of_OutOfRange_IsRefused(double at40, double at100) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ViscosityIndex.Of(at40, at100));

    [Fact]
    public void ViscosityAt40_OutOfRange_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ViscosityIndex.ViscosityAt40(-1, 1e-5));
        Assert.Throws<ArgumentOutOfRangeException>(() => ViscosityIndex.ViscosityAt40(100, 1e-6));
    }

    private static double Told(string symbol, double at40, double at100)
    {
        var writer = new WorkingWriter("-");
        ViscosityIndex.Of(1e-6 * at40, 1e-6 * at100, writer.Trace);
        return writer.Working.Lines.Single(line => line.Symbol == symbol).Values[0];
    }
}
