namespace Thoubook.Record.Closing;

/// <summary>A tool made or got for the job, and where it is kept. Steps name it among their tools.</summary>
public sealed record KeptTool(ToolName Name)
{
    public int Revision { get; init; }

    /// <summary>What it is for; null: its name says enough.</summary>
    public string? What { get; init; }

    /// <summary>How it was made, and from what; null: it was bought or borrowed.</summary>
    public string? Made { get; init; }

    /// <summary>Where it is kept.</summary>
    public string? Kept { get; init; }

    public string? Note { get; init; }
}
