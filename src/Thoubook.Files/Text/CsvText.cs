using System.Text;

namespace Thoubook.Files.Text;

/// <summary>One cell of a table, with the place where it begins; line and column count from 1.</summary>
internal readonly record struct CsvCell(string Text, int Line, int Column);

/// <summary>Takes a table apart line by line: cells parted by commas, semicolons or tabs, in double quotes where they hold one of those.</summary>
internal sealed class CsvText(string text, char separator, ProblemList problems)
{
    private const int LongestCell = 20_000;

    private int _at;
    private int _line = 1;
    private int _lineStart;

    /// <summary>The mark that parts the cells of a head line.</summary>
    public static char SeparatorOf(string text)
    {
        var end = text.AsSpan().IndexOfAny('\r', '\n');
        var head = end < 0 ? text : text[..end];
        return new[] { ',', ';', '\t' }.MaxBy(c => head.Count(h => h == c));
    }

    /// <summary>The rows that hold anything, in their order.</summary>
    public IEnumerable<IReadOnlyList<CsvCell>> Rows()
    {
        while (_at < text.Length)
        {
            var row = Row();
            if (row.Exists(c => c.Text.Length > 0))
                yield return row;
        }
    }

    private List<CsvCell> Row()
    {
        var cells = new List<CsvCell>(10);
        while (true)
        {
            cells.Add(Cell());
            if (_at >= text.Length)
                return cells;
            var end = text[_at++];
            if (end == separator)
                continue;
            if (end == '\r' && _at < text.Length && text[_at] == '\n')
                _at++;
            NewLine();
            return cells;
        }
    }

    /// <summary>Leaves off at the mark that ended the cell.</summary>
    private CsvCell Cell()
    {
        var start = _at;
        while (_at < text.Length && text[_at] == ' ')
            _at++;
        if (_at < text.Length && text[_at] == '"')
            return InQuotes();

        _at = start;
        var length = text.AsSpan(_at).IndexOfAny(separator, '\r', '\n');
        _at = length < 0 ? text.Length : _at + length;
        return Checked(new CsvCell(text[start.._at].Trim(), _line, start - _lineStart + 1));
    }

    private CsvCell InQuotes()
    {
        var (line, column) = (_line, _at - _lineStart + 1);
        var cell = new StringBuilder();
        for (_at++; _at < text.Length; _at++)
        {
            var c = text[_at];
            if (c == '"' && _at + 1 < text.Length && text[_at + 1] == '"')
            {
                cell.Append('"');
                _at++;
            }
            else if (c == '"')
            {
                return Ended(new CsvCell(cell.ToString().Trim(), line, column));
            }
            else
            {
                cell.Append(c);
                if (c == '\n')
                {
                    _line++;
                    _lineStart = _at + 1;
                }
            }
        }

        problems.Add(line, column, "table-quote-open", "", "a quote that is opened and never closed", "A cell in quotes ends with a quote; one inside it is written twice.", "Close it, or write inches as in.");
        return new CsvCell(cell.ToString(), line, column);
    }

    private CsvCell Ended(CsvCell cell)
    {
        _at++;
        var rest = text.AsSpan(_at).IndexOfAny(separator, '\r', '\n') is var length && length < 0 ? text.Length - _at : length;
        if (!text.AsSpan(_at, rest).IsWhiteSpace())
            problems.Add(_line, _at - _lineStart + 1, "table-quote", "", $"\"{text.Substring(_at, Math.Min(rest, 20))}\" after a closing quote", "A cell in quotes ends with them; a quote inside it is written twice.", "Put the whole cell in quotes, each quote inside it doubled; or write inches as in.");
        _at += rest;
        return Checked(cell);
    }

    private CsvCell Checked(CsvCell cell)
    {
        if (cell.Text.Length <= LongestCell)
            return cell;
        problems.Add(cell.Line, cell.Column, "table-cell-long", "", $"a cell of {cell.Text.Length} letters", $"A cell has at most {LongestCell} letters.", "Look for a quote that was not closed.");
        return cell with { Text = "" };
    }

    private void NewLine()
    {
        _line++;
        _lineStart = _at;
    }
}
