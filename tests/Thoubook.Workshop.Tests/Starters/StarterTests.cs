using NodaTime;
using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Store;
using Thoubook.Workshop.Importing;
using Thoubook.Workshop.Starters;

namespace Thoubook.Workshop.Tests.Starters;

public sealed class StarterTests : IDisposable
{
    private const string Engine = "Curlew";

    private readonly string _folder = Directory.CreateTempSubdirectory("thoubook-").FullName;
    private readonly OpenWorkshop _workshop;

    public StarterTests()
    {
        _workshop = Ok(OpenWorkshop.Open(_folder, WhenMissing.MakeOne, SystemClock.Instance));
        Ok(_workshop.MakeEngine(new Engine(new EngineName(Engine), Purpose.StandRun), "owner"));
    }

    public void Dispose()
    {
        _workshop.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    public static TheoryData<string> Keys => [.. Starter.All.Select(s => s.Key)];

    [Theory]
    [MemberData(nameof(Keys))]
    public void AStarter_IsDrawnAtTheNamedPlace_WithEveryGapWhole(string key)
    {
        Ok(_workshop.AddStarter(Engine, key, "lower-half/scavenge-pump", "owner"));

        var record = Ok(_workshop.Engine(Engine));
        Assert.All(record.Parts, p => Assert.True(p.Name.IsWithin(PartName.Of("lower-half/scavenge-pump"))));
        Assert.NotEmpty(record.Dimensions);
        Assert.Contains(record.Fits, f => f.Gap.Count > 0);
        Assert.All(record.Fits.SelectMany(f => f.Gap), t => Assert.NotNull(record.Index.Figure(t.Of)));
        Assert.All(record.Dimensions.Concat<Figure>(record.Fits), f => Assert.Empty(f.LimitSets));
    }

    [Fact]
    public void AStarterAgain_LeavesWhatIsThereAsItIs()
    {
        Ok(_workshop.AddStarter(Engine, "gear-pump", null, "owner"));
        Ok(_workshop.Import([IncomingFile.Pasted("limits.yaml", $"engine: {{ name: {Engine}, purpose: stand-run }}\ndimensions: {{ pressure-pump/body.depth: {{ new: [1.2530 in, 1.2540 in] }} }}\n")], new ImportOptions("owner")));

        Assert.True(Ok(_workshop.AddStarter(Engine, "gear-pump", " pressure-pump ", "owner")).IsNothing);
        Assert.Single(Ok(_workshop.Engine(Engine)).Index.Figure(FigureName.Of("pressure-pump/body.depth"))!.LimitSets);
        Assert.False(Ok(_workshop.AddStarter(Engine, "gear-pump", "scavenge-pump", "owner")).IsNothing);
    }

    [Theory]
    [InlineData("gear-pomp", null, "unknown-starter")]
    [InlineData("gear-pump", "../pump", "part-cycle")]
    [InlineData("gear-pump", "Pump", "part-name")]
    [InlineData("gear-pump", "pump: {}", "part-name")]
    public void WhatIsNoStarterOrNoPlace_IsRefused(string starter, string? under, string code)
    {
        Assert.False(_workshop.AddStarter(Engine, starter, under, "owner").IsOk(out _, out var problems));
        Assert.Equal(code, Assert.Single(problems).Code);
    }

    private static T Ok<T>(Outcome<T> outcome)
    {
        Assert.True(outcome.IsOk(out var value, out var problems), string.Join('\n', problems));
        return value;
    }
}
