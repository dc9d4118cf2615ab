namespace Thoubook.Record.Closing;

/// <summary>What it takes to get back in: the steps to be undone, those first that were done last.</summary>
/// <param name="Steps">To be undone, in this order.</param>
/// <param name="Minutes">[min] that doing these steps took, and will take again.</param>
/// <param name="Consumables">What is spoilt by it and must be new.</param>
public sealed record WayBackIn(IReadOnlyList<StepName> Steps, double Minutes, IReadOnlyList<string> Consumables)
{
    /// <summary>Undoes the given steps and everything done that comes after them, and nothing else.</summary>
    internal static WayBackIn Undoing(Plan plan, IEnumerable<int> from, Func<int, bool> isDone)
    {
        var undone = new HashSet<int>();
        var open = new Stack<int>(from.Where(isDone));
        while (open.TryPop(out var i))
        {
            if (!undone.Add(i))
                continue;
            foreach (var later in plan.Later(i).Where(isDone))
                open.Push(later);
        }

        var steps = plan.Order.Reverse().Where(undone.Contains).Concat(undone.Except(plan.Order)).ToList();
        return new(
            [.. steps.Select(i => plan.Steps[i].Name)],
            Schedule.Minutes(steps.Sum(plan.Seconds)),
            [.. steps.SelectMany(i => plan.Steps[i].Spoils)]);
    }
}

/// <summary>What is missing in a space before it is closed.</summary>
/// <param name="Want">What, and why.</param>
/// <param name="CoveredBy">The departure or the debt with which it may be closed over; null where there is none.</param>
/// <param name="CostToGetBackIn">What it takes to reach it once the engine is whole.</param>
public sealed record Missing(Want Want, Fact? CoveredBy, WayBackIn CostToGetBackIn);

/// <summary>The sheet to be read before a space is closed.</summary>
/// <param name="Space">Which.</param>
/// <param name="Closes">The steps that close it.</param>
/// <param name="IsClosed">Whether one of these is signed.</param>
/// <param name="Missing">What is half done first, then what costs most to reach later.</param>
public sealed record BeforeClosing(SpaceName Space, IReadOnlyList<StepName> Closes, bool IsClosed, IReadOnlyList<Missing> Missing)
{
    /// <summary>Whether nothing is missing that is not covered by a departure or owed with a deadline.</summary>
    public bool MayBeClosed => Missing.All(m => m.CoveredBy is not null);
}

/// <summary>A step that can be done now.</summary>
public sealed record ReadyStep(Step Step, bool SuitsAttitude, StepTimes? Times);

/// <summary>A step that wants something first.</summary>
public sealed record WaitingStep(Step Step, IReadOnlyList<Want> Wants);
