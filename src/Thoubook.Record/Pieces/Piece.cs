namespace Thoubook.Record.Pieces;

/// <summary>The physical thing with a tag.</summary>
public sealed record Piece(PieceTag Tag)
{
    public int Revision { get; init; }

    public PieceOrigin Origin { get; init; } = PieceOrigin.Original;

    /// <summary>The part it was made for or came out of, where known.</summary>
    public PartName? For { get; init; }

    /// <summary>The modification state it belongs to.</summary>
    public string? ModificationState { get; init; }

    /// <summary>The repair size it had when it came to the bench; later ones stand in its work.</summary>
    public string? RepairSize { get; init; }

    /// <summary>Where it differs from the part's.</summary>
    public string? Material { get; init; }

    public string? Note { get; init; }
}

public enum PieceOrigin
{
    Original,
    Donor,
    NewMade,
    Bought,
}
