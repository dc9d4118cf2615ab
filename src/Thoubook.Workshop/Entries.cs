using NodaTime;
using Thoubook.Record;

namespace Thoubook.Workshop;

/// <summary>A fact as a person enters it, at whatever door: names and quantities as typed.</summary>
/// <param name="Engine">By name.</param>
/// <param name="By">Who says so, by name or role.</param>
public abstract record Entry(string Engine, string By)
{
    /// <summary>When; null: now.</summary>
    public OffsetDateTime? At { get; init; }

    /// <summary>Made where the form was made, so that a thing sent twice is stored once; null: made here.</summary>
    public FactId? Id { get; init; }
}

/// <summary>Something struck out, with the reason.</summary>
public sealed record StrikeOutEntry(string Engine, FactId Of, string Why, string By) : Entry(Engine, By);

/// <summary>A piece chosen for a part, or placed in it.</summary>
public sealed record PieceEntry(string Engine, string Part, string Piece, string By) : Entry(Engine, By);

/// <summary>A piece lifted out: its placing ends or, where it is not placed, its choice.</summary>
public sealed record LiftEntry(string Engine, string Piece, string By) : Entry(Engine, By)
{
    /// <summary>The very choice or placing that ends; null: the one in force.</summary>
    public FactId? Of { get; init; }

    public string? Why { get; init; }
}

/// <summary>Work done on a piece.</summary>
public sealed record WorkEntry(string Engine, string Piece, string What, string By) : Entry(Engine, By)
{
    /// <summary>The dimensions that it altered, by local name or in full.</summary>
    public IReadOnlyList<string> Altered { get; init; } = [];

    public string? RepairSize { get; init; }
}

/// <summary>Something seen on a piece, or at a part.</summary>
public sealed record FindingEntry(string Engine, string What, string By) : Entry(Engine, By)
{
    public string? Piece { get; init; }

    public string? Part { get; init; }

    public FindingOutcome Outcome { get; init; }
}

/// <summary>What becomes of a piece, or that a figure is accepted.</summary>
public sealed record DecisionEntry(string Engine, DecisionChoice Choice, string By) : Entry(Engine, By)
{
    public string? Piece { get; init; }

    public string? Figure { get; init; }

    public DecisionBasis Basis { get; init; }

    public string? Why { get; init; }
}
