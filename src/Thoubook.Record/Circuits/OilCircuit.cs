using Thoubook.Record.Documents;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Circuits;

/// <summary>
/// The oil system of an engine as a network: nodes, elements between them, the gauges that a person reads, and the states in which it is judged.
/// Elements take their sizes from quantities or from the engine's own dimensions and fits.
/// </summary>
public sealed record OilCircuit
{
    public int Revision { get; init; }

    public OilChoice Oil { get; init; } = OilChoice.NotSaid;

    /// <summary>The nodes that have more to say than their name: reservoirs, heights, labels. Others exist by being named in an element.</summary>
    public IReadOnlyList<NodeDefinition> Nodes { get; init; } = [];

    public IReadOnlyList<ElementDefinition> Elements { get; init; } = [];

    /// <summary>The main gauge first.</summary>
    public IReadOnlyList<OilGauge> Gauges { get; init; } = [];

    /// <summary>Hot idle first.</summary>
    public IReadOnlyList<OilState> States { get; init; } = [];

    /// <summary>How the flow test before the sump goes on is to be made; null where none is planned.</summary>
    public FlowTestSetting? FlowTest { get; init; }

    /// <summary>Every node, those of <see cref="Nodes"/> first, then in the order in which elements first name them.</summary>
    public IReadOnlyList<NodeName> NodeNames =>
        [.. Nodes.Select(n => n.Name).Concat(Elements.SelectMany(e => e.NodesNamed)).Distinct()];

    public NodeDefinition? Node(NodeName name) => Nodes.FirstOrDefault(n => n.Name == name);

    public ElementDefinition? Element(ElementName name) => Elements.FirstOrDefault(e => e.Name == name);

    public OilGauge? Gauge(OilGaugeName name) => Gauges.FirstOrDefault(g => g.Name == name);

    /// <summary>The unit in which its pressures are read: that of its limits, else of its flow test or its gauges as they were typed.</summary>
    public TradeUnit PressureUnit => States.SelectMany(s => s.Limits).SelectMany(l => new[] { l.Least, l.Greatest })
        .Append(FlowTest?.Pressure).Concat(Gauges.Select(g => g.Uncertainty)).OfType<Quantity>().FirstOrDefault()?.Unit ?? TradeUnit.Psi;

    /// <summary>Digits after the point that say something of a pressure in that unit.</summary>
    public int PressureDigits => PressureUnit.Factor switch { > 50_000 => 2, > 500 => 1, _ => 0 };

    public OilState? State(string name) => States.FirstOrDefault(s => string.Equals(s.Name, name, StringComparison.OrdinalIgnoreCase));
}

/// <summary>The oil: a grade, or two or more points of its viscosity.</summary>
public sealed record OilChoice
{
    public static OilChoice NotSaid { get; } = new();

    /// <summary>As sold: <c>SAE 40</c>, <c>SAE 20W-50</c>, <c>ISO VG 100</c>.</summary>
    public string? Grade { get; init; }

    /// <summary>They count before the grade.</summary>
    public IReadOnlyList<ViscosityPoint> Points { get; init; } = [];

    /// <summary>[kg/m³] at 15 °C; null: that of an ordinary mineral oil.</summary>
    public Quantity? Density { get; init; }

    /// <summary>[-] The share of its viscosity at low shear that is left in a film; null: all.</summary>
    public Quantity? ShearFactor { get; init; }

    public bool IsSaid => Grade is not null || Points.Count > 0;
}

/// <summary>Kinematic viscosity at a temperature.</summary>
public sealed record ViscosityPoint(Quantity Temperature, Quantity Viscosity);

/// <summary>What is known of a node beside its name.</summary>
public sealed record NodeDefinition(NodeName Name)
{
    /// <summary>[Pa gauge] of a reservoir: a tank, a sump, the open air. Null: what the circuit makes it.</summary>
    public Quantity? Pressure { get; init; }

    /// <summary>[m] above any one level of the engine; null: 0.</summary>
    public Quantity? Height { get; init; }

    public string? Label { get; init; }
}

/// <summary>A gauge of the instrument board and the node that its line taps.</summary>
public sealed record OilGauge(OilGaugeName Name, NodeName At)
{
    /// <summary>[m] of the instrument above the same level as the nodes; null: that of its node.</summary>
    public Quantity? Height { get; init; }

    /// <summary>[Pa] standard uncertainty of what it shows; null: none stated.</summary>
    public Quantity? Uncertainty { get; init; }
}

/// <summary>A state of running in which the system is judged: <c>hot idle</c>, <c>cruise</c>, <c>cold start</c>.</summary>
public sealed record OilState(string Name, Quantity Speed, Quantity OilTemperature)
{
    public const string HotIdle = "hot idle";
    public const string Cruise = "cruise";
    public const string ColdStart = "cold start";

    public IReadOnlyList<GaugeLimit> Limits { get; init; } = [];
}

/// <summary>What a gauge must show in a state; null where the document gives no such limit.</summary>
public sealed record GaugeLimit(OilGaugeName Gauge)
{
    public Quantity? Least { get; init; }

    public Quantity? Greatest { get; init; }

    public Citation? Source { get; init; }
}

/// <summary>The flow test before the sump goes on: oil from outside at a node, the pump disconnected, the crank turned by hand.</summary>
public sealed record FlowTestSetting(NodeName At, Quantity Pressure, Quantity OilTemperature)
{
    /// <summary>[-] of the shafts, which lie in their bottom shells.</summary>
    public const double UsualEccentricity = 0.95;

    /// <summary>[-] Null: <see cref="UsualEccentricity"/>.</summary>
    public Quantity? Eccentricity { get; init; }
}
