namespace Thoubook.Record.Closing;

/// <summary>One step comes before another, and why.</summary>
/// <param name="First">What comes first.</param>
/// <param name="Then">What comes after it.</param>
/// <param name="Kind">From what it was found.</param>
/// <param name="About">The space for which it is; else why, in words.</param>
public sealed record PlanEdge(Step First, Step Then, EdgeKind Kind, string About)
{
    /// <summary>In words. Most edges are for a space, and few of them are ever read.</summary>
    public string Why => Kind == EdgeKind.Space ? $"it lies in {About}, which {Then.Name} closes" : About;

    /// <summary>[s] between the end of the first and the beginning of the other.</summary>
    public long Wait => Kind == EdgeKind.Space ? 0 : First.CureSeconds;
}

public enum EdgeKind
{
    /// <summary>A part must be in place.</summary>
    Part,

    /// <summary>A joint is made state by state, and needs all its parts.</summary>
    Joint,

    /// <summary>What lies in a space comes before the step that closes it.</summary>
    Space,

    /// <summary>What a step waits for is measured by another.</summary>
    Hold,

    [Word("by hand")]
    ByHand,
}

/// <summary>Something wrong in a plan, with the steps that are concerned.</summary>
/// <param name="Kind">What sort of fault.</param>
/// <param name="What">In words, the steps named.</param>
/// <param name="Steps">The steps concerned, in order round a circle; empty where none is.</param>
public sealed record PlanFault(PlanFaultKind Kind, string What, IReadOnlyList<StepName> Steps);

public enum PlanFaultKind
{
    /// <summary>Steps that each wait for another of them: none can be the first.</summary>
    Circle,

    /// <summary>Two things said that cannot both be.</summary>
    Contradiction,

    /// <summary>Something that nothing else of the plan has to do with.</summary>
    Orphan,
}
