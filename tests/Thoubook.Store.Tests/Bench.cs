using NodaTime;
using Thoubook.Record;
using Thoubook.Record.Circuits;
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
        Circuit = Circuit(),
        Pieces = [new(new PieceTag(piece)) { For = Body }],
        Choices = [new(FactId.New(), Morning, "owner", new PieceTag(piece), Body)],
    };

    /// <summary>A circuit with something in each of its lists; it takes sizes from the figures of <see cref="Pump"/>.</summary>
    public static OilCircuit Circuit() => new()
    {
        Oil = new OilChoice { Grade = "SAE 40", Density = new(890, QuantityKind.Density, TradeUnit.KilogramPerCubicMetre, "890"), Points = [new(Celsius(40), new(140e-6, QuantityKind.KinematicViscosity, TradeUnit.Centistokes, "140 cSt")), new(Celsius(100), new(14e-6, QuantityKind.KinematicViscosity, TradeUnit.Centistokes, "14 cSt"))] },
        Nodes = [new(new("sump")) { Pressure = Psi(0), Height = Inches(-4, "-4 in"), Label = "the sump" }],
        Elements =
        [
            new(new("pump"), ElementKind.GearPump, new("sump"), new("gallery")) { Part = PartName.Of("pump"), Values = [new("end-float", new CircuitValue.Taken(EndFloat)), new("width", new CircuitValue.Taken(FigureName.Of("pump/driver.width"))), new("float-share", new CircuitValue.Given(new(0.5, QuantityKind.Number, TradeUnit.One, "0.5")))] },
            new(new("relief"), ElementKind.DiscValve, new("gallery"), new("sump")) { Vent = new("sump"), Values = [new("seat", new CircuitValue.Given(Inches(0.5, "1/2 in"))), new("cracking", new CircuitValue.Given(Psi(60)))] },
            new(new("jet"), ElementKind.Jet, new("gallery"), new("sump")) { Blanked = true, Label = "front jet", Note = "plugged", Values = [new("bore", new CircuitValue.Given(Inches(0.04, "40 thou")))] },
        ],
        Gauges = [new(new("main"), new("gallery")) { Uncertainty = Psi(0.5), Height = Inches(20, "20 in") }],
        States =
        [
            new("hot idle", new(47, QuantityKind.RotationalSpeed, TradeUnit.RevolutionPerMinute, "450 rev/min"), Celsius(80)) { Limits = [new(new("main")) { Least = Psi(12), Source = new(new DocumentName("book"), "90") }] },
            new("cruise", new(188, QuantityKind.RotationalSpeed, TradeUnit.RevolutionPerMinute, "1800 rev/min"), Celsius(70)) { Limits = [new(new("main")) { Least = Psi(40), Greatest = Psi(65) }] },
        ],
        FlowTest = new(new("gallery"), Psi(30), Celsius(30)) { Eccentricity = new(0.9, QuantityKind.Number, TradeUnit.One, "0.9") },
    };

    public static FlowTest FlowTest() => new(FactId.New(), Morning, "bench", Psi(30), Celsius(29), Flow("1.2 l/min", 2e-5)) { FedAt = new("gallery"), Caught = [new(new("jet"), Flow("0.1 l/min", 1.0 / 600_000))], Note = "sump off" };

    public static Quantity Psi(double psi) => new(psi * 6894.757293168361, QuantityKind.Pressure, TradeUnit.Psi, $"{psi} psi");

    private static Quantity Flow(string text, double si) => new(si, QuantityKind.Flow, TradeUnit.LitrePerMinute, text);

    public static Quantity Celsius(double degrees) => new(degrees + 273.15, QuantityKind.Temperature, TradeUnit.Celsius, $"{degrees} °C");

    public WorkshopStore Open(WhenMissing whenMissing = WhenMissing.MakeOne) => Ok(WorkshopStore.Open(Folder, whenMissing, SystemClock.Instance));

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
