using System.Net;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Http.Features;
using Thoubook.Web.Doors;
using Thoubook.Web.Pages;
using Thoubook.Workshop;

namespace Thoubook.Web;

/// <summary>The workshop in the browser.</summary>
public static class ThoubookWeb
{
    /// <summary>A web application on this machine's own address for an open workshop; the caller starts it, and closes the workshop after it.</summary>
    public static WebApplication Build(OpenWorkshop workshop, WebOptions options)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ApplicationName = typeof(ThoubookWeb).Assembly.GetName().Name, EnvironmentName = Environments.Production });
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.Listen(IPAddress.Loopback, options.Port);
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = options.LongestPost;
        });
        builder.Logging.ClearProviders();
        if (options.Logs)
            builder.Logging.AddSimpleConsole(console => console.SingleLine = true).SetMinimumLevel(LogLevel.Error);

        builder.Services.AddSingleton(new Bench(workshop));
        builder.Services.AddHttpContextAccessor();
        builder.Services.AddRazorComponents();
        builder.Services.AddAntiforgery(seal =>
        {
            seal.Cookie.Name = "thoubook-seal";
            seal.Cookie.SameSite = SameSiteMode.Strict;
            seal.Cookie.HttpOnly = true;
            seal.SuppressXFrameOptionsHeader = false;
        });
        builder.Services.Configure<FormOptions>(form =>
        {
            form.ValueCountLimit = 5000;
            form.ValueLengthLimit = (int)options.LongestPost;
            form.MultipartBodyLengthLimit = options.LongestPost;
        });
        var keys = builder.Services.AddDataProtection().SetApplicationName("Thoubook");
        if (options.Keys is { } folder)
            keys.PersistKeysToFileSystem(folder);
        else
            keys.UseEphemeralDataProtectionProvider();

        var web = builder.Build();
        web.Use(Guarding.Headers);
        web.Use(Guarding.NothingOfTheInside);
        web.Use(Guarding.OwnHost);
        web.Use(Guarding.OwnOrigin);
        web.Use(Guarding.Sealed);
        web.MapGet(SheetAssets.Route, SheetAssets.Send);
        BenchDoor.Map(web);
        MeasureDoor.Map(web);
        DecideDoor.Map(web);
        OilDoor.Map(web);
        CircuitDoor.Map(web);
        CloseUpDoor.Map(web);
        StripDoor.Map(web);
        StarterDoor.Map(web);
        SumDoor.Map(web);
        WorkshopDoor.Map(web);
        ImportDoor.Map(web);
        web.MapFallback(() => Plain.Answer(StatusCodes.Status404NotFound, "Not here", "There is no page under this address."));
        return web;
    }
}
