using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Workshop;

/// <summary>A reading as a person enters it, at whatever door.</summary>
/// <param name="Engine">By name.</param>
/// <param name="Figure">The dimension of a part, or the fit of parts put together, by name.</param>
/// <param name="Value">As typed.</param>
/// <param name="By">Who took it.</param>
public sealed record ReadingEntry(string Engine, string Figure, string Value, string By) : Entry(Engine, By)
{
    /// <summary>The tag of the piece; null: the one chosen for the part.</summary>
    public string? Piece { get; init; }

    public string? Place { get; init; }

    public string? Gauge { get; init; }

    /// <summary>Of the piece, as typed.</summary>
    public string? Temperature { get; init; }

    /// <summary>How a fit was measured.</summary>
    public CheckMethod Method { get; init; } = CheckMethod.Other;

    public string? Note { get; init; }

    /// <summary>The codes of questions answered.</summary>
    public IReadOnlySet<string> Confirmed { get; init; } = new HashSet<string>(StringComparer.Ordinal);
}

/// <summary>A reading or a check as it was stored.</summary>
/// <param name="Fact">A <see cref="Reading"/> of a dimension, or a <see cref="Check"/> of a fit.</param>
/// <param name="Figure">What it is of.</param>
/// <param name="Value">What was understood.</param>
public sealed record Recorded(Fact Fact, Figure Figure, Quantity Value);
