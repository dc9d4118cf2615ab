using Thoubook.Record.Quantities;

namespace Thoubook.Record.Circuits;

/// <summary>One element of the circuit; flow counts positive from <see cref="From"/> to <see cref="To"/>.</summary>
public sealed record ElementDefinition(ElementName Name, ElementKind Kind, NodeName From, NodeName To)
{
    /// <summary>The revision of the circuit in which it was last changed; 0 before it is stored.</summary>
    public int Revision { get; init; }

    /// <summary>The node that a valve's spring chamber is open to; null: as its kind says.</summary>
    public NodeName? Vent { get; init; }

    /// <summary>Closed by a plug or a plate: no flow, and the full pressure behind it.</summary>
    public bool Blanked { get; init; }

    /// <summary>The part of the engine that it is; names of figures are looked up from there upwards.</summary>
    public PartName? Part { get; init; }

    public string? Label { get; init; }

    public string? Note { get; init; }

    /// <summary>Its sizes, by the keys of its kind; a key that is left out has its default.</summary>
    public IReadOnlyList<ElementValue> Values { get; init; } = [];

    public ElementShape Shape => ElementKinds.Of(Kind);

    public IEnumerable<NodeName> NodesNamed => Vent is { } vent ? [From, To, vent] : [From, To];

    /// <summary>Null where the key is left out.</summary>
    public CircuitValue? Value(string key) => Values.FirstOrDefault(v => v.Key == key)?.Value;

    /// <summary>The unit in which a size is written; null where it is left out or taken from a figure.</summary>
    public TradeUnit? UnitOf(string key) => Value(key) is CircuitValue.Given { Quantity: var given } && given.Kind == Shape.Key(key)?.Kind ? given.Unit : null;
}

/// <summary>One size of an element: the key of its kind and what stands there.</summary>
public sealed record ElementValue(string Key, CircuitValue Value);

/// <summary>What a size of an element is: a quantity, or whatever a dimension or fit of the engine is.</summary>
public abstract record CircuitValue
{
    private CircuitValue() { }

    public sealed record Given(Quantity Quantity) : CircuitValue
    {
        public override string ToString() => Quantity.Text;
    }

    public sealed record Taken(FigureName Figure) : CircuitValue
    {
        public override string ToString() => Figure.ToString();
    }
}
