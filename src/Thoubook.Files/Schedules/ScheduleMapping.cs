using System.Collections.Immutable;
using System.Text;
using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Schedules;

/// <summary>What a column of a schedule holds.</summary>
public enum ColumnUse
{
    Ignored,
    Description,
    Reference,
    Remarks,
    Unit,
    AppliesTo,
    Limit,

    /// <summary>A column of figures whose heading was not understood: its figures are asked, never taken.</summary>
    NotUnderstood,
}

public enum LimitSide
{
    New,
    Worn,
    Desired,

    /// <summary>How much may be worn away, not a size.</summary>
    WearAmount,
}

public enum LimitEnd
{
    /// <summary>A range in one cell, or one figure for both ends.</summary>
    Both,
    Min,
    Max,
}

/// <summary>Whose figure it is, where a table keeps sizes and clearances apart.</summary>
public enum LimitOf
{
    Row,
    Dimension,
    Clearance,
    Hole,
    Shaft,
}

/// <summary>What one column holds.</summary>
public sealed record ColumnRole(ColumnUse Use)
{
    public LimitSide Side { get; init; }

    public LimitEnd End { get; init; }

    public LimitOf Of { get; init; }

    /// <summary>The unit that the head of the column gives to bare figures.</summary>
    public TradeUnit? Unit { get; init; }

    public static ColumnRole Limit(LimitSide side, LimitEnd end = LimitEnd.Both, LimitOf of = LimitOf.Row, TradeUnit? unit = null) =>
        new(ColumnUse.Limit) { Side = side, End = end, Of = of, Unit = unit };

    /// <summary>Whether two columns give the same limit (in two units: the first printed is used, the other checks it).</summary>
    public bool SameLimit(ColumnRole other) => Use == ColumnUse.Limit && other.Use == ColumnUse.Limit && (Side, End, Of) == (other.Side, other.End, other.Of);
}

/// <summary>
/// What every column of a schedule holds, as worked out or stated. As text one line for each column, so that it can be kept and stated again:
/// <code>
/// 1: description
/// 2: new min dimension in
/// 4: worn
/// </code>
/// </summary>
public sealed record ScheduleMapping(ImmutableArray<ColumnRole> Columns)
{
    public const string Help = "One line for each column: its number, a colon, then description, reference, remarks, unit, applies to, ignored, or a limit: "
        + "new, worn, desired or wear amount; then min or max; then dimension, clearance, hole or shaft; then in, thou, mm, um, lbf ft or N m.";

    private static readonly (ColumnUse Use, string Word)[] Uses =
    [
        (ColumnUse.Ignored, "ignored"), (ColumnUse.Description, "description"), (ColumnUse.Reference, "reference"), (ColumnUse.Remarks, "remarks"),
        (ColumnUse.Unit, "unit"), (ColumnUse.AppliesTo, "applies to"), (ColumnUse.NotUnderstood, "not understood"),
    ];

    private static readonly (LimitSide Side, string Word)[] Sides =
        [(LimitSide.New, "new"), (LimitSide.Worn, "worn"), (LimitSide.Desired, "desired"), (LimitSide.WearAmount, "wear amount")];

    private static readonly (LimitEnd End, string Word)[] Ends = [(LimitEnd.Min, "min"), (LimitEnd.Max, "max")];

    private static readonly (LimitOf Of, string Word)[] Owners =
        [(LimitOf.Dimension, "dimension"), (LimitOf.Clearance, "clearance"), (LimitOf.Hole, "hole"), (LimitOf.Shaft, "shaft")];

    private static readonly (TradeUnit? Unit, string Word)[] Units =
    [
        (TradeUnit.Inch, "in"), (TradeUnit.Thou, "thou"), (TradeUnit.Millimetre, "mm"), (TradeUnit.Micrometre, "um"), (TradeUnit.PoundForceFoot, "lbf ft"), (TradeUnit.NewtonMetre, "N m"),
    ];

    public static ScheduleMapping Empty { get; } = new([]);

    public ColumnRole this[int column] => column < Columns.Length ? Columns[column] : new ColumnRole(ColumnUse.NotUnderstood);

    public bool Equals(ScheduleMapping? other) => other is not null && Columns.SequenceEqual(other.Columns);

    public override int GetHashCode() => Columns.Aggregate(17, (hash, column) => HashCode.Combine(hash, column));

    /// <summary>The text form, which <see cref="Read"/> takes back unchanged.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        for (var column = 0; column < Columns.Length; column++)
            text.Append(column + 1).Append(": ").Append(Describe(Columns[column])).Append('\n');
        return text.ToString();
    }

    public static string Describe(ColumnRole role)
    {
        if (role.Use != ColumnUse.Limit)
            return Uses.First(use => use.Use == role.Use).Word;
        var words = new List<string> { Sides.First(side => side.Side == role.Side).Word };
        words.AddRange(Ends.Where(end => end.End == role.End).Select(end => end.Word));
        words.AddRange(Owners.Where(of => of.Of == role.Of).Select(of => of.Word));
        words.AddRange(Units.Where(unit => unit.Unit == role.Unit).Select(unit => unit.Word));
        return string.Join(' ', words);
    }

    /// <summary>Reads the text form. A line it does not know is refused with its place.</summary>
    public static Outcome<ScheduleMapping> Read(string text, string fileName)
    {
        var roles = new SortedDictionary<int, ColumnRole>();
        var problems = new List<Problem>();
        var lines = text.ReplaceLineEndings("\n").Split('\n');
        for (var index = 0; index < lines.Length; index++)
        {
            var line = lines[index].Trim();
            if (line.Length == 0 || line.StartsWith('#'))
                continue;
            var colon = line.IndexOf(':');
            var column = colon > 0 ? ColumnNumber(line[..colon].Trim()) : 0;
            var role = colon > 0 ? ReadRole(line[(colon + 1)..].Trim()) : null;
            if (column == 0 || role is null || !roles.TryAdd(column, role))
            {
                problems.Add(new Problem("mapping", "mapping", $"'{line}'", Help, column > 0 && role is not null ? "Name each column once." : "Write the line so.")
                {
                    At = new Problem.Place(fileName, index + 1, 1),
                });
            }
        }

        if (problems.Count == 0 && roles.Count == 0)
            problems.Add(new Problem("mapping", "mapping", "no column", Help, "Name at least the description and one limit.") { At = new Problem.Place(fileName, 1, 1) });
        if (problems.Count > 0)
            return new Outcome<ScheduleMapping>.Refused(problems);
        var columns = new ColumnRole[roles.Keys.Max()];
        Array.Fill(columns, new ColumnRole(ColumnUse.Ignored));
        foreach (var (column, role) in roles)
            columns[column - 1] = role;
        return new ScheduleMapping([.. columns]);
    }

    private static int ColumnNumber(string text) =>
        int.TryParse(text, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var number) && number is > 0 and <= ScheduleLines.MostCells ? number : 0;

    private static ColumnRole? ReadRole(string words)
    {
        foreach (var (use, word) in Uses)
        {
            if (string.Equals(words, word, StringComparison.OrdinalIgnoreCase))
                return new ColumnRole(use);
        }

        var rest = words;
        if (!Take(Sides, out var side))
            return null;
        var end = Take(Ends, out var foundEnd) ? foundEnd : LimitEnd.Both;
        var of = Take(Owners, out var foundOf) ? foundOf : LimitOf.Row;
        var unit = Take(Units, out var foundUnit) ? foundUnit : null;
        return rest.Length == 0 ? ColumnRole.Limit(side, end, of, unit) : null;

        bool Take<T>((T Value, string Word)[] choices, out T value)
        {
            foreach (var (candidate, word) in choices)
            {
                if (rest.StartsWith(word, StringComparison.OrdinalIgnoreCase) && (rest.Length == word.Length || rest[word.Length] == ' '))
                {
                    value = candidate;
                    rest = rest[word.Length..].TrimStart();
                    return true;
                }
            }

            value = default!;
            return false;
        }
    }
}
