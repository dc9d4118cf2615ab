namespace Thoubook.Files.Schedules;

/// <summary>What only several rows together show: a pair whose clearance is not the difference of its sizes, a limit a factor of ten off its fellows, columns that mostly contradict.</summary>
internal static class CrossChecks
{
    /// <summary>[m] Two ten-thousandths of an inch: what rounding of three figures may add up to.</summary>
    private const double PairRounding = 5.1e-6;

    private static readonly string[] FormWords = ["ovality", "out of round", "taper", "runout", "run out", "concentricity", "eccentricity", "flatness", "straightness"];

    public static void Check(IReadOnlyList<RowDraft> drafts)
    {
        CheckFellows(drafts);
        CheckForms(drafts);
        CheckPairs(drafts);
        CheckOwners(drafts);
        CheckColumns(drafts);
    }

    /// <summary>Rows under one heading that names what is measured ("Bearing bore": front, centre, rear).</summary>
    private static void CheckFellows(IReadOnlyList<RowDraft> drafts)
    {
        var groups = drafts
            .Where(draft => draft.Item.Parent.Length > 0 && !draft.Item.OwnWords.SayFeature && Scale(draft) > 0 && draft.Doubts.All(doubt => doubt.Code != "size"))
            .GroupBy(draft => (draft.Item.Section, draft.Item.Parent, draft.Row.Kind, draft.Row.Unit));
        foreach (var group in groups)
        {
            var least = group.Min(Scale);
            var factor = group.Key.Kind.IsFit() ? 8 : 5;
            foreach (var draft in group.Where(_ => group.Max(Scale) > factor * least))
                Ask(draft, "fellows", $"The limits of the items under '{group.Key.Parent}' are more than a factor of {factor} apart: a figure may have slipped.");
        }
    }

    private static void CheckForms(IReadOnlyList<RowDraft> drafts)
    {
        foreach (var word in FormWords)
        {
            var rows = drafts.Where(draft => draft.Row.Kind == RowKind.Other && draft.Row.Rule is null && draft.Row.Unit == "m" && draft.Item.Words.Has(word) && Scale(draft) > 0).ToList();
            if (rows.Count < 2 || rows.Max(Scale) < 9.99 * rows.Min(Scale))
                continue;
            foreach (var draft in rows)
                Ask(draft, "fellows", $"The schedule's limits of {word} are a factor of ten apart (rows {string.Join(", ", rows.Select(row => row.Item.Row))}): a figure may have slipped.");
        }
    }

    private static double Scale(RowDraft draft)
    {
        var limits = draft.Row.New.IsEmpty ? draft.Row.Worn : draft.Row.New;
        return Math.Max(Math.Abs(limits.Min ?? 0), Math.Abs(limits.Max ?? 0));
    }

    /// <summary>The hole and the shaft printed just above a fit must leave the clearance that is printed for it.</summary>
    private static void CheckPairs(IReadOnlyList<RowDraft> drafts)
    {
        foreach (var (hole, shaft, fit) in SchedulePairs.Find(drafts))
        {
            if (hole.Row.New is not { Min: { } holeMin, Max: { } holeMax } || shaft.Row.New is not { Min: { } shaftMin, Max: { } shaftMax } || fit.Row.New is not { Min: { } min, Max: { } max })
                continue;
            var least = holeMin - shaftMax;
            var most = holeMax - shaftMin;
            if (max < least - PairRounding || min > most + PairRounding)
            {
                Ask(fit, "pair", $"The sizes on rows {hole.Item.Row} and {shaft.Item.Row} leave {Millimetres(least)} to {Millimetres(most)} mm, and the fit is printed {Millimetres(min)} to {Millimetres(max)} mm.");
            }
        }
    }

    private static string Millimetres(double metres) => (metres * 1000).ToString("0.####", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>An inside diameter that no word gives an owner but a heading that names a shaft.</summary>
    private static void CheckOwners(IReadOnlyList<RowDraft> drafts)
    {
        foreach (var draft in drafts)
        {
            var item = draft.Item;
            var section = ItemWords.Of(item.Section);
            if (draft.Row.Kind == RowKind.Dimension && item.Parent.Length > 0 && !item.OwnWords.SayFeature && item.Words.Way == WearWay.Grows && !item.Words.SayHolePart && section is { SayShaftPart: true, SayHolePart: false })
                Ask(draft, "owner", $"An inside diameter stands under '{item.Section}', which has none by its name: a heading may be missing.");
        }
    }

    /// <summary>Where a good part of the rows contradicts the headings, the columns themselves are in doubt.</summary>
    private static void CheckColumns(IReadOnlyList<RowDraft> drafts)
    {
        foreach (var table in drafts.GroupBy(draft => draft.Item.Head))
        {
            var judged = table.Where(draft => draft.Row.New is { Min: not null, Max: not null } && draft.Item.HasFigures).ToList();
            var wrong = judged.Count(draft => draft.Doubts.Any(doubt => doubt.Code is "order" or "wear-way" or "worn-inside"));
            if (wrong < 3 || wrong * 4 < judged.Count)
                continue;
            foreach (var draft in table.Where(draft => draft.Item.HasFigures && draft.Doubts.Count == 0))
                Ask(draft, "columns", $"{wrong} rows of this table contradict its headings: the columns may be other than they say.");
        }
    }

    private static void Ask(RowDraft draft, string code, string why)
    {
        if (draft.Doubts.All(doubt => doubt.Code != code))
            draft.Doubts.Add(new RowDoubt(code, why, DoubtSides.Both, [RowAnswer.AsRead("it is printed so and right"), RowAnswer.LeaveOut(DoubtSides.Both)]));
    }
}

/// <summary>Finds the hole, the shaft and the fit between them where a schedule prints them one below the other.</summary>
internal static class SchedulePairs
{
    private static readonly HashSet<string> NoPart = new(StringComparer.Ordinal)
        { "clearance", "fit", "the", "between", "running", "diametral", "oil", "play", "for", "and", "with", "when", "new", "interference", "total", "above", "these", "pair", "two" };

    public static IEnumerable<(RowDraft Hole, RowDraft Shaft, RowDraft Fit)> Find(IReadOnlyList<RowDraft> drafts)
    {
        for (var index = 0; index < drafts.Count; index++)
        {
            var draft = drafts[index];
            foreach (var beside in draft.Beside.Where(beside => beside.Row.Kind is RowKind.Clearance or RowKind.Interference))
            {
                // The clearance printed beside one of the two sizes: the other is the next row or the one before.
                foreach (var other in Neighbours(drafts, index))
                {
                    if (Couple(draft, other) is { } couple)
                    {
                        yield return (couple.Hole, couple.Shaft, beside);
                        break;
                    }
                }
            }

            if (draft.Row.Kind is not (RowKind.Clearance or RowKind.Interference) || index < 2)
                continue;
            if (Couple(drafts[index - 2], drafts[index - 1]) is { } above && drafts[index - 1].Item.Section == draft.Item.Section && SpeaksOf(draft, above.Hole, above.Shaft))
                yield return (above.Hole, above.Shaft, draft);
        }
    }

    /// <summary>Whether a fit names one of the two parts, or no part at all ("Clearance").</summary>
    private static bool SpeaksOf(RowDraft fit, RowDraft hole, RowDraft shaft)
    {
        var named = fit.Item.OwnWords.Words.Where(word => word.Length > 2 && !NoPart.Contains(word)).ToList();
        return named.Count == 0 || named.Any(word => hole.Item.OwnWords.Has(word) || shaft.Item.OwnWords.Has(word));
    }

    private static IEnumerable<RowDraft> Neighbours(IReadOnlyList<RowDraft> drafts, int index)
    {
        if (index + 1 < drafts.Count)
            yield return drafts[index + 1];
        if (index > 0)
            yield return drafts[index - 1];
    }

    /// <summary>Two sizes that belong together: one a hole, one a shaft, in one section, of much the same diameter.</summary>
    private static (RowDraft Hole, RowDraft Shaft)? Couple(RowDraft a, RowDraft b)
    {
        if (a.Item.Section != b.Item.Section || a.Row.Kind != RowKind.Dimension || b.Row.Kind != RowKind.Dimension)
            return null;
        var (hole, shaft) = (a.Item.Words.WeakWay, b.Item.Words.WeakWay) switch
        {
            (WearWay.Grows, WearWay.Shrinks) => (a, b),
            (WearWay.Shrinks, WearWay.Grows) => (b, a),
            _ => (null, null),
        };
        if (hole is null || shaft is null || hole.Row.New.Max is not { } bore || shaft.Row.New.Max is not { } size)
            return null;
        return Math.Abs(bore - size) < 0.01 * bore ? (hole, shaft) : null;
    }
}
