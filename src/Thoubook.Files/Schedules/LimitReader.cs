using System.Collections.Immutable;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Schedules;

/// <summary>[SI] One printed limit with what is needed to judge it.</summary>
/// <param name="Value">With the sign that makes it tight (negative) or loose.</param>
/// <param name="Rounding">Half a unit in its last printed place.</param>
internal sealed record PrintedLimit(double Value, double Rounding, FitSense Sense, int Sign, Figure Figure, TradeUnit Unit)
{
    public override string ToString() => $"{(Figure.Sign < 0 ? "-" : Figure.Sign > 0 ? "+" : "")}{Figure.Written} {Unit}";
}

/// <summary>The figures of one side (new, worn, desired) as printed, before checks.</summary>
internal sealed class SideFigures
{
    public PrintedLimit? Min { get; set; }

    public PrintedLimit? Max { get; set; }

    /// <summary>One figure that fills the side, or whose end is still to be told (a worn limit).</summary>
    public PrintedLimit? Single { get; set; }

    public bool IsEmpty => Min is null && Max is null && Single is null;

    public IEnumerable<PrintedLimit> All => new[] { Min, Max, Single }.OfType<PrintedLimit>();

    /// <param name="end">Which end a single figure is; both where nothing says it.</param>
    public Bounds ToBounds(LimitEnd end) => Single is { } single
        ? new Bounds(end == LimitEnd.Max ? null : single.Value, end == LimitEnd.Min ? null : single.Value)
        : new Bounds(Min?.Value, Max?.Value);
}

/// <summary>Turns the limit cells of an item that belong to one owner (its size, or the clearance of its pair) into SI figures, with the doubts that arise on the way.</summary>
internal sealed class LimitReader(ScheduleItem item, ItemUnits units, QuantityKind? expected, LimitOf[] owners)
{
    private readonly Dictionary<LimitSide, SideFigures> sides = new() { [LimitSide.New] = new(), [LimitSide.Worn] = new(), [LimitSide.Desired] = new(), [LimitSide.WearAmount] = new() };

    public SideFigures New => sides[LimitSide.New];

    public SideFigures Worn => sides[LimitSide.Worn];

    public SideFigures Desired => sides[LimitSide.Desired];

    public SideFigures WearAmount => sides[LimitSide.WearAmount];

    public List<RowDoubt> Doubts { get; } = [];

    public List<string> Notes { get; } = [];

    public TradeUnit? Unit { get; private set; }

    /// <summary>Cells with a rule in words, by column.</summary>
    public List<(ColumnRole Role, FigureCell Cell)> Rules { get; } = [];

    public Bounds Literal { get; private set; } = Bounds.None;

    public bool AnyFigures { get; private set; }

    public bool Owns(LimitOf of) => owners.Contains(of);

    public void Read()
    {
        foreach (var (column, cell) in item.Cells.OrderBy(cell => cell.Key))
        {
            var role = item.Head.Mapping[column];
            if (role.Use == ColumnUse.Limit && !owners.Contains(role.Of))
                continue;
            ReadCell(column, role, cell);
        }
    }

    private static DoubtSides SidesOf(ColumnRole role) => role.Use != ColumnUse.Limit ? DoubtSides.Both : role.Side == LimitSide.New ? DoubtSides.New : role.Side == LimitSide.Worn ? DoubtSides.Worn : DoubtSides.None;

    private void ReadCell(int column, ColumnRole role, FigureCell cell)
    {
        var side = SidesOf(role);
        switch (cell.Sort)
        {
            case CellSort.Blank or CellSort.Absent:
                return;
            case CellSort.Words:
                Notes.Add($"'{cell.Text}' stands under '{HeadOf(column)}'.");
                return;
            case CellSort.Nil:
                Nil(role, side);
                return;
            case CellSort.Doubtful:
                AnyFigures = true;
                Doubts.Add(new RowDoubt($"figure-{column + 1}", $"'{cell.Text}' under '{HeadOf(column)}' can't be taken: {cell.Doubt}", side == DoubtSides.None ? DoubtSides.Both : side, [RowAnswer.LeaveOut(side)]));
                return;
            case CellSort.Rule:
                AnyFigures = true;
                Rules.Add((role, cell));
                return;
        }

        AnyFigures = true;
        if (role.Use == ColumnUse.NotUnderstood)
        {
            // What the column is, is asked once for all its rows; a rule or an amount of wear would have said itself.
            var asked = item.Head.Doubts.FirstOrDefault(doubt => doubt.Column == column);
            Doubts.Add(new RowDoubt(asked?.Code ?? $"column-{column + 1}", asked?.Why ?? $"Column {column + 1} has no heading.", DoubtSides.Both, [.. (asked?.Meanings ?? []).Select(meaning => new RowAnswer(meaning.Code, meaning.Text, row => row))]) { OfFile = true });
            return;
        }

        if (cell.MarkInDoubt)
        {
            Doubts.Add(MarkDoubt(side, cell.Text));
            return;
        }

        ReadFigures(column, role, cell, side);
    }

    private void ReadFigures(int column, ColumnRole role, FigureCell cell, DoubtSides side)
    {
        var below = item.Repeats.GetValueOrDefault(column);
        var found = units.Of(cell, below, role, item.UnitWord, expected, ItemUnits.PrintedIn(item, expected));
        if (found.Note.Length > 0)
            Notes.Add(found.Note);
        if (found.Main is not { } unit)
        {
            Doubts.Add(UnitDoubt(side, found.Doubt));
            return;
        }

        if (cell.OnlyBracketed)
        {
            Doubts.Add(new RowDoubt($"brackets-{column + 1}", $"'{cell.Text}' stands in brackets with nothing before it: a tight fit, or the figure in another unit.", side, [RowAnswer.LeaveOut(side)]));
            return;
        }

        if (expected is not null && unit.Kind != expected && expected != QuantityKind.Length)
        {
            Doubts.Add(new RowDoubt($"quantity-{column + 1}", $"'{cell.Text}' is in {unit}, and '{item.Feature}' is not measured in that.", side, [RowAnswer.LeaveOut(side)]));
            return;
        }

        if (Unit is { } before && before.Kind != unit.Kind)
        {
            Doubts.Add(new RowDoubt($"quantity-{column + 1}", $"'{cell.Text}' is in {unit}, and another figure of the row in {before}.", DoubtSides.Both, [RowAnswer.LeaveOut(DoubtSides.Both)]));
            return;
        }

        Unit = unit;
        var main = cell.Main!;
        var sense = item.Senses.GetValueOrDefault(column);
        var first = Limit(main.First, unit, sense);
        var second = main.Second is null ? null : Limit(main.Second, unit, sense);
        Put(column, role, cell, first, second, side);
        Compare(column, cell, below, unit, found.Repeat, side);
    }

    private static PrintedLimit Limit(Figure figure, TradeUnit unit, FitSense below)
    {
        var sense = figure.Sense != FitSense.Unsaid ? figure.Sense : below;
        // Angles stay in degrees, as the trade writes them.
        var factor = unit.Kind == QuantityKind.Angle ? unit.Factor / TradeUnit.Degree.Factor : unit.Factor;
        var value = unit.Kind == QuantityKind.Angle ? figure.Number.ToDouble() * factor : unit.ToSi(figure.Number);
        var rounding = figure.IsFraction ? 0 : factor * Math.Pow(10, -figure.Decimals) / 2;
        return new PrintedLimit(sense == FitSense.Tight ? -Math.Abs(value) : value, rounding, sense, figure.Sign, figure, unit);
    }

    private void Put(int column, ColumnRole role, FigureCell cell, PrintedLimit first, PrintedLimit? second, DoubtSides side)
    {
        var figures = sides[role.Side];
        var end = cell.End != LimitEnd.Both && role.End == LimitEnd.Both ? cell.End : role.End;
        if (second is not null && role.End != LimitEnd.Both)
        {
            Doubts.Add(new RowDoubt($"range-{column + 1}", $"'{cell.Text}' is a range, and the column '{HeadOf(column)}' has one end only.", side, [RowAnswer.LeaveOut(side)]));
            return;
        }

        if (second is not null && role.Side == LimitSide.Worn)
        {
            Doubts.Add(new RowDoubt("worn-range", $"The worn limit is printed as a range, '{cell.Text}'.", DoubtSides.Worn,
            [
                new RowAnswer("first", $"the limit is {first}", row => row with { Worn = OneSided(row, first.Value) }),
                new RowAnswer("second", $"the limit is {second}", row => row with { Worn = OneSided(row, second.Value) }),
                RowAnswer.LeaveOut(DoubtSides.Worn),
            ]));
            return;
        }

        if (cell.End != LimitEnd.Both && role.End != LimitEnd.Both && cell.End != role.End)
        {
            Doubts.Add(new RowDoubt($"end-{column + 1}", $"'{cell.Text}' says {cell.End.ToString().ToLowerInvariant()}, and the column '{HeadOf(column)}' says {role.End.ToString().ToLowerInvariant()}.", side, [RowAnswer.LeaveOut(side)]));
            return;
        }

        // The same limit a second time: another column in another unit. The first printed counts, the second checks it.
        var taken = end switch { LimitEnd.Min => figures.Min, LimitEnd.Max => figures.Max, _ => second is null ? figures.Single : figures.Min };
        if (taken is not null)
        {
            CompareColumns(column, taken, first, side);
            if (second is not null && figures.Max is { } takenMax)
                CompareColumns(column, takenMax, second, side);
            return;
        }

        if (end == LimitEnd.Both && !figures.IsEmpty || figures.Single is not null)
        {
            Doubts.Add(new RowDoubt($"twice-{column + 1}", $"'{cell.Text}' under '{HeadOf(column)}' is given beside other limits of the same sort.", side, [RowAnswer.LeaveOut(side)]));
            return;
        }

        if (second is not null)
            (figures.Min, figures.Max) = (first, second);
        else if (end == LimitEnd.Min)
            figures.Min = first;
        else if (end == LimitEnd.Max)
            figures.Max = first;
        else
            figures.Single = first;
    }

    private static Bounds OneSided(ScheduleRow row, double value) => value >= (row.New.Max ?? value) ? new Bounds(null, value) : new Bounds(value, null);

    private void CompareColumns(int column, PrintedLimit first, PrintedLimit second, DoubtSides side)
    {
        if (!Agree(first, second))
            Disagree($"repeat-{column + 1}", first, second, side);
    }

    /// <summary>The repeat in another unit only checks the figure printed first.</summary>
    private void Compare(int column, FigureCell cell, FigureCell? below, TradeUnit unit, TradeUnit? repeatUnit, DoubtSides side)
    {
        foreach (var repeat in new[] { cell.Repeat, below?.Main ?? below?.Repeat }.OfType<FigureSpan>())
        {
            var other = repeat.First.Units.FirstOrDefault(u => u.Kind == unit.Kind) ?? repeatUnit;
            if (repeat.Figures.Any(figure => figure.PointLost))
            {
                Doubts.Add(new RowDoubt($"repeat-{column + 1}", $"'{cell.Text}': the figure in brackets has lost its decimal point and can't check the one before it.", side, [RowAnswer.AsRead("take the figures printed first"), RowAnswer.LeaveOut(side)]));
                continue;
            }

            if (other is null || other == unit)
            {
                Doubts.Add(new RowDoubt($"repeat-{column + 1}", $"'{cell.Text}': what the second set of figures is, is not clear.", side, [RowAnswer.AsRead("take the figures printed first"), RowAnswer.LeaveOut(side)]));
                continue;
            }

            var mains = cell.Main!.Figures.ToList();
            var repeats = repeat.Figures.ToList();
            if (mains.Count != repeats.Count)
            {
                Doubts.Add(new RowDoubt($"repeat-{column + 1}", $"'{cell.Text}': the figures in brackets are not as many as those before them.", side, [RowAnswer.AsRead("take the figures printed first"), RowAnswer.LeaveOut(side)]));
                continue;
            }

            for (var index = 0; index < mains.Count; index++)
            {
                var first = Limit(mains[index], unit, FitSense.Unsaid);
                var second = Limit(repeats[index], other, FitSense.Unsaid);
                if (Math.Sign(first.Value) != Math.Sign(second.Value) && second.Sign == 0)
                    second = second with { Value = Math.Sign(first.Value) * Math.Abs(second.Value) };
                if (!Agree(first, second))
                {
                    Disagree($"repeat-{column + 1}{(index > 0 ? "b" : "")}", first, second, side);
                    if (index == 0 && side == DoubtSides.New && cell.Main.Second is not null)
                        Literal = new Bounds(first.Value, null);
                    else if (side == DoubtSides.New)
                        Literal = item.Head.Mapping[column].End == LimitEnd.Min ? new Bounds(first.Value, Literal.Max) : new Bounds(Literal.Min, first.Value);
                }
            }
        }
    }

    /// <summary>Within one unit in the last place of both, since each was rounded by somebody.</summary>
    private static bool Agree(PrintedLimit first, PrintedLimit second) =>
        Math.Abs(first.Value - second.Value) <= 2 * (first.Rounding + second.Rounding) * (1 + 1e-9);

    private void Disagree(string code, PrintedLimit first, PrintedLimit second, DoubtSides side)
    {
        Doubts.Add(new RowDoubt(code, $"{first} and {second} stand for the same limit and do not agree.", side,
        [
            RowAnswer.AsRead($"{first}, as printed first"),
            new RowAnswer("second", $"{second}, as printed second", row => row with { New = Swap(row.New), Worn = Swap(row.Worn) }),
            RowAnswer.LeaveOut(side),
        ]));

        Bounds Swap(Bounds bounds) => new(bounds.Min == first.Value ? second.Value : bounds.Min, bounds.Max == first.Value ? second.Value : bounds.Max);
    }

    private void Nil(ColumnRole role, DoubtSides side)
    {
        if (role.Side == LimitSide.Worn)
        {
            Doubts.Add(new RowDoubt("nil", "The worn limit is printed 'nil'.", DoubtSides.Worn,
            [
                new RowAnswer("no-wear-permitted", "no wear permitted: the new limits bind", row => row with { Nil = NilMeaning.NoWearPermitted, Worn = Bounds.None }),
                new RowAnswer("not-a-wear-item", "not a wear item: there is no worn limit", row => row with { Nil = NilMeaning.NotAWearItem, Worn = Bounds.None }),
            ]));
        }
        else
        {
            Doubts.Add(new RowDoubt("nil-new", "The limit is printed 'nil'.", side,
            [
                new RowAnswer("nought", "nought: line to line", row => row with { New = new Bounds(0, 0) }),
                RowAnswer.LeaveOut(side),
            ]));
        }
    }

    private RowDoubt UnitDoubt(DoubtSides side, string why)
    {
        if (why.Length > 0 || expected != QuantityKind.Length)
        {
            var reason = why.Length > 0 ? why : "No unit is given, and it is not a length.";
            return new RowDoubt("unit", reason, side == DoubtSides.None ? DoubtSides.Both : side, [RowAnswer.LeaveOut(DoubtSides.Both)]);
        }

        return new RowDoubt("unit", "Neither the cell nor the heading gives the unit.", side == DoubtSides.None ? DoubtSides.Both : side,
            [new RowAnswer("unit-in", "inches", row => row), new RowAnswer("unit-mm", "millimetres", row => row)])
        { OfFile = true };
    }

    private static RowDoubt MarkDoubt(DoubtSides side, string text) =>
        new("decimal", $"The comma or point in '{text}' may be a decimal mark or part thousands.", side == DoubtSides.None ? DoubtSides.Both : side,
            [new RowAnswer("decimal-point", "the point is the decimal mark", row => row), new RowAnswer("decimal-comma", "the comma is the decimal mark", row => row)])
        { OfFile = true };

    private string HeadOf(int column) => column < item.Head.Heads.Length && item.Head.Heads[column].Length > 0 ? item.Head.Heads[column] : $"column {column + 1}";
}
