using System.Net;
using Thoubook.Record;
using Thoubook.Record.Circuits;

namespace Thoubook.Web.Tests;

/// <summary>The circuit begun by the starter and corrected element by element, in the browser alone.</summary>
public sealed class CircuitPageTests
{
    private const string Engine = "/engines/Wren%20twin";
    private const string Start = Engine + "/oil/start";
    private const string Circuit = Engine + "/oil/circuit";

    [Fact]
    public async Task NoCircuit_IsDrawnInDashes_WithTheNextAction()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Engine + "/oil");
        Assert.Contains("Answer a dozen questions", page, StringComparison.Ordinal);
        Assert.Contains("class=\"draw circuit\"", page, StringComparison.Ordinal);
        Assert.Contains("d-dash", page, StringComparison.Ordinal);
        Assert.DoesNotContain("c-heavy", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Starter_SeenFirst_WritesNothing_ThenDrawn_MarksWhatIsAssumed()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Start);
        using (var seen = await web.Send(page, Start, [("sump", "dry"), ("mains", "5"), ("cooler", "yes"), ("step", "see")]))
        {
            Assert.Equal(HttpStatusCode.OK, seen.StatusCode);
            var shown = await seen.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            Assert.Contains("As it would be drawn", shown, StringComparison.Ordinal);
            Assert.Contains("name=\"mains\" value=\"5\"", shown, StringComparison.Ordinal);
            Assert.Null(Record(web).Circuit);
        }

        using (var refused = await web.Send(page, Start, [("mains", "many"), ("step", "draw")]))
            Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        using (var drawn = await web.Send(page, Start, [("sump", "dry"), ("mains", "5"), ("cooler", "yes"), ("step", "draw")]))
            Assert.Equal(Circuit, drawn.Headers.Location!.ToString());
        Assert.Contains("assumed, measure it", await web.Page(Circuit), StringComparison.Ordinal);
        Assert.Equal(5, Record(web).Circuit!.Elements.Count(e => e.Kind is ElementKind.GroovedBearing));
    }

    [Fact]
    public async Task Element_Corrected_Blanked_Added_TakenOut()
    {
        await using var web = await Started();
        var bearing = First(web, ElementKind.GroovedBearing);
        var page = await web.Page($"{Circuit}/{bearing.Name}");
        using (var refused = await web.Send(page, Circuit, Form(bearing, ("size-land", "-3 mm"))))
        {
            Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
            var shown = await refused.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            Assert.Contains("value=\"-3 mm\"", shown, StringComparison.Ordinal);
            Assert.Contains("Not taken", shown, StringComparison.Ordinal);
        }

        using (var corrected = await web.Send(page, Circuit, Form(bearing, ("size-land", "11 mm"), ("blanked", "yes"))))
            Assert.Equal(HttpStatusCode.SeeOther, corrected.StatusCode);
        var now = Record(web).Circuit!.Element(bearing.Name)!;
        Assert.True(now.Blanked);
        Assert.Equal("11 mm", now.Value("land")!.ToString());

        page = await web.Page($"{Circuit}/new?kind=jet");
        using (var added = await web.Send(page, Circuit, [("element", "spray"), ("from", bearing.From.Text), ("to", bearing.To.Text), ("size-bore", "1/16 in")]))
            Assert.Equal(HttpStatusCode.SeeOther, added.StatusCode);
        Assert.Equal(ElementKind.Jet, Record(web).Circuit!.Element(new("spray"))!.Kind);

        page = await web.Page($"{Circuit}/spray");
        using (var gone = await web.Send(page, Engine + "/oil/removals", []))
            Assert.Equal(HttpStatusCode.SeeOther, gone.StatusCode);
        Assert.Null(Record(web).Circuit!.Element(new("spray")));
    }

    [Fact]
    public async Task Element_ChangedBySomebodyElse_ShowsBoth_AndIsTakenOnceSeen()
    {
        await using var web = await Started();
        var bearing = First(web, ElementKind.GroovedBearing);
        var page = await web.Page($"{Circuit}/{bearing.Name}");
        using (await web.Send(page, Circuit, Form(bearing, ("size-land", "11 mm"))))
        using (var clash = await web.Send(page, Circuit, Form(bearing, ("size-land", "12 mm"))))
        {
            Assert.Equal(HttpStatusCode.UnprocessableEntity, clash.StatusCode);
            var shown = await clash.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            Assert.Contains("land 11 mm", shown, StringComparison.Ordinal);
            Assert.Contains("land 12 mm", shown, StringComparison.Ordinal);
            Assert.Equal("11 mm", Record(web).Circuit!.Element(bearing.Name)!.Value("land")!.ToString());
            using var again = await web.Send(shown, Circuit, Form(bearing, ("size-land", "12 mm")));
            Assert.Equal(HttpStatusCode.SeeOther, again.StatusCode);
        }

        Assert.Equal("12 mm", Record(web).Circuit!.Element(bearing.Name)!.Value("land")!.ToString());
    }

    internal static async Task<OpenWeb> Started()
    {
        var web = await OpenWeb.WithPump();
        OpenWeb.Taken(web.Workshop.StartCircuit(InventedPump.Name, new Dictionary<string, string> { ["mains"] = "2", ["mains-at"] = "lower-half/crankshaft.main-clearance, lower-half/crankshaft.main-clearance", ["pump-at"] = "lower-half/pressure-pump" }, "owner"));
        return web;
    }

    private static EngineRecord Record(OpenWeb web) => OpenWeb.Taken(web.Workshop.Engine(InventedPump.Name));

    private static ElementDefinition First(OpenWeb web, ElementKind kind) => Record(web).Circuit!.Elements.First(e => e.Kind == kind);

    /// <summary>What the form holds of an element, with what a person changed.</summary>
    private static IEnumerable<(string Field, string Text)> Form(ElementDefinition element, params (string Field, string Text)[] changed) =>
    [
        ("from", element.From.Text), ("to", element.To.Text), ("part", element.Part?.Path ?? ""),
        .. element.Values.Select(v => ($"size-{v.Key}", v.Value.ToString()!)).Where(v => changed.All(c => c.Field != v.Item1)),
        .. changed,
    ];
}
