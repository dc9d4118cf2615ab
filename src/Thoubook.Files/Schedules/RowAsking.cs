using System.Collections.Immutable;
using Thoubook.Record;

namespace Thoubook.Files.Schedules;

/// <summary>Takes the answers that were confirmed, empties what is still in doubt, and puts the first open doubt of each row as its question.</summary>
internal sealed class RowAsking(ScheduleOptions options, string fileName)
{
    private readonly ImmutableArray<Problem>.Builder questions = ImmutableArray.CreateBuilder<Problem>();
    private readonly HashSet<string> askedOfFile = new(StringComparer.Ordinal);

    public ImmutableArray<Problem> Questions => questions.ToImmutable();

    public ScheduleRow Settle(RowDraft draft)
    {
        var row = Settle(draft, draft.Row);
        var beside = ImmutableArray.CreateBuilder<ScheduleRow>();
        foreach (var other in draft.Beside)
        {
            var settled = Settle(other, other.Row);
            row = row with { Ask = row.Ask ?? settled.Ask };
            beside.Add(settled);
        }

        return row with { Beside = beside.ToImmutable() };
    }

    /// <summary>Figures above the headings: nothing says what they are.</summary>
    public ScheduleRow Stray(PlacedLine line)
    {
        var row = new ScheduleRow { Row = line.Line.Row, Kind = RowKind.Unreadable };
        var doubt = new RowDoubt("stray", "The line has figures and stands above the headings.", DoubtSides.Both, [RowAnswer.LeaveOut(DoubtSides.Both)]);
        return Ask(row, line.Line, [doubt]);
    }

    private ScheduleRow Settle(RowDraft draft, ScheduleRow row)
    {
        var item = draft.Item;
        var feature = row.Feature ?? item.Feature;
        row = row with { Name = item.Section.Length > 0 && !feature.StartsWith(item.Section, StringComparison.OrdinalIgnoreCase) ? $"{InSmall(item.Section)}: {feature}" : feature };
        var doubts = item.Head.Doubts.Where(doubt => doubt.Column < 0 && item.HasFigures)
            .Select(doubt => new RowDoubt(doubt.Code, doubt.Why, DoubtSides.Both, [.. doubt.Meanings.Select(meaning => new RowAnswer(meaning.Code, meaning.Text, r => r))]) { OfFile = true })
            .Concat(draft.Doubts)
            .DistinctBy(doubt => doubt.Code)
            .OrderByDescending(doubt => doubt.OfFile);
        return Ask(row, item.Line, doubts);
    }

    private ScheduleRow Ask(ScheduleRow row, ScheduleLine line, IEnumerable<RowDoubt> doubts)
    {
        var open = new List<RowDoubt>();
        var prefix = $"row{line.Row}-{Mark(line)}";
        var taken = row;
        foreach (var doubt in doubts)
        {
            var answer = doubt.OfFile ? null : doubt.Answers.FirstOrDefault(answer => options.Confirmed.Contains(CodeOf(doubt, answer)));
            if (answer is null)
                open.Add(doubt);
            else
                taken = answer.Apply(taken);
        }

        if (open.Count == 0)
            return taken;
        var first = open[0];
        var meanings = first.Answers.Select(answer => new Meaning(first.OfFile ? answer.Code : CodeOf(first, answer), answer.Text)).ToList();
        var sides = open.Aggregate(DoubtSides.None, (all, doubt) => all | doubt.Sides);
        if (!first.OfFile || askedOfFile.Add(first.Code))
        {
            questions.Add(new Problem(meanings[0].Code, row.Name ?? "", first.Why, "A limit is taken when its meaning is certain.", "Confirm one of the meanings, or correct the file.", meanings)
            {
                At = new Problem.Place(fileName, line.Row, 1),
            });
        }

        return taken with
        {
            Kind = open.Any(doubt => doubt.Code == "equal") ? RowKind.Unreadable : taken.Kind,
            New = sides.HasFlag(DoubtSides.New) ? Bounds.None : taken.New,
            Worn = sides.HasFlag(DoubtSides.Worn) ? Bounds.None : taken.Worn,
            Desired = sides == DoubtSides.Both ? Bounds.None : taken.Desired,
            WearAmount = sides == DoubtSides.Both ? null : taken.WearAmount,
            Ask = new RowQuestion(meanings[0].Code, first.Why, meanings),
            Notes = [.. taken.Notes, .. open.Skip(1).Select(doubt => doubt.Why)],
        };

        string CodeOf(RowDoubt doubt, RowAnswer answer) => $"{prefix}-{doubt.Code}-{answer.Code}";
    }

    /// <summary>Three letters from the line's words, so that a code confirmed for one line is never taken for another after the file has changed.</summary>
    private static string Mark(ScheduleLine line)
    {
        var hash = 2166136261u;
        foreach (var character in string.Join('\u001F', line.Cells))
            hash = unchecked((hash ^ character) * 16777619u);
        return string.Create(3, hash, (span, value) =>
        {
            for (var at = 0; at < span.Length; at++)
            {
                span[at] = (char)('a' + value % 26);
                value /= 26;
            }
        });
    }

    private static string InSmall(string text) => text.Any(char.IsLower) ? text : text.ToLowerInvariant();
}
