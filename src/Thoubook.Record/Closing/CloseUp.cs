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

    /// <summary>How long what is left takes so many people, a spare hand lent where a step holds more; refused where there is a circle.</summary>
    public Outcome<CrewTime> LeftFor(int people) => Crew.Of(Plan, people, s => !IsDone(s.Name), lent: true);

    /// <summary>What is owed, in the order in which it was put off.</summary>
    public IReadOnlyList<Owed> Debts => _gaps.Debts;

    /// <summary>How the engine lies: as told, or as the step signed last had it.</summary>
    public Attitude? Attitude => _terms.Attitude ?? Plan.Record.Signatures.Where(s => Standing.Of(s, Plan.Record).Stands)
        .Select(s => Plan.Find(s.Step)?.Attitude).LastOrDefault(a => a is not null);

    /// <summary>Joints begun and not finished.</summary>
    public IReadOnlyList<Want> HalfDone => [.. Plan.Record.Joints.Select(j => _gaps.Joint(j.Name)).OfType<Want>().Where(w => w.IsHalfDone)];

    public bool IsDone(StepName step) => _gaps.IsDone(Plan.At(step));

    /// <summary>The first signature of a step that stands; null where there is none.</summary>
    public Signature? SignatureOf(StepName step) => _gaps.First[Plan.At(step)];

    /// <summary>Whether one signature is a second look at the other: by another person, or on another day.</summary>
    public static bool IsAnother(Signature second, Signature first) =>
        !string.Equals(second.By, first.By, StringComparison.OrdinalIgnoreCase) || second.At.Date != first.At.Date;

    /// <summary>What is wanting for a step to be done: its signature, its photograph or its second look; null where it is done.</summary>
    public Want? WantOf(StepName step) => _gaps.Step(Plan.At(step));

    /// <summary>What is wanting for a hold point to be accepted; null where it is.</summary>
    public Want? WantOf(StepName step, HoldPoint hold) => _gaps.Hold(Plan.Steps[Plan.At(step)], hold);

    /// <summary>What is wanting for a joint to be made as far as it goes; null where it is.</summary>
    public Want? WantOf(JointName joint) => _gaps.Joint(joint);

    /// <summary>What is wanting for a part: the right piece in place, or what stands in its stead; null where it is as it should be.</summary>
    public Want? WantOf(PartName part) => _gaps.Part(part);

    /// <summary>The departure or the debt with which a thing by itself may be closed over; null where there is none.</summary>
    public Fact? CoverOf(Want want) => _gaps.Cover(want);

    /// <summary>Cures that are not over and open times that still run, those first that end first.</summary>
    public IReadOnlyList<Running> Running =>
    [
        .. Enumerable.Range(0, Plan.Steps.Count).Where(i => _gaps.First[i] is not null).SelectMany(i => Times(i)).OrderBy(r => r.Until.ToInstant()),
    ];

    /// <summary>What was counted out anywhere and has not been counted in: left over on the bench, or lost.</summary>
    public IReadOnlyList<Want> LeftOver => [.. _gaps.Counts(_ => true)];

    /// <summary>Whether a step is begun and can go on: a part of it placed, a joint of it begun or a point of it accepted. What a trial build left in place of a step that still waits is not.</summary>
    public bool IsBegun(Step step) => Now.Any(r => r.Step == step) && SignatureOf(step.Name) is null
        && (step.Places.Any(p => Plan.Record.Index.PlacedIn(p) is not null)
            || step.Joints.Any(j => StageOf(j) is not null)
            || step.Holds.Any(h => _gaps.AcceptanceOf(step, h) is not null));

    /// <summary>Everything in a space as it was left, open or closed.</summary>
    public InsideLook Look(SpaceName space)
    {
        var spaces = Plan.Spaces.All.Select(s => s.Name).Where(s => Plan.Spaces.Upwards(s).Contains(space)).ToHashSet();
        var parts = _parts[space].Order().ToList();
        var inside = parts.ToHashSet();
        var joints = _joints[space].ToHashSet();
        var steps = _steps[space].Select(i => Plan.Steps[i]).ToList();
        var pieces = parts.Select(p => Plan.Record.Index.PlacedIn(p)?.Piece).OfType<PieceTag>().ToHashSet();
        var items = parts.Select(WorkItem.Of).Concat(joints.Select(WorkItem.Of)).Concat(steps.Select(s => WorkItem.Of(s.Name)))
            .Concat(steps.SelectMany(s => s.Holds.Select(h => WorkItem.Of(s.Name, h)))).ToHashSet();
        return new InsideLook(space, [.. Plan.Closing(space).Select(s => SignatureOf(s.Name)).OfType<Signature>()])
        {
            Spaces = [.. Plan.Spaces.All.Select(s => s.Name).Where(s => s != space && spaces.Contains(s))],
            Pieces = [.. parts.Select(p => new PieceInside(p, Plan.Record.Index.PlacedIn(p)?.Piece, _gaps.Part(p)))],
            Fits = [.. Plan.Record.Fits.Where(f => f.Gap.Count > 0 ? f.Gap.Any(t => inside.Contains(t.Of.Part)) : parts.Exists(p => p.IsWithin(f.Name.Part))).Select(f => f.Name)],
            Joints = [.. Plan.Record.Joints.Where(j => joints.Contains(j.Name)).Select(j => new JointInside(j, Plan.Record.Index.StatesOf(j.Name).LastOrDefault(s => Standing.Of(s, Plan.Record).Stands), _gaps.Joint(j.Name)))],
            Departures = [.. Plan.Record.Departures.Where(d => Standing.Of(d, Plan.Record).Stands && ((d.Piece is { } p && pieces.Contains(p)) || (d.Joint is { } j && joints.Contains(j)) || (d.Item is { } i && items.Contains(i))))],
            Debts = [.. Debts.Where(d => d.Item is { } i && items.Contains(i))],
            Photographs = [.. steps.Concat(Plan.Closing(space)).Where(s => s.Photograph is not null).Select(s => new PhotographInside(s.Name, s.Photograph!, Plan.Record.Signatures.Any(g => g.Step == s.Name && g.Photographed && Standing.Of(g, Plan.Record).Stands)))],
            LeftOver = [.. _gaps.Counts(s => s is { } counted && spaces.Contains(counted))],
        };
    }

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
    /// <param name="part">Which.</param>
    /// <param name="whole">As though every step were done: of an engine that came whole.</param>
    public WayBackIn ToTakeOut(PartName part, bool whole = false) =>
        WayBackIn.Undoing(Plan, Closers(Plan.Spaces.Of(part)).Concat(Placing(part)), whole ? i => Plan.IsCalledFor(Plan.Steps[i]) : IsSigned);

    /// <summary>The fewest steps to be undone so that all these things can be made otherwise: parts out, joints loose, steps undone, hold points to be reached.</summary>
    public WayBackIn ToUndo(IEnumerable<WorkItem> items) => WayBackIn.Undoing(Plan, items.SelectMany(Undoing).Distinct(), IsSigned);

    private static HashSet<PartName> PartsOf(EngineRecord record)
    {
        var within = record.Parts.Select(p => p.Name.Parent).OfType<PartName>().ToHashSet();
        var parts = record.Parts.Where(p => p.IntentOn(record.Engine) switch
        {
            PartIntent.Fitted => !within.Contains(p.Name),
            PartIntent.Blanked or PartIntent.Deferred => p.InItsStead is not null,
            _ => false,
        }).Select(p => p.Name).ToHashSet();
        parts.UnionWith(record.Steps.SelectMany(s => s.Places));
        parts.UnionWith(record.Placings.Select(p => p.Part));
        return parts;
    }

    private bool IsSigned(int step) => _gaps.First[step] is not null;

    /// <summary>When the open time of a signed step ended without the other being signed; null where it still runs, or has none.</summary>
    private NodaTime.OffsetDateTime? WentOff(int first, int then) => _gaps.First[then] is null && Plan.Steps[first].OpenSeconds is > 0 and var open && _gaps.First[first] is { } signed
        && signed.At.PlusSeconds(open) is var over && over.ToInstant() < _terms.Now ? over : null;

    private IEnumerable<Running> Times(int step)
    {
        var (name, signed) = (Plan.Steps[step].Name, _gaps.First[step]!.At);
        var follows = Plan.EdgesAfter(step).Any(e => e.Kind != EdgeKind.Space && _gaps.First[Plan.At(e.Then.Name)] is null);
        if (!follows)
            yield break;
        if (signed.PlusSeconds(Plan.Steps[step].CureSeconds) is var cured && cured.ToInstant() > _terms.Now)
            yield return new(name, RunningKind.Cure, cured);
        if (Plan.Steps[step].OpenSeconds is > 0 and var open && signed.PlusSeconds(open) is var over && over.ToInstant() > _terms.Now)
            yield return new(name, RunningKind.Open, over);
    }

    private bool IsOpen(Want want) => _gaps.Cover(want) is null;

    private IEnumerable<int> Closers(IEnumerable<SpaceName> spaces)
    {
        var closed = spaces.ToHashSet();
        return Enumerable.Range(0, Plan.Steps.Count).Where(i => Plan.Steps[i].Closes.Any(closed.Contains));
    }

    private IEnumerable<int> Placing(PartName part) => Enumerable.Range(0, Plan.Steps.Count).Where(i => Plan.Steps[i].Places.Contains(part));

    private IEnumerable<int> Undoing(WorkItem item)
    {
        switch (item.Kind)
        {
            case ItemKind.Part when PartName.TryRead(item.Name, out var part, out _):
                return Closers(Plan.Spaces.Of(part)).Concat(Placing(part));
            case ItemKind.Joint when JointName.TryRead(item.Name, out var joint, out _):
                return Closers(Plan.Spaces.Of(joint)).Concat(Enumerable.Range(0, Plan.Steps.Count).Where(i => Plan.Steps[i].Joints.Contains(joint)));
            case ItemKind.Step when StepName.TryRead(item.Name, out var step, out _) && Plan.Find(step) is not null:
                return Closers(Plan.SpacesOf(step)).Append(Plan.At(step));
            case ItemKind.Hold when StepName.TryRead(item.Name.Split(':')[0], out var step, out _) && Plan.Find(step) is not null:
                return Closers(Plan.SpacesOf(step));
            default:
                return [];
        }
    }

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
            // What lies in a space that it closes is looked through below, thing by thing.
            if (edge.Kind == EdgeKind.Space)
                continue;
            var first = Plan.At(edge.First.Name);
            if (_gaps.Step(first) is { } want)
            {
                if (edge.Kind != EdgeKind.Hold || IsOpen(want))
                    wants.Add(want with { Why = $"{want.Why}; {edge.Why}" });
            }
            else if (edge.Wait > 0 && _gaps.First[first] is { } signed && signed.At.ToInstant().Plus(NodaTime.Duration.FromSeconds(edge.Wait)) is var cured && cured > _terms.Now)
            {
                wants.Add(new(WantKind.Cure, WorkItem.Of(edge.First.Name), $"{edge.First.Name} stands for {edge.First.Cure!.Text}, until {cured.WithOffset(signed.At.Offset):uuuu-MM-dd HH:mm}"));
            }

            if (WentOff(first, at) is { } over && new Want(WantKind.OpenTime, WorkItem.Of(edge.First.Name), $"{edge.First.Name} was open for {edge.First.Open!.Text}, until {over:uuuu-MM-dd HH:mm}: it is done again, or a departure says why not") is var late && IsOpen(late))
                wants.Add(late);
        }

        wants.AddRange(step.Places.Where(Plan.IsFitted).Select(_gaps.Chosen).OfType<Want>().Where(IsOpen));
        wants.AddRange(step.Tools.Where(t => _terms.ToolsAway.Contains(t, StringComparer.OrdinalIgnoreCase)).Select(t => new Want(WantKind.Tool, WorkItem.Of(step.Name), $"{t} is not at hand{(Plan.Record.Index.Tool(t)?.Kept is { } kept ? $"; kept: {kept}" : "")}")));
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
        || (hold.Figure is { } figure ? !step.Measures.Contains(figure) : hold.Kind is HoldKind.Finding or HoldKind.Cleanliness && step.Kind != StepKind.Inspect);

    /// <summary>What is wanting in a space and in those within it, by itself: covered or not.</summary>
    private IReadOnlyList<Want> Inside(SpaceName space)
    {
        if (_missing.TryGetValue(space, out var known))
            return known;
        var wants = new List<Want>();
        wants.AddRange(_parts[space].Select(_gaps.Part).OfType<Want>());
        wants.AddRange(_joints[space].Select(j => _gaps.Joint(j)).OfType<Want>());
        wants.AddRange(_gaps.Apart(_parts[space]));
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
