using CsCheck;
using Thoubook.Mechanics.Metrology;

namespace Thoubook.Mechanics.Tests.Metrology;

public sealed class DecisionRuleTests
{
    private static readonly WorkedExample Rule = new("U13");

    [Fact]
    public void OneSidedFactors_AgreeWithTheGuide()
    {
        var table = new WorkedExample("U8");
        foreach (var p in new[] { 0.8, 0.9, 0.95, 0.99, 0.999 })
            table.Check($"z for one-sided conformance probability {p}", DecisionRule.GuardFactor(double.PositiveInfinity, p)!.Value);
    }

    [Theory]
    [InlineData(20)]
    [InlineData(10)]
    [InlineData(8)]
    [InlineData(6)]
    [InlineData(5)]
    [InlineData(4.5)]
    [InlineData(4)]
    [InlineData(3.92)]
    public void GuardFactor_GrowsWhenTheLimitsAreClose(double width) =>
        Rule.Check(FormattableString.Invariant($"guard_band_factor when (T_U - T_L)/u = {width}"), DecisionRule.GuardFactor(width)!.Value);

    [Fact]
    public void GuardFactor_TooCloseLimits_HasNone()
    {
        Rule.Check("guard_band_factor one limit active", DecisionRule.GuardFactor(double.PositiveInfinity)!.Value);
        Rule.Check("smallest (T_U - T_L)/u with any acceptance zone", 2 * Uncertainty.CoverageFactor(0.95, double.PositiveInfinity));
        Assert.NotNull(DecisionRule.GuardFactor(3.919929));
        Assert.Null(DecisionRule.GuardFactor(3.919927));
    }

    [Fact]
    public void Journal_AgreesWithTheWorkedCase()
    {
        var journal = new WorkedExample("U14");
        var limits = Interval.Between(49.966, 49.991);
        var zone = DecisionRule.AcceptanceZone(limits, 0.002)!.Value;

        // The case uses the printed factor 1.65; ours is the exact 1.6449, which moves the ends by 0.00001.
        journal.Check("acceptance_limit_low", zone.Least, 0, 1.1e-5);
        journal.Check("acceptance_limit_high", zone.Greatest, 0, 1.1e-5);
        journal.Check("conformance_probability", Conformance.Within(49.987, 0.002, limits).Within);
        journal.Check("conformance_probability if 49.989 were read", Conformance.Within(49.989, 0.002, limits).Within);
        Assert.Equal(Proof.Conformity, DecisionRule.Prove(49.987, 0.002, limits));
        Assert.Equal(Proof.Neither, DecisionRule.Prove(49.989, 0.002, limits));
        Assert.Equal(Proof.Nonconformity, DecisionRule.Prove(49.9944, 0.002, limits));
        Assert.Equal(Proof.Nonconformity, DecisionRule.Prove(49.9625, 0.002, limits));
    }

    [Fact]
    public void AcceptanceZone_IsWhereConformityIsProved() =>
        Gen.Select(Gen.Double[0.01, 0.5], Gen.Double[-0.2, 1.2], Gen.Double[0.6, 0.99]).Sample((u, y, p) =>
        {
            var zone = DecisionRule.AcceptanceZone(Interval.Between(0, 1), u, p);
            var within = Conformance.Within(y, u, Interval.Between(0, 1)).Within;
            if (Math.Abs(within - p) > 1e-9)
                Assert.True(within >= p == (zone is { } z && z.Contains(y)), $"u {u:R}, y {y:R}, p {p:R}, within {within:R}, zone {zone}");
        }, iter: 20000);

    [Fact]
    public void Prove_BeyondWhichLimitIsNotKnown_ProvesNothing()
    {
        // Surely outside, but as likely below as above: neither side is proved, and neither verdict may be given.
        var p = Conformance.Within(0.5, 100, Interval.Between(0, 1));
        Assert.True(p.Below + p.Above > 0.99);
        Assert.Equal(Proof.Neither, DecisionRule.Prove(0.5, 100, Interval.Between(0, 1)));
    }

    [Fact]
    public void AcceptanceZone_NoUncertainty_IsTheInterval()
    {
        Assert.Equal(Interval.Between(0, 1), DecisionRule.AcceptanceZone(Interval.Between(0, 1), 0));
        Assert.Null(DecisionRule.AcceptanceZone(Interval.Between(1, 1), 0.1));
        Assert.Equal(Interval.AtLeast(1 + (0.1 * 1.6448536269514722)), DecisionRule.AcceptanceZone(Interval.AtLeast(1), 0.1));
    }
}
