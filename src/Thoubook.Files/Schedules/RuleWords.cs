using System.Text.RegularExpressions;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Schedules;

/// <summary>Limits in words: so much per inch of diameter, so much over the high limit, twice what a new shaft is allowed.</summary>
internal static partial class RuleWords
{
    /// <summary>Whether the words at a figure make it a rule and not a size.</summary>
    public static bool Any(string words) =>
        words.Length > 0 && (Per().IsMatch(words) || FromLimit().IsMatch(words) || Times().IsMatch(words) || Share().IsMatch(words) || TotalWear().IsMatch(words));

    /// <summary>Whether the words of an item make its bare figure a rate ("face runout per inch of radius").</summary>
    public static bool IsRate(string description) => Per().IsMatch(description);

    /// <summary>An amount of wear and nothing else.</summary>
    public static bool IsWearAmount(FigureCell cell) => TotalWear().IsMatch(cell.Tail) && !Per().IsMatch(cell.Tail) && !FromLimit().IsMatch(cell.Tail);

    /// <summary>The rule in a cell; null where its words are not understood.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="description">The item's words: a rate may stand there, and they say what a rule is counted from.</param>
    /// <param name="bare">The unit of bare figures, null where unknown.</param>
    public static WearRule? Read(FigureCell cell, string description, TradeUnit? bare)
    {
        if (cell.Main is not { Second: null, First: var figure })
            return null;
        var words = $"{cell.Label} # {cell.Tail}";
        var from = CountedFrom(words, description);
        if (Share().Match(words) is { Success: true })
            return new WearRule((figure.Number * Exact.Decimal(1, -2)).ToDouble(), null, Per(words, cell.Label), "new");
        if (Times().Match(words) is { Success: true } times)
            return new WearRule(figure.Number.ToDouble(), null, times.Groups["what"].Value.Trim(), from);
        var unit = figure.Units.FirstOrDefault(unit => unit.Kind == QuantityKind.Length) ?? bare;
        var rate = Per().Match(words) is { Success: true } inCell ? inCell : Per().Match(description);
        if (rate.Success && unit is not null)
        {
            var perUnit = TradeUnit.Find(rate.Groups["unit"].Value, QuantityKind.Length);
            return perUnit is null ? null : new WearRule(unit.ToSi(figure.Number) / perUnit.Factor, null, rate.Groups["what"].Value.Trim(), from);
        }

        return FromLimit().IsMatch(words) && unit is not null ? new WearRule(null, unit.ToSi(figure.Number), null, from) : null;
    }

    private static string Per(string words, string label) => label.Trim(' ', '+').ToLowerInvariant() is { Length: > 0 } what ? what : words.Trim(' ', '#', '%', '+');

    private static string CountedFrom(string words, string description)
    {
        if (FromLimit().Match(words) is { Success: true } limit)
        {
            var below = limit.Groups["way"].Value.ToLowerInvariant() is "under" or "below" or "less than";
            return below ? "new_min (below)" : "new_max";
        }

        return ItemWords.Of(description).SayWear ? "new" : "zero";
    }

    [GeneratedRegex(@"\bper\s+(each\s+)?(1\s+|one\s+)?(?<unit>inch|in\.?|mm|millimet(?:re|er)|foot|ft)\b\.?\s*(\([^)]*\)\s*)?(of\s+)?(?<what>[a-z ]*?)\s*($|[-–,;(]|\bover\b|\bunder\b|\babove\b|\bbelow\b)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Per();

    [GeneratedRegex(@"\b(?<way>over|above|under|below|more than|less than)\s+(the\s+)?(new\s+)?(high|low|max\w*|min\w*|upper|lower|top|bottom|new)\s*(limit|dimension|size|figure|new|clearance)?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex FromLimit();

    [GeneratedRegex(@"#\s*(times|x)\s+(the\s+)?(allowable\s+|allowed\s+|permitted\s+)?(?<what>.*)$|^\s*(times|x)\s+\w", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Times();

    [GeneratedRegex(@"#\s*(%|per\s?cent)|^\s*(%|per\s?cent)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Share();

    [GeneratedRegex(@"\b(total\s+wear|wear\s+total|of\s+wear|wear)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex TotalWear();
}
