namespace Thoubook.Web.Drawings.Circuits;

/// <summary>
/// Which places of a circuit are under the pressure of a pump or of a feed, and along which way each is reached: the way that carries the most oil.
/// The rest is the return side: tanks, suction, what the scavenge pumps carry.
/// </summary>
internal sealed class PressureSide
{
    /// <summary>Share of the highest pressure under which a reservoir or the inlet of a pump is not on the pressure side.</summary>
    private const double LowShare = 0.05;

    private readonly CircuitSketch _sketch;
    private readonly bool[] _holds;
    private readonly int[] _by;
    private readonly int[] _weight;
    private readonly List<int> _floors;

    public PressureSide(CircuitSketch sketch)
    {
        _sketch = sketch;
        _holds = new bool[sketch.Nodes.Count];
        _by = new int[sketch.Nodes.Count];
        _weight = new int[sketch.Nodes.Count];
        Array.Fill(_by, -1);
        var low = LowShare * sketch.Nodes.Where(n => double.IsFinite(n.Pressure)).Select(n => n.Pressure).DefaultIfEmpty(0).Max();
        var stops = StopsAt(low);
        Roots = [.. RootNodes(low, stops)];
        Reach(stops);
        _floors = Floors();
        foreach (var root in Roots)
            Weigh(root, -1);
    }

    /// <summary>Where the oil comes in: at the delivery of each pump, and at what is fed under pressure.</summary>
    public IReadOnlyList<int> Roots { get; }

    /// <summary>What the floor is called; null where nothing falls to it.</summary>
    public string? FloorName => _floors.Count == 0 ? null : _sketch.Nodes[_floors.OrderByDescending(f => At(f).Any(e => !_holds[Other(e, f)])).First()].Name;

    public bool Holds(int node) => _holds[node];

    /// <summary>Oil that falls there has fallen to the floor: the sump, and every case that drains to it. Not a tank that something fills.</summary>
    public bool IsFloor(int node) => _floors.Contains(node);

    /// <summary>The element along which a node is reached; −1 at a root.</summary>
    public int ReachedBy(int node) => _by[node];

    /// <summary>How many consumers hang below a node.</summary>
    public int Weight(int node) => _weight[node];

    public IEnumerable<int> At(int node)
    {
        for (var e = 0; e < _sketch.Elements.Count; e++)
        {
            if (_sketch.Elements[e] is var element && element.From != element.To && (element.From == node || element.To == node))
                yield return e;
        }
    }

    public int Other(int element, int node) => _sketch.Elements[element] is var e && e.From == node ? e.To : e.From;

    /// <summary>A pump that lifts oil from the return side into this node.</summary>
    public bool LiftsInto(int element, int node) => _sketch.Elements[element] is { Mark: SketchMark.Pump or SketchMark.ScavengePump } pump && pump.To == node && !_holds[pump.From];

    private bool[] StopsAt(double low)
    {
        var stops = new bool[_sketch.Nodes.Count];
        for (var n = 0; n < stops.Length; n++)
            stops[n] = _sketch.Nodes[n].IsReservoir && !(_sketch.Nodes[n].Pressure > low);
        foreach (var pump in _sketch.Elements.Where(e => e.Mark is SketchMark.Pump or SketchMark.ScavengePump))
            stops[pump.From] |= !(_sketch.Nodes[pump.From].Pressure > low);
        return stops;
    }

    private IEnumerable<int> RootNodes(double low, bool[] stops)
    {
        var pumped = _sketch.Elements.Where(e => e.Mark == SketchMark.Pump && stops[e.From]).Select(e => e.To);
        var fed = Enumerable.Range(0, _sketch.Nodes.Count).Where(n => _sketch.Nodes[n].IsReservoir && _sketch.Nodes[n].Pressure > low);
        return pumped.Concat(fed).Where(n => !stops[n]).Distinct();
    }

    private void Reach(bool[] stops)
    {
        var ahead = new PriorityQueue<(int Element, int Node), (int, double, int)>();
        foreach (var root in Roots)
            Enter(root, -1);
        while (ahead.TryDequeue(out var next, out _))
        {
            if (!_holds[next.Node] && !stops[next.Node])
                Enter(next.Node, next.Element);
        }

        void Enter(int node, int by)
        {
            (_holds[node], _by[node]) = (true, by);
            foreach (var e in At(node))
            {
                var element = _sketch.Elements[e];
                ahead.Enqueue((e, Other(e, node)), (element.IsBlanked ? 1 : 0, -Math.Abs(element.Flow), e));
            }
        }
    }

    private List<int> Floors()
    {
        var falls = new int[_sketch.Nodes.Count];
        foreach (var element in _sketch.Elements)
        {
            if (_holds[element.From] != _holds[element.To] && element.Mark is not (SketchMark.Pump or SketchMark.ScavengePump))
                falls[_holds[element.From] ? element.To : element.From]++;
        }

        var most = falls.DefaultIfEmpty(0).Max();
        return [.. Enumerable.Range(0, falls.Length).Where(n => falls[n] > 0 && (falls[n] == most || _sketch.Nodes[n].IsReservoir && !At(n).Any(e => _sketch.Elements[e].To == n && !_holds[_sketch.Elements[e].From])))];
    }

    private int Weigh(int node, int by)
    {
        var sum = 0;
        foreach (var e in At(node).Where(e => e != by))
        {
            var other = Other(e, node);
            if (!_holds[other])
                sum += LiftsInto(e, node) ? 0 : 1;
            else if (_by[other] == e)
                sum += Weigh(other, e);
        }

        return _weight[node] = sum;
    }
}
