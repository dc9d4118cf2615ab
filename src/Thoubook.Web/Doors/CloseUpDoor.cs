using System.Diagnostics.CodeAnalysis;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Web.Pages;
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
        routes.MapGet("/engines/{engine}/close-up/sheets", Sheets);
        routes.MapGet("/engines/{engine}/close-up/steps/{**step}", (string engine, string step, Bench bench, HttpContext context) => Sheet(engine, bench, $"step {step}", context.Request.Query));
        routes.MapGet("/engines/{engine}/close-up/spaces/{**space}", (string engine, string space, Bench bench, HttpContext context) => Sheet(engine, bench, $"space {space}", context.Request.Query));
        routes.MapGet("/engines/{engine}/departures", (string engine, Bench bench, HttpContext context) => Sheet(engine, bench, "departures", context.Request.Query));
        ClosingFactsDoor.Map(routes);
    }

    public static bool Find(string engine, Bench bench, ClosingQuestion asked, [NotNullWhen(true)] out CloseUpSheet? sheet, [NotNullWhen(false)] out IResult? missing)
    {
        sheet = bench.Find(engine, out var found, out missing) && bench.CloseUp(found, asked).IsOk(out var closing, out _) ? closing : null;
        return sheet is not null;
    }

    /// <summary>The sheet that a form stands on: <c>step gear-in</c>, <c>space crankcase</c> or <c>departures</c>.</summary>
    public static IResult Sheet(CloseUpSheet of, string name, ClosingForm form, bool all = false)
    {
        var status = form.Problems.Count > 0 ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status200OK;
        var (kind, rest) = name.Split(' ', 2) is [var first, var second] ? (first, second) : (name, "");
        if (kind == "step" && StepName.TryRead(rest, out var step, out _) && of.Plan.Find(step) is { } found)
            return Page<StepPage>(new { Of = of, Step = found, Form = form, All = all }, status);
        if (kind == "space" && SpaceName.TryRead(rest, out var space, out _) && of.Plan.Spaces.Find(space) is { } around)
            return Page<SpacePage>(new { Of = of, Space = around, Form = form, All = all }, status);
        return kind == "departures"
            ? Page<DeparturesPage>(new { Of = of, Form = form }, status)
            : Plain.Answer(StatusCodes.Status404NotFound, "Not here", "The plan of this engine has no step and no space of that name.");
    }

    private static IResult Sheet(string engine, Bench bench, string name, IQueryCollection query) =>
        Find(engine, bench, new(), out var sheet, out var missing) ? Sheet(sheet, name, FormIn(query), query.ContainsKey("all")) : missing;

    private static IResult CloseUp(string engine, Bench bench, HttpContext context, string? all)
    {
        var query = context.Request.Query;
        var asked = new ClosingQuestion
        {
            Attitude = Words.TryRead<Attitude>(query["lies"].ToString(), out var lies) ? lies : null,
            ToolsAway = [.. query["away"].OfType<string>().Where(t => t.Length is > 0 and <= 200).Take(50)],
        };
        return Find(engine, bench, asked, out var sheet, out var missing) ? Page<CloseUpPage>(new { Of = sheet, Asked = asked, All = all is not null }) : missing;
    }

    private static IResult Sheets(string engine, Bench bench, HttpContext context)
    {
        if (!Find(engine, bench, new(), out var sheet, out var missing))
            return missing;
        var named = context.Request.Query["space"].OfType<string>().Select(s => SpaceName.TryRead(s, out var name, out _) ? sheet.Plan.Spaces.Find(name) : null).OfType<Space>().ToList();
        return Page<BenchSheetsPage>(new { Of = sheet, Spaces = (IReadOnlyList<Space>)named, Day = named.Count == 0 || context.Request.Query.ContainsKey("day") });
    }

    /// <summary>Which way was chosen for which missing thing.</summary>
    private static ClosingForm FormIn(IQueryCollection query) =>
        Words.TryRead<MissingWay>(query["way"].ToString(), out var way) && WorkItem.TryRead(query["item"].ToString(), out var item, out _)
            ? new() { Way = way, Item = item }
            : ClosingForm.None;
}
