using System.Xml.Linq;
using Thoubook.Appraisal.Oil;
using Thoubook.Record.Quantities;
using Thoubook.Workshop.Plots;

namespace Thoubook.Workshop.Tests.Oil;

public sealed class PlotTests : IDisposable
{
    private static readonly byte[] PngSignature = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];
    private readonly string _folder = Directory.CreateTempSubdirectory("thoubook-plot-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Map_AsSvg_NamesItsAxesAndEveryTemperature()
    {
        var words = XDocument.Parse(AnyMap().Svg()).Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value).ToList();

        foreach (var expected in (string[])["An engine", "main gauge over speed", "engine speed, rev/min", "60 °C", "80 °C"])
            Assert.Contains(words, w => w.Contains(expected, StringComparison.Ordinal));
    }

    [Fact]
    public void Save_TakesTheFormOfTheName_AndOverwritesNothing()
    {
        var (svg, png) = (Path.Combine(_folder, "map.svg"), Path.Combine(_folder, "map.PNG"));

        Assert.Null(AnyMap().Save(svg));
        Assert.Null(AnyMap().Save(png));
        Assert.StartsWith("<", File.ReadAllText(svg), StringComparison.Ordinal);
        Assert.Equal(PngSignature, File.ReadAllBytes(png)[..8]);
        Assert.Equal("file-exists", AnyMap().Save(svg)?.Code);
        Assert.Equal("plot-form", AnyMap().Save(Path.Combine(_folder, "map.pdf"))?.Code);
        Assert.Equal("file-not-written", AnyMap().Save(Path.Combine(_folder, "nowhere", "map.svg"))?.Code);
    }

    private static DrawnPlot AnyMap() => OilPlots.Map(
        new OilMap([40, 80, 160], [333.15, 353.15], [[new(2e5, 1.8e5, 2.2e5), new(3e5, 2.8e5, 3.2e5), new(4e5, 3.9e5, 4.1e5)], [new(1e5, 0.8e5, 1.2e5), new(2e5, 1.8e5, 2.2e5), new(3.9e5, 3.8e5, 4e5)]]),
        "An engine",
        "main",
        TradeUnit.RevolutionPerMinute,
        TradeUnit.Celsius);
}
