namespace Thoubook.Record.Closing;

/// <summary>A space looked into on paper: what lies in it and how it was left.</summary>
/// <param name="Space">Which.</param>
/// <param name="ClosedBy">The signatures that close it; empty while it is open.</param>
public sealed record InsideLook(SpaceName Space, IReadOnlyList<Signature> ClosedBy)
{
    public bool IsClosed => ClosedBy.Count > 0;

    /// <summary>The spaces within it.</summary>
    public IReadOnlyList<SpaceName> Spaces { get; init; } = [];

    public IReadOnlyList<PieceInside> Pieces { get; init; } = [];

    /// <summary>The fits that have to do with a part in it.</summary>
    public IReadOnlyList<FigureName> Fits { get; init; } = [];

    public IReadOnlyList<JointInside> Joints { get; init; } = [];

    public IReadOnlyList<Departure> Departures { get; init; } = [];

    public IReadOnlyList<Owed> Debts { get; init; } = [];

    public IReadOnlyList<PhotographInside> Photographs { get; init; } = [];

    /// <summary>Counted out of it, or used in it, and not counted in.</summary>
    public IReadOnlyList<Want> LeftOver { get; init; } = [];
}

/// <summary>A part and the piece in it; null where nothing was written as placed.</summary>
public sealed record PieceInside(PartName Part, PieceTag? Piece, Want? Want);

/// <summary>A joint and its last state that stands; null: not made.</summary>
public sealed record JointInside(Joint Joint, JointState? State, Want? Want);

/// <summary>A photograph that a step asks for, and whether it was taken.</summary>
public sealed record PhotographInside(StepName Step, string What, bool Taken);
