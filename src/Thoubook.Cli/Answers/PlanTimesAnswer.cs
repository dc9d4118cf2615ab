using Thoubook.Workshop.Closing;

namespace Thoubook.Cli.Answers;

/// <param name="Steps">In the order of the file.</param>
/// <param name="Makespan">[min] from beginning to end with the people said; with as many as it takes where none were said.</param>
/// <param name="IsShortest">Whether no order can be shorter.</param>
/// <param name="Faults">What is wrong in the plan, in words.</param>
internal sealed record PlanTimesAnswer(IReadOnlyList<StepTimesAnswer> Steps, double Makespan, int? People, bool IsShortest, IReadOnlyList<string> Faults)
{
    public static PlanTimesAnswer Of(PlanAnswer answer) => new(
        [.. answer.Schedule.Steps.Select(s => new StepTimesAnswer(s.Step.Text, s.EarliestStart, s.EarliestFinish, s.LatestStart, s.LatestFinish, s.TotalFloat, s.FreeFloat))],
        answer.Crew?.Length ?? answer.Schedule.Length,
        answer.Crew?.People,
        answer.Crew?.IsShortest ?? true,
        [.. answer.Plan.Faults.Select(f => f.What)]);
}

/// <summary>[min] The times of a step.</summary>
internal sealed record StepTimesAnswer(string Name, double EarliestStart, double EarliestFinish, double LatestStart, double LatestFinish, double TotalFloat, double FreeFloat);
