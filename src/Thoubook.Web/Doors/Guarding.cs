using System.Net;
using Microsoft.AspNetCore.Antiforgery;
using Thoubook.Web.Pages;

namespace Thoubook.Web.Doors;

/// <summary>What every request must pass: it comes to this machine by its own name, from its own pages, and a post carries the seal of its form.</summary>
internal static class Guarding
{
    /// <summary>Nothing from outside, nothing inline, nothing evaluated.</summary>
    public const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    public static async Task Headers(HttpContext context, RequestDelegate next)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers.CacheControl = "no-cache, no-store";
        await next(context);
    }

    /// <summary>The one place where what broke is caught: told to the log, never to the page.</summary>
    public static async Task NothingOfTheInside(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context);
        }
        catch (BadHttpRequestException refused) when (!context.Response.HasStarted)
        {
            await Plain.Refuse(context, refused.StatusCode, "Nothing was written", refused.StatusCode == StatusCodes.Status413PayloadTooLarge ? "What was sent is longer than this workshop takes." : "The browser sent something that cannot be read.");
        }
        catch (AntiforgeryValidationException) when (!context.Response.HasStarted)
        {
            await Plain.Refuse(context, StatusCodes.Status400BadRequest, "Nothing was written", "The form held characters that no form can carry.");
        }
        catch (Exception fault) when (!context.Response.HasStarted && !context.RequestAborted.IsCancellationRequested)
        {
            context.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger("Thoubook.Web").LogError(fault, "A page broke.");
            await Plain.Refuse(context, StatusCodes.Status500InternalServerError, "Something broke", "The page could not be made. What was written before is safe; what was just sent may not be written. Open the page again and look.");
        }
    }

    public static Task OwnHost(HttpContext context, RequestDelegate next) => IsLoopback(context.Request.Host, context.Connection.LocalPort)
        ? next(context)
        : Plain.Refuse(context, StatusCodes.Status421MisdirectedRequest, "Not this address", "This workshop answers only under the address of its own machine, such as http://127.0.0.1:5180.");

    public static Task OwnOrigin(HttpContext context, RequestDelegate next)
    {
        var request = context.Request;
        var origin = request.Headers.Origin.ToString();
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        var foreign = origin.Length > 0 && !string.Equals(origin, $"{request.Scheme}://{request.Host.Value}", StringComparison.OrdinalIgnoreCase)
            || IsWriting(request) && site is "cross-site" or "same-site";
        return foreign
            ? Plain.Refuse(context, StatusCodes.Status403Forbidden, "Not from here", "This was sent from a page of another site. Nothing was written.")
            : next(context);
    }

    public static async Task Sealed(HttpContext context, RequestDelegate next)
    {
        if (IsWriting(context.Request) && !await context.RequestServices.GetRequiredService<IAntiforgery>().IsRequestValidAsync(context))
        {
            await Plain.Refuse(context, StatusCodes.Status400BadRequest, "Nothing was written", "The form did not carry the seal of this workshop. Go back, open the page again and send it once more.");
            return;
        }

        await next(context);
    }

    private static bool IsWriting(HttpRequest request) => !HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method);

    private static bool IsLoopback(HostString host, int port)
    {
        if (!host.HasValue || (host.Port ?? 80) != port)
            return false;
        var name = host.Host.Trim('[', ']');
        return name.Equals("localhost", StringComparison.OrdinalIgnoreCase) || IPAddress.TryParse(name, out var address) && IPAddress.IsLoopback(address);
    }
}
