using CsCheck;
using Thoubook.Mechanics.Flow;

namespace Thoubook.Mechanics.Tests.Flow;

public sealed class JetFlowTests
{
    [Fact]
    [FromMemory("Lichtarowicz, Duggins and Markland, J. Mech. Eng. Sci. 7 (1965) 210; worked jet of 1.5 by 6 mm, 4 bar, 12 mPa s, 850 kg/m³")]
    public void LongOrifice_AgreesWithTheWorkedJet()
    {
        var discharge = JetFlow.LongDischarge(1.5e-3, 6e-3, 4e5, 0.012, 850);
        Outside.Check("discharge coefficient of the worked jet", 0.76290, discharge, 6e-6);
        Outside.Check("flow of the worked jet [L/min]", 2.4816, 60000 * JetFlow.Of(1.5e-3, discharge, 4e5, 850), 6e-5);
    }

    [Theory]
    [InlineData(2, 10, 0.0817)]
    [InlineData(2, 100, 0.4284)]
    [InlineData(2, 1000, 0.7446)]
    [InlineData(2, 20000, 0.8088)]
    [InlineData(4, 300, 0.5191)]
    [InlineData(4, 10000, 0.7906)]
    [InlineData(10, 1000, 0.5526)]
    [InlineData(10, 20000, 0.7392)]
    [FromMemory("Lichtarowicz, Duggins and Markland, J. Mech. Eng. Sci. 7 (1965) 210, evaluated")]
    public void LongOrifice_AgreesWithTheTable(double ratio, double reynolds, double expected)
    {
        // A pressure that gives this Reynolds number with the velocity of an ideal jet.
        var (bore, viscosity, density) = (2e-3, 0.01, 850.0);
        var pressure = Math.Pow(reynolds * viscosity / (density * bore), 2) * density / 2;
        var got = JetFlow.LongDischarge(bore, ratio * bore, pressure, viscosity, density);
        var pipe = reynolds / (64 * ratio);
        Outside.Check($"discharge coefficient, L/d {ratio}, Re {reynolds}", Math.Min(expected, pipe), got, 5.1e-5);
    }

    [Theory]
    [InlineData(4, 10)]
    [InlineData(10, 30)]
    public void LongOrifice_NeverPassesMoreThanFrictionAloneWould(double ratio, double reynolds)
    {
        var pressure = Math.Pow(reynolds * 0.01 / (850 * 2e-3), 2) * 850 / 2;
        var bore = 2e-3;
        var pipe = Math.PI * Math.Pow(bore, 4) * pressure / (128 * 0.01 * ratio * bore);
        Assert.True(JetFlow.Of(bore, JetFlow.LongDischarge(bore, ratio * bore, pressure, 0.01, 850), pressure, 850) <= pipe * (1 + 1e-9));
    }

    [Fact]
    [Published("orifice equation with 0.62 for a sharp edge")]
    public void Of_AgreesWithAHandSum() =>
        Outside.Check("flow of a sharp edge of 2 mm at 3 bar, 870 kg/m³ [L/min]", 0.62 * Math.PI * 1e-6 * Math.Sqrt(2 * 3e5 / 870) * 60000, 60000 * JetFlow.Of(2e-3, JetFlow.SharpDischarge, 3e5, 870), 1e-9);

    [Fact]
    public void FourTimesThePressure_DoublesTheFlow() =>
        Gen.Select(Gen.Double[1e-4, 0.02], Gen.Double[1, 1e7]).Sample((bore, pressure) =>
            Assert.Equal(2, JetFlow.Of(bore, 0.7, 4 * pressure, 850) / JetFlow.Of(bore, 0.7, pressure, 850), 1e-12));

    [Theory]
    [InlineData(0, 0.6, 1e5, 850)]
    [InlineData(1e-3, 0, 1e5, 850)]
    [InlineData(1e-3, 1.1, 1e5, 850)]
    [InlineData(1e-3, 0.6, -1, 850)]
    [InlineData(1e-3, 0.6, 1e5, 0)]
    public void Unphysical_IsRefused(double bore, double discharge, double pressure, double density) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => JetFlow.Of(bore, discharge, pressure, density));

    [Theory]
    [InlineData(1.9e-3, 1e5)]
    [InlineData(10.1e-3, 1e5)]
    [InlineData(4e-3, 0)]
    public void LongOrifice_OutOfRange_IsRefused(double length, double pressure) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => JetFlow.LongDischarge(1e-3, length, pressure, 0.01, 850));
}
