using Thoubook.Record.Parts;

namespace Thoubook.Record.Closing;

/// <summary>What is wrong in a plan, told so that its author sees what to change.</summary>
internal static class PlanFaults
{
    public static IReadOnlyList<PlanFault> Of(Plan plan) => [.. Circles(plan), .. Contradictions(plan), .. Apart(plan), .. Orphans(plan)];

    /// <summary>One circle, as short as can be, of each knot of steps that wait for each other.</summary>
    private static IEnumerable<PlanFault> Circles(Plan plan)
    {
        var sorted = plan.Order.ToHashSet();
        var left = Enumerable.Range(0, plan.Steps.Count).Where(i => !sorted.Contains(i)).ToHashSet();
        var told = new HashSet<int>();
        foreach (var start in left.Order())
        {
            if (told.Contains(start) || Shortest(plan, start, left) is not { } circle)
                continue;
            told.UnionWith(Knot(plan, start, left));
            var lines = circle.Select(e => $"{e.First.Name} comes before {e.Then.Name}: {e.Why}");
            yield return new(PlanFaultKind.Circle, $"These steps wait for each other, so that none can be first. {string.Join("; ", lines)}.", [.. circle.Select(e => e.First.Name)]);
        }
    }

    /// <summary>The shortest way from a step back to itself.</summary>
    private static List<PlanEdge>? Shortest(Plan plan, int start, HashSet<int> within)
    {
        var from = new Dictionary<int, PlanEdge>();
        var open = new Queue<int>([start]);
        while (open.TryDequeue(out var i))
        {
            foreach (var edge in plan.EdgesAfter(i))
            {
                var next = plan.At(edge.Then.Name);
                if (!within.Contains(next) || from.ContainsKey(next))
                    continue;
                from[next] = edge;
                if (next == start)
                    return Back(plan, from, start);
                open.Enqueue(next);
            }
        }

        return null;
    }

    private static List<PlanEdge> Back(Plan plan, Dictionary<int, PlanEdge> from, int start)
    {
        var way = new List<PlanEdge>();
        var at = start;
        do
        {
            way.Insert(0, from[at]);
            at = plan.At(from[at].First.Name);
        }
        while (at != start);
        return way;
    }

    /// <summary>Every step that can be reached from this one and from which it can be reached again.</summary>
    private static HashSet<int> Knot(Plan plan, int start, HashSet<int> within)
    {
        var after = Reached(start, plan.Later, within);
        after.IntersectWith(Reached(start, plan.Earlier, within));
        return after;
    }

    private static HashSet<int> Reached(int start, Func<int, IReadOnlyList<int>> next, HashSet<int> within)
    {
        var reached = new HashSet<int>();
        var open = new Stack<int>([start]);
        while (open.TryPop(out var i))
        {
            if (!reached.Add(i))
                continue;
            foreach (var n in next(i).Where(within.Contains))
                open.Push(n);
        }

        return reached;
    }

    private static IEnumerable<PlanFault> Contradictions(Plan plan)
    {
        foreach (var placed in plan.Steps.SelectMany(s => s.Places.Select(p => (Part: p, Step: s))).GroupBy(p => p.Part).Where(g => g.Count() > 1))
            yield return new(PlanFaultKind.Contradiction, $"{placed.Key} is put in place by {Named(placed.Select(p => p.Step))}. One step places a part; the others need it.", Names(placed.Select(p => p.Step)));
        foreach (var step in plan.Steps)
        {
            foreach (var space in step.Closes.Where(c => LiesIn(plan, step, c)))
                yield return new(PlanFaultKind.Contradiction, $"{step.Name} closes {space} and lies in it: it would shut itself in.", [step.Name]);
            foreach (var part in step.Needs.Where(p => !plan.IsFitted(p) && plan.IsCalledFor(step)))
                yield return new(PlanFaultKind.Contradiction, $"{step.Name} needs {part}, which is {Intent(plan, part)}.", [step.Name]);
            if (step.Open is not null && step.Cure is not null && step.Open.Si < step.Cure.Si)
                yield return new(PlanFaultKind.Contradiction, $"{step.Name} must be followed within {step.Open.Text} and stand for {step.Cure.Text} first.", [step.Name]);
        }

        foreach (var part in plan.Record.Parts.Where(p => p.IntentOn(plan.Record.Engine) is PartIntent.Blanked && p.InItsStead is null))
            yield return new(PlanFaultKind.Contradiction, $"{part.Name} is blanked off, and nothing says with what.", []);
    }

    private static IEnumerable<PlanFault> Apart(Plan plan) =>
        from together in plan.Record.Together
        let left = together.Parts.Where(p => !plan.IsFitted(p)).ToList()
        where left.Count > 0 && left.Count < together.Parts.Count
        select new PlanFault(PlanFaultKind.Contradiction, $"{together.Said}: {string.Join(" and ", left)} {(left.Count == 1 ? "is" : "are")} not to be fitted.", []);

    private static bool LiesIn(Plan plan, Step step, SpaceName space)
    {
        var without = plan.Spaces.Of(step with { Closes = [] });
        return without.Contains(space);
    }

    private static string Intent(Plan plan, PartName part)
    {
        for (PartName? at = part; at is { } here; at = here.Parent)
        {
            if (plan.Record.Index.Part(here) is { } found && found.IntentOn(plan.Record.Engine) is var intent and not PartIntent.Fitted)
                return intent.Word();
        }

        return PartIntent.Fitted.Word();
    }

    private static IEnumerable<PlanFault> Orphans(Plan plan)
    {
        for (var i = 0; i < plan.Steps.Count && plan.Steps.Count > 1; i++)
        {
            if (plan.Earlier(i).Count + plan.Later(i).Count == 0)
                yield return new(PlanFaultKind.Orphan, $"{plan.Steps[i].Name} has nothing to do with any other step: it can be done at any time, and be forgotten.", [plan.Steps[i].Name]);
        }

        var closed = plan.Steps.SelectMany(s => s.Closes).ToHashSet();
        foreach (var space in plan.Spaces.All.Where(s => !closed.Contains(s.Name) && !plan.Spaces.Upwards(s.Name).Any(closed.Contains)))
            yield return new(PlanFaultKind.Orphan, $"No step closes {space.Name}.", [.. plan.Steps.Where(s => s.In.Contains(space.Name)).Select(s => s.Name)]);
        var made = plan.Steps.SelectMany(s => s.Joints).ToHashSet();
        foreach (var joint in plan.Record.Joints.Where(j => !made.Contains(j.Name) && j.Parts.Any(plan.IsFitted)))
            yield return new(PlanFaultKind.Orphan, $"No step makes the joint {joint.Name}.", []);
        var placed = plan.Steps.SelectMany(s => s.Places).ToHashSet();
        var unplaced = plan.Record.Joints.Select(j => j.Parts.Distinct().Where(p => !placed.Contains(p)).ToList()).Where(parts => parts.Count > 1).SelectMany(p => p);
        foreach (var part in plan.Steps.SelectMany(s => s.Needs).Concat(unplaced).Distinct().Where(p => !placed.Contains(p) && plan.IsFitted(p)))
            yield return new(PlanFaultKind.Orphan, $"No step puts {part} in place, and the plan needs it.", [.. plan.Steps.Where(s => s.Needs.Contains(part)).Select(s => s.Name)]);
    }

    private static string Named(IEnumerable<Step> steps) => string.Join(" and ", steps.Select(s => s.Name));

    private static IReadOnlyList<StepName> Names(IEnumerable<Step> steps) => [.. steps.Select(s => s.Name)];
}
