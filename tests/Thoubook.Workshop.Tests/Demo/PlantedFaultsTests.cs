using Thoubook.Appraisal;
using Thoubook.Appraisal.Verdicts;
using Thoubook.Record;

namespace Thoubook.Workshop.Tests.Demo;

/// <summary>What <c>demo/README.md</c> says was planted in the demo engines is found in them, and nothing else is.</summary>
public sealed class PlantedFaultsTests
{
    public static TheoryData<string, string> Engines { get; } = new() { { "sandpiper-six", "Sandpiper six" }, { "wagtail", "Wagtail" } };

    [Theory]
    [MemberData(nameof(Engines))]
    public void Appraise_DemoEngine_SaysWhatWasPlantedAndNothingElse(string folder, string heading)
    {
        var planted = TableUnder($"### {heading}");
        var said = Said.Of(Appraiser.Appraise(DemoFiles.Read(folder))).Distinct().ToList();

        Assert.NotEmpty(planted);
        Assert.Equal(planted.Count, planted.Distinct().Count());
        Assert.Equal([], planted.Except(said));
        Assert.Equal([], said.Except(planted));
    }

    [Fact]
    public void SandpiperSix_HasTheSizeOfARealEngine()
    {
        var record = DemoFiles.Read("sandpiper-six");

        Assert.True(record.Parts.Count >= 250, $"{record.Parts.Count} parts");
        Assert.True(record.Dimensions.Count >= 200, $"{record.Dimensions.Count} dimensions");
        Assert.True(record.Fits.Count >= 120, $"{record.Fits.Count} fits");
        Assert.True(record.Readings.Count >= 1500, $"{record.Readings.Count} readings");
    }

    [Fact]
    public void Wagtail_HasSomeFortyReadings() => Assert.InRange(DemoFiles.Read("wagtail").Readings.Count, 35, 50);

    [Theory]
    [MemberData(nameof(Engines))]
    public void DemoEngine_SaysThatItIsInvented(string folder, string name)
    {
        var engine = DemoFiles.Read(folder).Engine;

        Assert.Equal(new EngineName(name), engine.Name);
        Assert.True(engine.Invented);
        Assert.StartsWith("Invented", engine.Note, StringComparison.Ordinal);
    }

    /// <summary>Every fault that counts on a number is clear of the line: another way to round would not change what is said.</summary>
    [Theory]
    [MemberData(nameof(Engines))]
    public void Appraise_GoodFigures_AreNotNearlyTooCloseToCall(string folder, string name)
    {
        var appraisal = Appraiser.Appraise(DemoFiles.Read(folder));
        var confidence = appraisal.Record.Engine.Confidence;

        var near = appraisal.Dimensions.Concat<FigureAppraisal>(appraisal.Fits)
            .Where(f => f.Verdict is Verdict.AsNew or Verdict.WithinWornLimits && f.Probability!.Worn < confidence + ((1 - confidence) / 4))
            .Select(f => $"{name}, {f.Figure.Name}: {f.Probability!.Worn:F3}");

        Assert.Equal([], near);
    }

    private static List<Said> TableUnder(string heading) =>
        [.. DemoFiles.Readme.Split('\n')
            .SkipWhile(line => line != heading)
            .Skip(1)
            .TakeWhile(line => !line.StartsWith('#'))
            .Where(line => line.StartsWith("| ", StringComparison.Ordinal) && !line.StartsWith("| ---", StringComparison.Ordinal) && !line.StartsWith("| where", StringComparison.Ordinal))
            .Select(line => line.Split('|', StringSplitOptions.TrimEntries))
            .Select(cells => new Said(cells[1], cells[3]))];
}
