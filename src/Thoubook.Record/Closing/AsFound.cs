using NodaTime;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Closing;

/// <summary>What was found of a part or a joint before it was disturbed; it can never be taken again.</summary>
/// <param name="Id">Made by whoever first wrote it.</param>
/// <param name="At">When.</param>
/// <param name="By">Who.</param>
/// <param name="What">What was asked: the name of the figure, or in words.</param>
public sealed record AsFound(FactId Id, OffsetDateTime At, string By, string What) : Fact(Id, At, By)
{
    public PartName? Part { get; init; }

    public JointName? Joint { get; init; }

    /// <summary>The dimension or fit that was measured; null where it is none of the record's.</summary>
    public FigureName? Figure { get; init; }

    public Quantity? Value { get; init; }

    /// <summary>What was seen, in words; of something skipped, why.</summary>
    public string? Words { get; init; }

    /// <summary>The tag that was tied on: one that survives washing.</summary>
    public PieceTag? Tag { get; init; }

    /// <summary>That it was asked and not taken.</summary>
    public bool Skipped { get; init; }

    public override string Headline => $"as found, {(Part is { } part ? part.Path : Joint?.Text)}: {What}{(Skipped ? " not taken" : Value is { } value ? $" {value.Text}" : "")}";
}
