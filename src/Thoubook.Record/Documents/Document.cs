namespace Thoubook.Record.Documents;

/// <summary>A manual, schedule or drawing in one edition.</summary>
public sealed record Document(DocumentName Name)
{
    public int Revision { get; init; }

    public string? Title { get; init; }

    public string? Edition { get; init; }

    public string? Amendment { get; init; }

    /// <summary>How this edition says that part limits and clearance limits combine.</summary>
    public CombiningRule Rule { get; init; } = CombiningRule.BothLimitsMustPass;

    /// <summary>The marks that the document is for; empty where it names none.</summary>
    public IReadOnlyList<string> Marks { get; init; } = [];

    public string? Note { get; init; }
}

/// <summary>How a document combines the limits of a part with the limits of the pair.</summary>
public enum CombiningRule
{
    [Word("both limits must pass")]
    BothLimitsMustPass,

    [Word("clearance governs")]
    ClearanceGoverns,

    [Word("dimension governs")]
    DimensionGoverns,
}

/// <summary>Where a limit comes from.</summary>
public sealed record Citation(DocumentName Document, string? Row);
