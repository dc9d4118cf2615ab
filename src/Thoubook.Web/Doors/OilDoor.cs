using Thoubook.Record;
using Thoubook.Web.Pages;
using Thoubook.Web.Pages.Oil;
using Thoubook.Web.Sheets;
using Thoubook.Web.Writing;
using Thoubook.Workshop;
using static Thoubook.Web.Doors.Answers;

namespace Thoubook.Web.Doors;

/// <summary>Oil: what the system comes to, trials, the flow test.</summary>
internal static class OilDoor
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/engines/{engine}/oil", Oil);
        routes.MapGet("/engines/{engine}/oil/trial", Trial);
        routes.MapPost("/engines/{engine}/oil/settled", Settle);
        routes.MapGet("/engines/{engine}/oil/flow-test", (string engine, Bench bench) => Sheet(engine, bench, "", out var sheet, out _, out var missing) ? FlowTest(sheet) : missing);
        routes.MapPost("/engines/{engine}/oil/flow-test", WriteFlowTest);
        routes.MapPost("/engines/{engine}/oil/calibrations", Calibrate);
    }

    private static IResult Oil(string engine, Bench bench, HttpContext context, string at = "")
    {
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        if (found.Record.Circuit is null)
            return Page<NoCircuitPage>(new { Engine = found });
        if (!Sheet(engine, bench, at, out var sheet, out var why, out missing))
            return why.Count > 0 ? CircuitDoor.Circuit(found, null, why) : missing;
        var tried = context.Request.Query.ContainsKey("oil") ? OilTried.Of(sheet, context.Request.Query) : null;
        return Page<OilPage>(new { Of = sheet, Tried = tried });
    }

    /// <summary>As a slide moves. Nothing is written.</summary>
    private static IResult Trial(string engine, Bench bench, HttpContext context) => Sheet(engine, bench, "", out var sheet, out _, out var missing)
        ? Page<TriedResult>(new { Of = sheet, Tried = OilTried.Of(sheet, context.Request.Query) })
        : missing;

    private static async Task<IResult> Settle(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        if (bench.Workshop.SettleOil(found.Record.Engine.Name.Text, posted["state"], posted.Text("temperature"), posted.By).IsOk(out _, out var problems))
            return new SeeOther($"{Where.Oil(found.Record.Engine.Name)}#gauges");
        return Sheet(engine, bench, "", out var sheet, out _, out missing)
            ? Page<OilPage>(new { Of = sheet, SettleProblems = problems, SettleTyped = posted.Text("temperature") }, StatusCodes.Status422UnprocessableEntity)
            : missing;
    }

    private static IResult FlowTest(OilSheet sheet, FlowTestForm? form = null) => Page<FlowTestPage>(
        sheet.System.FlowTestExpected().IsOk(out var expected, out var why)
            ? new { Of = sheet, Expected = expected, Form = form ?? new() }
            : new { Of = sheet, Why = why, Form = form ?? new() },
        form is null ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> WriteFlowTest(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!Sheet(engine, bench, "", out var sheet, out _, out var missing))
            return missing;
        var names = sheet.Circuit.Elements.Select(e => e.Name.Text).ToList();
        var entry = new FlowTestEntry(sheet.Name.Text, posted.Text("pressure"), posted.Text("temperature"), posted.By)
        {
            Id = posted.Id,
            FedAt = posted.Given("fedAt"),
            Flow = posted.Given("flow"),
            Volume = posted.Given("volume"),
            Time = posted.Given("time"),
            Note = posted.Given("note"),
            Caught = [.. names.Where(n => posted.Has($"caught-{n}")).Select(n => (n, posted.Text($"caught-{n}")))],
            Confirmed = posted.Confirmed,
        };
        if (bench.Workshop.AddFlowTest(entry).IsOk(out _, out var problems))
            return new SeeOther($"{Where.FlowTest(sheet.Name)}#tests");
        string[] fields = ["pressure", "temperature", "volume", "time", "flow", "fedAt", "note", .. names.Select(n => $"caught-{n}")];
        return FlowTest(sheet, new() { Id = posted.Id, Problems = problems, Given = fields.Where(posted.Has).ToDictionary(f => f, posted.Text) });
    }

    private static async Task<IResult> Calibrate(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!Sheet(engine, bench, "", out var sheet, out _, out var missing))
            return missing;
        if (!Guid.TryParse(posted["of"], out var id))
            return Plain.Answer(StatusCodes.Status400BadRequest, "Nothing was written", "The form did not say which flow test is meant.");
        return bench.Workshop.Calibrate(new CalibrationEntry(sheet.Name.Text, new FactId(id), posted.By) { Id = posted.Id, Why = posted.Given("why") }).IsOk(out _, out var problems)
            ? new SeeOther($"{Where.FlowTest(sheet.Name)}#tests")
            : FlowTest(sheet, new() { Problems = problems });
    }

    /// <summary>The oil sheet of an engine; or why it cannot be worked out; or that there is no such engine.</summary>
    private static bool Sheet(
        string engine,
        Bench bench,
        string at,
        [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out OilSheet? sheet,
        out IReadOnlyList<Problem> why,
        [System.Diagnostics.CodeAnalysis.NotNullWhen(false)] out IResult? missing)
    {
        (sheet, why) = (null, []);
        if (!bench.Find(engine, out var found, out missing))
            return false;
        if (bench.Oil(found).IsOk(out var oil, out var problems))
        {
            sheet = new OilSheet(found, oil, at);
            return true;
        }

        why = problems;
        missing = Plain.Answer(StatusCodes.Status404NotFound, "Not worked out", string.Join(' ', problems.Select(p => $"{p.Allowed} {p.DoThis}")));
        return false;
    }
}
