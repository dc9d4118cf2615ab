using Thoubook.Record.Documents;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Closing;

/// <summary>
/// A piece of assembly work. What it has to do with parts, joints and spaces gives its place in the order; only what cannot be found
/// from these is written in <see cref="After"/>.
/// </summary>
public sealed record Step(StepName Name)
{
    public int Revision { get; init; }

    public StepKind Kind { get; init; }

    /// <summary>In words; null: its name says enough.</summary>
    public string? What { get; init; }

    /// <summary>How the engine must lie; null: as it likes.</summary>
    public Attitude? Attitude { get; init; }

    public IReadOnlyList<string> Tools { get; init; } = [];

    /// <summary>[s] expected; null: not estimated, taken as none.</summary>
    public Quantity? Time { get; init; }

    /// <summary>[s] What is built on this step waits so long after it. What merely closes a space over it does not.</summary>
    public Quantity? Cure { get; init; }

    /// <summary>[s] What is built on this step must follow within so long, before the jointing or the heat is gone.</summary>
    public Quantity? Open { get; init; }

    /// <summary>How many people it holds while it lasts.</summary>
    public int People { get; init; } = 1;

    /// <summary>The parts that it puts in place.</summary>
    public IReadOnlyList<PartName> Places { get; init; } = [];

    /// <summary>Parts that must be in place before it.</summary>
    public IReadOnlyList<PartName> Needs { get; init; } = [];

    /// <summary>The joints that it works on.</summary>
    public IReadOnlyList<JointName> Joints { get; init; } = [];

    /// <summary>The state to which it brings its joints; null: all that the joint asks for.</summary>
    public JointStage? Brings { get; init; }

    /// <summary>The spaces that must be open for it, beside those in which its parts and joints lie.</summary>
    public IReadOnlyList<SpaceName> In { get; init; } = [];

    /// <summary>The spaces that it closes.</summary>
    public IReadOnlyList<SpaceName> Closes { get; init; } = [];

    /// <summary>The dimensions and fits that it measures.</summary>
    public IReadOnlyList<FigureName> Measures { get; init; } = [];

    /// <summary>What must be accepted before it may be signed.</summary>
    public IReadOnlyList<HoldPoint> Holds { get; init; } = [];

    /// <summary>Steps that come before it for a reason that nothing else shows.</summary>
    public IReadOnlyList<ComesAfter> After { get; init; } = [];

    /// <summary>Another person, or the same on another day, looks and signs too.</summary>
    public bool SecondLook { get; init; }

    /// <summary>What is to be photographed before it is signed; null: nothing.</summary>
    public string? Photograph { get; init; }

    /// <summary>What is spoilt when the step is undone and must be new: a gasket, tab washers, jointing.</summary>
    public IReadOnlyList<string> Spoils { get; init; } = [];

    public Citation? Source { get; init; }

    public string? Note { get; init; }

    /// <summary>[s] whole.</summary>
    public long Seconds => Whole(Time);

    /// <summary>[s] whole.</summary>
    public long CureSeconds => Whole(Cure);

    /// <summary>[s] whole; 0 where nothing need follow in time.</summary>
    public long OpenSeconds => Whole(Open);

    /// <summary>What it is, in words.</summary>
    public string Said => What ?? Name.Text;

    private static long Whole(Quantity? time) => time is null ? 0 : (long)Math.Round(time.Si);
}

public enum StepKind
{
    Place,
    Join,
    Measure,
    Inspect,
    Lubricate,
    Seal,
    Close,

    [Word("turn by hand")]
    TurnByHand,
    Test,
}

public enum Attitude
{
    Upright,
    Inverted,

    [Word("on its side")]
    OnItsSide,

    [Word("on its nose")]
    OnItsNose,

    [Word("on its tail")]
    OnItsTail,
}

/// <summary>A step that comes first, and why; null where the reason is not yet written.</summary>
public sealed record ComesAfter(StepName Step, string? Why);

/// <summary>What must be accepted before a step may be signed.</summary>
/// <param name="Kind">On what.</param>
/// <param name="What">In words; for a fit or a dimension its name where nothing more is said.</param>
public sealed record HoldPoint(HoldKind Kind, string What)
{
    /// <summary>The fit or the dimension.</summary>
    public FigureName? Figure { get; init; }

    /// <summary>The part that it is about.</summary>
    public PartName? Part { get; init; }
}

public enum HoldKind
{
    /// <summary>By hand and eye: turns free, seats all round. Accepted with a name.</summary>
    Judgement,
    Fit,
    Dimension,

    /// <summary>Something looked for on a part: a crack test, a light through an oil hole.</summary>
    Finding,
    Cleanliness,

    /// <summary>Which way round: marks, holes in line, arrows.</summary>
    Orientation,

    /// <summary>The right one of several that look alike.</summary>
    Identity,

    /// <summary>That it can be reached afterwards.</summary>
    Access,
}
