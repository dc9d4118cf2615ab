using CsCheck;
using Thoubook.Mechanics.Flow;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Tests.Flow;

public sealed class PipeLossTests
{
    [Theory]
    [InlineData(20, 12, 1.5, 20, 1768.4, 16.702)]
    [InlineData(20, 12, 1.5, 200, 176.84, 167.01)]
    [InlineData(40, 10, 1.0, 10, 8488.3, 100.11)]
    [Computed("Darcy and Weisbach with the friction of the library fluids, density 850 kg/m³, roughness 1.5 µm")]
    public void Of_AgreesWithTheWorkedFigures(double litresPerMinute, double boreMm, double length, double centistokes, double reynolds, double kilopascals)
    {
        var writer = new WorkingWriter("-");
        var loss = PipeLoss.Of(new RoundPipe(1e-3 * boreMm, length, 1.5e-6, 0, 1), litresPerMinute / 60000, 850e-6 * centistokes, 850, writer.Trace);
        var what = $"{litresPerMinute} L/min, bore {boreMm} mm, {centistokes} mm²/s";
        Outside.CheckRelative($"loss of a pipe, {what} [kPa]", kilopascals, 1e-3 * loss, 5e-5);
        Outside.CheckRelative($"Reynolds number of a pipe, {what}", reynolds, writer.Working.Lines.Single(line => line.Symbol == "Re").Values[0], 5e-5);
    }

    [Theory]
    [InlineData(0.5, 1)]
    [InlineData(3, 7)]
    public void Losses_AddTheirVelocityHeads(double losses, double litresPerMinute)
    {
        var (flow, pipe) = (litresPerMinute / 60000, new RoundPipe(0.008, 0.5, 1e-6, 0, 1));
        var velocity = flow / (Math.PI * 0.004 * 0.004);
        Assert.Equal(losses * 850 * velocity * velocity / 2, PipeLoss.Of(pipe with { Losses = losses }, flow, 0.01, 850) - PipeLoss.Of(pipe, flow, 0.01, 850), 1e-6);
    }

    [Fact]
    public void Laminar_IsHagenPoiseuille() =>
        Gen.Select(Gen.Double[1e-3, 0.02], Gen.Double[0.1, 3], Gen.Double[1, 500], Gen.Double[0.02, 1]).Sample((bore, length, reynolds, viscosity) =>
        {
            var flow = reynolds * Math.PI * bore * viscosity / (4 * 850);
            Assert.Equal(1, PipeLoss.Of(new RoundPipe(bore, length, 0, 0, 1), flow, viscosity, 850) / (128 * viscosity * length * flow / (Math.PI * Math.Pow(bore, 4))), 1e-6);
        });

    [Fact]
    public void SideBySide_EachCarriesItsShare() =>
        Gen.Select(Gen.Double[1e-5, 1e-3], Gen.Int[2, 20]).Sample((flow, number) =>
        {
            var pipe = new RoundPipe(0.01, 1, 2e-6, 1.5, 1);
            Assert.Equal(PipeLoss.Of(pipe, flow, 0.01, 850), PipeLoss.Of(pipe with { Number = number }, number * flow, 0.01, 850), 1e-6);
        });

    [Fact]
    public void Longer_CostsInProportion() =>
        Assert.Equal(2 * PipeLoss.Of(new RoundPipe(0.01, 1, 2e-6, 0, 1), 1e-3, 0.005, 850), PipeLoss.Of(new RoundPipe(0.01, 2, 2e-6, 0, 1), 1e-3, 0.005, 850), 1e-6);

    [Theory]
    [InlineData(0, 1, 0, 0, 1)]
    [InlineData(-0.01, 1, 0, 0, 1)]
    [InlineData(0.01, 0, 0, 0, 1)]
    [InlineData(0.01, 1, 0.003, 0, 1)]
    [InlineData(0.01, 1, -1e-6, 0, 1)]
    [InlineData(0.01, 1, 0, -1, 1)]
    [InlineData(0.01, 1, 0, 0, 0)]
    public void Unphysical_IsRefused(double bore, double length, double roughness, double losses, double number) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PipeLoss.Of(new RoundPipe(bore, length, roughness, losses, number), 1e-4, 0.01, 850));
}
