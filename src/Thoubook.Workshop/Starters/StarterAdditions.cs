using Thoubook.Files.EngineFiles;
using Thoubook.Files.Templates;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Record.Measures;

namespace Thoubook.Workshop.Starters;

/// <summary>Lays what a starter draws over what an engine has: only what is missing is added.</summary>
internal sealed class StarterAdditions
{
    private readonly DrawnEngine _drawn;
    private readonly StarterNames _names;
    private readonly EngineRecord _record;
    private readonly Dictionary<PartName, StepName> _placedBy = [];
    private readonly HashSet<JointName> _dropped = [];
    private readonly HashSet<PartName> _absent = [];

    private StarterAdditions(DrawnEngine drawn, StarterNames names, EngineRecord record) => (_drawn, _names, _record) = (drawn, names, record);

    public static Outcome<Started> Of(DrawnEngine drawn, StarterNames names, EngineRecord record) => new StarterAdditions(drawn, names, record).Add();

    private Outcome<Started> Add()
    {
        var drawn = _drawn.Record;
        _absent.UnionWith(drawn.Parts.Where(p => _drawn.PartsIfThere.Contains(p.Name) && !_names.IsThere(_names.Of(p.Name))).Select(p => _names.Of(p.Name)));
        var joints = drawn.Joints.Select(j => j with { Parts = Distinct(j.Parts) }).ToList();
        _dropped.UnionWith(joints.Where(j => j.Parts.Count < 2).Select(j => j.Name));
        var added = new EngineRecord(_record.Engine)
        {
            Parts = [.. drawn.Parts.Select(p => p with { Name = _names.Of(p.Name) }).DistinctBy(p => p.Name).Where(p => !_names.IsThere(p.Name) && !_absent.Contains(p.Name))],
            Dimensions = [.. drawn.Dimensions.Select(d => d with { Name = _names.Of(d.Name) }).DistinctBy(d => d.Name).Where(d => _record.Index.Figure(d.Name) is null)],
            Fits = [.. drawn.Fits.Select(Fit).DistinctBy(f => f.Name).Where(f => _record.Index.Figure(f.Name) is null)],
            Spaces = [.. New(drawn.Spaces, _record.Spaces, s => s.Name).Where(s => !_drawn.SpacesIfThere.Contains(s.Name)).Select(s => s with { Parts = Distinct(s.Parts) }), .. Wider()],
            Joints = [.. New(joints, _record.Joints, j => j.Name).Where(j => !_dropped.Contains(j.Name))],
        };
        foreach (var step in _record.Steps)
        {
            foreach (var part in step.Places)
                _placedBy.TryAdd(part, step.Name);
        }

        added = added with { Steps = Steps() };
        added = added with { Spaces = Nested(added) };
        added = added with { Joints = Inside(added) };
        var whole = Joining.Join(_record, added);
        var problems = ClosingCheck.Of(whole);
        if (problems.Count > 0)
            return new Outcome<Started>.Refused([.. problems.Select(p => p.What with { Field = p.Of.ToString()! })]);
        var known = Plan.Of(_record).Faults.Select(f => f.What).ToHashSet(StringComparer.Ordinal);
        var plan = Plan.Of(whole);
        return new Started(added)
        {
            Left = Left(),
            Taken = _names.Taken,
            Widened = [.. added.Spaces.SelectMany(Told), .. added.Joints.Where(j => _record.Joints.Any(o => o.Name == j.Name)).Select(j => $"{j.Name} lies in {j.In}")],
            Unplaced = Unplaced(plan),
            Faults = [.. plan.Faults.Where(f => !known.Contains(f.What))],
        };
    }

    private Fit Fit(Fit fit) => fit with { Name = _names.Of(fit.Name), Gap = [.. fit.Gap.Select(t => t with { Of = _names.Of(t.Of) })] };

    /// <summary>The steps that the engine lacks. A part is put in place once: where another step does it already, it is needed. What no step puts in place is not waited for.</summary>
    private List<Step> Steps()
    {
        var steps = new List<Step>();
        foreach (var drawn in New(_drawn.Record.Steps, _record.Steps, s => s.Name))
        {
            var named = Distinct(drawn.Places);
            var places = named.Where(p => _placedBy.TryAdd(p, drawn.Name)).ToList();
            steps.Add(drawn with
            {
                Places = places,
                Needs = [.. Distinct(drawn.Needs).Concat(named.Except(places)).Distinct()],
                Joints = [.. drawn.Joints.Where(j => !_dropped.Contains(j))],
                Brings = drawn.Joints.All(_dropped.Contains) ? null : drawn.Brings,
                Measures = [.. drawn.Measures.Select(_names.Of).Distinct()],
                Holds = [.. drawn.Holds.Select(Hold).DistinctBy(h => h.What, StringComparer.OrdinalIgnoreCase)],
            });
        }

        var known = steps.Concat(_record.Steps).Select(s => s.Name).ToHashSet();
        for (var i = 0; i < steps.Count; i++)
            steps[i] = steps[i] with { Needs = [.. steps[i].Needs.Where(_placedBy.ContainsKey)], After = [.. steps[i].After.Where(a => known.Contains(a.Step))] };

        return steps;
    }

    private HoldPoint Hold(HoldPoint hold)
    {
        var figure = hold.Figure is { } drawn ? _names.Of(drawn) : (FigureName?)null;
        return hold with { Figure = figure, What = hold.What == hold.Figure?.ToString() ? figure.ToString()! : hold.What, Part = hold.Part is { } part ? _names.Of(part) : null };
    }

    /// <summary>Spaces that the engine has, with the starter's parts that lie in them.</summary>
    private IEnumerable<Space> Wider()
    {
        foreach (var drawn in _drawn.Record.Spaces)
        {
            if (_record.Spaces.FirstOrDefault(s => s.Name == drawn.Name) is { } there && Distinct(drawn.Parts).Where(p => !there.Parts.Any(p.IsWithin)).ToList() is { Count: > 0 } more)
                yield return there with { Parts = [.. there.Parts, .. more] };
        }
    }

    /// <summary>The spaces to be written: where nothing says in what one lies and its parts all lie in another, it lies in the innermost such.</summary>
    private IReadOnlyList<Space> Nested(EngineRecord added)
    {
        var all = Joining.Join(_record, added).Spaces;
        var spaces = added.Spaces.ToDictionary(s => s.Name);
        foreach (var space in all.Where(s => s.In is null && s.Parts.Count > 0))
        {
            var around = all.Where(o => o.Name != space.Name && Holds(o, space) && !Holds(space, o))
                .OrderByDescending(o => all.Count(a => a.Name != o.Name && Holds(a, o)))
                .FirstOrDefault();
            if (around is not null)
                spaces[space.Name] = space with { In = around.Name };
        }

        return [.. spaces.Values];
    }

    /// <summary>
    /// The joints to be written. One of which nothing says where it lies, and that holds something inside a space to a wall of it, lies in that space: it is to be made before
    /// the space is closed. The walls of a space are what the joints hold together by which it is closed.
    /// </summary>
    private IReadOnlyList<Joint> Inside(EngineRecord added)
    {
        var plan = Plan.Of(Joining.Join(_record, added));
        var joints = added.Joints.ToDictionary(j => j.Name);
        var closed = plan.Spaces.All.Select(s => (s.Name, By: plan.Closing(s.Name).SelectMany(c => c.Joints).ToHashSet())).Where(s => s.By.Count > 0)
            .Select(s => (s.Name, s.By, Walls: plan.Record.Joints.Where(j => s.By.Contains(j.Name)).SelectMany(j => j.Parts).ToHashSet()))
            .OrderByDescending(s => plan.Spaces.Upwards(s.Name).Count)
            .ToList();
        foreach (var joint in plan.Record.Joints.Where(j => j.In is null && plan.Spaces.Of(j.Name).Count == 0))
        {
            var around = closed.Where(s => !s.By.Contains(joint.Name)
                && joint.Parts.Any(p => plan.Spaces.Of(p).Contains(s.Name))
                && joint.Parts.All(p => s.Walls.Contains(p) || plan.Spaces.Of(p).Contains(s.Name))).Select(s => (SpaceName?)s.Name).FirstOrDefault();
            if (around is not null)
                joints[joint.Name] = joint with { In = around };
        }

        return [.. joints.Values];
    }

    private IEnumerable<string> Told(Space space)
    {
        if (_record.Spaces.FirstOrDefault(s => s.Name == space.Name) is not { } there)
            yield break;
        foreach (var part in space.Parts.Except(there.Parts))
            yield return $"{part} lies in {space.Name}";
        if (space.In != there.In)
            yield return $"{space.Name} lies in {space.In}";
    }

    private static bool Holds(Space around, Space space) => space.Parts.Count > 0 && space.Parts.All(p => around.Parts.Any(p.IsWithin));

    private IReadOnlyList<string> Left() =>
    [
        .. _drawn.Record.Parts.Where(p => !_drawn.PartsIfThere.Contains(p.Name)).Select(p => _names.Of(p.Name)).Where(_names.IsThere).Distinct().Select(p => $"part {p}"),
        .. _drawn.Record.Dimensions.Concat<Figure>(_drawn.Record.Fits).Select(f => _names.Of(f.Name)).Where(f => _record.Index.Figure(f) is not null).Distinct()
            .Select(f => $"{(_record.Index.Figure(f) is Fit ? "fit" : "dimension")} {f}"),
        .. There(_drawn.Record.Spaces, _record.Spaces, s => s.Name).Select(s => $"space {s.Name}"),
        .. There(_drawn.Record.Joints, _record.Joints, j => j.Name).Select(j => $"joint {j.Name}"),
        .. There(_drawn.Record.Steps, _record.Steps, s => s.Name).Select(s => $"step {s.Name}"),
    ];

    /// <summary>What lies in the spaces that the starter draws or within the parts that it puts in place, is to be fitted, and is put in place by no step.</summary>
    private IReadOnlyList<PartName> Unplaced(Plan plan)
    {
        var drawn = _drawn.Record.Spaces.Select(s => s.Name).ToHashSet();
        var own = _drawn.Record.Steps.SelectMany(s => s.Places).Select(_names.Of).ToHashSet();
        var placed = plan.Steps.SelectMany(s => s.Places).ToHashSet();
        var within = plan.Record.Parts.Select(p => p.Name.Parent).OfType<PartName>().ToHashSet();
        return [.. plan.Record.Parts.Select(p => p.Name).Where(p => !within.Contains(p) && !placed.Contains(p) && plan.IsFitted(p) && (plan.Spaces.Of(p).Overlaps(drawn) || own.Any(p.IsWithin))).Order()];
    }

    private IReadOnlyList<PartName> Distinct(IReadOnlyList<PartName> parts) => [.. parts.Select(_names.Of).Where(p => !_absent.Contains(p)).Distinct()];

    private static IEnumerable<T> New<T, TName>(IReadOnlyList<T> drawn, IReadOnlyList<T> there, Func<T, TName> name) => drawn.ExceptBy(there.Select(name), name);

    private static IEnumerable<T> There<T, TName>(IReadOnlyList<T> drawn, IReadOnlyList<T> there, Func<T, TName> name) => drawn.IntersectBy(there.Select(name), name);
}
