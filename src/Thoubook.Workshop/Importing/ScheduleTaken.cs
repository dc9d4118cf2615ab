using Thoubook.Files.Schedules;
using Thoubook.Store;

namespace Thoubook.Workshop.Importing;

/// <summary>What taking in a schedule came to.</summary>
/// <param name="Proposal">What its rows made, and those left out.</param>
/// <param name="Changed">What of it was new, what was edited and what was there already.</param>
public sealed record ScheduleTaken(ScheduleProposal Proposal, Changed Changed);
