using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;

namespace Thoubook.Store.Tables;

/// <summary>The tables of what was found, decided and done.</summary>
internal static class FactTables
{
    public static FactTable<Reading> Readings { get; } = new(
        "reading",
        new Columns<Reading>()
            .Reference("piece_id", "piece", r => r.Piece)
            .Reference("figure_id", "figure", r => r.Figure)
            .Quantity("value", r => r.Value)
            .Text("place", r => r.Place.Text)
            .ReferenceOrNull("gauge_id", "gauge", r => r.Gauge)
            .QuantityOrNull("temperature", r => r.Temperature)
            .TextOrNull("note", r => r.Note),
        (head, row) => new(head.Id, head.At, head.By, row.Piece(), row.Figure(), row.Quantity())
        {
            Sequence = head.Sequence,
            Place = row.Place(),
            Gauge = row.GaugeOrNull(),
            Temperature = row.QuantityOrNull(),
            Note = row.TextOrNull(),
        });

    public static FactTable<Chosen> Choices { get; } = new(
        "chosen",
        new Columns<Chosen>()
            .Reference("piece_id", "piece", c => c.Piece)
            .Reference("part_id", "part", c => c.Part),
        (head, row) => new(head.Id, head.At, head.By, row.Piece(), row.Part()) { Sequence = head.Sequence });

    public static FactTable<Placed> Placings { get; } = new(
        "placed",
        new Columns<Placed>()
            .Reference("piece_id", "piece", p => p.Piece)
            .Reference("part_id", "part", p => p.Part),
        (head, row) => new(head.Id, head.At, head.By, row.Piece(), row.Part()) { Sequence = head.Sequence });

    public static FactTable<Lifted> Liftings { get; } = new(
        "lifted",
        new Columns<Lifted>()
            .Reference("of_sequence", "entry", l => l.Of)
            .TextOrNull("why", l => l.Why),
        (head, row) => new(head.Id, head.At, head.By, row.Fact()) { Sequence = head.Sequence, Why = row.TextOrNull() });

    public static FactTable<Work> Works { get; } = new(
        "work",
        new Columns<Work>()
            .Reference("piece_id", "piece", w => w.Piece)
            .Text("what", w => w.What)
            .List("altered", w => w.Altered)
            .TextOrNull("repair_size", w => w.RepairSize),
        (head, row) => new(head.Id, head.At, head.By, row.Piece(), row.Text())
        {
            Sequence = head.Sequence,
            Altered = row.List(),
            RepairSize = row.TextOrNull(),
        });

    public static FactTable<Finding> Findings { get; } = new(
        "finding",
        new Columns<Finding>()
            .ReferenceOrNull("piece_id", "piece", f => f.Piece)
            .ReferenceOrNull("part_id", "part", f => f.Part)
            .Text("what", f => f.What)
            .Word("outcome", f => f.Outcome),
        (head, row) => new(head.Id, head.At, head.By, row.PieceOrNull(), row.PartOrNull(), row.Text())
        {
            Sequence = head.Sequence,
            Outcome = row.Word<FindingOutcome>(),
        });

    public static FactTable<Check> Checks { get; } = new(
        "fit_check",
        new Columns<Check>()
            .Reference("figure_id", "figure", c => c.Figure)
            .Quantity("value", c => c.Value)
            .Word("method", c => c.Method)
            .Text("place", c => c.Place.Text)
            .ReferenceOrNull("gauge_id", "gauge", c => c.Gauge)
            .QuantityOrNull("temperature", c => c.Temperature)
            .TextOrNull("note", c => c.Note),
        (head, row) => new(head.Id, head.At, head.By, row.Figure(), row.Quantity(FitSigns.TightIsNegative))
        {
            Sequence = head.Sequence,
            ReliesOn = head.ReliesOn,
            Method = row.Word<CheckMethod>(),
            Place = row.Place(),
            Gauge = row.GaugeOrNull(),
            Temperature = row.QuantityOrNull(),
            Note = row.TextOrNull(),
        });

    public static FactTable<Decision> Decisions { get; } = new(
        "decision",
        new Columns<Decision>()
            .Word("choice", d => d.Choice)
            .ReferenceOrNull("piece_id", "piece", d => d.Piece)
            .ReferenceOrNull("figure_id", "figure", d => d.Figure)
            .Word("basis", d => d.Basis)
            .TextOrNull("why", d => d.Why),
        (head, row) => new(head.Id, head.At, head.By, row.Word<DecisionChoice>())
        {
            Sequence = head.Sequence,
            ReliesOn = head.ReliesOn,
            Piece = row.PieceOrNull(),
            Figure = row.FigureOrNull(),
            Basis = row.Word<DecisionBasis>(),
            Why = row.TextOrNull(),
        });

    public static FactTable<FlowTest> FlowTests { get; } = new(
        "flow_test",
        new Columns<FlowTest>()
            .Text("fed_at", t => t.FedAt.Text)
            .Quantity("pressure", t => t.Pressure)
            .Quantity("oil_temperature", t => t.OilTemperature)
            .Quantity("flow", t => t.Flow)
            .Text("caught", t => CaughtText.Write(t.Caught))
            .TextOrNull("note", t => t.Note),
        (head, row) =>
        {
            var fedAt = new NodeName(row.Text());
            return new(head.Id, head.At, head.By, row.Quantity(), row.Quantity(), row.Quantity())
            {
                Sequence = head.Sequence,
                ReliesOn = head.ReliesOn,
                FedAt = fedAt,
                Caught = row.Caught(),
                Note = row.TextOrNull(),
            };
        });

    public static FactTable<Calibration> Calibrations { get; } = new(
        "calibration",
        new Columns<Calibration>()
            .Reference("of_sequence", "entry", c => c.Of)
            .TextOrNull("why", c => c.Why),
        (head, row) => new(head.Id, head.At, head.By, row.Fact()) { Sequence = head.Sequence, Why = row.TextOrNull() });

    public static FactTable<StrikeOut> StrikeOuts { get; } = new(
        "strike_out",
        new Columns<StrikeOut>()
            .Reference("of_sequence", "entry", s => s.Of)
            .Text("why", s => s.Why),
        (head, row) => new(head.Id, head.At, head.By, row.Fact(), row.Text()) { Sequence = head.Sequence });

    public static IReadOnlyList<FactTable> All { get; } = [Readings, Choices, Placings, Liftings, Works, Findings, Checks, Decisions, FlowTests, Calibrations, .. ClosingFactTables.All, StrikeOuts];

    private static readonly Dictionary<Type, FactTable> ByType = All.ToDictionary(t => t.Holds);

    public static FactTable For(Fact fact) => ByType[fact.GetType()];
}
