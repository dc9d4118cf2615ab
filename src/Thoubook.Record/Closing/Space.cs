namespace Thoubook.Record.Closing;

/// <summary>A volume that steps close: what lies in it cannot be reached once it is closed. Which steps close it, they say themselves.</summary>
public sealed record Space(SpaceName Name)
{
    public int Revision { get; init; }

    /// <summary>In words; null: its name says enough.</summary>
    public string? What { get; init; }

    /// <summary>The space that it lies in.</summary>
    public SpaceName? In { get; init; }

    /// <summary>The parts that lie in it, each with everything within.</summary>
    public IReadOnlyList<PartName> Parts { get; init; } = [];

    public string? Note { get; init; }
}
