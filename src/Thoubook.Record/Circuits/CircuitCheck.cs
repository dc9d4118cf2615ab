using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Circuits;

/// <summary>The kinds of entry that a circuit is made of, as the engine file heads them.</summary>
public enum CircuitSection
{
    Oil,
    Nodes,
    Elements,
    Gauges,
    States,

    [Word("flow test")]
    FlowTest,
}

/// <summary>Something wrong in a circuit.</summary>
/// <param name="Section">In which section.</param>
/// <param name="Entry">The name of the entry; empty where the section has none.</param>
/// <param name="Key">The key within the entry; empty where the whole entry is meant.</param>
/// <param name="What">What is wrong, and what would be right.</param>
public sealed record CircuitProblem(CircuitSection Section, string Entry, string Key, Problem What)
{
    /// <summary>For a form or a screen: the place is said in the problem.</summary>
    public Problem Placed => What with { Field = string.Join(", ", new[] { "circuit", Section.Word(), Entry, Key }.Where(s => s.Length > 0)) };
}

/// <summary>What can be said of a circuit from its own words: names that are not there, keys that are missing, sizes that nothing can have.</summary>
public static class CircuitCheck
{
    /// <summary>[K] Two points of viscosity nearer to each other say nothing of the rest.</summary>
    private const double NearestPoints = 10;

    /// <summary>Everything that is wrong; nothing where the circuit may be stored. Whether it can be solved is another question.</summary>
    public static IReadOnlyList<CircuitProblem> Of(OilCircuit circuit, EngineRecord record)
    {
        var nodes = circuit.Nodes.Select(n => n.Name).Concat(circuit.Elements.SelectMany(e => new[] { e.From, e.To })).ToHashSet();
        return
        [
            .. Oil(circuit.Oil),
            .. Twice(CircuitSection.Nodes, circuit.Nodes, n => n.Name.Text),
            .. circuit.Nodes.SelectMany(Node),
            .. Alike(circuit),
            .. Twice(CircuitSection.Elements, circuit.Elements, e => e.Name.Text),
            .. Twice(CircuitSection.Gauges, circuit.Gauges, g => g.Name.Text),
            .. Twice(CircuitSection.States, circuit.States, s => s.Name),
            .. circuit.Elements.SelectMany(e => Element(e, nodes, record)),
            .. circuit.Gauges.SelectMany(g => Gauge(g, nodes)),
            .. circuit.States.SelectMany(s => State(s, circuit)),
            .. circuit.FlowTest is { } test ? FlowTest(test, nodes) : [],
        ];
    }

    /// <summary>What is wrong with one element where these nodes are known.</summary>
    public static IEnumerable<CircuitProblem> Element(ElementDefinition element, IReadOnlySet<NodeName> nodes, EngineRecord record)
    {
        var shape = element.Shape;
        if (element.From == element.To)
            yield return In("to", new("circuit-ends", "", $"from {element.From} to {element.To}", "An element joins two nodes.", "Name another node at one of its ends."));
        if (element.Vent is { } vent && !shape.HasVent)
            yield return In("vent", new("circuit-vent", "", $"vent {vent}", $"A {element.Kind.Word()} has no spring chamber.", "Leave it out."));
        else if (element.Vent is { } chamber && !nodes.Contains(chamber))
            yield return In("vent", MissingNode(chamber, nodes));
        if (element.Part is { } part && !record.Parts.Any(p => p.Name.IsWithin(part)))
            yield return In("part", new("circuit-part", "", $"\"{part}\"", "Here stands a part of this engine.", Nearest.Advice(part.Path, record.Parts.Select(p => p.Name.Path), "Correct the name, or add the part.")));

        foreach (var twice in element.Values.GroupBy(v => v.Key).Where(g => g.Count() > 1))
            yield return In(twice.Key, new("circuit-key-twice", "", $"{twice.Key} twice", "Each size stands once.", "Leave one of them out."));
        foreach (var value in element.Values)
        {
            if (shape.Key(value.Key) is not { } key)
                yield return In(value.Key, new("circuit-key-unknown", "", $"the key \"{value.Key}\"", $"A {element.Kind.Word()} has the keys {string.Join(", ", shape.Keys.Select(k => k.Name))}.", Nearest.Advice(value.Key, shape.Keys.Select(k => k.Name), "Leave it out, or use one of these.")));
            else if (Value(value.Value, key, record) is { } wrong)
                yield return In(value.Key, wrong);
        }

        var given = element.Values.Select(v => v.Key).ToHashSet(StringComparer.Ordinal);
        foreach (var problem in shape.CheckKeys(given).Concat(shape.Check(k => element.Value(k) is CircuitValue.Given { Quantity: var size } && size.Kind == shape.Key(k)!.Kind ? size.Si : null, element.UnitOf, given)))
            yield return In(problem.Field, problem);

        CircuitProblem In(string key, Problem what) => new(CircuitSection.Elements, element.Name.Text, key, what);
    }

    private static Problem? Value(CircuitValue value, ElementKey key, EngineRecord record)
    {
        switch (value)
        {
            case CircuitValue.Given given when given.Quantity.Kind != key.Kind:
                return new("circuit-kind", "", $"{given.Quantity.Text}, which is of kind {given.Quantity.Kind.Word()}", $"{key.Name} is of kind {key.Kind.Word()}: {key.Says}.", "Correct the unit.");
            case CircuitValue.Taken taken when record.Index.Figure(taken.Figure) is not { } figure:
                return new("circuit-figure", "", $"\"{taken.Figure}\"", "Here stands a quantity, or the name of a dimension or fit of this engine.", FigureNames.Nearest(taken.Figure.ToString(), null, record) is { } near ? $"Did you mean {near}?" : "Correct the name, or add the dimension or fit.");
            case CircuitValue.Taken taken when record.Index.Figure(taken.Figure)!.Kind is var kind && kind != key.Kind:
                return new("circuit-figure-kind", "", $"{taken.Figure}, which is of kind {kind.Word()}", $"{key.Name} is of kind {key.Kind.Word()}: {key.Says}.", "Name a figure of that kind.");
            case CircuitValue.Taken taken when record.Index.Figure(taken.Figure)!.Side is var side && !key.Takes(side):
                return new("circuit-figure-side", "", $"{taken.Figure}, which is stated {side.Word()}", $"{key.Name} is {key.Side.Word()}: {key.Says}.", "Name a figure that is stated so, or state the figure so.");
            default:
                return null;
        }
    }

    /// <summary>What is wrong with the choice of an oil.</summary>
    public static IEnumerable<CircuitProblem> Oil(OilChoice oil)
    {
        if (oil.Points.Count == 1 || oil.Points.DistinctBy(p => p.Temperature.Si).Count() < oil.Points.Count)
            yield return In("points", new("circuit-oil-points", "", $"{oil.Points.Count} {(oil.Points.Count == 1 ? "point" : "points")}", "The viscosity is given at two temperatures or more, each once.", "Write points: [{ at: 40 °C, is: 140 cSt }, { at: 100 °C, is: 14.2 cSt }]."));
        foreach (var point in oil.Points)
        {
            if (CircuitRanges.OilTemperature.Against(point.Temperature, "An oil's temperature") is { } temperature)
                yield return In("points", temperature);
            if (CircuitRanges.KinematicViscosity.Against(point.Viscosity, "The viscosity of an engine's oil") is { } viscosity)
                yield return In("points", viscosity);
        }

        if (oil.Points.Count > 1 && oil.Points.MinBy(p => p.Temperature.Si) is { } cold && oil.Points.MaxBy(p => p.Temperature.Si) is { } warm
            && (warm.Temperature.Si - cold.Temperature.Si < NearestPoints || warm.Viscosity.Si >= cold.Viscosity.Si))
            yield return In("points", new("oil-points", "", $"{cold.Viscosity.Text} at {cold.Temperature.Text}, {warm.Viscosity.Text} at {warm.Temperature.Text}", "Temperatures at least 10 °C apart, the warmer oil the thinner.", "Correct the points."));
        if (oil.Density is { } density && CircuitRanges.DensityAt15.Against(density, "The density of an oil at 15 °C") is { } heavy)
            yield return In("density", heavy);
        if (oil.ShearFactor is { } factor && CircuitRanges.ShearFactor.Against(factor, "The share of its viscosity that an oil keeps in a film") is { } sheared)
            yield return In("shear-factor", sheared);

        static CircuitProblem In(string key, Problem what) => new(CircuitSection.Oil, "", key, what);
    }

    private static IEnumerable<CircuitProblem> Node(NodeDefinition node)
    {
        if (node.Pressure is { } pressure && CircuitRanges.Pressure.Against(pressure, "The gauge pressure of a reservoir") is { } odd)
            yield return new(CircuitSection.Nodes, node.Name.Text, "pressure", odd);
        if (node.Height is { } height && CircuitRanges.Height.Against(height, "The height of a node") is { } far)
            yield return new(CircuitSection.Nodes, node.Name.Text, "height", far);
    }

    private static IEnumerable<CircuitProblem> Gauge(OilGauge gauge, IReadOnlySet<NodeName> nodes)
    {
        if (!nodes.Contains(gauge.At))
            yield return In("at", MissingNode(gauge.At, nodes));
        if (gauge.Height is { } height && CircuitRanges.Height.Against(height, "The height of a gauge") is { } far)
            yield return In("height", far);
        if (gauge.Uncertainty is { } uncertainty && CircuitRanges.GaugeDoubt.Against(uncertainty, "The uncertainty of a gauge") is { } odd)
            yield return In("uncertainty", odd);

        CircuitProblem In(string key, Problem what) => new(CircuitSection.Gauges, gauge.Name.Text, key, what);
    }

    private static IEnumerable<CircuitProblem> State(OilState state, OilCircuit circuit)
    {
        if (CircuitRanges.Speed.Against(state.Speed, "The speed of an engine, whichever way it turns") is { } speed)
            yield return In("speed", speed);
        if (CircuitRanges.OilTemperature.Against(state.OilTemperature, "An oil's temperature") is { } temperature)
            yield return In("oil", temperature);
        foreach (var twice in state.Limits.GroupBy(l => l.Gauge).Where(g => g.Count() > 1))
            yield return In("limits", new("circuit-name-twice", "", $"{twice.Key} twice", "Each gauge has one pair of limits in a state.", "Leave one of them out."));
        foreach (var limit in state.Limits)
        {
            if (circuit.Gauge(limit.Gauge) is null)
                yield return In("limits", new("circuit-gauge-missing", "", $"\"{limit.Gauge}\"", "A limit is for one of the circuit's gauges.", Nearest.Advice(limit.Gauge.Text, circuit.Gauges.Select(g => g.Name.Text), "Correct the name, or add the gauge.")));
            foreach (var pressure in new[] { limit.Least, limit.Greatest }.OfType<Quantity>())
            {
                if (CircuitRanges.Pressure.Against(pressure, "A limit of gauge pressure") is { } odd)
                    yield return In("limits", odd);
            }

            if (limit is { Least: { } least, Greatest: { } greatest } && least.Si > greatest.Si)
                yield return In("limits", new("limits-order", "", $"{limit.Gauge}: least {least.Text}, greatest {greatest.Text}", "The least is below the greatest.", "Correct the one that is wrong."));
        }

        CircuitProblem In(string key, Problem what) => new(CircuitSection.States, state.Name, key, what);
    }

    private static IEnumerable<CircuitProblem> FlowTest(FlowTestSetting test, IReadOnlySet<NodeName> nodes)
    {
        if (!nodes.Contains(test.At))
            yield return In("at", MissingNode(test.At, nodes));
        if (CircuitRanges.FeedPressure.Against(test.Pressure, "The pressure of a flow test") is { } pressure)
            yield return In("pressure", pressure);
        if (CircuitRanges.OilTemperature.Against(test.OilTemperature, "An oil's temperature") is { } temperature)
            yield return In("oil", temperature);
        if (test.Eccentricity is { } e && CircuitRanges.Eccentricity.Against(e, "The eccentricity of the shafts") is { } odd)
            yield return In("eccentricity", odd);

        static CircuitProblem In(string key, Problem what) => new(CircuitSection.FlowTest, "", key, what);
    }

    private static Problem MissingNode(NodeName node, IEnumerable<NodeName> nodes) =>
        new("circuit-node-missing", "", $"\"{node}\"", "Here stands a node that an element ends at, or one of nodes:.", Nearest.Advice(node.Text, nodes.Select(n => n.Text), "Correct the name."));

    /// <summary>Two nodes whose names differ only in small and capital letters are one that was written in two ways.</summary>
    private static IEnumerable<CircuitProblem> Alike(OilCircuit circuit)
    {
        var first = new Dictionary<string, NodeName>(StringComparer.OrdinalIgnoreCase);
        foreach (var node in circuit.Nodes)
            first.TryAdd(node.Name.Text, node.Name);
        foreach (var element in circuit.Elements)
        {
            foreach (var (key, node) in new[] { ("from", element.From), ("to", element.To) })
            {
                if (!first.TryAdd(node.Text, node) && first[node.Text] is var other && other != node)
                    yield return new(CircuitSection.Elements, element.Name.Text, key, new("circuit-node-alike", "", $"\"{node}\", and \"{other}\" before it", "Names of nodes differ in more than small and capital letters.", $"Write {other} if that node is meant, else give this one another name."));
            }
        }
    }

    private static IEnumerable<CircuitProblem> Twice<T>(CircuitSection section, IReadOnlyList<T> entries, Func<T, string> name) => entries
        .GroupBy(name, StringComparer.OrdinalIgnoreCase)
        .Where(g => g.Count() > 1)
        .Select(g => new CircuitProblem(section, g.Key, "", new("circuit-name-twice", "", $"{g.Key} twice", $"Each of the {section.Word()} stands once.", "Leave one out, or give it another name.")));
}
