using Thoubook.Record.Measures;
using Thoubook.Workshop.Starters;

namespace Thoubook.Cli.Answers;

/// <summary>A starter and what it asks.</summary>
internal sealed record StarterAnswer(string Key, string What, int Minutes, IReadOnlyList<QuestionAnswer> Questions)
{
    public static StarterAnswer Of(Starter starter) => new(starter.Key, starter.Words, starter.Minutes, [.. starter.Questions.Select(q => new QuestionAnswer(q.Key, q.Words, q.Usual, q.Choices, q.Most is null ? null : q.Fewest, q.Most, q.IsPart))]);
}

internal sealed record QuestionAnswer(string Key, string Question, string Usual, IReadOnlyList<string> Choices, int? Fewest, int? Most, bool IsPart);

/// <summary>What a starter added to an engine, or would.</summary>
/// <param name="Left">What of it was there and stays as it is.</param>
/// <param name="Widened">What is said in addition of spaces that were there.</param>
/// <param name="Unplaced">Parts within its spaces that no step puts in place.</param>
/// <param name="Faults">What is wrong with the plan because of it, in words.</param>
internal sealed record StartedAnswer(
    string Starter,
    bool Written,
    IReadOnlyList<string> Parts,
    IReadOnlyList<string> Dimensions,
    IReadOnlyList<string> Fits,
    IReadOnlyList<string> Spaces,
    IReadOnlyList<string> Joints,
    IReadOnlyList<string> Steps,
    int Holds,
    double Minutes,
    IReadOnlyList<TakenAnswer> Taken,
    IReadOnlyList<string> Left,
    IReadOnlyList<string> Widened,
    IReadOnlyList<string> Unplaced,
    IReadOnlyList<string> Faults)
{
    public static StartedAnswer Of(string starter, Started started, bool written)
    {
        var added = started.Added;
        return new(
            starter,
            written,
            [.. added.Parts.Select(p => p.Name.Path)],
            [.. added.Dimensions.Select(Name)],
            [.. added.Fits.Select(Name)],
            [.. added.Spaces.Select(s => s.Name.Text)],
            [.. added.Joints.Select(j => j.Name.Text)],
            [.. added.Steps.Select(s => s.Name.Text)],
            added.Steps.Sum(s => s.Holds.Count),
            added.Steps.Sum(s => s.Seconds) / 60.0,
            [.. started.Taken.Select(t => new TakenAnswer(t.Drawn, t.There))],
            started.Left,
            started.Widened,
            [.. started.Unplaced.Select(p => p.Path)],
            [.. started.Faults.Select(f => f.What)]);
    }

    private static string Name(Figure figure) => figure.Name.ToString();
}

/// <summary>A part or a figure of the engine taken for one of the starter.</summary>
internal sealed record TakenAnswer(string Drawn, string There);
