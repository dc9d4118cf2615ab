using CsCheck;
using Thoubook.Files.EngineFiles;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Tests.EngineFiles;

/// <summary>The circuit as it is read from a file and written to one.</summary>
public sealed class CircuitFileTests
{
    private static readonly string Example = TestFiles.Block("docs/circuit.md", "yaml");

    [Fact]
    public void NamesOfFigures_AreLookedUpFromTheElementsPartUpwards()
    {
        var circuit = Read(Example).Circuit!;

        var main = circuit.Element(new("main-1"))!;
        Assert.Equal("crankcase/main-1.journal", main.Value("diameter")!.ToString());
        Assert.Equal("crankcase/main-1.clearance", main.Value("clearance")!.ToString());
        Assert.Equal("lower-half/pressure-pump.end-float", circuit.Element(new("pressure-pump"))!.Value("end-float")!.ToString());
        Assert.IsType<CircuitValue.Given>(main.Value("land"));
        Assert.Null(main.Value("hole"));
    }

    [Fact]
    public void TheExample_SaysWhatStandsThere()
    {
        var record = Read(Example);
        var circuit = record.Circuit!;

        Assert.Equal(("SAE 40", 2, 890.0), (circuit.Oil.Grade, circuit.Oil.Points.Count, circuit.Oil.Density!.Si));
        Assert.Equal(14 * 0.0254, circuit.Node(new("tank"))!.Height!.Si, 1e-12);
        Assert.Equal(["main", "low pressure"], circuit.Gauges.Select(g => g.Name.Text));
        Assert.Equal(450 * Math.PI / 30, circuit.State(OilState.HotIdle)!.Speed.Si, 1e-9);
        Assert.Equal("90", circuit.States[0].Limits[0].Source!.Row![^2..]);
        Assert.Equal(0.95, circuit.FlowTest!.Eccentricity!.Si);
        Assert.True(circuit.Element(new("propeller"))!.Blanked);
        Assert.Equal("sump", circuit.Element(new("first-stage"))!.Vent!.Value.Text);
        Assert.Equal(1.2e-3 / 60, record.FlowTests[0].Flow.Si, 1e-12);
        Assert.Equal(record.FlowTests[0], record.Index.CalibratingTest);
        Assert.Equal(ElementKinds.All.Count, circuit.Elements.Select(e => e.Kind).Distinct().Count());
    }

    [Fact]
    public void ACircuit_WrittenAndRead_IsTheSame() => Circuits.Sample(
        record =>
        {
            var text = EngineFile.Write(record);
            var read = Read(text);
            Assert.Null(RoundTripTests.Difference(record.Circuit, read.Circuit, "circuit"));
            Assert.Equal(text, EngineFile.Write(read));
        },
        iter: 300,
        threads: 1);

    [Fact]
    public void ACircuitAlone_IsRead_AndTakesFiguresOfItsFile()
    {
        var alone = "circuit:" + Example.Split("\ncircuit:")[1].Split("\nflow-tests:")[0].Replace(", document: \"overhaul-book, row 90\"", "", StringComparison.Ordinal);
        var parts = Example.Split("\ndocuments:")[1].Split("\ncircuit:")[0];

        Assert.True(EngineFile.ReadCircuit("documents:" + parts + "\n" + alone, "small.yaml", TestFiles.Terms).IsOk(out var record, out var problems), string.Join('\n', problems));
        Assert.Equal("small.yaml", record.Engine.Name.Text);
        Assert.Equal(Read(Example).Circuit!.Elements.Count, record.Circuit!.Elements.Count);
        Assert.False(EngineFile.ReadCircuit(alone, "small.yaml", TestFiles.Terms).IsOk(out _, out problems));
        Assert.Contains(problems, p => p.Code == "file-part-missing");
    }

    [Theory]
    [InlineData("engine: { name: None, purpose: display }", "file-circuit-missing")]
    [InlineData("- a list", "file-shape")]
    [InlineData("", "yaml-empty")]
    public void AFileWithoutACircuit_IsRefused(string text, string code)
    {
        Assert.False(EngineFile.ReadCircuit(text, "small.yaml", TestFiles.Terms).IsOk(out _, out var problems));
        Assert.Equal(code, Assert.Single(problems).Code);
    }

    [Fact]
    public void AQuantityWhoseTextLooksLikeAName_KeepsItsMeaning()
    {
        var record = Read(Example);
        var spray = record.Circuit!.Element(new("spray"))!;
        var odd = spray with { Values = [new("bore", new CircuitValue.Given(new Quantity(0.001, QuantityKind.Length, TradeUnit.Millimetre, "nil")))] };
        var changed = record with { Circuit = record.Circuit with { Elements = [.. record.Circuit.Elements.Select(e => e.Name == odd.Name ? odd : e)] } };

        var again = Read(EngineFile.Write(changed));
        Assert.Equal(odd.Value("bore"), again.Circuit!.Element(new("spray"))!.Value("bore"));
    }

    /// <summary>The example with elements left out, optional sizes left out, texts changed.</summary>
    private static Gen<EngineRecord> Circuits
    {
        get
        {
            var record = Read(Example);
            var elements = record.Circuit!.Elements;
            return Gen.Select(Gen.Int[0, 7].Array[elements.Count], Gen.Int[0, 1 << 20].Array[elements.Count], RandomRecords.Texts, Gen.Bool).Select((kept, left, text, isBare) => record with
            {
                FlowTests = [],
                Calibrations = [],
                Circuit = record.Circuit with
                {
                    Oil = isBare ? new OilChoice { Points = record.Circuit.Oil.Points } : record.Circuit.Oil,
                    Gauges = [],
                    FlowTest = null,
                    States = isBare ? [] : [new OilState(text.ReplaceLineEndings(" ").Replace('\t', ' '), record.Circuit.States[0].Speed, record.Circuit.States[0].OilTemperature)],
                    Elements = [.. elements.Where((_, i) => kept[i] > 0).Select((e, i) => e with
                    {
                        Blanked = kept[i] == 2,
                        Label = kept[i] == 3 ? text : null,
                        Note = kept[i] == 4 ? text : null,
                        Values = [.. e.Values.Where((v, k) => (left[i] >> k & 1) == 0 || !MayBeLeftOut(e.Shape, v.Key))],
                    })],
                },
            });
        }
    }

    private static bool MayBeLeftOut(ElementShape shape, string key) =>
        shape.Key(key)!.Need == KeyNeed.MayBeLeftOut && !shape.OneOf.Concat(shape.Together).Any(g => g.Contains(key));

    private static EngineRecord Read(string text)
    {
        Assert.True(EngineFile.Read(text, "circuit.yaml", TestFiles.Terms).IsOk(out var record, out var problems), string.Join('\n', problems) + "\n" + text);
        return record;
    }
}
