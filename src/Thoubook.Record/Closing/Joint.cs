using Thoubook.Record.Documents;

namespace Thoubook.Record.Closing;

/// <summary>A fastened or sealed connection of two or more parts.</summary>
public sealed record Joint(JointName Name)
{
    public int Revision { get; init; }

    public IReadOnlyList<PartName> Parts { get; init; } = [];

    /// <summary>The space that it lies in; null: the innermost one in which all its parts lie.</summary>
    public SpaceName? In { get; init; }

    /// <summary>As the trade names it: <c>5/16 BSF</c>.</summary>
    public string? Thread { get; init; }

    /// <summary>How many fasteners; null: not said.</summary>
    public int? Number { get; init; }

    /// <summary>How it is tightened: the figure, whether dry or oiled, the pattern. Null: a joint that is not tightened.</summary>
    public string? Tightening { get; init; }

    /// <summary>How it is locked; null: it needs no locking.</summary>
    public string? Locking { get; init; }

    /// <summary>How it is sealed; null: it needs no sealing.</summary>
    public string? Sealing { get; init; }

    /// <summary>Looked at once more by itself after it is done.</summary>
    public bool Inspected { get; init; }

    /// <summary>What is asked before it is disturbed, beside what the record shows of itself.</summary>
    public IReadOnlyList<string> Asks { get; init; } = [];

    public Citation? Source { get; init; }

    public string? Note { get; init; }

    /// <summary>The state in which nothing more is to be done.</summary>
    public JointStage Last => Inspected ? JointStage.Inspected : Locking is not null ? JointStage.Locked : Tightening is not null ? JointStage.Tightened : JointStage.PulledUp;
}

/// <summary>How far a joint is made.</summary>
public enum JointStage
{
    Placed,

    [Word("pulled up")]
    PulledUp,
    Tightened,
    Locked,
    Inspected,
}
