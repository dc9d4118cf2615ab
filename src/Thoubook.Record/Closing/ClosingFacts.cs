using NodaTime;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Closing;

/// <summary>A step signed as done. It relies on the pieces it placed, the joints it made and what was accepted for it; a step that closes a space on everything inside.</summary>
public sealed record Signature(FactId Id, OffsetDateTime At, string By, StepName Step) : Fact(Id, At, By), IConclusion
{
    /// <summary>The second look, where one is asked for: by another person, or by the same on another day.</summary>
    public bool SecondLook { get; init; }

    /// <summary>That the photograph asked for was taken.</summary>
    public bool Photographed { get; init; }

    public IReadOnlyList<FactId> ReliesOn { get; init; } = [];

    public string? Note { get; init; }

    public override string Headline => $"{Step} signed{(SecondLook ? " after a second look" : "")}";
}

/// <summary>How far a joint was made at a moment. A later and lower state says that it was slackened.</summary>
public sealed record JointState(FactId Id, OffsetDateTime At, string By, JointName Joint, JointStage Stage) : Fact(Id, At, By), IConclusion
{
    /// <summary>What was put on it, as read: a torque, a stretch, an angle.</summary>
    public Quantity? Applied { get; init; }

    public IReadOnlyList<FactId> ReliesOn { get; init; } = [];

    public string? Note { get; init; }

    public override string Headline => $"{Joint} {Stage.Word()}";
}

/// <summary>A hold point accepted, by name.</summary>
public sealed record Accepted(FactId Id, OffsetDateTime At, string By, StepName Step, string Hold) : Fact(Id, At, By), IConclusion
{
    public string? Why { get; init; }

    public IReadOnlyList<FactId> ReliesOn { get; init; } = [];

    public override string Headline => $"{Hold} accepted for {Step}";
}

/// <summary>A departure from the maker's method. It belongs to a piece, with which it travels, or to a joint.</summary>
public sealed record Departure(FactId Id, OffsetDateTime At, string By, string What, string Why) : Fact(Id, At, By), IConclusion
{
    public DepartureKind Kind { get; init; }

    public PieceTag? Piece { get; init; }

    public JointName? Joint { get; init; }

    /// <summary>What may be closed over because of it, beside its piece and its joint.</summary>
    public WorkItem? Item { get; init; }

    /// <summary>What shows that it holds.</summary>
    public string? Evidence { get; init; }

    /// <summary>For which it stands.</summary>
    public IReadOnlyList<Purpose> Purposes { get; init; } = [];

    /// <summary>How it is undone.</summary>
    public string? Undoing { get; init; }

    public IReadOnlyList<FactId> ReliesOn { get; init; } = [];

    public override string Headline => $"departure: {What}";

    public bool StandsFor(Purpose purpose) => Purposes.Contains(purpose);
}

public enum DepartureKind
{
    Other,

    [Word("locking changed")]
    LockingChanged,

    [Word("blanked off or deferred")]
    BlankedOrDeferred,

    [Word("limit exceeded and accepted")]
    LimitExceeded,

    [Word("material or fastener substituted")]
    Substituted,

    [Word("seal changed")]
    SealChanged,
}

/// <summary>Something put off with a deadline.</summary>
public sealed record Owed(FactId Id, OffsetDateTime At, string By, string What, Deadline Deadline) : Fact(Id, At, By)
{
    /// <summary>What is closed over meanwhile; null where it is about none of these.</summary>
    public WorkItem? Item { get; init; }

    public string? Why { get; init; }

    public override string Headline => $"owed {Deadline.Word()}: {What}";
}

public enum Deadline
{
    [Word("before it is turned")]
    BeforeItIsTurned,

    [Word("before priming")]
    BeforePriming,

    [Word("before the start")]
    BeforeTheStart,
}

/// <summary>What was owed is done.</summary>
public sealed record Settled(FactId Id, OffsetDateTime At, string By, FactId Of) : Fact(Id, At, By)
{
    public string? How { get; init; }

    public override string Headline => How is { } how ? $"settled: {how}" : "settled";
}

/// <summary>Plugs, jets, shims, tools or rags counted out, or counted in again. What is out and not in is missing.</summary>
public sealed record Counted(FactId Id, OffsetDateTime At, string By, string What, int Number, CountedWay Way) : Fact(Id, At, By)
{
    /// <summary>The space out of which it came, or in which it was used; null: of no one space.</summary>
    public SpaceName? Space { get; init; }

    public string? Note { get; init; }

    public override string Headline => $"{Number} {What} counted {Way.Word()}";
}

public enum CountedWay
{
    Out,
    In,
}

/// <summary>The end of a signature or of a joint's state: it was undone again, by no mistake.</summary>
public sealed record Undone(FactId Id, OffsetDateTime At, string By, FactId Of) : Fact(Id, At, By)
{
    public string? Why { get; init; }

    public override string Headline => Why is { } why ? $"undone: {why}" : "undone";
}
