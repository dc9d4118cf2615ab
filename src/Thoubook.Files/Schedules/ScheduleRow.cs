using System.Collections.Immutable;
using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Schedules;

/// <summary>What a line of a schedule is about.</summary>
public enum RowKind
{
    Dimension,
    Clearance,
    Interference,
    EndFloat,
    Backlash,
    Gap,
    Torque,
    Spring,
    Other,
    Heading,
    Unreadable,
}

/// <summary>The words for a <see cref="RowKind"/> on paper and in files.</summary>
public static class RowKinds
{
    private static readonly ImmutableArray<string> Words =
        ["dimension", "clearance", "interference", "end float", "backlash", "gap", "torque", "spring", "other", "heading", "unreadable"];

    public static string Word(this RowKind kind) => Words[(int)kind];

    /// <summary>Whether the row is a relation between two parts that is tight or loose.</summary>
    public static bool IsFit(this RowKind kind) =>
        kind is RowKind.Clearance or RowKind.Interference or RowKind.EndFloat or RowKind.Backlash or RowKind.Gap;
}

/// <summary>[SI] Two ends, either of which may be open.</summary>
public sealed record Bounds(double? Min, double? Max)
{
    public static Bounds None { get; } = new(null, null);

    public bool IsEmpty => Min is null && Max is null;
}

/// <summary>A limit that needs another row or a measurement before it is a length: so much per inch, so much over the high limit.</summary>
/// <param name="Ratio">[-] times <paramref name="Per"/>; null where a fixed amount is added.</param>
/// <param name="Add">[m] a fixed amount; null where a ratio is given.</param>
/// <param name="Per">What the ratio multiplies, in the schedule's words.</param>
/// <param name="MeasuredFrom">From where it counts: <c>new</c>, <c>new_max</c>, <c>new_min (below)</c> or <c>zero</c>.</param>
public sealed record WearRule(double? Ratio, double? Add, string? Per, string MeasuredFrom);

/// <summary>What the reader will not decide alone. Each meaning has a code; the file read again with that code confirmed is taken so.</summary>
public sealed record RowQuestion(string Code, string Why, IReadOnlyList<Meaning> Meanings);

/// <summary>What one line of the file says, as understood. Lengths in metres, everything else in its SI unit but angles, which are in degrees; interference is negative.</summary>
public sealed record ScheduleRow
{
    /// <summary>Line of the file, the first is 1.</summary>
    public required int Row { get; init; }

    public required RowKind Kind { get; init; }

    /// <summary>Part and feature in the schedule's own words; null on headings and continuations.</summary>
    public string? Name { get; init; }

    /// <summary>The section the row stands in.</summary>
    public string? Part { get; init; }

    /// <summary>The item's own words, with the sub-heading or parent item they belong to.</summary>
    public string? Feature { get; init; }

    public Bounds New { get; init; } = Bounds.None;

    public Bounds Worn { get; init; } = Bounds.None;

    /// <summary>Unit of the figures: m, N, N.m, kg and so on in SI, angles in deg; null where there are none.</summary>
    public string? Unit { get; init; }

    /// <summary>The unit in which the figures are printed: that of bare readings to come.</summary>
    public TradeUnit? Printed { get; init; }

    /// <summary>[SI] The limit is an amount of wear, not a size; from which new limit it counts is not said.</summary>
    public double? WearAmount { get; init; }

    /// <summary>[SI] A preferred value beside the limits.</summary>
    public Bounds Desired { get; init; } = Bounds.None;

    public WearRule? Rule { get; init; }

    /// <summary>The line this one continues: wrapped words, or the same figures in another unit.</summary>
    public int? ContinuationOf { get; init; }

    /// <summary>Marks or models the row is for.</summary>
    public string? AppliesTo { get; init; }

    /// <summary>What the characters say where that can hardly be what is meant.</summary>
    public Bounds Literal { get; init; } = Bounds.None;

    /// <summary>What the person answered about a printed "nil".</summary>
    public NilMeaning Nil { get; init; } = NilMeaning.NotPrinted;

    public string? Remark { get; init; }

    /// <summary>The document's reference: figure, item or page number.</summary>
    public string? Reference { get; init; }

    /// <summary>What was noticed and needs no answer.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>Other relations given on the same line: the clearance of the pair beside the size of one part.</summary>
    public ImmutableArray<ScheduleRow> Beside { get; init; } = [];

    /// <summary>Null: nothing is in doubt. Else nothing that is in doubt stands in the row's figures.</summary>
    public RowQuestion? Ask { get; init; }
}

/// <summary>A printed "nil" in a limit column means one of two things, and only the text tells which.</summary>
public enum NilMeaning
{
    NotPrinted,
    NoWearPermitted,
    NotAWearItem,
}
