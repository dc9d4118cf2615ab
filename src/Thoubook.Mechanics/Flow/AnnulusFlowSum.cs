using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Flow;

/// <summary>The sum <c>annulus-flow</c>.</summary>
internal static class AnnulusFlowSum
{
    public static Sum Description { get; } = new(Answer)
    {
        Name = "annulus-flow",
        Question = "How much leaks along a shaft, a tappet or a valve guide?",
        Source = "Theory of laminar films",
        Inputs =
        [
            FlowInputs.Diameter,
            FlowInputs.Clearance,
            FlowInputs.Size("length", "L", "length along the shaft"),
            FlowInputs.Pressure,
            FlowInputs.FilmViscosity,
            FlowInputs.Eccentricity with { Default = 0 },
        ],
        Outputs = [FlowInputs.FlowOut, FlowInputs.Conductance],
        Examples = ["diameter=10mm clearance=0.04mm length=50mm pressure=3bar viscosity=12cP", "diameter=10mm clearance=0.04mm length=50mm pressure=3bar viscosity=12cP eccentricity=1"],
        Together = FlowInputs.ClearanceBelowDiameter,
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var conductance = Gaps.Annulus(inputs["diameter"], inputs["clearance"], inputs["length"], inputs["eccentricity"], trace);
        Gaps.Flow(conductance, inputs["pressure"], inputs["viscosity"], Math.PI * inputs["diameter"], trace);
        return "So much leaks through the gap; it goes with the cube of the clearance.";
    }
}
