using Thoubook.Record;

namespace Thoubook.Workshop;

/// <summary>
/// A part of which nobody has tagged a piece has one of its own, by the part's name. Tags are the workshop's, and two engines may well have a
/// part of one name: then the later engine's piece carries that engine's name as well, and the two are never taken for one.
/// </summary>
internal static class OwnPieces
{
    public static PieceTag TagIn(EngineName engine, PieceTag tag)
    {
        var ending = $" of {engine}";
        var room = 80 - ending.Length;
        return new PieceTag((tag.Text.Length > room ? tag.Text[^Math.Max(room, 1)..] : tag.Text) + ending);
    }

    /// <summary>The record with its own pieces told apart from those of other engines.</summary>
    public static EngineRecord ToldApart(EngineRecord record, Func<PieceTag, EngineName?> homeOf)
    {
        var renamed = new Dictionary<PieceTag, PieceTag>();
        foreach (var piece in record.Pieces)
        {
            if (piece.For?.Path == piece.Tag.Text && homeOf(piece.Tag) is { } home && home != record.Engine.Name)
                renamed[piece.Tag] = TagIn(record.Engine.Name, piece.Tag);
        }

        if (renamed.Count == 0)
            return record;

        PieceTag Tag(PieceTag tag) => renamed.GetValueOrDefault(tag, tag);
        PieceTag? TagOrNone(PieceTag? tag) => tag is { } named ? Tag(named) : null;
        return record with
        {
            Pieces = [.. record.Pieces.Select(p => p with { Tag = Tag(p.Tag) })],
            Readings = [.. record.Readings.Select(r => r with { Piece = Tag(r.Piece) })],
            Choices = [.. record.Choices.Select(c => c with { Piece = Tag(c.Piece) })],
            Placings = [.. record.Placings.Select(p => p with { Piece = Tag(p.Piece) })],
            Works = [.. record.Works.Select(w => w with { Piece = Tag(w.Piece) })],
            Findings = [.. record.Findings.Select(f => f with { Piece = TagOrNone(f.Piece) })],
            Decisions = [.. record.Decisions.Select(d => d with { Piece = TagOrNone(d.Piece) })],
        };
    }
}
