using Thoubook.Record.Closing;

namespace Thoubook.Web.Pages.Closing;

/// <summary>What the person told the sheet that the record does not know.</summary>
/// <param name="Attitude">How the engine lies; null: as the step signed last had it.</param>
/// <param name="ToolsAway">Tools that are not at hand.</param>
public sealed record CloseUpAsked(Attitude? Attitude, IReadOnlyList<string> ToolsAway);
