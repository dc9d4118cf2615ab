using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Web.Pages;
using Thoubook.Web.Sheets;
using static Thoubook.Web.Doors.Answers;

namespace Thoubook.Web.Doors;

/// <summary>The bench: the engines, and where one of them stands.</summary>
internal static class BenchDoor
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/", (Bench bench) => bench.Workshop.Engines() is [var only] ? Results.LocalRedirect(Where.Bench(only.Name)) : Engines(bench));
        routes.MapGet("/engines", Engines);
        routes.MapGet("/engines/{engine}", (string engine, Bench bench, string? all) => bench.Find(engine, out var found, out var missing)
            ? Page<BenchPage>(new { Engine = found, All = all is not null, Several = bench.Workshop.Engines().Count > 1, Leaving = Leaving(bench, found.Record) })
            : missing);
    }

    private static LeavingNote? Leaving(Bench bench, EngineRecord record) =>
        record.Steps.Count > 0 && bench.Workshop.LeavingNote(record.Engine.Name.Text).IsOk(out var note, out _) ? note : null;

    private static IResult Engines(Bench bench) => Page<EnginesPage>(new
    {
        Engines = (IReadOnlyList<(EngineName, Purpose, bool)>)[.. bench.Workshop.Engines().Select(e => (e.Name, e.Purpose, e.Invented))],
    });
}
