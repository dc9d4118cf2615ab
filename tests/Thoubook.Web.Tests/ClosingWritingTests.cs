using System.Net;
using Thoubook.Record;
using Thoubook.Record.Closing;
using static Thoubook.Web.Tests.CloseUpPageTests;

namespace Thoubook.Web.Tests;

/// <summary>What is written while an engine is closed up: each form, taken and not taken.</summary>
public sealed class ClosingWritingTests
{
    private const string Engine = "/engines/Dunlin%20single";
    private const string Steps = Engine + "/close-up/steps";
    private const string Spaces = Engine + "/close-up/spaces";
    private const string Departures = Engine + "/departures";

    [Fact]
    public async Task Sign_PlacesTheChosenPiece_AndAsksForTheSecondLookOfAnother()
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        await Sent(web, Steps + "/body-in", "/signatures", [("by", "bench")]);
        var page = await web.Page(Steps + "/gear-in");
        Assert.Contains("P-31 in gear", Section(page, "sign"), StringComparison.Ordinal);
        await Sent(web, Steps + "/gear-in", "/signatures", [("placing", "yes"), ("photographed", "yes"), ("note", "marks A to A"), ("by", "bench")]);
        Assert.Equal("P-31", Record(web).Index.PlacedIn(PartName.Of("pump/gear"))?.Piece.Text);
        page = await web.Page(Steps + "/gear-in");
        Assert.Contains("half done", Section(page, "sign") + page, StringComparison.Ordinal);
        Assert.Contains("Sign the second look", Section(page, "sign"), StringComparison.Ordinal);
        Assert.Contains("marks A to A", Section(page, "sign"), StringComparison.Ordinal);

        var refused = await NotTaken(web, Steps + "/gear-in", "/signatures", [("by", "bench"), ("note", "again")]);
        Assert.Contains("Let somebody else look", refused, StringComparison.Ordinal);
        Assert.Contains("value=\"again\"", refused, StringComparison.Ordinal);
        await Sent(web, Steps + "/gear-in", "/signatures", [("by", "owner")]);
        Assert.DoesNotContain("<button class=\"do\">", Section(await web.Page(Steps + "/gear-in"), "sign"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Photograph_LeftOut_IsSignedForAfterwards()
    {
        var plan = InventedPlan.Small();
        await using var web = await OpenWeb.Start(plan with { Steps = [.. plan.Steps.Select(s => s with { SecondLook = false })] });
        await Sent(web, Steps + "/body-in", "/signatures", [("by", "bench")]);
        await Sent(web, Steps + "/gear-in", "/signatures", [("placing", "yes"), ("by", "bench")]);
        Assert.Contains("Photograph taken: marks of both gears in mesh", Section(await web.Page(Steps + "/gear-in"), "sign"), StringComparison.Ordinal);

        await Sent(web, Steps + "/gear-in", "/signatures", [("by", "bench")]);

        Assert.True(Record(web).Signatures[^1] is { Photographed: true, SecondLook: false });
        Assert.DoesNotContain("<button class=\"do\">", Section(await web.Page(Steps + "/gear-in"), "sign"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sign_SentTwice_IsStoredOnce()
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        var page = await web.Page(Steps + "/body-in");
        for (var i = 0; i < 2; i++)
        {
            using var response = await web.Send(page, Engine + "/signatures", [("by", "bench")]);
            Assert.Equal(HttpStatusCode.SeeOther, response.StatusCode);
        }

        Assert.Single(Record(web).Signatures);
    }

    [Fact]
    public async Task Sign_OverWhatIsMissing_IsRefused_NamingEach_WithItsThreeWays()
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        var refused = await NotTaken(web, Steps + "/cover-on", "/signatures", [("by", "bench"), ("note", "in a hurry")]);
        Assert.Contains("do it, depart, or owe it", Section(refused, "sign"), StringComparison.Ordinal);
        Assert.Contains("value=\"in a hurry\"", Section(refused, "sign"), StringComparison.Ordinal);
        var wants = Section(refused, "wants");
        Assert.Contains("Chamber wiped and looked into with a lamp", wants, StringComparison.Ordinal);
        Assert.Contains("way=owe&amp;item=hold%20cover-on%3A%20pump.end-float#way", wants, StringComparison.Ordinal);
        Assert.Contains("way=depart&amp;item=joint%20cover-studs#way", wants, StringComparison.Ordinal);
        Assert.Contains(Engine + "/measure/pump.end-float", wants, StringComparison.Ordinal);
        Assert.Empty(Record(web).Signatures);
    }

    [Fact]
    public async Task Joint_IsMadeStateByState_WithWhatWasPutOnIt_AndUndone()
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        Assert.DoesNotContain("value=\"tightened\"", await web.Page(Steps + "/cover-on"), StringComparison.Ordinal);
        await Sent(web, Steps + "/cover-on", "/joint-states", [("stage", "pulled up"), ("applied", "30 lbf in"), ("by", "bench")]);
        Assert.Equal("30 lbf in", Record(web).JointStates.Single().Applied?.Text);
        var closeUp = Section(await web.Page(Engine + "/close-up"), "first");
        Assert.Contains("Half done: cover studs", closeUp, StringComparison.Ordinal);
        Assert.Contains("Half done: cover studs", await web.Page(Engine), StringComparison.Ordinal);

        var refused = await NotTaken(web, Steps + "/cover-locked", "/joint-states", [("stage", "tightened"), ("applied", "60 degrees of heat"), ("by", "bench")]);
        Assert.Contains("value=\"60 degrees of heat\"", Section(refused, "joints"), StringComparison.Ordinal);
        Assert.Single(Record(web).JointStates);

        await Sent(web, Steps + "/cover-on", "/undoings", [("why", "film had skinned over")]);
        Assert.Equal("film had skinned over", Record(web).Undoings.Single().Why);
        Assert.DoesNotContain("Half done: cover studs", await web.Page(Engine), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Hold_IsAcceptedByName_AndAFigureOnlyWithAReason()
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        await Sent(web, Steps + "/turned", "/acceptances", [("by", "owner"), ("why", "felt through two turns")]);
        var holds = Section(await web.Page(Steps + "/turned"), "holds");
        Assert.Contains("accepted</b> <span class=\"note\">owner", holds, StringComparison.Ordinal);
        Assert.Contains("felt through two turns", holds, StringComparison.Ordinal);

        var page = await web.Page(Steps + "/cover-on");
        using var without = await web.Send(page, Engine + "/acceptances", [("why", "")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, without.StatusCode);
        Assert.Contains("What is accepted on judgement says why", Section(await without.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), "holds"), StringComparison.Ordinal);
        using var with = await web.Send(page, Engine + "/acceptances", [("why", "as it came apart, and it ran well")]);
        Assert.Equal(HttpStatusCode.SeeOther, with.StatusCode);
        Assert.Equal("pump.end-float", Record(web).Acceptances[^1].Hold);
    }

    [Fact]
    public async Task BeforeYouClose_ShowsWhatIsMissing_WhatItCosts_AndIsClosedOverAsOwed()
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        var page = await web.Page(Spaces + "/pump-chamber");
        Assert.Contains("Before you close: chamber of the pump", page, StringComparison.Ordinal);
        var missing = Section(page, "missing");
        Assert.Contains("Turns free", missing, StringComparison.Ordinal);
        Assert.Contains("<b>1 h 35</b>, 3 steps", missing, StringComparison.Ordinal);
        Assert.Contains("film of jointing", missing, StringComparison.Ordinal);

        var owe = await web.Page(Spaces + "/pump-chamber?way=owe&item=hold%20turned%3A%20turns%20free");
        Assert.Contains("Owe it: Turns free", owe, StringComparison.Ordinal);
        using var refused = await web.Send(owe, Engine + "/debts", [("what", ""), ("deadline", "before the start")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("Owe it: Turns free", await refused.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        using var taken = await web.Send(owe, Engine + "/debts", [("what", "turn it and feel"), ("deadline", "before it is turned"), ("by", "bench")]);
        Assert.Equal(HttpStatusCode.SeeOther, taken.StatusCode);
        Assert.Equal(Deadline.BeforeItIsTurned, Record(web).Debts[^1].Deadline);
        page = await web.Page(Spaces + "/pump-chamber");
        Assert.DoesNotContain("Turns free", Section(page, "missing"), StringComparison.Ordinal);
        Assert.Contains("Owed before it is turned", Section(page, "covered"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Departure_InTwoTapsAndAWord()
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        await Sent(web, Steps + "/cover-on", "/joint-states", [("stage", "pulled up"), ("by", "bench")]);
        var form = await web.Page(Spaces + "/crankcase?way=depart&item=joint%20cover-studs");
        Assert.Contains("Mark the piece itself", form, StringComparison.Ordinal);
        using var without = await web.Send(form, Departures, [("why", ""), ("kind", "locking changed"), ("what", "cover studs pulled up and not locked")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, without.StatusCode);
        using var taken = await web.Send(form, Departures, [("why", "no tab washers"), ("kind", "locking changed"), ("what", "cover studs pulled up and not locked"), ("purposes", "display"), ("purposes", "stand-run")]);
        Assert.Equal(HttpStatusCode.SeeOther, taken.StatusCode);
        var departure = Record(web).Departures[^1];
        Assert.Equal((DepartureKind.LockingChanged, "cover-studs", "no tab washers"), (departure.Kind, departure.Joint?.Text, departure.Why));
        Assert.Equal([Purpose.Display, Purpose.StandRun], departure.Purposes);
        Assert.Contains("No tab washers", Section(await web.Page(Departures), "departures"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Departures_OfNothing_IsRefused_WithWhatWasTyped()
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        var page = await web.Page(Departures);
        Assert.Contains("Wire in place of tab washers", page, StringComparison.Ordinal);
        Assert.Contains("with which it travels", page, StringComparison.Ordinal);
        using var refused = await web.Send(page, Departures, [("what", "paper for silk"), ("why", "none to be had"), ("kind", "seal changed")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        var shown = await refused.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("belongs to a piece, with which it travels, or to a joint", shown, StringComparison.Ordinal);
        Assert.Contains("value=\"paper for silk\"", shown, StringComparison.Ordinal);
        using var taken = await web.Send(shown, Departures, [("what", "paper for silk"), ("why", "none to be had"), ("kind", "seal changed"), ("joint", "sump-studs")]);
        Assert.Equal(HttpStatusCode.SeeOther, taken.StatusCode);
    }

    [Fact]
    public async Task Debt_IsSettled_AndWhatIsLeftOverIsNamed()
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        var page = await web.Page(Departures);
        Assert.Contains("<b>1 left over</b>", Section(page, "counts"), StringComparison.Ordinal);
        await Sent(web, Departures, "/settlements", [("how", "stamped"), ("by", "bench")]);
        Assert.Contains("Nothing is owed", Section(await web.Page(Departures), "debts"), StringComparison.Ordinal);

        var refused = await NotTaken(web, Departures, "/counts", [("what", "gallery plugs"), ("number", "a few"), ("way", "in")]);
        Assert.Contains("value=\"a few\"", Section(refused, "counts"), StringComparison.Ordinal);
        await Sent(web, Departures, "/counts", [("what", "gallery plugs"), ("number", "1"), ("way", "in")]);
        Assert.DoesNotContain("left over", Section(await web.Page(Departures), "counts"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task InsideAShutSpace_IsLookedInto()
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        await Sent(web, Steps + "/body-in", "/signatures", [("by", "bench")]);
        await Sent(web, Steps + "/gear-in", "/signatures", [("placing", "yes"), ("photographed", "yes")]);
        await Sent(web, Steps + "/cover-on", "/joint-states", [("stage", "pulled up")]);
        foreach (var item in new[] { "step gear-in", "step end-float", "hold turned: turns free", "hold cover-on: pump.end-float", "hold cover-on: chamber wiped and looked into with a lamp" })
        {
            var owe = await web.Page($"{Spaces}/pump-chamber?way=owe&item={Uri.EscapeDataString(item)}");
            using var owed = await web.Send(owe, Engine + "/debts", [("what", $"see to {item}"), ("deadline", "before the start")]);
            Assert.True(owed.StatusCode == HttpStatusCode.SeeOther, item);
        }

        await Sent(web, Steps + "/cover-on", "/signatures", []);
        var page = await web.Page(Spaces + "/pump-chamber");
        Assert.Contains("Inside: chamber of the pump", page, StringComparison.Ordinal);
        Assert.Contains("To get back in: <b>30 min</b>, 1 step", page, StringComparison.Ordinal);
        Assert.Contains("/decide/P-31", Section(page, "inside"), StringComparison.Ordinal);
        Assert.Contains("taken", Section(page, "photographs"), StringComparison.Ordinal);
        Assert.Contains("Wire in place of tab washers", Section(page, "departures"), StringComparison.Ordinal);
        Assert.Contains("before the start", Section(page, "owed"), StringComparison.Ordinal);
        Assert.Contains("2 h before anything is built on it: until ", await web.Page(Steps + "/cover-on"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task BenchSheets_OneForTheDay_AndOneForEachSpaceAskedFor()
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        var day = await web.Page(Engine + "/close-up/sheets");
        Assert.Contains("Pump body on its face", Section(day, "day"), StringComparison.Ordinal);
        var sheets = await web.Page(Engine + "/close-up/sheets?space=pump-chamber&space=crankcase&space=nowhere");
        Assert.DoesNotContain("id=\"day\"", sheets, StringComparison.Ordinal);
        Assert.Contains("Turns free", Section(sheets, "paper-pump-chamber"), StringComparison.Ordinal);
        Assert.Contains("Second pair of eyes", Section(sheets, "paper-crankcase"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/close-up/steps/nothing")]
    [InlineData("/close-up/steps/no name")]
    [InlineData("/close-up/spaces/nowhere")]
    public async Task WhatIsNotThere_IsSaid(string address)
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        using var response = await web.Browser.GetAsync(new Uri(Engine + address, UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
    }

    [Fact]
    public async Task Cautions_StandWhereTheHarmIs()
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        Assert.Contains("no petrol", await web.Page(Steps + "/case-washed"), StringComparison.Ordinal);
        Assert.Contains("by hand, with the ignition dead", await web.Page(Steps + "/turned"), StringComparison.Ordinal);
        Assert.Contains("the cure over before oil", await web.Page(Steps + "/cover-on"), StringComparison.Ordinal);
        Assert.DoesNotContain("Caution.", await web.Page(Steps + "/body-in"), StringComparison.Ordinal);
    }

    private static async Task Sent(OpenWeb web, string page, string action, IEnumerable<(string, string)> changes)
    {
        using var response = await web.Send(await web.Page(page), Engine + action, changes);
        Assert.True(response.StatusCode == HttpStatusCode.SeeOther, $"{page}{action}: {response.StatusCode}\n{await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)}");
    }

    private static async Task<string> NotTaken(OpenWeb web, string page, string action, IEnumerable<(string, string)> changes)
    {
        using var response = await web.Send(await web.Page(page), Engine + action, changes);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        return await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
    }

    private static EngineRecord Record(OpenWeb web) => OpenWeb.Taken(web.Workshop.Engine(InventedPlan.Name));
}
