namespace Thoubook.Record.Closing;

/// <summary>The plan backwards: what comes off in which order, and what each removal will destroy, to be taken down before. It never insists.</summary>
public sealed class Strip
{
    private readonly CloseUp _closeUp;
    private readonly ILookup<(WorkItem, string), AsFound> _found;

    private Strip(CloseUp closeUp, bool? whole)
    {
        _closeUp = closeUp;
        var plan = closeUp.Plan;
        IsWhole = whole ?? plan.Steps.All(s => closeUp.SignatureOf(s.Name) is null);
        _found = plan.Record.AsFound.Where(f => plan.Record.Index.StrikeOutOf(f.Id) is null && Of(f) is not null).ToLookup(f => (Of(f)!.Value, f.What.ToUpperInvariant()));
        Removals = Backwards(plan, new Asks(plan));
    }

    /// <param name="closeUp">How far the engine is.</param>
    /// <param name="whole">Taken as it came, with everything in place; null: where nothing is signed yet.</param>
    public static Strip Of(CloseUp closeUp, bool? whole = null) => new(closeUp, whole);

    /// <summary>Taken as it came, as though every step of the plan were done.</summary>
    public bool IsWhole { get; }

    /// <summary>What can be taken off, first what comes off first. What no step puts in place stands last.</summary>
    public IReadOnlyList<Removal> Removals { get; }

    /// <summary>
    /// The answer to what is asked before a removal, the last where there are several; null: not yet taken, nor passed over. What was found
    /// before the step was signed was found in an earlier strip.
    /// </summary>
    public AsFound? AnswerTo(Ask ask, Removal removal)
    {
        var since = removal.Step is { } step && !IsWhole ? _closeUp.SignatureOf(step.Name) : null;
        return _found[(ask.Of, ask.What.ToUpperInvariant())].LastOrDefault(f => since is null || RecordIndex.IsAfter(f, since));
    }

    /// <summary>What is asked and is neither taken nor passed over.</summary>
    public IEnumerable<Ask> Open(Removal removal) => removal.Asks.Where(a => AnswerTo(a, removal) is null);

    /// <summary>The shortest strip to have a part out, with all that it destroys on the way.</summary>
    public ComesOff ToTakeOut(PartName part)
    {
        var way = _closeUp.ToTakeOut(part, IsWhole);
        var steps = way.Steps.ToHashSet();
        return new(part, way, [.. Removals.Where(r => r.Step is { } step ? steps.Contains(step.Name) : r.Parts.Contains(part))]);
    }

    internal static WorkItem? Of(AsFound found) => found.Part is { } part ? WorkItem.Of(part) : found.Joint is { } joint ? WorkItem.Of(joint) : null;

    private List<Removal> Backwards(Plan plan, Asks asks)
    {
        var joints = plan.Record.Joints.ToDictionary(j => j.Name);
        var removals = new List<Removal>();
        var (undone, off, asked) = (new HashSet<JointName>(), new HashSet<PartName>(), new HashSet<(WorkItem, string)>());
        var figures = new HashSet<FigureName>();
        foreach (var step in plan.InOrder.Reverse().Where(s => plan.IsCalledFor(s) && (IsWhole || _closeUp.SignatureOf(s.Name) is not null)))
            Take(step, [.. step.Places.Where(p => plan.IsFitted(p) && off.Add(p))], [.. step.Joints.Where(j => joints.ContainsKey(j) && undone.Add(j)).Select(j => joints[j])]);
        if (!IsWhole)
            return removals;

        // What no step makes or puts in place, and the record yet knows.
        var worked = plan.Steps.SelectMany(s => s.Joints).ToHashSet();
        foreach (var joint in plan.Record.Joints.Where(j => !worked.Contains(j.Name) && j.Parts.Any(plan.IsFitted)))
            Take(null, [], [joint]);
        var placed = plan.Steps.SelectMany(s => s.Places).ToHashSet();
        var within = plan.Record.Parts.Select(p => p.Name.Parent).OfType<PartName>().ToHashSet();
        foreach (var part in plan.Record.Parts.Select(p => p.Name).Where(p => !placed.Contains(p) && !within.Contains(p) && plan.IsFitted(p)))
            Take(null, [part], []);
        return removals;

        void Take(Step? step, IReadOnlyList<PartName> parts, IReadOnlyList<Joint> loosened)
        {
            var wanted = asks.Of(step, parts, loosened).Where(a => (a.Figure is not { } figure || figures.Add(figure)) && asked.Add((a.Of, a.What))).ToList();
            if (parts.Count + loosened.Count + wanted.Count > 0)
                removals.Add(new(step, parts, [.. loosened.Select(j => j.Name)], wanted));
        }
    }
}

/// <summary>Something taken off: the joints undone, the parts removed, and what is asked before.</summary>
/// <param name="Step">The step that is undone by it; null where no step of the plan put it there.</param>
/// <param name="Parts">What comes off.</param>
/// <param name="Joints">What is undone.</param>
/// <param name="Asks">What it destroys, to be taken down before: figures first, tags last.</param>
public sealed record Removal(Step? Step, IReadOnlyList<PartName> Parts, IReadOnlyList<JointName> Joints, IReadOnlyList<Ask> Asks)
{
    /// <summary>In words.</summary>
    public string Said => Step?.Said ?? (Parts.Count > 0 ? string.Join(", ", Parts) : string.Join(", ", Joints));
}

/// <summary>What comes off to have a part out.</summary>
/// <param name="Part">Which.</param>
/// <param name="Way">The steps undone, their minutes, and what must be new.</param>
/// <param name="Removals">What is taken off, and what is asked before.</param>
public sealed record ComesOff(PartName Part, WayBackIn Way, IReadOnlyList<Removal> Removals);
