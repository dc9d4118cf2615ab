using NodaTime.Text;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Workshop.Closing;

namespace Thoubook.Cli.Answers;

/// <param name="AsItCame">Taken as it came, with everything in place.</param>
/// <param name="Removals">What comes off, in its order.</param>
/// <param name="TakeOut">The way to the part that was named; null where none was.</param>
internal sealed record StripAnswer(bool AsItCame, WayBackInAnswer? TakeOut, IReadOnlyList<RemovalAnswer> Removals)
{
    public static StripAnswer Of(Strip strip, ComesOff? off) => new(
        strip.IsWhole,
        off is null ? null : WayBackInAnswer.Of(off.Way),
        [
            .. (off?.Removals ?? strip.Removals).Select(r => new RemovalAnswer(
                r.Said, r.Step?.Name.Text, [.. r.Parts.Select(p => p.Path)], [.. r.Joints.Select(j => j.Text)],
                [.. r.Asks.Select(a => new AskedAnswer(a.Kind.Word(), a.Of.ToString(), a.What, strip.AnswerTo(a, r) is { } found ? Said(found) : null))])),
        ]);

    /// <summary>What was found, in one line.</summary>
    public static string Said(AsFound found) => found.Skipped
        ? $"passed over{(found.Words is { } why ? $": {why}" : "")}"
        : string.Join(", ", new[] { found.Value?.Text, found.Words, found.Tag is { } tag ? $"tag {tag}" : null }.OfType<string>());
}

/// <param name="Step">The step that is undone by it; null where none put it there.</param>
internal sealed record RemovalAnswer(string What, string? Step, IReadOnlyList<string> Parts, IReadOnlyList<string> Joints, IReadOnlyList<AskedAnswer> Asks);

/// <param name="Answer">What was found, or that it was passed over; null: still asked.</param>
internal sealed record AskedAnswer(string Kind, string Item, string What, string? Answer);

internal sealed record FoundAndLeftAnswer(IReadOnlyList<FoundAnswer> Found);

/// <param name="Item">The part or the joint.</param>
/// <param name="Value">[SI] as found; null where it was no figure.</param>
/// <param name="Left">As it is now; null where nothing says.</param>
/// <param name="LeftValue">[SI]</param>
/// <param name="Difference">[SI] by which it is now greater.</param>
/// <param name="LeftBy">What says so.</param>
internal sealed record FoundAnswer(string Id, string Item, string What, string AsFound, double? Value, string? Left, double? LeftValue, double? Difference, string? Shown, string? LeftBy, string By, string At)
{
    public static FoundAnswer Of(FoundAndLeft one) => new(
        one.Found.Id.ToString(), one.Found.Part is { } part ? $"part {part}" : $"joint {one.Found.Joint}", one.Found.What, StripAnswer.Said(one.Found), one.Found.Value?.Si,
        one.Left?.What, one.Left?.Si, one.Difference, one.DifferenceSaid, one.Left?.By, one.Found.By, OffsetDateTimePattern.Rfc3339.Format(one.Found.At));
}

/// <param name="Granted">Every line granted, and none lapsed.</param>
/// <param name="NotGrantedHere">Why nothing is granted for such a purpose; null where it is.</param>
internal sealed record PermissionAnswer(string Purpose, bool Granted, string? NotGrantedHere, IReadOnlyList<PermissionLineAnswer> Lines, string Caution)
{
    public static PermissionAnswer Of(PermissionToRun permission) => new(
        permission.Purpose.Word(),
        permission.IsGranted,
        permission.NotGrantedHere,
        [.. permission.Lines.Select(l => new PermissionLineAnswer(
            l.Ground.Line.ToString(), l.Ground.What, l.IsGranted ? "granted" : l.HasLapsed ? "lapsed" : l.CanBeGranted ? "can be granted" : "missing", l.CanBeGranted, l.Why,
            l.Last?.By, l.Last is { } last ? OffsetDateTimePattern.Rfc3339.Format(last.At) : null))],
        ClosingCautions.StopLimits.Text);
}

/// <param name="State">granted, lapsed, can be granted or missing.</param>
/// <param name="Why">Why it lapsed, and what is missing.</param>
internal sealed record PermissionLineAnswer(string Line, string What, string State, bool CanBeGranted, string Why, string? By, string? At);

/// <param name="Falls">Departures that would not stand, those that stand now first.</param>
/// <param name="AllUndone">What undoing all of them in one go costs.</param>
/// <param name="Lapses">Lines of the permission to run.</param>
internal sealed record PurposeAnswer(string From, string To, bool Changed, IReadOnlyList<DepartureFallsAnswer> Falls, WayBackInAnswer AllUndone, IReadOnlyList<string> Lapses, IReadOnlyList<string> Comes)
{
    public static PurposeAnswer Of(PurposeChange change, bool changed) => new(
        change.From.Word(),
        change.To.Word(),
        changed,
        [.. change.Falls.Select(f => new DepartureFallsAnswer(
            f.Departure.Id.ToString(), f.Departure.What, f.Departure.Why, [.. f.Departure.Purposes.Select(p => p.Word())], f.Departure.Piece?.Text, f.Departure.Joint?.Text, f.StandsNow, f.Departure.Undoing, WayBackInAnswer.Of(f.Cost)))],
        WayBackInAnswer.Of(change.AllUndone),
        [.. change.Lapses.Select(l => l.Line.ToString())],
        [.. change.Comes.Select(d => d.What)]);
}

internal sealed record DepartureFallsAnswer(string Id, string What, string Why, IReadOnlyList<string> Purposes, string? Piece, string? Joint, bool StandsNow, string? Undoing, WayBackInAnswer Cost);

internal sealed record StatesAnswer(
    IReadOnlyList<string> States, IReadOnlyList<string> OfAnotherState, IReadOnlyList<string> Deleted, IReadOnlyList<string> NotOnThisEngine, IReadOnlyList<InSteadAnswer> InStead,
    IReadOnlyList<TogetherAnswer> Together, IReadOnlyList<string> FunctionUnknown, IReadOnlyList<ToolAnswer> Tools)
{
    public static StatesAnswer Of(PartsApart apart) => new(
        apart.States,
        [.. apart.OfAnotherState.Select(p => p.Name.Path)],
        [.. apart.Deleted.Select(p => p.Name.Path)],
        [.. apart.NotOnThisEngine.Select(p => p.Name.Path)],
        [.. apart.InStead.Select(p => new InSteadAnswer(p.Part.Name.Path, p.Part.Intent.Word(), p.Part.InItsStead, p.Want?.Why))],
        [.. apart.Together.Select(t => new TogetherAnswer([.. t.Together.Parts.Select(p => p.Path)], t.IsWhole, [.. t.Left.Select(p => p.Path)], t.Together.Why))],
        [.. apart.FunctionUnknown.Select(p => p.Name.Path)],
        [.. apart.Tools.Select(t => new ToolAnswer(t.Name.Text, t.What, t.Made, t.Kept))]);
}

/// <param name="Wants">What is wanting of what stands in its stead.</param>
internal sealed record InSteadAnswer(string Part, string Intent, string? InItsStead, string? Wants);

/// <param name="IsWhole">All of them are to be fitted, or none.</param>
/// <param name="Left">Those that are not to be fitted.</param>
internal sealed record TogetherAnswer(IReadOnlyList<string> Parts, bool IsWhole, IReadOnlyList<string> Left, string? Why);

internal sealed record ToolAnswer(string Name, string? What, string? Made, string? Kept);
