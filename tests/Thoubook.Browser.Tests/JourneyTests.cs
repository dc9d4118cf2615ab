using Microsoft.Playwright;
using Thoubook.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace Thoubook.Browser.Tests;

/// <summary>A first engine, made wholly in the browser on a telephone.</summary>
public sealed class JourneyTests(Chromium chromium)
{
    private const string Schedule = """
        Description,New min in,New max in,Worn in
        Pressure pump,,,
        Body depth,1.2530,1.2540,1.2560
        Driver width,1.2505,1.2515,1.2490
        """;

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task MakeAnEngine_TakeASchedule_EnterReadings_SeeTheVerdictChange_Decide(bool script)
    {
        await using var web = await OpenWeb.Start();
        var page = await chromium.Page(web.Address, 360, script: script, touch: true);

        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Link, new() { Name = "Make an engine" }).ClickAsync();
        await page.GetByLabel("Name").FillAsync("Dipper four");
        await page.GetByLabel("Who writes").FillAsync("machinist");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make it" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Dipper four");

        await page.GetByRole(AriaRole.Link, new() { Name = "Take a schedule of limits" }).First.ClickAsync();
        await page.GetByLabel("Paste it here").FillAsync(Schedule);
        await page.GetByLabel("The book it stands in").FillAsync("Overhaul book");
        await page.GetByRole(AriaRole.Button, new() { Name = "See what is understood" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Cell, new() { Name = "1.253 in to 1.254 in" })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Take in 2 dimensions" }).ClickAsync();
        await Expect(page.Locator(".verdict").First).ToHaveTextAsync("not measured");

        await page.GetByRole(AriaRole.Link, new() { Name = "Pressure pump, body depth" }).ClickAsync();
        await Expect(Verdict(page)).ToHaveTextAsync("not measured");
        await Enter(page, "1.2535", script);
        await Expect(Verdict(page)).Not.ToHaveTextAsync("not measured");
        await Enter(page, "1.2536", script);
        await Expect(page.GetByText("Written down")).ToBeVisibleAsync();
        var sheet = page.Url;

        // A slip of ten is asked, not taken.
        await page.Locator("#value").FillAsync("12.535");
        await Write(page).ClickAsync();
        await Expect(page.GetByText("Asked, not refused").First).ToBeVisibleAsync();
        await page.GotoAsync(sheet);

        // Beyond its limits: the verdict changes at once.
        await Enter(page, "1.2601", script);
        await Expect(Verdict(page)).Not.ToHaveTextAsync("as new");

        await page.GetByText("Sheet", new() { Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Navigation, new() { Name = "Sheets, short" }).GetByRole(AriaRole.Link, new() { Name = "Decide" }).ClickAsync();
        await page.GetByRole(AriaRole.Row).GetByRole(AriaRole.Link).First.ClickAsync();
        await page.GetByLabel("replace").CheckAsync();
        await page.GetByLabel("Why", new() { Exact = true }).First.FillAsync("a new body is in hand");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).First.ClickAsync();
        await Expect(page.GetByText("a new body is in hand")).ToBeVisibleAsync();

        var record = OpenWeb.Taken(web.Workshop.Engine("Dipper four"));
        Assert.Equal(3, record.Readings.Count);
        Assert.All(record.Readings, r => Assert.Equal("machinist", r.By));
        Assert.Single(record.Decisions);
    }

    [Fact]
    public async Task Keypad_WritesAndReadsBack_UnitAndHeldFiguresAtHand()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await chromium.Page(web.Address, 360, touch: true);
        await page.GotoAsync("/engines/Wren%20twin/measure/lower-half/crankshaft.journal-diameter");
        var pad = page.GetByRole(AriaRole.Group, new() { Name = "Keypad" });
        await Press(pad, "2", ".", "7", "4");
        await pad.GetByRole(AriaRole.Button, new() { Name = "hold" }).ClickAsync();
        await Press(pad, "8", "1");
        await Expect(page.Locator("#value")).ToHaveValueAsync("2.7481");
        await Expect(page.GetByText("Understood: 2.7481 in")).ToBeVisibleAsync();
        await pad.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Expect(page.GetByText("Written down")).ToBeVisibleAsync();
        await Expect(page.Locator("#value")).ToHaveValueAsync("2.74");
        await Press(page.GetByRole(AriaRole.Group, new() { Name = "Keypad" }), "8", "mm");
        await Expect(page.Locator("#value")).ToHaveValueAsync("2.748 mm");
    }

    [Fact]
    public async Task Draws_OnRequest_AreShownInPlace()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await chromium.Page(web.Address, 1400);
        await page.GotoAsync("/engines/Wren%20twin/measure/lower-half/crankshaft.main-clearance");
        await page.GetByRole(AriaRole.Button, new() { Name = "Draw it at random" }).ClickAsync();
        await Expect(page.GetByText("Drawn at random")).ToBeVisibleAsync();
    }

    private static async Task Enter(IPage page, string text, bool script)
    {
        await page.Locator("#value").FillAsync(text);
        if (script)
            await Expect(page.GetByText($"Understood: {text} in")).ToBeVisibleAsync();
        var before = await page.Locator("table .fig.hand").CountAsync();
        await Write(page).ClickAsync();
        await Expect(page.Locator("table .fig.hand")).Not.ToHaveCountAsync(before);
    }

    private static ILocator Write(IPage page) => page.Locator("#entry").GetByRole(AriaRole.Button, new() { Name = "Write it down" });

    private static ILocator Verdict(IPage page) => page.Locator(".answer .verdict");

    private static async Task Press(ILocator pad, params string[] keys)
    {
        foreach (var key in keys)
            await pad.GetByRole(AriaRole.Button, new() { Name = key, Exact = true }).ClickAsync();
    }
}
