using Thoubook.Files.Schedules;
using Thoubook.Record.Quantities;

namespace Thoubook.Workshop.Importing;

/// <summary>What a person says beside the files that are taken in.</summary>
/// <param name="By">Who, by name or role.</param>
public sealed record ImportOptions(string By)
{
    /// <summary>The engine that a table belongs to; an engine file names its own.</summary>
    public string? Engine { get; init; }

    /// <summary>The codes of questions answered.</summary>
    public IReadOnlySet<string> Confirmed { get; init; } = new HashSet<string>(StringComparer.Ordinal);

    /// <summary>The decimal mark of the files, where it was stated.</summary>
    public DecimalMark Decimal { get; init; } = DecimalMark.Unstated;

    /// <summary>The unit of a schedule's bare figures, where it was stated.</summary>
    public StatedUnit Unit { get; init; }

    /// <summary>What each column of a schedule holds; null: worked out from its heads.</summary>
    public ScheduleMapping? Mapping { get; init; }

    /// <summary>The document that a schedule was copied from, by its short name or its title; null: the name of the file.</summary>
    public string? Document { get; init; }
}
