#!/usr/bin/env -S dotnet run
#:project ../src/Thoubook.Web
#:property PublishAot=false
#:property RestorePackagesWithLockFile=false

// How long pages take on the server while people use them: 20 users who pause a second, over a workshop's pages in turn.
// dotnet run -c Release tools/load-web.cs -- WORKSHOP [USERS] [SECONDS]
using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using System.Globalization;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Thoubook.Store;
using Thoubook.Web;
using Thoubook.Workshop;

var users = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 20;
var seconds = args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 30;
if (args.Length == 0 || !OpenWorkshop.Open(args[0], WhenMissing.Refuse, SystemClock.Instance).IsOk(out var workshop, out var problems))
{
    Console.Error.WriteLine("Name the folder of a workshop with engines in it.");
    return 2;
}

var times = new ConcurrentQueue<(string Route, double Milliseconds)>();
using var listener = new MeterListener
{
    InstrumentPublished = (instrument, listening) =>
    {
        if (instrument.Name == "http.server.request.duration")
            listening.EnableMeasurementEvents(instrument);
    },
};
listener.SetMeasurementEventCallback<double>((_, value, tags, _) =>
{
    foreach (var tag in tags)
    {
        if (tag.Key == "http.route")
            times.Enqueue(($"{tag.Value}", value * 1000));
    }
});
listener.Start();

await using var web = ThoubookWeb.Build(workshop, new WebOptions { Port = 0 });
await web.StartAsync();
var address = new Uri(web.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single());
var pages = new List<string> { "/workshop", "/sums" };
foreach (var engine in workshop.Engines())
{
    var at = $"/engines/{Uri.EscapeDataString(engine.Name.Text)}";
    pages.AddRange([at, at + "/parts", at + "/measure", at + "/decide"]);
    if (workshop.Engine(engine.Name).IsOk(out var record, out _))
    {
        pages.AddRange(record.Dimensions.Take(12).Select(d => $"{at}/measure/{d.Name}"));
        pages.AddRange(record.Fits.Take(12).Select(f => $"{at}/measure/{f.Name}"));
    }
}

using var client = new HttpClient { BaseAddress = address };
foreach (var page in pages)
    await client.GetStringAsync(page);
times.Clear();

using var end = new CancellationTokenSource(TimeSpan.FromSeconds(seconds));
await Task.WhenAll(Enumerable.Range(0, users).Select(async user =>
{
    await Task.Delay(user * 1000 / users);
    for (var turn = user * 7; !end.IsCancellationRequested; turn++)
    {
        await client.GetStringAsync(pages[turn % pages.Count]);
        await Task.Delay(1000);
    }
}));

foreach (var route in times.GroupBy(t => t.Route).OrderBy(g => g.Key))
    Console.WriteLine($"{route.Key,-42} {route.Count(),5}  median {At(route, 0.5),6:0.0} ms   95th {At(route, 0.95),6:0.0} ms");
Console.WriteLine($"{"all",-42} {times.Count,5}  median {At(times, 0.5),6:0.0} ms   95th {At(times, 0.95),6:0.0} ms   (asked: 40)");
await web.StopAsync();
workshop.Dispose();
return 0;

static double At(IEnumerable<(string Route, double Milliseconds)> times, double share)
{
    var sorted = times.Select(t => t.Milliseconds).Order().ToArray();
    return sorted.Length == 0 ? 0 : sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))];
}
