using System.Text.RegularExpressions;
using NodaTime;
using Thoubook.Appraisal;
using Thoubook.Appraisal.Oil;
using Thoubook.Files;
using Thoubook.Files.EngineFiles;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;
using Thoubook.Workshop.Starters;
using Thoubook.Workshop.Tests.Demo;

namespace Thoubook.Workshop.Tests.Starters;

/// <summary>The circuit drawn from a dozen questions.</summary>
public sealed partial class CircuitStarterTests
{
    private static readonly EngineRecord Bare = new(new Engine(new EngineName("Curlew"), Purpose.StandRun));

    private static readonly ImportTerms Terms = new(new LocalDateTime(2026, 1, 1, 0, 0).WithOffset(Offset.Zero), "owner");

    [Fact]
    public void EveryCombinationOfChoices_DrawsACircuitThatIsWhole()
    {
        var drawn = 0;
        var choices = CircuitStarter.Questions.Where(q => q.Choices.Count > 0).ToList();
        foreach (var answers in Combinations(choices))
        {
            var started = Ok(CircuitStarter.Make(Bare, answers));
            var record = Whole(Bare, started);
            Assert.Empty(CircuitCheck.Of(started.Circuit, record));
            Assert.Empty(DeadEnds(started.Circuit));
            Assert.Equal(answers["sump"] == "dry", started.Circuit.Elements.Any(e => e.Value("need") is not null));
            drawn++;
        }

        Assert.Equal(2 * 2 * 2 * 4 * 2 * 2 * 3 * 2, drawn);
    }

    /// <summary>Whatever is answered, the assumed sizes make an engine that could live; every seventh combination, for time's sake.</summary>
    [Fact]
    public void ADrawnCircuit_IsSolved_AtALikelyPressure()
    {
        foreach (var (_, answers) in Combinations([.. CircuitStarter.Questions.Where(q => q.Choices.Count > 0)]).Index().Where(c => c.Index % 7 == 0))
        {
            var record = Whole(Bare, Ok(CircuitStarter.Make(Bare, answers)));
            var system = Ok(OilSystem.Of(Appraiser.Appraise(record)));
            foreach (var state in record.Circuit!.States)
            {
                var said = $"{string.Join(' ', answers.Select(a => $"{a.Key}={a.Value}"))}, {state.Name}";
                Assert.True(system.At(new OilPoint(state.Speed.Si, state.OilTemperature.Si)).IsOk(out var answer, out var problems), $"{said}: {string.Join('\n', problems)}");
                Assert.InRange(TradeUnit.Psi.FromSi(answer.Gauges[0].Pressure.Value), 8, 75);
            }
        }
    }

    [Theory]
    [InlineData(1, 0, 0)]
    [InlineData(2, 3, 1)]
    [InlineData(16, 16, 12)]
    public void AsManyAsAreAsked_AreDrawn(int mains, int camshaft, int jets)
    {
        var circuit = Ok(CircuitStarter.Make(Bare, new Dictionary<string, string> { ["mains"] = $"{mains}", ["camshaft-bearings"] = $"{camshaft}", ["timing-jets"] = $"{jets}", ["relief"] = "cascade" })).Circuit;

        Assert.Equal(mains, circuit.Elements.Count(e => e.Kind == ElementKind.GroovedBearing));
        Assert.Equal(Math.Max(1, mains - 1), circuit.Elements.Count(e => e.Kind == ElementKind.CrankDrilling));
        Assert.Equal(camshaft, circuit.Elements.Count(e => e.Name.Text.StartsWith("camshaft-", StringComparison.Ordinal) && e.Kind == ElementKind.HoleFedBearing));
        Assert.Equal(jets, circuit.Elements.Count(e => e.Kind == ElementKind.Jet));
        Assert.Empty(DeadEnds(circuit));
    }

    [Fact]
    public void WhatDecidesThePressure_IsAddedAsFits_SoThatItCanBeMeasured()
    {
        var started = Ok(CircuitStarter.Make(Bare, new Dictionary<string, string> { ["mains"] = "3" }));

        Assert.Equal(
            ["crankcase/main-1.oil-clearance", "crankcase/main-2.oil-clearance", "crankcase/main-3.oil-clearance", "rods/rod-1.oil-clearance", "rods/rod-2.oil-clearance", "pressure-pump.driver-end-float"],
            started.Added.Fits.Select(f => f.Name.ToString()));
        Assert.All(started.Added.Fits, f => Assert.Contains("assumed", f.Note, StringComparison.Ordinal));
        Assert.All(started.Circuit.Elements, e => Assert.Equal(e.Note is null, e.Values.All(v => v.Value is CircuitValue.Taken)));
        Assert.Equal("crankcase/main-2.oil-clearance", started.Circuit.Element(new("main-2"))!.Value("clearance")!.ToString());
        Assert.Contains("land", started.Circuit.Element(new("main-2"))!.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void TheSmallDemoEngine_HasItsCircuitByTheStarterAlone()
    {
        var text = File.ReadAllText(Path.Combine(DemoWorkshop.Files, "wagtail", "engine.yaml"));
        var record = Ok(EngineFile.Read(text, "engine.yaml", Terms));
        var line = text.Split('\n').Single(l => l.StartsWith("#   thoubook oil start Wagtail ", StringComparison.Ordinal));
        var answers = AnswerInLine().Matches(line).ToDictionary(m => m.Groups["key"].Value, m => m.Groups["text"].Value);

        var begun = Wagtail.Begun(record);
        var started = Ok(CircuitStarter.Make(begun with { Circuit = null, Fits = [.. begun.Fits.SkipLast(1)] }, answers));

        Assert.Equal(8, answers.Count);
        Assert.Equal(EngineFile.Write(begun), EngineFile.Write(Whole(begun with { Fits = [.. begun.Fits.SkipLast(1)] }, started)));
    }

    [Fact]
    public void FiguresOfTheEngine_AreTakenByTheirUsualNames()
    {
        var record = Ok(EngineFile.Read(File.ReadAllText(Path.Combine(DemoWorkshop.Files, "sandpiper-six", "engine.yaml")), "engine.yaml", Terms));

        var started = Ok(CircuitStarter.Make(record, new Dictionary<string, string>
        {
            ["mains"] = "7",
            ["big-ends"] = "6",
            ["sump"] = "dry",
            ["scavenge-pumps"] = "2",
            ["camshaft-bearings"] = "4",
            ["camshaft-at"] = "camshaft.bush-{n}-clearance",
            ["pump-at"] = "lower-half/oil-pumps/pressure-pump",
            ["scavenge-at"] = "lower-half/oil-pumps/scavenge-front, lower-half/oil-pumps/scavenge-rear",
        }));

        Assert.Empty(started.Added.Fits);
        Assert.Empty(started.Added.Parts);
        Assert.Equal("crankcase/main-7.oil-clearance", started.Circuit.Element(new("main-7"))!.Value("clearance")!.ToString());
        Assert.Equal("crankshaft.main-7", started.Circuit.Element(new("main-7"))!.Value("diameter")!.ToString());
        Assert.Equal("rods/rod-6.oil-clearance", started.Circuit.Element(new("big-end-6"))!.Value("clearance")!.ToString());
        Assert.Equal("camshaft.bush-4-clearance", started.Circuit.Element(new("camshaft-4"))!.Value("clearance")!.ToString());
        var pump = started.Circuit.Element(new("pressure-pump"))!;
        Assert.Equal(
            ["tip-diameter", "width", "end-float", "driven-end-float", "tip-clearance", "bush-clearance", "bush-diameter"],
            pump.Values.Where(v => v.Value is CircuitValue.Taken).Select(v => v.Key));
        Assert.Equal("lower-half/oil-pumps/scavenge-rear/driver.width", started.Circuit.Element(new("scavenge-pump-2"))!.Value("width")!.ToString());
    }

    [Theory]
    [InlineData("sumps", "wet", "unknown-question", "sump")]
    [InlineData("relief", "reducing valve", "reducing-valve-of-nothing", "camshaft-bearings")]
    [InlineData("sump", "damp", "unknown-word", "One of")]
    [InlineData("relief", "cascde", "unknown-word", "cascade")]
    [InlineData("mains", "0", "number", "16")]
    [InlineData("mains", "three", "number", "16")]
    [InlineData("mains", "2.5", "number", "16")]
    [InlineData("scavenge-pumps", "1", "scavenge-of-wet-sump", "dry")]
    [InlineData("journal", "2 psi", "unit-wrong-kind", "in")]
    [InlineData("journal", "-2 in", "circuit-size", "above")]
    [InlineData("mains", "500", "number", "1 to 16")]
    [InlineData("mains", "17", "number", "1 to 16")]
    [InlineData("pump-at", "Pressure Pump", "part-name", "small letters")]
    [InlineData("mains-at", "crankcase.main-{n}", "unknown-figure", "Correct")]
    public void WhatIsNoAnswer_IsRefused(string key, string text, string code, string says)
    {
        Assert.False(CircuitStarter.Make(Bare, new Dictionary<string, string> { [key] = text }).IsOk(out _, out var problems));
        Assert.All(problems, p => Assert.Equal(code, p.Code));
        Assert.Contains(says, problems[0].ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void TheWorkshop_StoresIt_OnceOnly()
    {
        using var bench = new Bench();
        var circuit = Bench.Ok(bench.Workshop.StartCircuit(Bench.Pump, new Dictionary<string, string> { ["mains"] = "2", ["pump-at"] = "pump" }, "owner"));

        Assert.Equal(1, circuit.Revision);
        Assert.Equal(Bench.EndFloat, circuit.Element(new("pressure-pump"))!.Value("end-float")!.ToString());
        Assert.NotNull(bench.Record.Index.Figure(FigureName.Of("crankcase/main-2.oil-clearance")));
        Assert.Equal("circuit-there", Bench.Refused(bench.Workshop.StartCircuit(Bench.Pump, new Dictionary<string, string>(), "owner")).Code);
    }

    [Fact]
    public void ADrawnCircuit_WrittenAsAFile_IsReadBack()
    {
        var record = Whole(Bare, Ok(CircuitStarter.Make(Bare, new Dictionary<string, string> { ["sump"] = "dry", ["relief"] = "jet and relief", ["cooler"] = "yes", ["filter"] = "yes" })));
        var text = EngineFile.Write(record);

        Assert.Equal(text, EngineFile.Write(Ok(EngineFile.Read(text, "drawn.yaml", Terms))));
    }

    private static EngineRecord Whole(EngineRecord record, StartedCircuit started) => record with
    {
        Parts = [.. record.Parts, .. started.Added.Parts],
        Fits = [.. record.Fits, .. started.Added.Fits],
        Circuit = started.Circuit,
    };

    /// <summary>Nodes that only one element touches and that are no reservoir: the oil could not go on from there.</summary>
    private static List<NodeName> DeadEnds(OilCircuit circuit) =>
        [.. circuit.NodeNames.Where(n => circuit.Node(n)?.Pressure is null && circuit.Elements.Count(e => !e.Blanked && (e.From == n || e.To == n)) < 2)];

    private static IEnumerable<Dictionary<string, string>> Combinations(IReadOnlyList<StarterQuestion> questions)
    {
        IEnumerable<Dictionary<string, string>> all = [new Dictionary<string, string> { ["timing-jets"] = "1" }];
        foreach (var question in questions)
            all = all.SelectMany(a => question.Choices.Select(c => new Dictionary<string, string>(a) { [question.Key] = c }));
        return all;
    }

    [GeneratedRegex("""(^| )("(?<key>[a-z-]+)=(?<text>[^"]+)"|(?<key>[a-z-]+)=(?<text>[^ "]+))""", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex AnswerInLine();

    private static T Ok<T>(Outcome<T> outcome)
    {
        Assert.True(outcome.IsOk(out var value, out var problems), string.Join('\n', problems));
        return value;
    }
}
