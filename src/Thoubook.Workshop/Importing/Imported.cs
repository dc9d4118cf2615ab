using Thoubook.Store;

namespace Thoubook.Workshop.Importing;

/// <summary>What an import came to.</summary>
/// <param name="Reading">What the files said.</param>
/// <param name="Changed">What of it was new, what was edited and what was there already.</param>
public sealed record Imported(ImportReading Reading, Changed Changed)
{
    /// <summary>One line for a screen or a terminal.</summary>
    public string Summary => Changed.IsNothing
        ? $"{Reading.Record.Engine.Name}: nothing new; everything was there already."
        : $"{Reading.Record.Engine.Name}: {Changed.Added + Changed.FactsAdded} added, {Changed.Edited} changed, {Changed.Unchanged + Changed.FactsThereBefore} the same.";
}
