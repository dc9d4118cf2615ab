using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Flow;

/// <summary>The sum <c>slot-flow</c>.</summary>
internal static class SlotFlowSum
{
    public static Sum Description { get; } = new(Answer)
    {
        Name = "slot-flow",
        Question = "How much leaks through a flat gap?",
        Source = "Theory of laminar films",
        Inputs =
        [
            FlowInputs.Size("width", "w", "width across the flow"),
            FlowInputs.Size("gap", "h", "gap from wall to wall", 0.01),
            FlowInputs.Size("length", "L", "length along the flow"),
            FlowInputs.Pressure,
            FlowInputs.FilmViscosity,
        ],
        Outputs = [FlowInputs.FlowOut, FlowInputs.Conductance, new("velocity", "v", "mean velocity in the gap", Measure.Velocity)],
        Examples = ["width=20mm gap=0.05mm length=5mm pressure=4bar viscosity=12cP"],
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var conductance = Gaps.Slot(inputs["width"], inputs["gap"], inputs["length"], trace);
        var flow = Gaps.Flow(conductance, inputs["pressure"], inputs["viscosity"], inputs["width"], trace);
        trace.Line("v", "mean velocity in the gap", "Q / (w × h)", flow / (inputs["width"] * inputs["gap"]), Units.MetrePerSecond);
        if (inputs["gap"] > 0.2 * Math.Min(inputs["width"], inputs["length"]))
            trace.Caution("The gap is not small against its width and length; less will pass than this.");
        return "So much leaks through the gap; it goes with the cube of the gap.";
    }
}
