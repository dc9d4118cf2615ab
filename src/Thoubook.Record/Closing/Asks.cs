using Thoubook.Record.Measures;

namespace Thoubook.Record.Closing;

/// <summary>Something asked of a part or a joint before it is disturbed, because that destroys it.</summary>
/// <param name="Kind">What sort of thing.</param>
/// <param name="Of">The part or the joint.</param>
/// <param name="What">The name of the figure, or in words.</param>
public sealed record Ask(AskKind Kind, WorkItem Of, string What)
{
    public FigureName? Figure { get; init; }
}

public enum AskKind
{
    /// <summary>A float, backlash, timing, projection: it is there only while the parts are together.</summary>
    Figure,
    Photograph,

    /// <summary>Which shims, in which order, and where.</summary>
    Shims,
    Locking,

    /// <summary>How hard it came undone.</summary>
    [Word("release feel")]
    Release,
    Seal,
    Orientation,
    Identity,

    [Word("by hand")]
    ByHand,

    /// <summary>A tag that survives washing.</summary>
    Tag,
}

/// <summary>What taking things apart destroys, found from the record.</summary>
internal sealed class Asks
{
    private static readonly FitKind[] Assembled = [FitKind.EndFloat, FitKind.Backlash, FitKind.Gap, FitKind.Nip, FitKind.Protrusion];

    private readonly EngineRecord _record;
    private readonly Plan _plan;
    private readonly List<(FigureName Figure, HashSet<PartName> Parts)> _figures;

    public Asks(Plan plan)
    {
        (_plan, _record) = (plan, plan.Record);
        var measuring = plan.Steps.SelectMany(s => s.Measures.Select(m => (m, s))).ToLookup(m => m.m, m => m.s);
        _figures =
        [
            .. _record.Fits.Where(f => Assembled.Contains(f.FitKind) || measuring.Contains(f.Name)).Select(f => (f.Name, Together(f, measuring[f.Name]))),
            .. _record.Dimensions.Where(d => measuring[d.Name].Any(s => s.Needs.Count > 0)).Select(d => (d.Name, measuring[d.Name].SelectMany(s => s.Needs).Append(d.Name.Part).ToHashSet())),
        ];
    }

    /// <summary>What is destroyed when these joints are undone and these parts taken off, by one step or by none.</summary>
    public IReadOnlyList<Ask> Of(Step? step, IReadOnlyList<PartName> parts, IReadOnlyList<Joint> joints)
    {
        var off = parts.ToHashSet();
        var asks = new List<Ask>();
        foreach (var (figure, of) in _figures)
        {
            WorkItem? at = parts.Where(of.Contains).Select(p => (WorkItem?)WorkItem.Of(p)).FirstOrDefault()
                ?? joints.Where(j => j.Parts.Distinct().Count(of.Contains) > 1).Select(j => (WorkItem?)WorkItem.Of(j.Name)).FirstOrDefault();
            if (at is { } item)
                asks.Add(new(AskKind.Figure, item, figure.ToString()) { Figure = figure });
        }

        var first = parts.Select(WorkItem.Of).Concat(joints.Select(j => WorkItem.Of(j.Name))).Cast<WorkItem?>().FirstOrDefault();
        if (step?.Photograph is { } photograph && first is { } shown)
            asks.Add(new(AskKind.Photograph, shown, photograph));
        foreach (var shims in parts.Concat(joints.SelectMany(j => j.Parts)).Distinct().Where(IsShim))
            asks.Add(new(AskKind.Shims, WorkItem.Of(shims), "which shims, in which order, where"));
        foreach (var joint in joints)
            asks.AddRange(OfJoint(joint));
        foreach (var (hold, of) in Marks(step, off))
        {
            if ((hold.Part is { } part ? WorkItem.Of(part) : first) is { } item && of)
                asks.Add(new(hold.Kind == HoldKind.Identity ? AskKind.Identity : AskKind.Orientation, item, hold.What));
        }

        foreach (var part in parts)
        {
            asks.AddRange((_record.Index.Part(part)?.Asks ?? []).Select(a => new Ask(AskKind.ByHand, WorkItem.Of(part), a)));
            asks.Add(new(AskKind.Tag, WorkItem.Of(part), "tag"));
        }

        return [.. asks.OrderBy(a => a.Kind)];
    }

    private static IEnumerable<Ask> OfJoint(Joint joint)
    {
        var of = WorkItem.Of(joint.Name);
        if (joint.Locking is { } locking)
            yield return new(AskKind.Locking, of, locking.Contains("wire", StringComparison.OrdinalIgnoreCase) ? "route of the lock-wire" : "how it is locked");
        if (joint.Tightening is not null)
            yield return new(AskKind.Release, of, "release feel");
        if (joint.Sealing is not null)
            yield return new(AskKind.Seal, of, "what sealed it, and how thick");
        foreach (var ask in joint.Asks)
            yield return new(AskKind.ByHand, of, ask);
    }

    /// <summary>Which way round and which one: of the parts taken off, and of the step itself where no part is named.</summary>
    private IEnumerable<(HoldPoint Hold, bool IsHere)> Marks(Step? step, HashSet<PartName> off) => _plan.Steps
        .SelectMany(s => s.Holds.Where(h => h.Kind is HoldKind.Orientation or HoldKind.Identity).Select(h => (h, h.Part is { } part ? off.Contains(part) : s.Name == step?.Name)))
        .Where(h => h.Item2);

    private bool IsShim(PartName part) => part.Leaf.Contains("shim", StringComparison.Ordinal) || (_record.Index.Part(part)?.Material?.Contains("shim", StringComparison.OrdinalIgnoreCase) ?? false);

    /// <summary>The parts that must be together for a fit to be there: those of its gap, else those that its measuring needs, else all within its own part.</summary>
    private HashSet<PartName> Together(Fit fit, IEnumerable<Step> measuring)
    {
        if (fit.Gap.Count > 0)
            return [.. fit.Gap.Select(t => t.Of.Part)];
        var needed = measuring.SelectMany(s => s.Needs).ToHashSet();
        return needed.Count > 0 ? needed : [.. _record.Parts.Select(p => p.Name).Where(p => p.IsWithin(fit.Name.Part))];
    }
}
