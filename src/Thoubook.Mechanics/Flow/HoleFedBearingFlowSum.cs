using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Flow;

/// <summary>The sum <c>hole-fed-bearing-flow</c>.</summary>
internal static class HoleFedBearingFlowSum
{
    public static Sum Description { get; } = new(Answer)
    {
        Name = "hole-fed-bearing-flow",
        Question = "How much oil does a plain bearing pass that is fed through one hole?",
        Source = "Theory of laminar films: a line source between two open edges",
        Inputs =
        [
            FlowInputs.Clearance,
            FlowInputs.Size("width", "B", "width of the bearing", 1),
            FlowInputs.Size("hole", "d", "diameter of the hole at the journal", 0.2),
            new("hole-angle", "θ", "angle from the widest gap to the hole", Measure.Angle) { Allowed = Allowed.Between(-Math.PI, Math.PI), Default = 0 },
            FlowInputs.Pressure with { Name = "feed pressure" },
            FlowInputs.FilmViscosity,
            FlowInputs.Eccentricity with { Default = 0.6 },
        ],
        Outputs = [FlowInputs.FlowOut, FlowInputs.Conductance, new("gap", "h", "gap at the hole", Measure.Length)],
        Examples = ["clearance=0.06mm width=22mm hole=5mm pressure=4bar viscosity=12cP"],
        Together = inputs => inputs["hole"] > Gaps.GreatestHole * inputs["width"]
            ? [new("hole", "a hole wider than 0.8 of the bearing", "at most 0.8 of the width", "Check both figures and their units.")]
            : [],
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var conductance = Gaps.HoleFedBearing(inputs["clearance"], inputs["width"], inputs["hole"], inputs["hole-angle"], inputs["eccentricity"], trace);
        Gaps.Flow(conductance, inputs["pressure"], inputs["viscosity"], Math.PI * inputs["hole"], trace);
        if (inputs["hole"] > 0.3 * inputs["width"])
            trace.Caution("The hole is more than 0.3 of the width; the formula was checked up to there.");
        return "So much passes by feed pressure alone; it goes with the cube of the gap at the hole, and what the turning journal drags out comes on top.";
    }
}
