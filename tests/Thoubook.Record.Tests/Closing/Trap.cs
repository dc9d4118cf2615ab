using Thoubook.Record.Closing;

namespace Thoubook.Record.Tests.Closing;

/// <summary>Something that is left out in assembly and found too late, and how the record holds it: every safeguard is wanted before the closing step is signed.</summary>
/// <param name="Name">As the table has it.</param>
/// <param name="Kind">What sort of trap.</param>
/// <param name="Source">Who tells of it.</param>
/// <param name="Provenance">Published, or common practice.</param>
/// <param name="Closes">What sort of step shuts it in.</param>
/// <param name="Safeguards">What must have been seen to.</param>
internal sealed record Trap(string Name, string Kind, string Source, string Provenance, StepKind Closes, IReadOnlyList<Safeguard> Safeguards)
{
    public static IReadOnlyList<Trap> All { get; } = Read();

    private static IReadOnlyList<Trap> Read()
    {
        var told = Rows(Path.Combine("reference", "assembly-traps.csv"));
        var expressed = Rows("expressed-traps.csv").ToDictionary(r => r["trap"]);
        return [.. told.Select(t => new Trap(t["trap"], t["kind"], t["source"], t["provenance"], Word<StepKind>(expressed[t["trap"]]["closes"]), Safeguard.Read(expressed[t["trap"]]["safeguards"])))];
    }

    public static IReadOnlyList<Dictionary<string, string>> Rows(string file)
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, file)).Select(Cells).ToList();
        return [.. lines.Skip(1).Select(cells => lines[0].Zip(cells).ToDictionary(p => p.First, p => p.Second))];
    }

    internal static T Word<T>(string text)
        where T : struct, Enum => Words.TryRead<T>(text, out var word) ? word : throw new FormatException($"{text} is no {typeof(T).Name}.");

    /// <summary>The cells of a line; a cell with commas stands in quotes.</summary>
    private static List<string> Cells(string line)
    {
        var cells = new List<string>();
        foreach (var piece in line.Split(','))
        {
            if (cells.Count > 0 && cells[^1].Count(c => c == '"') % 2 == 1)
                cells[^1] += $",{piece}";
            else
                cells.Add(piece);
        }

        return [.. cells.Select(c => c.StartsWith('"') ? c[1..^1].Replace("\"\"", "\"", StringComparison.Ordinal) : c)];
    }
}

/// <summary>One thing that must be seen to: <c>joint locked: end plug</c>.</summary>
/// <param name="Sort">The sort of entry that holds it: part, joint, hold, fit, count, the kind of a step …</param>
/// <param name="Stage">Of a joint its last state, of a hold point its kind; else empty.</param>
/// <param name="What">In words.</param>
internal sealed record Safeguard(string Sort, string Stage, string What)
{
    public static IReadOnlyList<Safeguard> Read(string text) =>
    [
        .. text.Split(';', StringSplitOptions.TrimEntries).Select(one =>
        {
            var colon = one.IndexOf(':', StringComparison.Ordinal);
            var (sort, what) = (one[..colon], one[(colon + 1)..].Trim());
            return Array.Find(["joint", "hold"], s => sort.StartsWith(s + " ", StringComparison.Ordinal)) is { } staged
                ? new Safeguard(staged, sort[(staged.Length + 1)..], what)
                : new Safeguard(sort, "", what);
        }),
    ];

    /// <summary>Its first words as a name.</summary>
    public string Name => string.Join('-', What.ToLowerInvariant().Split([' ', ',', '/'], StringSplitOptions.RemoveEmptyEntries).Take(5));

    public override string ToString() => $"{Sort} {Stage}: {What}";
}
