using CsCheck;
using Thoubook.Mechanics.Metrology;

namespace Thoubook.Mechanics.Tests.Metrology;

public sealed class ConformanceTests
{
    [Fact]
    public void Within_AgreesWithTheWorkedCases()
    {
        foreach (var row in ReferenceTable.Read("c07-conformance.csv"))
        {
            var limits = Interval.Between(row.NumberOrNone("lower_tolerance_limit") ?? double.NegativeInfinity, row.NumberOrNone("upper_tolerance_limit") ?? double.PositiveInfinity);
            var (y, u) = (row.Number("measured_value"), row.Number("standard_uncertainty"));
            var p = Conformance.Within(y, u, limits);
            Check("within", "p_conform_dimless", p.Within, 1e-6);
            Check("below", "p_nonconform_below_dimless", p.Below, 1e-6);
            Check("above", "p_nonconform_above_dimless", p.Above, 1e-6);
            var zone = DecisionRule.GuardBanded(limits, u, row.Number("guard_band_factor_r_dimless"))!.Value;
            if (row.NumberOrNone("lower_acceptance_limit") is not null)
                Check("lower acceptance limit", "lower_acceptance_limit", zone.Least, 1e-9);
            if (row.NumberOrNone("upper_acceptance_limit") is not null)
                Check("upper acceptance limit", "upper_acceptance_limit", zone.Greatest, 1e-9);
            Assert.Equal(row["accepted"] == "true", zone.Contains(y));

            void Check(string what, string head, double got, double tolerance) =>
                Outside.Check($"conformance {row["case_id"]}: {what}", row.Number(head), got, tolerance, "independent computation of the normal integral, error < 1e-8", "computed");
        }
    }

    [Theory]
    [InlineData(509.7, 8.6, 490, double.PositiveInfinity, 0.9890095, "JCGM 106:2012 7.2 example, single lower limit: pressure container")]
    [InlineData(-5.47, 0.05, double.NegativeInfinity, -5.4, 0.9192433, "JCGM 106:2012 7.2 example, single upper limit: breakdown voltage")]
    [InlineData(13.6, 1.8, 12.5, 16.3, 0.6626298, "JCGM 106:2012 7.4 example, two-sided: engine-oil kinematic viscosity at 100 C")]
    public void Within_AgreesWithTheGuide(double y, double u, double least, double greatest, double expected, string source) =>
        Outside.Check("conformance probability", expected, Conformance.Within(y, u, Interval.Between(least, greatest)).Within, 5e-8, source, "from memory");

    [Fact]
    public void Within_FewReadings_IsLessSure() =>
        Gen.Select(Gen.Double[0.55, 0.95], Gen.Double[0.01, 0.2], Gen.Double[1, 30]).Sample((y, u, nu) =>
            Assert.True(Conformance.Within(y, u, nu, Interval.AtMost(1)).Within <= Conformance.Within(y, u, Interval.AtMost(1)).Within + 1e-12));

    [Fact]
    public void Within_UnitsDoNotMatter() =>
        Gen.Select(Gen.Double[-0.5, 1.5], Gen.Double[0.001, 0.5], Gen.Double[1e-6, 1e6]).Sample((y, u, scale) =>
            Assert.Equal(Conformance.Within(y, u, Interval.Between(0, 1)).Within, Conformance.Within(y * scale, u * scale, Interval.Between(0, scale)).Within, 1e-12));

    [Fact]
    public void Within_NearerTheMiddle_IsMoreProbable() =>
        Gen.Select(Gen.Double[0.5, 1.5], Gen.Double[0, 0.5], Gen.Double[0.01, 0.5]).Sample((y, further, u) =>
            Assert.True(Conformance.Within(y + further, u, Interval.Between(0, 1)).Within <= Conformance.Within(y, u, Interval.Between(0, 1)).Within + 1e-13));

    [Fact]
    public void Within_NoUncertainty_ALimitCounts()
    {
        Assert.Equal(new ConformanceProbability(1, 0, 0), Conformance.Within(1, 0, Interval.AtMost(1)));
        Assert.Equal(new ConformanceProbability(0, 0, 1), Conformance.Within(Math.BitIncrement(1), 0, Interval.AtMost(1)));
        Assert.Equal(new ConformanceProbability(0, 1, 0), Conformance.Within(-0.1, 0, Interval.Between(0, 1)));
        Assert.Equal(1, Conformance.Within(5, 1, Interval.Unlimited).Within);
    }

    [Fact]
    public void Interval_KeepsItsPromises()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Interval.Between(2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Interval.Between(double.NaN, 1));
        Assert.Null(Interval.Between(0, 1).Inwards(0.6));
        Assert.Equal(Interval.Between(0.25, 0.75), Interval.Between(0, 1).Inwards(0.25));
        Assert.Equal(1, Interval.Between(-1, 0).Width);
        Assert.Equal(-0.5, Interval.Between(-1, 0).Middle);
        Assert.Equal(Interval.Between(0, 0), default);
        Assert.True(Interval.AtLeast(3).Contains(3) && !Interval.AtLeast(3).Contains(2.9) && Interval.AtMost(3).Contains(3));
    }
}
