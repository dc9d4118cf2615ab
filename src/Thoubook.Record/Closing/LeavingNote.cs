using NodaTime;

namespace Thoubook.Record.Closing;

/// <summary>The state of the work where it was left: made from the record by itself, shown when the person comes back.</summary>
public sealed record LeavingNote
{
    /// <summary>Joints begun and not finished. They stand first.</summary>
    public required IReadOnlyList<Want> HalfDone { get; init; }

    /// <summary>Steps begun and not signed.</summary>
    public required IReadOnlyList<Step> Begun { get; init; }

    /// <summary>Steps whose cure is not over, or whose open time runs.</summary>
    public required IReadOnlyList<Running> Running { get; init; }

    /// <summary>Counted out and not in.</summary>
    public required IReadOnlyList<Want> LeftOver { get; init; }

    public required IReadOnlyList<Owed> Debts { get; init; }

    /// <summary>Conclusions of the closing up that were drawn and no longer stand, by no strike-out or undoing of their own.</summary>
    public required IReadOnlyList<(Fact Fact, Standing Standing)> Fallen { get; init; }

    /// <summary>How the engine lies.</summary>
    public required Attitude? Attitude { get; init; }

    /// <summary>What was done last; null where nothing was. An engine file is written all at once, so that it goes by the clock first.</summary>
    public required Fact? Last { get; init; }

    public static LeavingNote Of(CloseUp closing)
    {
        var record = closing.Plan.Record;
        return new LeavingNote
        {
            HalfDone = closing.HalfDone,
            Begun = [.. closing.Plan.InOrder.Where(closing.IsBegun)],
            Running = closing.Running,
            LeftOver = closing.LeftOver,
            Debts = closing.Debts,
            Fallen = [.. record.Signatures.Concat<Fact>(record.JointStates).Concat(record.Acceptances)
                .Select(f => (Fact: f, Standing: Standing.Of(f, record)))
                .Where(f => f.Standing is { Stands: false } s && !IsOwn(s.BrokenBy, f.Fact))],
            Attitude = closing.Attitude,
            Last = record.Facts.MaxBy(f => (f.At.ToInstant(), f.Sequence)),
        };
    }

    private static bool IsOwn(Fact? broke, Fact of) => broke switch
    {
        StrikeOut strikeOut => strikeOut.Of == of.Id,
        Undone undone => undone.Of == of.Id,
        JointState later => of is JointState state && later.Joint == state.Joint,
        _ => false,
    };
}

/// <summary>A time that runs since a step was signed.</summary>
/// <param name="Step">Which.</param>
/// <param name="Kind">Whether what is built on it must wait until then, or must be done by then.</param>
/// <param name="Until">When.</param>
public sealed record Running(StepName Step, RunningKind Kind, OffsetDateTime Until);

public enum RunningKind
{
    /// <summary>What is built on it waits until then.</summary>
    Cure,

    /// <summary>What is built on it follows before then.</summary>
    Open,
}
