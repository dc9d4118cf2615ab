using System.Collections.Frozen;
using System.Globalization;
using System.IO.Compression;
using System.Reflection;
using System.Security.Cryptography;

namespace Thoubook.Web;

/// <summary>The style and the script of the sheets. Each has the hash of its content in its address, so a browser may keep it for ever.</summary>
internal static class SheetAssets
{
    public const string Route = "/a/{hash}/{name}";

    private static readonly FrozenDictionary<string, Asset> ByName = Read();

    public static string Style => ByName["sheet.css"].Address;

    public static string Htmx => ByName["htmx.js"].Address;

    public static string Script => ByName["bench.js"].Address;

    public static IResult Send(string hash, string name, HttpRequest request, HttpResponse response)
    {
        if (!ByName.TryGetValue(name, out var asset) || asset.Hash != hash)
            return TypedResults.NotFound();
        response.Headers.CacheControl = "public, max-age=31536000, immutable";
        response.Headers.Vary = "Accept-Encoding";
        if (!request.Headers.AcceptEncoding.ToString().Contains("br", StringComparison.OrdinalIgnoreCase))
            return TypedResults.Bytes(asset.Plain, asset.Type);
        response.Headers.ContentEncoding = "br";
        return TypedResults.Bytes(asset.Brotli, asset.Type);
    }

    private static FrozenDictionary<string, Asset> Read()
    {
        var styles = Assembly.GetExecutingAssembly().GetManifestResourceNames().Where(n => n.StartsWith("web/css/", StringComparison.Ordinal)).Order(StringComparer.Ordinal);
        return new Asset[]
        {
            Make("sheet.css", "text/css; charset=utf-8", [.. styles.SelectMany(Resource)]),
            Make("htmx.js", "text/javascript; charset=utf-8", Resource("web/lib/htmx/htmx.min.js")),
            Make("bench.js", "text/javascript; charset=utf-8", Resource("web/bench.js")),
        }.ToFrozenDictionary(a => a.Name);
    }

    private static byte[] Resource(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name) ?? throw new InvalidOperationException($"{name} is not in the program.");
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }

    private static Asset Make(string name, string type, byte[] plain)
    {
        using var packed = new MemoryStream();
        using (var brotli = new BrotliStream(packed, CompressionLevel.Optimal))
            brotli.Write(plain);
        return new(name, type, Convert.ToHexStringLower(SHA256.HashData(plain))[..16], plain, packed.ToArray());
    }

    private sealed record Asset(string Name, string Type, string Hash, byte[] Plain, byte[] Brotli)
    {
        public string Address => string.Create(CultureInfo.InvariantCulture, $"/a/{Hash}/{Name}");
    }
}
