using Thoubook.Appraisal;
using Thoubook.Appraisal.Verdicts;
using Thoubook.Record;
using Thoubook.Workshop.Importing;
using Thoubook.Workshop.Tests.Starters;

namespace Thoubook.Workshop.Tests.Demo;

/// <summary>What <c>demo/README.md</c> says was planted in the demo engines is found in them, and nothing else is.</summary>
public sealed class PlantedFaultsTests(DemoWorkshop demo) : IClassFixture<DemoWorkshop>
{
    /// <summary>Stands for each of them.</summary>
    private const string ByStarters = "what the starters added";

    private static readonly string Readme = File.ReadAllText(Path.Combine(DemoWorkshop.Files, "README.md"));

    public static TheoryData<string> Engines { get; } = ["Sandpiper six", "Wagtail"];

    [Theory]
    [MemberData(nameof(Engines))]
    public void Appraise_DemoEngine_SaysWhatWasPlantedAndNothingElse(string engine)
    {
        var planted = TableUnder($"### {engine}").SelectMany(p => p.Where == ByStarters ? Wagtail.Added.Select(f => p with { Where = f.ToString() }) : [p]).ToList();
        var said = Said.Of(Appraiser.Appraise(demo.Engine(engine))).Distinct().ToList();

        Assert.NotEmpty(planted);
        Assert.Equal(planted.Count, planted.Distinct().Count());
        Assert.Equal([], planted.Except(said));
        Assert.Equal([], said.Except(planted));
    }

    [Fact]
    public void SandpiperSix_HasTheSizeOfARealEngine()
    {
        var record = demo.Engine("Sandpiper six");

        Assert.True(record.Parts.Count >= 250, $"{record.Parts.Count} parts");
        Assert.True(record.Dimensions.Count >= 200, $"{record.Dimensions.Count} dimensions");
        Assert.True(record.Fits.Count >= 120, $"{record.Fits.Count} fits");
        Assert.True(record.Readings.Count >= 1500, $"{record.Readings.Count} readings");
    }

    [Fact]
    public void Wagtail_HasSomeFortyReadings() => Assert.InRange(demo.Engine("Wagtail").Readings.Count, 35, 50);

    [Theory]
    [MemberData(nameof(Engines))]
    public void DemoEngine_SaysThatItIsInvented(string engine)
    {
        var said = demo.Engine(engine).Engine;

        Assert.True(said.Invented);
        Assert.StartsWith("Invented", said.Note, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("sandpiper-six")]
    [InlineData("wagtail")]
    public void Import_DemoEngineAgain_ChangesNothing(string folder) => Assert.True(demo.TakeIn(folder).Changed.IsNothing);

    [Theory]
    [MemberData(nameof(Engines))]
    public void Export_TakenIntoAnotherWorkshop_ExportsAndSaysTheSame(string engine)
    {
        using var other = DemoWorkshop.Empty();
        var export = demo.Export(engine);
        other.TakeIn(IncomingFile.Pasted("export.yaml", export));

        Assert.Equal(export, other.Export(engine));
        Assert.Equal(Said.Of(Appraiser.Appraise(demo.Engine(engine))), Said.Of(Appraiser.Appraise(other.Engine(engine))));
    }

    /// <summary>What is good is clear of the line: a sum rounded in another way would not change what is said.</summary>
    [Theory]
    [MemberData(nameof(Engines))]
    public void Appraise_GoodFigures_AreNotNearlyTooCloseToCall(string engine)
    {
        var appraisal = Appraiser.Appraise(demo.Engine(engine));
        var confidence = appraisal.Record.Engine.Confidence;

        var near = appraisal.Dimensions.Concat<FigureAppraisal>(appraisal.Fits)
            .Where(f => f.Verdict is Verdict.AsNew or Verdict.WithinWornLimits && f.Probability!.Worn < confidence + ((1 - confidence) / 4))
            .Select(f => $"{f.Figure.Name}: {f.Probability!.Worn:F3}");

        Assert.Equal([], near);
    }

    internal static List<Said> TableUnder(string heading) => [.. RowsUnder(heading).Select(cells => new Said(cells[0], cells[2]))];

    /// <summary>The cells of the rows of the table under a heading of the README.</summary>
    internal static List<string[]> RowsUnder(string heading) =>
        [.. Readme.Split('\n')
            .SkipWhile(line => line != heading)
            .Skip(1)
            .TakeWhile(line => !line.StartsWith('#'))
            .Where(line => line.StartsWith("| ", StringComparison.Ordinal) && !line.StartsWith("| ---", StringComparison.Ordinal) && !line.StartsWith("| where", StringComparison.Ordinal))
            .Select(line => line.Split('|', StringSplitOptions.TrimEntries)[1..^1])];
}
