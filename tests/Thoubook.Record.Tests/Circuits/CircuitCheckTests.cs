using NodaTime;
using Thoubook.Record.Circuits;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Tests.Circuits;

/// <summary>What can be said of a circuit before it is solved, and of the flow tests that calibrate it.</summary>
public sealed class CircuitCheckTests
{
    private static readonly EngineRecord Engine = new(new Engine(new EngineName("Curlew"), Purpose.StandRun))
    {
        Parts = [new Part(PartName.Of("crankcase/main-1"))],
        Dimensions = [new Dimension(FigureName.Of("crankcase/main-1.journal")), new Dimension(FigureName.Of("crankcase/main-1.angle")) { Kind = QuantityKind.Angle }],
        Fits = [new Fit(FigureName.Of("crankcase/main-1.clearance")) { Side = Side.Diametral }, new Fit(FigureName.Of("crankcase/main-1.gap")) { Side = Side.Radial }],
    };

    private static readonly ElementDefinition Pump = new(new("pump"), ElementKind.Pump, new("sump"), new("gallery")) { Values = [Size("displacement", "1 in3", QuantityKind.Volume)] };

    private static readonly ElementDefinition Main = new(new("main-1"), ElementKind.GroovedBearing, new("gallery"), new("sump"))
    {
        Part = PartName.Of("crankcase/main-1"),
        Values = [Taken("diameter", "crankcase/main-1.journal"), Taken("clearance", "crankcase/main-1.clearance"), Size("land", "0.5 in", QuantityKind.Length)],
    };

    private static readonly OilCircuit Good = new()
    {
        Oil = new OilChoice { Grade = "SAE 40" },
        Nodes = [new(new("sump")) { Pressure = Quantity("0 psi", QuantityKind.Pressure) }],
        Elements = [Pump, Main],
        Gauges = [new(new("main"), new("gallery"))],
        States = [new(OilState.HotIdle, Quantity("450 rev/min", QuantityKind.RotationalSpeed), Quantity("80 °C", QuantityKind.Temperature)) { Limits = [new(new("Main")) { Least = Quantity("10 psi", QuantityKind.Pressure) }] }],
        FlowTest = new(new("gallery"), Quantity("30 psi", QuantityKind.Pressure), Quantity("30 °C", QuantityKind.Temperature)),
    };

    public static TheoryData<string, string, string> Wrong =>
    [
        ("circuit-part", "elements, main-1, part", nameof(UnknownPart)),
        ("circuit-figure", "elements, main-1, clearance", nameof(UnknownFigure)),
        ("circuit-figure-kind", "elements, main-1, diameter", nameof(FigureOfAnotherKind)),
        ("circuit-figure-side", "elements, main-1, clearance", nameof(FigureOnOneSide)),
        ("circuit-kind", "elements, main-1, land", nameof(QuantityOfAnotherKind)),
        ("circuit-key-unknown", "elements, main-1, lnad", nameof(UnknownKey)),
        ("circuit-key-twice", "elements, main-1, land", nameof(KeyTwice)),
        ("circuit-vent", "elements, pump, vent", nameof(VentOfAPump)),
        ("circuit-name-twice", "elements, pump", nameof(ElementTwice)),
        ("circuit-name-twice", "nodes, sump", nameof(NodeTwice)),
        ("circuit-name-twice", "gauges, main", nameof(GaugeTwice)),
        ("circuit-name-twice", "states, hot idle", nameof(StateTwice)),
        ("circuit-node-alike", "elements, main-1, to", nameof(NodesAlike)),
        ("circuit-name-twice", "states, hot idle, limits", nameof(LimitTwice)),
        ("circuit-gauge-missing", "states, hot idle, limits", nameof(LimitOfNoGauge)),
        ("circuit-node-missing", "flow test, at", nameof(FlowTestAtNoNode)),
        ("circuit-oil-points", "oil, points", nameof(OnePoint)),
        ("circuit-size", "oil, density", nameof(NoDensity)),
        ("circuit-size", "oil, shear-factor", nameof(ShearAboveOne)),
        ("circuit-size", "gauges, main, uncertainty", nameof(UncertaintyBelowNothing)),
    ];

    [Fact]
    public void AGoodCircuit_HasNothingWrong() => Assert.Empty(CircuitCheck.Of(Good, Engine));

    [Theory]
    [MemberData(nameof(Wrong))]
    public void WhatIsWrong_IsNamedWithItsPlace(string code, string place, string how)
    {
        var circuit = (OilCircuit)typeof(CircuitCheckTests).GetMethod(how, System.Reflection.BindingFlags.NonPublic | System.Reflection.BindingFlags.Static)!.Invoke(null, null)!;
        var problem = Assert.Single(CircuitCheck.Of(circuit, Engine));
        Assert.Equal((code, $"circuit, {place}"), (problem.What.Code, problem.Placed.Field));
    }

    [Fact]
    public void NodeNames_ReservoirsFirst_ThenAsElementsNameThem() => Assert.Equal(["sump", "gallery"], Good.NodeNames.Select(n => n.Text));

    [Fact]
    public void TheCalibratingTest_IsThatOfTheLastAcceptanceThatStands()
    {
        var at = new LocalDateTime(2026, 11, 1, 10, 0).WithOffset(Offset.Zero);
        var tests = Enumerable.Range(0, 2).Select(i => new FlowTest(FactId.New(), at, "bench", Quantity("30 psi", QuantityKind.Pressure), Quantity("30 °C", QuantityKind.Temperature), Quantity("1 l/min", QuantityKind.Flow)) { Sequence = i + 1 }).ToList();
        var accepted = tests.Select((t, i) => new Calibration(FactId.New(), at, "owner", t.Id) { Sequence = i + 3 }).ToList();
        var record = Engine with { FlowTests = tests };
        Assert.Null(record.Index.CalibratingTest);
        record = record with { Calibrations = accepted };
        Assert.Equal(tests[1], record.Index.CalibratingTest);
        record = record with { StrikeOuts = [new StrikeOut(FactId.New(), at, "owner", accepted[1].Id, "a joint wept")] };
        Assert.Equal(tests[0], record.Index.CalibratingTest);
        record = record with { StrikeOuts = [.. record.StrikeOuts, new StrikeOut(FactId.New(), at, "owner", tests[0].Id, "wrong oil")] };
        Assert.Null(record.Index.CalibratingTest);
    }

    [Fact]
    public void AReservoirBelowNothingAtAll_IsRefused()
    {
        NodeDefinition Sump(string pressure) => new(new("sump")) { Pressure = Quantity(pressure, QuantityKind.Pressure) };
        Assert.Equal("circuit, nodes, sump, pressure", Assert.Single(CircuitCheck.Of(Good with { Nodes = [Sump("-15 psi")] }, Engine)).Placed.Field);
        Assert.Empty(CircuitCheck.Of(Good with { Nodes = [Sump("-10 psi")] }, Engine));
    }

    private static OilCircuit UnknownPart() => With(Main with { Part = PartName.Of("crankcase/main-9") });

    private static OilCircuit UnknownFigure() => With(Main with { Values = [Main.Values[0], Taken("clearance", "crankcase/main-1.clearence"), Main.Values[2]] });

    private static OilCircuit FigureOfAnotherKind() => With(Main with { Values = [Taken("diameter", "crankcase/main-1.angle"), .. Main.Values.Skip(1)] });

    private static OilCircuit FigureOnOneSide() => With(Main with { Values = [Main.Values[0], Taken("clearance", "crankcase/main-1.gap"), Main.Values[2]] });

    private static OilCircuit QuantityOfAnotherKind() => With(Main with { Values = [Main.Values[0], Main.Values[1], Size("land", "5 psi", QuantityKind.Pressure)] });

    private static OilCircuit UnknownKey() => With(Main with { Values = [.. Main.Values, Size("lnad", "0.5 in", QuantityKind.Length)] });

    private static OilCircuit KeyTwice() => With(Main with { Values = [.. Main.Values, Main.Values[2]] });

    private static OilCircuit VentOfAPump() => Good with { Elements = [Pump with { Vent = new("sump") }, Main] };

    private static OilCircuit ElementTwice() => Good with { Elements = [Pump, Main, Pump] };

    private static OilCircuit NodeTwice() => Good with { Nodes = [.. Good.Nodes, .. Good.Nodes] };

    private static OilCircuit GaugeTwice() => Good with { Gauges = [.. Good.Gauges, .. Good.Gauges] };

    private static OilCircuit StateTwice() => Good with { States = [.. Good.States, .. Good.States] };

    private static OilCircuit NodesAlike() => With(Main with { To = new("Sump") });

    private static OilCircuit LimitTwice() => With(Good.States[0] with { Limits = [.. Good.States[0].Limits, .. Good.States[0].Limits] });

    private static OilCircuit LimitOfNoGauge() => With(Good.States[0] with { Limits = [new(new("mian"))] });

    private static OilCircuit FlowTestAtNoNode() => Good with { FlowTest = Good.FlowTest! with { At = new("galery") } };

    private static OilCircuit OnePoint() => Good with { Oil = new OilChoice { Points = [new(Quantity("40 °C", QuantityKind.Temperature), Quantity("140 cSt", QuantityKind.KinematicViscosity))] } };

    private static OilCircuit NoDensity() => Good with { Oil = Good.Oil with { Density = Quantity("0 kg/m3", QuantityKind.Density) } };

    private static OilCircuit ShearAboveOne() => Good with { Oil = Good.Oil with { ShearFactor = Quantity("1.1", QuantityKind.Number) } };

    private static OilCircuit UncertaintyBelowNothing() => Good with { Gauges = [Good.Gauges[0] with { Uncertainty = Quantity("-1 psi", QuantityKind.Pressure) }] };

    private static OilCircuit With(ElementDefinition main) => Good with { Elements = [Pump, main] };

    private static OilCircuit With(OilState state) => Good with { States = [state] };

    private static ElementValue Taken(string key, string figure) => new(key, new CircuitValue.Taken(FigureName.Of(figure)));

    private static ElementValue Size(string key, string text, QuantityKind kind) => new(key, new CircuitValue.Given(Quantity(text, kind)));

    private static Quantity Quantity(string text, QuantityKind kind) => QuantityReader.Read(text, new ReadingContext { Kind = kind }).IsOk(out var quantity, out _) ? quantity : throw new InvalidOperationException(text);
}
