using System.Net;
using Thoubook.Record;

namespace Thoubook.Web.Tests;

/// <summary>A schedule of limits pasted into the browser: looked at, asked about, taken whole or not at all.</summary>
public sealed class ImportTests
{
    private const string Engine = "/engines/Bare%20block";

    private const string Clear = "Description,New min in,New max in,Worn in\nPressure pump,,,\nBody depth,1.2530,1.2540,1.2560\nDriver width,1.2505,1.2515,1.2490\n";

    [Fact]
    public async Task Schedule_Clear_IsShownRowByRow_AndTaken()
    {
        await using var web = await Bare();
        using var looked = await web.Send(await web.Page(Engine + "/import"), Engine + "/import", [("text", Clear), ("book", "Overhaul book"), ("step", "look")]);
        var page = await looked.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, looked.StatusCode);
        Assert.Contains("1.253 in to 1.254 in", page, StringComparison.Ordinal);
        Assert.Empty(Record(web).Dimensions);

        using var taken = await web.Send(page, Engine + "/import", [("text", Clear), ("step", "take")]);
        Assert.Equal(HttpStatusCode.SeeOther, taken.StatusCode);
        Assert.Equal(2, Record(web).Dimensions.Count);
        Assert.Contains(Record(web).Documents, d => d.Title == "Overhaul book");
        using var again = await web.Send(page, Engine + "/import", [("text", Clear), ("step", "take")]);
        Assert.Equal(HttpStatusCode.SeeOther, again.StatusCode);
        Assert.Equal(2, Record(web).Dimensions.Count);
    }

    [Fact]
    public async Task Schedule_WithoutUnit_IsAsked_AndNothingIsTakenBeforeItIsAnswered()
    {
        await using var web = await Bare();
        const string unitless = "Description,New min,New max,Worn\nPressure pump,,,\nBody depth,1.2530,1.2540,1.2560\nDriver width,1.2505,1.2515,1.2490\n";
        var first = await web.Page(Engine + "/import");
        using var looked = await web.Send(first, Engine + "/import", [("text", unitless), ("step", "look")]);
        var page = await looked.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("name=\"confirm-0\"", page, StringComparison.Ordinal);
        Assert.Contains("disabled", page, StringComparison.Ordinal);
        using (await web.Send(page, Engine + "/import", [("text", unitless), ("step", "take")]))
            Assert.Empty(Record(web).Dimensions);
        using var answered = await web.Send(page, Engine + "/import", [("text", unitless), ("unit", "in"), ("step", "take")]);
        Assert.Equal(HttpStatusCode.SeeOther, answered.StatusCode);
        Assert.Equal(2, Record(web).Dimensions.Count);
    }

    [Theory]
    [InlineData("")]
    [InlineData("engine: { name: [")]
    [InlineData("nothing that is a table")]
    public async Task Import_OfNothingUseful_SaysWhy_AndWritesNothing(string text)
    {
        await using var web = await Bare();
        var before = web.Workshop.Sequence();
        using var response = await web.Send(await web.Page(Engine + "/import"), Engine + "/import", [("text", text), ("step", "take")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        Assert.Contains("Not taken", await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(before, web.Workshop.Sequence());
    }

    [Fact]
    public async Task Export_TakenInAgain_ChangesNothing()
    {
        await using var web = await OpenWeb.WithPump();
        var file = await web.Page("/engines/Wren%20twin/export");
        using var taken = await web.Send(await web.Page("/engines/Wren%20twin/import"), "/engines/Wren%20twin/import", [("text", file), ("step", "take")]);
        Assert.Equal(HttpStatusCode.SeeOther, taken.StatusCode);
        Assert.Equal(14, OpenWeb.Taken(web.Workshop.Engine("Wren twin")).Readings.Count);
    }

    private static Task<OpenWeb> Bare() => OpenWeb.Start(new EngineRecord(new Engine(new EngineName("Bare block"), Purpose.Display)));

    private static EngineRecord Record(OpenWeb web) => OpenWeb.Taken(web.Workshop.Engine("Bare block"));
}
