using CsCheck;
using Thoubook.Mechanics.Heat;
using Thoubook.Mechanics.Metrology;

namespace Thoubook.Mechanics.Tests.Metrology;

public sealed class ReferenceTemperatureTests
{
    [Fact]
    public void To20_AgreesWithTheWorkedCase()
    {
        var piston = new WorkedExample("U15");
        var part = new ExpansionCoefficient(piston.Input("alpha_part"), piston.Input("u_alpha_part"));
        var gauge = new ExpansionCoefficient(piston.Input("alpha_micrometer"), 0);
        var warm = Expansion.Reference + piston.Input("T_both") - 20;
        var reduced = ReferenceTemperature.To20(82.950, warm, warm, part, gauge, 0, piston.Input("u_T_difference"));
        piston.Check("size_at_20C", reduced.Size, 1e-7);
        piston.Check("correction", (reduced.Size - 82.950) * 1000);
        piston.Check("u from expansion coefficient", Math.Abs(reduced.FromPartExpansion) * 1000);
        piston.Check("u from part-to-micrometer temperature difference", Math.Abs(reduced.FromDifference) * 1000);
    }

    [Fact]
    public void To20_PartAndGaugeAlike_NeedsNoCorrection() =>
        Gen.Select(Gen.Double[0.001, 1], Gen.Double[250, 400], Gen.Double[5e-6, 3e-5]).Sample((read, t, alpha) =>
            Assert.Equal(read, ReferenceTemperature.To20(read, t, t, alpha, alpha), 1e-15));

    [Fact]
    public void To20_UndoesTheGrowth() =>
        Gen.Select(Gen.Double[0.001, 1], Gen.Double[253, 333], Gen.Double[5e-6, 3e-5]).Sample((size, t, alpha) =>
            Assert.Equal(size, ReferenceTemperature.To20(Expansion.SizeAt(size, alpha, t), t, Expansion.Reference, alpha, 11.5e-6), size * Math.Pow(alpha * 40, 2) * 1.01));

    [Fact]
    public void To20_ContributionsAreTheSlopes() =>
        Gen.Select(Gen.Double[273, 323], Gen.Double[273, 323]).Sample((partT, gaugeT) =>
        {
            var (part, gauge) = (new ExpansionCoefficient(21.5e-6, 1e-6), new ExpansionCoefficient(11.5e-6, 0.5e-6));
            var reduced = ReferenceTemperature.To20(0.08, partT, gaugeT, part, gauge, 0.5, 0.2);
            Assert.Equal(reduced.Size + reduced.FromPartExpansion, ReferenceTemperature.To20(0.08, partT, gaugeT, 22.5e-6, 11.5e-6), 1e-14);
            Assert.Equal(reduced.Size + reduced.FromGaugeExpansion, ReferenceTemperature.To20(0.08, partT, gaugeT, 21.5e-6, 12e-6), 1e-14);
            Assert.Equal(reduced.Size + reduced.FromTemperature, ReferenceTemperature.To20(0.08, partT + 0.5, gaugeT + 0.5, 21.5e-6, 11.5e-6), 1e-14);
            Assert.Equal(reduced.Size + reduced.FromDifference, ReferenceTemperature.To20(0.08, partT + 0.2, gaugeT, 21.5e-6, 11.5e-6), 1e-14);
        });

    [Fact]
    public void To20_CelsiusByMistake_IsRefusedBelowOneKelvin() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ReferenceTemperature.To20(0.08, 0.5, 293.15, 21.5e-6, 11.5e-6));
}
