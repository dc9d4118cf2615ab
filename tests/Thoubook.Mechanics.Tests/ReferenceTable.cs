using System.Text;

namespace Thoubook.Mechanics.Tests;

/// <summary>Reads the tables of reference values: one row per line, quoted cells allowed.</summary>
internal static class ReferenceTable
{
    public static IReadOnlyList<Row> Read(string file)
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "reference", file));
        var heads = Cells(lines[0]);
        var rows = lines.Skip(1).Where(line => line.Length > 0).Select(line => new Row(file, heads.Zip(Cells(line)).ToDictionary(pair => pair.First, pair => pair.Second))).ToList();
        Assert.NotEmpty(rows);
        return rows;
    }

    private static List<string> Cells(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        foreach (var c in line)
        {
            if (c == '"')
                quoted = !quoted;
            else if (c == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
                cell.Append(c);
        }

        cells.Add(cell.ToString());
        return cells;
    }

    internal sealed record Row(string File, IReadOnlyDictionary<string, string> Cells)
    {
        public string this[string head] => Cells[head];

        public double Number(string head) => double.Parse(Cells[head], System.Globalization.CultureInfo.InvariantCulture);

        public double? NumberOrNone(string head) => Cells[head].Length == 0 ? null : Number(head);

        public double[] Numbers(string head) => [.. Cells[head].Split(' ').Select(text => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture))];

        /// <summary>Checks a value against this row's own source.</summary>
        public void Check(string quantity, double expected, double got, double tolerance)
        {
            Assert.Contains(this["kind"], new[] { "published", "from memory", "computed", "common practice" });
            Outside.Check(quantity, expected, got, tolerance, this["source"], this["kind"]);
        }
    }
}
