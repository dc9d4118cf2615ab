using System.Collections.Immutable;
using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Schedules;

/// <summary>Head lines of a table, with what their columns hold. A file may hold several tables, and a table may repeat its head on a new page.</summary>
/// <param name="First">Index of the first head line.</param>
/// <param name="Last">Index of the last head line; before <paramref name="First"/> where the table has no head.</param>
/// <param name="Doubts">What the headings leave open, by column; -1 for the whole table.</param>
internal sealed record TableHead(int First, int Last, ScheduleMapping Mapping, ImmutableArray<HeadDoubt> Doubts, ImmutableArray<string> Heads);

/// <summary>A column (or, as -1, all limits) whose meaning the headings do not settle.</summary>
internal sealed record HeadDoubt(int Column, string Code, string Why, ImmutableArray<Meaning> Meanings);

/// <summary>Finds the head lines and works out from their words what each column holds.</summary>
internal static class MappingFinder
{
    /// <summary>So many lines below a head show what its columns hold; a later line with more cells than those is asked.</summary>
    private const int LinesLookedAt = 500;

    public static ImmutableArray<TableHead> Find(ImmutableArray<ScheduleLine> lines, ScheduleOptions options)
    {
        var heads = ImmutableArray.CreateBuilder<TableHead>();
        for (var index = 0; index < lines.Length; index++)
        {
            if (!IsHead(lines[index], heads.Count == 0))
                continue;
            // Two head lines each of which names columns by itself are one head.
            var first = index;
            if (heads.Count > 0 && heads[^1].Last == index - 1)
            {
                first = heads[^1].First;
                heads.RemoveAt(heads.Count - 1);
            }

            while (first > 0 && (heads.Count == 0 || first - 1 > heads[^1].Last) && SpansColumns(lines[first - 1]))
                first--;
            var last = index;
            while (last + 1 < lines.Length && ContinuesHead(lines[last], lines[last + 1]))
                last++;
            heads.Add(Understand(lines, first, last, options));
            index = last;
        }

        if (heads.Count == 0)
            heads.Add(Headless(lines, options));
        return heads.ToImmutable();
    }

    /// <summary>At least one limit said and a second column named, and nothing that could be a figure.</summary>
    private static bool IsHead(ScheduleLine line, bool first)
    {
        var named = 0;
        var limits = 0;
        var sure = 0;
        foreach (var cell in line.Cells)
        {
            if (cell.Length == 0)
                continue;
            if (cell.Length > 80 || LooksLikeFigure(cell))
                return false;
            var reading = HeadWords.Read("", cell);
            named += reading.Use is null ? 0 : 1;
            limits += reading.Use == ColumnUse.Limit ? 1 : 0;
            sure += reading.Use == ColumnUse.Limit && (reading.Sure || reading.Role!.End != LimitEnd.Both) ? 1 : 0;
        }

        // The first cell may name the descriptions in a word of its own: "Fastener".
        if (first && sure > 0 && HeadWords.Read("", line.Cell(0)).Use is null && line.Cell(0).Length > 0)
            named++;
        var all = line.Cells.Count(cell => cell.Length > 0);
        return named >= 2 && limits >= 1 && (sure >= 2 || (sure >= 1 && named > limits) || (first && (named > limits || named == all)));
    }

    /// <summary>A line above the head that spans several of its columns: text beyond the first cell, no figures.</summary>
    private static bool SpansColumns(ScheduleLine line) =>
        line.Cells.Skip(1).Any(cell => cell.Length > 0) && line.Cells.All(cell => cell.Length is 0 or <= 80 && !LooksLikeFigure(cell))
        && line.Cells.Skip(1).Any(cell => HeadWords.Read("", cell).Use is not null || HeadWords.UnitIn(cell) is not null);

    /// <summary>A second or third head line: only words of headings or units, none of them under the head of the descriptions.</summary>
    private static bool ContinuesHead(ScheduleLine above, ScheduleLine line)
    {
        if (line.IsBlank || line.Cell(0).Length > 0)
            return false;
        for (var column = 0; column < line.Cells.Length; column++)
        {
            var cell = line.Cell(column);
            if (cell.Length == 0)
                continue;
            if (LooksLikeFigure(cell) || HeadWords.Read("", above.Cell(column)).Use is ColumnUse.Description or ColumnUse.Reference or ColumnUse.Remarks)
                return false;
            if (HeadWords.Read("", cell).Use is null && HeadWords.UnitIn(cell) is null && !HeadWords.Several(cell))
                return false;
        }

        return true;
    }

    private static bool LooksLikeFigure(string cell)
    {
        var start = cell.TrimStart('(', '[', '-', '+', '±', '.', '—', '–');
        return start.Length > 0 && char.IsDigit(start[0]) && !(cell.StartsWith("0.001", StringComparison.Ordinal) && HeadWords.UnitIn(cell) is not null);
    }

    private static TableHead Understand(ImmutableArray<ScheduleLine> lines, int first, int last, ScheduleOptions options)
    {
        var width = lines.Skip(first).Take(LinesLookedAt).Max(line => line.Cells.Length);
        var readings = new HeadReading[width];
        var heads = ImmutableArray.CreateBuilder<string>(width);
        for (var column = 0; column < width; column++)
        {
            var (upper, own) = HeadOf(lines, first, last, column);
            heads.Add($"{upper} {own}".Trim());
            readings[column] = HeadWords.Read(upper, own);
        }

        if (options.Mapping is { } stated)
            return new TableHead(first, last, stated, [], heads.ToImmutable());
        return Settle(lines, first, last, readings, heads.ToImmutable(), options);
    }

    private static TableHead Settle(ImmutableArray<ScheduleLine> lines, int first, int last, HeadReading[] readings, ImmutableArray<string> heads, ScheduleOptions options)
    {
        var doubts = ImmutableArray.CreateBuilder<HeadDoubt>();
        for (var column = 0; column < readings.Length; column++)
            readings[column] = ByContent(readings[column], lines, last, column);
        var wornSaid = readings.Any(reading => reading is { Role.Side: LimitSide.Worn or LimitSide.WearAmount } && (reading.Sure || readings.Any(other => other.Role is { Side: LimitSide.New })));
        var newSaid = readings.Any(reading => reading is { Role.Side: LimitSide.New, Sure: true });
        var newClearance = readings.Any(reading => reading.Role is { Side: LimitSide.New, Of: LimitOf.Clearance });
        var roles = new ColumnRole[readings.Length];
        for (var column = 0; column < readings.Length; column++)
        {
            var reading = readings[column];
            if (reading.Role is { } role)
            {
                // "Desired clearance, minimum and maximum" with no other clearance of the new pair beside it is the clearance of the new pair.
                if (role is { Side: LimitSide.Desired, Of: LimitOf.Clearance, End: not LimitEnd.Both } && !newClearance)
                    role = role with { Side = LimitSide.New };
                // A nominal size beside the limits themselves is none of them.
                if (ItemWords.Of(heads[column]).Has("nominal") && readings.Where((other, at) => at != column && other.Role is { Side: LimitSide.New, Of: not LimitOf.Clearance }).Any())
                {
                    roles[column] = new ColumnRole(ColumnUse.Ignored);
                    continue;
                }

                roles[column] = Array.FindIndex(roles, 0, column, earlier => earlier.SameLimit(role) && (earlier.Unit == role.Unit || role.Unit is null)) >= 0
                    ? new ColumnRole(ColumnUse.NotUnderstood)
                    : role;
            }
            else
            {
                roles[column] = new ColumnRole(reading.Use ?? (HasFigures(lines, last, column) ? ColumnUse.NotUnderstood : ColumnUse.Ignored));
            }

            if (roles[column].Use == ColumnUse.NotUnderstood)
                roles[column] = AskColumn(column, heads[column], options, doubts);
        }

        foreach (var side in new[] { LimitSide.New, LimitSide.Worn })
            SizesBesideClearances(roles, side);
        NameDescription(lines, last, roles);
        ShareUnit(roles);
        if (!wornSaid && !newSaid && roles.Any(role => role.Use == ColumnUse.Limit))
            AskSide(roles, options, doubts);
        return new TableHead(first, last, new ScheduleMapping([.. roles]), doubts.ToImmutable(), heads);
    }

    /// <summary>What stands below may show that a word was meant otherwise: "Item" over numbers is a reference, "Fit" over names a description.</summary>
    private static HeadReading ByContent(HeadReading reading, ImmutableArray<ScheduleLine> lines, int last, int column)
    {
        if (reading.Use is not (ColumnUse.Description or ColumnUse.Limit) || (reading.Sure && reading.Use == ColumnUse.Limit))
            return reading;
        var cells = lines.Skip(last + 1).Take(LinesLookedAt).Select(line => line.Cell(column)).Where(cell => cell.Length > 0).ToList();
        if (cells.Count == 0)
            return reading;
        if (reading.Use == ColumnUse.Description)
            return cells.Count(cell => cell.Count(char.IsLetter) <= 2) * 2 > cells.Count ? new HeadReading(ColumnUse.Reference, null, true) : reading;
        return column == 0 && reading.Role!.End == LimitEnd.Both && cells.Count(cell => cell.Count(char.IsLetter) >= 3 && !LooksLikeFigure(cell)) * 5 > cells.Count * 4
            ? new HeadReading(ColumnUse.Description, null, true)
            : reading;
    }

    /// <summary>"New" beside "new clearance" is the new size.</summary>
    private static void SizesBesideClearances(ColumnRole[] roles, LimitSide side)
    {
        if (!roles.Any(role => role is { Use: ColumnUse.Limit, Of: LimitOf.Clearance } && role.Side == side))
            return;
        for (var column = 0; column < roles.Length; column++)
        {
            if (roles[column] is { Use: ColumnUse.Limit, Of: LimitOf.Row } && roles[column].Side == side)
                roles[column] = roles[column] with { Of = LimitOf.Dimension };
        }
    }

    /// <summary>Where the headings name one unit and no other, it is that of the columns that name none.</summary>
    private static void ShareUnit(ColumnRole[] roles)
    {
        var named = roles.Select(role => role.Unit).OfType<TradeUnit>().Distinct().ToList();
        if (named is not [{ Kind: QuantityKind.Length } unit])
            return;
        for (var column = 0; column < roles.Length; column++)
        {
            if (roles[column] is { Use: ColumnUse.Limit, Unit: null })
                roles[column] = roles[column] with { Unit = unit };
        }
    }

    private static ColumnRole AskColumn(int column, string head, ScheduleOptions options, ImmutableArray<HeadDoubt>.Builder doubts)
    {
        var name = $"column-{column + 1}";
        (string Code, string Text, ColumnRole Role)[] choices =
        [
            ($"{name}-ignored", "leave the column out", new ColumnRole(ColumnUse.Ignored)),
            ($"{name}-new", "limits of the new part or pair", ColumnRole.Limit(LimitSide.New)),
            ($"{name}-worn", "limits when worn", ColumnRole.Limit(LimitSide.Worn)),
            ($"{name}-desired", "preferred values", ColumnRole.Limit(LimitSide.Desired)),
        ];
        foreach (var (code, _, role) in choices)
        {
            if (options.Confirmed.Contains(code))
                return role;
        }

        var shown = head.Length > 0 ? $"headed '{head}'" : "without a heading";
        doubts.Add(new HeadDoubt(column, name, $"Column {column + 1}, {shown}, holds figures; what they are is not certain.", [.. choices.Select(choice => new Meaning(choice.Code, choice.Text))]));
        return new ColumnRole(ColumnUse.NotUnderstood);
    }

    /// <summary>Limits that are said to be neither new nor worn.</summary>
    private static void AskSide(ColumnRole[] roles, ScheduleOptions options, ImmutableArray<HeadDoubt>.Builder doubts)
    {
        if (options.Confirmed.Contains("limits-new"))
            return;
        if (options.Confirmed.Contains("limits-worn"))
        {
            for (var column = 0; column < roles.Length; column++)
            {
                if (roles[column].Use == ColumnUse.Limit)
                    roles[column] = roles[column] with { Side = LimitSide.Worn };
            }

            return;
        }

        doubts.Add(new HeadDoubt(-1, "limits", "The headings do not say whether the limits are those of new parts or of worn ones.", [new("limits-new", "limits of new parts and pairs"), new("limits-worn", "limits when worn")]));
    }

    /// <summary>Where no column is named as the description, the first with words in it is.</summary>
    private static void NameDescription(ImmutableArray<ScheduleLine> lines, int last, ColumnRole[] roles)
    {
        if (roles.Any(role => role.Use == ColumnUse.Description))
            return;
        for (var column = 0; column < roles.Length; column++)
        {
            if (roles[column].Use is ColumnUse.Limit or ColumnUse.Remarks)
                continue;
            var words = lines.Skip(last + 1).Take(LinesLookedAt).Count(line => line.Cell(column).Count(char.IsLetter) >= 3);
            if (words * 2 >= Math.Min(lines.Length - last - 1, LinesLookedAt) || (words > 0 && roles[column].Use == ColumnUse.Ignored))
            {
                roles[column] = new ColumnRole(ColumnUse.Description);
                return;
            }
        }
    }

    /// <summary>A table without a head: the words are the description; the figures are asked unless their own words say what they are.</summary>
    private static TableHead Headless(ImmutableArray<ScheduleLine> lines, ScheduleOptions options)
    {
        var width = lines.Length == 0 ? 0 : lines.Max(line => line.Cells.Length);

        // A first line of words over figures is a head all the same, in words that are not known.
        var first = lines.Length > 1 && lines[0].Cells.Count(cell => cell.Length > 0) > 1 && !lines[0].Cells.Any(cell => cell.Any(char.IsDigit)) && lines[1].Cells.Any(LooksLikeFigure) ? 0 : -1;
        var names = Enumerable.Range(0, width).Select(column => first == 0 ? lines[0].Cell(column) : "").ToImmutableArray();
        if (options.Mapping is { } stated)
            return new TableHead(0, first, stated, [], names);
        var roles = new ColumnRole[width];
        var doubts = ImmutableArray.CreateBuilder<HeadDoubt>();
        for (var column = 0; column < width; column++)
        {
            var words = lines.Skip(first + 1).Count(line => !LooksLikeFigure(line.Cell(column)) && line.Cell(column).Count(char.IsLetter) >= 3);
            var figures = lines.Skip(first + 1).Count(line => LooksLikeFigure(line.Cell(column)));
            roles[column] = words > figures && !roles.Take(column).Any(role => role.Use == ColumnUse.Description) ? new ColumnRole(ColumnUse.Description)
                : figures == 0 ? new ColumnRole(ColumnUse.Remarks)
                : AskColumn(column, names[column], options, doubts);
        }

        return new TableHead(0, first, new ScheduleMapping([.. roles]), doubts.ToImmutable(), names);
    }

    /// <summary>A column's own heading is its lowest one; what stands above, or above to the left where that spans, is the upper one.</summary>
    private static (string Upper, string Own) HeadOf(ImmutableArray<ScheduleLine> lines, int first, int last, int column)
    {
        var own = "";
        var upper = new List<string>();
        for (var index = last; index >= first; index--)
        {
            var text = lines[index].Cell(column);
            if (text.Length == 0 && own.Length > 0)
            {
                // Spanned by the nearest heading to the left on the same line, unless that stands over the description.
                for (var left = column - 1; left >= 0 && text.Length == 0; left--)
                    text = HeadWords.Read("", lines[index].Cell(left)).Use is ColumnUse.Description or ColumnUse.Reference or ColumnUse.Remarks ? " " : lines[index].Cell(left);
                if (text.Trim().Length > 0)
                    upper.Insert(0, text);
            }
            else if (text.Length > 0 && own.Length == 0)
            {
                own = text;
            }
            else if (text.Length > 0)
            {
                upper.Insert(0, text);
            }
        }

        return (string.Join(' ', upper), own);
    }

    private static bool HasFigures(ImmutableArray<ScheduleLine> lines, int last, int column) =>
        lines.Skip(last + 1).Take(LinesLookedAt).Any(line => line.Cell(column).Any(char.IsDigit));
}
