using NodaTime;
using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;
using Thoubook.Record.Quantities;

namespace Thoubook.Web.Tests;

/// <summary>A small engine of invented figures with one of everything that a page can be asked to show.</summary>
public static class InventedPump
{
    public const string Name = "Wren twin";

    private static readonly Instant Start = Instant.FromUtc(2026, 3, 1, 9, 0);

    public static EngineRecord Record()
    {
        var minute = 0;
        OffsetDateTime Now() => Start.Plus(Duration.FromMinutes(++minute)).WithOffset(Offset.Zero);
        var parts = new List<Part>();
        var pieces = new List<Piece>();
        var choices = new List<Chosen>();
        var dimensions = new List<Dimension>();
        var readings = new List<Reading>();
        var book = new Citation(new DocumentName("overhaul-book"), "114");

        Part("lower-half/pressure-pump/body", "cast aluminium");
        Part("lower-half/pressure-pump/driver", "steel");
        Part("lower-half/pressure-pump/driven", "steel");
        Part("lower-half/crankshaft", "steel");
        Part("lower-half/main-bush", "bronze");
        parts.Add(new Part(PartName.Of("lower-half/governor-drive")) { Intent = PartIntent.Blanked, InItsStead = "a plate of 3 mm" });
        Dimension("lower-half/pressure-pump/body.depth", "1.2530 in", "1.2540 in", null, "1.2560 in", ["A1", "B1"], Counting.Least);
        Dimension("lower-half/pressure-pump/driver.width", "1.2505 in", "1.2515 in", "1.2490 in", null, ["A1", "B1"], Counting.Greatest);
        Dimension("lower-half/pressure-pump/driven.width", "1.2505 in", "1.2515 in", "1.2490 in", null, [], null);
        Dimension("lower-half/crankshaft.journal-diameter", "2.7490 in", "2.7495 in", "2.7475 in", null, ["A1", "A2", "B1", "B2", "C1", "C2"], null);
        Dimension("lower-half/main-bush.bore", "2.7510 in", "2.7520 in", null, "2.7535 in", [], null);
        Read("lower-half/pressure-pump/body.depth", "M-07", ("A1", "1.2534"), ("A1", "1.2535"), ("B1", "1.2536"));
        Read("lower-half/pressure-pump/driver.width", "M-07", ("A1", "1.2496"), ("B1", "1.2497"));
        Read("lower-half/crankshaft.journal-diameter", "M-07", ("A1", "2.7483"), ("A2", "2.7484"), ("B1", "2.7481"), ("B2", "2.7483"), ("C1", "2.7477"), ("C2", "2.7480"), ("B2", "2.7843"));
        Read("lower-half/main-bush.bore", "B-02", ("A1", "2.7540"), ("B1", "2.7541"));

        return new EngineRecord(new Engine(new EngineName(Name), Purpose.StandRun)
        {
            Invented = true,
            SerialNumber = "12",
            Note = "A two-cylinder launch engine, invented. It is to run again on a stand.",
            Temperatures =
            [
                new TemperatureState(TemperatureState.Hot, Q("80 °C"), []),
                new TemperatureState(TemperatureState.ColdestStart, Q("-10 °C"), []),
            ],
        })
        {
            Documents = [new Document(new DocumentName("overhaul-book")) { Title = "Overhaul book", Edition = "2nd" }],
            Gauges =
            [
                new Gauge(new GaugeTag("M-07")) { What = "outside micrometer 2 to 3 in", Uncertainty = Q("0.1 thou"), Resolution = Q("0.1 thou"), Checked = new LocalDate(2025, 10, 3) },
                new Gauge(new GaugeTag("B-02")) { What = "bore gauge", Uncertainty = Q("0.12 thou") },
            ],
            Parts = parts,
            Pieces = pieces,
            Choices = choices,
            Dimensions = dimensions,
            Readings = readings,
            StrikeOuts = [new StrikeOut(FactId.New(), Now(), "owner", readings.Single(r => r.Value.Text == "2.7843").Id, "two figures the wrong way round")],
            Findings = [new Finding(FactId.New(), Now(), "bench", new PieceTag("driver"), null, "pitting on three teeth")],
            Fits =
            [
                Fit("lower-half/pressure-pump.driver-end-float", FitKind.EndFloat, Side.Total, "1.5 thou", "3.5 thou", "5 thou", ("lower-half/pressure-pump/body.depth", 1), ("lower-half/pressure-pump/driver.width", -1)),
                Fit("lower-half/pressure-pump.driven-end-float", FitKind.EndFloat, Side.Total, "1.5 thou", "3.5 thou", "5 thou", ("lower-half/pressure-pump/body.depth", 1), ("lower-half/pressure-pump/driven.width", -1)),
                Fit("lower-half/crankshaft.main-clearance", FitKind.Clearance, Side.Diametral, "1.5 thou", "3 thou", "5 thou", ("lower-half/main-bush.bore", 1), ("lower-half/crankshaft.journal-diameter", -1)),
            ],
        };

        void Part(string path, string material)
        {
            var part = new Part(PartName.Of(path)) { Material = material };
            var piece = new Piece(new PieceTag(part.Name.Leaf)) { For = part.Name };
            parts.Add(part);
            pieces.Add(piece);
            choices.Add(new Chosen(FactId.New(), Now(), "owner", piece.Tag, part.Name));
        }

        void Dimension(string name, string newLeast, string newGreatest, string? wornLeast, string? wornGreatest, string[] places, Counting? counts) => dimensions.Add(new Dimension(FigureName.Of(name))
        {
            Places = [.. places.Select(p => new PlaceName(p))],
            Counts = counts,
            LimitSets = [new LimitSet(new Limits { NewLeast = Q(newLeast), NewGreatest = Q(newGreatest), WornLeast = Maybe(wornLeast), WornGreatest = Maybe(wornGreatest) }) { Source = book }],
        });

        void Read(string figure, string gauge, params (string Place, string Value)[] taken)
        {
            var name = FigureName.Of(figure);
            foreach (var (place, value) in taken)
            {
                var typed = Q(value + " in") with { Text = value };
                readings.Add(new Reading(FactId.New(), Now(), "bench", new PieceTag(name.Part.Leaf), name, typed) { Place = new PlaceName(place), Gauge = new GaugeTag(gauge), Temperature = Q("20.4 °C") });
            }
        }

        Fit Fit(string name, FitKind kind, Side side, string newLeast, string newGreatest, string worn, params (string Of, double Times)[] gap) => new(FigureName.Of(name))
        {
            FitKind = kind,
            Side = side,
            Gap = [.. gap.Select(t => new GapTerm(t.Times, FigureName.Of(t.Of)))],
            LimitSets = [new LimitSet(new Limits { NewLeast = Q(newLeast), NewGreatest = Q(newGreatest), WornGreatest = Q(worn) }) { Source = book }],
        };
    }

    private static Quantity Q(string text) => QuantityReader.Read(text, ReadingContext.None).IsOk(out var quantity, out var problems)
        ? quantity
        : throw new ArgumentException(string.Join("; ", problems), nameof(text));

    private static Quantity? Maybe(string? text) => text is null ? null : Q(text);
}
