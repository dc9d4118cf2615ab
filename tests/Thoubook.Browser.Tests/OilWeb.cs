using Thoubook.Record;
using Thoubook.Web.Tests;

namespace Thoubook.Browser.Tests;

/// <summary>The small engine with a circuit that the starter made of it.</summary>
internal static class OilWeb
{
    /// <summary>A large engine with all that the starter can draw.</summary>
    public static IReadOnlyDictionary<string, string> EverythingThatCanBeAnswered { get; } = new Dictionary<string, string>
    {
        ["sump"] = "dry",
        ["mains"] = "9",
        ["big-ends"] = "8",
        ["relief"] = "cascade",
        ["filter"] = "yes",
        ["cooler"] = "yes",
        ["camshaft-bearings"] = "9",
        ["timing-jets"] = "6",
        ["consumer"] = "governor",
        ["scavenge-pumps"] = "2",
    };

    public static async Task<OpenWeb> Start(params EngineRecord[] others)
    {
        var web = await OpenWeb.Start([InventedPump.Record(), .. others]);
        OpenWeb.Taken(web.Workshop.StartCircuit(InventedPump.Name, new Dictionary<string, string> { ["mains"] = "2", ["mains-at"] = "lower-half/crankshaft.main-clearance, lower-half/crankshaft.main-clearance", ["pump-at"] = "lower-half/pressure-pump" }, "owner"));
        return web;
    }
}
