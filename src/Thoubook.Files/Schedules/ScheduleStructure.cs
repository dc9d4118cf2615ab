using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Schedules;

/// <summary>
/// Goes through the lines in order and says of each what it is: heading, item, continuation of an item (wrapped words, the same figures in another
/// unit, Press and Loose below their figures), note. Gathers items with everything that belongs to them.
/// </summary>
internal sealed partial class ScheduleStructure(ImmutableArray<ScheduleLine> lines, ImmutableArray<TableHead> heads, DecimalMark mark)
{
    private readonly PlacedLine?[] placed = new PlacedLine?[lines.Length];
    private readonly TableHead?[] headAt = LinesOfHeads(lines.Length, heads);
    private readonly List<string> section = [];
    private TableHead head = heads[0];
    private string subHeading = "";
    private string carriedPart = "";
    private ScheduleItem? last;
    private int lastIndex = -1;
    private int lastNumber;
    private bool afterHeading;

    public static ImmutableArray<PlacedLine> Place(ImmutableArray<ScheduleLine> lines, ImmutableArray<TableHead> heads, DecimalMark mark) =>
        new ScheduleStructure(lines, heads, mark).Place();

    private static TableHead?[] LinesOfHeads(int count, ImmutableArray<TableHead> heads)
    {
        var at = new TableHead?[count];
        foreach (var table in heads)
        {
            for (var index = table.First; index <= table.Last; index++)
                at[index] = table;
        }

        return at;
    }

    private ImmutableArray<PlacedLine> Place()
    {
        for (var index = 0; index < lines.Length; index++)
        {
            if (placed[index] is not null)
                continue;
            placed[index] = PlaceLine(index);
        }

        return [.. placed.Select(line => line!)];
    }

    private PlacedLine PlaceLine(int index)
    {
        var line = lines[index];
        if (headAt[index] is { } begun)
        {
            head = begun;
            (last, afterHeading) = (null, true);
            return Heading(line, string.Join(' ', line.Cells.Where(cell => cell.Length > 0)));
        }

        if (line.IsBlank)
            return new PlacedLine(line, LineSort.Blank);
        if (index < heads[0].First)
        {
            var single = line.Cells.Count(cell => cell.Length > 0) == 1;
            return single ? Heading(line, line.Cells.First(cell => cell.Length > 0)) : new PlacedLine(line, line.Cells.Any(StartsWithFigure) ? LineSort.Stray : LineSort.Heading);
        }

        var parts = new LineParts(line, head, mark);
        if (parts.Description.Length == 0 && last is not null && lastIndex >= 0 && ContinuesFigures(parts))
            return Continue(line, parts);
        if (parts.HasFigures && last is not null && IsRepeat(parts))
            return Continue(line, parts);
        if (!parts.HasLimits)
            return WordsOnly(index, line, parts);
        return StartItem(index, line, parts);
    }

    private static bool StartsWithFigure(string cell) => cell.TrimStart('.', '-', '+', '(').FirstOrDefault() is >= '0' and <= '9';

    /// <summary>No description: words that go on in a limit cell, Press or Loose, or figures broken over two lines.</summary>
    private bool ContinuesFigures(LineParts parts)
    {
        if (!parts.HasFigures)
            return parts.Cells.Values.Any(cell => cell.Sort == CellSort.Words);
        return parts.Cells.Values.Any(cell => cell.Sort == CellSort.Words) && last!.Cells.Values.Any(cell => cell.Text.EndsWith('-'));
    }

    /// <summary>Every figure of the line stands under one of the item above and says the same in another unit, or looks so: all in brackets below bare figures.</summary>
    private bool IsRepeat(LineParts parts)
    {
        var figures = parts.Cells.Where(cell => cell.Value.HasFigures).ToList();
        if (figures.Count == 0 || last!.Repeats.Count > 0 || !figures.All(cell => last.Cells.TryGetValue(cell.Key, out var above) && above.Main is not null))
            return false;
        if (parts.Cells.Values.Any(cell => cell.Sort is CellSort.Rule or CellSort.Nil or CellSort.Ditto))
            return false;
        var ratios = figures.Count(cell => IsInchRatio(last.Cells[cell.Key].Main!, (cell.Value.Main ?? cell.Value.Repeat)!));
        var wrapped = parts.Description.Length == 0 || IsWrapped(parts.RawDescription, last.Description);
        return figures.All(cell => cell.Value.OnlyBracketed)
            ? ratios > 0 || wrapped
            : wrapped && ratios * 2 > figures.Count && figures.All(cell => cell.Value.Label.Length == 0);
    }

    private static bool IsInchRatio(FigureSpan above, FigureSpan below)
    {
        var a = Math.Abs(above.First.Number.ToDouble());
        var b = Math.Abs(below.First.Number.ToDouble());
        return a > 0 && b > 0 && (Math.Abs(b / a / 25.4 - 1) < 0.05 || Math.Abs(a / b / 25.4 - 1) < 0.05);
    }

    private PlacedLine Continue(ScheduleLine line, LineParts parts)
    {
        var item = last!;
        item.Description = Join(item.Description, parts.RawDescription);
        item.Remark = Join(item.Remark, parts.Remark);
        item.Reference = Join(item.Reference, parts.Reference);
        var broken = parts.Description.Length == 0 && parts.HasFigures && !IsRepeat(parts);
        foreach (var (column, cell) in parts.Cells)
        {
            if (cell.SenseWord != FitSense.Unsaid)
                item.Senses[column] = cell.SenseWord;
            else if (broken && cell.Sort != CellSort.Blank)
                item.Cells[column] = new FigureCell(CellSort.Doubtful, Join(item.Cells.GetValueOrDefault(column)?.Text ?? "", cell.Text)) { Doubt = "The figures are broken over two lines." };
            else if (cell.HasFigures)
                item.Repeats[column] = cell;
            else if (cell.Sort == CellSort.Words && item.Cells.TryGetValue(column, out var above))
                item.Cells[column] = above with { Text = Join(above.Text, cell.Text), Tail = above.HasFigures ? Join(above.Tail, cell.Text) : "" };
        }

        return new PlacedLine(line, LineSort.Continuation) { ContinuationOf = item.Row };
    }

    private PlacedLine WordsOnly(int index, ScheduleLine line, LineParts parts)
    {
        var text = parts.RawDescription;
        if (text.Length == 0)
        {
            var other = parts.Remark.Length > 0 ? parts.Remark : parts.Reference;
            if (last is not null && lastIndex == index - 1)
                return Continue(line, parts);
            return new PlacedLine(line, LineSort.Note) { Text = other };
        }

        if (!afterHeading && last is not null && Adjacent(index) && IsWrapped(text, last.Description))
            return Continue(line, parts);
        if (BeginsNextItem(index, text))
        {
            // The words of an item whose figures stand on its last line.
            var next = index + 1;
            var below = new LineParts(lines[next], head, mark);
            var item = NewItem(next, below, Join(text, below.RawDescription));
            placed[next] = Item(next, item);
            return new PlacedLine(line, LineSort.Continuation) { ContinuationOf = item.Row };
        }

        if (parts.Reference.Length > 0 && !IsAllCapitals(text))
            return StartItem(index, line, parts);
        if (IsSentence(text))
            return new PlacedLine(line, LineSort.Note) { Text = text };
        return TakeHeading(line, text);
    }

    private bool Adjacent(int index)
    {
        for (var back = index - 1; back > lastIndex; back--)
        {
            if (placed[back]?.Sort != LineSort.Continuation)
                return false;
        }

        return true;
    }

    private bool BeginsNextItem(int index, string text)
    {
        if (index + 1 >= lines.Length || headAt[index + 1] is not null)
            return false;
        var next = new LineParts(lines[index + 1], head, mark);
        if (!next.HasFigures || next.RawDescription.Length == 0 || next.Cells.Values.Any(cell => cell.OnlyBracketed))
            return false;
        var lower = StartsLower(next.RawDescription);
        var nextLower = index + 2 < lines.Length && new LineParts(lines[index + 2], head, mark) is { HasFigures: true } after && StartsLower(after.RawDescription);
        return (lower && !nextLower) || (Dangles(text) && !IsAllCapitals(text));
    }

    private PlacedLine TakeHeading(ScheduleLine line, string text)
    {
        var plain = WithoutNumber(text, out var number);
        if (number > 0)
            lastNumber = number;
        plain = plain.TrimEnd(':', ',', ' ', '.');
        plain = Continued().Replace(plain, "").Trim();
        var words = ItemWords.Of(plain);
        subHeading = words.SayFeature ? plain : "";
        if (!words.SayFeature || IsAllCapitals(text))
        {
            if (!(afterHeading && section.Count > 0 && Dangles(section[^1])))
                section.Clear();
            section.Add(plain);
        }

        (last, afterHeading, carriedPart) = (null, true, "");
        return Heading(line, text);
    }

    private PlacedLine StartItem(int index, ScheduleLine line, LineParts parts)
    {
        var label = parts.Cells.Values.Select(cell => cell.Label).FirstOrDefault(text => text.Length > 0) ?? "";
        if (parts.Description.Length > 0)
            return Item(index, NewItem(index, parts, parts.RawDescription));
        if (!parts.HasFigures && last is not null)
            return Continue(line, parts);
        var item = NewItem(index, parts, last?.Description ?? "");
        var fitBelowParts = last is not null && parts.Cells.All(cell => !cell.Value.HasFigures || head.Mapping[cell.Key].Of == LimitOf.Clearance);
        if (label.Length == 0 && !fitBelowParts)
        {
            item.Doubts.Add(new RowDoubt(
                "same-item", last is null ? "The line has figures and no description." : $"The line has figures and no description; the item above it is '{last.Description}'.",
                DoubtSides.Both, [RowAnswer.AsRead(last is null ? "take the figures without a name" : $"more figures of '{last.Description}'"), RowAnswer.LeaveOut(DoubtSides.Both)]));
        }
        else if (label.Length == 0)
        {
            item.Description = $"{last!.Description} clearance";
        }

        return Item(index, item);
    }

    private ScheduleItem NewItem(int index, LineParts parts, string raw)
    {
        var text = WithoutNumber(raw, out var number);
        if (number > 0)
            lastNumber = number;
        if (parts.Part.Length > 0)
            carriedPart = parts.Part;
        if (IsDitto(text, out var rest) && last is not null)
            text = rest.Length == 0 ? last.Description : $"{last.Description}, {rest}";
        var part = parts.Part.Length > 0 ? parts.Part : parts.Description.Length > 0 ? carriedPart : "";
        var item = new ScheduleItem(lines[index], head)
        {
            Section = part.Length > 0 ? part : string.Join(' ', section),
            Parent = subHeading.Length > 0 ? subHeading : part,
            Reference = parts.Reference,
            Remark = parts.Remark,
            AppliesTo = parts.AppliesTo,
            UnitWord = parts.UnitWord.Length > 0 ? parts.UnitWord : UnitInBrackets(text),
            Description = text.TrimEnd(':', ',', ' '),
            Label = parts.Cells.Values.Select(cell => cell.Label).FirstOrDefault(label => label.Length > 0) ?? "",
        };
        foreach (var (column, cell) in parts.Cells)
            item.Cells[column] = cell.Sort == CellSort.Ditto ? Above(column, cell) : cell;
        if (number == 0 && parts.RawDescription.Length > 0 && text == raw && SkipsNumber(index))
        {
            item.Doubts.Add(new RowDoubt(
                "number-missing", $"The list goes from {lastNumber} to {lastNumber + 2} here and this line has no number: the item may not belong to what stands above it.",
                DoubtSides.Both, [RowAnswer.AsRead("an item of its own; take it as read"), RowAnswer.LeaveOut(DoubtSides.Both)]));
        }

        // An item of another kind ends what the heading said for those before it.
        if (subHeading.Length > 0 && parts.Description.Length > 0 && item.OwnWords.Kind is { } kind && kind != ItemWords.Of(subHeading).Kind)
            subHeading = "";
        return item;
    }

    /// <summary>"Master rod cap nuts (lbf ft)", "Rocker shaft dia. in.": the unit of the row's bare figures.</summary>
    private static string UnitInBrackets(string text)
    {
        foreach (Match match in Bracketed().Matches(text))
        {
            if (TradeUnit.FindAll(match.Groups["inside"].Value).Count > 0 || TradeUnit.FindAll(match.Groups["inside"].Value, QuantityKind.Force).Count > 0)
                return match.Groups["inside"].Value;
        }

        return TrailingUnit().Match(text) is { Success: true } trailing ? trailing.Groups["unit"].Value.TrimEnd('.') : "";
    }

    private FigureCell Above(int column, FigureCell ditto) =>
        last is not null && last.Cells.TryGetValue(column, out var above) && above.Sort is not CellSort.Blank
            ? above with { Label = "" }
            : new FigureCell(CellSort.Doubtful, ditto.Text) { Doubt = "It repeats the cell above, and that cell is empty." };

    private PlacedLine Item(int index, ScheduleItem item)
    {
        (last, lastIndex, afterHeading) = (item, index, false);
        return new PlacedLine(lines[index], LineSort.Item) { Item = item };
    }

    private PlacedLine Heading(ScheduleLine line, string text)
    {
        return new PlacedLine(line, LineSort.Heading) { Text = text };
    }

    /// <summary>A line without a number between number n and number n + 2 of a list.</summary>
    private bool SkipsNumber(int index)
    {
        for (var next = index + 1; lastNumber > 0 && next < lines.Length && next <= index + 3; next++)
        {
            var text = new LineParts(lines[next], head, mark).RawDescription;
            WithoutNumber(text, out var number);
            if (number > 0)
                return number == lastNumber + 2;
            if (text.Length > 0 && !StartsLower(text))
                return false;
        }

        return false;
    }

    private static string Join(string before, string after)
    {
        if (before.Length == 0 || after.Length == 0)
            return before + after;
        return before.EndsWith('-') ? before + after : $"{before} {after}";
    }

    private static bool IsWrapped(string text, string before) =>
        StartsLower(text) || text[0] == '(' || Dangles(before) || before.Count(c => c == '(') > before.Count(c => c == ')');

    private static bool StartsLower(string text) => text.Length > 0 && char.IsLower(text[0]) && !SubItem().IsMatch(text) && !text.StartsWith("do.", StringComparison.Ordinal);

    private static bool Dangles(string text) =>
        text.EndsWith('-') || text.EndsWith('&') || text.EndsWith(',') || text.EndsWith('/') || DanglingWord().IsMatch(text);

    private static bool IsAllCapitals(string text) => text.Any(char.IsLetter) && !text.Any(char.IsLower);

    private static bool IsSentence(string text) => text.EndsWith('.') && text.Count(c => c == ' ') >= 5;

    private static bool IsDitto(string text, out string rest)
    {
        var match = DittoStart().Match(text);
        rest = match.Success ? text[match.Length..].Trim(' ', ',') : text;
        return match.Success;
    }

    /// <summary>Takes off the number or letter that an item has in a list; the number is 0 for letters and where there is none.</summary>
    private static string WithoutNumber(string text, out int number)
    {
        number = 0;
        var match = ListNumber().Match(text);
        if (!match.Success)
            return text;
        foreach (var digit in match.Groups["number"].Value)
            number = number * 10 + (digit - '0');
        return text[match.Length..];
    }

    [GeneratedRegex(@"^(?![IO]\.\s?D\.)\(?((?<number>\d{1,3})|[A-Za-z])\s?[.)]\s+", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex ListNumber();

    // Without its point the word "in" is no unit at the end of a description.
    [GeneratedRegex(@"\s(?<unit>in\.|ins\.|inches|mm\.?|thou|lbf ft|lbs?\.? ft|ft\.? lbs?|lbf|N\.?m)$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex TrailingUnit();

    [GeneratedRegex(@"\((?<inside>[^()]{1,20})\)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Bracketed();

    [GeneratedRegex(@"^\(?[a-z]\s?[.)]\s", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex SubItem();

    [GeneratedRegex(@"\b(and|of|in|for|to|with|at|the|between|or|on)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex DanglingWord();

    [GeneratedRegex(@"^(ditto\b\.?|-?do\.|,,|""|''|″)\s*", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex DittoStart();

    [GeneratedRegex(@"\(\s*cont(inued|d|'d|\.)?\.?\s*\)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Continued();

    /// <summary>The cells of one line by what their columns hold.</summary>
    private sealed class LineParts
    {
        public LineParts(ScheduleLine line, TableHead head, DecimalMark mark)
        {
            var descriptions = new List<string>();
            var width = Math.Max(line.Cells.Length, head.Mapping.Columns.Length);
            for (var column = 0; column < width; column++)
            {
                var text = line.Cell(column);
                switch (head.Mapping[column].Use)
                {
                    case ColumnUse.Description:
                        descriptions.Add(text);
                        break;
                    case ColumnUse.Reference when text.Length > 0 && text.Any(char.IsLetterOrDigit):
                        Reference = Join(Reference, text);
                        break;
                    case ColumnUse.Remarks:
                        Remark = Join(Remark, text);
                        break;
                    case ColumnUse.AppliesTo:
                        AppliesTo = text;
                        break;
                    case ColumnUse.Unit:
                        UnitWord = text;
                        break;
                    case ColumnUse.Limit or ColumnUse.NotUnderstood:
                        Cells[column] = FigureCellReader.Read(text, mark);
                        break;
                }
            }

            Part = descriptions.Count > 1 && descriptions.Skip(1).Any(text => text.Length > 0) ? descriptions[0] : "";
            RawDescription = descriptions.Count > 1 && Part.Length > 0 ? string.Join(", ", descriptions.Skip(1).Where(text => text.Length > 0)) : string.Join(", ", descriptions.Where(text => text.Length > 0));
            Description = RawDescription;
        }

        public string Part { get; }

        public string Description { get; }

        public string RawDescription { get; }

        public string Reference { get; } = "";

        public string Remark { get; } = "";

        public string AppliesTo { get; } = "";

        public string UnitWord { get; } = "";

        public Dictionary<int, FigureCell> Cells { get; } = [];

        public bool HasFigures => Cells.Values.Any(cell => cell.HasFigures || cell.Sort == CellSort.Doubtful);

        /// <summary>Anything printed under a limit heading but words.</summary>
        public bool HasLimits => Cells.Values.Any(cell => cell.Sort is not (CellSort.Blank or CellSort.Words)) || (Description.Length > 0 && Cells.Values.Any(cell => cell.Sort == CellSort.Words));
    }
}
