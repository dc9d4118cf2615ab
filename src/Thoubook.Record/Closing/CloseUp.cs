using Thoubook.Record.Parts;

namespace Thoubook.Record.Closing;

/// <summary>How far the closing up of an engine is: what can be done now, what the rest wants first, what is missing in each space, and the ways back in.</summary>
public sealed class CloseUp
{
    private readonly CloseUpTerms _terms;
    private readonly Gaps _gaps;
    private readonly Dictionary<SpaceName, IReadOnlyList<Want>> _missing = [];
    private readonly ILookup<SpaceName, PartName> _parts;
    private readonly ILookup<SpaceName, JointName> _joints;
    private readonly ILookup<SpaceName, int> _steps;
    private readonly Lazy<Schedule?> _left;

    private CloseUp(Plan plan, CloseUpTerms terms)
    {
        (Plan, _terms) = (plan, terms);
        _gaps = new Gaps(plan, terms);
        _parts = PartsOf(plan.Record).SelectMany(p => plan.Spaces.Of(p).Select(s => (s, p))).ToLookup(p => p.s, p => p.p);
        _joints = plan.Record.Joints.SelectMany(j => plan.Spaces.Of(j.Name).Select(s => (s, j.Name))).ToLookup(j => j.s, j => j.Name);
        _steps = plan.Open.SelectMany((open, i) => open.Select(s => (s, i))).ToLookup(o => o.s, o => o.i);
        _left = new(() => Schedule.Of(Plan, s => !IsDone(s.Name)));
        var ready = new List<ReadyStep>();
        var waiting = new List<WaitingStep>();
        for (var i = 0; i < plan.Steps.Count; i++)
        {
            if (_gaps.IsDone(i))
                continue;
            var wants = ToBegin(i);
            if (wants.Count == 0)
                ready.Add(new(plan.Steps[i], plan.Steps[i].Attitude is not { } lies || Attitude is not { } now || lies == now, Left?.Of(plan.Steps[i].Name)));
            else
                waiting.Add(new(plan.Steps[i], wants));
        }

        Now = [.. ready.OrderByDescending(r => r.SuitsAttitude).ThenBy(r => r.Times?.TotalFloat ?? 0)];
        Later = waiting;
    }

    public static CloseUp Of(Plan plan, CloseUpTerms terms) => new(plan, terms);

    public Plan Plan { get; }

    /// <summary>Those first that suit the way the engine lies, and of these the most pressing.</summary>
    public IReadOnlyList<ReadyStep> Now { get; }

    /// <summary>What the rest wants first, in the order of the plan.</summary>
    public IReadOnlyList<WaitingStep> Later { get; }

    /// <summary>The times of what is left; null where the plan has a circle.</summary>
    public Schedule? Left => _left.Value;

    /// <summary>What is owed, in the order in which it was put off.</summary>
    public IReadOnlyList<Owed> Debts => _gaps.Debts;

    /// <summary>How the engine lies: as told, or as the step signed last had it.</summary>
    public Attitude? Attitude => _terms.Attitude ?? Plan.Record.Signatures.Where(s => Standing.Of(s, Plan.Record).Stands)
        .Select(s => Plan.Find(s.Step)?.Attitude).LastOrDefault(a => a is not null);

    /// <summary>Joints begun and not finished.</summary>
    public IReadOnlyList<Want> HalfDone => [.. Plan.Record.Joints.Select(j => _gaps.Joint(j.Name)).OfType<Want>().Where(w => w.IsHalfDone)];

    public bool IsDone(StepName step) => _gaps.IsDone(Plan.At(step));

    /// <summary>The state in which a joint stands now; null: not made.</summary>
    public JointStage? StageOf(JointName joint) => _gaps.StageOf(joint);

    /// <summary>What a step wants before it is begun; empty: it can be done now.</summary>
    public IReadOnlyList<Want> WantsOf(StepName step) => ToBegin(Plan.At(step));

    /// <summary>What a step wants before it may be signed: what it wants to begin, and what it is itself to bring about.</summary>
    public IReadOnlyList<Want> WantsToSign(StepName step)
    {
        var at = Plan.At(step);
        var signed = Plan.Steps[at];
        var wants = ToBegin(at);
        wants.AddRange(signed.Joints.Select(j => _gaps.Joint(j, signed.Brings)).OfType<Want>().Where(IsOpen));
        wants.AddRange(signed.Places.Where(p => Plan.IsFitted(p) && Plan.Record.Index.ChosenFor(p) is not null).Select(_gaps.Part).OfType<Want>().Where(IsOpen));
        wants.AddRange(signed.Holds.Select(h => _gaps.Hold(signed, h)).OfType<Want>().Where(IsOpen));
        return [.. wants.DistinctBy(w => (w.Item, w.Kind))];
    }

    /// <summary>The facts on which the signature of a step relies: pieces and joints of its own, what was accepted for it, and for a step that closes a space all inside.</summary>
    public IReadOnlyList<FactId> ReliedOn(StepName name)
    {
        var step = Plan.Steps[Plan.At(name)];
        var index = Plan.Record.Index;
        var joints = step.Joints.ToHashSet();
        var parts = step.Places.Concat(step.Needs).ToHashSet();
        foreach (var space in step.Closes)
        {
            joints.UnionWith(_joints[space]);
            parts.UnionWith(_parts[space]);
        }

        foreach (var joint in Plan.Record.Joints.Where(j => joints.Contains(j.Name)))
            parts.UnionWith(joint.Parts);
        return
        [
            .. parts.Order().Select(index.PlacedIn).OfType<Placed>().Select(p => p.Id),
            .. joints.Order().Select(j => index.StatesOf(j).LastOrDefault(s => Standing.Of(s, Plan.Record).Stands)).OfType<JointState>().Select(s => s.Id),
            .. step.Holds.Select(h => _gaps.AcceptanceOf(step, h)).OfType<Accepted>().Select(a => a.Id),
        ];
    }

    /// <summary>Everything that is missing in a space, and what it would cost to reach it later.</summary>
    public BeforeClosing BeforeYouClose(SpaceName space)
    {
        var closing = Enumerable.Range(0, Plan.Steps.Count).Where(i => Plan.Steps[i].Closes.Contains(space)).ToList();
        var missing = Inside(space).Concat(closing.SelectMany(i => Plan.Steps[i].Holds.Select(h => _gaps.Hold(Plan.Steps[i], h)).OfType<Want>()))
            .Select(w => new Missing(w, _gaps.Cover(w), ToReach(w.Item, space)));
        return new(
            space,
            [.. closing.Select(i => Plan.Steps[i].Name)],
            closing.Exists(IsSigned),
            [.. missing.OrderByDescending(m => m.Want.IsHalfDone).ThenByDescending(m => m.CostToGetBackIn.Minutes)]);
    }

    /// <summary>The fewest steps to be undone to have a space open.</summary>
    public WayBackIn ToGetBackIn(SpaceName space) => WayBackIn.Undoing(Plan, Closers(Plan.Spaces.Upwards(space)), IsSigned);

    /// <summary>The fewest steps to be undone to reach a part where it is.</summary>
    public WayBackIn ToReach(PartName part) => WayBackIn.Undoing(Plan, Closers(Plan.Spaces.Of(part)), IsSigned);

    /// <summary>The fewest steps to be undone to have a part out.</summary>
    public WayBackIn ToTakeOut(PartName part) => WayBackIn.Undoing(Plan, Closers(Plan.Spaces.Of(part)).Concat(Placing(part)), IsSigned);

    private static HashSet<PartName> PartsOf(EngineRecord record)
    {
        var within = record.Parts.Select(p => p.Name.Parent).OfType<PartName>().ToHashSet();
        var parts = record.Parts.Where(p => p.Intent == PartIntent.Fitted && !within.Contains(p.Name)).Select(p => p.Name).ToHashSet();
        parts.UnionWith(record.Steps.SelectMany(s => s.Places));
        parts.UnionWith(record.Placings.Select(p => p.Part));
        return parts;
    }

    private bool IsSigned(int step) => _gaps.First[step] is not null;

    private bool IsOpen(Want want) => _gaps.Cover(want) is null;

    private IEnumerable<int> Closers(IEnumerable<SpaceName> spaces)
    {
        var closed = spaces.ToHashSet();
        return Enumerable.Range(0, Plan.Steps.Count).Where(i => Plan.Steps[i].Closes.Any(closed.Contains));
    }

    private IEnumerable<int> Placing(PartName part) => Enumerable.Range(0, Plan.Steps.Count).Where(i => Plan.Steps[i].Places.Contains(part));

    /// <summary>The way to a thing once everything is done.</summary>
    private WayBackIn ToReach(WorkItem item, SpaceName closed)
    {
        var spaces = Plan.Spaces.Upwards(closed).ToHashSet();
        switch (item.Kind)
        {
            case ItemKind.Part:
                spaces.UnionWith(Plan.Spaces.Of(PartName.Of(item.Name)));
                break;
            case ItemKind.Joint:
                spaces.UnionWith(Plan.Spaces.Of(new JointName(item.Name)));
                break;
            case ItemKind.Step or ItemKind.Hold:
                spaces.UnionWith(Plan.SpacesOf(new StepName(item.Name.Split(':')[0])));
                break;
        }

        return WayBackIn.Undoing(Plan, Closers(spaces), _ => true);
    }

    private List<Want> ToBegin(int at)
    {
        var step = Plan.Steps[at];
        var wants = new List<Want>();
        foreach (var edge in Plan.EdgesBefore(at))
        {
            var first = Plan.At(edge.First.Name);
            if (_gaps.Step(first) is { } want)
            {
                if (edge.Kind is not (EdgeKind.Space or EdgeKind.Hold) || IsOpen(want))
                    wants.Add(want with { Why = $"{want.Why}; {edge.Why}" });
            }
            else if (edge.Wait > 0 && _gaps.First[first] is { } signed && signed.At.ToInstant().Plus(NodaTime.Duration.FromSeconds(edge.Wait)) is var cured && cured > _terms.Now)
            {
                wants.Add(new(WantKind.Cure, WorkItem.Of(edge.First.Name), $"{edge.First.Name} stands for {edge.First.Cure!.Text}, until {cured.WithOffset(signed.At.Offset):uuuu-MM-dd HH:mm}"));
            }
        }

        wants.AddRange(step.Places.Where(Plan.IsFitted).Select(_gaps.Chosen).OfType<Want>().Where(IsOpen));
        wants.AddRange(step.Tools.Where(t => _terms.ToolsAway.Contains(t, StringComparer.OrdinalIgnoreCase)).Select(t => new Want(WantKind.Tool, WorkItem.Of(step.Name), $"{t} is not at hand")));
        wants.AddRange(step.Holds.Where(h => IsFirst(step, h)).Select(h => _gaps.Hold(step, h)).OfType<Want>().Where(IsOpen));
        if (step.Kind == StepKind.TurnByHand)
            wants.AddRange(_gaps.Debts.Where(d => d.Deadline == Deadline.BeforeItIsTurned).Select(d => new Want(WantKind.Owed, WorkItem.Of(step.Name), d.Headline)));
        if (step.Closes.Count > 0)
        {
            var named = wants.Select(w => w.Item).ToHashSet();
            wants.AddRange(step.Closes.SelectMany(Inside).Where(w => IsOpen(w) && named.Add(w.Item)));
        }

        return wants;
    }

    /// <summary>What is to be accepted before a step is begun: all of a step that closes something, else what it does not find out itself.</summary>
    private static bool IsFirst(Step step, HoldPoint hold) => step.Closes.Count > 0
        || (hold.Figure is { } figure ? !step.Measures.Contains(figure) : hold.Kind is HoldKind.Finding or HoldKind.Cleanliness);

    /// <summary>What is wanting in a space and in those within it, by itself: covered or not.</summary>
    private IReadOnlyList<Want> Inside(SpaceName space)
    {
        if (_missing.TryGetValue(space, out var known))
            return known;
        var wants = new List<Want>();
        wants.AddRange(_parts[space].Select(_gaps.Part).OfType<Want>());
        wants.AddRange(_joints[space].Select(j => _gaps.Joint(j)).OfType<Want>());
        var named = wants.Select(w => w.Item).ToHashSet();
        foreach (var i in _steps[space])
        {
            var step = Plan.Steps[i];
            var holds = Plan.IsCalledFor(step) ? step.Holds.Select(h => _gaps.Hold(step, h)).OfType<Want>().ToList() : [];
            wants.AddRange(holds);
            if (_gaps.Step(i) is { } want && (want.Kind != WantKind.Step || (holds.Count == 0 && !step.Places.Any(p => named.Contains(WorkItem.Of(p))) && !step.Joints.Any(j => named.Contains(WorkItem.Of(j))))))
                wants.Add(want);
        }

        wants.AddRange(_gaps.Counts(s => s is { } counted && Plan.Spaces.Upwards(counted).Contains(space)));
        return _missing[space] = wants;
    }
}
