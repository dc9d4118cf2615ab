using System.Collections.Immutable;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Schedules;

/// <summary>A row as it would be if nothing were asked, with everything that is.</summary>
internal sealed class RowDraft(ScheduleItem item, ScheduleRow row)
{
    public ScheduleItem Item { get; } = item;

    public ScheduleRow Row { get; set; } = row;

    public List<RowDoubt> Doubts { get; } = [];

    /// <summary>A second relation given on the same line: the clearance beside the size.</summary>
    public List<RowDraft> Beside { get; } = [];
}

/// <summary>Understands one item: its kind, the sides its figures stand on, which way it wears, tight or loose.</summary>
internal sealed class ItemReader(ItemUnits units)
{
    private static readonly LimitOf[] SizeOwners = [LimitOf.Row, LimitOf.Dimension];
    private static readonly LimitOf[] FitOwners = [LimitOf.Row, LimitOf.Clearance];
    private static readonly LimitOf[] AllOwners = [LimitOf.Row, LimitOf.Dimension, LimitOf.Clearance];

    public RowDraft Read(ScheduleItem item)
    {
        var words = item.Words;
        var kind = words.Kind ?? (item.Section.Contains("spring", StringComparison.OrdinalIgnoreCase) ? ItemWords.Of($"spring {item.Description}").Kind : null);
        if (kind == RowKind.EndFloat && words.Has("side clearance") && ItemWords.Of(item.Section).Has("ring"))
            kind = RowKind.Clearance;
        var size = Has(item, LimitOf.Dimension);
        var fit = Has(item, LimitOf.Clearance);
        var owners = size && fit ? kind is { } said && said.IsFit() ? FitOwners : SizeOwners : AllOwners;
        if (fit && !size && (kind is null or RowKind.Dimension))
            kind = RowKind.Clearance;
        var draft = ReadOne(item, words, kind, owners);
        if (size && fit)
        {
            var other = owners == FitOwners
                ? ReadOne(item, words, RowKind.Dimension, [LimitOf.Dimension])
                : ReadOne(item, ItemWords.Of($"{item.Description} clearance"), RowKind.Clearance, [LimitOf.Clearance]);
            other.Row = other.Row with { Feature = owners == FitOwners ? $"{item.Feature}, size" : $"{item.Feature}, clearance" };
            draft.Beside.Add(other);
        }

        foreach (var (owner, word) in new[] { (LimitOf.Hole, "hole"), (LimitOf.Shaft, "shaft") })
        {
            if (!Has(item, owner))
                continue;
            var part = ReadOne(item, ItemWords.Of(owner == LimitOf.Hole ? "bore" : "shaft outside diameter"), RowKind.Dimension, [owner]);
            part.Row = part.Row with { Feature = $"{item.Feature}, {word}" };
            draft.Beside.Add(part);
        }

        draft.Doubts.AddRange(item.Doubts);
        return draft;
    }

    private static bool Has(ScheduleItem item, LimitOf owner) =>
        item.Cells.Any(cell => item.Head.Mapping[cell.Key].Use == ColumnUse.Limit && item.Head.Mapping[cell.Key].Of == owner && cell.Value.Sort is CellSort.Figures or CellSort.Doubtful or CellSort.Rule);

    private RowDraft ReadOne(ScheduleItem item, ItemWords words, RowKind? said, LimitOf[] owners)
    {
        var limits = new LimitReader(item, units, ExpectedBy(item, owners, said) ?? ItemUnits.Expected(words, said), owners);
        limits.Read();
        if ((said is null or RowKind.Dimension) && limits.New.All.Concat(limits.Worn.All).Any(limit => limit.Figure.Sense != FitSense.Unsaid))
            said = RowKind.Clearance;
        var inWords = limits.AnyFigures || said is not (null or RowKind.Dimension) ? null : FitReader.InWords(item, owners);
        var kind = inWords ?? said ?? (limits.AnyFigures ? RowKind.Dimension : RowKind.Other);
        if (limits.Unit is { } unit && unit.Kind != QuantityKind.Length)
            kind = unit.Kind switch { QuantityKind.Torque => RowKind.Torque, QuantityKind.Force or QuantityKind.Stiffness when words.Has("spring") || kind == RowKind.Spring => RowKind.Spring, _ => RowKind.Other };
        var notes = item.Notes.Concat(limits.Notes).ToImmutableArray();
        var draft = new RowDraft(item, new ScheduleRow
        {
            Row = item.Row,
            Kind = kind,
            Part = item.Section.Length > 0 ? item.Section : null,
            Feature = item.Feature,
            Reference = item.Reference.Length > 0 ? item.Reference : null,
            Remark = item.Remark.Length > 0 ? item.Remark : null,
            AppliesTo = item.AppliesTo.Length > 0 ? item.AppliesTo : null,
            Notes = notes,
            Literal = limits.Literal,
            Printed = limits.Unit,
            Unit = limits.Unit is { } printed ? SiSymbol(printed.Kind) : limits.AnyFigures ? "m" : null,
        });
        draft.Doubts.AddRange(limits.Doubts);
        if (RuleWords.IsRate(item.Feature) && limits.AnyFigures && limits.Rules.Count == 0)
        {
            ReadRate(draft, limits);
            return draft;
        }

        if (words.SayNip && limits.AnyFigures)
        {
            draft.Doubts.Add(new RowDoubt("nip", "Nip, crush or protrusion is measured in more than one way, and the row does not say in which.", DoubtSides.Both,
                [RowAnswer.AsRead("as printed: a gap or height at the joint"), RowAnswer.LeaveOut(DoubtSides.Both)]));
        }

        ReadRules(draft, limits);
        ReadLimits(draft, limits, words, said);
        AskKind(draft, limits, said);
        ItemChecks.Check(draft, limits, words);
        return draft;
    }

    /// <summary>What the unit at the head of the columns, or of the row, measures, where it is no length.</summary>
    private static QuantityKind? ExpectedBy(ScheduleItem item, LimitOf[] owners, RowKind? said)
    {
        // A spring is measured in lengths and in loads; a printed unit of force says which.
        if (said == RowKind.Spring && item.Cells.Values.Any(cell => cell.Main?.Figures.Any(figure => figure.Units.Any(unit => unit.Kind == QuantityKind.Force)) == true))
            return QuantityKind.Force;
        if (said is not null)
            return null;
        var heads = item.Cells.Keys.Select(column => item.Head.Mapping[column]).Where(role => role.Use == ColumnUse.Limit && owners.Contains(role.Of)).Select(role => role.Unit?.Kind).Distinct().ToList();
        var kind = item.UnitWord.Length > 0 ? TradeUnit.Find(item.UnitWord)?.Kind : heads is [var only] ? only : null;
        return kind == QuantityKind.Length ? null : kind;
    }

    private static string SiSymbol(QuantityKind kind) => kind == QuantityKind.Torque ? "N.m" : kind == QuantityKind.Angle ? "deg" : TradeUnit.Default(kind).Symbol;

    /// <summary>A rate in the item's words ("per inch of radius"): its figure is a ratio.</summary>
    private void ReadRate(RowDraft draft, LimitReader limits)
    {
        var figures = draft.Item.Cells.Where(cell => cell.Value.Main is { Second: null }).ToList();
        WearRule? rule = null;
        if (figures.Count == 1 && limits.Unit is { Kind: QuantityKind.Length } unit)
            rule = RuleWords.Read(figures[0].Value, draft.Item.Feature, unit);
        draft.Row = draft.Row with { Rule = rule, Kind = RowKind.Other, Unit = null };
        draft.Doubts.Insert(0, RuleDoubt(rule));
    }

    private void ReadRules(RowDraft draft, LimitReader limits)
    {
        foreach (var (role, cell) in limits.Rules)
        {
            var bare = units.Of(cell, null, role, draft.Item.UnitWord, QuantityKind.Length, null).Main;
            if (RuleWords.IsWearAmount(cell) && cell.Main is { Second: null, First: var figure })
            {
                if ((figure.Units.FirstOrDefault(unit => unit.Kind == QuantityKind.Length) ?? bare) is { } unit)
                    draft.Row = draft.Row with { WearAmount = unit.ToSi(figure.Number), Unit = "m" };
                else
                    draft.Doubts.Add(new RowDoubt("unit", "Neither the cell nor the heading gives the unit.", DoubtSides.Both, [new RowAnswer("unit-in", "inches", row => row), new RowAnswer("unit-mm", "millimetres", row => row)]) { OfFile = true });
                continue;
            }

            var rule = RuleWords.Read(cell, draft.Item.Feature, bare);
            draft.Row = draft.Row with { Rule = rule, Unit = rule?.Add is null ? null : "m" };
            draft.Doubts.Insert(0, RuleDoubt(rule));
        }
    }

    /// <summary>A rule is never worked out here: it needs another row or a measurement, and the text may mean more than one thing.</summary>
    private static RowDoubt RuleDoubt(WearRule? rule)
    {
        var shown = rule is null ? "The limit is given in words that are not understood." : $"The limit is a rule, not a size: {Describe(rule)}.";
        return new RowDoubt("rule", shown, DoubtSides.Both,
            [new RowAnswer("keep-rule", "keep the rule beside the row; no limit is worked out", row => row with { New = Bounds.None, Worn = Bounds.None }), RowAnswer.LeaveOut(DoubtSides.Both)]);
    }

    private static string Describe(WearRule rule)
    {
        var what = rule.Add is { } add ? $"{add * 1000:0.####} mm" : $"{rule.Ratio:0.######} times {rule.Per}";
        return rule.MeasuredFrom switch
        {
            "new_max" => $"{what} over the greatest new limit",
            "new_min (below)" => $"{what} under the least new limit",
            "new" => $"{what}, counted from the new size",
            _ => what,
        };
    }

    private void ReadLimits(RowDraft draft, LimitReader limits, ItemWords words, RowKind? said)
    {
        FitReader.ReadSenses(draft, limits, words);
        var end = words.IsForm ? LimitEnd.Max : draft.Item.OwnWords.End;
        var row = draft.Row;
        row = row with { New = limits.New.ToBounds(end), Desired = limits.Desired.ToBounds(LimitEnd.Both) };
        if (limits.WearAmount.Single is { } amount)
            row = row with { WearAmount = amount.Value };
        draft.Row = row with { Worn = WornOf(draft, row, limits.Worn, words) };
        FitReader.SettleKind(draft, words, said);
    }

    /// <summary>A worn limit is one-sided; words and figures say which side, and if they do not agree, it is asked.</summary>
    private static Bounds WornOf(RowDraft draft, ScheduleRow row, SideFigures worn, ItemWords words)
    {
        if (worn.Single is not { } single)
            return new Bounds(worn.Min?.Value, worn.Max?.Value);
        var value = single.Value;
        var way = row.Kind.IsFit() ? WearWay.Grows : words.Way;
        var byFigures = row.New is { Min: { } min, Max: { } max }
            ? value > max ? WearWay.Grows : value < min ? WearWay.Shrinks : WearWay.Unsaid
            : WearWay.Unsaid;
        if (way == WearWay.Unsaid && byFigures == WearWay.Unsaid && row.New is { Min: { } low, Max: { } high } && low < high)
            byFigures = value == high ? WearWay.Grows : value == low ? WearWay.Shrinks : WearWay.Unsaid;
        if (way != WearWay.Unsaid && byFigures != WearWay.Unsaid && way != byFigures)
        {
            var wording = way == WearWay.Grows ? "grows" : "shrinks";
            draft.Doubts.Add(new RowDoubt("wear-way", $"By its words the item {wording} with wear, and the worn limit {single} lies on the other side of the new limits.", DoubtSides.Worn,
                [new RowAnswer("greatest", "the greatest when worn", r => r with { Worn = new Bounds(null, value) }), new RowAnswer("least", "the least when worn", r => r with { Worn = new Bounds(value, null) }), RowAnswer.LeaveOut(DoubtSides.Worn)]));
            return Bounds.None;
        }

        var settled = way != WearWay.Unsaid ? way : byFigures != WearWay.Unsaid ? byFigures : row.New.IsEmpty ? words.WeakWay : WearWay.Unsaid;
        if (settled == WearWay.Unsaid)
        {
            draft.Doubts.Add(new RowDoubt("wear-way", $"Whether the worn limit {single} is a greatest or a least value, neither words nor figures say.", DoubtSides.Worn,
                [new RowAnswer("greatest", "the greatest when worn", r => r with { Worn = new Bounds(null, value) }), new RowAnswer("least", "the least when worn", r => r with { Worn = new Bounds(value, null) }), RowAnswer.LeaveOut(DoubtSides.Worn)]));
            return Bounds.None;
        }

        return settled == WearWay.Grows ? new Bounds(null, value) : new Bounds(value, null);
    }

    /// <summary>Where no word says what is measured, the size of the figures must leave no doubt.</summary>
    private static void AskKind(RowDraft draft, LimitReader limits, RowKind? said)
    {
        if (said is not null || draft.Row.Unit != "m" || draft.Row.Rule is not null)
            return;
        var greatest = limits.New.All.Concat(limits.Worn.All).Select(limit => Math.Abs(limit.Value)).DefaultIfEmpty(1).Max();
        if (greatest >= 0.003)
            return;
        draft.Doubts.Add(new RowDoubt("kind", "No word says whether this is a size or a clearance, and the figures are small.", DoubtSides.Both,
        [
            new RowAnswer("dimension", "a size", row => row with { Kind = RowKind.Dimension }),
            new RowAnswer("clearance", "a clearance", row => row with { Kind = RowKind.Clearance, Worn = new Bounds(null, row.Worn.Max ?? row.Worn.Min) }),
            RowAnswer.LeaveOut(DoubtSides.Both),
        ]));
    }
}
