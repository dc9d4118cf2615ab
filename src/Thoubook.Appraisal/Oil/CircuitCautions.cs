using System.Globalization;
using Thoubook.Mechanics.Circuits;
using Thoubook.Record;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

/// <summary>What a solution is to be read with, in words and in the unit in which the circuit's pressures are read.</summary>
internal static class CircuitCautions
{
    /// <summary>What the drawing of a circuit leaves out: ends that lead nowhere, nodes that nothing meets, gauges that tap nothing.</summary>
    public static IEnumerable<Caution> OfShape(OilCircuit circuit)
    {
        var touched = circuit.Elements.SelectMany(e => e.NodesNamed).GroupBy(n => n).ToDictionary(g => g.Key, g => g.Count());
        var met = circuit.Elements.Where(e => !e.Blanked).SelectMany(e => e.NodesNamed).ToHashSet();
        foreach (var (element, node) in circuit.Elements.Where(e => !e.Blanked).SelectMany(e => new[] { (e, e.From), (e, e.To) }))
        {
            if (touched[node] == 1 && circuit.Node(node)?.Pressure is null && circuit.Gauges.All(g => g.At != node))
                yield return new("circuit-open-end", $"Open end: {element.Name} leads to {node}, which nothing else meets and no gauge taps, so it passes nothing. Lead it on, or name the node as the rest does.");
        }

        foreach (var node in circuit.Nodes.Where(n => !touched.ContainsKey(n.Name) && circuit.Gauges.All(g => g.At != n.Name)))
            yield return new("circuit-node-alone", $"No element meets {node.Name}. Lead one to it, or leave it out.");
        foreach (var gauge in circuit.Gauges.Where(g => !met.Contains(g.At) && circuit.Node(g.At)?.Pressure is null))
            yield return new("circuit-gauge-taps-nothing", $"The {gauge.Name} gauge taps {gauge.At}, which no element in use meets: it is left out.");
    }

    public static Caution Of(CircuitCaution caution, OilCircuit circuit)
    {
        var inlet = $"{circuit.PressureUnit.Show(caution.Inlet, circuit.PressureDigits)} absolute";
        return new($"circuit-{Words.Word(caution.Kind)}", caution.Kind switch
        {
            CircuitCautionKind.SuctionBelowVacuum => $"{caution.Element} would draw its inlet below nothing at all: no pump does. Give it an inlet limit.",
            CircuitCautionKind.PumpStarved => string.Create(CultureInfo.InvariantCulture, $"{caution.Element} fills only {caution.Share * 100:F0} in 100: its inlet is at {inlet}."),
            CircuitCautionKind.ColumnBroken => $"{caution.Element}: at {inlet} the oil does not reach the middle of the shaft at this speed; the column parts.",
            _ => string.Create(CultureInfo.InvariantCulture, $"{caution.Element} gets only {caution.Share * 100:F0} in 100 of what it takes."),
        });
    }
}
