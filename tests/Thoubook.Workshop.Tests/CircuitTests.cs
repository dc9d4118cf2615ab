using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;

namespace Thoubook.Workshop.Tests;

public sealed class CircuitTests : IDisposable
{
    private readonly Bench _bench = new();

    public CircuitTests() => Bench.Ok(_bench.Workshop.SaveCircuit(Bench.Pump, new OilCircuit
    {
        Oil = new OilChoice { Grade = "SAE 40" },
        Nodes = [new(new("sump")) { Pressure = Psi("0 psi") }],
        Elements =
        [
            new(new("pump"), ElementKind.Pump, new("sump"), new("gallery")) { Values = [new("displacement", Given("1 in3", QuantityKind.Volume))] },
            new(new("gap"), ElementKind.Slot, new("gallery"), new("sump")) { Values = [new("width", Given("1 in", QuantityKind.Length)), new("gap", new CircuitValue.Taken(FigureName.Of(Bench.EndFloat))), new("length", Given("1 in", QuantityKind.Length))] },
        ],
        Gauges = [new(new("main"), new("gallery"))],
        States = [new(OilState.HotIdle, Read("450 rev/min", QuantityKind.RotationalSpeed), Read("80 °C", QuantityKind.Temperature))],
        FlowTest = new(new("gallery"), Psi("30 psi"), Read("30 °C", QuantityKind.Temperature)),
    }, "owner"));

    private OilCircuit Circuit => _bench.Record.Circuit!;

    public void Dispose() => _bench.Dispose();

    [Fact]
    public void EditElement_AddsEditsAndKeepsTheOthers()
    {
        var jet = Bench.Ok(_bench.Workshop.EditElement(Jet("40 thou")));
        Assert.Equal((2, 2), (jet.Revision, Circuit.Revision));
        Assert.Equal([1, 1, 2], Circuit.Elements.Select(e => e.Revision));

        var edited = Bench.Ok(_bench.Workshop.EditElement(Jet("50 thou") with { Revision = jet.Revision, Blanked = true, Note = "plugged" }));
        Assert.Equal(("50 thou", true, "plugged"), (edited.Value("bore")!.ToString(), edited.Blanked, edited.Note));

        Bench.Ok(_bench.Workshop.EditElement(new ElementEntry(Bench.Pump, "gap", "bench") { Revision = 1, Kind = "slot", From = "gallery", To = "sump", Part = "pump", Values = [("width", "2 in"), ("gap", "end-float"), ("length", "1 in"), ("bore", "")] }));
        Assert.Equal(Bench.EndFloat, Circuit.Element(new("gap"))!.Value("gap")!.ToString());
        Assert.Equal(["pump", "gap", "jet"], Circuit.Elements.Select(e => e.Name.Text));
    }

    [Fact]
    public void EditElement_OfAnOlderRevision_ShowsBoth_AndAnotherElementIsNoHindrance()
    {
        Bench.Ok(_bench.Workshop.EditElement(Jet("40 thou")));
        Bench.Ok(_bench.Workshop.EditElement(Jet("50 thou") with { Revision = 2 }));

        var clash = Bench.Refused(_bench.Workshop.EditElement(Jet("60 thou") with { Revision = 2 }));
        Assert.Equal("revision-clash", clash.Code);
        Assert.Contains("60 thou", clash.Found, StringComparison.Ordinal);
        Assert.Contains("50 thou", clash.Allowed, StringComparison.Ordinal);
        Assert.Equal("there-already", Bench.Refused(_bench.Workshop.EditElement(Jet("60 thou"))).Code);
        Assert.Equal("revision-clash", Bench.Refused(_bench.Workshop.RemoveElement(Bench.Pump, "jet", 2, "owner")).Code);

        Bench.Ok(_bench.Workshop.EditElement(new ElementEntry(Bench.Pump, "pump", "bench") { Revision = 1, Kind = "pump", From = "sump", To = "gallery", Values = [("displacement", "1.5 in3")] }));
        Bench.Ok(_bench.Workshop.RemoveElement(Bench.Pump, "jet", 3, "owner"));
        Assert.Equal("revision-clash", Bench.Refused(_bench.Workshop.EditElement(Jet("60 thou") with { Revision = 3 })).Code);
        Assert.Equal("unknown-element", Bench.Refused(_bench.Workshop.RemoveElement(Bench.Pump, "jett", 3, "owner")).Code);
    }

    [Theory]
    [InlineData("jets", "gallery", "bore", "40 thou", "unknown-word")]
    [InlineData("jet", "", "bore", "40 thou", "name-missing")]
    [InlineData("jet", "gallery", "boar", "40 thou", "circuit-key-unknown")]
    [InlineData("jet", "gallery", "bore", "40 psi", "unit-wrong-kind")]
    [InlineData("jet", "gallery", "bore", "-40 thou", "circuit-size")]
    [InlineData("jet", "gallery", "bore", "end-flaot", "circuit-figure")]
    [InlineData("jet", "gallery", "discharge", "0.6", "circuit-key-missing")]
    [InlineData("jet", "sump", "bore", "40 thou", "circuit-ends")]
    public void EditElement_Wrong_IsRefused_AndNothingWritten(string kind, string from, string key, string text, string code)
    {
        var problem = Bench.Refused(_bench.Workshop.EditElement(new ElementEntry(Bench.Pump, "jet", "bench") { Kind = kind, From = from, To = "sump", Part = "pump", Values = [(key, text)] }));

        Assert.Equal(code, problem.Code);
        Assert.Equal(1, Circuit.Revision);
    }

    [Fact]
    public void SaveCircuit_Whole_IsCheckedAndMatchedByItsRevision()
    {
        var first = Circuit;
        Assert.Equal(2, Bench.Ok(_bench.Workshop.SaveCircuit(Bench.Pump, first with { Gauges = [] }, "owner")).Revision);
        Assert.Equal("revision-clash", Bench.Refused(_bench.Workshop.SaveCircuit(Bench.Pump, first with { States = [] }, "owner")).Code);
        var wrong = Bench.Refused(_bench.Workshop.SaveCircuit(Bench.Pump, Circuit with { Gauges = [new(new("main"), new("galery"))] }, "owner"));
        Assert.Equal(("circuit-node-missing", "circuit, gauges, main, at"), (wrong.Code, wrong.Field));
        Assert.Contains("gallery", wrong.DoThis, StringComparison.Ordinal);
    }

    [Fact]
    public void SettleOil_IsAnEditedState()
    {
        Assert.Equal(70 + 273.15, Bench.Ok(_bench.Workshop.SettleOil(Bench.Pump, "hot idle", "70 °C", "bench")).OilTemperature.Si, 1e-9);
        Assert.Equal(70 + 273.15, Circuit.State(OilState.HotIdle)!.OilTemperature.Si, 1e-9);
        Assert.Equal("unknown-state", Bench.Refused(_bench.Workshop.SettleOil(Bench.Pump, "hot idel", "70 °C", "bench")).Code);
    }

    [Fact]
    public void AFlowTest_IsWrittenDown_Accepted_AndFallsWithThePiecesInPlace()
    {
        Bench.Ok(_bench.Workshop.Choose(new PieceEntry(Bench.Pump, "pump/body", "P-1 Test pump", "owner")));
        var test = Bench.Ok(_bench.Workshop.AddFlowTest(new FlowTestEntry(Bench.Pump, "30 psi", "29 °C", "bench") { Volume = "30 cc", Time = "30 min", Caught = [("gap", "0.1 l/min")] }));

        Assert.Equal(30e-6 / 1800, test.Flow.Si, 1e-12);
        Assert.Equal("gallery", test.FedAt.Text);
        Assert.Equal(_bench.Record.Choices.Select(c => c.Id), test.ReliesOn);
        Assert.Null(_bench.Record.Index.CalibratingTest);

        var calibration = Bench.Ok(_bench.Workshop.Calibrate(new CalibrationEntry(Bench.Pump, test.Id, "owner") { Why = "within the band" }));
        Assert.Equal(test.Id, _bench.Record.Index.CalibratingTest!.Id);
        Assert.True(Standing.Of(calibration, _bench.Record).Stands);

        Bench.Ok(_bench.Workshop.AddWork(new WorkEntry(Bench.Pump, "P-1 Test pump", "face lapped", "machinist") { Altered = ["depth"] }));
        Assert.Null(_bench.Record.Index.CalibratingTest);
        Assert.Equal("flow-test-fallen", Bench.Refused(_bench.Workshop.Calibrate(new CalibrationEntry(Bench.Pump, test.Id, "owner"))).Code);
        var slip = Bench.Ok(_bench.Workshop.AddFlowTest(new FlowTestEntry(Bench.Pump, "30 psi", "29 °C", "bench") { Volume = "1 imp gal", Time = "30 min" }));
        Assert.Equal("flow-test-far-off", Bench.Refused(_bench.Workshop.Calibrate(new CalibrationEntry(Bench.Pump, slip.Id, "owner"))).Code);
        Assert.Equal("unknown-flow-test", Bench.Refused(_bench.Workshop.Calibrate(new CalibrationEntry(Bench.Pump, FactId.New(), "owner"))).Code);
    }

    [Theory]
    [InlineData("30 psi", "29 °C", null, "circuit-node-missing", "galery", null)]
    [InlineData("0 psi", "29 °C", "1 l/min", "circuit-size", null, null)]
    [InlineData("30 psi", "29 psi", "1 l/min", "unit-wrong-kind", null, null)]
    [InlineData("30 psi", "29 °C", "1 l/min", "unknown-element", null, "gpa")]
    public void AFlowTest_Wrong_IsRefused(string pressure, string temperature, string? flow, string code, string? fedAt, string? caught)
    {
        var problem = Bench.Refused(_bench.Workshop.AddFlowTest(new FlowTestEntry(Bench.Pump, pressure, temperature, "bench") { Flow = flow ?? "1 l/min", FedAt = fedAt, Caught = caught is null ? [] : [(caught, "0.1 l/min")] }));
        Assert.Equal(code, problem.Code);
        Assert.Equal("flow-missing", Bench.Refused(_bench.Workshop.AddFlowTest(new FlowTestEntry(Bench.Pump, "30 psi", "29 °C", "bench") { Volume = "1 imp gal" })).Code);
    }

    [Fact]
    public void AnEngineWithoutACircuit_SaysSo()
    {
        _bench.MakePump("Other pump");
        Assert.Equal("no-circuit", Bench.Refused(_bench.Workshop.EditElement(Jet("40 thou") with { Engine = "Other pump" })).Code);
        Assert.Equal("no-circuit", Bench.Refused(_bench.Workshop.AddFlowTest(new FlowTestEntry("Other pump", "30 psi", "29 °C", "bench"))).Code);
    }

    private static ElementEntry Jet(string bore) => new(Bench.Pump, "jet", "bench") { Kind = "jet", From = "gallery", To = "sump", Values = [("bore", bore)] };

    private static Quantity Psi(string text) => Read(text, QuantityKind.Pressure);

    private static CircuitValue Given(string text, QuantityKind kind) => new CircuitValue.Given(Read(text, kind));

    private static Quantity Read(string text, QuantityKind kind) => Bench.Ok(QuantityReader.Read(text, new ReadingContext { Kind = kind }));
}
