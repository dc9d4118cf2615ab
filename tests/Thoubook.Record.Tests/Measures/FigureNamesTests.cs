using Thoubook.Record.Measures;
using Thoubook.Record.Parts;

namespace Thoubook.Record.Tests.Measures;

/// <summary>Names of figures told from quantities, and found from a part upwards.</summary>
public sealed class FigureNamesTests
{
    private static readonly EngineRecord Engine = new(new Engine(new EngineName("Curlew"), Purpose.StandRun))
    {
        Parts = [new Part(PartName.Of("pump/body"))],
        Dimensions = [new Dimension(FigureName.Of("pump/body.depth")), new Dimension(FigureName.Of("pump.depth")), new Dimension(FigureName.Of("crank/pin.depth"))],
        Fits = [new Fit(FigureName.Of("pump.end-float"))],
    };

    [Theory]
    [InlineData("clearance", true)]
    [InlineData("main-1.clearance", true)]
    [InlineData("/crank.throw", true)]
    [InlineData("1-bank/main.clearance", true)]
    [InlineData("2.5 thou", false)]
    [InlineData("2.5", false)]
    [InlineData("11", false)]
    [InlineData("0.5", false)]
    [InlineData("1/2 in", false)]
    [InlineData("1/2", false)]
    [InlineData("-0.5", false)]
    [InlineData("", false)]
    [InlineData("/", false)]
    [InlineData("Clearance", false)]
    [InlineData("a..b", false)]
    [InlineData("10 %", false)]
    public void LooksLikeOne_NamesAndNotQuantities(string text, bool isName) => Assert.Equal(isName, FigureNames.LooksLikeOne(text));

    [Theory]
    [InlineData("depth", "pump/body", "pump/body.depth")]
    [InlineData("depth", "pump/cover", "pump.depth")]
    [InlineData("end-float", "pump/body", "pump.end-float")]
    [InlineData("body.depth", "pump", "pump/body.depth")]
    [InlineData("crank/pin.depth", "pump", "crank/pin.depth")]
    [InlineData("/pump.depth", "pump/body", "pump.depth")]
    [InlineData("pump.depth", null, "pump.depth")]
    [InlineData("depth", null, null)]
    [InlineData("/depth", "pump", null)]
    public void Find_FromThePartUpwards_TheFirstIsMeant(string name, string? from, string? found) =>
        Assert.Equal(found, FigureNames.Find(name, from is null ? null : PartName.Of(from), Engine)?.Name.ToString());

    [Theory]
    [InlineData("pump/body.depth", "pump/body", "depth")]
    [InlineData("pump.depth", "pump/body", "pump.depth")]
    [InlineData("pump/body.depth", "pump", "body.depth")]
    [InlineData("crank/pin.depth", "pump/body", "crank/pin.depth")]
    [InlineData("pump.depth", null, "pump.depth")]
    public void From_IsTheShortestThatIsFoundAgain(string figure, string? from, string written)
    {
        var part = from is null ? (PartName?)null : PartName.Of(from);
        Assert.Equal(written, FigureNames.From(part, FigureName.Of(figure), Engine));
        Assert.Equal(figure, FigureNames.Find(written, part, Engine)?.Name.ToString());
    }

    [Theory]
    [InlineData("dept", "pump/body", "depth")]
    [InlineData("pump.end-flaot", null, "pump.end-float")]
    [InlineData("zzzzzz", null, null)]
    public void Nearest_AsItWouldBeWrittenThere(string name, string? from, string? nearest) =>
        Assert.Equal(nearest, FigureNames.Nearest(name, from is null ? null : PartName.Of(from), Engine));
}
