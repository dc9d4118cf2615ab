using Thoubook.Record.Quantities;

namespace Thoubook.Record.Tests.Quantities;

/// <summary>Random texts for the reader and what must hold for each: shared by the tests (a second's worth) and <c>tools/fuzz</c> (as long as wished).</summary>
public static class QuantityFuzz
{
    private const string Figures = "0123456789.,-/ \"'T()°e";

    /// <summary>A text of the corpus with one to three changes: characters lost, put in, exchanged, another text put into it.</summary>
    public static string Mutate(IReadOnlyList<CorpusString> corpus, Random random)
    {
        var chars = Pick().ToList();
        for (var i = random.Next(1, 4); i > 0; i--)
        {
            var at = random.Next(chars.Count + 1);
            switch (random.Next(6))
            {
                case 0 when at < chars.Count:
                    chars.RemoveAt(at);
                    break;
                case 1:
                    chars.Insert(at, (char)random.Next(0x20, 0x180));
                    break;
                case 2:
                    chars.Insert(at, Figures[random.Next(Figures.Length)]);
                    break;
                case 3:
                    chars.InsertRange(at, Pick());
                    break;
                case 4 when at < chars.Count:
                    chars[at] = Figures[random.Next(Figures.Length)];
                    break;
                default:
                    if (at < chars.Count)
                        chars[at] = (char)random.Next(0x10000);
                    break;
            }
        }

        return new string([.. chars]);

        string Pick() => corpus[random.Next(corpus.Count)].Text;
    }

    /// <summary>What is wrong with how a text is read; null where all holds.</summary>
    public static string? Fault(string text, ReadingContext context)
    {
        if (FaultOfScan(text) is { } scan)
            return scan;
        if (QuantityReader.Read(text, context).IsOk(out var quantity, out var problems))
        {
            return !double.IsFinite(quantity.Si) ? "not finite"
                : quantity.Text != text ? "the text as typed is lost"
                : context.Kind is { } kind && quantity.Kind != kind || quantity.Unit.Kind != quantity.Kind ? "another kind than was wanted"
                : quantity.Understood.Length == 0 ? "nothing to read back"
                : null;
        }

        if (problems is not [var problem])
            return $"{problems.Count} problems at once";
        var codes = problem.Meanings.Select(meaning => meaning.Code).ToArray();
        return problem.Code.Length == 0 || problem.Allowed.Length == 0 || problem.DoThis.Length == 0 ? "a refusal that says too little"
            : codes.Distinct(StringComparer.Ordinal).Count() != codes.Length ? "a code offered twice"
            : problem.IsQuestion && problem.Code != codes[0] ? "a question whose code is not that of its first meaning"
            : null;
    }

    /// <summary>Follows every answer to every question to its end: no code is asked twice on the way, and a meaning that settles it says what is then understood.</summary>
    public static string? FaultOfAnswers(string text, ReadingContext context) => FaultOfAnswers(text, context, [], 0);

    private static string? FaultOfAnswers(string text, ReadingContext context, HashSet<string> confirmed, int asked)
    {
        if (QuantityReader.Read(text, context with { Confirmed = confirmed }).IsOk(out _, out var problems) || !problems[0].IsQuestion)
            return null;
        if (asked == 4)
            return $"asked a fifth time: {problems[0].Code} after {string.Join(' ', confirmed)}";
        foreach (var meaning in problems[0].Meanings)
        {
            if (confirmed.Contains(meaning.Code))
                return $"{meaning.Code} is asked again";
            HashSet<string> more = [.. confirmed, meaning.Code];
            if (QuantityReader.Read(text, context with { Confirmed = more }).IsOk(out var quantity, out _) && quantity.Understood != meaning.Text)
                return $"{meaning.Code} promised {meaning.Text} and gave {quantity.Understood}";
            if (FaultOfAnswers(text, context, more, asked + 1) is { } deeper)
                return deeper;
        }

        return null;
    }

    private static string? FaultOfScan(string text)
    {
        var end = 0;
        foreach (var token in FigureLexer.Scan(text))
        {
            if (token.Start < end || token.Length == 0 || text.Substring(token.Start, token.Length) != token.Text || !string.IsNullOrWhiteSpace(text[end..token.Start]))
                return $"the token {token.Text} at {token.Start} does not follow what ends at {end}";
            end = token.End;
        }

        return string.IsNullOrWhiteSpace(text[end..]) ? null : "characters after the last token";
    }
}
