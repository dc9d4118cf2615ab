using System.Net;
using Thoubook.Record;

namespace Thoubook.Web.Tests;

public sealed class PageTests
{
    private const string Engine = "/engines/Wren%20twin";

    public static readonly string[] EveryPage =
    [
        "/engines", Engine, Engine + "?all=1", Engine + "/parts", Engine + "/parts?q=pump", Engine + "/parts/lower-half/pressure-pump", Engine + "/parts/lower-half/crankshaft",
        Engine + "/measure", Engine + "/measure?verdict=not+measured", Engine + "/measure/lower-half/crankshaft.journal-diameter", Engine + "/measure/lower-half/crankshaft.main-clearance",
        Engine + "/measure/lower-half/pressure-pump/driven.width", Engine + "/measure/lower-half/pressure-pump.driven-end-float", Engine + "/measure?kind=fits", Engine + "/measure?kind=dimensions&page=1", Engine + "/decide", Engine + "/decide/crankshaft", Engine + "/oil", Engine + "/oil/start", Engine + "/oil/pumps/pressure-pump", Engine + "/import",
        "/sums", "/sums/conformance", "/workshop", "/workshop/new-engine", "/workshop/verify",
    ];

    [Fact]
    public async Task EveryPage_Reads_HasOneHeadingAndNothingFromOutside()
    {
        await using var web = await OpenWeb.WithPump();
        foreach (var address in EveryPage)
        {
            var page = await web.Page(address);
            Assert.Equal(1, page.Split("<h1>").Length - 1);
            Assert.DoesNotContain(" style=", page, StringComparison.Ordinal);
            Assert.DoesNotContain("onclick", page, StringComparison.Ordinal);
            Assert.DoesNotContain("https://", page, StringComparison.Ordinal);
            Assert.DoesNotContain("<script>", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Measure_TooCloseToCall_SaysSoWithTheBandAndWhatWouldSettleIt()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Engine + "/measure/lower-half/crankshaft.journal-diameter");
        Assert.Contains("too close to call", page, StringComparison.Ordinal);
        Assert.Contains("2.7477", page, StringComparison.Ordinal);
        Assert.Contains("What would settle it", page, StringComparison.Ordinal);
        Assert.Contains("two figures the wrong way round", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Measure_Fit_SaysItsSideAndEveryTemperatureState()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Engine + "/measure/lower-half/crankshaft.main-clearance");
        Assert.Contains("beyond worn limits", page, StringComparison.Ordinal);
        Assert.Contains("diametral", page, StringComparison.Ordinal);
        Assert.Contains("hot", page, StringComparison.Ordinal);
        Assert.Contains("coldest start", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Bench_NothingWritten_OffersTheNextAction()
    {
        await using var web = await OpenWeb.Start(new EngineRecord(new Engine(new EngineName("Bare block"), Purpose.Display)));
        using var first = await web.Browser.GetAsync(new Uri("/", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Found, first.StatusCode);
        Assert.Contains("Take a schedule of limits", await web.Page("/engines/Bare%20block"), StringComparison.Ordinal);
        foreach (var sheet in new[] { "measure", "parts", "decide" })
            Assert.Contains("blank", await web.Page($"/engines/Bare%20block/{sheet}"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_NotThere_Answers404InWords()
    {
        await using var web = await OpenWeb.WithPump();
        foreach (var address in new[] { "/nowhere", "/engines/Nobody", Engine + "/measure/nothing.here", Engine + "/parts/nothing", Engine + "/decide/nothing", "/sums/nothing" })
        {
            using var response = await web.Browser.GetAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
            Assert.Contains("<h1>", await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Names_WithMarkup_AreShownAsWritten()
    {
        const string nasty = "<script>alert(1)</script>\"'&";
        var record = InventedPump.Record();
        await using var web = await OpenWeb.Start(record with
        {
            Engine = record.Engine with { Name = new EngineName(nasty), Note = nasty, SerialNumber = nasty, Mark = nasty },
            Gauges = [.. record.Gauges.Select(g => g with { What = nasty, Note = nasty })],
            Parts = [.. record.Parts.Select(p => p with { Material = nasty, Note = nasty, InItsStead = nasty })],
            Documents = [.. record.Documents.Select(d => d with { Title = nasty, Edition = nasty })],
            Findings = [.. record.Findings.Select(f => f with { What = nasty, By = nasty })],
            Readings = [.. record.Readings.Select(r => r with { Note = nasty, By = nasty })],
        });
        foreach (var address in PageTests.EveryPage.Select(a => a.Replace("Wren%20twin", Uri.EscapeDataString(nasty), StringComparison.Ordinal)))
        {
            var page = await web.Page(address);
            Assert.DoesNotContain("<script>alert", page, StringComparison.Ordinal);
            Assert.DoesNotContain("\"'&\"", page, StringComparison.Ordinal);
        }
    }
}
