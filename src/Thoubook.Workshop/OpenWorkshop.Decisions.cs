using Thoubook.Record;
using Thoubook.Record.Measures;

namespace Thoubook.Workshop;

public sealed partial class OpenWorkshop
{
    /// <summary>Writes down what becomes of a piece, or that a figure is accepted. It relies on what was read and chosen at that time.</summary>
    public Outcome<Decision> Decide(DecisionEntry entry) => Engine(entry.Engine).Then(record =>
    {
        var asked = new Asked(record);
        var piece = Blank(entry.Piece) is null ? null : KnownPiece(asked, record, entry.Piece!);
        var figure = Blank(entry.Figure) is { } name ? asked.Take(Find(record, name)) : null;
        var why = Blank(entry.Why);
        if (asked.Problems.Count == 0 && piece is null && figure is null)
            asked.Refuse(new("decision-of-nothing", "piece", "neither a piece nor a figure", "A decision is about a piece, or about a dimension or fit.", "Name one."));
        if (entry.Basis == DecisionBasis.AcceptedOnJudgement && why is null)
            asked.Refuse(new("reason-missing", "why", "nothing", "What is accepted on judgement says why.", "Give the reason."));
        if (asked.Problems.Count > 0)
            return asked.Refused<Decision>();
        var (id, at) = Signed(entry);
        return Write(entry, record, new Decision(id, at, entry.By, entry.Choice)
        {
            Piece = piece,
            Figure = figure?.Name,
            Basis = entry.Basis,
            Why = why,
            ReliesOn = [.. Behind(record, piece, figure).Distinct()],
        });
    });

    /// <summary>The choices, readings and checks that stand behind a figure, or behind every dimension of a piece.</summary>
    private static IEnumerable<FactId> Behind(EngineRecord record, PieceTag? piece, Figure? figure) => figure switch
    {
        Dimension dimension => Behind(record, dimension, piece),
        Fit fit => fit.Gap.Select(t => record.Index.Figure(t.Of)).OfType<Dimension>().SelectMany(d => Behind(record, d, null))
            .Concat(record.Index.ChecksOf(fit.Name).Where(c => Standing.Of(c, record).Stands).Select(c => c.Id)),
        _ when piece is { } tag && record.Index.PartOf(tag) is { } part => record.Dimensions.Where(d => d.Name.Part == part).SelectMany(d => Behind(record, d, tag)),
        _ => [],
    };

    private static IEnumerable<FactId> Behind(EngineRecord record, Dimension dimension, PieceTag? of)
    {
        var chosen = record.Index.ChosenFor(dimension.Name.Part);
        if (chosen is not null && (of is null || of == chosen.Piece))
            yield return chosen.Id;
        if ((of ?? chosen?.Piece) is not { } piece)
            yield break;
        foreach (var reading in record.Index.ReadingsOf(piece, dimension.Name.Local).Where(r => Standing.Of(r, record).Stands))
            yield return reading.Id;
    }
}
