using System.Globalization;
using System.Text;

namespace Thoubook.Record.Quantities;

/// <summary>Says why a text is not one measured quantity: what was found, what would be right, what to do.</summary>
internal static class QuantityRefusals
{
    private const int LongestShown = 60;

    public static Problem Of(string code, string text, string allowed, string doThis) => new(code, "", Show(text), allowed, doThis);

    /// <summary>Refuses what can't be looked at character by character; null where it can.</summary>
    public static Problem? OfCharacters(string text)
    {
        if (text.Length > QuantityReader.LongestText)
            return Of("too-long", text, $"A quantity takes at most {QuantityReader.LongestText} characters; this has {text.Length}.", "Write one figure with its unit.");
        var trimmed = text.AsSpan().Trim();
        if (trimmed.Length == 0)
            return Of("empty", text, "A figure with its unit is wanted.", "Write one, such as 0.0025 in or 2.5 thou.");
        foreach (var c in trimmed)
        {
            if (char.GetUnicodeCategory(c) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.Surrogate or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator && c != '\t')
                return Of("hidden-character", text, $"A character that can't be seen or read stands here (U+{(int)c:X4}).", "Type the figure again by hand.");
            if (char.IsDigit(c) && !FigureMarks.IsDigit(c))
                return Of("foreign-digits", text, "Figures are read only in the digits 0 to 9.", "Type the figure with those digits.");
        }

        return null;
    }

    public static Problem OfBroken(string text, FigureToken number) => number.Text.Contains("..", StringComparison.Ordinal) || number.Text.Count(c => c == '.') > 1 && !number.Text.Contains(',', StringComparison.Ordinal)
        ? Of("two-points", text, $"A number has one decimal point; {number.Text} has more.", "Look at the figure again and write it with one point.")
        : Of("number-broken", text, $"The points and commas of {number.Text} fit no way of writing a number.", "Write it with one decimal point and no marks between thousands.");

    public static Problem OfWrongKind(string text, FigureToken unit, QuantityKind? kind)
    {
        if (unit.Kind == FigureTokenKind.FitLetter)
            return Of("tight-loose-not-here", text, "Tight and loose (T, L) belong to fits; this is not a fit.", "Write the figure without them.");
        if (kind is not { } wanted)
            return Of("unit-unknown", text, $"{unit.Text} says too little here.", "Write the unit in full.");
        var found = unit.Units[0].Kind;
        return Of("unit-wrong-kind", text, $"{unit.Text} is a unit of {found.Word()}; a unit of {wanted.Word()} is wanted.", $"Write it in {Wanted(wanted)}.");
    }

    /// <summary>Refuses a text whose tokens are not those of one quantity.</summary>
    public static Problem OfShape(string text, IReadOnlyList<FigureToken> tokens, WrittenQuantity written, FigureToken? leftOver, QuantityKind? kind)
    {
        var first = tokens[0];
        if (first.Kind == FigureTokenKind.NilDashes && tokens.Count == 1 || tokens.Count <= 3 && IsNil(text))
            return Of("nil", text, "Nil, n/a and dashes are no figure: they may say nothing given, no wear permitted or not a wear item.", "Write 0 with its unit if nought was measured; else leave it empty.");
        if (first.Kind == FigureTokenKind.Ditto && tokens.Count == 1)
            return Of("ditto", text, "\"The same as above\" is no figure here.", "Write the figure out.");
        if (tokens.Any(token => token.Kind == FigureTokenKind.Word && token.Text.ToUpperInvariant() is "NAN" or "INF" or "INFINITY" or "INFTY") || text.Contains('∞', StringComparison.Ordinal))
            return Of("not-finite", text, "A measured quantity is a finite number.", "Write the figure that was read.");
        if (written.Parts.Count == 0)
        {
            return first.Kind is FigureTokenKind.Dash or FigureTokenKind.Sign && tokens.Count > 1 && tokens[1].Kind == FigureTokenKind.Number
                ? Of("sign-apart", text, "A plus or minus stands against its figure, with no blank between.", "Write -0.0005 in.")
                : Of("no-figure", text, "No figure stands where one is wanted.", "Begin with the figure: 0.0025 in.");
        }

        var after = leftOver ?? first;
        var before = written.Parts[^1];
        return after switch
        {
            { Kind: FigureTokenKind.Open, Start: 0 } => Of("brackets-open", text, "The bracket is not closed.", "Close it or leave it out."),
            { Text: "." or "," } when after.Start == before.Number.End && !tokens.Any(token => token.Start > after.Start && token.Kind == FigureTokenKind.Number) => Of("number-unfinished", text, $"A number does not end in {(after.Text == "." ? "a point" : "a comma")}.", "Write the rest of the figure, or leave the mark out."),
            { Kind: FigureTokenKind.Word } when IsAbsolute(after.Text) || before.Unit is not null && IsAbsolute(before.Unit.Text + after.Text) => Of("absolute-pressure", text, "Pressures are gauge pressures here.", "Write the gauge pressure: absolute less that of the air."),
            { Kind: FigureTokenKind.Number or FigureTokenKind.Dash or FigureTokenKind.Slash or FigureTokenKind.Comma or FigureTokenKind.Sign } or { Kind: FigureTokenKind.Word, Text: "to" }
                => Of("two-figures", text, "One quantity is wanted here, and more than one figure is written.", "Write one figure with one unit."),
            { Kind: FigureTokenKind.Word } when before.Unit is null && after.Spelled is null => UnknownUnit(text, after, kind),
            _ => Of("left-over", text, $"Not understood: {Show(text[after.Start..])}.", "Write the figure and its unit, and nothing else."),
        };
    }

    /// <summary>The text for a message: short, and with what can't be seen spelled out.</summary>
    public static string Show(string text)
    {
        var shown = new StringBuilder();
        foreach (var c in text.Length > LongestShown ? text.AsSpan(0, LongestShown) : text)
        {
            if (char.GetUnicodeCategory(c) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.Surrogate or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator)
                shown.Append(CultureInfo.InvariantCulture, $"<U+{(int)c:X4}>");
            else
                shown.Append(c);
        }

        return text.Length == 0 ? "nothing" : text.Length > LongestShown ? $"\"{shown} …\"" : $"\"{shown}\"";
    }

    private static Problem UnknownUnit(string text, FigureToken word, QuantityKind? kind)
    {
        var rest = Show(text[word.Start..].Trim());
        var near = TradeUnit.All.Where(unit => kind is null || unit.Kind == kind)
            .SelectMany(unit => unit.Spellings.Select(spelling => (unit, spelling)))
            .Where(pair => word.Length > 1 && pair.spelling.Length > 1 && IsOneSlipAway(word.Text, pair.spelling))
            .Select(pair => pair.spelling).FirstOrDefault();
        return Of("unit-unknown", text, $"{rest} is no unit that is known here.", near is null ? $"Write the unit as {Wanted(kind)}." : $"Write {near} if that is meant.");
    }

    private static string Wanted(QuantityKind? kind)
    {
        var units = (kind is { } known ? TradeUnit.Usual(known) : TradeUnit.Usual(QuantityKind.Length)).Select(unit => unit.Symbol).Where(symbol => symbol.Length > 0).ToArray();
        return units.Length switch
        {
            0 => "a plain number",
            1 => units[0],
            _ => string.Join(", ", units[..^1]) + " or " + units[^1],
        };
    }

    private static bool IsNil(string text) => text.Trim().TrimEnd('.').ToUpperInvariant() is "NIL" or "N/A" or "NA" or "NONE" or "N.A";

    private static bool IsAbsolute(string word) => word.ToUpperInvariant() is "PSIA" or "BARA" or "ABS" or "ABSOLUTE" or "PSIABS" or "BARABS" or "KPAA" or "ATA" or "PSIABSOLUTE" or "BARABSOLUTE";

    /// <summary>Whether one letter too many, too few, wrong or exchanged with its neighbour parts two words.</summary>
    private static bool IsOneSlipAway(string written, string spelling)
    {
        var same = 0;
        while (same < written.Length && same < spelling.Length && written[same] == spelling[same])
            same++;
        var a = written.AsSpan(same);
        var b = spelling.AsSpan(same);
        return (a.Length - b.Length) switch
        {
            1 => a[1..].SequenceEqual(b),
            -1 => b[1..].SequenceEqual(a),
            0 => a.Length > 0 && a[1..].SequenceEqual(b[1..]) || a.Length > 1 && a[0] == b[1] && a[1] == b[0] && a[2..].SequenceEqual(b[2..]),
            _ => false,
        };
    }
}
