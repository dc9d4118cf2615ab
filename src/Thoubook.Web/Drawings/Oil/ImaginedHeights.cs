using Thoubook.Record.Circuits;

namespace Thoubook.Web.Drawings.Oil;

/// <summary>Heights to draw a circuit at whose pressures nobody knows: a step down for every element from the pump on.</summary>
internal static class ImaginedHeights
{
    public static double Of(OilCircuit circuit, NodeName node)
    {
        var steps = Steps(circuit);
        return steps.TryGetValue(node, out var step) ? Math.Max(20 - (2.2 * step), 3) : 0;
    }

    private static Dictionary<NodeName, int> Steps(OilCircuit circuit)
    {
        var steps = new Dictionary<NodeName, int>();
        var ahead = new Queue<NodeName>();
        foreach (var pump in circuit.Elements.Where(e => e.Kind is ElementKind.Pump or ElementKind.GearPump && e.Value("need") is null))
        {
            if (steps.TryAdd(pump.To, 0))
                ahead.Enqueue(pump.To);
        }

        while (ahead.TryDequeue(out var at))
        {
            foreach (var element in circuit.Elements.Where(e => e.From == at && circuit.Node(e.To)?.Pressure is null))
            {
                if (steps.TryAdd(element.To, steps[at] + 1))
                    ahead.Enqueue(element.To);
            }
        }

        return steps;
    }
}
