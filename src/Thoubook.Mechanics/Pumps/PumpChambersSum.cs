using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Pumps;

/// <summary>The sum <c>pump-chambers</c>.</summary>
internal static class PumpChambersSum
{
    public static Sum Description { get; } = new(Answer)
    {
        Name = "pump-chambers",
        Question = "What does a gear pump carry for one turn, by the oil that its tooth spaces hold?",
        Source = "What the tooth spaces carry round less what the mesh carries back; proved against areas of the tooth form",
        Inputs =
        [
            new("teeth", "z", "teeth of the driver", Measure.Number) { IsWhole = true, Allowed = Allowed.Between(4, 200) },
            new("space", "V_1", "one tooth space of the driver, filled level with tips and faces", Measure.Volume) { Allowed = Allowed.AboveZero },
            new("driven-space", "V_2", "one tooth space of the driven gear; as the driver's where left out", Measure.Volume) { Allowed = Allowed.AboveZero, IsOptional = true },
            new("pocket", "V_t", "what is trapped in the mesh with two pairs of teeth equally far from the line of centres", Measure.Volume) { Allowed = Allowed.ZeroOrMore, Default = 0 },
        ],
        Outputs = [new("displacement", "V", "displacement for one turn of the driver", Measure.Volume)],
        Examples = ["teeth=11 space=\"1.35 cm3\" pocket=\"0.25 cm3\""],
        Together = inputs => inputs["pocket"] >= inputs["space"] + (inputs.Maybe("driven-space") ?? inputs["space"])
            ? [new("pocket", "a pocket larger than the spaces", "pocket below both spaces together", "Check the volumes.")]
            : [],
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var (teeth, first, pocket) = ((int)inputs["teeth"], inputs["space"], inputs["pocket"]);
        var second = inputs.Maybe("driven-space") ?? first;
        trace.Given("z", "teeth of the driver", teeth, Units.None);
        trace.Given("V_1", "one tooth space of the driver", first, Units.CubicMetre);
        trace.Given("V_2", "one tooth space of the driven gear", second, Units.CubicMetre);
        trace.Given("V_t", "trapped in the mesh", pocket, Units.CubicMetre);
        trace.Line("V_s", "one space of each gear", "V_1 + V_2", first + second, Units.CubicMetre);
        trace.Line("V_c", "carried by one tooth of the driver", "V_s − V_t", first + second - pocket, Units.CubicMetre);
        trace.Line("V", "displacement for one turn of the driver", "z × V_c", Displacement.FromSpaces(teeth, first, second, pocket), Units.CubicMetre);
        if (pocket == 0)
            trace.Caution("What the mesh carries back is not counted: the pump carries less than this.");
        return "One space of each gear goes round for each tooth of the driver, and the mesh carries the pocket back.";
    }
}
