using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Workshop;

/// <summary>A step signed as done.</summary>
public sealed record SignEntry(string Engine, string Step, string By) : Entry(Engine, By)
{
    /// <summary>The second look that the step asks for.</summary>
    public bool SecondLook { get; init; }

    /// <summary>That the photograph asked for was taken.</summary>
    public bool Photographed { get; init; }

    /// <summary>The pieces chosen for the parts that the step places are written as placed with it.</summary>
    public bool Placing { get; init; }

    public string? Note { get; init; }
}

/// <summary>How far a joint is made.</summary>
public sealed record JointEntry(string Engine, string Joint, JointStage Stage, string By) : Entry(Engine, By)
{
    /// <summary>What was put on it, as typed: a torque, a stretch, an angle.</summary>
    public string? Applied { get; init; }

    public string? Note { get; init; }

    /// <summary>The codes of questions answered.</summary>
    public IReadOnlySet<string> Confirmed { get; init; } = new HashSet<string>(StringComparer.Ordinal);
}

/// <summary>A hold point accepted, by name.</summary>
public sealed record AcceptEntry(string Engine, string Step, string Hold, string By) : Entry(Engine, By)
{
    public string? Why { get; init; }
}

/// <summary>A departure from the maker's method.</summary>
public sealed record DepartureEntry(string Engine, string What, string Why, string By) : Entry(Engine, By)
{
    public DepartureKind Kind { get; init; }

    public string? Piece { get; init; }

    public string? Joint { get; init; }

    /// <summary>What may be closed over because of it, such as <c>joint sump-studs</c>.</summary>
    public string? Item { get; init; }

    public string? Evidence { get; init; }

    /// <summary>For which it stands; none named: for what the engine is for now.</summary>
    public IReadOnlyList<Purpose> Purposes { get; init; } = [];

    public string? Undoing { get; init; }
}

/// <summary>Something put off with a deadline.</summary>
public sealed record OwedEntry(string Engine, string What, Deadline Deadline, string By) : Entry(Engine, By)
{
    /// <summary>What is closed over meanwhile, such as <c>step lock-rear-nut</c>.</summary>
    public string? Item { get; init; }

    public string? Why { get; init; }
}

/// <summary>What was owed is done.</summary>
public sealed record SettleEntry(string Engine, FactId Of, string By) : Entry(Engine, By)
{
    public string? How { get; init; }
}

/// <summary>Plugs, jets, shims, tools or rags counted out, or counted in again.</summary>
public sealed record CountEntry(string Engine, string What, string Number, CountedWay Way, string By) : Entry(Engine, By)
{
    public string? Space { get; init; }

    public string? Note { get; init; }
}

/// <summary>A signature or a joint's state undone, by no mistake: of a step, of a joint, or one fact.</summary>
public sealed record UndoEntry(string Engine, string By) : Entry(Engine, By)
{
    public string? Step { get; init; }

    public string? Joint { get; init; }

    public FactId? Of { get; init; }

    public string? Why { get; init; }
}
