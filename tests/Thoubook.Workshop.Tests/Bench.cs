using NodaTime;
using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;
using Thoubook.Record.Quantities;
using Thoubook.Store;

namespace Thoubook.Workshop.Tests;

/// <summary>A workshop in a folder of its own, with a pump made through the workshop's own door.</summary>
internal sealed class Bench : IDisposable
{
    public const string Pump = "Test pump";
    public const string Depth = "pump/body.depth";
    public const string Width = "pump/driver.width";
    public const string EndFloat = "pump.end-float";

    public Bench()
    {
        Folder = Directory.CreateTempSubdirectory("thoubook-").FullName;
        Workshop = Ok(OpenWorkshop.Open(Folder, WhenMissing.MakeOne, SystemClock.Instance));
        MakePump(Pump);
    }

    public string Folder { get; }

    public OpenWorkshop Workshop { get; }

    public EngineRecord Record => Ok(Workshop.Engine(Pump));

    public static T Ok<T>(Outcome<T> outcome) => outcome.IsOk(out var value, out var problems) ? value : throw new InvalidOperationException(string.Join('\n', problems));

    public static Problem Refused<T>(Outcome<T> outcome) => Assert.Single(Assert.IsType<Outcome<T>.Refused>(outcome).Problems);

    public void MakePump(string name)
    {
        Ok(Workshop.MakeEngine(new Engine(new EngineName(name), Purpose.StandRun), "owner"));
        Ok(Workshop.Define(name, new Dimension(FigureName.Of(Depth)) { LimitSets = [new(new Limits { NewLeast = Inches("1.2530"), NewGreatest = Inches("1.2540"), WornGreatest = Inches("1.2560") })], RepairSizes = [new("+010", Inches("0.010"))] }, "owner"));
        Ok(Workshop.Define(name, new Dimension(FigureName.Of(Width)) { LimitSets = [new(new Limits { NewLeast = Inches("1.2505"), NewGreatest = Inches("1.2515") })] }, "owner"));
        Ok(Workshop.Define(name, new Fit(FigureName.Of(EndFloat)) { FitKind = FitKind.EndFloat, Gap = [new(1, FigureName.Of(Depth)), new(-1, FigureName.Of(Width))], LimitSets = [new(new Limits { NewLeast = Inches("0.0015"), NewGreatest = Inches("0.0035") })] }, "owner"));
        Ok(Workshop.Define(name, new Gauge(new GaugeTag($"M-1 {name}")), "owner"));
        Ok(Workshop.Define(name, new Piece(new PieceTag($"P-1 {name}")) { For = PartName.Of("pump/body") }, "owner"));
    }

    public static Quantity Inches(string text) => Ok(QuantityReader.Read(text, new ReadingContext { BareUnit = TradeUnit.Inch }));

    public static ReadingEntry Reading(string value, string figure = Depth) => new(Pump, figure, value, "bench");

    public void Dispose()
    {
        Workshop.Dispose();
        Directory.Delete(Folder, recursive: true);
    }
}
