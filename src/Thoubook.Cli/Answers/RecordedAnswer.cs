using NodaTime.Text;
using Thoubook.Record;
using Thoubook.Workshop;

namespace Thoubook.Cli.Answers;

/// <summary>A reading or a check as it was stored.</summary>
internal sealed record RecordedAnswer(string Id, string Name, double Value, string Unit, string Understood)
{
    public static RecordedAnswer Of(Recorded recorded) =>
        new(recorded.Fact.Id.ToString(), recorded.Figure.Name.ToString(), recorded.Value.Si, recorded.Value.SiUnit, recorded.Value.Understood);
}

/// <summary>One reading or check of <c>reading list --json</c>.</summary>
/// <param name="Text">As typed.</param>
/// <param name="Shown">The value in the unit that it was written in.</param>
/// <param name="Stands">Whether it still counts; else <paramref name="Why"/> says what broke it.</param>
internal sealed record ReadingAnswer(
    string Id,
    string Kind,
    string Name,
    string? Piece,
    string Place,
    double Value,
    string Unit,
    string Text,
    string Shown,
    string? Gauge,
    string? Temperature,
    string By,
    string At,
    string? Note,
    bool Stands,
    string Why)
{
    public static ReadingAnswer Of(Reading reading, EngineRecord record) => Of(reading, "reading", reading.Piece, reading.Figure, reading.Place, reading.Value, reading.Gauge, reading.Temperature, reading.Note, record);

    public static ReadingAnswer Of(Check check, EngineRecord record) => Of(check, "check", null, check.Figure, check.Place, check.Value, check.Gauge, check.Temperature, check.Note, record);

    private static ReadingAnswer Of(Fact fact, string kind, PieceTag? piece, FigureName figure, PlaceName place, Record.Quantities.Quantity value, GaugeTag? gauge, Record.Quantities.Quantity? temperature, string? note, EngineRecord record)
    {
        var standing = Standing.Of(fact, record);
        return new(
            fact.Id.ToString(), kind, figure.ToString(), piece?.Text, place.Text, value.Si, value.SiUnit, value.Text, value.Unit.Show(value.Si), gauge?.Text, temperature?.Text,
            fact.By, OffsetDateTimePattern.Rfc3339.Format(fact.At), note, standing.Stands, standing.Why);
    }
}
