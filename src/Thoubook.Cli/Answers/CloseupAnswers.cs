using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Cli.Answers;

/// <param name="HalfDone">Joints begun and not finished; they stand first.</param>
/// <param name="Now">Those first that suit the way the engine lies, and of these the most pressing.</param>
/// <param name="Later">What the rest wants first.</param>
/// <param name="Attitude">How the engine lies; null where it is not known.</param>
/// <param name="MinutesLeft">[min] for one person and for two, a spare hand lent where a step holds more; null where there is no order.</param>
internal sealed record CloseupReadyAnswer(
    IReadOnlyList<WantAnswer> HalfDone, IReadOnlyList<ReadyStepAnswer> Now, IReadOnlyList<WaitingStepAnswer> Later, string? Attitude, MinutesLeftAnswer MinutesLeft, IReadOnlyList<OwedAnswer> Owed, IReadOnlyList<string> Faults)
{
    public static CloseupReadyAnswer Of(CloseUp closing) => new(
        [.. closing.HalfDone.Select(WantAnswer.Of)],
        [.. closing.Now.Select(r => new ReadyStepAnswer(
            r.Step.Name.Text, r.Step.Said, r.Step.Kind.Word(), r.Step.Seconds / 60.0, r.Step.Attitude?.Word(), r.SuitsAttitude, r.Times?.TotalFloat, [.. r.Step.Closes.Select(s => s.Text)], closing.IsBegun(r.Step)))],
        [.. closing.Later.Select(w => new WaitingStepAnswer(w.Step.Name.Text, w.Step.Said, [.. w.Wants.Select(WantAnswer.Of)]))],
        closing.Attitude?.Word(),
        new(Left(closing, 1), Left(closing, 2)),
        [.. closing.Debts.Select(OwedAnswer.Of)],
        [.. closing.Plan.Faults.Select(f => f.What)]);

    private static double? Left(CloseUp closing, int people) => closing.LeftFor(people).IsOk(out var crew, out _) ? crew.Length : null;
}

internal sealed record WantAnswer(string Item, string Kind, string Why)
{
    public static WantAnswer Of(Want want) => new(want.Item.ToString(), want.Kind.Word(), want.Why);
}

/// <param name="TotalFloat">[min] how long it can be put off without the whole taking longer; null where there is no order.</param>
internal sealed record ReadyStepAnswer(string Name, string What, string Kind, double Minutes, string? Attitude, bool SuitsAttitude, double? TotalFloat, IReadOnlyList<string> Closes, bool Begun);

internal sealed record WaitingStepAnswer(string Name, string What, IReadOnlyList<WantAnswer> Wants);

/// <param name="One">[min] for one person.</param>
/// <param name="Two">[min] for two.</param>
internal sealed record MinutesLeftAnswer(double? One, double? Two);

internal sealed record OwedAnswer(string Id, string What, string Deadline, string? Item, string? Why, string By)
{
    public static OwedAnswer Of(Owed owed) => new(owed.Id.ToString(), owed.What, owed.Deadline.Word(), owed.Item?.ToString(), owed.Why, owed.By);
}

/// <param name="Closes">The steps that close it.</param>
/// <param name="MayBeClosed">Whether all that is missing is covered by a departure or owed.</param>
internal sealed record CloseupBeforeAnswer(string Space, IReadOnlyList<string> Closes, bool IsClosed, bool MayBeClosed, IReadOnlyList<MissingAnswer> Missing)
{
    public static CloseupBeforeAnswer Of(BeforeClosing before) => new(
        before.Space.Text,
        [.. before.Closes.Select(s => s.Text)],
        before.IsClosed,
        before.MayBeClosed,
        [.. before.Missing.Select(m => new MissingAnswer(m.Want.Item.ToString(), m.Want.Kind.Word(), m.Want.Why, m.Want.IsHalfDone, m.CoveredBy?.Headline, WayBackInAnswer.Of(m.CostToGetBackIn)))]);
}

/// <param name="CoveredBy">The departure or the debt with which it may be closed over.</param>
internal sealed record MissingAnswer(string Item, string Kind, string Why, bool HalfDone, string? CoveredBy, WayBackInAnswer CostToGetBackIn);

/// <param name="Minutes">[min] that the steps to be undone took, and will take again.</param>
/// <param name="Steps">To be undone, in this order.</param>
/// <param name="Consumables">Spoilt by it: must be new.</param>
internal sealed record WayBackInAnswer(double Minutes, IReadOnlyList<string> Steps, IReadOnlyList<string> Consumables)
{
    public static WayBackInAnswer Of(WayBackIn way) => new(way.Minutes, [.. way.Steps.Select(s => s.Text)], way.Consumables);
}

/// <param name="Part">The part, or the space.</param>
/// <param name="Minutes">[min] to have it in view.</param>
/// <param name="TakeOut">To have the part out; null for a space.</param>
internal sealed record CloseupReachAnswer(string Part, double Minutes, IReadOnlyList<string> Steps, IReadOnlyList<string> Consumables, WayBackInAnswer? TakeOut);

internal sealed record CloseupInsideAnswer(
    string Space, bool IsClosed, IReadOnlyList<string> Spaces, IReadOnlyList<PieceInsideAnswer> Pieces, IReadOnlyList<FitInsideAnswer> Fits, IReadOnlyList<JointInsideAnswer> Joints,
    IReadOnlyList<string> Departures, IReadOnlyList<OwedAnswer> Owed, IReadOnlyList<PhotographInsideAnswer> Photographs, IReadOnlyList<WantAnswer> LeftOver);

internal sealed record PieceInsideAnswer(string Part, string? Piece, string? Wants);

/// <param name="Value">[SI] as left; null where it was not measured.</param>
internal sealed record FitInsideAnswer(string Name, double? Value, string? Shown, string? Verdict);

internal sealed record JointInsideAnswer(string Joint, string? Stage, string Last, string? Applied, string? By, string? Wants);

internal sealed record PhotographInsideAnswer(string Step, string What, bool Taken);

internal sealed record LeavingNoteAnswer(
    IReadOnlyList<WantAnswer> HalfDone, IReadOnlyList<string> Begun, IReadOnlyList<RunningAnswer> Running, IReadOnlyList<WantAnswer> LeftOver, IReadOnlyList<OwedAnswer> Owed, IReadOnlyList<FallenAnswer> Fallen, string? Attitude, string? Last)
{
    public static LeavingNoteAnswer Of(LeavingNote note) => new(
        [.. note.HalfDone.Select(WantAnswer.Of)],
        [.. note.Begun.Select(s => s.Name.Text)],
        [.. note.Running.Select(r => new RunningAnswer(r.Step.Text, r.Kind.Word(), r.Until.ToString("uuuu-MM-dd'T'HH:mm:sso<+HH:mm>", System.Globalization.CultureInfo.InvariantCulture)))],
        [.. note.LeftOver.Select(WantAnswer.Of)],
        [.. note.Debts.Select(OwedAnswer.Of)],
        [.. note.Fallen.Select(f => new FallenAnswer(f.Fact.Headline, f.Standing.Why))],
        note.Attitude?.Word(),
        note.Last?.Headline);
}

internal sealed record RunningAnswer(string Step, string Kind, string Until);

internal sealed record FallenAnswer(string What, string Why);
