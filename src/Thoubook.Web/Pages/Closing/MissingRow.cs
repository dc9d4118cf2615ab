using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Web.Pages.Closing;

/// <summary>Something that is not so.</summary>
/// <param name="Want">What, and why.</param>
/// <param name="CoveredBy">The departure or the debt with which it may be closed over; null where there is none.</param>
/// <param name="Cost">What it takes to reach it later; null where that is not asked.</param>
/// <param name="MayBeCovered">Whether a departure or a debt would let the work go on.</param>
public sealed record MissingRow(Want Want, Fact? CoveredBy, WayBackIn? Cost, bool MayBeCovered);
