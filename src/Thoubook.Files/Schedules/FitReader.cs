namespace Thoubook.Files.Schedules;

/// <summary>Tight and loose: signs, T and L, Press and Loose, words of interference. Interference is negative, the least value stands first.</summary>
internal static class FitReader
{
    /// <summary>Gives the figures of a fit their signs, or asks.</summary>
    public static void ReadSenses(RowDraft draft, LimitReader limits, ItemWords words)
    {
        var kind = draft.Row.Kind;
        if (!kind.IsFit())
        {
            AskSensesOnSizes(draft, limits);
            return;
        }

        foreach (var (side, figures) in new[] { (DoubtSides.New, limits.New), (DoubtSides.Worn, limits.Worn) })
        {
            var printed = figures.All.Where(limit => limit.Value != 0).ToList();
            if (printed.Count == 0)
                continue;
            var said = printed.Count(limit => limit.Sense != FitSense.Unsaid);
            var signed = printed.Any(limit => limit.Sign != 0);
            if (said == 0 && signed)
                AskSigns(draft, words, side);
            else if (said == 0 && words.SayTight)
                Tighten(figures);
            else if (said > 0 && said < printed.Count)
                Ask(draft, side, "sense", "Only one of the two figures is marked tight or loose.");
            else if (said == 0 && side == DoubtSides.New && figures is { Min: { } min, Max: { } max } && min.Value == max.Value && kind != RowKind.EndFloat)
                AskEqual(draft, min);
            Order(figures);
        }
    }

    /// <summary>By the signs of the new limits a fit is a clearance or an interference.</summary>
    public static void SettleKind(RowDraft draft, ItemWords words, RowKind? said)
    {
        var row = draft.Row;
        if (row.Kind is not (RowKind.Clearance or RowKind.Interference) || row.New.IsEmpty)
            return;
        var tight = (row.New.Max ?? row.New.Min) <= 0 && (row.New.Min ?? row.New.Max) < 0;
        draft.Row = row with { Kind = tight ? RowKind.Interference : RowKind.Clearance };
        if (said == RowKind.Interference && !tight && !words.Has("fit"))
            draft.Doubts.Add(new RowDoubt("sense", "The item is called an interference, and its figures are not all tight.", DoubtSides.Both, [RowAnswer.AsRead("take the signs as read"), RowAnswer.LeaveOut(DoubtSides.Both)]));
    }

    /// <summary>A fit given in words alone ("light push", "shrink fit"); null where there is none.</summary>
    public static RowKind? InWords(ScheduleItem item, LimitOf[] owners)
    {
        foreach (var (column, cell) in item.Cells)
        {
            var words = ItemWords.Of(cell.Text);
            var role = item.Head.Mapping[column];
            if (cell.Sort != CellSort.Words || role.Use != ColumnUse.Limit || !owners.Contains(role.Of) || !(role.Of == LimitOf.Clearance || words.SayFit))
                continue;
            return words.SayTight || words.HasAny(["press", "shrink", "drive", "force", "tight"]) ? RowKind.Interference : RowKind.Clearance;
        }

        return null;
    }

    private static void Tighten(SideFigures figures)
    {
        figures.Min = Tight(figures.Min);
        figures.Max = Tight(figures.Max);
        figures.Single = Tight(figures.Single);

        static PrintedLimit? Tight(PrintedLimit? limit) => limit is null ? null : limit with { Value = -Math.Abs(limit.Value), Sense = FitSense.Tight };
    }

    /// <summary>Tight limits are printed least interference first or greatest first: by value the least algebraic one is the minimum.</summary>
    private static void Order(SideFigures figures)
    {
        if (figures is { Min: { } min, Max: { } max } && min.Value > max.Value && (min.Sense == FitSense.Tight || max.Sense == FitSense.Tight))
            (figures.Min, figures.Max) = (max, min);
    }

    /// <summary>A minus may mean tight in one book and loose in the next. Under the word clearance it can only mean tight.</summary>
    private static void AskSigns(RowDraft draft, ItemWords words, DoubtSides side)
    {
        if (words.Has("clearance") && !words.SayTight)
            return;
        if (draft.Doubts.Any(doubt => doubt.Code == "signs"))
            return;
        draft.Doubts.Add(new RowDoubt("signs", "In some books minus means tight, in others loose; nothing here says which.", side | DoubtSides.Both,
        [
            RowAnswer.AsRead("minus means tight, plus means loose"),
            new RowAnswer("minus-is-loose", "minus means loose, plus means tight", row => row with { New = Reverse(row.New), Worn = Reverse(row.Worn), Kind = KindOf(Reverse(row.New)) }),
            RowAnswer.LeaveOut(DoubtSides.Both),
        ]));
    }

    private static RowKind KindOf(Bounds bounds) => (bounds.Max ?? bounds.Min) <= 0 && (bounds.Min ?? bounds.Max) < 0 ? RowKind.Interference : RowKind.Clearance;

    private static Bounds Reverse(Bounds bounds) => new(-bounds.Max, -bounds.Min);

    private static void AskEqual(RowDraft draft, PrintedLimit limit) =>
        draft.Doubts.Add(new RowDoubt("equal", $"Both limits of the fit are printed {limit}: whether tight, loose, or tight to loose is not said.", DoubtSides.Both,
        [
            new RowAnswer("loose", "loose, both", row => row with { Kind = RowKind.Clearance }),
            new RowAnswer("tight", "tight, both", row => row with { Kind = RowKind.Interference, New = new Bounds(-limit.Value, -limit.Value) }),
            new RowAnswer("tight-to-loose", "from tight to loose", row => row with { Kind = RowKind.Clearance, New = new Bounds(-limit.Value, limit.Value) }),
            RowAnswer.LeaveOut(DoubtSides.Both),
        ]));

    private static void Ask(RowDraft draft, DoubtSides side, string code, string why) =>
        draft.Doubts.Add(new RowDoubt(code, why, side, [RowAnswer.AsRead("the unmarked figure is loose"), RowAnswer.LeaveOut(side)]));

    private static void AskSensesOnSizes(RowDraft draft, LimitReader limits)
    {
        if (limits.New.All.Concat(limits.Worn.All).Any(limit => limit.Sense != FitSense.Unsaid || limit.Sign != 0))
            Ask(draft, DoubtSides.Both, "sense", "A figure has a sign or says tight or loose, and the item is not called a fit.");
    }
}
