using System.Collections.Immutable;
using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Schedules;

/// <summary>
/// Reads a schedule of limits as a person copied it out of a manual. Pure: text and what the person has said in, rows and questions out.
/// A figure whose meaning the text does not settle is never taken: its row asks.
/// </summary>
public static class ScheduleReader
{
    public static Outcome<ScheduleReading> Read(ReadOnlySpan<byte> bytes, string fileName, ScheduleOptions options) =>
        TextFile.Read(bytes, fileName).Then(text => ReadText(text, fileName, options));

    public static Outcome<ScheduleReading> ReadText(string text, string fileName, ScheduleOptions options) =>
        ScheduleLines.Split(text, fileName).Then<ScheduleReading>(lines => Understand(lines, fileName, options));

    private static ScheduleReading Understand(ImmutableArray<ScheduleLine> lines, string fileName, ScheduleOptions options)
    {
        options = WithConfirmed(options);
        if (lines.IsEmpty)
            return new ScheduleReading([], ScheduleMapping.Empty, [], []);
        var heads = MappingFinder.Find(lines, options);
        var mark = options.Decimal == DecimalMark.Unstated ? DecimalEvidence.Find(lines, heads) : options.Decimal;
        var placed = ScheduleStructure.Place(lines, heads, mark);
        var units = new ItemUnits(options.Unit == StatedUnit.NotStated ? options with { Unit = UnitOfTitles(placed, heads) } : options);
        var reader = new ItemReader(units);
        var drafts = placed.Select(line => line.Item).OfType<ScheduleItem>().Select(reader.Read).ToList();
        CrossChecks.Check(drafts);
        var asked = new RowAsking(options, fileName);
        var rows = Rows(placed, drafts.ToDictionary(draft => draft.Item.Row), asked);
        var pairs = SchedulePairs.Find(drafts).Select(pair => new SchedulePair(pair.Hole.Item.Row, pair.Shaft.Item.Row, pair.Fit.Item.Row));
        return new ScheduleReading(rows, heads[0].Mapping, asked.Questions, [.. pairs]);
    }

    /// <summary>The codes that answer for the whole file are options too.</summary>
    private static ScheduleOptions WithConfirmed(ScheduleOptions options) => options with
    {
        Unit = options.Unit != StatedUnit.NotStated ? options.Unit
            : options.Confirmed.Contains("unit-in") ? StatedUnit.Inch
            : options.Confirmed.Contains("unit-mm") ? StatedUnit.Millimetre
            : StatedUnit.NotStated,
        Decimal = options.Decimal != DecimalMark.Unstated ? options.Decimal
            : options.Confirmed.Contains("decimal-point") ? DecimalMark.Point
            : options.Confirmed.Contains("decimal-comma") ? DecimalMark.Comma
            : DecimalMark.Unstated,
    };

    /// <summary>The unit that a title ("Fits and clearances, inches") or a note ("All dimensions in millimetres") gives, if they agree.</summary>
    private static StatedUnit UnitOfTitles(ImmutableArray<PlacedLine> placed, ImmutableArray<TableHead> heads)
    {
        var units = new HashSet<TradeUnit>();
        for (var index = 0; index < placed.Length; index++)
        {
            if (placed[index].Sort is not (LineSort.Heading or LineSort.Note))
                continue;
            var words = ItemWords.Of(placed[index].Text);
            var speaks = index < heads[0].First || words.HasAny(["dimension in", "dimension are in", "figure in", "measurement in", "limit in", "all in", "dimension given in", "figure are in", "size in", "clearance in"]);
            if (speaks && HeadWords.Several(placed[index].Text))
                return StatedUnit.NotStated;
            if (speaks && HeadWords.UnitIn(placed[index].Text) is { } unit)
                units.Add(unit);
        }

        return units is { Count: 1 } && units.First() == TradeUnit.Inch ? StatedUnit.Inch
            : units is { Count: 1 } && units.First() == TradeUnit.Millimetre ? StatedUnit.Millimetre
            : StatedUnit.NotStated;
    }

    private static ImmutableArray<ScheduleRow> Rows(ImmutableArray<PlacedLine> placed, Dictionary<int, RowDraft> drafts, RowAsking asking)
    {
        var rows = ImmutableArray.CreateBuilder<ScheduleRow>();
        foreach (var line in placed)
        {
            var row = line.Sort switch
            {
                LineSort.Item => asking.Settle(drafts[line.Line.Row]),
                LineSort.Heading => new ScheduleRow { Row = line.Line.Row, Kind = RowKind.Heading, Notes = Texts(line) },
                LineSort.Stray => asking.Stray(line),
                _ => new ScheduleRow { Row = line.Line.Row, Kind = RowKind.Other, ContinuationOf = line.ContinuationOf, Notes = Texts(line) },
            };
            rows.Add(row);

            // A cell may hold line breaks: the lines it runs over belong to its row.
            for (var extra = 1; extra < line.Line.Span; extra++)
                rows.Add(new ScheduleRow { Row = line.Line.Row + extra, Kind = RowKind.Other, ContinuationOf = line.Line.Row });
        }

        return rows.ToImmutable();
    }

    private static ImmutableArray<string> Texts(PlacedLine line) => line.Text.Length > 0 ? [line.Text] : [];
}
