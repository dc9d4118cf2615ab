using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Documents;

namespace Thoubook.Store.Tables;

/// <summary>The circuit of an engine: one definition, with everything in it as lists.</summary>
internal static class CircuitTables
{
    /// <summary>By what the one circuit of an engine is known.</summary>
    public const string Key = "oil";

    public static ListTable<OilCircuit, ViscosityPoint> Points { get; } = new(
        "viscosity_point",
        "circuit",
        c => c.Oil.Points,
        new Columns<ViscosityPoint>()
            .Quantity("temperature", p => p.Temperature)
            .Quantity("viscosity", p => p.Viscosity),
        row => new(row.Quantity(), row.Quantity()));

    public static ListTable<OilCircuit, NodeDefinition> Nodes { get; } = new(
        "circuit_node",
        "circuit",
        c => c.Nodes,
        new Columns<NodeDefinition>()
            .Text("name", n => n.Name.Text)
            .QuantityOrNull("pressure", n => n.Pressure)
            .QuantityOrNull("height", n => n.Height)
            .TextOrNull("label", n => n.Label),
        row => new(new NodeName(row.Text())) { Pressure = row.QuantityOrNull(), Height = row.QuantityOrNull(), Label = row.TextOrNull() });

    public static ListTable<OilCircuit, ElementDefinition> Elements { get; } = new(
        "circuit_element",
        "circuit",
        c => c.Elements,
        new Columns<ElementDefinition>()
            .Text("name", e => e.Name.Text)
            .Integer("changed_in", e => e.Revision)
            .Word("kind", e => e.Kind)
            .Text("from_node", e => e.From.Text)
            .Text("to_node", e => e.To.Text)
            .TextOrNull("vent_node", e => e.Vent?.Text)
            .Integer("blanked", e => e.Blanked ? 1 : 0)
            .TextOrNull("part", e => e.Part?.Path)
            .TextOrNull("label", e => e.Label)
            .TextOrNull("note", e => e.Note),
        row =>
        {
            var name = new ElementName(row.Text());
            var revision = (int)row.Integer();
            return new(name, row.Word<ElementKind>(), new NodeName(row.Text()), new NodeName(row.Text()))
            {
                Revision = revision,
                Vent = row.TextOrNull() is { } vent ? new NodeName(vent) : null,
                Blanked = row.Integer() != 0,
                Part = row.TextOrNull() is { } part ? PartName.Of(part) : null,
                Label = row.TextOrNull(),
                Note = row.TextOrNull(),
            };
        });

    public static ListTable<OilCircuit, (int Element, ElementValue Value)> Values { get; } = new(
        "element_value",
        "circuit",
        c => c.Elements.SelectMany((e, i) => e.Values.Select(v => (i, v))),
        new Columns<(int Element, ElementValue Value)>()
            .Integer("element", v => v.Element)
            .Text("key", v => v.Value.Key)
            .QuantityOrNull("given", v => (v.Value.Value as CircuitValue.Given)?.Quantity)
            .ReferenceOrNull("figure_id", "figure", v => (v.Value.Value as CircuitValue.Taken)?.Figure),
        row =>
        {
            var (element, key, given, figure) = ((int)row.Integer(), row.Text(), row.QuantityOrNull(), row.FigureOrNull());
            return (element, new(key, given is not null ? new CircuitValue.Given(given) : new CircuitValue.Taken(figure!.Value)));
        });

    public static ListTable<OilCircuit, OilGauge> Gauges { get; } = new(
        "oil_gauge",
        "circuit",
        c => c.Gauges,
        new Columns<OilGauge>()
            .Text("name", g => g.Name.Text)
            .Text("at_node", g => g.At.Text)
            .QuantityOrNull("height", g => g.Height)
            .QuantityOrNull("uncertainty", g => g.Uncertainty),
        row => new(new OilGaugeName(row.Text()), new NodeName(row.Text())) { Height = row.QuantityOrNull(), Uncertainty = row.QuantityOrNull() });

    public static ListTable<OilCircuit, OilState> States { get; } = new(
        "oil_state",
        "circuit",
        c => c.States,
        new Columns<OilState>()
            .Text("name", s => s.Name)
            .Quantity("speed", s => s.Speed)
            .Quantity("oil_temperature", s => s.OilTemperature),
        row => new(row.Text(), row.Quantity(), row.Quantity()));

    public static ListTable<OilCircuit, (int State, GaugeLimit Limit)> Limits { get; } = new(
        "oil_gauge_limit",
        "circuit",
        c => c.States.SelectMany((s, i) => s.Limits.Select(l => (i, l))),
        new Columns<(int State, GaugeLimit Limit)>()
            .Integer("state", l => l.State)
            .Text("gauge", l => l.Limit.Gauge.Text)
            .QuantityOrNull("least", l => l.Limit.Least)
            .QuantityOrNull("greatest", l => l.Limit.Greatest)
            .ReferenceOrNull("document_id", "document", l => l.Limit.Source?.Document)
            .TextOrNull("document_row", l => l.Limit.Source?.Row),
        row =>
        {
            var state = (int)row.Integer();
            var limit = new GaugeLimit(new OilGaugeName(row.Text())) { Least = row.QuantityOrNull(), Greatest = row.QuantityOrNull() };
            var (document, documentRow) = (row.DocumentOrNull(), row.TextOrNull());
            return (state, document is { } name ? limit with { Source = new Citation(name, documentRow) } : limit);
        });

    public static DefinitionTable<OilCircuit> Circuits { get; } = new(
        "circuit",
        Owner.Engine,
        [],
        _ => Key,
        c => c.Revision,
        new Columns<OilCircuit>()
            .TextOrNull("grade", c => c.Oil.Grade)
            .QuantityOrNull("density", c => c.Oil.Density)
            .QuantityOrNull("shear_factor", c => c.Oil.ShearFactor)
            .TextOrNull("flow_test_at", c => c.FlowTest?.At.Text)
            .QuantityOrNull("flow_test_pressure", c => c.FlowTest?.Pressure)
            .QuantityOrNull("flow_test_oil_temperature", c => c.FlowTest?.OilTemperature)
            .QuantityOrNull("flow_test_eccentricity", c => c.FlowTest?.Eccentricity),
        (row, revision) =>
        {
            var oil = new OilChoice { Grade = row.TextOrNull(), Density = row.QuantityOrNull(), ShearFactor = row.QuantityOrNull() };
            var (at, pressure, temperature, eccentricity) = (row.TextOrNull(), row.QuantityOrNull(), row.QuantityOrNull(), row.QuantityOrNull());
            return new OilCircuit
            {
                Revision = revision,
                Oil = oil,
                FlowTest = at is null ? null : new FlowTestSetting(new NodeName(at), pressure!, temperature!) { Eccentricity = eccentricity },
            };
        })
    { Lists = [Points, Nodes, Elements, Values, Gauges, States, Limits] };

    public static IReadOnlyList<Table> All { get; } = [Circuits, Points, Nodes, Elements, Values, Gauges, States, Limits];

    /// <summary>A circuit as it is written: each element says in which revision it was last changed.</summary>
    public static OilCircuit Dated(OilCircuit given, OilCircuit? there)
    {
        var before = there?.Elements.ToDictionary(e => e.Name) ?? [];
        return given with
        {
            Elements = [.. given.Elements.Select(e => e with { Revision = before.GetValueOrDefault(e.Name) is { } was && Same(was, e) ? was.Revision : (there?.Revision ?? 0) + 1 })],
        };
    }

    private static bool Same(ElementDefinition a, ElementDefinition b) => a.Values.SequenceEqual(b.Values) && a with { Values = b.Values, Revision = b.Revision } == b;
}
