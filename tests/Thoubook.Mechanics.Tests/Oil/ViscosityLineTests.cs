using CsCheck;
using Thoubook.Mechanics.Oil;
using static Thoubook.Mechanics.Tests.Oil.ViscosityChecks;

namespace Thoubook.Mechanics.Tests.Oil;

public sealed class ViscosityLineTests
{
    [Fact]
    public void Z_AgreesWithTheStandard()
    {
        foreach (var row in Of("d341_Z", "Z"))
            Check(row, ViscosityLine.Z(row.Number("in1_value")));
    }

    /// <summary>The inverse of the standard is near enough to 3e-4; ours takes one step of Newton's method more, so the value it came from is what is got.</summary>
    [Fact]
    public void At_AgreesWithTheInverseOfTheStandard()
    {
        foreach (var row in Of("d341_inverse", "kv"))
        {
            var line = new ViscosityLine(Math.Log10(Math.Log10(row.Number("in1_value"))), 0);
            Check(row, 1e6 * line.At(300), 3e-4);
        }
    }

    [Fact]
    public void WorkedExample_OfTheStandard()
    {
        // The example takes 273 for 273.15.
        foreach (var (output, got) in (IEnumerable<(string, Func<ViscosityLine, double>)>)[("A", line => line.A), ("B", line => line.B), ("kv", line => 1e6 * line.At(273 + 80))])
            Check(Of("d341_example", output).Single(), got(ViscosityLine.Through(273 + 40, 32e-6, 273 + 100, 5.4e-6)));
    }

    [Fact]
    public void Through_AgreesWithTheTable()
    {
        foreach (var output in (string[])["A", "B"])
        {
            foreach (var row in Of("d341_fit", output))
                Check(row, output == "A" ? LineOf(row).A : LineOf(row).B);
        }

        // The simple form leaves the last term of Z out, which above 2 mm²/s is at most 8e-4.
        foreach (var row in Of("d341_fit", "kv"))
        {
            var n = row.Number("out_value");
            Check(row, 1e6 * LineOf(row).At(273.15 + row.Number("in3_value")), Math.Exp(-1.47 - (1.84 * n) - (0.51 * n * n)) / n);
        }

        // The inverse of the standard, with which these were computed, is near enough to 3e-4.
        foreach (var row in Of("d341_full_fit", "kv"))
            Check(row, 1e6 * LineOf(row).At(273.15 + row.Number("in3_value")), 3e-4);
    }

    [Fact]
    public void At_GivesBackBothPoints() =>
        Gen.Select(Gen.Double[210, 400], Gen.Double[5, 200], Gen.Double[0, 1], Gen.Double[0.01, 0.99]).Sample((cold, apart, high, share) =>
        {
            var thick = ViscosityLine.LeastViscosity * Math.Pow(ViscosityLine.GreatestViscosity / ViscosityLine.LeastViscosity, 0.02 + (0.98 * high));
            var thin = ViscosityLine.LeastViscosity * Math.Pow(thick / ViscosityLine.LeastViscosity, share);
            var line = ViscosityLine.Through(cold + apart, thin, cold, thick);
            Assert.Equal(1, line.At(cold) / thick, 1e-7);
            Assert.Equal(1, line.At(cold + apart) / thin, 1e-7);
            Assert.True(line.B > 0);
        });

    [Fact]
    public void At_FallsWithTemperature_AndIsFiniteOverTheWholeChart() =>
        Gen.Select(Gen.Double[1.5e-6, 40e-6], Gen.Double[1.05, 40], Gen.Double[203.15, 640]).Sample((hot, times, temperature) =>
        {
            var line = ViscosityLine.Through(313.15, hot * times, 373.15, hot);
            var (here, hotter) = (line.At(temperature), line.At(temperature + 3));
            Assert.True(double.IsFinite(here) && hotter > 0 && hotter < here);
        });

    [Theory]
    [InlineData(300, 1e-4, 300, 1e-5, ViscosityPointsFault.SameTemperature)]
    [InlineData(300, 1e-5, 350, 1e-5, ViscosityPointsFault.NotThinnerHot)]
    [InlineData(350, 1e-4, 300, 1e-5, ViscosityPointsFault.NotThinnerHot)]
    [InlineData(300, 1e-4, 350, 0.2e-6, ViscosityPointsFault.OutOfRange)]
    [InlineData(300, 21, 350, 1e-5, ViscosityPointsFault.OutOfRange)]
    [InlineData(200, 1e-4, 350, 1e-5, ViscosityPointsFault.OutOfRange)]
    [InlineData(300, double.NaN, 350, 1e-5, ViscosityPointsFault.OutOfRange)]
    [InlineData(300, 1e-4, 350, 1e-5, ViscosityPointsFault.None)]
    [InlineData(350, 1e-5, 300, 1e-4, ViscosityPointsFault.None)]
    public void Fault_IsNamed(double t1, double v1, double t2, double v2, ViscosityPointsFault expected)
    {
        Assert.Equal(expected, ViscosityLine.Fault(t1, v1, t2, v2));
        if (expected != ViscosityPointsFault.None)
            Assert.Throws<ArgumentException>(() => ViscosityLine.Through(t1, v1, t2, v2));
    }

    [Theory]
    [InlineData(203)]
    [InlineData(644)]
    [InlineData(double.NaN)]
    public void At_OffTheChart_IsRefused(double temperature) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ViscosityLine(9, 3.5).At(temperature));

    private static ViscosityLine LineOf(ReferenceTable.Row row) => ViscosityLine.Through(313.15, 1e-6 * row.Number("in1_value"), 373.15, 1e-6 * row.Number("in2_value"));
}
