using System.Globalization;

namespace Thoubook.Mechanics.Circuits;

/// <summary>What can be seen to be wrong with a circuit before it is solved.</summary>
internal static class CircuitChecks
{
    public static List<CircuitFault> Of(IReadOnlyList<CircuitNode> nodes, IReadOnlyList<CircuitElement> elements)
    {
        var faults = new List<CircuitFault>();
        Names(nodes.Select(node => node.Name), "nodes", name => new(CircuitFaultKind.DuplicateName, [], [name], ""), faults);
        Names(elements.Select(element => element.Name), "elements", name => new(CircuitFaultKind.DuplicateName, [name], [], ""), faults);
        foreach (var node in nodes)
        {
            if (node.FixedPressure is { } pressure && !double.IsFinite(pressure))
                faults.Add(new(CircuitFaultKind.UnphysicalSize, [], [node.Name], $"{node.Name}: its pressure is {Number(pressure)}; allowed: a finite number."));
            if (!double.IsFinite(node.Height))
                faults.Add(new(CircuitFaultKind.UnphysicalSize, [], [node.Name], $"{node.Name}: its height is {Number(node.Height)}; allowed: a finite number."));
        }

        foreach (var element in elements)
            Sizes(element, nodes, faults);
        if (faults.Count > 0)
            return faults;
        if (nodes.All(node => node.FixedPressure is null))
        {
            faults.Add(new(CircuitFaultKind.NoReservoir, [], [], "No node has a fixed pressure, so that no pressure is above or below anything: give the sump or the tank its pressure."));
            return faults;
        }

        faults.AddRange(new CircuitWays(nodes, elements).Faults());
        return faults;
    }

    private static void Names(IEnumerable<string> names, string what, Func<string, CircuitFault> fault, List<CircuitFault> faults)
    {
        foreach (var name in names.GroupBy(name => name, StringComparer.Ordinal).Where(group => group.Count() > 1).Select(group => group.Key))
            faults.Add(fault(name) with { Words = $"Several {what} are called {name}: give each its own name." });
    }

    private static void Sizes(CircuitElement element, IReadOnlyList<CircuitNode> nodes, List<CircuitFault> faults)
    {
        if (element.From < 0 || element.From >= nodes.Count || element.To < 0 || element.To >= nodes.Count || element.Third is { } third && (third < 0 || third >= nodes.Count))
        {
            faults.Add(new(CircuitFaultKind.UnknownNode, [element.Name], [], $"{element.Name} meets a node that the circuit does not have."));
            return;
        }

        if (element.From == element.To)
            faults.Add(new(CircuitFaultKind.FromIsTo, [element.Name], [nodes[element.From].Name], $"{element.Name} begins and ends at {nodes[element.From].Name}: lead it to another node or leave it out."));
        var rules = element.Rules;
        var values = element.Values;
        var sound = true;
        for (var i = 0; i < rules.Length; i++)
        {
            if (rules[i].Allows(values[i]))
                continue;
            sound = false;
            faults.Add(new(CircuitFaultKind.UnphysicalSize, [element.Name], [], $"{element.Name}: {rules[i].Name} is {Number(values[i])}; allowed: {rules[i].Allowed}."));
        }

        if (sound && element.Contradiction is { } contradiction)
            faults.Add(new(CircuitFaultKind.UnphysicalSize, [element.Name], [], $"{element.Name}: {contradiction}."));
    }

    private static string Number(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
