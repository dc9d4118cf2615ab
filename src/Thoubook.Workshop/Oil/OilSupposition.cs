namespace Thoubook.Workshop.Oil;

/// <summary>What is supposed of the oil system, as a person writes it. Nothing is written down.</summary>
public sealed record OilSupposition
{
    public static OilSupposition Nothing { get; } = new();

    /// <summary>NAME=VALUE: a dimension or fit, or ELEMENT.KEY for a size of an element, has this very value.</summary>
    public IReadOnlyList<string> Set { get; init; } = [];

    /// <summary>NAME=±VALUE: a dimension or fit changes by this much; what was measured stays, with its doubt.</summary>
    public IReadOnlyList<string> ChangeBy { get; init; } = [];

    /// <summary>Another oil, by its grade; null: the circuit's own.</summary>
    public string? Oil { get; init; }

    /// <summary>Elements that a plug closes.</summary>
    public IReadOnlyList<string> Blank { get; init; } = [];

    /// <summary>Blanked elements that are fitted again.</summary>
    public IReadOnlyList<string> Open { get; init; } = [];

    public bool IsNothing => Set.Count == 0 && ChangeBy.Count == 0 && Oil is null && Blank.Count == 0 && Open.Count == 0;
}
