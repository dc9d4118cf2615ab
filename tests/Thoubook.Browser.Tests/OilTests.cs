using Microsoft.Playwright;
using Thoubook.Record;
using Thoubook.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace Thoubook.Browser.Tests;

/// <summary>The oil sheet under the hand.</summary>
public sealed class OilTests(Chromium chromium)
{
    private const string Oil = "/engines/Wren%20twin/oil";

    [Fact]
    public async Task Slide_MovedByAKey_AnswersInPlace()
    {
        await using var web = await OilWeb.Start();
        var page = await chromium.Page(web.Address, 1400);
        await page.GotoAsync(Oil);
        var before = await Answer(page).TextContentAsync();
        await page.GetByLabel("Oil at the engine").PressAsync("ArrowLeft");
        await Expect(page.Locator("#tried")).ToContainTextAsync("79 °C");
        await Expect(Answer(page)).Not.ToHaveTextAsync(before!);
        var figure = page.Locator(".slide input").First;
        for (var i = 0; i < 5; i++)
            await figure.PressAsync("ArrowRight");
        await Expect(page.Locator("#tried")).ToContainTextAsync("instead of");
        Assert.EndsWith("/oil", page.Url, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Slide_WithoutScript_AnswersByTheButton()
    {
        await using var web = await OilWeb.Start();
        var page = await chromium.Page(web.Address, 360, script: false);
        await page.GotoAsync(Oil);
        await page.GetByLabel("Oil at the engine").PressAsync("ArrowLeft");
        await page.GetByRole(AriaRole.Button, new() { Name = "Try it" }).ClickAsync();
        await Expect(page.Locator("#tried")).ToContainTextAsync("79 °C");
    }

    [Fact]
    public async Task StrikeOut_ChangesTheHotIdleBandOnThePage()
    {
        await using var web = await OilWeb.Start();
        var page = await chromium.Page(web.Address, 1400);
        await page.GotoAsync(Oil);
        var before = await Gauge(page).TextContentAsync();
        var reading = OpenWeb.Taken(web.Workshop.Engine(InventedPump.Name)).Readings.First(r => r.Value.Text == "2.7477");
        OpenWeb.Taken(web.Workshop.StrikeOut(new(InventedPump.Name, reading.Id, "dirt on the anvil", "bench")));
        await page.ReloadAsync();
        await Expect(Gauge(page)).Not.ToHaveTextAsync(before!);
    }

    /// <summary>By the browser's own measure of its lettering, in the face that this machine has.</summary>
    [Fact]
    public async Task Drawing_NoLabelOverAnother_AsTheBrowserDrawsIt()
    {
        await using var web = await OilWeb.Start(new EngineRecord(new Engine(new EngineName("Bare block"), Purpose.Display)));
        var circuit = OpenWeb.Taken(web.Workshop.StartCircuit("Bare block", OilWeb.EverythingThatCanBeAnswered, "owner"));
        Assert.True(circuit.Elements.Count >= 70, $"{circuit.Elements.Count} elements");
        var page = await chromium.Page(web.Address, 1400);
        await page.GotoAsync("/engines/Bare%20block/oil/circuit");
        var over = await page.EvaluateAsync<string[]>("""
            () => {
              const texts = [...document.querySelectorAll('.circuit text')].map(t => ({ said: t.textContent, box: t.getBoundingClientRect() }));
              const sheet = document.querySelector('.circuit').getBoundingClientRect();
              const wrong = texts.filter(t => t.box.left < sheet.left || t.box.right > sheet.right || t.box.top < sheet.top || t.box.bottom > sheet.bottom).map(t => t.said + ' is off the sheet');
              // A box of the browser has the whole height of the face; what is inked is less.
              const inked = b => ({ left: b.left + 1, right: b.right - 1, top: b.top + 3, bottom: b.bottom - 3 });
              for (let i = 0; i < texts.length; i++)
                for (let j = i + 1; j < texts.length; j++) {
                  const a = inked(texts[i].box), b = inked(texts[j].box);
                  if (a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom) wrong.push(texts[i].said + ' over ' + texts[j].said);
                }
              return wrong;
            }
            """);
        Assert.True(over.Length == 0, string.Join('\n', over));
    }

    private static ILocator Answer(IPage page) => page.Locator("#tried .answer");

    private static ILocator Gauge(IPage page) => page.Locator("#gauges tbody td .fig").First;
}
