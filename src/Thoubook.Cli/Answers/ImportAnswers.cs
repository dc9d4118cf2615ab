using Thoubook.Files.Schedules;
using Thoubook.Record;
using Thoubook.Workshop.Importing;

namespace Thoubook.Cli.Answers;

/// <summary>What <c>import FILE --dry-run --json</c> answers: for a schedule one row for every line; for other files no rows, and what they say in numbers.</summary>
internal sealed record DryRunAnswer(string File, string Sort, IReadOnlyList<RowAnswer> Rows, string? Mapping, SaysAnswer? Says)
{
    public static DryRunAnswer Of(string file, ScheduleReading reading) => new(file, FileSort.Schedule.Word(), [.. reading.Rows.Select(RowAnswer.Of)], reading.Mapping.ToString(), null);

    public static DryRunAnswer Of(string file, FileSort sort, EngineRecord record) => new(file, sort.Word(), [], null, SaysAnswer.Of(record));
}

/// <summary>How much a file says of an engine.</summary>
internal sealed record SaysAnswer(string Engine, int Parts, int Dimensions, int Fits, int Gauges, int Pieces, int Readings, int OtherFacts)
{
    public static SaysAnswer Of(EngineRecord record) =>
        new(record.Engine.Name.Text, record.Parts.Count, record.Dimensions.Count, record.Fits.Count, record.Gauges.Count, record.Pieces.Count, record.Readings.Count, record.Facts.Count() - record.Readings.Count);
}

internal sealed record RowAnswer(
    int Row,
    string Kind,
    string? Name,
    BoundsAnswer New,
    BoundsAnswer Worn,
    string? Unit,
    RowAskAnswer? Ask,
    double? WearAmount,
    BoundsAnswer? Desired,
    RuleAnswer? Rule,
    int? ContinuationOf,
    string? Part,
    string? Feature,
    string? AppliesTo,
    string? Reference,
    string? Remark,
    string? Allowance,
    IReadOnlyList<string> Notes,
    IReadOnlyList<RowAnswer> Beside)
{
    public static RowAnswer Of(ScheduleRow row) => new(
        row.Row,
        row.Kind.Word(),
        row.Name,
        Of(row.New),
        Of(row.Worn),
        row.Unit,
        row.Ask is { } ask ? new(ask.Code, ask.Why, [.. ask.Meanings.Select(m => m.Text)], [.. ask.Meanings.Select(m => m.Code)]) : null,
        row.WearAmount,
        row.Desired.IsEmpty ? null : Of(row.Desired),
        row.Rule is { } rule ? new(rule.Ratio, rule.Add, rule.Per, rule.MeasuredFrom) : null,
        row.ContinuationOf,
        row.Part,
        row.Feature,
        row.AppliesTo,
        row.Reference,
        row.Remark,
        row.Nil switch { NilMeaning.NoWearPermitted => "no wear permitted", NilMeaning.NotAWearItem => "not a wear item", _ => null },
        row.Notes,
        [.. row.Beside.Select(Of)]);

    private static BoundsAnswer Of(Bounds bounds) => new(bounds.Min, bounds.Max);
}

/// <summary>What the reader will not decide alone.</summary>
/// <param name="Code">Confirms the first meaning.</param>
/// <param name="Meanings">In words.</param>
/// <param name="Codes">Confirm the meanings, in their order.</param>
internal sealed record RowAskAnswer(string Code, string Why, IReadOnlyList<string> Meanings, IReadOnlyList<string> Codes);

/// <summary>A limit that is no length yet: a ratio of something, or an amount added.</summary>
internal sealed record RuleAnswer(double? Ratio, double? Add, string? Per, string MeasuredFrom);

/// <summary>What an import wrote.</summary>
internal sealed record ImportedAnswer(string Engine, int Added, int Changed, int Same, int LeftOut)
{
    public static ImportedAnswer Of(Imported imported, int leftOut)
    {
        var changed = imported.Changed;
        return new(imported.Reading.Record.Engine.Name.Text, changed.Added + changed.FactsAdded, changed.Edited, changed.Unchanged + changed.FactsThereBefore, leftOut);
    }
}
