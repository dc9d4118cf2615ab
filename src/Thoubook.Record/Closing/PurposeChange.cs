namespace Thoubook.Record.Closing;

/// <summary>What would come of another purpose: departures that no longer stand and what undoing each costs, and lines of the permission that lapse.</summary>
public sealed class PurposeChange
{
    private PurposeChange(CloseUp closeUp, Purpose to)
    {
        var record = closeUp.Plan.Record;
        (From, To) = (record.Engine.Purpose, to);
        var here = Here(record).Where(d => Standing.Of(d, record).Stands).ToList();
        Falls =
        [
            .. here.Where(d => !d.StandsFor(to)).Select(d => new DepartureFalls(d, d.StandsFor(From), closeUp.ToUndo(Of(d, record))))
                .OrderByDescending(f => f.StandsNow).ThenByDescending(f => f.Cost.Minutes),
        ];
        Comes = [.. here.Where(d => d.StandsFor(to) && !d.StandsFor(From))];
        Lapses = to == From ? [] : [.. record.Permissions.Where(p => Standing.Of(p, record).Stands)];
        AllUndone = closeUp.ToUndo(Falls.SelectMany(f => Of(f.Departure, record)));
    }

    public static PurposeChange Of(CloseUp closeUp, Purpose purpose) => new(closeUp, purpose);

    public Purpose From { get; }

    public Purpose To { get; }

    /// <summary>Departures that would not stand; those that stand now first, and of these the dearest.</summary>
    public IReadOnlyList<DepartureFalls> Falls { get; }

    /// <summary>What undoing all of them in one go costs: a step that several want undone is undone once.</summary>
    public WayBackIn AllUndone { get; }

    /// <summary>Departures that do not stand now and would.</summary>
    public IReadOnlyList<Departure> Comes { get; }

    /// <summary>Lines of the permission to run that would lapse.</summary>
    public IReadOnlyList<PermissionLine> Lapses { get; }

    /// <summary>The departures of this engine: of its joints and steps, and of the pieces that are in it. Those struck out are gone.</summary>
    public static IEnumerable<Departure> Here(EngineRecord record) => record.Departures.Where(d => record.Index.StrikeOutOf(d.Id) is null
        && (d.Piece is not { } piece || PartsOf(piece, record).Any())
        && (d.Joint is not { } joint || record.Joints.Any(j => j.Name == joint) || d.Piece is not null));

    private static IEnumerable<WorkItem> Of(Departure departure, EngineRecord record)
    {
        if (departure.Piece is { } piece)
        {
            foreach (var part in PartsOf(piece, record))
                yield return WorkItem.Of(part);
        }

        if (departure.Joint is { } joint)
            yield return WorkItem.Of(joint);
        if (departure is { Piece: null, Joint: null, Item: { } item })
            yield return item;
    }

    /// <summary>Where a piece is placed, else for what it is chosen.</summary>
    private static IEnumerable<PartName> PartsOf(PieceTag piece, EngineRecord record)
    {
        var placed = record.Placings.Where(p => p.Piece == piece && record.Index.PlacedIn(p.Part)?.Id == p.Id).Select(p => p.Part).Distinct().ToList();
        return placed.Count > 0 ? placed : record.Choices.Where(c => c.Piece == piece && record.Index.ChosenFor(c.Part)?.Id == c.Id).Select(c => c.Part).Distinct();
    }
}

/// <summary>A departure that would not stand for another purpose.</summary>
/// <param name="Departure">Which, with how it is undone.</param>
/// <param name="StandsNow">Whether it stands for the present purpose.</param>
/// <param name="Cost">The steps that undoing it takes, signed ones, with their time and what must be new.</param>
public sealed record DepartureFalls(Departure Departure, bool StandsNow, WayBackIn Cost);
