using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Record.Quantities;

namespace Thoubook.Store.Tables;

/// <summary>The tables of what was done and agreed while an engine was closed up.</summary>
internal static class ClosingFactTables
{
    public static FactTable<JointState> JointStates { get; } = new(
        "joint_state",
        new Columns<JointState>()
            .Reference("joint_id", "joint", j => j.Joint)
            .Word("stage", j => j.Stage)
            .QuantityOrNull("applied", j => j.Applied)
            .TextOrNull("note", j => j.Note),
        (head, row) => new(head.Id, head.At, head.By, row.Joint(), row.Word<JointStage>())
        {
            Sequence = head.Sequence,
            ReliesOn = head.ReliesOn,
            Applied = row.QuantityOrNull(),
            Note = row.TextOrNull(),
        });

    public static FactTable<Accepted> Acceptances { get; } = new(
        "acceptance",
        new Columns<Accepted>()
            .Reference("step_id", "step", a => a.Step)
            .Text("hold", a => a.Hold)
            .TextOrNull("why", a => a.Why),
        (head, row) => new(head.Id, head.At, head.By, row.Step(), row.Text()) { Sequence = head.Sequence, ReliesOn = head.ReliesOn, Why = row.TextOrNull() });

    public static FactTable<Signature> Signatures { get; } = new(
        "signature",
        new Columns<Signature>()
            .Reference("step_id", "step", s => s.Step)
            .Integer("second_look", s => s.SecondLook ? 1 : 0)
            .Integer("photographed", s => s.Photographed ? 1 : 0)
            .TextOrNull("note", s => s.Note),
        (head, row) => new(head.Id, head.At, head.By, row.Step())
        {
            Sequence = head.Sequence,
            ReliesOn = head.ReliesOn,
            SecondLook = row.Integer() != 0,
            Photographed = row.Integer() != 0,
            Note = row.TextOrNull(),
        });

    public static FactTable<Departure> Departures { get; } = new(
        "departure",
        new Columns<Departure>()
            .Text("what", d => d.What)
            .Text("why", d => d.Why)
            .Word("kind", d => d.Kind)
            .ReferenceOrNull("piece_id", "piece", d => d.Piece)
            .ReferenceOrNull("joint_id", "joint", d => d.Joint)
            .TextOrNull("item", d => d.Item?.ToString())
            .TextOrNull("evidence", d => d.Evidence)
            .List("purposes", d => d.Purposes.Select(p => p.Word()))
            .TextOrNull("undoing", d => d.Undoing),
        (head, row) => new(head.Id, head.At, head.By, row.Text(), row.Text())
        {
            Sequence = head.Sequence,
            ReliesOn = head.ReliesOn,
            Kind = row.Word<DepartureKind>(),
            Piece = row.PieceOrNull(),
            Joint = row.JointOrNull(),
            Item = row.ItemOrNull(),
            Evidence = row.TextOrNull(),
            Purposes = row.WordList<Purpose>(),
            Undoing = row.TextOrNull(),
        });

    public static FactTable<Owed> Debts { get; } = new(
        "debt",
        new Columns<Owed>()
            .Text("what", o => o.What)
            .Word("deadline", o => o.Deadline)
            .TextOrNull("item", o => o.Item?.ToString())
            .TextOrNull("why", o => o.Why),
        (head, row) => new(head.Id, head.At, head.By, row.Text(), row.Word<Deadline>()) { Sequence = head.Sequence, Item = row.ItemOrNull(), Why = row.TextOrNull() });

    public static FactTable<Settled> Settlements { get; } = new(
        "settlement",
        new Columns<Settled>()
            .Reference("of_sequence", "entry", s => s.Of)
            .TextOrNull("how", s => s.How),
        (head, row) => new(head.Id, head.At, head.By, row.Fact()) { Sequence = head.Sequence, How = row.TextOrNull() });

    public static FactTable<Counted> Counts { get; } = new(
        "counted",
        new Columns<Counted>()
            .Text("what", c => c.What)
            .Integer("number", c => c.Number)
            .Word("way", c => c.Way)
            .TextOrNull("space", c => c.Space?.Text)
            .TextOrNull("note", c => c.Note),
        (head, row) => new(head.Id, head.At, head.By, row.Text(), (int)row.Integer(), row.Word<CountedWay>())
        {
            Sequence = head.Sequence,
            Space = row.TextOrNull() is { } space ? new SpaceName(space) : null,
            Note = row.TextOrNull(),
        });

    public static FactTable<Undone> Undoings { get; } = new(
        "undoing",
        new Columns<Undone>()
            .Reference("of_sequence", "entry", u => u.Of)
            .TextOrNull("why", u => u.Why),
        (head, row) => new(head.Id, head.At, head.By, row.Fact()) { Sequence = head.Sequence, Why = row.TextOrNull() });

    public static FactTable<AsFound> AsFound { get; } = new(
        "as_found",
        new Columns<AsFound>()
            .Text("what", f => f.What)
            .TextOrNull("part", f => f.Part?.Path)
            .ReferenceOrNull("joint_id", "joint", f => f.Joint)
            .ReferenceOrNull("figure_id", "figure", f => f.Figure)
            .Integer("tight_is_negative", f => f.Value?.Signs == FitSigns.TightIsNegative ? 1 : 0)
            .QuantityOrNull("value", f => f.Value)
            .TextOrNull("words", f => f.Words)
            .TextOrNull("tag", f => f.Tag?.Text)
            .Integer("skipped", f => f.Skipped ? 1 : 0),
        (head, row) => new(head.Id, head.At, head.By, row.Text())
        {
            Sequence = head.Sequence,
            Part = row.TextOrNull() is { } part ? PartName.Of(part) : null,
            Joint = row.JointOrNull(),
            Figure = row.FigureOrNull(),
            Value = row.QuantityOrNull(row.Integer() != 0 ? FitSigns.TightIsNegative : FitSigns.NotHere),
            Words = row.TextOrNull(),
            Tag = row.TextOrNull() is { } tag ? new PieceTag(tag) : null,
            Skipped = row.Integer() != 0,
        });

    public static FactTable<PermissionLine> Permissions { get; } = new(
        "permission_line",
        new Columns<PermissionLine>()
            .Text("line", p => p.Line.ToString())
            .Word("purpose", p => p.Purpose)
            .TextOrNull("note", p => p.Note),
        (head, row) => new(head.Id, head.At, head.By, row.Line(), row.Word<Purpose>()) { Sequence = head.Sequence, ReliesOn = head.ReliesOn, Note = row.TextOrNull() });

    public static IReadOnlyList<FactTable> All { get; } = [JointStates, Acceptances, Signatures, Departures, Debts, Settlements, Counts, Undoings, AsFound, Permissions];
}
