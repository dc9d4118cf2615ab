using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Pieces;
using Thoubook.Record.Quantities;
using Thoubook.Store;

namespace Thoubook.Workshop;

public sealed partial class OpenWorkshop
{
    private static readonly ReadingContext TemperatureContext = new() { Kind = QuantityKind.Temperature };

    /// <summary>What a text would be taken for as a reading of a figure; nothing is written.</summary>
    public Outcome<Quantity> Understand(string engine, string figure, string text, IReadOnlySet<string> confirmed) =>
        Engine(engine).Then(record => Find(record, figure)
            .Then(found => Read(text, ReadingContexts.For(found, record) with { Confirmed = confirmed }, "value")));

    /// <summary>Writes a reading of a dimension, or a check of a fit.</summary>
    public Outcome<Recorded> AddReading(ReadingEntry entry) => Engine(entry.Engine).Then(record => AddReading(entry, record));

    private Outcome<Recorded> AddReading(ReadingEntry entry, EngineRecord record)
    {
        var asked = new Asked();
        var figure = asked.Take(Find(record, entry.Figure));
        var value = figure is null ? null : asked.Take(Read(entry.Value, ReadingContexts.For(figure, record) with { Confirmed = entry.Confirmed }, "value"));
        var temperature = string.IsNullOrWhiteSpace(entry.Temperature) ? null : asked.Take(Read(entry.Temperature, TemperatureContext with { Confirmed = entry.Confirmed }, "temperature"));
        var place = asked.Name<PlaceName>(entry.Place, PlaceName.TryRead, "place");
        var gauge = asked.Name<GaugeTag>(entry.Gauge, GaugeTag.TryRead, "gauge");
        var piece = asked.Name<PieceTag>(entry.Piece, PieceTag.TryRead, "piece");
        if (gauge is { } named && record.Index.Gauge(named) is null)
            asked.Refuse(new("unknown-gauge", "gauge", $"\"{named}\"", "There is no gauge of that tag in this workshop.", Nearest.Advice(named.Text, record.Gauges.Select(g => g.Tag.Text), "Add the gauge first, or leave it out.")));
        if (asked.Problems.Count > 0)
            return asked.Refused<Recorded>();

        var (id, at) = (entry.Id ?? FactId.New(), entry.At ?? Now());
        Change change = new(record.Engine.Name, entry.By);
        Fact fact;
        if (figure is Fit fit)
        {
            fact = new Check(id, at, entry.By, fit.Name, value!)
            {
                Method = entry.Method,
                Place = place ?? PlaceName.NotNoted,
                Gauge = gauge,
                Temperature = temperature,
                ReliesOn = PartsPutTogether(fit, record),
                Note = Blank(entry.Note),
            };
        }
        else
        {
            var of = piece is { } given ? given : record.Index.ChosenFor(figure!.Name.Part)?.Piece;
            if (of is null)
            {
                var own = new Piece(new PieceTag(figure!.Name.Part.Path)) { For = figure.Name.Part };
                of = own.Tag;
                change = change with { Pieces = [own], Facts = [new Chosen(FactId.New(), at, entry.By, own.Tag, figure.Name.Part)] };
            }

            fact = new Reading(id, at, entry.By, of.Value, figure!.Name, value!)
            {
                Place = place ?? PlaceName.NotNoted,
                Gauge = gauge,
                Temperature = temperature,
                Note = Blank(entry.Note),
            };
        }

        return _store.Write(change with { Facts = [.. change.Facts, fact] })
            .Then<Recorded>(written => new Recorded(written.Facts[^1], figure, value!));
    }

    /// <summary>The facts by which the mating pieces, shims and gaskets among them, are where they are.</summary>
    private static List<FactId> PartsPutTogether(Fit fit, EngineRecord record)
    {
        var parts = fit.Gap.Count > 0
            ? fit.Gap.Select(t => t.Of.Part).Distinct()
            : record.Parts.Select(p => p.Name).Where(p => p.IsWithin(fit.Name.Part));
        return [.. parts.Select(p => record.Index.PlacedIn(p)?.Id ?? record.Index.ChosenFor(p)?.Id).OfType<FactId>()];
    }

    public static Outcome<Figure> Find(EngineRecord record, string name)
    {
        if (!FigureName.TryRead(name.Trim(), out var figure, out var problem))
            return problem with { Field = "figure", DoThis = Nearest.Advice(name, Figures(record), problem.DoThis) };
        return record.Index.Figure(figure) is { } found
            ? found
            : new Problem("unknown-figure", "figure", $"\"{name}\"", "This engine has no dimension or fit of that name.", Nearest.Advice(name, Figures(record), "Add it first, or name one that is there."));
    }

    private static IEnumerable<string> Figures(EngineRecord record) => record.Dimensions.Concat<Figure>(record.Fits).Select(f => f.Name.ToString());

    private static Outcome<Quantity> Read(string text, ReadingContext context, string field) => QuantityReader.Read(text, context) switch
    {
        Outcome<Quantity>.Refused refused => new Outcome<Quantity>.Refused([.. refused.Problems.Select(p => p with { Field = field })]),
        var read => read,
    };

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
