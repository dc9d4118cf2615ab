namespace Thoubook.Record.Parts;

/// <summary>A place in the engine that something occupies.</summary>
public sealed record Part(PartName Name)
{
    public int Revision { get; init; }

    public PartIntent Intent { get; init; } = PartIntent.Fitted;

    /// <summary>The material, as the trade names it: <c>cast aluminium</c>. Needed for temperature.</summary>
    public string? Material { get; init; }

    /// <summary>The modification state that it belongs to, where the engine has more than one.</summary>
    public string? ModificationState { get; init; }

    /// <summary>What is fitted in its stead, where it is blanked off or deferred.</summary>
    public string? InItsStead { get; init; }

    public string? Note { get; init; }
}

/// <summary>What is intended for a part.</summary>
public enum PartIntent
{
    Fitted,
    Blanked,
    Deferred,

    [Word("not on this engine")]
    NotOnThisEngine,
}
