using CsCheck;
using Thoubook.Mechanics.Flow;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Tests.Flow;

public sealed class StrainerTests
{
    private const double Area = 40e-4;
    private const double Flow = 20 / 60000.0;

    [Fact]
    [FromMemory("Armour and Cannon, AIChE J. 14 (1968) 415; gauze of 4000 wires of 0.1 mm in a metre, 20 L/min through 40 cm², 850 kg/m³")]
    public void Loss_AgreesWithTheWorkedGauze()
    {
        var writer = new WorkingWriter("-");
        var thin = Strainer.Loss(Area, 0.25e-3, 0.1e-3, 0, Flow, 0.017, 850, writer.Trace);
        Outside.Check("open share of the gauze", 0.66164, Told("e"), 6e-6);
        Outside.Check("surface of wire in a volume [1/m]", 13534, Told("a"), 0.6);
        Outside.Check("loss of the gauze at 17 mPa s [kPa]", 1.03, 1e-3 * thin, 0.006);
        Outside.Check("loss of the gauze at 1000 mPa s [kPa]", 60, 1e-3 * Strainer.Loss(Area, 0.25e-3, 0.1e-3, 0, Flow, 1, 850), 1);

        double Told(string symbol) => writer.Working.Lines.Single(line => line.Symbol == symbol).Values[0];
    }

    [Fact]
    [Computed("creeping flow through each hole (Sampson) and 0.1 mm of pipe flow, an estimate within a fifth")]
    public void Loss_AgreesWithAnEstimateByHoles() =>
        Outside.Check("loss of the gauze at 17 mPa s by its holes [kPa]", 0.9, 1e-3 * Strainer.Loss(Area, 0.25e-3, 0.1e-3, 0, Flow, 0.017, 850), 0.18);

    [Fact]
    [CommonPractice("a strainer blocked by half loses twice as much in thick oil")]
    public void BlockedByHalf_LosesTwice() =>
        Outside.Check("loss blocked by half over loss clean", 2, Strainer.Loss(Area, 0.25e-3, 0.1e-3, 0.5, Flow, 1, 850) / Strainer.Loss(Area, 0.25e-3, 0.1e-3, 0, Flow, 1, 850), 0.01);

    [Fact]
    public void Resistance_GivesTheSameLoss() =>
        Gen.Select(Gen.Double[1e-6, 1e-3], Gen.Double[0.005, 1], Gen.Double[0, 0.9]).Sample((flow, viscosity, clogged) =>
        {
            var (linear, square) = Strainer.Resistance(Area, 0.3e-3, 0.12e-3, clogged);
            Assert.Equal(Strainer.Loss(Area, 0.3e-3, 0.12e-3, clogged, flow, viscosity, 870), (linear * viscosity * flow) + (square * 870 * flow * flow), 1e-6);
        });

    [Theory]
    [InlineData(0, 1e-3, 1e-4, 0)]
    [InlineData(1e-3, 0, 1e-4, 0)]
    [InlineData(1e-3, 1e-3, 0.95e-3, 0)]
    [InlineData(1e-3, 1e-3, 0, 0)]
    [InlineData(1e-3, 1e-3, 1e-4, 1)]
    [InlineData(1e-3, 1e-3, 1e-4, -0.1)]
    public void Unphysical_IsRefused(double area, double pitch, double wire, double clogged) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Strainer.Resistance(area, pitch, wire, clogged));
}
