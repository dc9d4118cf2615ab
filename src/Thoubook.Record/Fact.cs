using NodaTime;
using Thoubook.Record.Quantities;

namespace Thoubook.Record;

/// <summary>The identifier of a fact: UUID version 7, made where it is first written, so that a thing sent twice is stored once.</summary>
public readonly record struct FactId(Guid Value) : IComparable<FactId>
{
    public static FactId New() => new(Guid.CreateVersion7());

    public int CompareTo(FactId other) => Value.CompareTo(other.Value);

    public override string ToString() => Value.ToString("D");
}

/// <summary>Something found, decided or done. Never changed; only struck out with a reason.</summary>
/// <param name="Id">Made by whoever first wrote it.</param>
/// <param name="At">When, with the offset of the place.</param>
/// <param name="By">Who, by name or role.</param>
public abstract record Fact(FactId Id, OffsetDateTime At, string By)
{
    /// <summary>The workshop's sequence number; 0 before it is stored.</summary>
    public long Sequence { get; init; }

    /// <summary>One line that names it to a person.</summary>
    public abstract string Headline { get; }
}

/// <summary>A fact that relied on others: it stands only while they do.</summary>
public interface IConclusion
{
    IReadOnlyList<FactId> ReliesOn { get; }
}

/// <summary>One measured value of a dimension of a piece.</summary>
public sealed record Reading(FactId Id, OffsetDateTime At, string By, PieceTag Piece, FigureName Figure, Quantity Value) : Fact(Id, At, By)
{
    public PlaceName Place { get; init; } = PlaceName.NotNoted;

    public GaugeTag? Gauge { get; init; }

    /// <summary>Of the piece; null: not noted.</summary>
    public Quantity? Temperature { get; init; }

    public string? Note { get; init; }

    public override string Headline => $"reading {Value.Text} of {Figure.Local} on {Piece} at {Place}";
}

/// <summary>A piece is chosen for a part: fits and the oil use it.</summary>
public sealed record Chosen(FactId Id, OffsetDateTime At, string By, PieceTag Piece, PartName Part) : Fact(Id, At, By)
{
    public override string Headline => $"{Piece} chosen for {Part}";
}

/// <summary>A piece is placed in a part: checks and closing use it.</summary>
public sealed record Placed(FactId Id, OffsetDateTime At, string By, PieceTag Piece, PartName Part) : Fact(Id, At, By)
{
    public override string Headline => $"{Piece} placed in {Part}";
}

/// <summary>The end of a choice or of a placing: the piece was lifted out.</summary>
public sealed record Lifted(FactId Id, OffsetDateTime At, string By, FactId Of) : Fact(Id, At, By)
{
    public string? Why { get; init; }

    public override string Headline => Why is { } why ? $"lifted out: {why}" : "lifted out";
}

/// <summary>What was done to a piece and which dimensions it altered: older readings of those no longer count.</summary>
public sealed record Work(FactId Id, OffsetDateTime At, string By, PieceTag Piece, string What) : Fact(Id, At, By)
{
    /// <summary>Local names of the dimensions that it altered.</summary>
    public IReadOnlyList<string> Altered { get; init; } = [];

    /// <summary>The repair size that the altered dimensions now have, where it went to one.</summary>
    public string? RepairSize { get; init; }

    public override string Headline => $"{Piece}: {What}";
}

/// <summary>Something seen rather than measured.</summary>
public sealed record Finding(FactId Id, OffsetDateTime At, string By, PieceTag? Piece, PartName? Part, string What) : Fact(Id, At, By)
{
    public FindingOutcome Outcome { get; init; } = FindingOutcome.Noted;

    public override string Headline => $"{(Piece is { } piece ? piece.Text : Part?.ToString())}: {What}";
}

public enum FindingOutcome
{
    Noted,
    Sound,

    [Word("not sound")]
    NotSound,
}

/// <summary>A fit measured on parts put together. It relies on the very pieces, shims and gaskets in place.</summary>
public sealed record Check(FactId Id, OffsetDateTime At, string By, FigureName Figure, Quantity Value) : Fact(Id, At, By), IConclusion
{
    public CheckMethod Method { get; init; }

    public PlaceName Place { get; init; } = PlaceName.NotNoted;

    public GaugeTag? Gauge { get; init; }

    public Quantity? Temperature { get; init; }

    public IReadOnlyList<FactId> ReliesOn { get; init; } = [];

    public string? Note { get; init; }

    public override string Headline => $"check {Value.Text} of {Figure}";
}

public enum CheckMethod
{
    Feeler,
    Dial,

    [Word("plastic strip")]
    PlasticStrip,

    /// <summary>Nip as the gap u of the slackened joint; the interference is u/π.</summary>
    [Word("slackened joint")]
    SlackenedJoint,
    Other,
}

/// <summary>What becomes of a piece, or that a figure is accepted.</summary>
public sealed record Decision(FactId Id, OffsetDateTime At, string By, DecisionChoice Choice) : Fact(Id, At, By), IConclusion
{
    /// <summary>The piece it is about; null where it is about a figure alone.</summary>
    public PieceTag? Piece { get; init; }

    /// <summary>The dimension or fit that is accepted; null where the whole piece is meant.</summary>
    public FigureName? Figure { get; init; }

    public DecisionBasis Basis { get; init; } = DecisionBasis.Measured;

    public string? Why { get; init; }

    public IReadOnlyList<FactId> ReliesOn { get; init; } = [];

    public override string Headline => $"{Choice.Word()} {(Piece is { } piece ? piece.Text : Figure?.ToString())}";
}

public enum DecisionChoice
{
    Keep,
    Rework,
    Replace,
    Make,
    Hold,
}

public enum DecisionBasis
{
    Measured,

    /// <summary>Who and why are said; it clears what stands in the way and stays visible.</summary>
    [Word("accepted on judgement")]
    AcceptedOnJudgement,
}

/// <summary>A fact struck out, with the reason. A strike-out is a fact and can itself be struck out.</summary>
public sealed record StrikeOut(FactId Id, OffsetDateTime At, string By, FactId Of, string Why) : Fact(Id, At, By)
{
    public override string Headline => $"struck out: {Why}";
}
