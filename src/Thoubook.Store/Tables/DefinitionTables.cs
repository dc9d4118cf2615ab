using NodaTime.Text;
using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;

namespace Thoubook.Store.Tables;

/// <summary>The tables of what is defined, and may be edited.</summary>
internal static class DefinitionTables
{
    public static ListTable<Engine, TemperatureState> TemperatureStates { get; } = new(
        "temperature_state",
        "engine",
        e => e.Temperatures,
        new Columns<TemperatureState>()
            .Text("name", s => s.Name)
            .Quantity("everywhere", s => s.Everywhere),
        row => new(row.Text(), row.Quantity(), []));

    public static ListTable<Engine, (int State, PartTemperature Of)> PartTemperatures { get; } = new(
        "part_temperature",
        "engine",
        e => e.Temperatures.SelectMany((s, i) => s.Parts.Select(p => (i, p))),
        new Columns<(int State, PartTemperature Of)>()
            .Integer("state", t => t.State)
            .Text("part", t => t.Of.Part.Path)
            .Quantity("temperature", t => t.Of.Temperature),
        row => ((int)row.Integer(), new(PartName.Of(row.Text()), row.Quantity())));

    public static DefinitionTable<Engine> Engines { get; } = new(
        "engine",
        Owner.Workshop,
        ["name_key"],
        e => e.Name,
        e => e.Revision,
        new Columns<Engine>()
            .Text("name_key", e => NameKey(e.Name))
            .Text("name", e => e.Name.Text)
            .Word("purpose", e => e.Purpose)
            .TextOrNull("mark", e => e.Mark)
            .TextOrNull("serial_number", e => e.SerialNumber)
            .TextOrNull("note", e => e.Note)
            .Integer("invented", e => e.Invented ? 1 : 0)
            .Real("confidence", e => e.Confidence)
            .List("states", e => e.States),
        (row, revision) =>
        {
            row.Text();
            return new Engine(new EngineName(row.Text()), row.Word<Purpose>())
            {
                Revision = revision,
                Mark = row.TextOrNull(),
                SerialNumber = row.TextOrNull(),
                Note = row.TextOrNull(),
                Invented = row.Integer() != 0,
                Confidence = row.Real(),
                States = row.List(),
            };
        })
    { Lists = [TemperatureStates, PartTemperatures] };

    public static DefinitionTable<Document> Documents { get; } = new(
        "document",
        Owner.Engine,
        ["name"],
        d => d.Name,
        d => d.Revision,
        new Columns<Document>()
            .Text("name", d => d.Name.Text)
            .TextOrNull("title", d => d.Title)
            .TextOrNull("edition", d => d.Edition)
            .TextOrNull("amendment", d => d.Amendment)
            .Word("rule", d => d.Rule)
            .List("marks", d => d.Marks)
            .TextOrNull("note", d => d.Note),
        (row, revision) => new Document(new DocumentName(row.Text()))
        {
            Revision = revision,
            Title = row.TextOrNull(),
            Edition = row.TextOrNull(),
            Amendment = row.TextOrNull(),
            Rule = row.Word<CombiningRule>(),
            Marks = row.List(),
            Note = row.TextOrNull(),
        });

    public static DefinitionTable<Part> Parts { get; } = new(
        "part",
        Owner.Engine,
        ["name"],
        p => p.Name,
        p => p.Revision,
        new Columns<Part>()
            .Text("name", p => p.Name.Path)
            .Word("intent", p => p.Intent)
            .TextOrNull("material", p => p.Material)
            .TextOrNull("modification_state", p => p.ModificationState)
            .TextOrNull("in_its_stead", p => p.InItsStead)
            .TextOrNull("note", p => p.Note)
            .TextOrNull("deleted_by", p => p.DeletedBy)
            .Integer("function_unknown", p => p.FunctionUnknown ? 1 : 0)
            .List("asks", p => p.Asks),
        (row, revision) => new Part(PartName.Of(row.Text()))
        {
            Revision = revision,
            Intent = row.Word<PartIntent>(),
            Material = row.TextOrNull(),
            ModificationState = row.TextOrNull(),
            InItsStead = row.TextOrNull(),
            Note = row.TextOrNull(),
            DeletedBy = row.TextOrNull(),
            FunctionUnknown = row.Integer() != 0,
            Asks = row.List(),
        });

    public static DefinitionTable<Piece> Pieces { get; } = new(
        "piece",
        Owner.Workshop,
        ["tag"],
        p => p.Tag,
        p => p.Revision,
        new Columns<Piece>()
            .Text("tag", p => p.Tag.Text)
            .Word("origin", p => p.Origin)
            .TextOrNull("made_for", p => p.For?.Path)
            .TextOrNull("modification_state", p => p.ModificationState)
            .TextOrNull("repair_size", p => p.RepairSize)
            .TextOrNull("material", p => p.Material)
            .TextOrNull("note", p => p.Note),
        (row, revision) => new Piece(new PieceTag(row.Text()))
        {
            Revision = revision,
            Origin = row.Word<PieceOrigin>(),
            For = row.TextOrNull() is { } part ? PartName.Of(part) : null,
            ModificationState = row.TextOrNull(),
            RepairSize = row.TextOrNull(),
            Material = row.TextOrNull(),
            Note = row.TextOrNull(),
        });

    public static DefinitionTable<Gauge> Gauges { get; } = new(
        "gauge",
        Owner.Workshop,
        ["tag"],
        g => g.Tag,
        g => g.Revision,
        new Columns<Gauge>()
            .Text("tag", g => g.Tag.Text)
            .TextOrNull("what", g => g.What)
            .QuantityOrNull("resolution", g => g.Resolution)
            .QuantityOrNull("uncertainty", g => g.Uncertainty)
            .QuantityOrNull("repeatability", g => g.Repeatability)
            .TextOrNull("material", g => g.Material)
            .TextOrNull("checked", g => g.Checked is { } day ? LocalDatePattern.Iso.Format(day) : null)
            .TextOrNull("note", g => g.Note),
        (row, revision) => new Gauge(new GaugeTag(row.Text()))
        {
            Revision = revision,
            What = row.TextOrNull(),
            Resolution = row.QuantityOrNull(),
            Uncertainty = row.QuantityOrNull(),
            Repeatability = row.QuantityOrNull(),
            Material = row.TextOrNull(),
            Checked = row.TextOrNull() is { } day ? LocalDatePattern.Iso.Parse(day).Value : null,
            Note = row.TextOrNull(),
        });

    /// <summary>The name by which an engine is found: without regard to case.</summary>
    public static string NameKey(EngineName name) => name.Text.ToUpperInvariant();
}
