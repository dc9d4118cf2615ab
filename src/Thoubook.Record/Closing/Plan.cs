namespace Thoubook.Record.Closing;

/// <summary>
/// The steps of an engine and the order found between them. Steps whose parts are all blanked, deferred or not on this engine are not called for:
/// they take no time and are passed through.
/// </summary>
public sealed class Plan
{
    private readonly Dictionary<StepName, int> _at = [];
    private readonly List<PlanEdge>[] _before;
    private readonly List<PlanEdge>[] _then;
    private readonly int[][] _earlier;
    private readonly int[][] _later;
    private readonly Lazy<IReadOnlyList<PlanFault>> _faults;

    private Plan(EngineRecord record)
    {
        Record = record;
        Steps = [.. record.Steps.DistinctBy(s => s.Name)];
        Spaces = new SpaceTree(record);
        for (var i = 0; i < Steps.Count; i++)
            _at[Steps[i].Name] = i;
        Open = [.. Steps.Select(Spaces.Of)];
        var edges = PlanEdges.Of(Steps, record, Open);
        Edges = [.. edges.OrderBy(e => e.Key.First).ThenBy(e => e.Key.Then).Select(e => e.Value)];
        _before = [.. Steps.Select(_ => new List<PlanEdge>())];
        _then = [.. Steps.Select(_ => new List<PlanEdge>())];
        foreach (var edge in Edges)
        {
            _before[_at[edge.Then.Name]].Add(edge);
            _then[_at[edge.First.Name]].Add(edge);
        }

        _earlier = [.. _before.Select(b => b.Select(e => _at[e.First.Name]).ToArray())];
        _later = [.. _then.Select(b => b.Select(e => _at[e.Then.Name]).ToArray())];
        Order = Sorted();
        _faults = new(() => PlanFaults.Of(this));
    }

    public static Plan Of(EngineRecord record) => new(record);

    public EngineRecord Record { get; }

    public IReadOnlyList<Step> Steps { get; }

    public SpaceTree Spaces { get; }

    /// <summary>Every edge once, by the order of the steps.</summary>
    public IReadOnlyList<PlanEdge> Edges { get; }

    /// <summary>Circles, contradictions and orphans, in the user's words.</summary>
    public IReadOnlyList<PlanFault> Faults => _faults.Value;

    /// <summary>Whether some steps each wait for another, so that there is no order.</summary>
    public bool HasCircle => Order.Count < Steps.Count;

    /// <summary>The steps in an order that breaks no edge; those in or behind a circle are left out.</summary>
    public IEnumerable<Step> InOrder => Order.Select(i => Steps[i]);

    /// <summary>The places of the steps in an order that breaks no edge; those in or behind a circle are left out.</summary>
    internal IReadOnlyList<int> Order { get; }

    /// <summary>The spaces that must be open for each step.</summary>
    internal IReadOnlyList<IReadOnlySet<SpaceName>> Open { get; }

    public Step? Find(StepName name) => _at.TryGetValue(name, out var i) ? Steps[i] : null;

    /// <summary>What comes before a step.</summary>
    public IReadOnlyList<PlanEdge> Before(StepName step) => _before[At(step)];

    /// <summary>What comes after it.</summary>
    public IReadOnlyList<PlanEdge> Then(StepName step) => _then[At(step)];

    /// <summary>The spaces that must be open for a step.</summary>
    public IReadOnlySet<SpaceName> SpacesOf(StepName step) => Open[At(step)];

    /// <summary>The steps that close a space.</summary>
    public IReadOnlyList<Step> Closing(SpaceName space) => [.. Steps.Where(s => s.Closes.Contains(space))];

    /// <summary>Whether anything of the step is to be fitted on this engine.</summary>
    public bool IsCalledFor(Step step) =>
        step.Places.Count == 0 || step.Joints.Count > 0 || step.Closes.Count > 0 || step.Places.Any(IsFitted);

    /// <summary>Whether a part is to be fitted: not it, nor anything that it is part of, is blanked, deferred, of another modification state or not on this engine.</summary>
    public bool IsFitted(PartName part)
    {
        for (PartName? at = part; at is { } here; at = here.Parent)
        {
            if (Record.Index.Part(here) is { } found && found.IntentOn(Record.Engine) != Parts.PartIntent.Fitted)
                return false;
        }

        return true;
    }

    internal int At(StepName step) => _at.TryGetValue(step, out var i) ? i : throw new ArgumentException($"There is no step {step}.", nameof(step));

    internal IReadOnlyList<PlanEdge> EdgesBefore(int step) => _before[step];

    internal IReadOnlyList<PlanEdge> EdgesAfter(int step) => _then[step];

    internal IReadOnlyList<int> Earlier(int step) => _earlier[step];

    internal IReadOnlyList<int> Later(int step) => _later[step];

    /// <summary>[s] The time of a step that is called for.</summary>
    internal long Seconds(int step) => IsCalledFor(Steps[step]) ? Steps[step].Seconds : 0;

    /// <summary>The given steps and all that come after them, directly or by others, in the order of the plan.</summary>
    internal SortedSet<int> AllLater(IEnumerable<int> from)
    {
        var all = new SortedSet<int>();
        var open = new Stack<int>(from);
        while (open.TryPop(out var i))
        {
            if (!all.Add(i))
                continue;
            foreach (var later in _later[i])
                open.Push(later);
        }

        return all;
    }

    private List<int> Sorted()
    {
        var waits = _earlier.Select(e => e.Length).ToArray();
        var ready = new PriorityQueue<int, int>();
        for (var i = 0; i < waits.Length; i++)
        {
            if (waits[i] == 0)
                ready.Enqueue(i, i);
        }

        var order = new List<int>();
        while (ready.TryDequeue(out var i, out _))
        {
            order.Add(i);
            foreach (var later in _later[i])
            {
                if (--waits[later] == 0)
                    ready.Enqueue(later, later);
            }
        }

        return order;
    }
}
