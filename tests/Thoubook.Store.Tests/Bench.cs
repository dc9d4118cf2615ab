using NodaTime;
using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;
using Thoubook.Record.Quantities;

namespace Thoubook.Store.Tests;

/// <summary>A folder of its own for each test, and a small pump to put into it.</summary>
internal sealed class Bench : IDisposable
{
    public static readonly OffsetDateTime Morning = new LocalDateTime(2026, 11, 1, 10, 0).WithOffset(Offset.FromHours(1));
    public static readonly EngineName Engine = new("Test pump");
    public static readonly PartName Body = PartName.Of("pump/body");
    public static readonly FigureName Depth = FigureName.Of("pump/body.depth");
    public static readonly FigureName EndFloat = FigureName.Of("pump.end-float");

    public string Folder { get; } = Directory.CreateTempSubdirectory("thoubook-").FullName;

    public string Database => Path.Combine(Folder, WorkshopStore.DatabaseName);

    public static T Ok<T>(Outcome<T> outcome) => outcome.IsOk(out var value, out var problems) ? value : throw new InvalidOperationException(string.Join('\n', problems));

    public static Problem Refused<T>(Outcome<T> outcome) => Assert.Single(Assert.IsType<Outcome<T>.Refused>(outcome).Problems);

    public static Quantity Inches(double inches, string text, FitSigns signs = FitSigns.NotHere) => new(inches * 0.0254, QuantityKind.Length, TradeUnit.Inch, text) { Signs = signs };

    public static Reading Reading(double inches, string piece = "P-1") => new(FactId.New(), Morning, "bench", new PieceTag(piece), Depth, Inches(inches, $"{inches} in"));

    /// <summary>A pump with a body, a dimension of it, a fit, a gauge and a piece chosen.</summary>
    public static EngineRecord Pump(string name = "Test pump", string piece = "P-1") => new(new Engine(new EngineName(name), Purpose.StandRun)
    {
        Mark = "II",
        Temperatures = [new("hot", Celsius(80), [new(PartName.Of("pump"), Celsius(90))])],
    })
    {
        Documents = [new(new DocumentName("book")) { Edition = "2nd", Marks = ["I", "II"] }],
        Parts = [new(Body) { Material = "cast aluminium" }, new(PartName.Of("pump/driver"))],
        Dimensions =
        [
            new(Depth)
            {
                LimitSets = [new(new Limits { NewLeast = Inches(1.2530, "1.2530"), NewGreatest = Inches(1.2540, "1.2540"), WornGreatest = Inches(1.256, "1.256") }) { Source = new(new DocumentName("book"), "112") }],
                Places = [new("A1"), new("A2")],
                Ovality = new(null, null),
                RepairSizes = [new("+010", Inches(0.010, "10 thou"))],
            },
            new(FigureName.Of("pump/driver.width")),
        ],
        Fits = [new(EndFloat) { FitKind = FitKind.EndFloat, Side = Side.Total, Gap = [new(1, Depth), new(-1, FigureName.Of("pump/driver.width"))] }],
        Gauges = [new(new GaugeTag("M-1")) { Resolution = Inches(0.0001, "0.1 thou"), Checked = new LocalDate(2026, 10, 3) }],
        Pieces = [new(new PieceTag(piece)) { For = Body }],
        Choices = [new(FactId.New(), Morning, "owner", new PieceTag(piece), Body)],
    };

    public static Quantity Celsius(double degrees) => new(degrees + 273.15, QuantityKind.Temperature, TradeUnit.Celsius, $"{degrees} °C");

    public WorkshopStore Open(WhenMissing whenMissing = WhenMissing.MakeOne) => Ok(WorkshopStore.Open(Folder, whenMissing, SystemClock.Instance));

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
