namespace Thoubook.Record.Closing;

/// <summary>Which space lies in which, and in which each part, joint and step lies. Spaces exist by being defined, or by being named in a step.</summary>
public sealed class SpaceTree
{
    private static readonly IReadOnlySet<SpaceName> Nowhere = new HashSet<SpaceName>();

    private readonly Dictionary<SpaceName, Space> _spaces = [];
    private readonly Dictionary<PartName, List<SpaceName>> _named = [];
    private readonly Dictionary<SpaceName, IReadOnlyList<SpaceName>> _upwards = [];
    private readonly Dictionary<PartName, IReadOnlySet<SpaceName>> _parts = [];
    private readonly Dictionary<JointName, IReadOnlySet<SpaceName>> _joints = [];

    internal SpaceTree(EngineRecord record)
    {
        foreach (var space in record.Spaces)
        {
            _spaces.TryAdd(space.Name, space);
            foreach (var part in space.Parts)
            {
                if (!_named.TryGetValue(part, out var list))
                    _named[part] = list = [];
                list.Add(space.Name);
            }
        }

        foreach (var name in record.Steps.SelectMany(s => s.In.Concat(s.Closes)))
            _spaces.TryAdd(name, new Space(name));
        foreach (var joint in record.Joints)
            _joints[joint.Name] = Find(joint);
    }

    /// <summary>Those that are defined first, in their order.</summary>
    public IReadOnlyCollection<Space> All => _spaces.Values;

    public Space? Find(SpaceName name) => _spaces.GetValueOrDefault(name);

    /// <summary>The space itself and all in which it lies, from the inside outwards.</summary>
    public IReadOnlyList<SpaceName> Upwards(SpaceName name)
    {
        if (_upwards.TryGetValue(name, out var known))
            return known;
        var up = new List<SpaceName>();
        for (SpaceName? at = name; at is { } here && !up.Contains(here); at = Find(here)?.In)
            up.Add(here);
        return _upwards[name] = up;
    }

    /// <summary>The spaces in which a part lies: those that name it or something that it is part of, and all around these.</summary>
    public IReadOnlySet<SpaceName> Of(PartName part)
    {
        if (_parts.TryGetValue(part, out var known))
            return known;
        var found = new HashSet<SpaceName>();
        for (PartName? at = part; at is { } here; at = here.Parent)
        {
            foreach (var space in _named.GetValueOrDefault(here) ?? [])
                found.UnionWith(Upwards(space));
        }

        return _parts[part] = found;
    }

    /// <summary>The spaces in which a joint lies: where it says so, else those in which all its parts lie.</summary>
    public IReadOnlySet<SpaceName> Of(JointName joint) => _joints.GetValueOrDefault(joint) ?? Nowhere;

    /// <summary>The spaces that must be open for a step. A step that closes a space lies in what that space lies in.</summary>
    public IReadOnlySet<SpaceName> Of(Step step)
    {
        var open = new HashSet<SpaceName>();
        foreach (var space in step.In)
            open.UnionWith(Upwards(space));
        foreach (var part in step.Places)
            open.UnionWith(Of(part));
        if (step.Kind is StepKind.Inspect or StepKind.Lubricate)
        {
            foreach (var part in step.Needs)
                open.UnionWith(Of(part));
        }

        foreach (var joint in step.Joints)
            open.UnionWith(Of(joint));
        foreach (var closed in step.Closes)
        {
            if (Find(closed)?.In is { } around)
                open.UnionWith(Upwards(around));
        }

        return open;
    }

    private IReadOnlySet<SpaceName> Find(Joint joint)
    {
        if (joint.In is { } said)
            return Upwards(said).ToHashSet();
        HashSet<SpaceName>? shared = null;
        foreach (var part in joint.Parts)
        {
            if (shared is null)
                shared = [.. Of(part)];
            else
                shared.IntersectWith(Of(part));
        }

        return shared ?? Nowhere;
    }
}
