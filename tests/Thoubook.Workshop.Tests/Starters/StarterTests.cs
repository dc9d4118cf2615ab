using NodaTime;
using Thoubook.Files.EngineFiles;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Store;
using Thoubook.Workshop.Importing;
using Thoubook.Workshop.Starters;

namespace Thoubook.Workshop.Tests.Starters;

/// <summary>Starters in a workshop: what is written, what is left, what is refused.</summary>
public sealed class StarterTests : IDisposable
{
    private const string Engine = "Curlew";

    private readonly string _folder = Directory.CreateTempSubdirectory("thoubook-").FullName;
    private readonly OpenWorkshop _workshop;

    public StarterTests()
    {
        _workshop = StarterBench.Ok(OpenWorkshop.Open(_folder, WhenMissing.MakeOne, SystemClock.Instance));
        StarterBench.Ok(_workshop.MakeEngine(new Engine(new EngineName(Engine), Purpose.StandRun), "owner"));
    }

    public void Dispose()
    {
        _workshop.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    public static TheoryData<string> Keys => [.. Starter.All.Select(s => s.Key)];

    private EngineRecord Record => StarterBench.Ok(_workshop.Engine(Engine));

    [Theory]
    [MemberData(nameof(Keys))]
    public void WhatAStarterAdds_IsStored_AndGivesThePlanThatWasSeen(string key)
    {
        var seen = StarterBench.Ok(_workshop.SeeStarter(Engine, key, StarterBench.None));
        Assert.Empty(Record.Steps);

        StarterBench.Ok(_workshop.AddStarter(Engine, key, StarterBench.None, "owner"));

        Assert.Equal(EngineFile.Write(StarterBench.Laid(new EngineRecord(Record.Engine), seen)), EngineFile.Write(Record));
        Assert.Empty(Plan.Of(Record).Faults);
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void Again_ItAddsNothing_AndSaysWhatItLeft(string key)
    {
        var first = StarterBench.Ok(_workshop.AddStarter(Engine, key, StarterBench.None, "owner"));
        var before = EngineFile.Write(Record);

        var again = StarterBench.Ok(_workshop.AddStarter(Engine, key, StarterBench.None, "owner"));

        Assert.Empty(StarterBench.Added(again));
        Assert.Equal(before, EngineFile.Write(Record));
        Assert.Equal(StarterBench.Added(first).Count(), again.Left.Count);
    }

    [Fact]
    public void WhatAPersonWrote_IsLeft_AndWhatIsMissingIsAdded()
    {
        StarterBench.Ok(_workshop.AddStarter(Engine, "gear-pump", StarterBench.None, "owner"));
        Import("""
            dimensions: { pressure-pump/body.depth: { new: [1.2530 in, 1.2540 in] } }
            joints: { pressure-pump/cover-screws: { parts: [pressure-pump/body, pressure-pump/cover], locking: "peened, as the book says" } }
            steps: { pressure-pump/gears-in: { what: my own way, places: [pressure-pump/driver, pressure-pump/driven] } }
            """);
        var step = Record.Steps.Single(s => s.Name.Text == "pressure-pump/gears-in");

        var again = StarterBench.Ok(_workshop.AddStarter(Engine, "gear-pump", new Dictionary<string, string> { ["drive"] = "splines" }, "owner"));

        Assert.Equal(["pressure-pump.drive-engagement", "pressure-pump/engagement-taken"], StarterBench.Added(again));
        Assert.Single(Record.Index.Figure(FigureName.Of("pressure-pump/body.depth"))!.LimitSets);
        Assert.Equal("peened, as the book says", Record.Joints.Single(j => j.Name.Text == "pressure-pump/cover-screws").Locking);
        Assert.Equal(step.Revision, Record.Steps.Single(s => s.Name == step.Name).Revision);
        Assert.Equal("my own way", Record.Steps.Single(s => s.Name == step.Name).What);
        Assert.Contains("step pressure-pump/gears-in", again.Left);
    }

    [Fact]
    public void ASecondOne_ElsewhereInTheTree_IsAddedBesideTheFirst()
    {
        StarterBench.Ok(_workshop.AddStarter(Engine, "gear-pump", StarterBench.None, "owner"));
        StarterBench.Ok(_workshop.AddStarter(Engine, "gear-pump", new Dictionary<string, string> { ["at"] = "lower-half/scavenge-pump" }, "owner"));

        Assert.Empty(Plan.Of(Record).Faults);
        Assert.Equal(2, Record.Steps.Count(s => s.Name.Text.EndsWith("/cover-on", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("gear-pomp", "at", "pump", "unknown-starter", "gear-pump")]
    [InlineData("gear-pump", "at", "../pump", "part-cycle", "top")]
    [InlineData("gear-pump", "at", "Pump", "part-name", "small letters")]
    [InlineData("gear-pump", "at", "pump: {}", "part-name", "small letters")]
    [InlineData("gear-pump", "at", "pump, scavenge-pump", "one-part", "one")]
    [InlineData("gear-pump", "at", "crankcase", "part-twice", "another")]
    [InlineData("gear-pump", "seal", "paint", "unknown-word", "gasket")]
    [InlineData("gear-pump", "screws", "one", "number", "from 2 to 40")]
    [InlineData("gear-pump", "screws", "1", "number", "from 2 to 40")]
    [InlineData("gear-pump", "skrews", "6", "unknown-question", "screws")]
    [InlineData("gear-pump", "thread", "1/4 BSF\n2", "starter-text", "line")]
    [InlineData("gear-pump", "pressure-pump/joint", "The joint", "part-name", "small letters")]
    [InlineData("gear-pump", "pressure-pump.backlash", "pump.lash", "unknown-figure", "has")]
    public void WhatIsNoAnswer_IsRefusedInWords(string starter, string key, string text, string code, string says)
    {
        Assert.False(_workshop.AddStarter(Engine, starter, new Dictionary<string, string> { [key] = text }, "owner").IsOk(out _, out var problems));
        Assert.All(problems, p => Assert.Equal(code, p.Code));
        Assert.Contains(says, problems[0].ToString(), StringComparison.Ordinal);
        Assert.Empty(Record.Steps);
    }

    private void Import(string sections) =>
        StarterBench.Ok(_workshop.Import([IncomingFile.Pasted("more.yaml", $"engine: {{ name: {Engine}, purpose: stand-run }}\n{sections}\n")], new ImportOptions("owner")));
}
