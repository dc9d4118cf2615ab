using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Flow;

/// <summary>The sum <c>grooved-bearing-flow</c>.</summary>
internal static class GroovedBearingFlowSum
{
    private static readonly string[] Grooves = ["full", "half"];

    public static Sum Description { get; } = new(Answer)
    {
        Name = "grooved-bearing-flow",
        Question = "How much oil does a plain bearing with a groove round it pass?",
        Source = "Theory of laminar films",
        Inputs =
        [
            FlowInputs.Diameter with { Name = "diameter of the journal" },
            FlowInputs.Clearance,
            FlowInputs.Size("land", "l", "width of one land, from the groove to the edge", 1),
            new("lands", "n", "lands over which oil leaves: 2, or 1 beside a seal", Measure.Number) { Allowed = Allowed.Between(1, 2), Default = 2 },
            new("groove", "", "all round, or half round with its middle at the widest gap", Measure.Word) { Words = Grooves },
            FlowInputs.Pressure with { Name = "feed pressure" },
            FlowInputs.FilmViscosity,
            FlowInputs.Eccentricity with { Default = 0.6 },
        ],
        Outputs = [FlowInputs.FlowOut, FlowInputs.Conductance],
        Examples = ["diameter=60mm clearance=0.06mm land=11mm pressure=4bar viscosity=12cP eccentricity=0", "diameter=60mm clearance=2.5thou land=11mm pressure=60psi viscosity=12cP groove=half"],
        Together = FlowInputs.ClearanceBelowDiameter,
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var half = inputs.Word("groove") == "half";
        var conductance = Gaps.GroovedBearing(inputs["diameter"], inputs["clearance"], inputs["land"], inputs["lands"], inputs["eccentricity"], half, trace);
        Gaps.Flow(conductance, inputs["pressure"], inputs["viscosity"], Math.PI * inputs["diameter"], trace);
        if (inputs["clearance"] > 0.01 * inputs["diameter"])
            trace.Caution("The clearance is more than a hundredth of the journal: check the figure and its unit.");
        return "So much passes by feed pressure alone; it goes with the cube of the clearance, and what the turning journal drags out comes on top.";
    }
}
