using CsCheck;
using Thoubook.Mechanics.Springs;

namespace Thoubook.Mechanics.Tests.Springs;

public sealed class SpringTestTests
{
    [Fact]
    public void Of_FindsTheSpring_WhicheverPointComesFirst() =>
        Gen.Select(Gen.Double[100, 1e6], Gen.Double[0.02, 0.3], Gen.Double[0.3, 0.6], Gen.Double[0.65, 0.95]).Sample((rate, free, near, far) =>
        {
            var (first, second) = (near * free, far * free);
            foreach (var test in (SpringTest[])[SpringTest.Of(first, rate * (free - first), second, rate * (free - second)), SpringTest.Of(second, rate * (free - second), first, rate * (free - first))])
            {
                Assert.Equal(1, test.Rate / rate, 1e-9);
                Assert.Equal(1, test.Free / free, 1e-9);
            }
        });

    [Fact]
    public void ShimFor_BringsTheWantedLoad() =>
        Gen.Select(Gen.Double[1000, 1e5], Gen.Double[0.05, 0.1], Gen.Double[0.5, 0.9], Gen.Double[10, 1000]).Sample((rate, free, share, wanted) =>
        {
            var test = new SpringTest(rate, free);
            var shim = test.ShimFor(wanted, share * free);
            Assert.Equal(wanted, test.LoadAt((share * free) - shim), 1e-6);
        });

    [Fact]
    [CommonPractice("a shim raises the load of a spring by its thickness times the rate")]
    public void ShimFor_AgreesWithAHandSum() =>
        Outside.Check("shim for 20 N more on 16.1 N/mm [mm]", 20 / 16.1, 1e3 * new SpringTest(16.1e3, 0.062).ShimFor((16.1 * 18) + 20, 0.044), 1e-9);

    [Fact]
    public void LoadAt_OfALooseSpring_IsNil() => Assert.Equal(0, new SpringTest(1000, 0.05).LoadAt(0.06));

    [Theory]
    [InlineData(0.05, 100, 0.04, 90)]
    [InlineData(0.05, 100, 0.05, 150)]
    [InlineData(0.05, 100, 0.04, 100)]
    [InlineData(0, 100, 0.04, 150)]
    [InlineData(0.05, -1, 0.04, 150)]
    public void Of_NotASpring_IsRefused(double l1, double f1, double l2, double f2) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SpringTest.Of(l1, f1, l2, f2));
}
