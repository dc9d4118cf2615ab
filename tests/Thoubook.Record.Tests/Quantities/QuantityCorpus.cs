using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Tests.Quantities;

/// <summary>One string of <c>tests/reference/quantity-strings.csv</c> and what must become of it, at every door.</summary>
/// <param name="Text">As a person writes it.</param>
/// <param name="Context">Where it stands: a row of <c>quantity-contexts.csv</c>.</param>
/// <param name="Confirm">The codes that are confirmed with it.</param>
/// <param name="Outcome">ok, ask or refused.</param>
/// <param name="Si">[SI] expected; null unless ok.</param>
/// <param name="Unit">Code of the unit it is taken in; empty unless ok.</param>
/// <param name="Codes">Of a question the codes of its meanings in their order; of a refusal its code.</param>
public sealed record CorpusString(int Line, string Text, string Context, string[] Confirm, string Outcome, double? Si, string Unit, string[] Codes)
{
    /// <summary>The name of its test: plain letters only, since a file of results cannot hold every character that the corpus tries.</summary>
    public override string ToString() =>
        $"line {Line}: {string.Concat(Text.Take(80).Select(c => c is >= ' ' and <= '~' ? c.ToString() : $"\\u{(int)c:X4}"))} ({Context}{string.Concat(Confirm.Select(code => " +" + code))})";
}

/// <summary>Reads the corpus. Linked by the tests of every door.</summary>
public static class QuantityCorpus
{
    public static IReadOnlyList<CorpusString> Strings { get; } = ReadStrings();

    public static IReadOnlyDictionary<string, ReadingContext> Contexts { get; } = ReadContexts();

    public static ReadingContext ContextOf(CorpusString row) =>
        Contexts[row.Context] with { Confirmed = row.Confirm.ToHashSet(StringComparer.Ordinal) };

    private static CorpusString[] ReadStrings() =>
    [
        .. Rows("quantity-strings.csv").Select(row => new CorpusString(
            row.Line, Unescape(row.Cells[0]), row.Cells[1], Codes(row.Cells[2]), row.Cells[3],
            row.Cells[4].Length == 0 ? null : double.Parse(row.Cells[4], NumberStyles.Float, CultureInfo.InvariantCulture), row.Cells[5], Codes(row.Cells[6]))),
    ];

    private static Dictionary<string, ReadingContext> ReadContexts() => Rows("quantity-contexts.csv").ToDictionary(
        row => row.Cells[0],
        row => new ReadingContext
        {
            Kind = row.Cells[1].Length == 0 ? null : Enum.Parse<QuantityKind>(row.Cells[1]),
            BareUnit = row.Cells[2].Length == 0 ? null : TradeUnit.FromCode(row.Cells[2]) ?? throw new InvalidDataException(row.Cells[2]),
            Plausible = row.Cells[3].Length == 0 ? null : (double.Parse(row.Cells[3], CultureInfo.InvariantCulture), double.Parse(row.Cells[4], CultureInfo.InvariantCulture)),
            Decimal = row.Cells[5].Length == 0 ? DecimalMark.Unstated : Enum.Parse<DecimalMark>(row.Cells[5]),
            FitSigns = row.Cells[6].Length == 0 ? FitSigns.NotHere : Enum.Parse<FitSigns>(row.Cells[6]),
        },
        StringComparer.Ordinal);

    private static string[] Codes(string cell) => cell.Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private static IEnumerable<(int Line, string[] Cells)> Rows(string file)
    {
        var line = 1;
        foreach (var text in File.ReadLines(Path.Combine(ReferenceFolder(), file)).Skip(1))
            yield return (++line, Cells(text));
    }

    private static string[] Cells(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        for (var i = 0; i < line.Length; i++)
        {
            if (line[i] == '"' && quoted && i + 1 < line.Length && line[i + 1] == '"')
                cell.Append(line[i++]);
            else if (line[i] == '"')
                quoted = !quoted;
            else if (line[i] == ',' && !quoted)
                cells.Add(Take(cell));
            else
                cell.Append(line[i]);
        }

        cells.Add(Take(cell));
        return [.. cells];

        static string Take(StringBuilder cell)
        {
            var text = cell.ToString();
            cell.Clear();
            return text;
        }
    }

    /// <summary>Characters that can't be seen on a page stand as <c>\u200B</c>.</summary>
    private static string Unescape(string cell)
    {
        var text = new StringBuilder();
        for (var i = 0; i < cell.Length; i++)
        {
            if (cell[i] == '\\' && i + 5 < cell.Length && cell[i + 1] == 'u')
            {
                text.Append((char)int.Parse(cell.AsSpan(i + 2, 4), NumberStyles.HexNumber, CultureInfo.InvariantCulture));
                i += 5;
            }
            else
            {
                text.Append(cell[i]);
            }
        }

        return text.ToString();
    }

    /// <summary>Where the reference files lie: found from this source file, so that every test program that links it finds them.</summary>
    public static string ReferenceFolder([CallerFilePath] string here = "") =>
        Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "reference");
}
