using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Oil;

/// <summary>The sum <c>oil-properties</c>.</summary>
internal static class OilPropertiesSum
{
    public static Sum Description { get; } = new(Answer)
    {
        Name = "oil-properties",
        Question = "What are the density, the heat capacity and the conductivity of a mineral oil at a temperature?",
        Source = "ASTM D1250, lubricating oils; Cragoe, NBS Miscellaneous Publication 97, 1929 (from memory)",
        Inputs =
        [
            new("temperature", "T", "temperature of the oil", Measure.Temperature) { Allowed = Allowed.Between(ViscosityLine.LeastTemperature, 500) },
            new("density", "ρ_15", "density at 15 °C", Measure.Density) { Allowed = Allowed.Between(OilProperties.LeastDensity, OilProperties.GreatestDensity), Default = OilProperties.UsualDensity },
        ],
        Outputs =
        [
            new("density", "ρ", "density at the temperature", Measure.Density),
            new("heat-capacity", "c", "heat capacity, within about 4 %", Measure.HeatCapacity),
            new("conductivity", "k", "thermal conductivity, within about 10 %", Measure.Conductivity),
        ],
        Examples = ["temperature=80°C density=890kg/m3"],
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var (temperature, density) = (inputs["temperature"], inputs["density"]);
        trace.Given("T", "temperature of the oil", temperature, Units.Kelvin);
        OilProperties.Density(density, temperature, trace);
        OilProperties.Heat(density, temperature, trace);
        if (temperature is < 253 or > 423)
            trace.Caution("The formulas hold for mineral oils from about −20 to 150 °C; here they are stretched.");
        return "These are the figures of a mineral oil of that density.";
    }
}
