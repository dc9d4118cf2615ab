namespace Thoubook.Mechanics.Circuits;

/// <summary>One number of one element or node of a circuit.</summary>
/// <param name="Index">[-] its place among all parameters of the circuit.</param>
public readonly record struct ParameterId(int Index);

/// <summary>
/// An oil circuit checked and made ready: nodes joined by elements. It does not change, and any number of solvers, on any threads, may work on it at once;
/// each keeps its own values of the parameters.
/// </summary>
public sealed class Circuit
{
    private readonly CircuitNode[] _nodes;
    private readonly CircuitElement[] _elements;
    private readonly int[] _firstParameter;
    private readonly SizeRule[] _rules;
    private readonly Dictionary<string, int> _nodeByName;
    private readonly Dictionary<string, int> _elementByName;

    private Circuit(CircuitNode[] nodes, CircuitElement[] elements)
    {
        _nodes = nodes;
        _elements = elements;
        _nodeByName = Places(nodes.Select(node => node.Name));
        _elementByName = Places(elements.Select(element => element.Name));
        _firstParameter = new int[elements.Length + 1];
        for (var i = 0; i < elements.Length; i++)
            _firstParameter[i + 1] = _firstParameter[i] + elements[i].Rules.Length;
        _rules = [.. elements.SelectMany(element => element.Rules.ToArray()), .. nodes.SelectMany(node => NodeRules(node))];
        Values = [.. elements.SelectMany(element => element.Values), .. nodes.SelectMany(node => new[] { node.FixedPressure ?? double.NaN, node.Height })];
        Unknown = new int[nodes.Length];
        for (var i = 0; i < nodes.Length; i++)
            Unknown[i] = nodes[i].FixedPressure is null ? Unknowns++ : -1;
    }

    /// <summary>[-] number of nodes.</summary>
    public int NodeCount => _nodes.Length;

    /// <summary>[-] number of elements.</summary>
    public int ElementCount => _elements.Length;

    /// <summary>[-] number of parameters: every number of every element, then pressure and height of every node.</summary>
    public int ParameterCount => Values.Length;

    /// <summary>The nodes, as given.</summary>
    public IReadOnlyList<CircuitNode> Nodes => _nodes;

    /// <summary>The elements, as given.</summary>
    public IReadOnlyList<CircuitElement> Elements => _elements;

    /// <summary>Values of all parameters as given; NaN where an optional one is left out.</summary>
    internal double[] Values { get; }

    /// <summary>Place of each node among those whose pressure is sought; −1 for a reservoir.</summary>
    internal int[] Unknown { get; }

    /// <summary>How many pressures are sought.</summary>
    internal int Unknowns { get; }

    /// <summary>How the equations of a step are eliminated.</summary>
    internal EliminationOrder Order => field ??= new EliminationOrder(Unknowns, Seeing());

    /// <summary>Checks a circuit and makes it ready.</summary>
    /// <param name="nodes">The nodes.</param>
    /// <param name="elements">The elements between them.</param>
    /// <returns>The circuit, or everything that is wrong with it.</returns>
    public static CircuitOutcome Compile(IReadOnlyList<CircuitNode> nodes, IReadOnlyList<CircuitElement> elements)
    {
        ArgumentNullException.ThrowIfNull(nodes);
        ArgumentNullException.ThrowIfNull(elements);
        var faults = CircuitChecks.Of(nodes, elements);
        return faults.Count > 0 ? new CircuitOutcome.Insoluble(faults) : new CircuitOutcome.Compiled(new Circuit([.. nodes], [.. elements]));
    }

    /// <summary>Place of a node.</summary>
    /// <param name="name">Its name.</param>
    /// <returns>[-] its place in the list of nodes.</returns>
    public int Node(string name) => _nodeByName[name];

    /// <summary>Place of an element.</summary>
    /// <param name="name">Its name.</param>
    /// <returns>[-] its place in the list of elements.</returns>
    public int Element(string name) => _elementByName[name];

    /// <summary>A number of an element.</summary>
    /// <param name="element">[-] place of the element.</param>
    /// <param name="parameter">Its name, as the element calls it: <c>nameof(Pipe.Bore)</c>.</param>
    /// <returns>Which it is.</returns>
    /// <exception cref="ArgumentException">The element has no such number.</exception>
    /// <remarks>Source: none, a look-up (common practice). Check: CircuitTests.</remarks>
    public ParameterId Find(int element, string parameter)
    {
        var rules = _elements[element].Rules;
        for (var i = 0; i < rules.Length; i++)
        {
            if (rules[i].Name == parameter)
                return new(_firstParameter[element] + i);
        }

        throw new ArgumentException($"{_elements[element].GetType().Name} has no number called {parameter}; it has {string.Join(", ", rules.ToArray().Select(rule => rule.Name))}.", nameof(parameter));
    }

    /// <summary>The pressure of a reservoir.</summary>
    /// <param name="node">[-] place of the node.</param>
    /// <returns>Which parameter it is.</returns>
    /// <exception cref="ArgumentException">The node is no reservoir.</exception>
    /// <remarks>Source: none, a look-up (common practice). Check: CircuitTests.</remarks>
    public ParameterId FindPressure(int node) =>
        Unknown[node] < 0 ? new(_firstParameter[^1] + (2 * node)) : throw new ArgumentException($"{_nodes[node].Name} is no reservoir: the circuit settles its pressure.", nameof(node));

    /// <summary>The height of a node.</summary>
    /// <param name="node">[-] place of the node.</param>
    /// <returns>Which parameter it is.</returns>
    /// <remarks>Source: none, a look-up (common practice). Check: CircuitTests.</remarks>
    public ParameterId FindHeight(int node) => new(_firstParameter[^1] + (2 * node) + 1);

    /// <summary>Whether a parameter may have a value; whether values go together is seen only when a circuit is compiled.</summary>
    /// <param name="parameter">Which.</param>
    /// <param name="value">[any] the value.</param>
    /// <returns>Whether it may.</returns>
    /// <remarks>Source: the ranges that the elements state (common practice). Check: CircuitTests.</remarks>
    public bool Allows(ParameterId parameter, double value) => _rules[parameter.Index].Allows(value);

    /// <summary>What a parameter may be, in words.</summary>
    internal string Allowed(ParameterId parameter) => _rules[parameter.Index].Allowed;

    /// <summary>Where the parameters of an element begin; they stand in the order of its numbers.</summary>
    /// <param name="element">[-] place of the element.</param>
    /// <returns>[-] the index of its first parameter.</returns>
    /// <remarks>Source: none, a look-up (common practice). Check: NetworkTests.</remarks>
    public int FirstParameter(int element) => _firstParameter[element];

    /// <summary>Unknown pressures that some element in use looks at together.</summary>
    private IEnumerable<(int, int)> Seeing()
    {
        foreach (var e in _elements.Where(e => !e.Blanked))
        {
            int[] nodes = e.Third is { } third ? [e.From, e.To, third] : [e.From, e.To];
            foreach (var a in nodes)
            {
                foreach (var b in nodes)
                {
                    if (Unknown[a] >= 0 && Unknown[b] >= 0 && Unknown[a] < Unknown[b])
                        yield return (Unknown[a], Unknown[b]);
                }
            }
        }
    }

    private static SizeRule[] NodeRules(CircuitNode node) =>
        [node.FixedPressure is null ? SizeRule.Optional(nameof(CircuitNode.FixedPressure)) : SizeRule.Any(nameof(CircuitNode.FixedPressure)), SizeRule.Any(nameof(CircuitNode.Height))];

    private static Dictionary<string, int> Places(IEnumerable<string> names) => names.Select((name, place) => (name, place)).ToDictionary(pair => pair.name, pair => pair.place, StringComparer.Ordinal);
}
