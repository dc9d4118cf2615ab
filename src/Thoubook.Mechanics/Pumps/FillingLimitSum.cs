using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Pumps;

/// <summary>The sum <c>filling-limit</c>.</summary>
internal static class FillingLimitSum
{
    private const double Gravity = StandardValues.Gravity;

    public static Sum Description { get; } = new(Answer)
    {
        Name = "filling-limit",
        Question = "Up to what speed do the tooth spaces of a gear pump fill from its suction side?",
        Source = "Forced vortex in a tooth space (from memory); least pressure of aerated oil 0.3 to 0.5 bar absolute (common practice)",
        Inputs =
        [
            new("tip-diameter", "d_a", "diameter over the tips", Measure.Length) { Allowed = Allowed.Between(5e-3, 0.5) },
            new("root-diameter", "d_f", "diameter at the roots of the teeth", Measure.Length) { Allowed = Allowed.Between(2e-3, 0.5) },
            new("density", "ρ", "density of the oil", Measure.Density) { Allowed = Allowed.Between(500, 1_500), Default = 870 },
            new("atmosphere", "p_a", "pressure of the air on the oil, absolute", Measure.Pressure) { Allowed = Allowed.Between(3e4, 1.2e5), Default = StandardValues.Atmosphere },
            new("head", "H", "height of the oil above the pump; below 0 where the pump lifts it", Measure.Length) { Allowed = Allowed.Between(-5, 5), Default = 0 },
            new("loss", "p_l", "loss in suction pipe and strainer", Measure.Pressure) { Allowed = Allowed.Between(0, 1e5), Default = 0 },
            new("least-pressure", "p_m", "absolute pressure that the oil bears before it lets go of its air", Measure.Pressure) { Allowed = Allowed.Between(0, 1e5), Default = 40_000 },
            new("speed", "ω", "speed of the pump", Measure.RotationalSpeed) { Allowed = Allowed.Between(0, 5_000), IsOptional = true },
        ],
        Outputs =
        [
            new("inlet-pressure", "p_i", "pressure at the pump's inlet, absolute", Measure.Pressure),
            new("limit-speed", "ω_f", "speed up to which the spaces fill", Measure.RotationalSpeed),
            new("tip-speed", "u", "speed of the tips there", Measure.Velocity),
            new("fills-at", "p_f", "inlet pressure from which the spaces fill at the speed given, absolute", Measure.Pressure),
        ],
        Examples = ["tip-diameter=46.736mm root-diameter=35.1538mm atmosphere=85kPa least-pressure=40kPa speed=2000rev/min"],
        Together = inputs => inputs["root-diameter"] >= inputs["tip-diameter"]
            ? [new("root-diameter", "roots not within the tips", "root-diameter below tip-diameter", "Check the two diameters.")]
            : [],
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var (tip, root, density, least) = (inputs["tip-diameter"] / 2, inputs["root-diameter"] / 2, inputs["density"], inputs["least-pressure"]);
        var (air, head, loss) = (inputs["atmosphere"], inputs["head"], inputs["loss"]);
        trace.Given("r_a", "tip radius", tip, Units.Metre);
        trace.Given("r_f", "radius at the roots", root, Units.Metre);
        trace.Given("ρ", "density of the oil", density, Units.KilogramPerCubicMetre);
        trace.Given("p_a", "pressure of the air, absolute", air, Units.Pascal);
        trace.Given("H", "height of the oil above the pump", head, Units.Metre);
        trace.Given("p_l", "loss in suction pipe and strainer", loss, Units.Pascal);
        trace.Given("p_m", "pressure that the oil bears, absolute", least, Units.Pascal);
        var inlet = trace.Line("p_i", "pressure at the pump's inlet, absolute", "p_a + ρ × 9.80665 × H − p_l", air + (density * Gravity * head) - loss, Units.Pascal);
        var factor = trace.Line("F", "half the square of the tip radius less that of the root", "(r_a^2 − r_f^2)/2", ((tip * tip) - (root * root)) / 2, Units.SquareMetre);
        var pump = new PumpCharacteristic(0, 0, 0, 0, 0, 0, 0, 0, factor);
        var limit = trace.Line("ω_f", "speed up to which the spaces fill", "sqrt(max(0, p_i − p_m)/(ρ × F))", pump.FillingSpeed(Math.Max(0, inlet), least, density), Units.RadianPerSecond);
        trace.Line("u", "speed of the tips there", "ω_f × r_a", limit * tip, Units.MetrePerSecond);
        if (inlet <= least)
            return "The oil lets go of its air before it reaches the pump: the spaces fill at no speed.";
        if (inputs.Maybe("speed") is not { } speed)
            return "Up to the speed below the spaces fill down to their roots.";
        trace.Given("ω", "speed of the pump", speed, Units.RadianPerSecond);
        trace.Line("p_f", "inlet pressure from which the spaces fill at this speed, absolute", "p_m + ρ × ω^2 × F", pump.FillsAt(least, density, speed), Units.Pascal);
        return speed <= limit ? "At this speed the spaces fill." : "At this speed the spaces do not fill to their roots: the pump delivers less and is noisy.";
    }
}
