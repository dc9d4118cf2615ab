namespace Thoubook.Record.Closing;

/// <summary>Something wrong in a step, a joint or a space as it is described, by itself or in what it names.</summary>
/// <param name="Of">The name of the entry: a <see cref="StepName"/>, <see cref="JointName"/>, <see cref="SpaceName"/> or <see cref="TogetherName"/>.</param>
/// <param name="Key">Which of its keys.</param>
/// <param name="What">What was found, and what to do.</param>
public sealed record ClosingProblem(object Of, string Key, Problem What);

/// <summary>Checks how steps, joints and spaces are described. Whether the plan works out is asked of the <see cref="Plan"/>.</summary>
public static class ClosingCheck
{
    public const int MostPeople = 20;

    public static IReadOnlyList<ClosingProblem> Of(EngineRecord record)
    {
        var steps = record.Steps.Select(s => s.Name).ToHashSet();
        var joints = record.Joints.Select(j => j.Name).ToHashSet();
        var spaces = record.Spaces.Select(s => s.Name).Concat(record.Steps.SelectMany(s => s.Closes)).ToHashSet();
        var tree = new SpaceTree(record);
        return
        [
            .. record.Spaces.SelectMany(s => Space(s, spaces, tree).Select(p => new ClosingProblem(s.Name, "in", p))),
            .. record.Joints.SelectMany(j => Joint(j, spaces).Select(p => new ClosingProblem(j.Name, p.Key, p.What))),
            .. record.Together.Where(t => t.Parts.Distinct().Count() < 2).Select(t => new ClosingProblem(t.Name, "parts", new("together-of-one", "", t.Parts.Count == 0 ? "no parts" : $"{t.Parts[0]} alone", "Two parts or more go together.", "Name the others, or take the group out."))),
            .. record.Steps.SelectMany(s => References(s, steps, joints, spaces).Concat(Times(s)).Concat(Closing(s, tree)).Concat(Holds(s)).Select(p => new ClosingProblem(s.Name, p.Key, p.What))),
        ];
    }

    private static IEnumerable<Problem> Space(Space space, HashSet<SpaceName> spaces, SpaceTree tree)
    {
        if (space.In is not { } around)
            yield break;
        if (!spaces.Contains(around))
            yield return Missing("space", around.Text, spaces.Select(s => s.Text));
        else if (tree.Upwards(around).Contains(space.Name))
            yield return new("space-in-itself", "", $"{space.Name} in {around}", "A space lies in one that is larger, never in itself by way of others.", "Take out one of the spaces of this circle.");
    }

    private static IEnumerable<(string Key, Problem What)> Joint(Joint joint, HashSet<SpaceName> spaces)
    {
        if (joint.Parts.Distinct().Count() < 2)
            yield return ("parts", new("joint-of-one-part", "", joint.Parts.Count == 0 ? "no parts" : $"{joint.Parts[0]} alone", "A joint holds two parts or more together.", "Name the parts on both sides of it."));
        if (joint.In is { } around && !spaces.Contains(around))
            yield return ("in", Missing("space", around.Text, spaces.Select(s => s.Text)));
        if (joint.Number is < 1)
            yield return ("number", new("joint-number", "", $"{joint.Number}", "A joint has one fastener or more.", "Leave the number out where there are none to count."));
    }

    private static IEnumerable<(string Key, Problem What)> References(Step step, HashSet<StepName> steps, HashSet<JointName> joints, HashSet<SpaceName> spaces)
    {
        foreach (var (name, _) in step.After)
        {
            if (name == step.Name)
                yield return ("after", new("step-after-itself", "", $"{name} after itself", "A step comes after other steps.", "Leave it out."));
            else if (!steps.Contains(name))
                yield return ("after", Missing("step", name.Text, steps.Select(s => s.Text)));
        }

        foreach (var joint in step.Joints.Where(j => !joints.Contains(j)))
            yield return ("joints", Missing("joint", joint.Text, joints.Select(j => j.Text)));
        foreach (var space in step.In.Where(s => !spaces.Contains(s)))
            yield return ("in", Missing("space", space.Text, spaces.Select(s => s.Text)));
        if (step.Brings is not null && step.Joints.Count == 0)
            yield return ("brings", new("step-brings-nothing", "", $"\"{step.Brings.Value.Word()}\" and no joint", "A step brings the joints that it names to a state.", "Name its joints, or leave this out."));
    }

    private static IEnumerable<(string Key, Problem What)> Times(Step step)
    {
        if (step.Time is { Si: < 0 } time)
            yield return ("time", Impossible(time.Text, "A step takes no less than no time.", "Write how long it is expected to take, or leave it out."));
        if (step.Cure is { Si: < 0 } cure)
            yield return ("cure", Impossible(cure.Text, "What is built on a step waits no less than no time.", "Write how long it stands, or leave it out."));
        if (step.Open is { } open)
        {
            if (open.Si <= 0)
                yield return ("open", Impossible(open.Text, "What must follow within a time needs some of it.", "Write how long there is, or leave it out."));
            else if (step.Cure is { } wait && open.Si < wait.Si)
                yield return ("open", Impossible($"{open.Text}, and cure {wait.Text}", "What is built on a step cannot have to follow before it may.", "Correct one of the two."));
        }

        if (step.People is < 1 or > MostPeople)
            yield return ("people", new("step-people", "", $"{step.People}", $"A step holds 1 to {MostPeople} people.", "Write how many hands it takes, each by one person."));
    }

    private static IEnumerable<(string Key, Problem What)> Closing(Step step, SpaceTree tree)
    {
        var lies = tree.Of(step with { Closes = [] });
        foreach (var space in step.Closes.Where(lies.Contains))
        {
            var by = step.In.Any(s => tree.Upwards(s).Contains(space)) ? "it says so"
                : step.Places.Where(p => tree.Of(p).Contains(space)).Select(p => $"it puts {p} into it").FirstOrDefault()
                ?? step.Joints.Where(j => tree.Of(j).Contains(space)).Select(j => $"its joint {j} lies in it").FirstOrDefault()
                ?? "something that it needs lies in it";
            yield return ("closes", new("step-closes-itself-in", "", $"{step.Name} closes {space} and lies in it: {by}", "A step that closes a space is done from outside.", "Take the cover and its joint out of the space, or make two steps of it."));
        }
    }

    private static IEnumerable<(string Key, Problem What)> Holds(Step step)
    {
        foreach (var hold in step.Holds)
        {
            if (hold.Kind is HoldKind.Fit or HoldKind.Dimension && hold.Figure is null)
                yield return ("holds", new("hold-without-figure", "", $"a {hold.Kind.Word()} that is not named", $"A hold point on a {hold.Kind.Word()} says which.", "Write of: and its name."));
            else if (string.IsNullOrWhiteSpace(hold.What))
                yield return ("holds", new("hold-without-words", "", "nothing", "A hold point says what is to be accepted.", "Write what: and the words."));
        }

        foreach (var twice in step.Holds.GroupBy(h => h.What, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1))
            yield return ("holds", new("hold-twice", "", $"\"{twice.Key}\" twice", "Each hold point of a step has its own words.", "Leave one out, or say how they differ."));
    }

    private static Problem Impossible(string found, string allowed, string doThis) => new("step-time-impossible", "", found, allowed, doThis);

    private static Problem Missing(string what, string name, IEnumerable<string> known) =>
        new($"{what}-missing", "", $"\"{name}\"", $"Here stands a {what} that is described.", Nearest.Advice(name, known, $"Correct the name, or add the {what}."));
}
