using Thoubook.Mechanics.Oil;
using static Thoubook.Mechanics.Tests.Oil.ViscosityChecks;

namespace Thoubook.Mechanics.Tests.Oil;

public sealed class OilPropertiesTests
{
    [Fact]
    public void Density_AgreesWithTheTableBy15C()
    {
        foreach (var row in Of("d1250_15C", "density"))
            Check(row, OilProperties.Density(row.Number("in1_value"), 273.15 + row.Number("in2_value")));
    }

    /// <summary>The form by 60 °F takes a density 0.56 K hotter; the two forms agree within 0.01 %.</summary>
    [Fact]
    public void Density_AgreesWithTheFormBy60F()
    {
        foreach (var row in Of("d1250_60F", "density"))
        {
            var at60F = row.Number("in1_value");
            var at15C = at60F * (1 + (0.6278 / at60F * (15.5556 - 15)));
            Check(row, OilProperties.Density(at15C, 273.15 + ((row.Number("in2_value") - 32) / 1.8)), 1e-4);
        }
    }

    [Fact]
    public void HeatCapacity_AgreesWithTheFormula()
    {
        foreach (var row in Of("cragoe_cp", "c").Where(row => row["out_unit"] == "kJ/(kg K)"))
            Check(row, 1e-3 * OilProperties.HeatCapacity(999.1 * row.Number("in1_value"), 273.15 + row.Number("in2_value")));

        // 1 Btu/(lb °F) is 4.1868 kJ/(kg K); the two forms of the formula agree within 0.1 %.
        foreach (var row in Of("cragoe_cp", "c").Where(row => row["out_unit"] != "kJ/(kg K)"))
            Check(row, OilProperties.HeatCapacity(999.1 * row.Number("in1_value"), 273.15 + ((row.Number("in2_value") - 32) / 1.8)) / 4186.8, 1e-3);
    }

    [Fact]
    public void Conductivity_AgreesWithTheFormula()
    {
        foreach (var row in Of("cragoe_k", "k"))
            Check(row, OilProperties.Conductivity(999.1 * row.Number("in1_value"), 273.15 + row.Number("in2_value")));
    }

    [Fact]
    public void Heat_OfAnOilAsHeavyAsWaterAtNought_IsTheFirstTermOfEachFormula()
    {
        Assert.Equal(1685, OilProperties.HeatCapacity(999.1, 273.15), 1e-9);
        Assert.Equal(0.1172, OilProperties.Conductivity(999.1, 273.15), 1e-12);
    }

    [Fact]
    public void Density_At15_IsWhatWasGiven() => Assert.Equal(890, OilProperties.Density(890, 288.15), 1e-9);

    [Theory]
    [InlineData(700, 300)]
    [InlineData(1200, 300)]
    [InlineData(890, 100)]
    [InlineData(double.NaN, 300)]
    public void OutOfRange_IsRefused(double density, double temperature)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => OilProperties.Density(density, temperature));
        Assert.Throws<ArgumentOutOfRangeException>(() => OilProperties.HeatCapacity(density, temperature));
        Assert.Throws<ArgumentOutOfRangeException>(() => OilProperties.Conductivity(density, temperature));
    }
}
