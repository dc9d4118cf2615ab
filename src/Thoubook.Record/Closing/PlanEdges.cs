namespace Thoubook.Record.Closing;

/// <summary>Finds the order of the steps from what they have to do with parts, joints, spaces and hold points.</summary>
internal sealed class PlanEdges
{
    private readonly IReadOnlyList<Step> _steps;
    private readonly Dictionary<JointName, Joint> _joints;
    private readonly Dictionary<(int First, int Then), PlanEdge> _edges = [];

    private PlanEdges(IReadOnlyList<Step> steps, EngineRecord record)
    {
        _steps = steps;
        _joints = record.Joints.ToDictionary(j => j.Name);
    }

    /// <summary>Every edge by the places of its two steps in the list.</summary>
    public static IReadOnlyDictionary<(int First, int Then), PlanEdge> Of(IReadOnlyList<Step> steps, EngineRecord record, IReadOnlyList<IReadOnlySet<SpaceName>> open)
    {
        var edges = new PlanEdges(steps, record);
        edges.ByHand();
        edges.Parts();
        edges.JointsMade();
        edges.Closing(open);
        edges.Holds();
        return edges._edges;
    }

    private void ByHand()
    {
        var at = new Dictionary<StepName, int>();
        for (var i = 0; i < _steps.Count; i++)
            at[_steps[i].Name] = i;
        for (var then = 0; then < _steps.Count; then++)
        {
            foreach (var (name, why) in _steps[then].After)
            {
                if (at.TryGetValue(name, out var first))
                    Add(first, then, EdgeKind.ByHand, why ?? "so it is written, without a reason");
            }
        }
    }

    private void Parts()
    {
        var placing = By(s => s.Places);
        for (var then = 0; then < _steps.Count; then++)
        {
            var step = _steps[then];
            foreach (var part in step.Needs)
            {
                foreach (var first in placing[part])
                    Add(first, then, EdgeKind.Part, $"it needs {part} in place");
            }

            foreach (var name in step.Joints)
            {
                if (!_joints.TryGetValue(name, out var joint) || StageOf(step, name) == JointStage.Placed)
                    continue;
                foreach (var part in joint.Parts)
                {
                    foreach (var first in placing[part])
                        Add(first, then, EdgeKind.Joint, $"the joint {name} needs {part} in place");
                }
            }
        }
    }

    private void JointsMade()
    {
        foreach (var at in By(s => s.Joints))
        {
            var made = at.GroupBy(i => StageOf(_steps[i], at.Key)).OrderBy(g => g.Key).ToList();
            for (var i = 1; i < made.Count; i++)
            {
                foreach (var first in made[i - 1])
                {
                    foreach (var then in made[i])
                        Add(first, then, EdgeKind.Joint, $"the joint {at.Key} is {made[i - 1].Key.Word()} before it is {made[i].Key.Word()}");
                }
            }
        }
    }

    private void Closing(IReadOnlyList<IReadOnlySet<SpaceName>> open)
    {
        var closing = By(s => s.Closes);
        for (var first = 0; first < _steps.Count; first++)
        {
            foreach (var space in open[first])
            {
                foreach (var then in closing[space])
                    Add(first, then, EdgeKind.Space, space.Text);
            }
        }
    }

    private void Holds()
    {
        var measuring = By(s => s.Measures);
        for (var then = 0; then < _steps.Count; then++)
        {
            foreach (var hold in _steps[then].Holds)
            {
                foreach (var first in hold.Figure is { } figure ? measuring[figure] : [])
                    Add(first, then, EdgeKind.Hold, $"it waits for {hold.Figure}, which {_steps[first].Name} measures");
            }
        }
    }

    private JointStage StageOf(Step step, JointName joint) => step.Brings ?? _joints.GetValueOrDefault(joint)?.Last ?? JointStage.Tightened;

    private ILookup<T, int> By<T>(Func<Step, IReadOnlyList<T>> named) =>
        _steps.SelectMany((step, i) => named(step).Select(n => (Name: n, Step: i))).ToLookup(n => n.Name, n => n.Step);

    /// <summary>One edge between two steps is enough: the one with the longest wait, and of those the first found.</summary>
    private void Add(int first, int then, EdgeKind kind, string about)
    {
        if (first == then)
            return;
        var edge = new PlanEdge(_steps[first], _steps[then], kind, about);
        if (!_edges.TryGetValue((first, then), out var known) || known.Wait < edge.Wait)
            _edges[(first, then)] = edge;
    }
}
