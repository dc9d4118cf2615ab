using Thoubook.Mechanics.Fits;

namespace Thoubook.Mechanics.Tests.Fits;

public sealed class NipTests
{
    [Theory]
    [InlineData(4, 1.3)]
    [InlineData(5, 1.6)]
    [InlineData(6, 1.9)]
    [CommonPractice("nip of half shells: a gap u at the released joint is a diametral interference of u/π")]
    public void Interference_AgreesWithPractice(double gapThou, double interferenceThou)
    {
        Outside.Check($"interference of {gapThou} thou of nip [thou]", interferenceThou, Nip.Interference(gapThou * 2.54e-5) / 2.54e-5, 0.05);
        Assert.Equal(gapThou, Nip.Gap(Nip.Interference(gapThou)), 1e-12);
    }

    [Fact]
    public void Interference_SlackIsRefused() => Assert.Throws<ArgumentOutOfRangeException>(() => Nip.Interference(-1e-5));
}
