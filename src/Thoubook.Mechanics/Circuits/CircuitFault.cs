namespace Thoubook.Mechanics.Circuits;

/// <summary>Why a circuit cannot be solved.</summary>
public enum CircuitFaultKind
{
    /// <summary>No node has a fixed pressure.</summary>
    NoReservoir,

    /// <summary>Nodes that are joined to each other and to no reservoir.</summary>
    IslandWithoutReservoir,

    /// <summary>A node with a single element that must carry oil.</summary>
    OpenEnd,

    /// <summary>A node that no element in use meets.</summary>
    NodeNobodyFeeds,

    /// <summary>Two pumps with nothing between them that takes up the difference of what they move.</summary>
    PumpsInSeries,

    /// <summary>Oil is forced into nodes that it cannot leave.</summary>
    NoWayOut,

    /// <summary>Oil is drawn from nodes that nothing feeds.</summary>
    NoWayIn,

    /// <summary>A consumer on nodes that oil cannot reach.</summary>
    ConsumerCannotBeFed,

    /// <summary>A size that no such element can have.</summary>
    UnphysicalSize,

    /// <summary>Two nodes or two elements of one name.</summary>
    DuplicateName,

    /// <summary>An element that begins where it ends.</summary>
    FromIsTo,

    /// <summary>An element at a node that is not in the circuit.</summary>
    UnknownNode,

    /// <summary>The steps were used up before it balanced.</summary>
    NotConverged,
}

/// <summary>What is wrong with a circuit, and where.</summary>
/// <param name="Kind">What kind of fault.</param>
/// <param name="Elements">Names of the elements concerned.</param>
/// <param name="Nodes">Names of the nodes concerned.</param>
/// <param name="Words">The same in words: what was found and what to do.</param>
public sealed record CircuitFault(CircuitFaultKind Kind, IReadOnlyList<string> Elements, IReadOnlyList<string> Nodes, string Words);

/// <summary>What a solution is to be read with.</summary>
public enum CircuitCautionKind
{
    /// <summary>A pressure below that of nothing at all, at a pump without an inlet limit.</summary>
    SuctionBelowVacuum,

    /// <summary>The pump does not fill.</summary>
    PumpStarved,

    /// <summary>The oil column in a turning drilling would part.</summary>
    ColumnBroken,

    /// <summary>A consumer does not get what it takes.</summary>
    ConsumerShort,
}

/// <summary>What a solution is to be read with, and where.</summary>
/// <param name="Kind">What kind.</param>
/// <param name="Element">Name of the element.</param>
/// <param name="Inlet">[Pa] absolute, at its first node.</param>
/// <param name="Share">[-] of its spaces that a pump fills, of its flow that a consumer gets; 0 for a column that parts.</param>
public sealed record CircuitCaution(CircuitCautionKind Kind, string Element, double Inlet, double Share);

/// <summary>A circuit made ready to be solved, or all that stands against it.</summary>
public abstract record CircuitOutcome
{
    private CircuitOutcome()
    {
    }

    /// <summary>Ready to be solved.</summary>
    /// <param name="Circuit">The circuit.</param>
    public sealed record Compiled(Circuit Circuit) : CircuitOutcome;

    /// <summary>It cannot be solved.</summary>
    /// <param name="Faults">Everything that is wrong.</param>
    public sealed record Insoluble(IReadOnlyList<CircuitFault> Faults) : CircuitOutcome;
}
