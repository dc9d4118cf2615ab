using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Web.Pages.Closing;
using Thoubook.Workshop.Closing;
using static Thoubook.Web.Doors.Answers;

namespace Thoubook.Web.Doors;

/// <summary>Closing up: what can be done now, the sheet of a step, what must be true before a space is shut.</summary>
internal static class CloseUpDoor
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/engines/{engine}/close-up", CloseUp);
    }

    private static IResult CloseUp(string engine, Bench bench, HttpContext context, string? all)
    {
        var asked = AskedIn(context.Request.Query);
        return Find(engine, bench, asked, out var sheet, out var missing) ? Page<CloseUpPage>(new { Of = sheet, Asked = asked, All = all is not null }) : missing;
    }

    private static ClosingQuestion AskedIn(IQueryCollection query) => new()
    {
        Attitude = Words.TryRead<Attitude>(query["lies"].ToString(), out var lies) ? lies : null,
        ToolsAway = [.. query["away"].OfType<string>().Where(t => t.Length is > 0 and <= 200).Take(50)],
    };

    private static bool Find(
        string engine,
        Bench bench,
        ClosingQuestion asked,
        [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out CloseUpSheet? sheet,
        [System.Diagnostics.CodeAnalysis.NotNullWhen(false)] out IResult? missing)
    {
        sheet = bench.Find(engine, out var found, out missing) && bench.Workshop.ClosingUp(found.Record.Engine.Name.Text, asked).IsOk(out var closing, out _) ? new CloseUpSheet(found, closing) : null;
        return sheet is not null;
    }
}
