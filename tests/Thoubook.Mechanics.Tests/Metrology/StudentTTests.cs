using CsCheck;
using Thoubook.Mechanics.Metrology;

namespace Thoubook.Mechanics.Tests.Metrology;

public sealed class StudentTTests
{
    [Fact]
    public void BelowAndQuantile_AgreeWithFiftyDigits()
    {
        foreach (var row in ReferenceTable.Read("distributions.csv"))
        {
            var expected = row.Number("value");
            switch (row["function"])
            {
                case "T":
                    row.Check($"Student T({row["first"]}, {row["second"]})", expected, StudentT.Below(row.Number("first"), row.Number("second")), (expected < 1e-20 && row.Number("second") > 400 ? 1e-6 : 2e-13) * expected);
                    break;
                case "t":
                    row.Check($"Student quantile {row["first"]}, {row["second"]} degrees of freedom", expected, StudentT.Quantile(row.Number("first"), row.Number("second")), 3e-13 * Math.Abs(expected));
                    break;
            }
        }
    }

    [Fact]
    public void Quantile_AgreesWithThePrintedTable()
    {
        foreach (var row in ReferenceTable.Read("student-t-table.csv"))
        {
            // Printed to three decimals; the half unit and a little for the double.
            row.Check($"Student t at {row["probability"]}, {row["degrees_of_freedom"]} degrees of freedom", row.Number("t"), StudentT.Quantile(row.Number("probability"), row.Number("degrees_of_freedom")), 0.000501);
        }
    }

    [Fact]
    public void Density_IsTheSlope() =>
        Gen.Select(Gen.Double[-6, 6], Gen.Double[0.5, 200]).Sample((t, nu) =>
            Assert.Equal((StudentT.Below(t + 1e-5, nu) - StudentT.Below(t - 1e-5, nu)) / 2e-5, StudentT.Density(t, nu), 1e-8));

    [Fact]
    public void ManyDegreesOfFreedom_AreNormal() =>
        Gen.Double[-5, 5].Sample(t =>
        {
            Assert.Equal(Normal.Below(t), StudentT.Below(t, 1e9), 1e-9);
            Assert.Equal(Normal.Below(t), StudentT.Below(t, double.PositiveInfinity));
        });

    [Fact]
    public void Quantile_IsTheInverse() =>
        Gen.Select(Gen.Double[1e-6, 0.999999], Gen.Double[0.3, 500]).Sample((p, nu) =>
            Assert.Equal(p, StudentT.Below(StudentT.Quantile(p, nu), nu), 1e-12));

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void DegreesOfFreedom_NotAboveZero_AreRefused(double degrees) =>
        Assert.Contains("degreesOfFreedom", Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.Below(1, degrees)).Message, StringComparison.Ordinal);
}
