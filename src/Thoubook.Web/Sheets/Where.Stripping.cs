using Thoubook.Record;

namespace Thoubook.Web.Sheets;

/// <summary>The addresses of the sheets for taking apart, for the permission to run and for what an engine is for.</summary>
internal static partial class Where
{
    public static string Strip(EngineName engine) => $"{Bench(engine)}/strip";

    /// <summary>The strip with one removal opened, of the engine as it is signed or as it came whole.</summary>
    public static string Strip(EngineName engine, string at, bool whole) => $"{Strip(engine)}?at={Uri.EscapeDataString(at)}{(whole ? "&whole=1" : "")}#at";

    public static string AsFound(EngineName engine) => $"{Strip(engine)}/as-found";

    public static string Permission(EngineName engine) => $"{CloseUp(engine)}/permission";

    public static string Purpose(EngineName engine) => $"{Bench(engine)}/purpose";

    public static string States(EngineName engine) => $"{Bench(engine)}/states";
}
