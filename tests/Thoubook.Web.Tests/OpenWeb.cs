using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Thoubook.Record;
using Thoubook.Store;
using Thoubook.Workshop;

namespace Thoubook.Web.Tests;

/// <summary>A workshop in a folder of its own with its web door open on a free port.</summary>
public sealed partial class OpenWeb : IAsyncDisposable
{
    private readonly DirectoryInfo _folder;
    private readonly WebApplication _web;

    private OpenWeb(DirectoryInfo folder, OpenWorkshop workshop, WebApplication web, Uri address)
    {
        _folder = folder;
        Workshop = workshop;
        _web = web;
        Address = address;
        Browser = NewBrowser();
    }

    public OpenWorkshop Workshop { get; }

    public Uri Address { get; }

    /// <summary>Keeps cookies and does not follow a redirect by itself.</summary>
    public HttpClient Browser { get; }

    public static async Task<OpenWeb> Start(params EngineRecord[] engines)
    {
        var folder = Directory.CreateTempSubdirectory("thoubook-web-");
        var workshop = Taken(OpenWorkshop.Open(folder.FullName, WhenMissing.MakeOne, SystemClock.Instance));
        foreach (var engine in engines)
            Taken(workshop.Save(engine, "owner"));
        var web = ThoubookWeb.Build(workshop, new WebOptions { Port = 0 });
        await web.StartAsync(TestContext.Current.CancellationToken);
        var address = web.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        return new OpenWeb(folder, workshop, web, new Uri(address));
    }

    public static Task<OpenWeb> WithPump() => Start(InventedPump.Record());

    public HttpClient NewBrowser() => new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() }) { BaseAddress = Address };

    public async Task<string> Page(string address)
    {
        using var response = await Browser.GetAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
        var page = await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(response.StatusCode == HttpStatusCode.OK, $"{address}: {response.StatusCode}\n{page}");
        return page;
    }

    /// <summary>Sends the form of a page that posts to an address, with what a person changed in it.</summary>
    public async Task<HttpResponseMessage> Send(string page, string action, IEnumerable<(string Field, string Text)> changes, bool fragment = false)
    {
        var form = FormOf(page, action);
        var fields = HiddenFields().Matches(form).Select(m => (m.Groups["name"].Value, WebUtility.HtmlDecode(m.Groups["value"].Value))).ToList();
        var changed = changes.ToList();
        fields.RemoveAll(f => changed.Exists(c => c.Field == f.Item1 && c.Field != "confirm"));
        fields.AddRange(changed);
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(action, UriKind.Relative)) { Content = new FormUrlEncodedContent(fields.Select(f => KeyValuePair.Create(f.Item1, f.Item2))) };
        if (fragment)
            request.Headers.Add("HX-Request", "true");
        return await Browser.SendAsync(request, TestContext.Current.CancellationToken);
    }

    public static string FormOf(string page, string action)
    {
        var decoded = Forms().Matches(page).Select(m => m.Value).FirstOrDefault(f => f.Contains("method=\"post\"", StringComparison.Ordinal) && WebUtility.HtmlDecode(f).Contains($"action=\"{action}\"", StringComparison.Ordinal));
        Assert.True(decoded is not null, $"No form posts to {action} on\n{page}");
        return decoded;
    }

    public static T Taken<T>(Outcome<T> outcome) => outcome.IsOk(out var value, out var problems) ? value : throw new InvalidOperationException(string.Join('\n', problems));

    public async ValueTask DisposeAsync()
    {
        Browser.Dispose();
        await _web.DisposeAsync();
        Workshop.Dispose();
        _folder.Delete(recursive: true);
    }

    [GeneratedRegex("<form.*?</form>", RegexOptions.Singleline, 5000)]
    private static partial Regex Forms();

    [GeneratedRegex("<input type=\"hidden\" name=\"(?<name>[^\"]*)\" value=\"(?<value>[^\"]*)\"", RegexOptions.None, 5000)]
    private static partial Regex HiddenFields();
}
