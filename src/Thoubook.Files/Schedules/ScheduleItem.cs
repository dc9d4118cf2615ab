using System.Collections.Immutable;

namespace Thoubook.Files.Schedules;

/// <summary>What a line turned out to be, before its figures are judged.</summary>
internal enum LineSort
{
    Blank,
    Heading,
    Item,
    Continuation,
    Note,

    /// <summary>Figures where no heading says what they are.</summary>
    Stray,
}

/// <summary>One line of the file with its place in the table.</summary>
internal sealed record PlacedLine(ScheduleLine Line, LineSort Sort)
{
    /// <summary>For a continuation: the row it belongs to.</summary>
    public int? ContinuationOf { get; init; }

    /// <summary>For a heading or a note: its words.</summary>
    public string Text { get; init; } = "";

    public ScheduleItem? Item { get; init; }
}

/// <summary>An item of the table: its own line and those that continue it, gathered.</summary>
internal sealed class ScheduleItem(ScheduleLine line, TableHead head)
{
    public ScheduleLine Line { get; } = line;

    public TableHead Head { get; } = head;

    public int Row => Line.Row;

    /// <summary>Its own words, wrapped lines joined, without the number of the list.</summary>
    public string Description { get; set; } = "";

    /// <summary>Words that stood in a limit cell before the figures: "Ring 1".</summary>
    public string Label { get; set; } = "";

    public string Section { get; init; } = "";

    /// <summary>The heading or parent item whose words belong to this one.</summary>
    public string Parent { get; init; } = "";

    public string Reference { get; set; } = "";

    public string Remark { get; set; } = "";

    public string AppliesTo { get; init; } = "";

    /// <summary>By column, those of limits and of columns not understood.</summary>
    public Dictionary<int, FigureCell> Cells { get; } = [];

    /// <summary>By column: the same figures in another unit, from a line below.</summary>
    public Dictionary<int, FigureCell> Repeats { get; } = [];

    /// <summary>By column: "Press" or "Loose" from a line below.</summary>
    public Dictionary<int, FitSense> Senses { get; } = [];

    public List<string> Notes { get; } = [];

    /// <summary>Doubts about the structure: wrapped figures, a blank description, a number left out of the list.</summary>
    public List<RowDoubt> Doubts { get; } = [];

    public bool HasFigures => Cells.Values.Any(cell => cell.HasFigures || cell.Sort == CellSort.Doubtful);

    /// <summary>The unit column's word, if the table has one.</summary>
    public string UnitWord { get; init; } = "";

    public ItemWords OwnWords => ItemWords.Of($"{Description} {Label}");

    /// <summary>The words that say what is measured: its own if they do, else with those of the heading or parent above.</summary>
    public ItemWords Words => OwnWords.SayFeature || Parent.Length == 0 ? OwnWords : ItemWords.Of($"{Parent} {Description} {Label}");

    public string Feature
    {
        get
        {
            var own = Label.Length == 0 ? Description : Description.Length == 0 ? Label : $"{Description}, {Label}";
            return Parent.Length > 0 && Parent != Section && !ItemWords.Of(Description).SayFeature ? $"{Parent}, {own}".TrimEnd(',', ' ') : own;
        }
    }
}

/// <summary>Something about a row that is asked. While it is open the sides it touches stay empty.</summary>
/// <param name="Code">Short and stable; the row's own code goes before it.</param>
internal sealed record RowDoubt(string Code, string Why, DoubtSides Sides, ImmutableArray<RowAnswer> Answers)
{
    /// <summary>The codes are those of the whole file (<c>unit-in</c>), not of one row.</summary>
    public bool OfFile { get; init; }
}

[Flags]
internal enum DoubtSides
{
    None = 0,
    New = 1,
    Worn = 2,
    Both = New | Worn,
}

/// <summary>One meaning that can be confirmed, and the row it makes of the row in doubt.</summary>
internal sealed record RowAnswer(string Code, string Text, Func<ScheduleRow, ScheduleRow> Apply)
{
    public static RowAnswer AsRead(string text) => new("as-read", text, row => row);

    public static RowAnswer LeaveOut(DoubtSides sides) => new("leave-out", "leave these limits out", row => row with
    {
        New = sides.HasFlag(DoubtSides.New) ? Bounds.None : row.New,
        Worn = sides.HasFlag(DoubtSides.Worn) ? Bounds.None : row.Worn,
    });
}
