using Thoubook.Mechanics.Metrology;
using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Tests.Numerics;

public sealed class GuardTests
{
    [Fact]
    public void Refusal_NamesWhatWasGiven_ItsValueUnitAndRange()
    {
        var diametralClearance = -0.001;
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => Guard.AboveZero(diametralClearance, "m"));
        Assert.StartsWith("diametralClearance: -0.001 m; allowed: above 0 m.", refused.Message, StringComparison.Ordinal);
        Assert.Equal("diametralClearance", refused.ParamName);
    }

    [Fact]
    public void EachGuard_RefusesExactlyWhatItSays()
    {
        Assert.Equal(0, Guard.ZeroOrMore(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Guard.ZeroOrMore(double.PositiveInfinity));
        Assert.Throws<ArgumentOutOfRangeException>(() => Guard.ZeroOrMore(-double.Epsilon));
        Assert.Throws<ArgumentOutOfRangeException>(() => Guard.AboveZero(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Guard.AboveZero(double.PositiveInfinity));
        Assert.Throws<ArgumentOutOfRangeException>(() => Guard.Finite(double.NaN));
        Assert.Equal(2, Guard.Within(2, 1, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Guard.Within(double.NaN, 1, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Guard.Within(2.1, 1, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Guard.Probability(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Guard.Probability(1));
        Assert.Equal(3, Guard.AtLeast(3, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => Guard.AtLeast(2, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => Guard.SameCount(2, 3));
    }

    [Fact]
    public void Unequal_Lists_AreNamed() =>
        Assert.Contains("number of independent uncertainties: 1", Assert.Throws<ArgumentOutOfRangeException>(() => Conformance.AllWithin([1, 2], [1], [1, 1], Interval.Unlimited)).Message, StringComparison.Ordinal);
}
