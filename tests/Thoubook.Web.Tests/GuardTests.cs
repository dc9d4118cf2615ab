using System.Net;
using Thoubook.Record;

namespace Thoubook.Web.Tests;

/// <summary>Who is let in, and what a page may do.</summary>
public sealed class GuardTests
{
    private const string Engine = "/engines/Wren%20twin";
    private const string Journal = Engine + "/measure/lower-half/crankshaft.journal-diameter";

    [Fact]
    public async Task EveryAnswer_CarriesAStrictPolicy()
    {
        await using var web = await OpenWeb.WithPump();
        foreach (var address in new[] { "/", Journal, "/nowhere" })
        {
            using var response = await web.Browser.GetAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
            var policy = response.Headers.GetValues("Content-Security-Policy").Single();
            Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
            Assert.Equal("nosniff", response.Headers.GetValues("X-Content-Type-Options").Single());
            Assert.False(response.Headers.Contains("Server"));
        }
    }

    [Theory]
    [InlineData("workshop.example")]
    [InlineData("127.0.0.1.example")]
    [InlineData("127.0.0.1:1")]
    [InlineData("10.0.0.7")]
    public async Task Request_ForeignHost_IsRefused(string host)
    {
        await using var web = await OpenWeb.WithPump();
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri("/engines", UriKind.Relative));
        request.Headers.Host = host;
        using var response = await web.Browser.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.MisdirectedRequest, response.StatusCode);
        Assert.DoesNotContain("Wren", await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("http://workshop.example")]
    [InlineData("null")]
    [InlineData("https://127.0.0.1")]
    public async Task Post_ForeignOrigin_IsRefusedThoughItsSealIsRight(string origin)
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Journal);
        web.Browser.DefaultRequestHeaders.Add("Origin", origin);
        using var response = await web.Send(page, Engine + "/readings", [("value", "2.7480"), ("place", "A1")]);
        Assert.Equal(HttpStatusCode.Forbidden, response.StatusCode);
        Assert.Equal(14, Readings(web));
    }

    [Fact]
    public async Task Post_OwnOrigin_IsTaken()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Journal);
        web.Browser.DefaultRequestHeaders.Add("Origin", web.Address.GetLeftPart(UriPartial.Authority));
        using var response = await web.Send(page, Engine + "/readings", [("value", "2.7480"), ("place", "A1")]);
        Assert.Equal(HttpStatusCode.SeeOther, response.StatusCode);
        Assert.Equal(15, Readings(web));
    }

    [Theory]
    [InlineData("/readings")]
    [InlineData("/strike-outs")]
    [InlineData("/pieces")]
    [InlineData("/liftings")]
    [InlineData("/findings")]
    [InlineData("/works")]
    [InlineData("/decisions")]
    public async Task Post_WithoutTheSeal_WritesNothing(string action)
    {
        await using var web = await OpenWeb.WithPump();
        var before = web.Workshop.Sequence();
        using var form = new FormUrlEncodedContent([new("figure", "lower-half/crankshaft.journal-diameter"), new("value", "2.7480"), new("what", "pitting"), new("part", "lower-half/crankshaft")]);
        using var response = await web.Browser.PostAsync(new Uri(Engine + action, UriKind.Relative), form, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Equal(before, web.Workshop.Sequence());
    }

    [Fact]
    public async Task Post_SealOfAnotherBrowser_WritesNothing()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Journal);
        using var other = web.NewBrowser();
        var token = page.Split("__RequestVerificationToken\" value=\"")[1].Split('"')[0];
        using var form = new FormUrlEncodedContent([new("__RequestVerificationToken", token), new("figure", "lower-half/crankshaft.journal-diameter"), new("value", "2.7480")]);
        using var response = await other.PostAsync(new Uri(Engine + "/readings", UriKind.Relative), form, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Equal(14, Readings(web));
    }

    [Fact]
    public async Task Post_TooLong_IsRefusedInWords()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Journal);
        try
        {
            using var response = await web.Send(page, Engine + "/readings", [("value", new string('1', 9_000_000))]);
            Assert.Contains(response.StatusCode, new[] { HttpStatusCode.RequestEntityTooLarge, HttpStatusCode.BadRequest });
        }
        catch (HttpRequestException)
        {
            // The server may close the connection before all was sent.
        }

        Assert.Equal(14, Readings(web));
    }

    [Fact]
    public async Task Back_ToAnotherSite_IsNotFollowed()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Engine + "/parts/lower-half/crankshaft");
        foreach (var back in new[] { "https://workshop.example/", "//workshop.example", "/\\workshop.example" })
        {
            using var response = await web.Send(page, Engine + "/findings", [("what", "light corrosion"), ("back", back), ("id", Guid.CreateVersion7().ToString())]);
            Assert.True(response.StatusCode == HttpStatusCode.SeeOther, await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
            Assert.Equal(Engine, response.Headers.Location!.ToString());
        }
    }

    [Fact]
    public async Task Asset_HasItsHashInItsAddress_AndMayBeKept()
    {
        await using var web = await OpenWeb.WithPump();
        var page = await web.Page(Engine);
        var address = page.Split("rel=\"stylesheet\" href=\"")[1].Split('"')[0];
        using var style = await web.Browser.GetAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Contains("immutable", style.Headers.GetValues("Cache-Control").Single(), StringComparison.Ordinal);
        using var other = await web.Browser.GetAsync(new Uri("/a/0000000000000000/sheet.css", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, other.StatusCode);
    }

    private static int Readings(OpenWeb web) => OpenWeb.Taken(web.Workshop.Engine(new EngineName(InventedPump.Name))).Readings.Count;
}
