using Thoubook.Record.Documents;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Measures;

/// <summary>Limits new and worn as a document gives them; null where it gives none. Clearances are positive, interference negative.</summary>
public sealed record Limits
{
    public static Limits None { get; } = new();

    public Quantity? NewLeast { get; init; }

    public Quantity? NewGreatest { get; init; }

    public Quantity? WornLeast { get; init; }

    public Quantity? WornGreatest { get; init; }

    public WearAllowance Wear { get; init; } = WearAllowance.AsGiven;

    public bool HasNew => NewLeast is not null || NewGreatest is not null;

    public bool HasWorn => WornLeast is not null || WornGreatest is not null;

    public bool IsEmpty => !HasNew && !HasWorn;

    public IEnumerable<Quantity> Given => new[] { NewLeast, NewGreatest, WornLeast, WornGreatest }.OfType<Quantity>();
}

/// <summary>What a blank or a printed "nil" in the worn column means.</summary>
public enum WearAllowance
{
    /// <summary>The worn limits as given, or none given.</summary>
    [Word("as given")]
    AsGiven,

    /// <summary>Nil: it must still be inside its new limits.</summary>
    [Word("no wear permitted")]
    NoWearPermitted,

    /// <summary>It is never renewed for wear.</summary>
    [Word("not a wear item")]
    NotAWearItem,
}

/// <summary>One set of limits with its source and the marks that it applies to.</summary>
public sealed record LimitSet(Limits Limits)
{
    public Citation? Source { get; init; }

    /// <summary>The engine marks that this row applies to; empty: all.</summary>
    public IReadOnlyList<string> Marks { get; init; } = [];
}

/// <summary>The way a figure goes as the part wears.</summary>
public enum WearDirection
{
    /// <summary>A bore, a clearance, a float.</summary>
    Grows,

    /// <summary>A shaft, a width, a thickness.</summary>
    Shrinks,

    /// <summary>Wear does not explain a change.</summary>
    None,
}

/// <summary>Which of the values at several places counts.</summary>
public enum Counting
{
    Mean,
    Least,
    Greatest,
}

/// <summary>On which face or faces a figure is stated. Always said beside it.</summary>
public enum Side
{
    /// <summary>The size itself.</summary>
    Size,

    /// <summary>On diameter, both sides together.</summary>
    Diametral,

    /// <summary>On radius, one side.</summary>
    Radial,

    [Word("per side")]
    PerSide,

    /// <summary>Both ends together.</summary>
    Total,
}
