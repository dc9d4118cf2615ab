using Thoubook.Record.Closing;

namespace Thoubook.Workshop.Closing;

/// <summary>What the record does not say of the closing up: how the engine lies, and what is not at hand.</summary>
public sealed record ClosingQuestion
{
    /// <summary>Null: as the step signed last had it.</summary>
    public Attitude? Attitude { get; init; }

    public IReadOnlyList<string> ToolsAway { get; init; } = [];
}
