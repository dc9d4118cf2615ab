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

    /// <summary>The modification state by which it is deleted: an engine that has it has not this part.</summary>
    public string? DeletedBy { get; init; }

    /// <summary>What is fitted in its stead, where it is blanked off or deferred: another part, which must then be in place, or in words.</summary>
    public string? InItsStead { get; init; }

    /// <summary>That nobody knows what it is for.</summary>
    public bool FunctionUnknown { get; init; }

    /// <summary>What is asked before it is disturbed, beside what the record shows of itself.</summary>
    public IReadOnlyList<string> Asks { get; init; } = [];

    public string? Note { get; init; }

    /// <summary>Whether it belongs to an engine in the modification states that this one has.</summary>
    public bool BelongsTo(Engine engine) =>
        (ModificationState is not { } state || engine.States.Count == 0 || engine.HasState(state)) && (DeletedBy is not { } by || !engine.HasState(by));

    /// <summary>What is intended for it on an engine: a part of another modification state, or deleted by one, is not on it.</summary>
    public PartIntent IntentOn(Engine engine) => BelongsTo(engine) ? Intent : PartIntent.NotOnThisEngine;
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
