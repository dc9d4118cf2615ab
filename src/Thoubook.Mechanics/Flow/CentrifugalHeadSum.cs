using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Flow;

/// <summary>The sum <c>centrifugal-head</c>.</summary>
internal static class CentrifugalHeadSum
{
    public static Sum Description { get; } = new(Answer)
    {
        Name = "centrifugal-head",
        Question = "What pressure does turning add to the oil in a drilled crankshaft, and what does it cost to get in?",
        Source = "Hydrostatics of a turning liquid",
        Inputs =
        [
            new("speed", "ω", "speed of the shaft", Measure.RotationalSpeed) { Allowed = Allowed.Between(0, 5000) },
            new("from-radius", "r_1", "radius where the oil comes in, from the axis of turning", Measure.Length) { Allowed = Allowed.Between(0, 5) },
            new("to-radius", "r_2", "radius where it goes out", Measure.Length) { Allowed = Allowed.Between(0, 5) },
            FlowInputs.Density,
            new("feed", "p", "pressure where it comes in", Measure.Pressure) { Allowed = Allowed.Between(0, 1e8), IsOptional = true },
        ],
        Outputs =
        [
            new("gain", "Δp", "pressure gained from the one to the other", Measure.Pressure),
            new("to-axis", "p_0", "pressure that it costs to reach the axis", Measure.Pressure),
            new("left", "p_2", "pressure where it goes out, without flow", Measure.Pressure),
        ],
        Examples = ["speed=2500rev/min from-radius=30mm to-radius=75mm feed=4bar"],
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var gain = CentrifugalHead.Of(inputs["speed"], inputs["from-radius"], inputs["to-radius"], inputs["density"], trace);
        var toAxis = trace.Line("p_0", "pressure that it costs to reach the axis", "ρ × ω^2 × r_1^2 / 2", -CentrifugalHead.Of(inputs["speed"], inputs["from-radius"], 0, inputs["density"]), Units.Pascal);
        if (inputs.Maybe("feed") is not { } feed)
            return gain < 0 ? "The turning holds the oil back." : "The turning helps the oil outwards.";
        trace.Given("p", "pressure where it comes in", feed, Units.Pascal);
        trace.Line("p_2", "pressure where it goes out, without flow", "p + Δp", feed + gain, Units.Pascal);
        return feed > toAxis
            ? "The feed pressure carries the oil to the axis."
            : "The feed pressure does not carry the oil to the axis: a drilling that passes there runs empty.";
    }
}
