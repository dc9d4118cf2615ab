using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.EngineFiles;

/// <summary>The keys of the oil circuit.</summary>
internal static class Circuits
{
    public const string Section = "circuit";

    public static readonly Form<NodeName> Node = Forms.Name<NodeName>(NodeName.TryRead, n => n.Text);

    public static readonly Form<NodeName?> NodeOrNone = new ScalarForm<NodeName?>(
        (text, _) => NodeName.TryRead(text, out var name, out var problem) ? name : problem,
        name => name?.Text);

    private static readonly Form<Quantity?> Pressure = Forms.Quantity(QuantityKind.Pressure);
    private static readonly Form<Quantity?> Temperature = Forms.Quantity(QuantityKind.Temperature);
    private static readonly Form<Quantity?> Length = Forms.Quantity(QuantityKind.Length);
    private static readonly Form<Quantity?> Number = Forms.Quantity(QuantityKind.Number);

    public static readonly Shape<ViscosityPoint> Point = new Shape<ViscosityPoint>("a point of viscosity")
        .Key("at", Temperature, p => p.Temperature, (p, v) => p with { Temperature = v! }, Need.Required)
        .Key("is", Forms.Quantity(QuantityKind.KinematicViscosity), p => p.Viscosity, (p, v) => p with { Viscosity = v! }, Need.Required);

    public static readonly Shape<OilChoice> Oil = new Shape<OilChoice>("the oil")
        .Key("grade", Forms.Text, o => o.Grade, (o, v) => o with { Grade = v })
        .Key("points", Forms.List(new GroupForm<ViscosityPoint>(Point, new ViscosityPoint(null!, null!))), o => o.Points, (o, v) => o with { Points = v })
        .Key("density", Forms.Quantity(QuantityKind.Density), o => o.Density, (o, v) => o with { Density = v })
        .Key("shear-factor", Number, o => o.ShearFactor, (o, v) => o with { ShearFactor = v });

    public static readonly Shape<NodeDefinition> NodeShape = new Shape<NodeDefinition>("a node")
        .Key("pressure", Pressure, n => n.Pressure, (n, v) => n with { Pressure = v })
        .Key("height", Length, n => n.Height, (n, v) => n with { Height = v })
        .Key("label", Forms.Text, n => n.Label, (n, v) => n with { Label = v });

    public static readonly Shape<OilGauge> Gauge = new Shape<OilGauge>("an oil gauge")
        .Key("at", Node, g => g.At, (g, v) => g with { At = v }, Need.Required)
        .Key("height", Length, g => g.Height, (g, v) => g with { Height = v })
        .Key("uncertainty", Pressure, g => g.Uncertainty, (g, v) => g with { Uncertainty = v });

    public static readonly Shape<GaugeLimit> Limit = new Shape<GaugeLimit>("a limit of a gauge")
        .Key("least", Pressure, l => l.Least, (l, v) => l with { Least = v })
        .Key("greatest", Pressure, l => l.Greatest, (l, v) => l with { Greatest = v })
        .Key("document", Forms.Citation, l => l.Source, (l, v) => l with { Source = v });

    public static readonly Shape<OilState> State = new Shape<OilState>("a state of running")
        .Key("speed", Forms.Quantity(QuantityKind.RotationalSpeed), s => s.Speed, (s, v) => s with { Speed = v! }, Need.Required)
        .Key("oil", Temperature, s => s.OilTemperature, (s, v) => s with { OilTemperature = v! }, Need.Required)
        .Key("limits", new NamedForm<GaugeLimit>("gauges", Blank<OilGaugeName, GaugeLimit>(OilGaugeName.TryRead, n => new(n)), l => l.Gauge.Text, Limit.TryRead, Limit.Write) { IsOneLine = true }, s => s.Limits, (s, v) => s with { Limits = v });

    public static readonly Shape<FlowTestSetting> FlowTest = new Shape<FlowTestSetting>("the flow test")
        .Key("at", Node, t => t.At, (t, v) => t with { At = v }, Need.Required)
        .Key("pressure", Pressure, t => t.Pressure, (t, v) => t with { Pressure = v! }, Need.Required)
        .Key("oil", Temperature, t => t.OilTemperature, (t, v) => t with { OilTemperature = v! }, Need.Required)
        .Key("eccentricity", Number, t => t.Eccentricity, (t, v) => t with { Eccentricity = v });

    public static readonly Shape<OilCircuit> Circuit = new Shape<OilCircuit>("a circuit")
        .Key("oil", new InBraces<OilChoice>(Oil, OilChoice.NotSaid, isOneLine: true), c => c.Oil, (c, v) => c with { Oil = v })
        .Key("nodes", new NamedForm<NodeDefinition>("nodes", Blank<NodeName, NodeDefinition>(NodeName.TryRead, n => new(n)), n => n.Name.Text, NodeShape.TryRead, NodeShape.Write), c => c.Nodes, (c, v) => c with { Nodes = v })
        .Key("elements", new NamedForm<ElementDefinition>("elements", Blank<ElementName, ElementDefinition>(ElementName.TryRead, n => new(n, default, default, default)), e => e.Name.Text, ElementForm.TryRead, ElementForm.Write), c => c.Elements, (c, v) => c with { Elements = v })
        .Key("gauges", new NamedForm<OilGauge>("oil gauges", Blank<OilGaugeName, OilGauge>(OilGaugeName.TryRead, n => new(n, default)), g => g.Name.Text, Gauge.TryRead, Gauge.Write), c => c.Gauges, (c, v) => c with { Gauges = v })
        .Key("states", new NamedForm<OilState>("states of running", BlankState, s => s.Name, State.TryRead, State.Write), c => c.States, (c, v) => c with { States = v })
        .Key("flow test", new InBraces<FlowTestSetting?>(FlowTest!, new FlowTestSetting(default, null!, null!), isOneLine: true), c => c.FlowTest, (c, v) => c with { FlowTest = v });

    /// <summary>The circuit of a file, everything in it checked; null where the file has none.</summary>
    public static OilCircuit? Read(Scope scope)
    {
        if (scope.Root[Section] is not { } node || node is YamlScalar { IsLeftOut: true })
            return null;
        scope.Begin(Section);
        Circuit.TryRead(node, new OilCircuit(), scope, out var circuit);
        var isBroken = scope.EntryIsBroken;
        foreach (var problem in CircuitCheck.Of(circuit, scope.Record))
        {
            if (isBroken && RestsOnOthers(problem))
                continue;
            var (section, entry) = (problem.Section.Word(), problem.Entry);
            scope.Entry = string.Join(", ", new[] { Section, section, entry }.Where(s => s.Length > 0));
            var at = Inner(Inner(Inner(node, section), entry), problem.Key);
            scope.Refuse(at, problem.Key, problem.What);
        }

        scope.Entry = "";
        return circuit;
    }

    /// <summary>Where the entry stands that a problem of the circuit is about, as near as the file tells it; null for what is no problem of the circuit.</summary>
    /// <param name="circuit">The section.</param>
    /// <param name="field">As <see cref="CircuitProblem.Placed"/> writes it.</param>
    public static YamlNode? PlaceOf(YamlNode circuit, string field)
    {
        if (field.Split(", ") is not [Section, .. var inner])
            return null;
        foreach (var key in inner)
            circuit = Inner(circuit, key);
        return circuit;
    }

    /// <summary>What rests on an entry that could not be read is not complained of as well.</summary>
    private static bool RestsOnOthers(CircuitProblem problem) =>
        problem.Section is CircuitSection.Oil or CircuitSection.FlowTest || problem.What.Code is "circuit-node-missing" or "circuit-gauge-missing";

    private static YamlNode Inner(YamlNode node, string key) => key.Length > 0 && (node as YamlMap)?.Entries.FirstOrDefault(e => string.Equals(e.Key.Value.Trim(), key, StringComparison.OrdinalIgnoreCase)).Value is { } inner ? inner : node;

    private static Func<string, Outcome<T>> Blank<TName, T>(Forms.Reader<TName> read, Func<TName, T> make) =>
        text => read(text, out var name, out var problem) ? make(name) : problem;

    private static Outcome<OilState> BlankState(string text) => text.Length is > 0 and <= 80 && !text.Any(char.IsControl)
        ? new OilState(text, null!, null!)
        : new Problem("oil-state-name", "", text.Length > 60 ? $"\"{text[..60]}…\"" : $"\"{text}\"", "The name of a state of running is one line of 1 to 80 characters.", "Write it so, such as hot idle.");

    /// <summary>A group of keys that may be left out as a whole.</summary>
    private sealed class InBraces<T>(Shape<T> shape, T blank, bool isOneLine) : Form<T>
    {
        public override bool TryRead(YamlNode node, string key, Scope scope, out T value)
        {
            var entry = scope.Entry;
            scope.Entry = $"{entry}, {key}";
            var isGood = shape.TryRead(node, blank, scope, out value);
            scope.Entry = entry;
            return isGood;
        }

        public override YamlNode? Write(T value, Scope scope) => value is null ? null : shape.Write(value, scope, isOneLine) is { Entries.Count: > 0 } map ? map : null;
    }
}
