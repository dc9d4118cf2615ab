using System.Diagnostics;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using NodaTime;
using Thoubook.Record;
using Thoubook.Store;
using Thoubook.Workshop.Importing;

namespace Thoubook.Workshop.Tests.Importing;

public sealed class ImportTests : IDisposable
{
    private const string Engine = """
        engine: { name: Sandpiper six, purpose: stand-run }
        parts: { pump/body: {} }
        dimensions: { pump/body.depth: { new: [1.2530 in, 1.2540 in] } }
        """;

    private const string Readings = "of,place,value\npump/body.depth,A1,1.2535\npump/body.depth,A1,1.2535\npump/body.depth,A2,1.2536\n";

    private const string Schedule = "Description,New min [in],New max [in],Worn [in]\nPump body depth,1.2530,1.2540,1.2560\nPump spindle diameter,0.4990,0.4995,0.4980\n";

    private static readonly ImportOptions Owner = new("owner");

    private readonly string _folder = Directory.CreateTempSubdirectory("thoubook-").FullName;
    private readonly OpenWorkshop _workshop;

    public ImportTests() => _workshop = Ok(OpenWorkshop.Open(_folder, WhenMissing.MakeOne, SystemClock.Instance));

    public void Dispose()
    {
        _workshop.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public void TheExample_IsStored_AndAgainChangesNothing()
    {
        Assert.False(Import(Example()).Changed.IsNothing);
        var sequence = _workshop.Sequence();

        var again = Import(Example());
        Assert.True(again.Changed.IsNothing);
        Assert.Equal("Sandpiper six: nothing new; everything was there already.", again.Summary);
        Assert.Equal(sequence, _workshop.Sequence());
    }

    [Fact]
    public void TheExport_TakenIntoAnotherWorkshop_ExportsTheSame()
    {
        Import(Example());
        var export = Ok(_workshop.Export("Sandpiper six"));

        using var other = new ImportTests();
        other.Import(Pasted("export.yaml", export));
        Assert.Equal(export, Ok(other._workshop.Export("Sandpiper six")));
        Assert.True(Import(Pasted("export.yaml", export)).Changed.IsNothing);
    }

    [Fact]
    public void AnEngineAndItsReadings_AreTakenInTogether_InWhateverOrder()
    {
        var taken = Import(Pasted("readings.csv", Readings), Pasted("engine.yaml", Engine));

        Assert.Equal([FileSort.Readings, FileSort.EngineFile], taken.Reading.Files.Select(f => f.Sort));
        Assert.Equal(3, Ok(_workshop.Engine("Sandpiper six")).Readings.Count);
        Assert.True(Import(Pasted("engine.yaml", Engine), Pasted("readings.csv", Readings)).Changed.IsNothing);
        Assert.True(Import(Owner with { Engine = "sandpiper SIX" }, Pasted("readings.csv", Readings)).Changed.IsNothing);
    }

    [Fact]
    public void ReadingsTakenInAgain_StayWithThePieceTheyWereTakenOf()
    {
        Import(Pasted("engine.yaml", Engine), Pasted("readings.csv", Readings));
        var before = Ok(_workshop.Engine("Sandpiper six")).Readings[0].Piece;
        Import(Pasted("more.yaml", "engine: { name: Sandpiper six, purpose: stand-run }\npieces: { P-31: {} }\nchoices: [{ piece: P-31, part: pump/body }]\n"));

        Assert.True(Import(Owner with { Engine = "Sandpiper six" }, Pasted("readings.csv", Readings)).Changed.IsNothing);
        Assert.All(Ok(_workshop.Engine("Sandpiper six")).Readings, r => Assert.Equal(before, r.Piece));
        Import(Owner with { Engine = "Sandpiper six" }, Pasted("later.csv", "of,value\npump/body.depth,1.2531\n"));
        Assert.Equal("P-31", Ok(_workshop.Engine("Sandpiper six")).Readings[^1].Piece.Text);
    }

    [Fact]
    public void WhatAFileLeavesOutOfTheEngine_StaysAsItIs()
    {
        Import(Pasted("engine.yaml", "engine: { name: Sandpiper six, purpose: stand-run, mark: II, confidence: 0.9 }\ntemperatures: { hot: { everywhere: 80 °C } }\n"));
        Import(Pasted("parts.yaml", "engine: { name: sandpiper six, purpose: working }\nparts: { pump/body: {} }\n"));

        var engine = Ok(_workshop.Engine("Sandpiper six")).Engine;
        Assert.Equal(("II", 0.9, "hot", Purpose.Working), (engine.Mark, engine.Confidence, Assert.Single(engine.Temperatures).Name, engine.Purpose));
    }

    [Fact]
    public void AProblemInOneFile_LeavesNothingOfTheOthers()
    {
        var outcome = _workshop.Import([Pasted("engine.yaml", Engine), Pasted("readings.csv", Readings + "pump/body.depth,A2,1.25.36\n")], Owner);

        Assert.Equal("readings.csv(5,20)", Assert.Single(Refused(outcome)).At!.ToString());
        Assert.Empty(_workshop.Engines());
        Assert.Equal(0, _workshop.Sequence());
    }

    [Fact]
    public void LookingAtFiles_WritesNothing()
    {
        var reading = Ok(_workshop.LookAt([Pasted("engine.yaml", Engine), Pasted("readings.csv", Readings)], Owner));

        Assert.Equal(3, reading.Record.Readings.Count);
        Assert.Equal(0, _workshop.Sequence());
    }

    [Fact]
    public void ATableAlone_NeedsItsEngine()
    {
        Assert.Equal("import-engine", Assert.Single(Refused(_workshop.Import([Pasted("readings.csv", Readings)], Owner))).Code);
        Assert.Equal("unknown-engine", Assert.Single(Refused(_workshop.Import([Pasted("readings.csv", Readings)], Owner with { Engine = "Curlew" }))).Code);
        Assert.Equal("import-nothing", Assert.Single(Refused(_workshop.Import([], Owner))).Code);
    }

    [Fact]
    public void FilesOfTwoEngines_AreNotTakenInTogether() =>
        Assert.Equal("import-engines", Assert.Single(Refused(_workshop.Import([Pasted("one.yaml", Engine), Pasted("two.yaml", Engine.Replace("six", "seven", StringComparison.Ordinal))], Owner))).Code);

    [Fact]
    public void ASchedule_GivesTheLimitsOfAnEngine_AndAgainChangesNothing()
    {
        Import(Pasted("engine.yaml", Engine));
        var schedule = Owner with { Engine = "Sandpiper six", Document = "Overhaul book" };

        var taken = Import(schedule, Pasted("limits.csv", Schedule));
        var record = Ok(_workshop.Engine("Sandpiper six"));
        Assert.Equal(FileSort.Schedule, Assert.Single(taken.Reading.Files).Sort);
        Assert.Equal("Overhaul book", record.Index.Document(new("overhaul-book"))!.Title);
        Assert.Equal(3, record.Dimensions.Count);
        Assert.All(record.Dimensions.Where(d => d.Name.Part.Path != "pump/body"), d => Assert.Equal("overhaul-book", d.LimitSets[0].Source!.Document.Text));
        Assert.True(Import(schedule, Pasted("limits.csv", Schedule)).Changed.IsNothing);
    }

    [Fact]
    public void WhatAScheduleAsks_IsAnsweredBeforeAnythingIsTaken()
    {
        Import(Pasted("engine.yaml", Engine));
        var sequence = _workshop.Sequence();
        var options = Owner with { Engine = "Sandpiper six" };
        var unitless = Schedule.Replace(" [in]", "", StringComparison.Ordinal);

        Assert.Contains(Refused(_workshop.Import([Pasted("limits.csv", unitless)], options)), p => p.IsQuestion);
        Assert.Equal(sequence, _workshop.Sequence());
        Assert.False(Import(options with { Unit = Files.Schedules.StatedUnit.Inch }, Pasted("limits.csv", unitless)).Changed.IsNothing);
    }

    [Fact]
    public void AFigureThatIsThereAlready_KeepsWhatTheScheduleDoesNotSay()
    {
        Import(Pasted("engine.yaml", Engine));
        var options = Owner with { Engine = "Sandpiper six", Document = "first" };
        Import(options, Pasted("limits.csv", Schedule));
        var name = Ok(_workshop.Engine("Sandpiper six")).Dimensions.First(d => d.LimitSets[0].Source?.Document.Text == "first").Name;
        Import(Pasted("more.yaml", $"engine: {{ name: Sandpiper six, purpose: stand-run }}\ndocuments: {{ first: {{}} }}\ndimensions: {{ {name}: {{ new: [1.2530 in, 1.2540 in], worn: 1.2560 in, document: 'first, line 2', places: [A1, A2], counts: greatest }} }}\n"));
        Import(options with { Document = "second" }, Pasted("limits.csv", Schedule));

        var dimension = (Record.Measures.Dimension)Ok(_workshop.Engine("Sandpiper six")).Index.Figure(name)!;
        Assert.Equal(["A1", "A2"], dimension.Places.Select(p => p.Text));
        Assert.Equal(["first", "second"], dimension.LimitSets.Select(s => s.Source!.Document.Text));
    }

    [Theory]
    [InlineData("engine:\n  name: x\n", FileSort.EngineFile)]
    [InlineData("# remark\n\n{ engine: { name: x } }", FileSort.EngineFile)]
    [InlineData("engin: { name: x }", FileSort.EngineFile)]
    [InlineData("of,value\n", FileSort.Readings)]
    [InlineData("Fits and clearances: inches\nDescription,New\n", FileSort.Schedule)]
    [InlineData("", FileSort.Schedule)]
    public void WhatAFileIs_IsSeenByWhatStandsInIt(string text, FileSort sort) => Assert.Equal(sort, ImportReading.SortOf(text));

    /// <summary>The promise is 5 s for 100,000 readings on an idle machine; a tenth of them here, with room for a busy one.</summary>
    [Fact]
    public void TenThousandReadings_AreTakenInWithoutWaiting()
    {
        Import(Pasted("engine.yaml", Engine));
        var table = Table(10_000);
        var watch = Stopwatch.StartNew();
        Import(Owner with { Engine = "Sandpiper six" }, Pasted("readings.csv", table));
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(10), $"{watch.Elapsed}");
        Assert.Equal(10_000, Ok(_workshop.Engine("Sandpiper six")).Readings.Count);
    }

    private static string Table(int readings)
    {
        var table = new StringBuilder("of,place,value [in],temperature [°C],by,at\n");
        for (var i = 0; i < readings; i++)
            table.Append(CultureInfo.InvariantCulture, $"pump/body.depth,A{i % 9 + 1},1.25{i % 100:00},19,owner,2026-11-01T{i / 3600 % 24:00}:{i / 60 % 60:00}:{i % 60:00}+00:00\n");
        return table.ToString();
    }

    private Imported Import(params IncomingFile[] files) => Import(Owner, files);

    private Imported Import(ImportOptions options, params IncomingFile[] files) => Ok(_workshop.Import(files, options));

    private static IncomingFile Pasted(string name, string text) => IncomingFile.Pasted(name, text);

    private static IncomingFile Example()
    {
        var page = File.ReadAllText(Path.Combine(Here(), "../../../docs/engine-file.md"));
        var start = page.IndexOf("```yaml\n", StringComparison.Ordinal) + 8;
        return Pasted("example.yaml", page[start..page.IndexOf("```", start, StringComparison.Ordinal)]);
    }

    private static T Ok<T>(Outcome<T> outcome)
    {
        Assert.True(outcome.IsOk(out var value, out var problems), string.Join('\n', problems));
        return value;
    }

    private static IReadOnlyList<Problem> Refused<T>(Outcome<T> outcome)
    {
        Assert.False(outcome.IsOk(out _, out var problems));
        return problems;
    }

    private static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
