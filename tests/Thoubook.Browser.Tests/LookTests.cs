using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Thoubook.Record;
using Thoubook.Web.Tests;

namespace Thoubook.Browser.Tests;

/// <summary>Every page as people see it: nothing that axe objects to, nothing that makes the page slide sideways, nothing that the policy stops.</summary>
public sealed class LookTests(Chromium chromium)
{
    private const string Engine = "/engines/Wren%20twin";

    private const string Planned = "/engines/Dunlin%20single";

    private const string Pump = "/engines/Wader%20pump";

    private static readonly string[] EveryPage =
    [
        "/engines", Engine, Engine + "/parts", Engine + "/parts?q=pump", Engine + "/parts/lower-half/crankshaft", Engine + "/measure", Engine + "/measure/lower-half/crankshaft.journal-diameter",
        Engine + "/measure/lower-half/crankshaft.main-clearance", Engine + "/measure/lower-half/pressure-pump/driven.width", Engine + "/measure/lower-half/pressure-pump.driven-end-float",
        Engine + "/decide", Engine + "/decide/main-bush", Engine + "/import", "/sums", "/sums/conformance", "/sums/stack", "/workshop", "/workshop/new-engine", "/workshop/verify", "/nowhere",
        Engine + "/oil", Engine + "/oil?oil=60", Engine + "/oil/flow-test", Engine + "/oil/circuit", Engine + "/oil/circuit/new?kind=gear+pump", Engine + "/oil/pumps/pressure-pump", Engine + "/oil/start", "/engines/Bare%20block/oil",
        "/engines/Bare%20block", "/engines/Bare%20block/parts", "/engines/Bare%20block/measure", "/engines/Bare%20block/decide", "/engines/Bare%20block/close-up",
        Planned, Planned + "/close-up", Planned + "/close-up/steps/gear-in", Planned + "/close-up/steps/cover-on?way=owe&item=joint+cover-studs",
        Planned + "/close-up/steps/turned", Planned + "/close-up/spaces/pump-chamber", Planned + "/close-up/spaces/crankcase?way=depart&item=part+pump%2Fgear", Planned + "/departures", Planned + "/close-up/sheets?day=yes&space=crankcase",
        "/engines/Godwit%20eight/close-up?all=1",
        Pump + "/strip", Pump + "/strip?at=cover-on", Pump + "/strip?part=pump/gear", Pump + "/strip?part=pump/geer", Pump + "/close-up/permission", Pump + "/purpose?for=licensed", Pump + "/states", "/engines/Bare%20block/strip", "/engines/Bare%20block/close-up/permission",
    ];

    [Theory]
    [InlineData(360, false)]
    [InlineData(360, true)]
    [InlineData(1400, false)]
    [InlineData(1400, true)]
    public async Task EveryPage_AxeFindsNothing(int width, bool dark)
    {
        await using var web = await Web();
        // So tall that the title block at the foot lies over nothing: what it covers on a low window scrolls clear of it.
        var page = await chromium.Page(web.Address, width, height: 7000, dark: dark);
        var said = Listen(page);
        var wrong = new List<string>();
        foreach (var address in EveryPage)
        {
            await page.GotoAsync(address);
            await OpenAll(page);
            var result = await page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] } });
            wrong.AddRange(result.Violations.Select(v => $"{address}: {v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}"));
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
        Assert.True(said.Count == 0, string.Join('\n', said));
    }

    [Theory]
    [InlineData(320)]
    [InlineData(360)]
    [InlineData(700)]
    [InlineData(1000)]
    [InlineData(1400)]
    public async Task EveryPage_DoesNotSlideSideways(int width)
    {
        await using var web = await Web();
        var page = await chromium.Page(web.Address, width);
        var wrong = new List<string>();
        foreach (var address in EveryPage)
        {
            await page.GotoAsync(address);
            await OpenAll(page);
            var widest = await page.EvaluateAsync<int>("document.documentElement.scrollWidth");
            if (widest > width)
                wrong.Add($"{address}: {widest} px: {await page.EvaluateAsync<string>("[...document.querySelectorAll('body *')].filter(e => e.getBoundingClientRect().right > innerWidth + 1 && getComputedStyle(e).position !== 'absolute').slice(0, 3).map(e => e.outerHTML.slice(0, 160)).join(' | ')")}");
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    private static Task<OpenWeb> Web() => OilWeb.Start(new EngineRecord(new Engine(new EngineName("Bare block"), Purpose.Display)), InventedPlan.Small(), InventedPlan.Large(60, 9), InventedStrip.Record());

    /// <summary>What is folded is looked at too.</summary>
    private static Task OpenAll(IPage page) => page.EvaluateAsync("document.querySelectorAll('main details').forEach(d => d.open = true)");

    private static List<string> Listen(IPage page)
    {
        var said = new List<string>();
        page.Console += (_, message) =>
        {
            if (message.Type == "error" && !message.Text.Contains("404", StringComparison.Ordinal))
                said.Add(message.Text);
        };
        page.PageError += (_, error) => said.Add(error);
        return said;
    }
}
