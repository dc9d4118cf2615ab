using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Valves;

/// <summary>The sum <c>seat-leak</c>.</summary>
internal static class SeatLeakSum
{
    public static Sum Description { get; } = new(Answer)
    {
        Name = "seat-leak",
        Question = "What gap would leak as a shut valve does, and what does it lose with other oil and pressure?",
        Source = "Plane slot: B. S. Massey and J. Ward-Smith, Mechanics of Fluids, example 6.3",
        Inputs =
        [
            new("flow", "Q", "caught from the shut valve", Measure.Flow) { Allowed = Allowed.Between(1e-12, 0.1) },
            new("pressure", "Δp", "across it while catching", Measure.Pressure) { Allowed = Allowed.Between(1, 1e8) },
            new("viscosity", "μ", "of what was passed through it", Measure.DynamicViscosity) { Allowed = Allowed.Between(1e-4, 100) },
            new("seat", "d", "contact diameter of the seat", Measure.Length) { Allowed = Allowed.Between(1e-3, 0.1) },
            new("width", "w", "width of the contact", Measure.Length) { Allowed = Allowed.Between(1e-5, 0.02), Default = 1e-3 },
            new("hot-viscosity", "μ_2", "of the oil in question", Measure.DynamicViscosity) { Allowed = Allowed.Between(1e-4, 100), IsOptional = true },
            new("hot-pressure", "Δp_2", "pressure in question; as caught where left out", Measure.Pressure) { Allowed = Allowed.Between(1, 1e8), IsOptional = true },
        ],
        Outputs =
        [
            new("gap", "h", "gap all round the seat that leaks as much", Measure.Length),
            new("leak", "C", "leak: times pressure over viscosity it is a flow", Measure.Volume),
            new("hot-flow", "Q_2", "what it loses in question", Measure.Flow),
        ],
        Examples = ["flow=\"0.03 L/min\" pressure=30psi viscosity=\"80 cP\" seat=14mm hot-viscosity=\"12 cP\""],
        Together = inputs => inputs.IsGiven("hot-pressure") && !inputs.IsGiven("hot-viscosity")
            ? [new("hot-viscosity", "a pressure in question without its oil", "the viscosity in question too", "Give hot-viscosity, or leave hot-pressure out.")]
            : [],
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var (flow, drop, viscosity, seat, width) = (inputs["flow"], inputs["pressure"], inputs["viscosity"], inputs["seat"], inputs["width"]);
        trace.Given("Q", "caught from the shut valve", flow, Units.CubicMetrePerSecond);
        trace.Given("Δp", "across it while catching", drop, Units.Pascal);
        trace.Given("μ", "viscosity of what was passed", viscosity, Units.PascalSecond);
        trace.Given("d", "contact diameter of the seat", seat, Units.Metre);
        trace.Given("w", "width of the contact", width, Units.Metre);
        var leak = trace.Line("C", "leak: times pressure over viscosity it is a flow", "Q × μ/Δp", flow * viscosity / drop, Units.CubicMetre);
        var gap = trace.Line("h", "gap all round the seat that leaks as much", "(12 × w × C/(π × d))^(1/3)", ValveSetting.SeatGap(flow, drop, viscosity, seat, width), Units.Metre);
        trace.Line("h_w", "gap over the width of the contact; laminar where it is small", "h/w", gap / width, Units.None);
        if (inputs.Maybe("hot-viscosity") is { } hot)
        {
            var pressure = inputs.Maybe("hot-pressure") ?? drop;
            trace.Given("μ_2", "viscosity in question", hot, Units.PascalSecond);
            trace.Given("Δp_2", "pressure in question", pressure, Units.Pascal);
            trace.Line("Q_2", "what it loses in question", "C × Δp_2/μ_2", leak * pressure / hot, Units.CubicMetrePerSecond);
        }

        if (gap > 0.2 * width)
            trace.Caution("A gap this wide beside the contact is no slot: the valve stands open, held by dirt or bent.");
        return "The leak costs pressure while the valve is shut, hardly any once it lifts.";
    }
}
