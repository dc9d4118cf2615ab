using Thoubook.Record.Closing;

namespace Thoubook.Web.Drawings.Closing;

/// <summary>A space as it is drawn: its cover, the steps in it by how they stand, and the spaces within it.</summary>
public sealed record Casing(Space Space, CoverState Cover)
{
    /// <summary>The steps that close it.</summary>
    public IReadOnlyList<DrawnStep> Closers { get; init; } = [];

    /// <summary>Those that lie in it and in nothing within it, in the order of the plan.</summary>
    public IReadOnlyList<DrawnStep> Steps { get; init; } = [];

    public IReadOnlyList<Casing> Within { get; init; } = [];

    /// <summary>Every step in it and in what lies within it, the steps that close it among them.</summary>
    public IEnumerable<DrawnStep> All => Steps.Concat(Closers).Concat(Within.SelectMany(w => w.All));

    /// <summary>Whether something in it is half done, stopped or can be done now.</summary>
    public bool IsAtWork => All.Any(s => s.State is StepState.HalfDone or StepState.CanDoNow or StepState.Stopped or StepState.Fallen);

    /// <summary>Nothing is to be done in it now: it is drawn small, with its steps folded.</summary>
    public bool IsSmall => !IsAtWork && All.Any();
}

/// <summary>A step as it is drawn.</summary>
/// <param name="Step">Which.</param>
/// <param name="State">How it stands.</param>
/// <param name="Says">How it stands, in a few words.</param>
public sealed record DrawnStep(Step Step, StepState State, string Says);
