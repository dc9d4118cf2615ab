using System.Net;
using Thoubook.Record;

namespace Thoubook.Web.Tests;

/// <summary>What a form writes, with script and without.</summary>
public sealed class WritingTests
{
    private const string Engine = "/engines/Wren%20twin";
    private const string Journal = Engine + "/measure/lower-half/crankshaft.journal-diameter";

    [Fact]
    public async Task Reading_SentTwice_IsStoredOnce()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Journal);
        for (var i = 0; i < 2; i++)
        {
            using var response = await web.Send(page, Engine + "/readings", [("value", "2.7482"), ("place", "C1"), ("gauge", "M-07")]);
            Assert.Equal(HttpStatusCode.SeeOther, response.StatusCode);
        }

        var written = Record(web).Readings.Where(r => r.Value.Text == "2.7482").ToList();
        Assert.Single(written);
        Assert.Equal("C1", written[0].Place.Text);
        Assert.Equal("M-07", written[0].Gauge?.Text);
    }

    [Fact]
    public async Task Reading_ByFragment_AnswersWithTheSheetAndTheNewVerdict()
    {
        await using var web = await OpenWeb.WithPump();
        var driven = Engine + "/measure/lower-half/pressure-pump/driven.width";
        var page = await web.Page(driven);
        Assert.Contains("not measured", page, StringComparison.Ordinal);
        using var response = await web.Send(page, Engine + "/readings", [("value", "1.2510"), ("gauge", "M-07")], fragment: true);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        var fragment = await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.StartsWith("<main", fragment.TrimStart(), StringComparison.Ordinal);
        Assert.Contains("as new", fragment, StringComparison.Ordinal);
        Assert.Contains("Written down", fragment, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Reading_Unclear_IsAskedAndTakenOnceConfirmed(bool fragment)
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Journal);
        using var asked = await web.Send(page, Engine + "/readings", [("value", "27.477"), ("place", "A1")], fragment);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, asked.StatusCode);
        var question = await asked.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("Asked, not refused", question, StringComparison.Ordinal);
        Assert.Contains("value=\"27.477\"", question, StringComparison.Ordinal);
        var code = question.Split("name=\"confirm\" value=\"")[1].Split('"')[0];
        using var taken = await web.Send(question, Engine + "/readings", [("value", "27.477"), ("place", "A1"), ("confirm", code)], fragment);
        Assert.True(taken.StatusCode is HttpStatusCode.SeeOther or HttpStatusCode.OK, $"{taken.StatusCode}");
        Assert.Equal(15, Record(web).Readings.Count);
    }

    [Fact]
    public async Task Reading_Refused_KeepsWhatWasTypedAndSaysWhatWouldBeRight()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Journal);
        using var response = await web.Send(page, Engine + "/readings", [("value", "2.74.77"), ("note", "second try"), ("place", "A1")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        var shown = await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("Not taken", shown, StringComparison.Ordinal);
        Assert.Contains("value=\"2.74.77\"", shown, StringComparison.Ordinal);
        Assert.Contains("value=\"second try\"", shown, StringComparison.Ordinal);
        Assert.Equal(14, Record(web).Readings.Count);
    }

    [Fact]
    public async Task Reading_ReadBackFirst_WritesNothing()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Journal);
        using var response = await web.Send(page, Engine + "/readings", [("value", "2.7481"), ("step", "read"), ("place", "A1")]);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        Assert.Contains("Understood: <b>2.7481 in (2748.1 thou, 69.8017 mm)</b>", await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(14, Record(web).Readings.Count);
    }

    [Fact]
    public async Task Reading_HeldFigures_StandInTheNextEntry()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Journal);
        using var response = await web.Send(page, Engine + "/readings", [("value", "2.7481"), ("held", "2.74"), ("place", "A1")]);
        var next = await web.Page(response.Headers.Location!.ToString().Split('#')[0]);
        Assert.Contains("name=\"value\" autocomplete=\"off\" autocapitalize=\"off\" spellcheck=\"false\" enterkeyhint=\"send\" value=\"2.74\"", next, StringComparison.Ordinal);
    }

    [Fact]
    public async Task StrikeOut_WithoutReason_IsRefused_WithReason_ChangesTheVerdict()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Journal);
        var reading = Record(web).Readings.Single(r => r.Value.Text == "2.7477");
        using var without = await web.Send(page, Engine + "/strike-outs", [("of", reading.Id.ToString()), ("why", "")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, without.StatusCode);
        using var with = await web.Send(page, Engine + "/strike-outs", [("of", reading.Id.ToString()), ("why", "dirt on the anvil")]);
        Assert.Equal(HttpStatusCode.SeeOther, with.StatusCode);
        var after = await web.Page(Journal);
        Assert.Contains("dirt on the anvil", after, StringComparison.Ordinal);
        Assert.DoesNotContain("verdict close big", after, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_IsAskedOncePerBrowser_AndNobodyIsMadeToSay()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Journal);
        using (await web.Send(page, Engine + "/readings", [("value", "2.7481"), ("place", "A1")]))
            Assert.Equal("not said", Record(web).Readings[^1].By);
        page = await web.Page(Journal);
        using (await web.Send(page, Engine + "/readings", [("value", "2.7481"), ("place", "A2"), ("by", "machinist")]))
            Assert.Equal("machinist", Record(web).Readings[^1].By);
        page = await web.Page(Journal);
        Assert.Contains("Written by machinist", page, StringComparison.Ordinal);
        using (await web.Send(page, Engine + "/readings", [("value", "2.7481"), ("place", "B1"), ("by", "")]))
            Assert.Equal("machinist", Record(web).Readings[^1].By);
    }

    [Fact]
    public async Task Piece_DecidedOnJudgement_ClearsTheWayAndStaysToBeSeen()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Engine + "/decide/main-bush");
        using var without = await web.Send(page, Engine + "/decisions", [("choice", "keep"), ("basis", "accepted on judgement"), ("why", "")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, without.StatusCode);
        using var with = await web.Send(page, Engine + "/decisions", [("choice", "keep"), ("basis", "accepted on judgement"), ("why", "it runs an hour on the stand")]);
        Assert.Equal(HttpStatusCode.SeeOther, with.StatusCode);
        var bench = await web.Page(Engine);
        Assert.Contains("Accepted on judgement", bench, StringComparison.Ordinal);
        Assert.Contains("it runs an hour on the stand", bench, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Piece_ChosenPlacedLifted_ShowsInTheTree()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Engine + "/parts/lower-half/crankshaft");
        using (var placed = await web.Send(page, Engine + "/pieces", [("piece", "crankshaft"), ("step", "place")]))
            Assert.Equal(HttpStatusCode.SeeOther, placed.StatusCode);
        Assert.Contains("crankshaft placed", await web.Page(Engine + "/parts"), StringComparison.Ordinal);
        page = await web.Page(Engine + "/parts/lower-half/crankshaft");
        using (var lifted = await web.Send(page, Engine + "/liftings", [("why", "to be ground")]))
            Assert.Equal(HttpStatusCode.SeeOther, lifted.StatusCode);
        Assert.DoesNotContain("crankshaft placed", await web.Page(Engine + "/parts"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Engine_MadeInTheBrowser_HasItsBench()
    {
        await using var web = await OpenWeb.Start();
        Assert.Contains("No engine yet", await web.Page("/"), StringComparison.Ordinal);
        var page = await web.Page("/workshop/new-engine");
        using var refused = await web.Send(page, "/workshop/new-engine", [("name", " "), ("purpose", "stand-run")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        using var made = await web.Send(page, "/workshop/new-engine", [("name", "Dipper four"), ("purpose", "display")]);
        Assert.Equal("/engines/Dipper%20four", made.Headers.Location!.ToString());
        Assert.Contains("display", await web.Page("/engines/Dipper%20four"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Engine_BegunWithAGearPump_TakesLimitsTypedByHand_AndAReadingGetsItsVerdict()
    {
        await using var web = await OpenWeb.Start();
        const string starter = "/engines/Dipper%20four/starters/gear-pump";
        using (var made = await web.Send(await web.Page("/workshop/new-engine"), "/workshop/new-engine", [("name", "Dipper four"), ("purpose", "stand-run"), ("starter", "gear-pump")]))
            Assert.Equal(starter, made.Headers.Location!.ToString());
        using (await web.Send(await web.Page(starter), starter, [("step", "add")]))
            Assert.NotEmpty(OpenWeb.Taken(web.Workshop.Engine("Dipper four")).Fits);
        const string depth = "/engines/Dipper%20four/measure/pressure-pump/body.depth";
        var page = await web.Page(depth);
        using var asked = await web.Send(page, "/engines/Dipper%20four/limits", [("newLeast", "1.2530"), ("newGreatest", "1.2540 in")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, asked.StatusCode);
        using var taken = await web.Send(page, "/engines/Dipper%20four/limits", [("newLeast", "1.2530 in"), ("newGreatest", "1.2540 in"), ("wornGreatest", "1.2560 in")]);
        Assert.Equal(HttpStatusCode.SeeOther, taken.StatusCode);
        using var written = await web.Send(await web.Page(depth), "/engines/Dipper%20four/readings", [("value", "1.2600")]);
        Assert.Equal(HttpStatusCode.SeeOther, written.StatusCode);
        Assert.Contains("beyond worn limits", await web.Page(depth), StringComparison.Ordinal);
    }

    private static EngineRecord Record(OpenWeb web) => OpenWeb.Taken(web.Workshop.Engine(new EngineName(InventedPump.Name)));
}
