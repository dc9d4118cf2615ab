using Microsoft.Playwright;
using Thoubook.Record.Closing;
using Thoubook.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace Thoubook.Browser.Tests;

/// <summary>Closing up with a thumb, and the engine as nested casings as the browser draws it.</summary>
public sealed class CloseUpTests(Chromium chromium)
{
    private const string CloseUp = "/engines/Dunlin%20single/close-up";

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task SignAStep_RefusedOverAMissingItem_OweIt_Close(bool script)
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        var page = await chromium.Page(web.Address, 360, script: script, touch: true);
        await page.GotoAsync(CloseUp);
        await page.Locator("#now").GetByRole(AriaRole.Link, new() { Name = "Pump body on its face" }).ClickAsync();
        await page.Locator("#sign").GetByLabel("Who writes").FillAsync("bench");
        await Press(page, "Sign it");
        await Expect(page.Locator("#sign")).ToContainTextAsync("Signed: bench.");

        await page.GotoAsync(CloseUp);
        await page.Locator("#now").GetByRole(AriaRole.Link, new() { Name = "Driving gear into the body" }).ClickAsync();
        await page.GetByLabel("Photograph taken").CheckAsync();
        await Expect(page.GetByLabel("P-31 in gear")).ToBeCheckedAsync();
        await Press(page, "Sign it");

        // The cover: nuts pulled up and its own points accepted, and something inside is not so.
        await page.GotoAsync(CloseUp + "/steps/cover-on");
        await page.GetByLabel("What was put on it").FillAsync("30 lbf in");
        await Press(page, "Pulled up");
        await page.Locator(".hold").Filter(new() { HasText = "Chamber wiped" }).GetByRole(AriaRole.Button, new() { Name = "Accept it" }).ClickAsync();
        var fit = page.Locator(".hold").Filter(new() { HasText = "end float" });
        await fit.GetByLabel("Why it will do").FillAsync("as it came apart");
        await fit.GetByRole(AriaRole.Button, new() { Name = "Accept it on judgement" }).ClickAsync();
        await Press(page, "Sign and close");
        await Expect(page.Locator("#sign [role=alert]")).ToContainTextAsync("each stands above with the three ways");
        await Expect(page.Locator("#wants")).ToContainTextAsync("Turns free");

        // Each of them is owed, one tap for the deadline.
        for (var owed = 0; await page.Locator("#wants").CountAsync() > 0; owed++)
        {
            Assert.True(owed < 9, await page.Locator("#wants").TextContentAsync());
            await page.Locator("#wants").GetByRole(AriaRole.Link, new() { Name = "Owe it" }).First.ClickAsync();
            await Press(page, "Before it is turned");
        }

        await Press(page, "Sign and close");
        await Expect(page.Locator("#sign")).ToContainTextAsync("Signed: bench.");
        await page.GotoAsync(CloseUp);
        await Expect(page.Locator("#space-pump-chamber .casing").First).ToHaveClassAsync("casing on");
        await Expect(page.Locator("#first")).ToContainTextAsync("before it is turned");
        Assert.All(OpenWeb.Taken(web.Workshop.Engine(InventedPlan.Name)).Debts.Skip(1), d => Assert.Equal(Deadline.BeforeItIsTurned, d.Deadline));
    }

    /// <summary>By the browser's own measure of its lettering, folded and unfolded, on narrow paper and on wide.</summary>
    [Theory]
    [InlineData(360, "")]
    [InlineData(360, "?all=1")]
    [InlineData(1000, "")]
    [InlineData(1400, "")]
    [InlineData(1400, "?all=1")]
    public async Task Casings_NoLabelOverAnother_NoneOutsideItsWalls(int width, string asked)
    {
        await using var web = await OpenWeb.Start(InventedPlan.Large(250, 30));
        var page = await chromium.Page(web.Address, width);
        await page.GotoAsync("/engines/Godwit%20eight/close-up" + asked);
        Assert.Equal(30, await page.Locator("#order .place").CountAsync());
        var wrong = await page.EvaluateAsync<string[]>("""
            () => {
              const wrong = [], boxes = [];
              const shown = e => e.checkVisibility({ contentVisibilityAuto: true, visibilityProperty: true });
              for (const e of document.querySelectorAll('#order a, #order .note, #order summary')) {
                if (!shown(e)) continue;
                const casing = e.closest('.place');
                const walls = casing ? casing.getBoundingClientRect() : document.querySelector('#order').getBoundingClientRect();
                // What is inked of a line of lettering is less high than its box.
                for (const r of e.getClientRects()) {
                  if (r.width < 1) continue;
                  if (r.left < walls.left - 1 || r.right > walls.right + 1 || r.bottom > walls.bottom + 8) wrong.push(`"${e.textContent}" outside ${casing?.id}`);
                  if (e.tagName !== 'SUMMARY') boxes.push({ of: e, said: e.textContent, l: r.left + 1, r: r.right - 1, t: r.top + r.height * .22, b: r.bottom - r.height * .22 });
                }
              }
              for (const s of document.querySelectorAll('#order .slab')) {
                if (!shown(s) || s.getBoundingClientRect().width < 2) continue;
                const r = s.getBoundingClientRect();
                const inked = s.classList.contains('upright') ? [...s.querySelectorAll('rect')].map(x => x.getBoundingClientRect()) : [r];
                for (const i of inked) boxes.push({ of: s, said: 'the cover of ' + s.closest('.place').id, l: i.left + 1, r: i.right - 1, t: i.top + 1, b: i.bottom - 1, slab: true });
              }
              for (let i = 0; i < boxes.length; i++)
                for (let j = i + 1; j < boxes.length; j++) {
                  const a = boxes[i], b = boxes[j];
                  if (a.of !== b.of && !(a.slab && b.slab) && a.l < b.r && b.l < a.r && a.t < b.b && b.t < a.b) wrong.push(`"${a.said}" over "${b.said}"`);
                }
              return boxes.length < 60 ? ['only ' + boxes.length + ' labels were looked at'] : wrong.slice(0, 20);
            }
            """);
        Assert.True(wrong.Length == 0, string.Join('\n', wrong));
    }

    private static Task Press(IPage page, string button) => page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).ClickAsync();
}
