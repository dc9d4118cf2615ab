using System.Diagnostics.CodeAnalysis;
using Thoubook.Record;
using Thoubook.Web.Pages;
using Thoubook.Web.Pages.Starters;
using Thoubook.Web.Sheets;
using Thoubook.Web.Writing;
using Thoubook.Workshop.Starters;
using static Thoubook.Web.Doors.Answers;

namespace Thoubook.Web.Doors;

/// <summary>Sub-assemblies that come drawn up: which, what they ask, what they would add, and adding it.</summary>
internal static class StarterDoor
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/engines/{engine}/starters", (string engine, Bench bench) => Record(engine, bench, out var record, out var missing) ? Page<StartersPage>(new { Engine = record }) : missing);
        routes.MapGet("/engines/{engine}/starters/{starter}", (string engine, string starter, Bench bench) =>
            Find(engine, starter, bench, out var record, out var found, out var missing) ? Page<StarterPage>(new { Engine = record, Starter = found }) : missing);
        routes.MapPost("/engines/{engine}/starters/{starter}", Start);
    }

    private static async Task<IResult> Start(string engine, string starter, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!Find(engine, starter, bench, out var record, out var found, out var missing))
            return missing;
        var answers = found.Questions.Where(q => posted.Has(q.Key)).ToDictionary(q => q.Key, q => posted[q.Key]);
        foreach (var confirmed in posted.Confirmed)
        {
            if (confirmed.IndexOf('=') is var equals and > 0)
                answers[confirmed[..equals]] = confirmed[(equals + 1)..];
        }

        // A question that is answered by its button is seen first.
        IReadOnlyDictionary<string, string> given = answers;
        IReadOnlyList<Problem> problems;
        if (posted["step"] == "add")
        {
            if (bench.Workshop.AddStarter(engine, found.Key, answers, posted.By).IsOk(out _, out problems))
                return new SeeOther(Where.CloseUp(record.Engine.Name));
        }
        else if (bench.Workshop.SeeStarter(engine, found.Key, answers).IsOk(out var started, out problems))
        {
            return Page<StarterPage>(new { Engine = record, Starter = found, Given = given, Started = started });
        }

        return Page<StarterPage>(new { Engine = record, Starter = found, Given = given, Problems = problems }, StatusCodes.Status422UnprocessableEntity);
    }

    private static bool Find(string engine, string starter, Bench bench, [NotNullWhen(true)] out EngineRecord? record, [NotNullWhen(true)] out Starter? found, [NotNullWhen(false)] out IResult? missing)
    {
        found = null;
        if (!Record(engine, bench, out record, out missing))
            return false;
        if (Starter.Find(starter).IsOk(out found, out var problems))
            return true;
        missing = Plain.Answer(StatusCodes.Status404NotFound, "Not here", string.Join(' ', problems.Select(p => $"{p.Allowed} {p.DoThis}")));
        return false;
    }

    private static bool Record(string engine, Bench bench, [NotNullWhen(true)] out EngineRecord? record, [NotNullWhen(false)] out IResult? missing)
    {
        record = bench.Find(engine, out var found, out missing) ? found.Record : null;
        return record is not null;
    }
}
