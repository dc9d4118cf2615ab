using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Flow;

/// <summary>The sum <c>strainer-loss</c>.</summary>
internal static class StrainerLossSum
{
    /// <summary>[Pa] what a suction strainer can cost and leave the pump something.</summary>
    private const double TooMuchForSuction = 50_000;

    public static Sum Description { get; } = new(Answer)
    {
        Name = "strainer-loss",
        Question = "How much pressure does wire gauze cost, clean or partly blocked?",
        Source = "Armour and Cannon, AIChE J. 14 (1968) 415 (from memory)",
        Inputs =
        [
            new("area", "A", "area of the gauze", Measure.Area) { Allowed = new(0, 10, Ends.Open) },
            FlowInputs.Size("pitch", "p", "from wire to wire, middle to middle", 0.02),
            FlowInputs.Size("wire", "d", "diameter of the wire", 0.01),
            new("clogged", "k", "share of the area that is blocked", Measure.Number) { Allowed = Allowed.Between(0, 0.99), Default = 0 },
            FlowInputs.Flow,
            FlowInputs.Viscosity,
            FlowInputs.Density,
        ],
        Outputs =
        [
            new("loss", "Δp", "loss of pressure", Measure.Pressure),
            new("by-viscosity", "Δp_μ", "part by viscosity", Measure.Pressure),
            new("velocity", "v", "velocity towards the open gauze", Measure.Velocity),
        ],
        Examples = ["area=40cm2 pitch=0.25mm wire=0.1mm flow=20L/min viscosity=17cP", "area=40cm2 pitch=0.25mm wire=0.1mm flow=20L/min viscosity=1000cP clogged=0.5"],
        Together = inputs => inputs["wire"] > 0.9 * inputs["pitch"]
            ? [new("wire", "a wire wider than 0.9 of the pitch", "at most 0.9 of the pitch", "Check both figures: the pitch is from the middle of one wire to the middle of the next.")]
            : [],
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var loss = Strainer.Loss(inputs["area"], inputs["pitch"], inputs["wire"], inputs["clogged"], inputs["flow"], inputs["viscosity"], inputs["density"], trace);
        return loss > TooMuchForSuction
            ? "In front of a pump this is too much: the oil cannot follow."
            : "The loss goes with the viscosity in thick oil, and grows as the gauze blocks.";
    }
}
