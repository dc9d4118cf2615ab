using System.Text.Json;
using Thoubook.Cli.Speaking;

namespace Thoubook.Cli.Tests;

public sealed class AppraiseTests
{
    private static readonly string[] Verdicts = ["as new", "within worn limits", "beyond worn limits", "too tight", "off size", "too close to call", "not measured"];

    private static readonly string[] OfEachFigure = ["name", "value", "standardUncertainty", "unit", "limits", "probability", "verdict", "side", "reason", "rule", "governing"];

    [Fact]
    public void Engines_AsJson_AreNameAndPurpose()
    {
        using var bench = new Bench();
        var engine = Assert.Single(bench.Says("engines", "--json").Is(ExitStatus.Good).Json.EnumerateArray());
        Assert.Equal(["name", "purpose"], engine.EnumerateObject().Select(p => p.Name));
        Assert.Equal("Test pump", engine.GetProperty("name").GetString());
        Assert.Equal("stand-run", engine.GetProperty("purpose").GetString());
    }

    [Fact]
    public void Appraise_AsJson_HasTheShapeOfTheContract()
    {
        using var bench = new Bench();
        var spoken = bench.Says("appraise", Bench.Engine, "--json").Is(ExitStatus.FallsShort);
        var answer = spoken.Json;
        Assert.Equal("Test pump", answer.GetProperty("engine").GetString());
        Assert.Equal("stand-run", answer.GetProperty("purpose").GetString());
        foreach (var of in (string[])["dimensions", "fits"])
        {
            Assert.Equal(Verdicts.Order(), answer.GetProperty("counts").GetProperty(of).EnumerateObject().Select(p => p.Name).Order());
            foreach (var figure in answer.GetProperty(of).EnumerateArray())
            {
                Assert.Subset(figure.EnumerateObject().Select(p => p.Name).ToHashSet(), OfEachFigure.ToHashSet());
                Assert.Equal("m", figure.GetProperty("unit").GetString());
                Assert.Equal(["new", "worn"], figure.GetProperty("limits").EnumerateObject().Select(p => p.Name));
                Assert.Equal(["min", "max"], figure.GetProperty("limits").GetProperty("new").EnumerateObject().Select(p => p.Name));
                Assert.Equal(["min", "max"], figure.GetProperty("limits").GetProperty("worn").EnumerateObject().Select(p => p.Name));
                Assert.Equal(["new", "worn"], figure.GetProperty("probability").EnumerateObject().Select(p => p.Name));
            }
        }

        var depth = Named(answer, "dimensions", Bench.Depth);
        Assert.Equal(JsonValueKind.Null, depth.GetProperty("value").ValueKind);
        Assert.Equal("not measured", depth.GetProperty("verdict").GetString());
        Assert.Equal(1.2530 * 0.0254, depth.GetProperty("limits").GetProperty("new").GetProperty("min").GetDouble(), 1e-12);
        Assert.Equal("both limits must pass", depth.GetProperty("rule").GetString());
        var width = Named(answer, "dimensions", "pump/driver.width");
        Assert.Equal(1.2510 * 0.0254, width.GetProperty("value").GetDouble(), 1e-9);
        Assert.Equal("as new", width.GetProperty("verdict").GetString());
        var endFloat = Named(answer, "fits", Bench.EndFloat);
        Assert.Equal(JsonValueKind.Null, endFloat.GetProperty("value").ValueKind);
        Assert.Equal("total", endFloat.GetProperty("side").GetString());
        Assert.Equal(["20 °C", "hot"], endFloat.GetProperty("states").EnumerateArray().Select(s => s.GetProperty("name").GetString()!));
    }

    [Fact]
    public void Appraise_ReadingAdded_ChangesTheVerdict()
    {
        using var bench = new Bench();
        var id = bench.Says("reading", "add", Bench.Engine, Bench.Depth, "1.2535", "--place", "A1", "--gauge", "M-1", "--temp", "20 °C", "--by", "owner").Is(ExitStatus.Good).Out.Trim();
        Assert.True(Guid.TryParse(id, out _));
        var answer = bench.Says("appraise", Bench.Engine, "--json").Json;
        Assert.Equal("as new", Named(answer, "dimensions", Bench.Depth).GetProperty("verdict").GetString());
        Assert.Equal(2.5 * 2.54e-5, Named(answer, "fits", Bench.EndFloat).GetProperty("value").GetDouble(), 1e-9);
    }

    [Fact]
    public void Appraise_Part_CountsOnlyWhatLiesInIt()
    {
        using var bench = new Bench();
        var answer = bench.Says("appraise", Bench.Engine, "--part", "pump/driver", "--json").Is(ExitStatus.Good).Json;
        Assert.Equal("pump/driver.width", Assert.Single(answer.GetProperty("dimensions").EnumerateArray()).GetProperty("name").GetString());
        Assert.Empty(answer.GetProperty("fits").EnumerateArray());
        Assert.Equal(1, answer.GetProperty("counts").GetProperty("dimensions").GetProperty("as new").GetInt32());
    }

    [Fact]
    public void Appraise_State_GivesThatState()
    {
        using var bench = new Bench();
        var fit = Named(bench.Says("appraise", Bench.Engine, "--state", "hot", "--json").Json, "fits", Bench.EndFloat);
        Assert.Equal("hot", Assert.Single(fit.GetProperty("states").EnumerateArray()).GetProperty("name").GetString());
    }

    [Fact]
    public void Appraise_InWords_AsApproved()
    {
        using var bench = new Bench();
        bench.Says("reading", "add", Bench.Engine, Bench.Depth, "1.2545", "--gauge", "M-1", "--temp", "20 °C", "--by", "owner").Is(ExitStatus.Good);
        Approved.Check("appraise", Spoken.Here("", bench.Folder, ["appraise", Bench.Engine], width: 100).Is(ExitStatus.FallsShort).Out);
        Approved.Check("appraise-part", Spoken.Here("", bench.Folder, ["appraise", Bench.Engine, "--part", "pump", "--state", "hot"], width: 160).Out);
        Approved.Check("engines", bench.Says("engines").Out);
    }

    [Theory]
    [InlineData("engine", "appraise", "Test pmup")]
    [InlineData("--part", "appraise", "Test pump", "--part", "pump/bdy")]
    [InlineData("--state", "appraise", "Test pump", "--state", "hto")]
    [InlineData("figure", "reading", "add", "Test pump", "pump/body.dpeth", "1", "--by", "owner")]
    [InlineData("gauge", "reading", "add", "Test pump", "pump/body.depth", "1.2535", "--by", "owner", "--gauge", "M-2")]
    public void UnknownName_NamesTheNearest(string field, params string[] words)
    {
        using var bench = new Bench();
        var spoken = bench.Says(words).Is(ExitStatus.BadInput);
        Assert.Contains($"{field}: found ", spoken.Error, StringComparison.Ordinal);
        Assert.Contains("Did you mean ", spoken.Error, StringComparison.Ordinal);
        Assert.Empty(spoken.Out);
    }

    private static JsonElement Named(JsonElement answer, string of, string name) => answer.GetProperty(of).EnumerateArray().Single(f => f.GetProperty("name").GetString() == name);
}
