using System.Security.Cryptography;
using System.Text;
using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Pieces;
using Thoubook.Record.Quantities;

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

    /// <summary>The dimension or fit of this name.</summary>
    public static Outcome<Figure> Find(EngineRecord record, string name)
    {
        var figures = record.Dimensions.Concat<Figure>(record.Fits).Select(f => f.Name.ToString());
        if (!FigureName.TryRead(name.Trim(), out var figure, out var problem))
            return problem with { Field = "figure", DoThis = Nearest.Advice(name, figures, problem.DoThis) };
        return record.Index.Figure(figure) is { } found
            ? found
            : new Problem("unknown-figure", "figure", $"\"{name}\"", "This engine has no dimension or fit of that name.", Nearest.Advice(name, figures, "Add it first, or name one that is there."));
    }

    private Outcome<Recorded> AddReading(ReadingEntry entry, EngineRecord record)
    {
        var asked = new Asked(record);
        var figure = asked.Take(Find(record, entry.Figure));
        var value = figure is null ? null : asked.Take(Read(entry.Value, ReadingContexts.For(figure, record) with { Confirmed = entry.Confirmed }, "value"));
        var temperature = Blank(entry.Temperature) is { } typed ? asked.Take(Read(typed, TemperatureContext with { Confirmed = entry.Confirmed }, "temperature")) : null;
        var place = asked.Name<PlaceName>(entry.Place, PlaceName.TryRead, "place") ?? PlaceName.NotNoted;
        var gauge = asked.Gauge(entry.Gauge);
        var piece = asked.Name<PieceTag>(entry.Piece, PieceTag.TryRead, "piece");
        if (figure is Fit && piece is not null)
            asked.Refuse(new("fit-has-no-piece", "piece", $"\"{piece}\"", "A fit is measured on parts put together and relies on the pieces in place.", "Leave the piece out; choose or place the pieces first."));
        if (asked.Problems.Count > 0)
            return asked.Refused<Recorded>();

        var (id, at) = Signed(entry);
        if (figure is Fit fit)
        {
            return Write(entry, record, new Check(id, at, entry.By, fit.Name, value!)
            {
                Method = entry.Method,
                Place = place,
                Gauge = gauge,
                Temperature = temperature,
                ReliesOn = PartsPutTogether(fit, record),
                Note = Blank(entry.Note),
            }).Then<Recorded>(check => new Recorded(check, fit, check.Value));
        }

        var part = figure!.Name.Part;
        var before = record.Index.Fact(id) as Reading;
        var of = piece ?? before?.Piece ?? record.Index.ChosenFor(part)?.Piece;
        if (of is null && record.Choices.Any(c => c.Part == part && record.Index.StrikeOutOf(c.Id) is null))
            return new Problem("which-piece", "piece", "nothing", $"The piece that was chosen for {part} was lifted, and no other is chosen.", "Name the piece measured, or choose one for the part.");
        var own = of is null ? OwnPiece(record, part) : null;
        var reading = new Reading(id, at, entry.By, of ?? own!.Tag, figure.Name, value!)
        {
            Place = place,
            Gauge = gauge,
            Temperature = temperature,
            Note = Blank(entry.Note),
        };
        return Write(entry, record, reading, own is null ? null : change => change with
        {
            Parts = record.Index.Part(part) is null ? [new(part)] : [],
            Pieces = [own],
            Facts = [new Chosen(MadeWith(id, "chosen with "), at, entry.By, own.Tag, part)],
        }).Then<Recorded>(stored => new Recorded(stored, figure, stored.Value));
    }

    /// <summary>The piece that a part has of its own, tagged with the part's name; where another engine's piece has that tag, with the engine's name as well.</summary>
    private Piece OwnPiece(EngineRecord record, PartName part)
    {
        PieceTag.TryRead(part.Path, out var tag, out var tooLong);
        if (tooLong is not null)
            tag = new PieceTag(part.Leaf);
        if (record.Index.Piece(tag) is { } there)
            return there;
        return new Piece(_store.HomeOf(tag) is { } other && other != record.Engine.Name ? OwnPieces.TagIn(record.Engine.Name, tag) : tag) { For = part };
    }

    /// <summary>The identifier of what is written with another fact: always the same for the same, so that both are stored once.</summary>
    private static FactId MadeWith(FactId fact, string what)
    {
        Span<byte> bytes = stackalloc byte[16];
        fact.Value.TryWriteBytes(bytes, bigEndian: true, out _);
        var hash = SHA256.HashData([.. Encoding.UTF8.GetBytes(what), .. bytes]);
        hash.AsSpan(9, 7).CopyTo(bytes[9..]);
        return new FactId(new Guid(bytes, bigEndian: true));
    }

    /// <summary>The facts by which the mating pieces, shims and gaskets among them, are where they are.</summary>
    private static List<FactId> PartsPutTogether(Fit fit, EngineRecord record)
    {
        var parts = fit.Gap.Count > 0
            ? fit.Gap.Select(t => t.Of.Part).Distinct()
            : record.Parts.Select(p => p.Name).Where(p => p.IsWithin(fit.Name.Part));
        return [.. parts.Select(p => record.Index.PlacedIn(p)?.Id ?? record.Index.ChosenFor(p)?.Id).OfType<FactId>()];
    }

    private static Outcome<Quantity> Read(string text, ReadingContext context, string field) => QuantityReader.Read(text, context) switch
    {
        Outcome<Quantity>.Refused refused => new Outcome<Quantity>.Refused([.. refused.Problems.Select(p => p with { Field = field })]),
        var read => read,
    };

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
