using NodaTime;
using Thoubook.Record;
using Thoubook.Store;

namespace Thoubook.Workshop;

public sealed partial class OpenWorkshop
{
    /// <summary>Strikes a fact out. A strike-out can be struck out in its turn, which undoes it.</summary>
    public Outcome<StrikeOut> StrikeOut(StrikeOutEntry entry) => Engine(entry.Engine).Then(record =>
    {
        var asked = new Asked(record);
        var why = asked.Words(entry.Why, "why", "The reason is kept beside what is struck out.");
        if (record.Index.Fact(entry.Of) is not { } fact)
            asked.Refuse(new("unknown-fact", "of", entry.Of.ToString(), "This engine has no entry with that identifier.", "Take the identifier from the list of readings."));
        else if (record.Index.StrikeOutOf(fact.Id) is { } struck && struck.Id != entry.Id)
            asked.Refuse(new("struck-out-already", "of", fact.Headline, $"It was struck out already by {struck.By}: {struck.Why}.", "Nothing need be done."));
        if (asked.Problems.Count > 0)
            return asked.Refused<StrikeOut>();
        var (id, at) = Signed(entry);
        return Write(entry, record, new StrikeOut(id, at, entry.By, entry.Of, why));
    });

    /// <summary>Chooses a piece for a part: fits and the oil use it from now on.</summary>
    public Outcome<Chosen> Choose(PieceEntry entry) => Occupy(entry, (id, at, by, piece, part) => new Chosen(id, at, by, piece, part));

    /// <summary>Places a piece in a part: checks and closing use it from now on.</summary>
    public Outcome<Placed> Place(PieceEntry entry) => Occupy(entry, (id, at, by, piece, part) => new Placed(id, at, by, piece, part));

    /// <summary>Ends a placing or a choice.</summary>
    public Outcome<Lifted> Lift(LiftEntry entry) => Engine(entry.Engine).Then(record =>
    {
        var asked = new Asked(record);
        var of = entry.Of;
        if (asked.Name<PieceTag>(entry.Piece, PieceTag.TryRead, "piece") is { } piece && of is null)
        {
            of = (entry.Id is { } id ? record.Index.Fact(id) as Lifted : null)?.Of
                ?? InForce(record, record.Placings, p => p.Piece, piece, p => record.Index.PlacedIn(p.Part)?.Id)
                ?? InForce(record, record.Choices, c => c.Piece, piece, c => record.Index.ChosenFor(c.Part)?.Id);
            if (of is null)
                asked.Refuse(new("not-in-a-part", "piece", $"\"{piece}\"", "This piece is neither placed in a part of this engine nor chosen for one.", Nearest.Advice(piece.Text, record.Pieces.Select(p => p.Tag.Text), "Nothing need be done.")));
        }
        else if (of is { } named && record.Index.Fact(named) is not (Chosen or Placed))
        {
            asked.Refuse(new("unknown-fact", "of", named.ToString(), "This engine has no choice and no placing with that identifier.", "Name the piece instead."));
        }
        else if (of is null && asked.Problems.Count == 0)
        {
            asked.Refuse(new("piece-missing", "piece", "nothing", "The tag of the piece that is lifted out.", "Name it."));
        }

        if (asked.Problems.Count > 0)
            return asked.Refused<Lifted>();
        var (own, at) = Signed(entry);
        return Write(entry, record, new Lifted(own, at, entry.By, of!.Value) { Why = Blank(entry.Why) });
    });

    /// <summary>Writes down work done on a piece: older readings of what it altered no longer count.</summary>
    public Outcome<Work> AddWork(WorkEntry entry) => Engine(entry.Engine).Then(record =>
    {
        var asked = new Asked(record);
        var piece = KnownPiece(asked, record, entry.Piece);
        var what = asked.Words(entry.What, "what", "What was done, such as lapped or ground.");
        var part = piece is { } tag ? record.Index.PartOf(tag) ?? record.Index.Piece(tag)?.For : null;
        var locals = record.Dimensions.Where(d => part is null || d.Name.Part == part).Select(d => d.Name.Local).Distinct(StringComparer.Ordinal).ToList();
        var altered = entry.Altered.Select(a => a.Trim()).Where(a => a.Length > 0).Select(a => FigureName.TryRead(a, out var full, out _) ? full.Local : a).Distinct(StringComparer.Ordinal).ToList();
        foreach (var local in altered.Except(locals, StringComparer.Ordinal))
            asked.Refuse(new("unknown-dimension", "altered", $"\"{local}\"", part is { } at ? $"{at} has the dimensions: {string.Join(", ", locals)}." : "No part of this engine has a dimension of that name.", Nearest.Advice(local, locals, "Name one of the part's dimensions.")));
        var size = Blank(entry.RepairSize);
        if (size is not null && altered.Count == 0)
            asked.Refuse(new("size-of-nothing", "repair-size", $"\"{size}\"", "A repair size is that of the dimensions altered.", "Name the dimensions that the work altered."));
        var sizes = record.Dimensions.Where(d => (part is null || d.Name.Part == part) && altered.Contains(d.Name.Local, StringComparer.Ordinal)).SelectMany(d => d.RepairSizes).Select(r => r.Name).Distinct(StringComparer.Ordinal).ToList();
        if (size is not null && altered.Count > 0 && !sizes.Contains(size, StringComparer.Ordinal))
            asked.Refuse(new("unknown-repair-size", "repair-size", $"\"{size}\"", sizes.Count > 0 ? $"The repair sizes are: {string.Join(", ", sizes)}." : "These dimensions have no repair sizes.", Nearest.Advice(size, sizes, "Name one of them, or add it to the dimension first.")));
        if (asked.Problems.Count > 0)
            return asked.Refused<Work>();
        var (id, when) = Signed(entry);
        return Write(entry, record, new Work(id, when, entry.By, piece!.Value, what) { Altered = altered, RepairSize = size });
    });

    /// <summary>Writes down something seen.</summary>
    public Outcome<Finding> AddFinding(FindingEntry entry) => Engine(entry.Engine).Then(record =>
    {
        var asked = new Asked(record);
        var piece = Blank(entry.Piece) is null ? null : KnownPiece(asked, record, entry.Piece!);
        var part = asked.Part(entry.Part);
        var what = asked.Words(entry.What, "what", "What was seen.");
        if (asked.Problems.Count == 0 && piece is null && part is null)
            asked.Refuse(new("finding-of-nothing", "piece", "neither a piece nor a part", "A finding is of a piece or at a part.", "Name one."));
        if (asked.Problems.Count > 0)
            return asked.Refused<Finding>();
        var (id, at) = Signed(entry);
        return Write(entry, record, new Finding(id, at, entry.By, piece, part, what) { Outcome = entry.Outcome });
    });

    private Outcome<T> Occupy<T>(PieceEntry entry, Func<FactId, OffsetDateTime, string, PieceTag, PartName, T> make)
        where T : Fact => Engine(entry.Engine).Then(record =>
    {
        var asked = new Asked(record);
        var part = asked.Part(entry.Part);
        if (Blank(entry.Part) is null)
            asked.Refuse(new("part-missing", "part", "nothing", "The part that the piece is for.", "Name it."));
        var piece = KnownPiece(asked, record, entry.Piece);
        if (asked.Problems.Count > 0)
            return asked.Refused<T>();
        var (id, at) = Signed(entry);
        return Write(entry, record, make(id, at, entry.By, piece!.Value, part!.Value), elsewhere: LiftElsewhere(piece.Value, record, at, entry.By));
    });

    /// <summary>A piece that goes into this engine leaves the others: what ends there is written with it.</summary>
    private List<Change> LiftElsewhere(PieceTag piece, EngineRecord here, OffsetDateTime at, string by)
    {
        var changes = new List<Change>();
        foreach (var name in _store.EnginesThatHeld(piece).Where(n => n != here.Engine.Name))
        {
            if (!Engine(name).IsOk(out var record, out _))
                continue;
            var ended = new[]
            {
                InForce(record, record.Placings, p => p.Piece, piece, p => record.Index.PlacedIn(p.Part)?.Id),
                InForce(record, record.Choices, c => c.Piece, piece, c => record.Index.ChosenFor(c.Part)?.Id),
            }.OfType<FactId>().Select(of => new Lifted(FactId.New(), at, by, of) { Why = $"went to {here.Engine.Name}" }).ToList();
            if (ended.Count > 0)
                changes.Add(new Change(name, by) { Facts = ended });
        }

        return changes;
    }

    /// <summary>A piece of the workshop, in this engine or not; null where it was refused.</summary>
    private PieceTag? KnownPiece(Asked asked, EngineRecord record, string text)
    {
        if (Blank(text) is null)
        {
            asked.Refuse(new("piece-missing", "piece", "nothing", "The tag of the piece.", "Name it."));
            return null;
        }

        if (asked.Name<PieceTag>(text, PieceTag.TryRead, "piece") is not { } piece)
            return null;
        if (record.Index.Piece(piece) is not null || _store.HomeOf(piece) is not null)
            return piece;
        asked.Refuse(new("unknown-piece", "piece", $"\"{piece}\"", "There is no piece of that tag in this workshop.", Nearest.Advice(piece.Text, record.Pieces.Select(p => p.Tag.Text), "Add the piece first, or name one that is there.")));
        return null;
    }

    private static FactId? InForce<T>(EngineRecord record, IReadOnlyList<T> facts, Func<T, PieceTag> pieceOf, PieceTag piece, Func<T, FactId?> now)
        where T : Fact => facts.LastOrDefault(f => pieceOf(f) == piece && now(f) == f.Id && record.Index.LiftingOf(f.Id) is null)?.Id;

    private (FactId Id, OffsetDateTime At) Signed(Entry entry) => (entry.Id ?? FactId.New(), entry.At ?? Now());

    /// <summary>Writes one fact, and what has to be written with it, in one transaction; gives the fact as stored, also where it was stored before.</summary>
    private Outcome<T> Write<T>(Entry entry, EngineRecord record, T fact, Func<Change, Change>? with = null, IReadOnlyList<Change>? elsewhere = null)
        where T : Fact
    {
        var change = new Change(record.Engine.Name, entry.By) { Circumstances = entry.At is null ? Circumstances.FilledIn : Circumstances.Stated };
        change = with?.Invoke(change) ?? change;
        return _store.Write([change with { Facts = [.. change.Facts, fact] }, .. elsewhere ?? []]).Then<T>(changed =>
        {
            var stored = changed[0].Facts[^1];
            GoOnFrom(record.Engine.Name, changed);
            return stored.Sequence > record.Sequence || !Engine(record.Engine.Name).IsOk(out var now, out _) ? (T)stored : (T)(now.Index.Fact(stored.Id) ?? stored);
        });
    }
}
