using System.Globalization;
using System.Text;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Measures;

/// <summary>
/// A gap as it is written: <c>body.depth - driver.width + 2 * joint.thickness</c>, a sum of <c>[number *] name</c>. Plus and minus stand between
/// spaces, so that hyphens in names are safe. A name is looked up from the fit's own part upwards and the first found is meant; one that starts
/// with a stroke (<c>/crank.throw</c>) is looked up from the top only.
/// </summary>
public static class GapText
{
    private const string Shape = "A gap is a sum of terms, such as body.depth - driver.width + 2 * joint.thickness: plus and minus between spaces.";

    /// <summary>The terms of a fit's gap, with every name resolved among the record's dimensions.</summary>
    public static Outcome<IReadOnlyList<GapTerm>> Read(string text, Fit fit, EngineRecord record)
    {
        var problems = new List<Problem>();
        var terms = new List<GapTerm>();
        foreach (var (sign, term) in TermsOf(text, problems))
        {
            var (coefficient, name) = Split(term, problems);
            if (name is null || Resolve(name, fit, record, problems) is not { } figure)
                continue;
            if (terms.Any(t => t.Of == figure))
                problems.Add(new Problem("gap-repeated", "gap", name, $"Each dimension stands once in a gap; {figure} is there already.", $"Write it once, with its number: 2 * {name}."));
            else
                terms.Add(new GapTerm(sign * coefficient, figure));
        }

        if (terms.Count == 0 && problems.Count == 0)
            problems.Add(new Problem("gap-empty", "gap", NameText.Quote(text), Shape, "Write the terms, or leave the gap out where the fit can only be measured as such."));
        return problems.Count > 0 ? new Outcome<IReadOnlyList<GapTerm>>.Refused(problems) : terms;
    }

    /// <summary>The gap of a fit in the shortest names that are read back as the same.</summary>
    public static string Write(Fit fit, EngineRecord record)
    {
        var text = new StringBuilder();
        foreach (var term in fit.Gap)
        {
            if (text.Length > 0)
                text.Append(term.Coefficient < 0 ? " - " : " + ");
            else if (term.Coefficient < 0)
                text.Append("- ");
            var size = Math.Abs(term.Coefficient);
            if (size != 1)
                text.Append(size.ToString("R", CultureInfo.InvariantCulture)).Append(" * ");
            text.Append(FigureNames.From(fit.Name.Part, term.Of, record));
        }

        return text.ToString();
    }

    private static List<(int Sign, List<string> Term)> TermsOf(string text, List<Problem> problems)
    {
        var words = text.Replace("*", " * ", StringComparison.Ordinal).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        var terms = new List<(int Sign, List<string> Term)>();
        var sign = 1;
        var term = new List<string>();
        foreach (var word in words)
        {
            if (word is not ("+" or "-" or "\u2212"))
            {
                term.Add(word);
                continue;
            }

            if (term.Count > 0)
                terms.Add((sign, term));
            else if (terms.Count > 0)
                problems.Add(new Problem("gap-shape", "gap", $"two signs together in {NameText.Quote(text)}", Shape, "Leave one of them out."));
            sign = word == "+" ? 1 : -1;
            term = [];
        }

        if (term.Count > 0)
            terms.Add((sign, term));
        else if (words.Length > 0)
            problems.Add(new Problem("gap-shape", "gap", $"a sign with nothing after it in {NameText.Quote(text)}", Shape, "Write the term that follows, or leave the sign out."));
        return terms;
    }

    private static (double Coefficient, string? Name) Split(List<string> term, List<Problem> problems)
    {
        switch (term)
        {
            case [var name]:
                return (1, name);
            case [var number, "*", var name]:
                if (!QuantityReader.Read(number, new ReadingContext { Kind = QuantityKind.Number }).IsOk(out var coefficient, out _))
                    problems.Add(new Problem("gap-number", "gap", NameText.Quote(number), "Before the * stands a plain number, such as 2 or 0.5.", "Write the number so."));
                else if (coefficient.Si <= 0)
                    problems.Add(new Problem("gap-number", "gap", NameText.Quote(number), "The number before the * is above 0.", "Put the sign between spaces before the term; leave out a term that counts for nothing."));
                else
                    return (coefficient.Si, name);
                return (0, null);
            default:
                problems.Add(new Problem("gap-shape", "gap", NameText.Quote(string.Join(' ', term)), Shape, "Put + or - between two names, and * between a number and its name."));
                return (0, null);
        }
    }

    private static FigureName? Resolve(string name, Fit fit, EngineRecord record, List<Problem> problems)
    {
        if (FigureNames.Find(name, fit.Name.Part, record) is not { } figure)
        {
            if (name.Length > 1 && name[0] is '+' or '-' or '\u2212')
            {
                problems.Add(new Problem("gap-shape", "gap", NameText.Quote(name), Shape, $"Put a space after the sign: {name[0]} {name[1..]}."));
                return null;
            }

            var nearest = Nearest.Of(name, record.Dimensions.Select(d => FigureNames.From(fit.Name.Part, d.Name, record)))
                ?? Nearest.Of(name, record.Dimensions.Select(d => d.Name.ToString()));
            problems.Add(new Problem(
                "gap-unknown",
                "gap",
                NameText.Quote(name),
                $"Each name in a gap is a dimension of this engine, looked up from {fit.Name.Part} upwards.",
                nearest is null ? "Add the dimension, or correct the name." : $"Did you mean {nearest}?"));
            return null;
        }

        if (figure is Fit)
        {
            problems.Add(new Problem("gap-fit", "gap", NameText.Quote(name), $"A gap is made of dimensions; {figure.Name} is a fit.", "Write the dimensions of that fit instead."));
            return null;
        }

        if (figure.Kind != fit.Kind)
        {
            problems.Add(new Problem("gap-kind", "gap", $"{name}, which is of kind {figure.Kind.Word()}", $"Every term of a gap is of the fit's own kind, {fit.Kind.Word()}.", "Correct the kind of the dimension or of the fit."));
            return null;
        }

        return figure.Name;
    }
}
