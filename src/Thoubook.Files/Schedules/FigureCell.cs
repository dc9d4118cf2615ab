using System.Collections.Immutable;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Schedules;

internal enum CellSort
{
    Blank,

    /// <summary>Dashes, n/a: not given.</summary>
    Absent,

    /// <summary>A printed "nil": no wear permitted, or not a wear item.</summary>
    Nil,

    /// <summary>The same as in the cell above.</summary>
    Ditto,
    Words,
    Figures,

    /// <summary>A figure that needs another to be a limit: per inch, over the high limit.</summary>
    Rule,

    /// <summary>Figures that can't be taken; <see cref="FigureCell.Doubt"/> says why.</summary>
    Doubtful,
}

internal enum FitSense
{
    Unsaid,
    Tight,
    Loose,
}

/// <summary>One number in a cell, with what stands at it.</summary>
/// <param name="Number">As written, with its sign.</param>
/// <param name="Written">Its digits with a decimal point, to judge rounding by.</param>
/// <param name="Units">The units it may be written in; none where it is bare.</param>
/// <param name="Sign">-1 or 1 where a sign is printed, else 0.</param>
internal sealed record Figure(Exact Number, string Written, ImmutableArray<TradeUnit> Units, int Sign, FitSense Sense)
{
    /// <summary>Tight or loose in a word, which at the end of a range is said of both ends, and not by a letter.</summary>
    public bool SenseInWord { get; init; }

    /// <summary>The comma in it may be a decimal mark or part thousands.</summary>
    public bool MarkInDoubt { get; init; }

    /// <summary>A whole number that begins with noughts: the point is lost.</summary>
    public bool PointLost => Written.Length > 1 && Written[0] == '0' && !Written.Contains('.') && !Written.Contains('/');

    public int Decimals => Written.IndexOf('.') is var point and >= 0 ? Written.Length - point - 1 : 0;

    public bool IsFraction => Written.Contains('/');
}

/// <summary>One figure, or two as a range.</summary>
internal sealed record FigureSpan(Figure First, Figure? Second)
{
    public IEnumerable<Figure> Figures => Second is null ? [First] : [First, Second];

    public bool IsBare => Figures.All(figure => figure.Units.IsEmpty);

    public bool IsWhole => Figures.All(figure => figure.Decimals == 0 && !figure.IsFraction);
}

/// <summary>One cell under a limit heading, taken apart and not yet judged.</summary>
internal sealed record FigureCell(CellSort Sort, string Text)
{
    /// <summary>The words before the figures: "Ring 1", "a. Bearing 2 and 3".</summary>
    public string Label { get; init; } = "";

    /// <summary>The words after the figures.</summary>
    public string Tail { get; init; } = "";

    public FigureSpan? Main { get; init; }

    /// <summary>Figures in brackets, or a second time in another unit.</summary>
    public FigureSpan? Repeat { get; init; }

    /// <summary>"max." or "min." printed at the figure.</summary>
    public LimitEnd End { get; init; }

    public string Doubt { get; init; } = "";

    /// <summary>A word at the figure that could be a unit and is not known.</summary>
    public string UnknownUnit { get; init; } = "";

    public bool HasFigures => Main is not null || Repeat is not null;

    public bool OnlyBracketed => Main is null && Repeat is not null;

    public bool MarkInDoubt => new[] { Main, Repeat }.OfType<FigureSpan>().Any(span => span.Figures.Any(figure => figure.MarkInDoubt));

    public static FigureCell Blank { get; } = new(CellSort.Blank, "");

    /// <summary>Tight or loose, where the cell is that word alone ("Press" under a figure).</summary>
    public FitSense SenseWord => Sort == CellSort.Words ? FigureCellReader.SenseOf(Text.Trim('(', ')', '.', ' ')) : FitSense.Unsaid;
}

/// <summary>Takes one cell apart.</summary>
internal static class FigureCellReader
{
    private static readonly HashSet<string> Absent = new(StringComparer.OrdinalIgnoreCase)
        { "n/a", "na", "n.a.", "n. a.", "not applicable", "not given", "not stated", "not specified", "...", "....", ".....", "…", "*", "x" };

    private static readonly HashSet<string> NilWords = new(StringComparer.OrdinalIgnoreCase) { "nil", "nil.", "none", "no wear" };

    private static readonly HashSet<string> DittoWords = new(StringComparer.OrdinalIgnoreCase) { "do", "do.", "ditto", ",,", "''", "as above", "same", "same as above", "-do-", "- do -" };

    private static readonly HashSet<string> PlainWords = new(StringComparer.OrdinalIgnoreCase)
    {
        "max", "min", "maximum", "minimum", "total", "wear", "per", "over", "under", "dia", "diameter", "approx", "approximately", "at", "each", "side", "nominal", "nom", "ref", "for", "on",
        "when", "by", "with", "a", "the", "of", "from", "to", "and", "or", "fitted", "new", "worn", "std", "standard", "free", "cold", "hot", "below", "above", "less", "more", "times", "bore",
        "radius", "long", "wide", "thick", "deep", "measured", "selective", "select", "either", "all", "round", "fit", "clearance", "interference", "tight", "loose", "press", "push", "off",
    };

    public static FigureCell Read(string text, DecimalMark mark)
    {
        if (text.Length == 0)
            return FigureCell.Blank;
        if (Absent.Contains(text))
            return new FigureCell(CellSort.Absent, text);
        if (NilWords.Contains(text))
            return new FigureCell(CellSort.Nil, text);
        if (DittoWords.Contains(text))
            return new FigureCell(CellSort.Ditto, text);
        if (text[0] is '=' or '@')
            return Doubtful(text, "It looks like a spreadsheet's formula, not a figure.");
        var tokens = FigureLexer.Scan(text, mark);
        if (tokens is [{ Kind: FigureTokenKind.NilDashes }])
            return new FigureCell(CellSort.Absent, text);
        if (tokens is [{ Kind: FigureTokenKind.Ditto }])
            return new FigureCell(CellSort.Ditto, text);
        if (tokens.All(token => token.Kind != FigureTokenKind.Number) || IsReference(tokens))
            return new FigureCell(text.Contains('?') ? CellSort.Doubtful : CellSort.Words, text) { Doubt = text.Contains('?') ? "It is marked as doubtful." : "" };
        if (tokens.Any(token => token.Form == FigureForm.Broken))
            return Doubtful(text, "No number can be written so.");
        if (text.Contains('?'))
            return Doubtful(text, "It is marked as doubtful.");
        if (LettersAmongDigits(tokens))
            return Doubtful(text, "Letters stand among the digits: O for 0, l for 1, or a lost blank.");
        return new Parts(text, tokens).Read();
    }

    public static FitSense SenseOf(string word) => word.ToLowerInvariant() switch
    {
        "press" or "tight" or "interference" or "t" or "int" or "press fit" or "shrink" => FitSense.Tight,
        "loose" or "clear" or "clearance" or "l" or "slack" => FitSense.Loose,
        _ => FitSense.Unsaid,
    };

    public static bool IsPlainWord(string word) => PlainWords.Contains(word);

    /// <summary>"0.OO45", "2.4l90", ".003l": a capital L may say loose, a small one at a digit rather is a 1.</summary>
    private static bool LettersAmongDigits(IReadOnlyList<FigureToken> tokens)
    {
        for (var at = 0; at + 1 < tokens.Count; at++)
        {
            var next = tokens[at + 1];
            if (tokens[at].Kind != FigureTokenKind.Number || next.Start != tokens[at].End)
                continue;
            if (next.Kind == FigureTokenKind.Word && next.Text.Any(char.IsDigit) || next is { Kind: FigureTokenKind.FitLetter, Text: "l" or "t" })
                return true;
            if (next.Text == "." && at + 2 < tokens.Count && tokens[at + 2].Start == next.End && tokens[at + 2].Kind == FigureTokenKind.Word)
                return true;
        }

        return false;
    }

    private static FigureCell Doubtful(string text, string why) => new(CellSort.Doubtful, text) { Doubt = why };

    /// <summary>"see Figure 9-30", "refer to item 4": numbers that are no figures.</summary>
    private static bool IsReference(IReadOnlyList<FigureToken> tokens) =>
        tokens.FirstOrDefault(token => token.Kind == FigureTokenKind.Word)?.Text.ToLowerInvariant() is "see" or "refer" or "fig" or "figure" or "item" or "page" or "para" or "table" or "note"
        || tokens.Any(token => token.Kind == FigureTokenKind.Word && token.Text.Equals("see", StringComparison.OrdinalIgnoreCase));

    /// <summary>A figure or range found among the tokens.</summary>
    private sealed record Group(FigureSpan Span, int First, int Last, bool Bracketed, bool Deviations);

    private sealed class Parts(string text, IReadOnlyList<FigureToken> tokens)
    {
        private int at;

        public FigureCell Read()
        {
            var groups = Groups();
            var outer = groups.Where(group => !group.Bracketed).ToList();
            var inner = groups.Where(group => group.Bracketed).ToList();
            outer.RemoveAll(IsTemperature);
            inner.RemoveAll(IsTemperature);
            while (outer.Count > 1 && IsLabel(outer[0]))
                outer.RemoveAt(0);
            if (outer.Count == 0 && inner.Count == 1)
                return new FigureCell(CellSort.Figures, text) { Repeat = inner[0].Span };
            if (outer.Count == 2 && inner.Count == 0 && OtherUnit(outer[0].Span, outer[1].Span))
            {
                inner.Add(outer[1]);
                outer.RemoveAt(1);
            }

            if (outer.Count == 2 && inner.Count == 0 && TwoEnds(outer[0], outer[1]) is { } both)
            {
                outer.Clear();
                outer.Add(both);
            }

            if (outer.Count != 1 || inner.Count > 1)
                return Doubtful(text, outer.Count == 0 ? "No figure could be made out." : "There are more figures than one limit has.");
            var main = outer[0];
            var label = text[..tokens[main.First].Start].Trim();
            var tailStart = tokens[main.Last].End;
            var tail = WithoutBrackets(text[tailStart..]).Trim();
            if (main.Span.First.Units.Any(unit => unit.Kind == QuantityKind.Number))
                tail = $"% {tail}";
            var (end, shortLabel) = label.AsSpan().IndexOfAny('<', '≤') >= 0 ? (LimitEnd.Max, label.Trim('<', '≤', '=', ' '))
                : label.AsSpan().IndexOfAny('>', '≥') >= 0 ? (LimitEnd.Min, label.Trim('>', '≥', '=', ' '))
                : EndIn(label);
            if (end == LimitEnd.Both)
                (end, tail) = EndIn(tail);
            var cell = new FigureCell(CellSort.Figures, text) { Label = shortLabel, Tail = tail, Main = main.Span, Repeat = inner.Count == 1 ? inner[0].Span : null, End = end };
            if (RuleWords.Any(tail) || RuleWords.Any(label))
                return cell with { Sort = CellSort.Rule };
            if (main.Span.Figures.Any(figure => figure.PointLost))
                return Doubtful(text, "It begins with noughts and has no decimal point.");
            if (main.Span is { Second: { } second } && !main.Span.IsWhole && second.Decimals == 0 && !second.IsFraction && second.Number.Sign != 0 && main.Span.First.Decimals > 0)
                return Doubtful(text, "The second figure of the range has no decimal point: a short form, or a lost point.");
            var next = main.Last + 1 < tokens.Count ? tokens[main.Last + 1] : null;
            if (main.Span.IsBare && next is { Kind: FigureTokenKind.Word } && !IsPlainWord(next.Text) && next.Units.Count == 0)
                cell = cell with { UnknownUnit = next.Text };
            return cell;
        }

        private List<Group> Groups()
        {
            var groups = new List<Group>();
            var depth = 0;
            for (at = 0; at < tokens.Count;)
            {
                var token = tokens[at];
                if (token.Kind == FigureTokenKind.Open)
                {
                    depth++;
                    at++;
                }
                else if (token.Kind == FigureTokenKind.Close)
                {
                    // A closing bracket without its opening one: what stands before it was in brackets.
                    if (depth == 0 && groups.Count > 0)
                        groups[^1] = groups[^1] with { Bracketed = true };
                    depth = Math.Max(0, depth - 1);
                    at++;
                }
                else if (TryGroup(depth > 0) is { } group)
                {
                    groups.Add(group);
                }
                else
                {
                    at++;
                }
            }

            return groups;
        }

        private Group? TryGroup(bool bracketed)
        {
            var start = at;
            if (TryFigure() is not { } first)
            {
                at = start;
                return null;
            }

            var last = at - 1;
            var afterFirst = at;
            if (at < tokens.Count && tokens[at] is { Kind: FigureTokenKind.Sign } && first.Number.Sign > 0 && TryDeviations(first) is { } toleranced)
                return new Group(toleranced, start, at - 1, bracketed, true);
            if (TryJoin(out var stroke) && TryFigure() is { } second)
            {
                if (stroke && !first.Units.IsEmpty && !second.Units.IsEmpty && OtherUnit(new(first, null), new(second, null)))
                {
                    at = afterFirst;
                    return new Group(new FigureSpan(first, null), start, last, bracketed, false);
                }

                return new Group(InOrder(Shared(first, second), stroke), start, at - 1, bracketed, false);
            }

            at = afterFirst;
            return IsNil(tokens[start]) ? null : new Group(new FigureSpan(first, null), start, last, bracketed, false);
        }

        /// <summary>On drawings the greater size stands over the stroke as often as the lesser: 2.0000/1.9995 is one size between two limits.</summary>
        private static FigureSpan InOrder(FigureSpan span, bool stroke)
        {
            var first = span.First.Number.ToDouble();
            var second = span.Second!.Number.ToDouble();
            return stroke && first > second && second > 0.99 * first && span.First.Units.SequenceEqual(span.Second.Units) ? new FigureSpan(span.Second, span.First) : span;
        }

        /// <summary>A unit printed once at a range is that of both ends.</summary>
        private static FigureSpan Shared(Figure first, Figure second) => new(
            first with
            {
                Units = first.Units.IsEmpty ? second.Units : first.Units,
                Sense = first.Sense == FitSense.Unsaid && second.SenseInWord ? second.Sense : first.Sense,
            },
            second.Units.IsEmpty ? second with { Units = first.Units } : second);

        private FigureSpan? TryDeviations(Figure nominal)
        {
            var start = at;
            var both = tokens[at].Text == "±";
            at++;
            if (TryFigure() is not { } upper)
            {
                at = start;
                return null;
            }

            var units = nominal.Units.IsEmpty ? upper.Units : nominal.Units;
            Exact lower;
            if (both)
            {
                lower = -upper.Number;
            }
            else
            {
                var afterUpper = at;
                while (at < tokens.Count && tokens[at].Kind is FigureTokenKind.Slash or FigureTokenKind.Comma)
                    at++;
                if (at < tokens.Count && tokens[at].Kind == FigureTokenKind.Dash && TryFigure() is { } below)
                {
                    lower = below.Number;
                    units = units.IsEmpty ? below.Units : units;
                }
                else
                {
                    at = start;
                    _ = afterUpper;
                    return null;
                }
            }

            return new FigureSpan(
                nominal with { Number = nominal.Number + lower, Units = units, Written = upper.Written },
                nominal with { Number = nominal.Number + upper.Number, Units = units, Written = upper.Written });
        }

        /// <summary>"to", a dash or a stroke between two figures.</summary>
        private bool TryJoin(out bool stroke)
        {
            stroke = false;
            if (at >= tokens.Count)
                return false;
            var token = tokens[at];
            stroke = token.Kind == FigureTokenKind.Slash;
            if (token.Kind is FigureTokenKind.Dash or FigureTokenKind.Slash || (token.Kind == FigureTokenKind.Word && token.Text.Equals("to", StringComparison.OrdinalIgnoreCase)))
            {
                at++;
                return true;
            }

            return false;
        }

        private Figure? TryFigure()
        {
            var sign = 0;
            if (at + 1 < tokens.Count && tokens[at].Kind is FigureTokenKind.Dash or FigureTokenKind.Sign && tokens[at].Text is "-" or "+" or "−" or "–" && tokens[at + 1].Kind == FigureTokenKind.Number)
            {
                sign = tokens[at].Text == "+" ? 1 : -1;
                at++;
            }

            if (at >= tokens.Count)
                return null;
            if (sign == 0 && IsNil(tokens[at]))
            {
                at++;
                return new Figure(default, "0", [], 0, FitSense.Unsaid);
            }

            if (tokens[at] is not { Kind: FigureTokenKind.Number, Values.Count: > 0 } token)
                return null;
            at++;
            var value = token.Values[0];
            var units = ImmutableArray<TradeUnit>.Empty;
            var sense = FitSense.Unsaid;
            var inWord = false;
            if (at < tokens.Count && tokens[at].Kind == FigureTokenKind.Unit)
                units = [.. tokens[at++].Units];
            if (at < tokens.Count && tokens[at].Kind == FigureTokenKind.FitLetter)
                sense = SenseOf(tokens[at++].Text);
            else if (at < tokens.Count && tokens[at].Kind == FigureTokenKind.Word && SenseOf(tokens[at].Text) is not FitSense.Unsaid and var said)
                (sense, inWord, at) = (said, true, at + 1);
            return new Figure(sign < 0 ? -value.Value : value.Value, value.Written, units, sign, sense) { MarkInDoubt = token.Form == FigureForm.Doubtful, SenseInWord = inWord };
        }

        private static bool IsNil(FigureToken token) => token.Kind == FigureTokenKind.Word && token.Text.ToLowerInvariant() is "nil" or "zero" or "nought";

        private bool IsTemperature(Group group) =>
            group.Span.Figures.Any(figure => figure.Units.Any(unit => unit.Kind == QuantityKind.Temperature) && figure.Units.All(unit => unit.Kind is QuantityKind.Temperature or QuantityKind.TemperatureDifference or QuantityKind.Angle))
            && group.First > 0;

        /// <summary>Two figures one below the other in a cell, to the same place: the ends of a range.</summary>
        private static Group? TwoEnds(Group first, Group second)
        {
            if (second.First != first.Last + 1 || first.Span.Second is not null || second.Span.Second is not null || first.Span.First.Decimals == 0 || first.Span.First.Decimals != second.Span.First.Decimals)
                return null;
            var (a, b) = (first.Span.First.Number.ToDouble(), second.Span.First.Number.ToDouble());
            return a > 0 && b >= a && b < 4 * a ? first with { Span = Shared(first.Span.First, second.Span.First), Last = second.Last } : null;
        }

        /// <summary>A small whole number that counts parts ("Bearing 1-3", "a. Ring 2", "1.").</summary>
        private bool IsLabel(Group group) =>
            group.Span is { IsBare: true, IsWhole: true } && group.Span.Figures.All(figure => figure.Written.Length <= 2 && figure.Number.Sign > 0)
            && ((group.First > 0 && tokens[group.First - 1].Kind is FigureTokenKind.Word or FigureTokenKind.Other or FigureTokenKind.Comma)
                || (group.Last + 1 < tokens.Count && tokens[group.Last + 1].Text is "." or ")" or ":"));

        private static bool OtherUnit(FigureSpan a, FigureSpan b) =>
            !a.First.Units.IsEmpty && !b.First.Units.IsEmpty && a.First.Units[0].Kind == b.First.Units[0].Kind && !a.First.Units.Any(b.First.Units.Contains);

        private static (LimitEnd End, string Words) EndIn(string words)
        {
            foreach (var (word, end) in Ends)
            {
                var found = words.IndexOf(word, StringComparison.OrdinalIgnoreCase);
                if (found < 0 || (found > 0 && char.IsLetter(words[found - 1])) || (found + word.Length < words.Length && char.IsLetter(words[found + word.Length])))
                    continue;
                var rest = $"{words[..found]} {words[(found + word.Length)..].TrimStart('.')}".Trim();
                return (end, rest);
            }

            return (LimitEnd.Both, words);
        }

        private static readonly (string Word, LimitEnd End)[] Ends =
        [
            ("not more than", LimitEnd.Max), ("not over", LimitEnd.Max), ("not to exceed", LimitEnd.Max), ("up to", LimitEnd.Max), ("maximum", LimitEnd.Max), ("max", LimitEnd.Max),
            ("less than", LimitEnd.Max), ("below", LimitEnd.Max), ("not less than", LimitEnd.Min), ("not under", LimitEnd.Min), ("at least", LimitEnd.Min), ("minimum", LimitEnd.Min), ("min", LimitEnd.Min),
        ];

        private static string WithoutBrackets(string text)
        {
            var depth = 0;
            var kept = new System.Text.StringBuilder();
            foreach (var c in text)
            {
                if (c is '(' or '[')
                    depth++;
                else if (c is ')' or ']')
                    depth = Math.Max(0, depth - 1);
                else if (depth == 0)
                    kept.Append(c);
            }

            return kept.ToString();
        }
    }
}
