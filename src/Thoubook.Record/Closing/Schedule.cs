namespace Thoubook.Record.Closing;

/// <summary>Earliest and latest times of every step with as many people as it takes, waits included. Times count from the beginning of the work.</summary>
public sealed class Schedule
{
    private readonly Dictionary<StepName, StepTimes> _times;

    private Schedule(IReadOnlyList<StepTimes> steps, double length)
    {
        Steps = steps;
        Length = length;
        _times = steps.ToDictionary(s => s.Step);
    }

    /// <summary>In the order of the plan.</summary>
    public IReadOnlyList<StepTimes> Steps { get; }

    /// <summary>[min] of the longest chain of steps and waits.</summary>
    public double Length { get; }

    public StepTimes Of(StepName step) => _times[step];

    /// <summary>The times of a plan; null where it has a circle, so that there is no order.</summary>
    public static Schedule? Of(Plan plan) => Of(plan, _ => true);

    /// <summary>The times of those steps that are still to be done.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="isLeft">Whether a step is still to be done; the others take no time and hold nothing up.</param>
    public static Schedule? Of(Plan plan, Func<Step, bool> isLeft)
    {
        if (plan.HasCircle)
            return null;
        var n = plan.Steps.Count;
        var left = plan.Steps.Select(isLeft).ToArray();
        var takes = Enumerable.Range(0, n).Select(i => left[i] ? plan.Seconds(i) : 0).ToArray();
        var earliest = new long[n];
        foreach (var i in plan.Order)
        {
            foreach (var edge in plan.EdgesBefore(i))
            {
                var first = plan.At(edge.First.Name);
                if (left[first])
                    earliest[i] = Math.Max(earliest[i], earliest[first] + takes[first] + edge.Wait);
            }
        }

        var length = n == 0 ? 0 : Enumerable.Range(0, n).Max(i => earliest[i] + takes[i]);
        var latest = Enumerable.Repeat(length, n).ToArray();
        var free = Enumerable.Repeat(length, n).ToArray();
        foreach (var i in plan.Order.Reverse())
        {
            foreach (var edge in plan.EdgesAfter(i))
            {
                var then = plan.At(edge.Then.Name);
                if (!left[then])
                    continue;
                latest[i] = Math.Min(latest[i], latest[then] - takes[then] - edge.Wait);
                free[i] = Math.Min(free[i], earliest[then] - edge.Wait);
            }
        }

        return new(
            [.. Enumerable.Range(0, n).Where(i => left[i]).Select(i => new StepTimes(
                plan.Steps[i].Name,
                Minutes(earliest[i]),
                Minutes(earliest[i] + takes[i]),
                Minutes(latest[i] - takes[i]),
                Minutes(latest[i]),
                Minutes(latest[i] - takes[i] - earliest[i]),
                Minutes(free[i] - earliest[i] - takes[i])))],
            Minutes(length));
    }

    internal static double Minutes(long seconds) => seconds / 60.0;
}

/// <summary>[min] The times of one step.</summary>
/// <param name="Step">Which.</param>
/// <param name="EarliestStart">When it can begin at the soonest.</param>
/// <param name="EarliestFinish">When it can be done at the soonest.</param>
/// <param name="LatestStart">When it must begin at the latest for the whole not to take longer.</param>
/// <param name="LatestFinish">When it must be done at the latest.</param>
/// <param name="TotalFloat">How long it can be put off without the whole taking longer.</param>
/// <param name="FreeFloat">How long it can be put off without any other step being put off.</param>
public sealed record StepTimes(StepName Step, double EarliestStart, double EarliestFinish, double LatestStart, double LatestFinish, double TotalFloat, double FreeFloat)
{
    public bool IsCritical => TotalFloat == 0;
}
