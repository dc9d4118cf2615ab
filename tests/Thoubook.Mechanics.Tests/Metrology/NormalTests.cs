using CsCheck;
using Thoubook.Mechanics.Metrology;

namespace Thoubook.Mechanics.Tests.Metrology;

public sealed class NormalTests
{
    [Fact]
    public void BelowAndQuantile_AgreeWithFiftyDigits()
    {
        foreach (var row in ReferenceTable.Read("distributions.csv"))
        {
            var expected = row.Number("value");
            switch (row["function"])
            {
                case "Phi":
                    // Relative: the tail must be right, not just small.
                    row.Check($"Phi({row["first"]})", expected, Normal.Below(row.Number("first")), 4e-15 * Math.Max(1, Math.Abs(row.Number("first"))) * expected);
                    row.Check($"1 − Phi({row["first"]})", expected, Normal.Above(-row.Number("first")), 4e-15 * Math.Max(1, Math.Abs(row.Number("first"))) * expected);
                    break;
                case "z":
                    row.Check($"normal quantile {row["first"]}", expected, Normal.Quantile(row.Number("first")), 1e-15 * Math.Max(1, 2 * Math.Abs(expected)));
                    break;
            }
        }
    }

    [Fact]
    public void Quantile_IsTheInverse() =>
        Gen.Double[-8, 8].Sample(z => Assert.Equal(Normal.Below(z), Normal.Below(Normal.Quantile(Normal.Below(z))), 4e-15));

    [Fact]
    public void Density_IsTheSlope() =>
        Gen.Double[-6, 6].Sample(z => Assert.Equal((Normal.Below(z + 1e-5) - Normal.Below(z - 1e-5)) / 2e-5, Normal.Density(z), 1e-9));

    [Fact]
    public void Infinite_IsCertain()
    {
        Assert.Equal(0, Normal.Below(double.NegativeInfinity));
        Assert.Equal(1, Normal.Below(double.PositiveInfinity));
        Assert.True(double.IsNaN(Normal.Below(double.NaN)));
    }
}
