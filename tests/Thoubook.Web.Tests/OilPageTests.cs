using System.Diagnostics;
using System.Net;
using System.Text.RegularExpressions;
using Thoubook.Record;

namespace Thoubook.Web.Tests;

/// <summary>The oil sheet from readings to what the gauge will read.</summary>
public sealed partial class OilPageTests
{
    private const string Engine = "/engines/Wren%20twin";
    private const string Oil = Engine + "/oil";
    private const string FlowTest = Oil + "/flow-test";

    [Fact]
    public async Task Sections_StandInTheOrderOfTheirUse()
    {
        await using var web = await CircuitPageTests.Started();
        var page = await web.Page(Oil);
        string[] order = ["Where the pressure goes", "What to measure next", "Trials", "What the gauges will read", "The circuit", "Why it is not certain", "Where the oil goes", "Pumps and valves", "Before you rely on it"];
        var places = order.Select(h => page.IndexOf($"<h2>{h}</h2>", StringComparison.Ordinal)).ToList();
        Assert.All(places, p => Assert.True(p > 0));
        Assert.Equal(places.Order(), places);
    }

    [Fact]
    public async Task Drawing_SaysWhatTheTableSays()
    {
        await using var web = await CircuitPageTests.Started();
        var page = await web.Page(Oil);
        var gauge = Gauge(page);
        Assert.Matches(@"^\d+\.\d$", gauge);
        Assert.Contains($">{gauge}</text>", page, StringComparison.Ordinal);
        var zones = Zone().Matches(page).Select(m => m.Groups["zone"].Value).ToList();
        Assert.True(zones.Count > 5);
        Assert.All(zones, z => Assert.Matches("^[A-D][1-8]$", z));
    }

    [Fact]
    public async Task StrikeOut_OfAReading_ChangesTheHotIdleBand()
    {
        await using var web = await CircuitPageTests.Started();
        var before = Gauges(await web.Page(Oil));
        var sheet = Engine + "/measure/lower-half/crankshaft.journal-diameter";
        var page = await web.Page(sheet);
        var reading = OpenWeb.Taken(web.Workshop.Engine(InventedPump.Name)).Readings.First(r => r.Value.Text == "2.7477");
        using (var struck = await web.Send(page, Engine + "/strike-outs", [("of", reading.Id.ToString()), ("why", "dirt on the anvil")]))
            Assert.Equal(HttpStatusCode.SeeOther, struck.StatusCode);
        Assert.NotEqual(before, Gauges(await web.Page(Oil)));
    }

    [Fact]
    public async Task Trial_AnswersUnderTheHand_AndWritesNothing()
    {
        await using var web = await CircuitPageTests.Started();
        var page = await web.Page(Oil);
        var slide = Slide().Match(page);
        var sequence = web.Workshop.Sequence();
        var still = await web.Page($"{Oil}/trial?oil=80");
        Assert.StartsWith("<div id=\"tried\"", still.TrimStart(), StringComparison.Ordinal);
        var quickest = TimeSpan.MaxValue;
        foreach (var at in new[] { slide.Groups["min"].Value, slide.Groups["max"].Value })
        {
            for (var i = 0; i < 5; i++)
            {
                var watch = Stopwatch.StartNew();
                var moved = await web.Page($"{Oil}/trial?oil=80&{Uri.EscapeDataString(slide.Groups["name"].Value)}={at}");
                quickest = watch.Elapsed < quickest ? watch.Elapsed : quickest;
                Assert.NotEqual(still, moved);
                Assert.Contains("instead of", moved, StringComparison.Ordinal);
            }
        }

        Assert.True(quickest < TimeSpan.FromMilliseconds(100), $"{quickest.TotalMilliseconds} ms");
        Assert.Equal(sequence, web.Workshop.Sequence());
        var colder = await web.Page($"{Oil}?oil=40");
        Assert.Contains("40 °C", WebUtility.HtmlDecode(colder), StringComparison.Ordinal);
        Assert.Contains("class=\"fig plan big\"", colder, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Supposed_AnotherOilAndABlankedBearing_ChangeTheAnswer_AndAreSaid()
    {
        await using var web = await CircuitPageTests.Started();
        var still = await web.Page($"{Oil}/trial?oil=80");
        var thicker = await web.Page($"{Oil}/trial?oil=80&grade=SAE+60");
        Assert.Contains("oil SAE 60", WebUtility.HtmlDecode(thicker), StringComparison.OrdinalIgnoreCase);
        Assert.NotEqual(Figure().Match(still).Value, Figure().Match(thicker).Value);
        var bearing = OpenWeb.Taken(web.Workshop.Engine(InventedPump.Name)).Circuit!.Elements.First(e => e.Kind.ToString().EndsWith("Bearing", StringComparison.Ordinal));
        Assert.Contains("blanked", await web.Page($"{Oil}/trial?oil=80&blank={bearing.Name}"), StringComparison.Ordinal);
        Assert.Contains("Not taken", await web.Page($"{Oil}/trial?oil=80&what=nothing.here&becomes=3+thou"), StringComparison.Ordinal);
        Assert.Contains("Not taken", await web.Page($"{Oil}?oil=80&grade=treacle"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task SettledOil_IsKept_AndRefusedInWords()
    {
        await using var web = await CircuitPageTests.Started();
        var page = await web.Page(Oil);
        using (var refused = await web.Send(page, Oil + "/settled", [("temperature", "warm")]))
        {
            Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
            Assert.Contains("value=\"warm\"", await refused.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        }

        var before = Gauges(page);
        using (var kept = await web.Send(page, Oil + "/settled", [("temperature", "66 °C")]))
            Assert.Equal(HttpStatusCode.SeeOther, kept.StatusCode);
        var after = await web.Page(Oil);
        Assert.NotEqual(before, Gauges(after));
        Assert.Equal("66 °C", OpenWeb.Taken(web.Workshop.Engine(InventedPump.Name)).Circuit!.States[0].OilTemperature.Text);
    }

    [Fact]
    public async Task FlowTest_Written_SaysWhatItSays_AndCalibratesOnceAccepted()
    {
        await using var web = await CircuitPageTests.Started();
        var page = await web.Page(FlowTest);
        Assert.Contains("hands clear of the crank", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Not worked out", page, StringComparison.Ordinal);
        using (var refused = await web.Send(page, FlowTest, [("pressure", "30 psi"), ("temperature", "30 °C"), ("volume", "2 L")]))
        {
            Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
            Assert.Contains("value=\"2 L\"", await refused.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        }

        using (var written = await web.Send(page, FlowTest, [("pressure", "30 psi"), ("temperature", "30 °C"), ("volume", "2 L"), ("time", "600 s")]))
            Assert.Equal(HttpStatusCode.SeeOther, written.StatusCode);
        page = await web.Page(FlowTest);
        Assert.Contains("2 L in 600 s", page, StringComparison.Ordinal);
        var before = Gauges(await web.Page(Oil));
        using (var accepted = await web.Send(page, Oil + "/calibrations", [("why", "measured twice")]))
            Assert.Equal(HttpStatusCode.SeeOther, accepted.StatusCode);
        Assert.Contains("the model is fitted to it", await web.Page(FlowTest), StringComparison.Ordinal);
        Assert.NotEqual(before, Gauges(await web.Page(Oil)));
    }

    [Fact]
    public async Task PumpCard_SetsChoicesSideBySide_ByTheAmountsAsked()
    {
        await using var web = await CircuitPageTests.Started();
        var page = await web.Page($"{Oil}/pumps/pressure-pump?lap=0.8%20thou");
        Assert.Contains("As it stands", page, StringComparison.Ordinal);
        Assert.Contains("lapped by 0.8 thou", page, StringComparison.Ordinal);
        Assert.Contains("coldest start", page, StringComparison.Ordinal);
        using var refused = await web.Browser.GetAsync(new Uri($"{Oil}/pumps/pressure-pump?lap=much", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
    }

    [Fact]
    public async Task NamesInTheCircuit_AreShownAsWritten()
    {
        const string nasty = "<script>alert(1)</script>";
        await using var web = await CircuitPageTests.Started();
        var circuit = OpenWeb.Taken(web.Workshop.Engine(InventedPump.Name)).Circuit!;
        OpenWeb.Taken(web.Workshop.SaveCircuit(InventedPump.Name, circuit with { Elements = [.. circuit.Elements.Select(e => e with { Label = nasty, Note = nasty })] }, nasty));
        foreach (var address in new[] { Oil, Oil + "?oil=70", Oil + "/trial?oil=70", FlowTest, Oil + "/circuit", $"{Oil}/circuit/{circuit.Elements[0].Name}", Oil + "/pumps/pressure-pump" })
        {
            var page = await web.Page(address);
            Assert.DoesNotContain("<script>alert", page, StringComparison.Ordinal);
            Assert.DoesNotContain(" style=", page, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("/trial?oil=much")]
    [InlineData("?oil=-400")]
    [InlineData("?oil=900")]
    [InlineData("?at=nowhere")]
    [InlineData("/trial?oil=80&lower-half/crankshaft.main-clearance=1e99")]
    [InlineData("/trial?oil=80&lower-half/crankshaft.main-clearance=none")]
    public async Task Asked_WhatCannotBe_AnswersInWords(string asked)
    {
        await using var web = await CircuitPageTests.Started();
        var page = await web.Page(Oil + asked);
        Assert.DoesNotContain("NaN", page, StringComparison.Ordinal);
        Assert.DoesNotContain("∞", page, StringComparison.Ordinal);
    }

    /// <summary>The first figure of the table of gauges.</summary>
    private static string Gauge(string page) => Figure().Match(page, page.IndexOf("id=\"gauges\"", StringComparison.Ordinal)).Groups["value"].Value;

    /// <summary>The table of gauges: values and bands.</summary>
    private static string Gauges(string page) => string.Join(' ', Figure().Matches(page, page.IndexOf("id=\"gauges\"", StringComparison.Ordinal)).Take(6).Select(m => m.Value));

    [GeneratedRegex("<span class=\"n\">(?<value>[^<]*)</span>(?:<span class=\"u\">[^<]*</span>)?(?:<span class=\"pm\">[^<]*</span>)?", RegexOptions.None, 5000)]
    private static partial Regex Figure();

    [GeneratedRegex("data-l=\"Zone\">(?<zone>[^<]*)<", RegexOptions.None, 5000)]
    private static partial Regex Zone();

    [GeneratedRegex("name=\"(?<name>[^\"]*)\" type=\"range\" min=\"(?<min>[^\"]*)\" max=\"(?<max>[^\"]*)\"", RegexOptions.None, 5000)]
    private static partial Regex Slide();
}
