using System.Collections.Frozen;
using Thoubook.Cli.Answers;
using Thoubook.Record;

namespace Thoubook.Cli.Speaking;

/// <summary>Saying no, or asking: in words to a person, and as JSON too where JSON was asked for.</summary>
internal static class Refusals
{
    /// <summary>Nothing that a person wrote is wrong: the disc, or another program.</summary>
    private static readonly FrozenSet<string> FaultsOfTheStore = ["workshop-busy", "workshop-read-only", "disk-full", "workshop-not-opened", "workshop-damaged"];

    public static ExitStatus Refuse(this Terminal terminal, Request request, IReadOnlyList<Problem> problems)
    {
        if (request.Has(Option.Json))
        {
            if (problems.FirstOrDefault(p => p.IsQuestion) is { } question && problems.All(p => p.IsQuestion))
                terminal.Json(new AskAnswer([.. question.Meanings.Select(m => m.Text)], question.Code, [.. question.Meanings.Select(m => m.Code)], Sentence(question)), AnswerJson.Shapes.AskAnswer);
            else
                terminal.Json(new RefusedAnswer(string.Join(" ", problems.Select(Sentence)), [.. problems.Select(ProblemAnswer.Of)]), AnswerJson.Shapes.RefusedAnswer);
        }

        return terminal.Refuse(problems);
    }

    public static ExitStatus Refuse(this Terminal terminal, IReadOnlyList<Problem> problems)
    {
        foreach (var problem in problems)
        {
            terminal.Error.WriteLine($"thoubook: {Sentence(problem)}");
            foreach (var meaning in problem.Meanings)
                terminal.Error.WriteLine($"    --confirm {meaning.Code}: {meaning.Text}");
        }

        return problems.Any(p => FaultsOfTheStore.Contains(p.Code)) ? ExitStatus.Broke : ExitStatus.BadInput;
    }

    /// <summary>A problem in a sentence or two, its meanings left out.</summary>
    public static string Sentence(Problem problem) => (problem with { Meanings = [] }).ToString();
}
