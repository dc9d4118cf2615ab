using CsCheck;
using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Tests.Numerics;

public sealed class GaussLegendreTests
{
    [Fact]
    public void Integrate_PolynomialsUpToDegree39_AreExact() =>
        Gen.Select(Gen.Int[0, 39], Gen.Double[-1, 0], Gen.Double[0.1, 1]).Sample((degree, from, to) =>
            Assert.Equal((Math.Pow(to, degree + 1) - Math.Pow(from, degree + 1)) / (degree + 1), GaussLegendre.Integrate(x => Math.Pow(x, degree), from, to), 1e-14));

    [Fact]
    public void Integrate_DegreeForty_IsNot() =>
        Assert.NotEqual(2.0 / 41, GaussLegendre.Integrate(x => Math.Pow(x, 40), -1, 1), 1e-13);
}
