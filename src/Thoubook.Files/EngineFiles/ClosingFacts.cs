using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Files.EngineFiles;

/// <summary>The keys of what was done and agreed while the engine was closed up.</summary>
internal static class ClosingFacts
{
    private static readonly Form<IReadOnlyList<FactId>> Ids = Forms.List(Forms.OneId);

    private static readonly Form<PieceTag?> Tag = new ScalarForm<PieceTag?>((text, _) => PieceTag.TryRead(text, out var tag, out var problem) ? tag : problem, tag => tag?.Text);

    private static readonly Form<LineKey?> Line = new ScalarForm<LineKey?>((text, _) => LineKey.TryRead(text, out var line, out var problem) ? line : problem, line => line?.ToString());

    public static readonly FactList<JointState> JointStates = new(
        "joint-states",
        new(default, default, "", default, default),
        Facts.Signed(new Shape<JointState>("a joint's state")
            .Key("joint", References.Joint, j => j.Joint, (j, v) => j with { Joint = v!.Value }, Need.Required)
            .Key("stage", Forms.WordOrNone<JointStage>(), j => j.Stage, (j, v) => j with { Stage = v!.Value }, Need.Required)
            .Key("applied", Forms.GaugeQuantity, j => j.Applied, (j, v) => j with { Applied = v })
            .Key("relies-on", Ids, j => j.ReliesOn, (j, v) => j with { ReliesOn = v })
            .Key("note", Forms.Text, j => j.Note, (j, v) => j with { Note = v })),
        j => [j.Joint.Text, j.Stage.Word(), j.Applied?.Text, j.Applied?.Unit.Code, .. Said(j.ReliesOn), j.Note]);

    public static readonly FactList<Accepted> Acceptances = new(
        "acceptances",
        new(default, default, "", default, ""),
        Facts.Signed(new Shape<Accepted>("an acceptance")
            .Key("step", References.Step, a => a.Step, (a, v) => a with { Step = v!.Value }, Need.Required)
            .Key("hold", Forms.Text, a => a.Hold, (a, v) => a with { Hold = v ?? "" }, Need.Required)
            .Key("why", Forms.Text, a => a.Why, (a, v) => a with { Why = v })
            .Key("relies-on", Ids, a => a.ReliesOn, (a, v) => a with { ReliesOn = v })),
        a => [a.Step.Text, a.Hold, a.Why, .. Said(a.ReliesOn)]);

    public static readonly FactList<Signature> Signatures = new(
        "signatures",
        new(default, default, "", default),
        Facts.Signed(new Shape<Signature>("a signature")
            .Key("step", References.Step, s => s.Step, (s, v) => s with { Step = v!.Value }, Need.Required)
            .Key("second-look", Forms.YesNo, s => s.SecondLook, (s, v) => s with { SecondLook = v })
            .Key("photographed", Forms.YesNo, s => s.Photographed, (s, v) => s with { Photographed = v })
            .Key("relies-on", Ids, s => s.ReliesOn, (s, v) => s with { ReliesOn = v })
            .Key("note", Forms.Text, s => s.Note, (s, v) => s with { Note = v })),
        s => [s.Step.Text, s.SecondLook ? "second look" : null, s.Photographed ? "photographed" : null, .. Said(s.ReliesOn), s.Note]);

    public static readonly FactList<Departure> Departures = new(
        "departures",
        new(default, default, "", "", ""),
        Facts.Signed(new Shape<Departure>("a departure")
            .Key("what", Forms.Text, d => d.What, (d, v) => d with { What = v ?? "" }, Need.Required)
            .Key("why", Forms.Text, d => d.Why, (d, v) => d with { Why = v ?? "" }, Need.Required)
            .Key("kind", Forms.Word(DepartureKind.Other), d => d.Kind, (d, v) => d with { Kind = v })
            .Key("piece", References.Piece, d => d.Piece, (d, v) => d with { Piece = v })
            .Key("joint", References.Joint, d => d.Joint, (d, v) => d with { Joint = v })
            .Key("item", References.Item, d => d.Item, (d, v) => d with { Item = v })
            .Key("evidence", Forms.Text, d => d.Evidence, (d, v) => d with { Evidence = v })
            .Key("purposes", Forms.List(Forms.OneWord<Purpose>()), d => d.Purposes, (d, v) => d with { Purposes = v })
            .Key("undoing", Forms.Text, d => d.Undoing, (d, v) => d with { Undoing = v })
            .Key("relies-on", Ids, d => d.ReliesOn, (d, v) => d with { ReliesOn = v })),
        d => [d.What, d.Why, d.Kind.Word(), d.Piece?.Text, d.Joint?.Text, d.Item?.ToString(), d.Evidence, .. d.Purposes.Select(p => p.Word()), d.Undoing, .. Said(d.ReliesOn)]);

    public static readonly FactList<Owed> Debts = new(
        "debts",
        new(default, default, "", "", default),
        Facts.Signed(new Shape<Owed>("a debt")
            .Key("what", Forms.Text, o => o.What, (o, v) => o with { What = v ?? "" }, Need.Required)
            .Key("deadline", Forms.WordOrNone<Deadline>(), o => o.Deadline, (o, v) => o with { Deadline = v!.Value }, Need.Required)
            .Key("item", References.Item, o => o.Item, (o, v) => o with { Item = v })
            .Key("why", Forms.Text, o => o.Why, (o, v) => o with { Why = v })),
        o => [o.What, o.Deadline.Word(), o.Item?.ToString(), o.Why]);

    public static readonly FactList<Settled> Settlements = new(
        "settlements",
        new(default, default, "", default),
        Facts.Signed(new Shape<Settled>("a settlement")
            .Key("of", Forms.Id, s => s.Of, (s, v) => s with { Of = v!.Value }, Need.Required)
            .Key("how", Forms.Text, s => s.How, (s, v) => s with { How = v })),
        s => [s.Of.ToString(), s.How]);

    public static readonly FactList<Counted> Counts = new(
        "counts",
        new(default, default, "", "", 0, default),
        Facts.Signed(new Shape<Counted>("a count")
            .Key("what", Forms.Text, c => c.What, (c, v) => c with { What = v ?? "" }, Need.Required)
            .Key("number", Forms.Whole(n => n, n => n), c => c.Number, (c, v) => c with { Number = v }, Need.Required)
            .Key("way", Forms.WordOrNone<CountedWay>(), c => c.Way, (c, v) => c with { Way = v!.Value }, Need.Required)
            .Key("space", References.Space, c => c.Space, (c, v) => c with { Space = v })
            .Key("note", Forms.Text, c => c.Note, (c, v) => c with { Note = v })),
        c => [c.What, $"{c.Number}", c.Way.Word(), c.Space?.Text, c.Note]);

    public static readonly FactList<Undone> Undoings = new(
        "undoings",
        new(default, default, "", default),
        Facts.Signed(new Shape<Undone>("an undoing")
            .Key("of", Forms.Id, u => u.Of, (u, v) => u with { Of = v!.Value }, Need.Required)
            .Key("why", Forms.Text, u => u.Why, (u, v) => u with { Why = v })),
        u => [u.Of.ToString(), u.Why]);

    public static readonly FactList<AsFound> AsFound = new(
        "as-found",
        new(default, default, "", ""),
        Facts.Signed(new Shape<AsFound>("what was found")
            .Key("part", References.Part, f => f.Part, (f, v) => f with { Part = v })
            .Key("joint", References.Joint, f => f.Joint, (f, v) => f with { Joint = v })
            .Key("what", Forms.Text, f => f.What, (f, v) => f with { What = v ?? "" }, Need.Required)
            .Key("of", References.Figure, f => f.Figure, (f, v) => f with { Figure = v })
            .Key("value", (f, scope) => f.Figure is { } figure ? Facts.OfFigure(figure, scope) : Forms.GaugeQuantity, f => f.Value, (f, v) => f with { Value = v })
            .Key("words", Forms.Text, f => f.Words, (f, v) => f with { Words = v })
            .Key("tag", Tag, f => f.Tag, (f, v) => f with { Tag = v })
            .Key("skipped", Forms.YesNo, f => f.Skipped, (f, v) => f with { Skipped = v })),
        f => [f.Part?.Path, f.Joint?.Text, f.What, f.Figure?.ToString(), f.Value?.Text, f.Value?.Unit.Code, f.Words, f.Tag?.Text, f.Skipped ? "skipped" : null]);

    public static readonly FactList<PermissionLine> Permissions = new(
        "permissions",
        new(default, default, "", default, default),
        Facts.Signed(new Shape<PermissionLine>("a line granted")
            .Key("line", Line, p => p.Line, (p, v) => p with { Line = v!.Value }, Need.Required)
            .Key("purpose", Forms.WordOrNone<Purpose>(), p => p.Purpose, (p, v) => p with { Purpose = v!.Value }, Need.Required)
            .Key("relies-on", Ids, p => p.ReliesOn, (p, v) => p with { ReliesOn = v })
            .Key("note", Forms.Text, p => p.Note, (p, v) => p with { Note = v })),
        p => [p.Line.ToString(), p.Purpose.Word(), .. Said(p.ReliesOn), p.Note]);

    private static IEnumerable<string> Said(IReadOnlyList<FactId> ids) => ids.Select(id => id.ToString());
}
