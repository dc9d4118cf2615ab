using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Flow;

/// <summary>Inputs that the sums on flow have in common.</summary>
internal static class FlowInputs
{
    public static SumInput Pressure { get; } = new("pressure", "Δp", "pressure across it", Measure.Pressure) { Allowed = new(0, 1e9, Ends.Open) };

    public static SumInput Viscosity { get; } = new("viscosity", "μ", "dynamic viscosity of the oil at its temperature", Measure.DynamicViscosity) { Allowed = new(0, 1e4, Ends.Open) };

    public static SumInput FilmViscosity { get; } = Viscosity with { Name = "dynamic viscosity of the oil at the temperature of the film" };

    public static SumInput Density { get; } = new("density", "ρ", "density of the oil at its temperature", Measure.Density) { Allowed = Allowed.Between(500, 1500), Default = 850 };

    public static SumInput Flow { get; } = new("flow", "Q", "flow", Measure.Flow) { Allowed = new(0, 1, Ends.Open) };

    public static SumInput Diameter { get; } = new("diameter", "D", "diameter of the shaft", Measure.Length) { Allowed = new(0, 10, Ends.Open) };

    public static SumInput Clearance { get; } = new("clearance", "C", "clearance, diametral", Measure.Length) { Allowed = new(0, 0.01, Ends.Open) };

    public static SumInput Eccentricity { get; } = new("eccentricity", "ε", "eccentricity: 0 in the middle, 1 touching one side", Measure.Number) { Allowed = Allowed.Between(0, 1) };

    public static SumOutput FlowOut { get; } = new("flow", "Q", "flow", Measure.Flow);

    public static SumOutput Conductance { get; } = new("conductance", "G", "conductance: flow times viscosity over pressure", Measure.Volume);

    /// <summary>A length above 0 up to what an engine may have.</summary>
    public static SumInput Size(string key, string symbol, string name, double greatest = 10) => new(key, symbol, name, Measure.Length) { Allowed = new(0, greatest, Ends.Open) };

    public static IEnumerable<SumProblem> ClearanceBelowDiameter(SumInputs inputs) =>
        inputs["clearance"] < inputs["diameter"] ? [] : [new("clearance", "a clearance not less than the diameter", "less than the diameter", "Check both figures and their units.")];
}
