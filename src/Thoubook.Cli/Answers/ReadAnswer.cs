using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Cli.Answers;

/// <summary>What was understood, in SI.</summary>
internal sealed record ReadAnswer(double Value, string Unit, string Quantity, string Understood, IReadOnlyList<string> Cautions)
{
    public static ReadAnswer Of(Quantity quantity, IReadOnlyList<Caution> cautions) =>
        new(quantity.Si, quantity.SiUnit, quantity.Kind.Word(), quantity.Understood, [.. cautions.Select(c => c.Text)]);
}

/// <summary>A question: the same sent again with one of the codes confirmed is taken in that meaning.</summary>
/// <param name="Ask">The meanings in words.</param>
/// <param name="Code">Confirms the first meaning.</param>
/// <param name="Codes">Confirm the meanings, in their order.</param>
/// <param name="Why">Why it is asked.</param>
internal sealed record AskAnswer(IReadOnlyList<string> Ask, string Code, IReadOnlyList<string> Codes, string Why);

/// <summary>A refusal: all problems in words, then one by one.</summary>
internal sealed record RefusedAnswer(string Refused, IReadOnlyList<ProblemAnswer> Problems);

internal sealed record ProblemAnswer(string Code, string Field, string Found, string Allowed, string DoThis, string? File, int? Line, int? Column, IReadOnlyList<MeaningAnswer> Meanings)
{
    public static ProblemAnswer Of(Problem problem) =>
        new(problem.Code, problem.Field, problem.Found, problem.Allowed, problem.DoThis, problem.At?.File, problem.At?.Line, problem.At?.Column, [.. problem.Meanings.Select(m => new MeaningAnswer(m.Code, m.Text))]);
}

internal sealed record MeaningAnswer(string Code, string Text);
