using System.Globalization;
using Thoubook.Mechanics.Circuits;
using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Pumps;
using Thoubook.Record;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

/// <summary>What keeps a circuit from being solved, each with the entry of the record that it is about.</summary>
internal static class CircuitFaults
{
    /// <summary>[-] A hole so wide for its bearing is no hole any more, and its flow no longer that of one.</summary>
    private const double WidestHole = 0.75;

    /// <summary>What the sizes of one element cannot be together; null where they can.</summary>
    public static Problem? Of(ElementDefinition element, ElementSizes sizes) => element.Kind switch
    {
        ElementKind.GearPump when ElementLaws.GearSizes(sizes).Fault is not GearPumpFault.None and var fault => At(element, Key(fault), new("circuit-gears", "", Words.Word(fault).Replace('-', ' '), Allowed(fault), "Measure them again.")),
        ElementKind.HoleFedBearing when sizes["hole"] > WidestHole * sizes["width"] =>
            At(element, "hole", new("circuit-hole", "", "a hole wider than three quarters of the bearing", "A hole that leaves oil-tight metal on both sides.", "Correct hole or width, or take it as a grooved bearing.")),
        _ => null,
    };

    /// <summary>A fault of the whole, at the element that it is about, else at the node.</summary>
    public static Problem Of(CircuitFault fault, OilCircuit circuit)
    {
        var what = new Problem($"circuit-{Words.Word(fault.Kind)}", "", "", fault.Words, "Correct the circuit.");
        foreach (var name in fault.Elements)
        {
            if (circuit.Elements.FirstOrDefault(e => e.Name.Text == name || ElementLaws.ByPassOf(e.Name.Text) == name) is { } element)
                return At(element, "", what);
        }

        foreach (var name in fault.Nodes)
        {
            if (circuit.Nodes.Any(n => n.Name.Text == name))
                return new CircuitProblem(CircuitSection.Nodes, name, "", what).Placed;
            if (circuit.Elements.FirstOrDefault(e => !e.Blanked && e.NodesNamed.Any(n => n.Text == name)) is { } meets)
                return At(meets, meets.From.Text == name ? "from" : meets.To.Text == name ? "to" : "vent", what);
        }

        return new CircuitProblem(CircuitSection.Nodes, "", "", what).Placed;
    }

    public static Problem Of(SolveReport report) =>
        new("circuit-not-solved", "circuit", string.Create(CultureInfo.InvariantCulture, $"after {report.Iterations} steps {report.Residual:G2} of the flow still unbalanced"), report.Hint, "Or leave an element out to find which it is.");

    public static Problem At(ElementDefinition element, string key, Problem what) => new CircuitProblem(CircuitSection.Elements, element.Name.Text, key, what).Placed;

    /// <summary>The key of a gear pump that a fault is about first.</summary>
    private static string Key(GearPumpFault fault) => fault switch
    {
        GearPumpFault.NoEndFloat => "end-float",
        GearPumpFault.FloatShare => "float-share",
        GearPumpFault.PressureAngle => "pressure-angle",
        GearPumpFault.TipsApart or GearPumpFault.TipsTooDeep or GearPumpFault.TipInsideBase => "tip-diameter",
        GearPumpFault.BaseBeyondCentres => "centre-distance",
        GearPumpFault.HubOrRoot => "hub-diameter",
        GearPumpFault.BushTooSlack => "bush-clearance",
        _ => "teeth",
    };

    private static string Allowed(GearPumpFault fault) => fault switch
    {
        GearPumpFault.NoEndFloat => "An end float of nil or more.",
        GearPumpFault.TipsApart => "Gears that mesh: the diameter over the teeth is above the distance of the spindles.",
        GearPumpFault.TipsTooDeep => "Gears that mesh: the tips of one do not reach to the root of the other; the diameter over the teeth or the distance of the spindles is wrong.",
        GearPumpFault.BaseBeyondCentres => "Gears that mesh: teeth, module, pressure angle and the distance of the spindles agree.",
        GearPumpFault.TipInsideBase => "Gears that mesh: the diameter over the teeth is above that of their base circle; teeth, module or pressure angle is wrong.",
        GearPumpFault.HubOrRoot => "Hub, root and tip follow each other outwards.",
        GearPumpFault.BushTooSlack => "A clearance less than the diameter of its spindle.",
        _ => "Two gears that mesh: teeth, tip diameter, centre distance and pressure angle agree.",
    };
}
