using System.Collections.Immutable;
using CsvHelper;
using Thoubook.Record;

namespace Thoubook.Files.Schedules;

/// <summary>One record of the file: the line it begins on, how many lines it takes, its cells trimmed.</summary>
internal sealed record ScheduleLine(int Row, int Span, ImmutableArray<string> Cells)
{
    public string Cell(int column) => column < Cells.Length ? Cells[column] : "";

    public bool IsBlank => Cells.All(cell => cell.Length == 0);
}

/// <summary>Text into lines of cells. Every line of the file is accounted for; a quotation mark that is not closed is refused where it opens.</summary>
internal static class ScheduleLines
{
    public const int MostCells = 200;

    /// <summary>[characters] Far beyond any remark.</summary>
    public const int LongestCell = 10_000;

    public static Outcome<ImmutableArray<ScheduleLine>> Split(string text, string fileName)
    {
        var separator = SeparatorOf(text);
        CsvMalformedRecord? malformed = null;
        var options = CsvReaderOptions.Default with
        {
            HasHeader = false,
            SkipEmptyLines = false,
            TrackLineNumbers = true,
            DetectSeparatorHint = false,
            Separator = separator,
            OnMalformedRecord = found =>
            {
                // An inch mark inside an unquoted cell is text; anything else leaves open where cells end.
                if (found.Reason != CsvMalformedReason.StrayQuote)
                    malformed ??= found;
            },
        };
        var lines = ImmutableArray.CreateBuilder<ScheduleLine>();
        using var reader = CsvReader.FromText(text, options);
        while (reader.Read())
        {
            var row = checked((int)reader.LineNumber);
            if (malformed is { } bad)
                return QuoteRefused(bad.Reason, row, fileName);
            if (reader.FieldCount > MostCells)
                return Refuse(fileName, row, MostCells + 1, "too-many-cells", $"{reader.FieldCount} cells on one line", $"A line of a schedule has at most {MostCells} cells.", "Check the separator, or that the file is a schedule.");
            var cells = ImmutableArray.CreateBuilder<string>(reader.FieldCount);
            for (var column = 0; column < reader.FieldCount; column++)
            {
                var cell = reader.GetString(column);
                if (cell.Length > LongestCell)
                    return Refuse(fileName, row, column + 1, "cell-too-long", $"a cell of {cell.Length} characters", $"A cell has at most {LongestCell} characters.", "Check for a quotation mark that is not closed.");
                if (cell.Contains('\n') && cell.Count(c => c == separator) > 1)
                    return QuoteRefused(CsvMalformedReason.LineBreakInQuotes, row, fileName);
                if (cell.Trim() == "," && separator == ',')
                    return QuoteRefused(CsvMalformedReason.TextAfterClosingQuote, row, fileName);
                cells.Add(Tidy(cell));
            }

            lines.Add(new ScheduleLine(row, 1, cells.ToImmutable()));
        }

        if (malformed is { } last)
            return QuoteRefused(last.Reason, checked((int)last.LineNumber), fileName);
        return WithSpans(lines, CountLines(text));
    }

    private static ImmutableArray<ScheduleLine> WithSpans(ImmutableArray<ScheduleLine>.Builder lines, int count)
    {
        for (var index = 0; index < lines.Count; index++)
        {
            var next = index + 1 < lines.Count ? lines[index + 1].Row : Math.Max(count + 1, lines[index].Row + 1);
            lines[index] = lines[index] with { Span = next - lines[index].Row };
        }

        return lines.ToImmutable();
    }

    private static int CountLines(string text)
    {
        var count = 0;
        for (var at = 0; at < text.Length; at++)
        {
            if (text[at] == '\n' || (text[at] == '\r' && (at + 1 == text.Length || text[at + 1] != '\n')))
                count++;
        }

        return text.Length > 0 && text[^1] is not ('\n' or '\r') ? count + 1 : count;
    }

    /// <summary>Tab or semicolon where most lines have it (outside quotation marks) and at least as often as lines with a comma; else the comma.</summary>
    private static char SeparatorOf(string text)
    {
        var lines = 0;
        var withTab = 0;
        var withSemicolon = 0;
        var withComma = 0;
        var quoted = false;
        var (tab, semicolon, comma) = (false, false, false);
        foreach (var character in text)
        {
            switch (character)
            {
                case '"':
                    quoted = !quoted;
                    break;
                case '\t' when !quoted:
                    tab = true;
                    break;
                case ';' when !quoted:
                    semicolon = true;
                    break;
                case ',' when !quoted:
                    comma = true;
                    break;
                case '\n':
                    Close();
                    break;
            }

            if (lines > 2_000)
                break;
        }

        Close();
        return withTab * 2 > lines ? '\t'
            : withSemicolon * 2 > lines && withSemicolon >= withComma ? ';'
            : ',';

        void Close()
        {
            if (tab || semicolon || comma)
            {
                lines++;
                withTab += tab ? 1 : 0;
                withSemicolon += semicolon ? 1 : 0;
                withComma += comma ? 1 : 0;
            }

            quoted = false;
            (tab, semicolon, comma) = (false, false, false);
        }
    }

    private static string Tidy(string cell)
    {
        if (cell.AsSpan().IndexOfAny('\r', '\n', '\u00A0') < 0)
            return cell.Trim();
        return string.Join(' ', cell.Split((char[])['\r', '\n', '\u00A0', ' '], StringSplitOptions.RemoveEmptyEntries));
    }

    private static Problem QuoteRefused(CsvMalformedReason reason, int row, string fileName) => Refuse(
        fileName, row, 1, "quotation-mark",
        reason switch
        {
            CsvMalformedReason.UnterminatedQuote => "a quotation mark that is not closed",
            CsvMalformedReason.LineBreakInQuotes => "a quoted cell that runs over several lines with separators in it",
            _ => "text after the quotation mark that closes a cell",
        },
        "A cell that begins with a quotation mark ends with one, and a mark inside it is doubled.",
        "Close the quotation mark, or write inch marks inside a quoted cell twice; write a ditto mark as do.");

    private static Problem Refuse(string file, int line, int column, string code, string found, string allowed, string doThis) =>
        new(code, "", found, allowed, doThis) { At = new Problem.Place(file, line, column) };
}
