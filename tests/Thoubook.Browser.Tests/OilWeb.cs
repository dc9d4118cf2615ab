using Thoubook.Record;
using Thoubook.Web.Tests;

namespace Thoubook.Browser.Tests;

/// <summary>The small engine with a circuit that the starter made of it.</summary>
internal static class OilWeb
{
    public static async Task<OpenWeb> Start(params EngineRecord[] others)
    {
        var web = await OpenWeb.Start([InventedPump.Record(), .. others]);
        OpenWeb.Taken(web.Workshop.StartCircuit(InventedPump.Name, new Dictionary<string, string> { ["mains"] = "2", ["mains-at"] = "lower-half/crankshaft.main-clearance, lower-half/crankshaft.main-clearance", ["pump-at"] = "lower-half/pressure-pump" }, "owner"));
        return web;
    }
}
