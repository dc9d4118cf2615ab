using System.Collections.Immutable;
using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Schedules;

/// <summary>The unit of bare figures, where the person states it for the whole file.</summary>
public enum StatedUnit
{
    NotStated,
    Inch,
    Millimetre,
}

/// <summary>What the person has said about a schedule before (or between) readings of it.</summary>
public sealed record ScheduleOptions
{
    public static ScheduleOptions None { get; } = new();

    /// <summary>The unit of figures to which neither the cell nor the head of its column gives one.</summary>
    public StatedUnit Unit { get; init; }

    public DecimalMark Decimal { get; init; } = DecimalMark.Unstated;

    /// <summary>What each column holds; null: worked out from the headings.</summary>
    public ScheduleMapping? Mapping { get; init; }

    /// <summary>The codes of questions that the person has answered.</summary>
    public IReadOnlySet<string> Confirmed { get; init; } = ImmutableHashSet<string>.Empty;
}

/// <summary>The rows of a hole, of the shaft in it and of the fit between them; the fit may stand beside one of the two on its line.</summary>
public sealed record SchedulePair(int Hole, int Shaft, int Fit);

/// <summary>A schedule of limits as understood: one row for every line of the file.</summary>
/// <param name="Rows">In the order of the lines, none left out.</param>
/// <param name="Mapping">What each column was taken to hold; can be kept and stated next time.</param>
/// <param name="Questions">Every question once: those on single rows and those on the whole file.</param>
/// <param name="Pairs">Hole, shaft and fit that the schedule prints together and whose figures go together.</param>
public sealed record ScheduleReading(ImmutableArray<ScheduleRow> Rows, ScheduleMapping Mapping, ImmutableArray<Problem> Questions, ImmutableArray<SchedulePair> Pairs)
{
    public bool AsksNothing => Questions.IsEmpty;
}
