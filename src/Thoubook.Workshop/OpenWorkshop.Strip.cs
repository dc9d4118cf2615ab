using Thoubook.Appraisal;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Record.Measures;
using Thoubook.Record.Pieces;
using Thoubook.Record.Quantities;

namespace Thoubook.Workshop;

public sealed partial class OpenWorkshop
{
    /// <summary>What comes off in which order, and what is asked before each removal.</summary>
    /// <param name="engine">By name.</param>
    /// <param name="whole">As it came, with everything in place; null: where nothing is signed.</param>
    public Outcome<Strip> Strip(string engine, bool? whole = null) => ClosingUp(engine).Then<Strip>(closing => Record.Closing.Strip.Of(closing, whole));

    /// <summary>The shortest strip to have a part out.</summary>
    public Outcome<ComesOff> WhatComesOff(string engine, string part, bool? whole = null) => Engine(engine).Then(record => Strip(engine, whole).Then<ComesOff>(strip =>
    {
        var asked = new Asked(record);
        return asked.Part(part) is { } name ? strip.ToTakeOut(name)
            : asked.Problems.Count > 0 ? asked.Refused<ComesOff>()
            : new Problem("part-missing", "part", "nothing", "The part that is to come out.", "Name it.");
    }));

    /// <summary>What was found against what was left.</summary>
    public Outcome<IReadOnlyList<FoundAndLeft>> FoundAndLeft(string engine) => Appraise(engine).Then(appraisal => ClosingUp(engine).Then<IReadOnlyList<FoundAndLeft>>(closing =>
        Outcome(Record.Closing.FoundAndLeft.Of(closing, figure => Left(appraisal, figure)))));

    /// <summary>Parts that are not simply fitted, what goes together, and tools kept.</summary>
    public Outcome<PartsApart> PartsApart(string engine) => ClosingUp(engine).Then<PartsApart>(closing => Record.Closing.PartsApart.Of(closing));

    /// <summary>Writes down what was found before a thing is disturbed, or that it was passed over.</summary>
    public Outcome<AsFound> TakeAsFound(AsFoundEntry entry) => Engine(entry.Engine).Then(record =>
    {
        var asked = new Asked(record);
        var what = asked.Words(entry.What, "what", "What was asked of it: a figure by name, or in words.");
        var figure = FigureName.TryRead(what, out var name, out _) ? record.Index.Figure(name) : null;
        var (part, joint) = Disturbed(asked, record, entry.Of, figure);
        var value = Blank(entry.Value) is { } typed
            ? asked.Take(Read(typed, (figure is null ? ReadingContext.None : ReadingContexts.For(figure, record)) with { Confirmed = entry.Confirmed }, "value"))
            : null;
        var tag = asked.Name<PieceTag>(entry.Tag, PieceTag.TryRead, "tag");
        if (tag is { } tied && Taken(record, tied, part) is { } elsewhere)
            asked.Refuse(elsewhere);
        if (value is null && Blank(entry.Value) is null && Blank(entry.Words) is null && Blank(entry.Tag) is null && !entry.Skipped)
            asked.Refuse(new("found-nothing", "value", "nothing", "What was found: a figure, words or a tag.", "Give one of them, or pass it over."));
        if (asked.Problems.Count > 0)
            return asked.Refused<AsFound>();
        var (id, at) = Signed(entry);
        var isNew = tag is { } given && record.Index.Piece(given) is null && _store.HomeOf(given) is null;
        return Write(
            entry,
            record,
            new AsFound(id, at, entry.By, what) { Part = part, Joint = joint, Figure = figure?.Name, Value = value, Words = Blank(entry.Words), Tag = tag, Skipped = entry.Skipped },
            change => isNew ? change with { Pieces = [new Piece(tag!.Value) { For = part }] } : change);
    });

    private static Outcome<T> Outcome<T>(T value) => value;

    /// <summary>The part or the joint that is meant, by its kind and name or by its name alone; for a figure that is asked for alone, its own part.</summary>
    private static (PartName? Part, JointName? Joint) Disturbed(Asked asked, EngineRecord record, string? of, Figure? figure)
    {
        if (Blank(of) is not { } typed)
        {
            if (figure is not null)
                return (figure.Name.Part, null);
            asked.Refuse(new("found-of-what", "of", "nothing", "What was found is of a part or of a joint.", "Name it."));
            return default;
        }

        var (kind, name) = WorkItem.TryRead(typed, out var item, out _) ? ((ItemKind?)item.Kind, item.Name) : (null, typed);
        if (kind is null or ItemKind.Part && PartName.TryRead(name, out var part, out _) && record.Parts.Any(p => p.Name.IsWithin(part)))
            return (part, null);
        if (kind is null or ItemKind.Joint && record.Joints.FirstOrDefault(j => j.Name.Text == name) is { } joint)
            return (null, joint.Name);
        var known = record.Parts.Select(p => p.Name.Path).Concat(record.Joints.Select(j => j.Name.Text));
        asked.Refuse(new("found-of-what", "of", $"\"{typed}\"", "This engine has no part and no joint of that name.", Nearest.Advice(name, known, "Name one that is there.")));
        return default;
    }

    /// <summary>Why a tag cannot be tied to this part; null where it can.</summary>
    private static Problem? Taken(EngineRecord record, PieceTag tag, PartName? part)
    {
        if (part is null)
            return new("tag-of-a-joint", "tag", $"\"{tag}\"", "A tag is tied to what comes off: a part.", "Name the part.");
        var other = record.Index.Piece(tag)?.For is { } of && of != part ? of
            : record.AsFound.LastOrDefault(f => f.Tag == tag && f.Part is not null && f.Part != part && record.Index.StrikeOutOf(f.Id) is null)?.Part;
        return other is null ? null : new("tag-taken", "tag", $"\"{tag}\"", $"That tag is on {other}.", "Take another tag, so that no two things bear one.");
    }

    /// <summary>A figure as the engine stands now; null where it is not measured.</summary>
    private static AsLeft? Left(EngineAppraisal appraisal, FigureName name)
    {
        var figure = appraisal[name];
        var isMeasured = figure switch { DimensionAppraisal dimension => dimension.Details.IsMeasured, FitAppraisal fit => fit.Basis != FitBasis.Nothing, _ => false };
        if (!isMeasured || figure?.Estimate is not { } estimate)
            return null;
        var unit = figure.Figure.UnitOfLimits ?? TradeUnit.Default(figure.Figure.Kind);
        return new(unit.Show(estimate.Value), estimate.Value, figure is FitAppraisal { Basis: FitBasis.Dimensions } ? "from the readings of its parts" : "by its readings");
    }
}
