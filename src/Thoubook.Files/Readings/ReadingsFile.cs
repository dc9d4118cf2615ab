using Thoubook.Files.EngineFiles;
using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Readings;

/// <summary>Readings as a table, one a line: see <c>docs/engine-file.md</c>.</summary>
public static class ReadingsFile
{
    private const string Of = "of";
    private const string Value = "value";

    /// <summary>Whether a head line is that of a table of readings.</summary>
    public static bool IsHead(string text)
    {
        var heads = new CsvText(text, CsvText.SeparatorOf(text), new ProblemList("")).Rows().FirstOrDefault()?.Select(c => Head.NameOf(c.Text)).ToList();
        return heads is not null && heads.Contains(Of) && heads.Contains(Value);
    }

    /// <summary>The readings of a table, with the pieces and choices that had to be made for them; or every problem with its line and column.</summary>
    /// <param name="text">The text of the file.</param>
    /// <param name="fileName">For messages.</param>
    /// <param name="record">The engine that they are of.</param>
    /// <param name="terms">Who takes it in and when, and what was answered.</param>
    public static Outcome<EngineRecord> Read(string text, string fileName, EngineRecord record, ImportTerms terms)
    {
        var problems = new ProblemList(fileName);
        var scope = new Scope(problems, terms, record, new YamlMap([], 1, 1));
        var file = new EngineRecord(record.Engine);
        using var rows = new CsvText(text, CsvText.SeparatorOf(text), problems).Rows().GetEnumerator();
        if (!rows.MoveNext())
        {
            problems.Add(1, 1, "table-empty", "", "nothing", "A table of readings begins with its head line, such as of,piece,place,value [in],gauge.", "Check that this is the right file.");
        }
        else if (Heads(rows.Current, scope) is { } heads)
        {
            var ids = new FactIds(record.Engine.Name, terms);
            var pieces = new PiecesOfReadings(scope, ids);
            var readings = new List<Reading>();
            while (!problems.IsFull && rows.MoveNext())
            {
                scope.Entry = "";
                if (Entry(rows.Current, heads, scope) is { } entry && Facts.Readings.ReadEntry(entry, scope, ids, pieces.Fill) is { } reading)
                    readings.Add(reading);
            }

            file = file with { Pieces = pieces.Made, Choices = pieces.Choices, Readings = readings };
        }

        return problems.Count > 0 ? new Outcome<EngineRecord>.Refused(problems.All) : file;
    }

    private static List<Head>? Heads(IReadOnlyList<CsvCell> cells, Scope scope)
    {
        var known = Facts.Readings.Keys;
        var heads = new List<Head>();
        foreach (var cell in cells)
        {
            var name = Head.NameOf(cell.Text);
            if (name.Length == 0 && cell.Text.Length == 0)
                scope.Problems.Add(cell.Line, cell.Column, "table-head-empty", "", "a column without a head", $"The heads are {string.Join(", ", known)}.", "Name the column, or take it out.");
            else if (!known.Contains(name))
                scope.Problems.Add(cell.Line, cell.Column, "table-head-unknown", "", $"the head \"{cell.Text}\"", $"The heads are {string.Join(", ", known)}; a unit may follow in brackets: value [in].", Nearest.Advice(name, known, "Take the column out, or use one of these."));
            else if (heads.Exists(h => h.Name == name))
                scope.Problems.Add(cell.Line, cell.Column, "table-head-twice", "", $"a second column {name}", "Each column stands once.", "Take one out.");
            else if (Unit(name, cell, scope) is not { } isGood || isGood)
                heads.Add(new Head(name));
        }

        foreach (var needed in new[] { Of, Value }.Where(n => !heads.Exists(h => h.Name == n) && scope.Problems.Count == 0))
            scope.Problems.Add(1, 1, "table-head-missing", "", $"no column {needed}", "A table of readings has the columns of and value, and one that says where or with what.", $"Name the column {needed}.");
        return scope.Problems.Count == 0 ? heads : null;
    }

    /// <summary>Takes in the unit of a head; null where it has none, false where it is not one.</summary>
    private static bool? Unit(string name, CsvCell cell, Scope scope)
    {
        if (Head.UnitOf(cell.Text) is not { } symbol)
            return null;
        QuantityKind? kind = name switch
        {
            "temperature" => QuantityKind.Temperature,
            Value => null,
            _ => QuantityKind.Number,
        };
        if (kind != QuantityKind.Number && TradeUnit.Find(symbol, kind) is { } unit)
        {
            scope.HeadUnits[name] = unit;
            return true;
        }

        scope.Problems.Add(cell.Line, cell.Column, "table-head-unit", name, $"the unit \"{symbol}\"", kind == QuantityKind.Number ? "This column has no unit." : "In brackets stands one unit as the trade writes it, such as value [in] or temperature [°C].", "Correct it, or write the unit in each cell.");
        return false;
    }

    private static YamlMap? Entry(IReadOnlyList<CsvCell> cells, List<Head> heads, Scope scope)
    {
        var entries = new List<(YamlScalar, YamlNode)>(heads.Count);
        var isGood = true;
        for (var i = 0; i < cells.Count; i++)
        {
            var cell = cells[i];
            if (cell.Text.Length == 0)
                continue;
            if (i >= heads.Count)
            {
                scope.Problems.Add(cell.Line, cell.Column, "table-cells", "", $"{cells.Count} cells", $"The head has {heads.Count} columns.", "Put a cell that holds the separator in quotes, or a decimal comma too.");
                return null;
            }

            if (IsFormula(cell.Text))
            {
                scope.Problems.Add(cell.Line, cell.Column, "table-formula", heads[i].Name, $"\"{cell.Text[..Math.Min(cell.Text.Length, 60)]}\", which a spreadsheet would take for a formula", "A cell holds a name, a figure or a text.", "Write the figure that was measured.");
                isGood = false;
            }

            entries.Add((new YamlScalar(heads[i].Name, isQuoted: false, cell.Line, cell.Column), new YamlScalar(cell.Text, isQuoted: true, cell.Line, cell.Column)));
        }

        return isGood ? new YamlMap(entries, cells[0].Line, cells[0].Column) : null;
    }

    private static bool IsFormula(string text) => text[0] is '=' or '@' || (text[0] is '+' or '-' && text.Length > 1 && (char.IsLetter(text[1]) || text[1] is '(' or '='));

    private sealed record Head(string Name)
    {
        public static string NameOf(string text)
        {
            var bracket = text.AsSpan().IndexOfAny('[', '(');
            return (bracket < 0 ? text : text[..bracket]).Trim().ToLowerInvariant();
        }

        public static string? UnitOf(string text)
        {
            var bracket = text.AsSpan().IndexOfAny('[', '(');
            return bracket < 0 ? null : text[(bracket + 1)..].TrimEnd(' ', ']', ')').Trim();
        }
    }
}
