using NodaTime;

namespace Thoubook.Record.Closing;

/// <summary>Something that a step wants first, or that is missing in a space.</summary>
/// <param name="Kind">What sort of thing.</param>
/// <param name="Item">What.</param>
/// <param name="Why">In words.</param>
public sealed record Want(WantKind Kind, WorkItem Item, string Why)
{
    /// <summary>Begun and not finished: it stands before everything else.</summary>
    public bool IsHalfDone { get; init; }
}

public enum WantKind
{
    Step,
    Signature,

    [Word("second look")]
    SecondLook,
    Photograph,
    Part,

    /// <summary>Not the chosen piece, or one of another modification state.</summary>
    [Word("wrong piece")]
    WrongPiece,

    /// <summary>Parts that go together or not at all, of which some are to be fitted and some are not.</summary>
    Together,

    /// <summary>A piece that is to be reworked, replaced, made or held, or was found not sound.</summary>
    Decision,
    Joint,
    Locking,
    Reading,
    Verdict,
    Finding,
    Cleanliness,
    Orientation,
    Identity,
    Access,
    Judgement,
    Count,
    Tool,
    Cure,

    /// <summary>What was to follow within a time did not.</summary>
    [Word("open time")]
    OpenTime,
    Owed,
}

/// <summary>What the record alone does not say: the time, which tools are away, and how figures were judged.</summary>
/// <param name="Now">The present moment.</param>
public sealed record CloseUpTerms(Instant Now)
{
    public Attitude? Attitude { get; init; }

    /// <summary>Tools that are not at hand.</summary>
    public IReadOnlyList<string> ToolsAway { get; init; } = [];

    /// <summary>Null of it: the figure is good. Else what is wanted, a reading or a verdict, and why. Left out: only what was accepted by a decision is good.</summary>
    public Func<FigureName, (WantKind Kind, string Why)?>? Judged { get; init; }
}
