using CsCheck;
using Thoubook.Mechanics.Metrology;

namespace Thoubook.Mechanics.Tests.Metrology;

public sealed class BivariateNormalTests
{
    [Fact]
    public void BothBelow_AgreesWithQuadrature()
    {
        foreach (var row in ReferenceTable.Read("distributions.csv").Where(row => row["function"] == "Phi2"))
        {
            row.Check($"bivariate normal ({row["first"]}, {row["second"]}; {row["correlation"]})", row.Number("value"), BivariateNormal.BothBelow(row.Number("first"), row.Number("second"), row.Number("correlation")), 2e-14);
        }
    }

    [Fact]
    public void BothBelow_AtTheMedians_IsTheArcsineLaw() =>
        Gen.Double[-1, 1].Sample(r => Assert.Equal(0.25 + (Math.Asin(r) / (2 * Math.PI)), BivariateNormal.BothBelow(0, 0, r), 1e-13));

    [Fact]
    public void BothBelow_IsSymmetric_AndSplits() =>
        Gen.Select(Gen.Double[-4, 4], Gen.Double[-4, 4], Gen.Double[-1, 1]).Sample((h, k, r) =>
        {
            Assert.Equal(BivariateNormal.BothBelow(k, h, r), BivariateNormal.BothBelow(h, k, r), 1e-13);
            Assert.Equal(Normal.Below(h), BivariateNormal.BothBelow(h, k, r) + BivariateNormal.BothBelow(h, -k, -r), 1e-12);
        });

    [Fact]
    public void BothBelow_FullCorrelation_IsTheLesser()
    {
        Assert.Equal(Normal.Below(-0.3), BivariateNormal.BothBelow(-0.3, 1.2, 1), 1e-15);
        Assert.Equal(Normal.Below(1.2) - Normal.Below(0.3), BivariateNormal.BothBelow(-0.3, 1.2, -1), 1e-15);
        Assert.Equal(Normal.Below(1.2), BivariateNormal.BothBelow(double.PositiveInfinity, 1.2, 0.4), 1e-15);
    }
}
