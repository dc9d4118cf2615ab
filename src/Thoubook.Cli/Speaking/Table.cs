namespace Thoubook.Cli.Speaking;

/// <summary>A table for a terminal: columns as wide as they need, the last one folded at the edge.</summary>
internal sealed class Table(params string[] heads)
{
    private readonly List<string[]> _rows = [];

    public void Add(params string[] cells)
    {
        if (cells.Length != heads.Length)
            throw new ArgumentException($"{cells.Length} cells under {heads.Length} heads.", nameof(cells));
        _rows.Add(cells);
    }

    public bool IsEmpty => _rows.Count == 0;

    public void WriteTo(Terminal terminal)
    {
        var widths = heads.Select((head, i) => _rows.Select(r => r[i].Length).Append(head.Length).Max()).ToArray();
        var before = widths[..^1].Sum(w => w + 2);
        var last = Math.Max(20, terminal.Width - before);
        Row(heads, terminal.Colour ? ("\e[1m", "\e[0m") : ("", ""));
        Row([.. widths.Select((w, i) => new string('─', i == widths.Length - 1 ? Math.Min(w, last) : w))], ("", ""));
        foreach (var row in _rows)
            Row(row, ("", ""));

        void Row(string[] cells, (string On, string Off) ink)
        {
            var lines = Fold(cells[^1], last);
            for (var i = 0; i < lines.Count; i++)
            {
                var left = i > 0 ? new string(' ', before) : string.Concat(cells[..^1].Select((c, at) => c.PadRight(widths[at] + 2)));
                terminal.Out.WriteLine($"{ink.On}{(left + lines[i]).TrimEnd()}{ink.Off}");
            }
        }
    }

    /// <summary>Breaks a text at blanks so that no line is longer than the width, where its words allow it.</summary>
    internal static List<string> Fold(string text, int width)
    {
        var lines = new List<string>();
        while (text.Length > width)
        {
            var at = text.LastIndexOf(' ', width);
            if (at <= 0)
                at = text.IndexOf(' ');
            if (at <= 0)
                break;
            lines.Add(text[..at]);
            text = text[(at + 1)..];
        }

        lines.Add(text);
        return lines;
    }
}
