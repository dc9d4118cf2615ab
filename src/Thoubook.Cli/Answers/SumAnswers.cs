using Thoubook.Mechanics.Sums;
using Thoubook.Workshop;

namespace Thoubook.Cli.Answers;

/// <summary>One sum of <c>sum --list --json</c>.</summary>
internal sealed record SumDescribed(string Name, string Question, string Source, IReadOnlyList<SumInputDescribed> Inputs, IReadOnlyList<SumOutputDescribed> Outputs, IReadOnlyList<string> Examples)
{
    public static SumDescribed Of(Sum sum) => new(
        sum.Name,
        sum.Question,
        sum.Source,
        [.. sum.Inputs.Select(SumInputDescribed.Of)],
        [.. sum.Outputs.Select(o => new SumOutputDescribed(o.Key, o.Symbol, o.Name, SumInput.UnitOf(o.Measure)))],
        [.. sum.Examples.Select(e => $"thoubook sum {sum.Name} {e}")]);
}

internal sealed record SumInputDescribed(string Key, string Symbol, string Name, string Unit, double? Default, bool Optional, string? List, IReadOnlyList<string> Words, double? Min, double? Max, bool MinAllowed, bool MaxAllowed)
{
    public static SumInputDescribed Of(SumInput input)
    {
        var isText = input.Measure is Measure.Word or Measure.Name;
        var (min, max) = isText ? (null, null) : (Finite(input.Allowed.Least), Finite(input.Allowed.Greatest));
        return new(
            input.Key,
            input.Symbol,
            input.Name,
            input.Unit,
            input.Default is { } value ? Finite(value) : null,
            input.IsOptional || input.Default is not null || isText,
            input.List,
            input.Words,
            min,
            max,
            min is not null && input.Allowed.Ends != Ends.Open,
            max is not null && input.Allowed.Ends == Ends.Closed);
    }

    public static double? Finite(double value) => double.IsFinite(value) ? value : null;
}

internal sealed record SumOutputDescribed(string Key, string Symbol, string Name, string Unit);

/// <summary>What <c>sum NAME … --json</c> answers; figures in the SI unit beside them, null where a figure has no bound (infinitely many degrees of freedom).</summary>
internal sealed record SumAnswered(string Sum, string Answer, IReadOnlyList<SumValueAnswer> Values, IReadOnlyList<WorkingLineAnswer> Working, IReadOnlyList<string> Cautions, string Source)
{
    public static SumAnswered Of(SumAnswer asked) => new(
        asked.Sum.Name,
        asked.Result.Answer,
        [.. asked.Result.Values.Select(v => new SumValueAnswer(v.Key, v.Symbol, v.Name, SumInputDescribed.Finite(v.Value), v.Unit))],
        [.. asked.Result.Working.Lines.Select(WorkingLineAnswer.Of)],
        asked.Result.Cautions,
        asked.Sum.Source);
}

internal sealed record SumValueAnswer(string Key, string Symbol, string Name, double? Value, string Unit);

/// <summary>A line of the working. A single figure stands in <c>value</c>, a list in <c>values</c>.</summary>
internal sealed record WorkingLineAnswer(string Symbol, string What, string Formula, double? Value, IReadOnlyList<double?>? Values, string Unit, IReadOnlyList<string> Inputs, string Source)
{
    public static WorkingLineAnswer Of(WorkingLine line) => new(
        line.Symbol,
        line.What,
        line.Formula,
        line.IsList ? null : SumInputDescribed.Finite(line.Values[0]),
        line.IsList ? [.. line.Values.Select(SumInputDescribed.Finite)] : null,
        line.Unit,
        [.. line.Inputs.Select(i => i.Symbol)],
        line.Source);
}
