using Thoubook.Cli.Speaking;
using Thoubook.Workshop.Starters;

namespace Thoubook.Cli.Verbs;

/// <summary>The questions of a starter, with what is taken where one is not answered.</summary>
internal static class QuestionTable
{
    public static Table Of(IEnumerable<StarterQuestion> questions)
    {
        var table = new Table("key", "question", "answers", "left out");
        foreach (var question in questions)
            table.Add(question.Key, question.Words, Answers(question), question.Usual);
        return table;
    }

    private static string Answers(StarterQuestion question) =>
        question.Choices.Count > 0 ? string.Join(", ", question.Choices) : question.Most is { } most ? $"{question.Fewest} to {most}" : question.IsPart ? "a part" : "";
}
