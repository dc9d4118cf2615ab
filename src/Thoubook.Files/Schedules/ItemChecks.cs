namespace Thoubook.Files.Schedules;

/// <summary>What can't be right within one row: ends the wrong way round, a worn limit inside the new range, a limit a factor of ten off.</summary>
internal static class ItemChecks
{
    /// <summary>[m] The largest part that a bench measures in one reading.</summary>
    private const double LargestSize = 2;

    /// <summary>[m] Below this no part is given a size.</summary>
    private const double SmallestSize = 0.0001;

    /// <summary>[m] Beyond this no two parts that fit one another stand apart, a piston ring's gap and a backlash included.</summary>
    private const double LargestFit = 0.006;

    /// <summary>[m] Beyond this hardly two parts of an engine are pressed together: a shrunk ring may be, and is asked.</summary>
    private const double LargestInterference = 0.00035;

    /// <summary>[-] A worn limit is rarely further from the new limits than some widths of the new range.</summary>
    private const double WidthsOfWear = 25;

    private const double GreatestShareWorn = 0.1;

    /// <summary>[-] Of a size given as one figure, which has no width to compare with.</summary>
    private const double ShareWornOfOneFigure = 0.03;

    /// <summary>[m] So much a cam or a rocker may lose whatever its size.</summary>
    private const double SmallWear = 0.0003;

    public static void Check(RowDraft draft, LimitReader limits, ItemWords words)
    {
        var row = draft.Row;
        if (row.Unit is null)
            return;
        CheckAlignment(draft, limits, words);
        if (draft.Item.OwnWords.SayWornLimit && !row.New.IsEmpty && row.Worn.IsEmpty)
        {
            draft.Doubts.Add(new RowDoubt("worn-by-words", "By its words the item is a limit of wear, and its figures stand in a column of new ones.", DoubtSides.Both,
            [
                RowAnswer.AsRead("limits of new parts"),
                new RowAnswer("worn", "a limit when worn", r => r with { New = Bounds.None, Worn = words.Way == WearWay.Shrinks ? new Bounds(r.New.Min ?? r.New.Max, null) : new Bounds(null, r.New.Max ?? r.New.Min) }),
                RowAnswer.LeaveOut(DoubtSides.Both),
            ]));
        }

        if (row.New is { Min: { } min, Max: { } max })
        {
            if (min > max)
                AskOrder(draft, limits);
            else if (row.Kind.IsFit() ? (min > 0 && max / min >= 10) || (max < 0 && min / max >= 10) || (min < 0 && max > 0 && Math.Max(-min / max, -max / min) >= 8) : row.Unit != "m" ? min > 0 && max / min > 1.5 : row.Kind == RowKind.Spring ? max > 1.25 * min : IsWide(min, max))
                Ask(draft, "wide", $"The new limits {limits.New.Min} and {limits.New.Max} lie further apart than those of one {(row.Kind.IsFit() ? "fit" : "size")} do.", DoubtSides.New);
        }

        CheckWorn(draft, limits, words);
        CheckAmount(draft, limits);
        if (row.Unit == "m")
            CheckSize(draft, limits, words);
    }

    private static bool IsWide(double min, double max) => min > 0 && ((max - min > 0.05 * max && max - min > 0.0005) || max / min > 1.5);

    private static void CheckWorn(RowDraft draft, LimitReader limits, ItemWords words)
    {
        var row = draft.Row;
        if (row.New is not { Min: { } min, Max: { } max } || min > max || limits.Worn.All.FirstOrDefault() is not { } worn || row.Worn.IsEmpty)
        {
            if (row is { New: { Min: null, Max: { } most }, Worn.Max: { } limit } && limit < most)
                Ask(draft, "worn-inside", $"The worn limit {limits.Worn.All.First()} is less than what a new part may have.", DoubtSides.Worn);
            return;
        }

        var value = worn.Value;
        if ((value > min && value < max) || (row.Kind.IsFit() && row.Worn.Max < max))
        {
            Ask(draft, "worn-inside", $"The worn limit {worn} lies inside the new limits.", DoubtSides.Worn);
            return;
        }

        if (row.Kind.IsFit() || words.IsForm)
        {
            var scale = Math.Max(Math.Abs(max), Math.Abs(min));
            if (scale > 0 && value - max > 8 * scale)
                Ask(draft, "worn-far", $"The worn limit {worn} is out of scale with the new limits: a figure may have slipped.", DoubtSides.Worn);
            return;
        }

        var beyond = Math.Max(min - value, value - max);
        var width = max - min;
        if (row.Unit == "m" && beyond > 0 && ((width > 0 ? beyond > WidthsOfWear * width : beyond > Math.Max(ShareWornOfOneFigure * max, SmallWear) && row.Kind != RowKind.Spring) || beyond > GreatestShareWorn * max))
            AskScale(draft, worn);
    }

    /// <summary>A worn limit far from the new ones: a slip, or an amount of wear in a column of sizes.</summary>
    private static void AskScale(RowDraft draft, PrintedLimit worn) =>
        draft.Doubts.Add(new RowDoubt("worn-far", $"The worn limit {worn} is out of scale with the new limits: a figure may have slipped, or it is an amount of wear.", DoubtSides.Worn,
        [
            RowAnswer.AsRead("it is printed so and right"),
            new RowAnswer("wear-amount", "an amount of wear", row => row with { Worn = Bounds.None, WearAmount = worn.Value }),
            RowAnswer.LeaveOut(DoubtSides.Worn),
        ]));

    /// <summary>Under a heading such as "permissible wear" a clearance may be a limit all the same, and so may a size.</summary>
    private static void CheckAmount(RowDraft draft, LimitReader limits)
    {
        if (limits.WearAmount.Single is not { } amount)
            return;
        var size = Math.Abs(draft.Row.New.Max ?? draft.Row.New.Min ?? 0);
        if (!draft.Row.Kind.IsFit() && (size == 0 || amount.Value < 0.1 * size))
            return;
        draft.Doubts.Add(new RowDoubt("wear-or-limit", $"{amount} may be the wear allowed or the limit when worn.", DoubtSides.Both,
        [
            new RowAnswer("wear-amount", "an amount of wear", row => row),
            new RowAnswer("limit", "the limit when worn", row => row with { WearAmount = null, Worn = row.Kind.IsFit() || amount.Value >= size ? new Bounds(null, amount.Value) : new Bounds(amount.Value, null) }),
            RowAnswer.LeaveOut(DoubtSides.Worn),
        ]));
    }

    private static void CheckSize(RowDraft draft, LimitReader limits, ItemWords words)
    {
        foreach (var limit in limits.New.All.Concat(limits.Worn.All).DistinctBy(limit => limit.Value))
        {
            var size = Math.Abs(limit.Value);
            var odd = draft.Row.Kind switch
            {
                RowKind.Dimension => size is > LargestSize or < SmallestSize,
                RowKind.Interference => size > LargestInterference,
                RowKind.Clearance or RowKind.EndFloat or RowKind.Backlash or RowKind.Gap => size > LargestFit || (limit.Value < 0 && size > LargestInterference),
                RowKind.Other => size > LargestFit && words.IsForm,
                _ => false,
            };
            if (odd)
            {
                Ask(draft, "size", $"{limit} is no likely {(draft.Row.Kind == RowKind.Other ? "form error" : draft.Row.Kind.Word())}: another unit may be meant, or a figure may have slipped.", DoubtSides.Both);
                return;
            }
        }
    }

    /// <summary>
    /// Where minimum, maximum and worn limit have a column each, a figure that stands alone with blank cells beside it may have slid out of its column.
    /// Dashes hold their place; so does a reference on the same line, where the table has them.
    /// </summary>
    private static void CheckAlignment(RowDraft draft, LimitReader limits, ItemWords words)
    {
        var item = draft.Item;
        var columns = item.Cells.Keys.Where(column => item.Head.Mapping[column] is { Use: ColumnUse.Limit, Side: LimitSide.New or LimitSide.Worn } role && limits.Owns(role.Of)).ToList();
        var ends = columns.Where(column => item.Head.Mapping[column].End != LimitEnd.Both).ToList();
        if (ends.Count < 2 || columns.Count < 3)
            return;
        var filled = columns.Count(column => item.Cells[column].Sort == CellSort.Figures);
        var blank = columns.Count(column => item.Cells[column].Sort == CellSort.Blank);
        if (filled == 1 && blank == columns.Count - 1)
        {
            var shown = limits.New.All.Concat(limits.Worn.All).FirstOrDefault();
            if (shown is null)
                return;
            var value = shown.Value;
            draft.Doubts.Add(new RowDoubt("one-figure", $"The row has one figure, {shown}, and blank cells beside it: which limit it is, the columns hardly settle.", DoubtSides.Both,
            [
                RowAnswer.AsRead("it stands where it belongs"),
                new RowAnswer("set", "the size when new", row => row with { New = new Bounds(value, value), Worn = Bounds.None }),
                new RowAnswer("worn", "the limit when worn", row => row with { New = Bounds.None, Worn = words.Way == WearWay.Shrinks ? new Bounds(value, null) : new Bounds(null, value) }),
                RowAnswer.LeaveOut(DoubtSides.Both),
            ]));
        }
        else if (filled == 2 && blank > 0 && (LacksMinimum(draft, limits, words)
            || (draft.Row.Kind.IsFit() && item.Reference.Length == 0 && item.Head.Mapping.Columns.Any(column => column.Use == ColumnUse.Reference))))
        {
            draft.Doubts.Add(new RowDoubt("two-figures", "The row has two figures and a blank cell beside them, and nothing on the line holds them to their columns: they may have slid.", DoubtSides.Both,
                [RowAnswer.AsRead("they stand where they belong"), RowAnswer.LeaveOut(DoubtSides.Both)]));
        }
    }

    /// <summary>A maximum and a worn limit with the minimum left blank: right for a form error, and hardly for anything else.</summary>
    private static bool LacksMinimum(RowDraft draft, LimitReader limits, ItemWords words) =>
        !words.IsForm && draft.Row.Unit == "m" && limits.New is { Min: null, Single: null, Max: not null } && !limits.Worn.IsEmpty;

    private static void AskOrder(RowDraft draft, LimitReader limits)
    {
        var row = draft.Row;
        draft.Row = row with { Literal = row.Literal.IsEmpty ? row.New : row.Literal };
        var reversed = new Bounds(row.New.Max, row.New.Min);
        draft.Doubts.Add(new RowDoubt("order", $"The minimum {limits.New.Min} is greater than the maximum {limits.New.Max}.", DoubtSides.Both,
        [
            new RowAnswer("swapped", "the two are the wrong way round", r => r with { New = reversed }),
            RowAnswer.LeaveOut(DoubtSides.Both),
        ]));
    }

    private static void Ask(RowDraft draft, string code, string why, DoubtSides sides) =>
        draft.Doubts.Add(new RowDoubt(code, why, sides, [RowAnswer.AsRead("it is printed so and right"), RowAnswer.LeaveOut(sides)]));
}
