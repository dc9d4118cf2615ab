using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Record.Documents;

namespace Thoubook.Store.Tables;

/// <summary>The tables of spaces, joints and steps, and of what goes with them. What they name stands as text, so that a plan can be written before what it names.</summary>
internal static class ClosingTables
{
    public static DefinitionTable<Space> Spaces { get; } = new(
        "space",
        Owner.Engine,
        ["name"],
        s => s.Name,
        s => s.Revision,
        new Columns<Space>()
            .Text("name", s => s.Name.Text)
            .TextOrNull("what", s => s.What)
            .TextOrNull("lies_in", s => s.In?.Text)
            .List("parts", s => s.Parts.Select(p => p.Path))
            .TextOrNull("note", s => s.Note),
        (row, revision) => new Space(new SpaceName(row.Text()))
        {
            Revision = revision,
            What = row.TextOrNull(),
            In = row.TextOrNull() is { } around ? new SpaceName(around) : null,
            Parts = [.. row.List().Select(PartName.Of)],
            Note = row.TextOrNull(),
        });

    public static DefinitionTable<Joint> Joints { get; } = new(
        "joint",
        Owner.Engine,
        ["name"],
        j => j.Name,
        j => j.Revision,
        new Columns<Joint>()
            .Text("name", j => j.Name.Text)
            .List("parts", j => j.Parts.Select(p => p.Path))
            .TextOrNull("lies_in", j => j.In?.Text)
            .TextOrNull("thread", j => j.Thread)
            .Integer("number", j => j.Number ?? 0)
            .TextOrNull("tightening", j => j.Tightening)
            .TextOrNull("locking", j => j.Locking)
            .TextOrNull("sealing", j => j.Sealing)
            .Integer("inspected", j => j.Inspected ? 1 : 0)
            .ReferenceOrNull("document_id", "document", j => j.Source?.Document)
            .TextOrNull("document_row", j => j.Source?.Row)
            .TextOrNull("note", j => j.Note)
            .List("asks", j => j.Asks),
        (row, revision) => new Joint(new JointName(row.Text()))
        {
            Revision = revision,
            Parts = [.. row.List().Select(PartName.Of)],
            In = row.TextOrNull() is { } around ? new SpaceName(around) : null,
            Thread = row.TextOrNull(),
            Number = (int)row.Integer() is var number and > 0 ? number : null,
            Tightening = row.TextOrNull(),
            Locking = row.TextOrNull(),
            Sealing = row.TextOrNull(),
            Inspected = row.Integer() != 0,
            Source = Source(row),
            Note = row.TextOrNull(),
            Asks = row.List(),
        });

    public static ListTable<Step, HoldPoint> Holds { get; } = new(
        "hold_point",
        "step",
        s => s.Holds,
        new Columns<HoldPoint>()
            .Word("kind", h => h.Kind)
            .Text("what", h => h.What)
            .ReferenceOrNull("figure_id", "figure", h => h.Figure)
            .TextOrNull("part", h => h.Part?.Path),
        row => new(row.Word<HoldKind>(), row.Text()) { Figure = row.FigureOrNull(), Part = row.TextOrNull() is { } part ? PartName.Of(part) : null });

    public static ListTable<Step, ComesAfter> After { get; } = new(
        "comes_after",
        "step",
        s => s.After,
        new Columns<ComesAfter>()
            .Text("step", a => a.Step.Text)
            .TextOrNull("why", a => a.Why),
        row => new(new StepName(row.Text()), row.TextOrNull()));

    public static DefinitionTable<Step> Steps { get; } = new(
        "step",
        Owner.Engine,
        ["name"],
        s => s.Name,
        s => s.Revision,
        new Columns<Step>()
            .Text("name", s => s.Name.Text)
            .Word("kind", s => s.Kind)
            .TextOrNull("what", s => s.What)
            .WordOrNull("attitude", s => s.Attitude)
            .List("tools", s => s.Tools)
            .QuantityOrNull("time", s => s.Time)
            .QuantityOrNull("cure", s => s.Cure)
            .QuantityOrNull("open", s => s.Open)
            .Integer("people", s => s.People)
            .List("places", s => s.Places.Select(p => p.Path))
            .List("needs", s => s.Needs.Select(p => p.Path))
            .List("joints", s => s.Joints.Select(j => j.Text))
            .WordOrNull("brings", s => s.Brings)
            .List("lies_in", s => s.In.Select(i => i.Text))
            .List("closes", s => s.Closes.Select(c => c.Text))
            .List("measures", s => s.Measures.Select(m => m.ToString()))
            .Integer("second_look", s => s.SecondLook ? 1 : 0)
            .TextOrNull("photograph", s => s.Photograph)
            .List("spoils", s => s.Spoils)
            .ReferenceOrNull("document_id", "document", s => s.Source?.Document)
            .TextOrNull("document_row", s => s.Source?.Row)
            .TextOrNull("note", s => s.Note),
        (row, revision) => new Step(new StepName(row.Text()))
        {
            Revision = revision,
            Kind = row.Word<StepKind>(),
            What = row.TextOrNull(),
            Attitude = row.WordOrNull<Attitude>(),
            Tools = row.List(),
            Time = row.QuantityOrNull(),
            Cure = row.QuantityOrNull(),
            Open = row.QuantityOrNull(),
            People = (int)row.Integer(),
            Places = [.. row.List().Select(PartName.Of)],
            Needs = [.. row.List().Select(PartName.Of)],
            Joints = [.. row.List().Select(j => new JointName(j))],
            Brings = row.WordOrNull<JointStage>(),
            In = [.. row.List().Select(s => new SpaceName(s))],
            Closes = [.. row.List().Select(s => new SpaceName(s))],
            Measures = [.. row.List().Select(FigureName.Of)],
            SecondLook = row.Integer() != 0,
            Photograph = row.TextOrNull(),
            Spoils = row.List(),
            Source = Source(row),
            Note = row.TextOrNull(),
        })
    { Lists = [Holds, After] };

    public static DefinitionTable<Together> Together { get; } = new(
        "together",
        Owner.Engine,
        ["name"],
        t => t.Name,
        t => t.Revision,
        new Columns<Together>()
            .Text("name", t => t.Name.Text)
            .List("parts", t => t.Parts.Select(p => p.Path))
            .TextOrNull("why", t => t.Why)
            .TextOrNull("note", t => t.Note),
        (row, revision) => new Together(new TogetherName(row.Text()))
        {
            Revision = revision,
            Parts = [.. row.List().Select(PartName.Of)],
            Why = row.TextOrNull(),
            Note = row.TextOrNull(),
        });

    public static DefinitionTable<KeptTool> Tools { get; } = new(
        "tool",
        Owner.Engine,
        ["name_key"],
        t => t.Name,
        t => t.Revision,
        new Columns<KeptTool>()
            .Text("name_key", t => t.Name.Text.ToUpperInvariant())
            .Text("name", t => t.Name.Text)
            .TextOrNull("what", t => t.What)
            .TextOrNull("made", t => t.Made)
            .TextOrNull("kept", t => t.Kept)
            .TextOrNull("note", t => t.Note),
        (row, revision) =>
        {
            row.Text();
            return new KeptTool(new ToolName(row.Text()))
            {
                Revision = revision,
                What = row.TextOrNull(),
                Made = row.TextOrNull(),
                Kept = row.TextOrNull(),
                Note = row.TextOrNull(),
            };
        });

    public static DefinitionTable<PermissionItem> PermissionItems { get; } = new(
        "permission_item",
        Owner.Engine,
        ["name"],
        p => p.Name,
        p => p.Revision,
        new Columns<PermissionItem>()
            .Text("name", p => p.Name.Text)
            .TextOrNull("what", p => p.What)
            .List("relies_on", p => p.On.Select(i => i.ToString()))
            .List("purposes", p => p.Purposes.Select(u => u.Word()))
            .TextOrNull("note", p => p.Note),
        (row, revision) => new PermissionItem(new PermissionName(row.Text()))
        {
            Revision = revision,
            What = row.TextOrNull(),
            On = row.ItemList(),
            Purposes = row.WordList<Purpose>(),
            Note = row.TextOrNull(),
        });

    public static IReadOnlyList<Table> All { get; } = [Spaces, Joints, Steps, Holds, After, Together, Tools, PermissionItems];

    private static Citation? Source(RowReader row)
    {
        var (document, where) = (row.DocumentOrNull(), row.TextOrNull());
        return document is { } name ? new Citation(name, where) : null;
    }
}
