using System.Net;
using Thoubook.Record;
using Thoubook.Workshop.Starters;

namespace Thoubook.Web.Tests;

/// <summary>A sub-assembly added in the browser: chosen, answered, seen, asked where in doubt, added.</summary>
public sealed class StarterPageTests
{
    private const string Engine = "/engines/Dipper%20four";
    private const string Pump = Engine + "/starters/gear-pump";

    [Fact]
    public async Task EveryStarter_IsListed_AndItsQuestionsStandOnItsPage()
    {
        await using var web = await Made();
        var list = await web.Page(Engine + "/starters");
        foreach (var starter in Starter.All)
        {
            Assert.Contains($"{Engine}/starters/{starter.Key}\"", list, StringComparison.Ordinal);
            var page = await web.Page($"{Engine}/starters/{starter.Key}");
            Assert.All(starter.Questions, q => Assert.Contains($"name=\"{q.Key}\"", page, StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task SeenFirst_WritesNothing_ThenAdded_ThenThereAlready()
    {
        await using var web = await Made();
        var page = await web.Page(Pump);
        using (var seen = await web.Send(page, Pump, [("screws", "8"), ("seal", "gasket"), ("step", "see")]))
        {
            var shown = await Body(seen, HttpStatusCode.OK);
            Assert.Contains("As it would be added", shown, StringComparison.Ordinal);
            Assert.Contains("Gasket as thick as the one that the end float was taken with", shown, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("name=\"screws\" value=\"8\"", shown, StringComparison.Ordinal);
            Assert.Empty(Record(web).Steps);
        }

        using (var added = await web.Send(page, Pump, [("screws", "8"), ("seal", "gasket"), ("step", "add")]))
            Assert.Equal(HttpStatusCode.SeeOther, added.StatusCode);
        Assert.Contains(Record(web).Joints, j => j.Number == 8);
        using var again = await web.Send(page, Pump, [("seal", "gasket"), ("step", "see")]);
        Assert.Contains("Everything is there already", await Body(again, HttpStatusCode.OK), StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhereTwoPartsMayBeMeant_ItIsAsked_AndTheAnswerIsKept()
    {
        await using var web = await Made();
        foreach (var part in new[] { "front/oil-pump", "rear/oil-pump", "rear/oil-pump/gasket", "rear/oil-pump/film" })
            OpenWeb.Taken(web.Workshop.Define("Dipper four", new Thoubook.Record.Parts.Part(PartName.Of(part)), "owner"));
        var page = await web.Page(Pump);
        using (var asked = await web.Send(page, Pump, [("step", "add")]))
            Assert.Contains("value=\"at=rear/oil-pump\"", await Body(asked, HttpStatusCode.UnprocessableEntity), StringComparison.Ordinal);
        using (var asked = await web.Send(page, Pump, [("confirm", "at=rear/oil-pump")]))
            Assert.Contains("value=\"rear/oil-pump/joint=rear/oil-pump/film\"", await Body(asked, HttpStatusCode.UnprocessableEntity), StringComparison.Ordinal);
        using var seen = await web.Send(page, Pump, [("at", "rear/oil-pump"), ("confirm", "rear/oil-pump/joint=rear/oil-pump/film"), ("step", "see")]);
        var shown = await Body(seen, HttpStatusCode.OK);
        Assert.Contains("rear/oil-pump/film for rear/oil-pump/joint", shown, StringComparison.Ordinal);
        Assert.Contains("type=\"hidden\" name=\"confirm\" value=\"rear/oil-pump/joint=rear/oil-pump/film\"", shown, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhatIsNoAnswer_IsRefused_AndWhatIsNoStarterIsNotHere()
    {
        await using var web = await Made();
        using (var refused = await web.Send(await web.Page(Pump), Pump, [("screws", "many"), ("step", "add")]))
            Assert.Contains("From 2 to 40", await Body(refused, HttpStatusCode.UnprocessableEntity), StringComparison.OrdinalIgnoreCase);
        Assert.Empty(Record(web).Steps);
        using var missing = await web.Browser.GetAsync(new Uri(Engine + "/starters/gear-box", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, missing.StatusCode);
    }

    private static async Task<OpenWeb> Made()
    {
        var web = await OpenWeb.Start();
        OpenWeb.Taken(web.Workshop.MakeEngine(new Engine(new EngineName("Dipper four"), Purpose.StandRun), "owner"));
        return web;
    }

    private static EngineRecord Record(OpenWeb web) => OpenWeb.Taken(web.Workshop.Engine("Dipper four"));

    private static async Task<string> Body(HttpResponseMessage answer, HttpStatusCode status)
    {
        var body = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(answer.StatusCode == status, $"{answer.StatusCode}: {body}");
        return WebUtility.HtmlDecode(body);
    }
}
