namespace Thoubook.Mechanics.Circuits;

/// <summary>
/// Which ways oil has through a circuit. Nodes joined by elements that pass oil both ways form a group; valves lead from group to group one way, pumps without leak force
/// what they move. Oil that is forced where it cannot leave, or drawn where it cannot come, has no pressure that holds it.
/// </summary>
internal sealed class CircuitWays
{
    private readonly IReadOnlyList<CircuitNode> _nodes;
    private readonly List<CircuitElement> _inUse;
    private readonly List<Pump> _forcing;
    private readonly int[] _group;

    public CircuitWays(IReadOnlyList<CircuitNode> nodes, IReadOnlyList<CircuitElement> elements)
    {
        _nodes = nodes;
        _inUse = [.. elements.Where(e => !e.Blanked)];
        _forcing = [.. _inUse.OfType<Pump>().Where(p => !p.Conducts && p.Forces > 0)];
        _group = Joined(_inUse.Where(e => e.Conducts));
    }

    public List<CircuitFault> Faults()
    {
        var faults = Islands();
        if (faults.Count > 0)
            return faults;
        var closed = new List<HashSet<int>>();
        foreach (var pump in _forcing)
        {
            if (!closed.Any(set => set.Contains(_group[pump.To])))
                TooMuch(pump, closed, faults);
        }

        closed.Clear();
        foreach (var pump in _forcing.Where(p => p.InletLimit is null))
        {
            if (!closed.Any(set => set.Contains(_group[pump.From])))
                TooLittle(pump, closed, faults);
        }

        Consumers(faults);
        return faults;
    }

    /// <summary>Nodes joined by elements of whatever kind fall into islands; each wants a reservoir.</summary>
    private List<CircuitFault> Islands()
    {
        var faults = new List<CircuitFault>();
        var islands = Joined(_inUse);
        foreach (var island in Enumerable.Range(0, _nodes.Count).GroupBy(node => islands[node]).Where(island => island.All(node => _nodes[node].FixedPressure is null)))
        {
            string[] names = [.. island.Select(node => _nodes[node].Name)];
            faults.Add(names.Length == 1
                ? new(CircuitFaultKind.NodeNobodyFeeds, [], names, $"{names[0]}: no element in use meets this node; lead one to it or leave it out.")
                : new(CircuitFaultKind.IslandWithoutReservoir, [], names, $"{string.Join(", ", names)} are joined to each other and to no reservoir: join one of them to the rest, or give it a pressure."));
        }

        return faults;
    }

    private void TooMuch(Pump pump, List<HashSet<int>> closed, List<CircuitFault> faults)
    {
        var groups = Reached([_group[pump.To]], e => e.GivesWay ? (e.From, e.To) : null);
        var into = _forcing.Where(p => groups.Contains(_group[p.To]) && !groups.Contains(_group[p.From])).ToList();
        var outOf = _forcing.Where(p => groups.Contains(_group[p.From]) && !groups.Contains(_group[p.To])).ToList();
        var over = into.Where(p => p.InletLimit is null).Sum(p => p.Forces) - outOf.Sum(p => p.Forces);
        if (into.Count == 0 || HasReservoir(groups) || over < 0 || (over == 0 && outOf.Exists(p => p.InletLimit is not null)))
            return;
        closed.Add(groups);
        var nodes = NodesOf(groups);
        faults.Add(outOf.Count > 0 ? InSeries(into, outOf, nodes)
            : IsOpenEnd(groups) ? new(CircuitFaultKind.OpenEnd, [pump.Name], nodes, $"{pump.Name} delivers to {nodes[0]}, which no other element in use meets: lead a pipe or a valve on from there.")
            : new(CircuitFaultKind.NoWayOut, NamesOf(into), nodes, $"{Said(NamesOf(into))} {(into.Count > 1 ? "deliver" : "delivers")} to {Said(nodes)}, where oil cannot leave but by consumers, which take no more than is stated: lead a pipe or a valve from there to a reservoir, or give the pump its leak."));
    }

    private void TooLittle(Pump pump, List<HashSet<int>> closed, List<CircuitFault> faults)
    {
        var groups = Reached([_group[pump.From]], e => e.GivesWay ? (e.To, e.From) : null);
        var outOf = _forcing.Where(p => groups.Contains(_group[p.From]) && !groups.Contains(_group[p.To])).ToList();
        var into = _forcing.Where(p => groups.Contains(_group[p.To]) && !groups.Contains(_group[p.From])).ToList();
        var over = outOf.Where(p => p.InletLimit is null).Sum(p => p.Forces) - into.Sum(p => p.Forces);
        if (outOf.Count == 0 || HasReservoir(groups) || over < 0)
            return;
        closed.Add(groups);
        var nodes = NodesOf(groups);
        if (into.Count > 0)
        {
            var fault = InSeries(into, outOf, nodes);
            if (!faults.Exists(f => f.Kind == fault.Kind && f.Nodes.SequenceEqual(fault.Nodes)))
                faults.Add(fault);
            return;
        }

        faults.Add(IsOpenEnd(groups)
            ? new(CircuitFaultKind.OpenEnd, [pump.Name], nodes, $"{pump.Name} draws from {nodes[0]}, which no other element in use meets: lead a pipe to it.")
            : new(CircuitFaultKind.NoWayIn, NamesOf(outOf), nodes, $"{Said(NamesOf(outOf))} {(outOf.Count > 1 ? "draw" : "draws")} from {Said(nodes)}, where oil cannot come: lead a pipe there from a reservoir, or give the pump its inlet limit."));
    }

    private static CircuitFault InSeries(List<Pump> into, List<Pump> outOf, IReadOnlyList<string> nodes) => new(
        CircuitFaultKind.PumpsInSeries, NamesOf([.. into, .. outOf]), nodes,
        $"Between {Said(NamesOf(into))} and {Said(NamesOf(outOf))}, at {Said(nodes)}, nothing takes up the difference of what they move: lead a pipe or a valve from there, or give one of them its leak.");

    private void Consumers(List<CircuitFault> faults)
    {
        var fed = Reached(
            [.. Enumerable.Range(0, _nodes.Count).Where(i => _nodes[i].FixedPressure is not null).Select(i => _group[i])],
            e => e.GivesWay || e is Pump or Consumer ? (e.From, e.To) : null);
        foreach (var consumer in _inUse.OfType<Consumer>().Where(c => c.Flow > 0 && !fed.Contains(_group[c.From])))
        {
            var node = _nodes[consumer.From].Name;
            faults.Add(new(CircuitFaultKind.ConsumerCannotBeFed, [consumer.Name], [node], $"{consumer.Name} takes oil at {node}, where no oil can come: lead a pipe there from what a pump or a reservoir feeds."));
        }
    }

    /// <summary>Groups that can be come to, going from node to node as the elements allow.</summary>
    private HashSet<int> Reached(HashSet<int> groups, Func<CircuitElement, (int From, int To)?> way)
    {
        for (var before = 0; before != groups.Count;)
        {
            before = groups.Count;
            foreach (var e in _inUse)
            {
                if (way(e) is var (from, to) && groups.Contains(_group[from]))
                    groups.Add(_group[to]);
            }
        }

        return groups;
    }

    private bool HasReservoir(HashSet<int> groups) => Enumerable.Range(0, _nodes.Count).Any(i => _nodes[i].FixedPressure is not null && groups.Contains(_group[i]));

    private string[] NodesOf(HashSet<int> groups) => [.. Enumerable.Range(0, _nodes.Count).Where(i => groups.Contains(_group[i])).Select(i => _nodes[i].Name)];

    private bool IsOpenEnd(HashSet<int> groups) =>
        Enumerable.Range(0, _nodes.Count).Where(i => groups.Contains(_group[i])).ToList() is [var only] && _inUse.Count(e => e.From == only || e.To == only) == 1;

    private static string[] NamesOf(List<Pump> pumps) => [.. pumps.Select(p => p.Name)];

    private static string Said(IReadOnlyList<string> names) => names.Count <= 6 ? string.Join(", ", names) : $"{string.Join(", ", names.Take(5))} and {names.Count - 5} more";

    /// <summary>For each node, one and the same node of all that the elements join.</summary>
    private int[] Joined(IEnumerable<CircuitElement> elements)
    {
        var group = Enumerable.Range(0, _nodes.Count).ToArray();
        foreach (var element in elements)
            group[Root(group, element.From)] = Root(group, element.To);
        for (var i = 0; i < group.Length; i++)
            group[i] = Root(group, i);
        return group;
    }

    private static int Root(int[] group, int node)
    {
        while (group[node] != node)
            node = group[node] = group[group[node]];
        return node;
    }
}
