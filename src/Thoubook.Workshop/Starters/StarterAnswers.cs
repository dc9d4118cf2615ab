using System.Globalization;
using Thoubook.Files.Templates;
using Thoubook.Record;

namespace Thoubook.Workshop.Starters;

/// <summary>What was answered to a starter, everything left unanswered filled in: from the engine where it has the part, else as usual.</summary>
internal sealed class StarterAnswers
{
    private const int LongestText = 120;

    private readonly IReadOnlyDictionary<string, string> _given;
    private readonly PartsThere _there;
    private readonly Dictionary<string, string> _texts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _counts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _asked = new(StringComparer.Ordinal);
    private readonly List<Problem> _problems = [];

    private StarterAnswers(EngineRecord record, IReadOnlyDictionary<string, string> given) => (_given, _there) = (given, new PartsThere(record));

    public TemplateAnswers ForTemplate => new(_texts, _counts);

    public static Outcome<StarterAnswers> Of(Starter starter, EngineRecord record, IReadOnlyDictionary<string, string> given)
    {
        var answers = new StarterAnswers(record, given);
        foreach (var question in starter.Questions)
            answers.Read(question);
        return answers._problems.Count > 0 ? new Outcome<StarterAnswers>.Refused(answers._problems) : answers;
    }

    private void Read(StarterQuestion question)
    {
        var given = _given.TryGetValue(question.Key, out var text) && !string.IsNullOrWhiteSpace(text) ? text.Trim() : null;
        if (question.IsPart)
            Parts(question, given);
        else if (question.Choices.Count > 0)
            _texts[question.Key] = Answered(question.Word(given ?? question.Usual), question.Usual);
        else if (question.Most is not null)
            Count(question, given ?? question.Usual);
        else if ((given ?? question.Usual) is { Length: <= LongestText } line && !line.Any(char.IsControl))
            _texts[question.Key] = line;
        else
            _problems.Add(new("starter-text", question.Key, "more than a line", $"A line of at most {LongestText} letters.", "Write it shorter."));
    }

    private void Count(StarterQuestion question, string text)
    {
        var count = Answered(question.Number(text), question.Fewest);
        if (question.AtMost is { } other && count > _counts[other])
            _problems.Add(new("number", question.Key, $"{count}", $"At most {_counts[other]}, as was answered to {other}.", "Correct one of the two."));
        _counts[question.Key] = count;
        _texts[question.Key] = count.ToString(CultureInfo.InvariantCulture);
    }

    private void Parts(StarterQuestion question, string? given)
    {
        var count = question.NumberedBy is { } by ? _counts.GetValueOrDefault(by, 1) : 1;
        var usual = Filled(question.Usual);
        var found = given is null ? _there.Like(usual, [.. question.Also.Select(Filled)], question.NumberedBy is null ? null : count) : [];
        if (found.Count > 1)
        {
            _problems.Add(new(
                "which-part",
                question.Key,
                $"{string.Join(" and ", found)}",
                $"One of these answers it: {question.Words}",
                $"Answer {question.Key}={found[0]}, or with another.",
                [.. found.Select(f => new Meaning($"{question.Key}={f}", f))]));
        }

        var text = given ?? (found.Count > 0 ? found[0] : usual);
        var names = text.Contains(',', StringComparison.Ordinal) ? text.Split(',').Select(t => t.Trim()).ToList() : [.. Enumerable.Range(1, count).Select(n => text.Replace("{n}", n.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal))];
        if (question.NumberedBy is null && names.Count > 1)
            _problems.Add(new("one-part", question.Key, $"\"{text}\"", "Here stands one part.", "Name one."));
        else if (names.Count != count)
            _problems.Add(new("parts-number", question.Key, $"{names.Count} parts", $"Here stand {count}, as was answered to {question.NumberedBy}.", "Name each once, with commas between, or write {n} for the number."));
        else if (names.Distinct(StringComparer.Ordinal).Count() < count)
            _problems.Add(new("part-twice", question.Key, $"\"{text}\"", $"These are {count} parts, each with its own name.", "Write {n} where the number stands, or the names with commas between."));
        for (var i = 0; i < names.Count && (question.NumberedBy is not null || i == 0); i++)
            Part(question, names[i], i + 1);
    }

    private void Part(StarterQuestion question, string name, int number)
    {
        if (!PartName.TryRead(name, out var part, out var problem))
            _problems.Add(problem with { Field = question.Key });
        else if (_asked.TryGetValue(part.Path, out var other) && other != question.Key && other != question.MayBe)
            _problems.Add(new("part-twice", question.Key, part.Path, $"It is answered to {other} already.", "Name another part."));
        else
            _asked[part.Path] = question.Key;
        _texts[question.NumberedBy is null ? question.Key : $"{question.Key}#{number}"] = name;
    }

    private string Filled(string text) => _texts.Aggregate(text, (filled, answer) => filled.Replace($"{{{answer.Key}}}", answer.Value, StringComparison.Ordinal));

    private T Answered<T>(Outcome<T> outcome, T otherwise)
    {
        if (outcome.IsOk(out var value, out var problems))
            return value;
        _problems.AddRange(problems);
        return otherwise;
    }
}
