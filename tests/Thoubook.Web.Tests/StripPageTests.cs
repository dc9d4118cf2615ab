using System.Net;
using System.Text.RegularExpressions;
using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Web.Tests;

/// <summary>The sheets for taking apart, for the permission to run, for what an engine is for, and for its states.</summary>
public sealed partial class StripPageTests
{
    private const string Engine = "/engines/Wader%20pump";
    private const string Strip = Engine + "/strip";
    private const string Permission = Engine + "/close-up/permission";
    private const string Purpose = Engine + "/purpose";

    private static Task<OpenWeb> Start() => OpenWeb.Start(InventedStrip.Record());

    private static EngineRecord Record(OpenWeb web) => web.Workshop.Engine(InventedStrip.Name).IsOk(out var record, out _) ? record : throw new InvalidOperationException();

    [GeneratedRegex("name=\"what-(?<i>\\d+)\" value=\"(?<what>[^\"]*)\"", RegexOptions.None, 5000)]
    private static partial Regex Asked();

    private static Dictionary<string, int> AskedOn(string page) => Asked().Matches(page).ToDictionary(m => WebUtility.HtmlDecode(m.Groups["what"].Value), m => int.Parse(m.Groups["i"].Value, System.Globalization.CultureInfo.InvariantCulture));

    private static IEnumerable<(string, string)> Filled(string page, params (string What, string Typed)[] answers) => answers.Select(a => ($"ask-{AskedOn(page)[a.What]}", a.Typed));

    [Fact]
    public async Task Strip_AsksWhatTheRemovalDestroys_TakesWhatIsFilledIn_AndPassesOverTheRest()
    {
        await using var web = await Start();
        var page = await web.Page(Strip + "?at=cover-on");
        Assert.Equal(["pump.end-float", "which shims, in which order, where", "route of the lock-wire", "release feel", "tag"], AskedOn(page).Keys);
        Assert.Contains("a bare number is in in.", page.Replace("thou.", "in.", StringComparison.Ordinal), StringComparison.Ordinal);

        using (var sent = await web.Send(page, Strip, [.. Filled(page, ("pump.end-float", "5.5"), ("tag", "44")), ("by", "bench")]))
            Assert.Equal($"{Strip}?at=cover-on#at", sent.Headers.Location?.ToString());
        page = await web.Page(Strip + "?at=cover-on");
        Assert.Equal(["which shims, in which order, where", "route of the lock-wire", "release feel"], AskedOn(page).Keys);
        Assert.Contains("5.5", page, StringComparison.Ordinal);

        using (var sent = await web.Send(page, Strip, [.. Filled(page, ("route of the lock-wire", "clockwise")), ("rest", "skip")]))
            Assert.Equal(HttpStatusCode.SeeOther, sent.StatusCode);
        page = await web.Page(Strip + "?at=cover-on");
        Assert.Empty(AskedOn(page));
        Assert.Contains("All of it is taken down or passed over", page, StringComparison.Ordinal);
        Assert.Equal(
            [("pump.end-float", "bench", false), ("tag", "bench", false), ("which shims, in which order, where", "bench", true), ("route of the lock-wire", "bench", false), ("release feel", "bench", true)],
            Record(web).AsFound.Select(f => (f.What, f.By, f.Skipped)));
        Assert.Equal("pump/cover", Record(web).Index.Piece(new PieceTag("44"))?.For.ToString());
    }

    [Fact]
    public async Task Strip_WhatIsWrong_IsShownAtItsField_AndTheRestIsWritten_Once()
    {
        await using var web = await Start();
        var page = await web.Page(Strip + "?at=cover-on");
        using var sent = await web.Send(page, Strip, Filled(page, ("pump.end-float", "a lot"), ("release feel", "all alike")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, sent.StatusCode);
        var again = await sent.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("value=\"a lot\"", again, StringComparison.Ordinal);
        Assert.Contains("Not taken.", again, StringComparison.Ordinal);
        Assert.DoesNotContain("release feel", AskedOn(again).Keys);
        using (var twice = await web.Send(page, Strip, Filled(page, ("release feel", "all alike"))))
            Assert.Equal(HttpStatusCode.SeeOther, twice.StatusCode);
        Assert.Single(Record(web).AsFound);
    }

    [Fact]
    public async Task Strip_ADoubtfulFigure_IsAskedAtItsField()
    {
        await using var web = await Start();
        var page = await web.Page(Strip + "?at=cover-on");
        using var sent = await web.Send(page, Strip, Filled(page, ("pump.end-float", "55")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, sent.StatusCode);
        var asked = await sent.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        var code = ConfirmCode().Match(asked);
        Assert.True(code.Success, asked);
        using var confirmed = await web.Send(asked, Strip, [.. Filled(asked, ("pump.end-float", "55")), (code.Groups["name"].Value, code.Groups["code"].Value)]);
        Assert.Equal(HttpStatusCode.SeeOther, confirmed.StatusCode);
        Assert.Equal("55", Assert.Single(Record(web).AsFound).Value?.Text);
    }

    [GeneratedRegex("name=\"(?<name>confirm-\\d+)\" value=\"(?<code>[^\"]*)\"", RegexOptions.None, 5000)]
    private static partial Regex ConfirmCode();

    [Fact]
    public async Task Strip_ToOnePart_SaysHowLongAndWhatMustBeNew_AndWithoutThePartSaysTheNearest()
    {
        await using var web = await Start();
        var page = await web.Page(Strip + "?part=pump/gear");
        Assert.Contains("55 min", page, StringComparison.Ordinal);
        Assert.Contains("film of jointing", page, StringComparison.Ordinal);
        Assert.True(page.IndexOf(">Pump cover on<", StringComparison.Ordinal) < page.IndexOf(">Gear into the body<", StringComparison.Ordinal));
        using var wrong = await web.Browser.GetAsync(new Uri(Strip + "?part=pump/geer", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, wrong.StatusCode);
        Assert.Contains("Did you mean pump/gear?", WebUtility.HtmlDecode(await wrong.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Strip_OnceSomethingIsSigned_IsOfWhatIsSigned_UnlessItIsTakenAsItCame()
    {
        await using var web = await OpenWeb.Start(InventedStrip.Record() with { Signatures = [new Signature(FactId.New(), NodaTime.Instant.FromUtc(2026, 11, 2, 9, 0).WithOffset(NodaTime.Offset.Zero), "bench", new StepName("gear-in"))] });
        var page = await web.Page(Strip);
        Assert.DoesNotContain("Pump cover on", page, StringComparison.Ordinal);
        Assert.Contains($"{Strip}?whole=1#order", page, StringComparison.Ordinal);
        page = WebUtility.HtmlDecode(await web.Page(Strip + "?whole=1&part=pump/gear"));
        Assert.Contains("55 min", page, StringComparison.Ordinal);
        Assert.Contains($"{Strip}?at=cover-on&whole=1#at", page, StringComparison.Ordinal);
        using var sent = await web.Send(await web.Page(Strip + "?at=cover-on&whole=1"), Strip, [("rest", "skip")]);
        Assert.Equal($"{Strip}?at=cover-on&whole=1#at", sent.Headers.Location?.ToString());
    }

    [Fact]
    public async Task Strip_FoundByHand_StandsAgainstWhatIsLeft()
    {
        await using var web = await Start();
        var page = await web.Page(Strip);
        using (var sent = await web.Send(page, Strip + "/as-found", [("of", "pump/gear"), ("what", "pump/gear.width"), ("value", "1.2502 in")]))
            Assert.Equal(HttpStatusCode.SeeOther, sent.StatusCode);
        Assert.True(web.Workshop.AddReading(new Workshop.ReadingEntry(InventedStrip.Name, "pump/gear.width", "1.2510 in", "bench")).IsOk(out _, out _));
        Assert.Contains("+0.0008 in", WebUtility.HtmlDecode(await web.Page(Strip)), StringComparison.Ordinal);
        using var refused = await web.Send(page, Strip + "/as-found", [("of", "pump/geer"), ("what", "which way"), ("words", "left")]);
        var again = await refused.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("value=\"which way\"", again, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Permission_IsGrantedLineByLine_AndTakenBack()
    {
        await using var web = await Start();
        var page = await web.Page(Permission);
        Assert.Contains("Permission to run loosens no limit", page, StringComparison.Ordinal);
        Assert.Contains("cover-on is not signed", page, StringComparison.OrdinalIgnoreCase);
        var button = Buttons().Matches(page).Select(m => m.Groups["value"].Value).Single(v => v.EndsWith("line extinguisher", StringComparison.Ordinal));
        for (var i = 0; i < 2; i++)
        {
            using var sent = await web.Send(page, Permission, [("grant", button), ("by", "owner"), ("note", "seen")]);
            Assert.Equal(Permission, sent.Headers.Location?.ToString());
        }

        Assert.Equal(new LineKey(LineKind.Line, "extinguisher"), Assert.Single(Record(web).Permissions).Line);
        page = await web.Page(Permission);
        Assert.Contains("1 of 5 lines stand", page, StringComparison.Ordinal);
        using (var refused = await web.Send(page, Permission, [("grant", $"{FactId.New()} space chamber")]))
            Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);

        using (var back = await web.Send(page, Permission, [("withdraw", "1"), ("line", "line extinguisher"), ("why", "empty")]))
            Assert.Equal(HttpStatusCode.SeeOther, back.StatusCode);
        Assert.Contains("undone: empty", await web.Page(Permission), StringComparison.Ordinal);
    }

    [GeneratedRegex("name=\"grant\" value=\"(?<value>[^\"]*)\"", RegexOptions.None, 5000)]
    private static partial Regex Buttons();

    [Fact]
    public async Task Purpose_ShowsFirstWhatWouldNotStand_ThenChanges_AndAClashIsTold()
    {
        await using var web = await Start();
        var page = await web.Page(Purpose + "?for=working");
        Assert.Contains("1 departure would no longer stand", page, StringComparison.Ordinal);
        Assert.Contains("cut the wire, fit tabs", page, StringComparison.Ordinal);
        using (var sent = await web.Send(page, Purpose, [("by", "owner")]))
            Assert.Equal(HttpStatusCode.SeeOther, sent.StatusCode);
        Assert.Equal(Thoubook.Record.Purpose.Working, Record(web).Engine.Purpose);
        using (var clash = await web.Send(page, Purpose, [("for", "display")]))
            Assert.Equal(HttpStatusCode.UnprocessableEntity, clash.StatusCode);

        var licensed = await web.Page(Purpose + "?for=licensed");
        Assert.Contains("released by the licensed body", licensed, StringComparison.Ordinal);
        using (var sent = await web.Send(licensed, Purpose, []))
            Assert.Equal(HttpStatusCode.SeeOther, sent.StatusCode);
        var permission = await web.Page(Permission);
        Assert.Contains("Not granted here", permission, StringComparison.Ordinal);
        Assert.DoesNotContain("name=\"grant\"", permission, StringComparison.Ordinal);
    }

    [Fact]
    public async Task States_ListsWhatIsNotSimplyFitted()
    {
        await using var web = await Start();
        var page = await web.Page(Engine + "/states");
        foreach (var said in new[] { "In the states: mod 2.", "in its stead heater-plate", "heater-plate is not in place", "Cover and shims", "of mod 1", "boss: on the left", "Kept: drawer 3." })
            Assert.Contains(said, page, StringComparison.Ordinal);
    }
}
