using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Flow;

/// <summary>The sum <c>orifice-flow</c>.</summary>
internal static class OrificeFlowSum
{
    public static Sum Description { get; } = new(Answer)
    {
        Name = "orifice-flow",
        Question = "How much passes through a jet or a short drilling?",
        Source = "Orifice equation; Lichtarowicz, Duggins and Markland, J. Mech. Eng. Sci. 7 (1965) 210 (from memory), for a long one",
        Inputs =
        [
            FlowInputs.Size("bore", "d", "diameter of the hole", 0.1),
            FlowInputs.Pressure,
            FlowInputs.Density,
            new("discharge", "Cd", "discharge coefficient: sharp edge 0.62, short tube 0.8", Measure.Number) { Allowed = Allowed.Between(0.01, 1), Default = JetFlow.SharpDischarge },
            FlowInputs.Size("length", "L_h", "length of the hole, 2 to 10 bores; with the viscosity it gives the coefficient", 1) with { IsOptional = true },
            FlowInputs.Viscosity with { IsOptional = true },
        ],
        Outputs =
        [
            FlowInputs.FlowOut,
            new("area", "A", "area of the hole", Measure.Area),
            new("discharge", "Cd", "discharge coefficient", Measure.Number),
            new("reynolds", "R", "Reynolds number of an ideal jet", Measure.Number),
        ],
        Examples = ["bore=1.5mm pressure=4bar", "bore=1.5mm length=6mm pressure=4bar viscosity=12cP"],
        Together = Check,
    };

    private static IEnumerable<SumProblem> Check(SumInputs inputs)
    {
        if (inputs.IsGiven("length") != inputs.IsGiven("viscosity"))
            yield return new(inputs.IsGiven("length") ? "viscosity" : "length", "length or viscosity without the other", "both or neither", "Give both for a long hole, neither for a sharp edge.");
        if (inputs.IsGiven("length") && inputs.IsGiven("discharge"))
            yield return new("discharge", "a coefficient and a length that gives one", "one of the two", "Leave one out.");
        if (inputs.Maybe("length") / inputs["bore"] is < 2 or > 10)
            yield return new("length", "a length outside 2 to 10 bores", "2 to 10 bores", "For a shorter hole leave the length out; for a longer one use pipe-loss.");
    }

    private static string Answer(SumInputs inputs, Written trace)
    {
        var discharge = inputs["discharge"];
        if (inputs.Maybe("length") is { } length)
        {
            discharge = JetFlow.LongDischarge(inputs["bore"], length, inputs["pressure"], inputs["viscosity"], inputs["density"], trace);
            if (JetFlow.IdealReynolds(inputs["bore"], inputs["pressure"], inputs["viscosity"], inputs["density"]) is < 10 or > 20_000)
                trace.Caution("The coefficient was measured for Reynolds numbers from 10 to 20,000; here it is stretched.");
        }

        JetFlow.Of(inputs["bore"], discharge, inputs["pressure"], inputs["density"], trace);
        return inputs.IsGiven("length") ? "So much passes through a hole of that length." : "So much passes through a hole with that coefficient.";
    }
}
