using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Web.Pages.Stripping;
using Thoubook.Web.Sheets;
using Thoubook.Web.Writing;
using Thoubook.Workshop;
using static Thoubook.Web.Doors.Answers;

namespace Thoubook.Web.Doors;

/// <summary>Taking apart, the permission to run, and what an engine is for.</summary>
internal static class StripDoor
{
    /// <summary>More is asked of no removal.</summary>
    private const int MostAsks = 200;

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/engines/{engine}/strip", (string engine, Bench bench, string part = "", string at = "", string? all = null, string? whole = null) => Strip(engine, bench, part.Trim(), at, all is not null, whole is not null));
        routes.MapPost("/engines/{engine}/strip", TakeDown);
        routes.MapPost("/engines/{engine}/strip/as-found", ByHand);
        routes.MapGet("/engines/{engine}/close-up/permission", (string engine, Bench bench) => Permission(engine, bench));
        routes.MapPost("/engines/{engine}/close-up/permission", Permit);
        routes.MapGet("/engines/{engine}/purpose", (string engine, Bench bench, HttpContext context) => PurposeOf(engine, bench, context.Request.Query["for"].ToString()));
        routes.MapPost("/engines/{engine}/purpose", ChangePurpose);
        routes.MapGet("/engines/{engine}/states", States);
    }

    private static IResult Strip(string engine, Bench bench, string part, string at, bool all, bool whole)
    {
        if (!Sheet(engine, bench, whole, out var sheet, out var missing))
            return missing;
        if (part.Length == 0)
            return Page<StripPage>(new { Of = sheet with { At = at }, All = all });
        return bench.Workshop.WhatComesOff(sheet.Name.Text, part, whole ? true : null).IsOk(out var off, out var problems)
            ? Page<StripPage>(new { Of = sheet with { At = at, Wanted = part, Off = off }, All = true })
            : Page<StripPage>(new { Of = sheet with { At = at, Wanted = part }, PartProblems = problems }, StatusCodes.Status404NotFound);
    }

    /// <summary>What was filled in of one removal's form. What is good is written; the rest is shown again with what was wrong.</summary>
    private static async Task<IResult> TakeDown(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        var name = found.Record.Engine.Name;
        var by = posted.By;
        var wrong = new List<(string Of, string What, string Typed, IReadOnlyList<Problem> Problems)>();
        for (var i = 1; i <= MostAsks && posted.Has($"what-{i}"); i++)
        {
            var typed = posted[$"ask-{i}"];
            if (typed.Length == 0 && posted["rest"] != "skip")
                continue;
            var kind = Words.TryRead<AskKind>(posted[$"kind-{i}"], out var read) ? read : AskKind.ByHand;
            var entry = new AsFoundEntry(name.Text, posted[$"what-{i}"], by)
            {
                Id = Guid.TryParse(posted[$"id-{i}"], CultureInfo.InvariantCulture, out var id) ? new FactId(id) : FactId.New(),
                Of = posted[$"of-{i}"],
                Value = kind == AskKind.Figure ? typed : null,
                Tag = kind == AskKind.Tag ? typed : null,
                Words = kind is AskKind.Figure or AskKind.Tag ? null : typed,
                Skipped = typed.Length == 0,
                Confirmed = posted.All($"confirm-{i}").ToHashSet(StringComparer.Ordinal),
            };
            if (!bench.Workshop.TakeAsFound(entry).IsOk(out _, out var problems))
                wrong.Add((entry.Of, entry.What, typed, problems));
        }

        if (wrong.Count == 0)
            return new SeeOther(Where.Strip(name, posted["at"], posted.Has("whole")));
        if (!Sheet(engine, bench, posted.Has("whole"), out var sheet, out missing))
            return missing;
        sheet = sheet with { At = posted["at"] };
        var open = sheet.Opened is { } opened ? sheet.Strip.Open(opened).ToList() : [];
        var placed = wrong.Select(w => (At: open.FindIndex(a => a.Of.ToString() == w.Of && a.What == w.What) + 1, w.Typed, w.Problems)).DistinctBy(w => w.At).ToList();
        return Page<StripPage>(
            new { Of = sheet with { Problems = placed.ToDictionary(p => p.At, p => p.Problems), Typed = placed.ToDictionary(p => p.At, p => p.Typed) } },
            StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> ByHand(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!Sheet(engine, bench, whole: false, out var sheet, out var missing))
            return missing;
        var entry = new AsFoundEntry(sheet.Name.Text, posted["what"], posted.By) { Id = posted.Id, Of = posted.Given("of"), Value = posted.Given("value"), Words = posted.Given("words"), Confirmed = posted.Confirmed };
        return bench.Workshop.TakeAsFound(entry).IsOk(out _, out var problems)
            ? new SeeOther($"{Where.Strip(sheet.Name)}#found")
            : Page<StripPage>(
                new { Of = sheet with { At = posted["at"], Problems = new Dictionary<int, IReadOnlyList<Problem>> { [0] = problems } }, ByHand = new[] { "of", "what", "value", "words" }.ToDictionary(f => f, f => posted[f]) },
                StatusCodes.Status422UnprocessableEntity);
    }

    private static IResult Permission(string engine, Bench bench, IReadOnlyList<Problem>? problems = null)
    {
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        return bench.Workshop.Permission(found.Record.Engine.Name.Text).IsOk(out var permission, out var refused)
            ? Page<PermissionPage>(new { Of = permission, found.Record, Problems = problems ?? [] }, problems is null ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity)
            : Pages.Plain.Answer(StatusCodes.Status422UnprocessableEntity, "Not so", refused[0].Allowed);
    }

    private static async Task<IResult> Permit(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        var name = found.Record.Engine.Name;
        IReadOnlyList<Problem>? problems;
        if (posted.Has("withdraw"))
        {
            problems = bench.Workshop.Withdraw(new WithdrawEntry(name.Text, posted["line"], posted.By) { Id = posted.Id, Why = posted.Given("why") }).IsOk(out _, out var refused) ? null : refused;
        }
        else
        {
            // Each button carries an identifier of its own before the line that it grants.
            var (id, line) = posted["grant"].Split(' ', 2) is [var first, var rest] && Guid.TryParse(first, CultureInfo.InvariantCulture, out var given) ? (new FactId(given), rest) : (FactId.New(), posted["grant"]);
            problems = bench.Workshop.Grant(new PermitEntry(name.Text, line, posted.By) { Id = id, Note = posted.Given("note") }).IsOk(out _, out var refused) ? null : refused;
        }

        return problems is null ? new SeeOther(Where.Permission(name)) : Permission(engine, bench, problems);
    }

    private static IResult PurposeOf(string engine, Bench bench, string purpose, IReadOnlyList<Problem>? problems = null)
    {
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        var to = Words.TryRead<Purpose>(purpose, out var asked) ? asked : found.Record.Engine.Purpose;
        return bench.Workshop.PurposeChange(found.Record.Engine.Name.Text, to).IsOk(out var change, out var refused)
            ? Page<PurposePage>(new { Of = change, found.Record, Problems = problems ?? [] }, problems is null ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity)
            : Pages.Plain.Answer(StatusCodes.Status422UnprocessableEntity, "Not so", refused[0].Allowed);
    }

    private static async Task<IResult> ChangePurpose(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        var name = found.Record.Engine.Name;
        var problems = Words.Read<Purpose>(posted["for"], "for").Then(to => bench.Workshop.ChangePurpose(new PurposeEntry(name.Text, to, posted.By) { Revision = posted.Revision })).IsOk(out _, out var refused) ? null : refused;
        return problems is null ? new SeeOther(Where.Purpose(name)) : PurposeOf(engine, bench, posted["for"], problems);
    }

    private static IResult States(string engine, Bench bench)
    {
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        return bench.Workshop.PartsApart(found.Record.Engine.Name.Text).IsOk(out var apart, out var refused)
            ? Page<StatesPage>(new { Of = apart, found.Record })
            : Pages.Plain.Answer(StatusCodes.Status422UnprocessableEntity, "Not so", refused[0].Allowed);
    }

    private static bool Sheet(string engine, Bench bench, bool whole, [NotNullWhen(true)] out StripSheet? sheet, [NotNullWhen(false)] out IResult? missing)
    {
        sheet = null;
        if (!bench.Find(engine, out var found, out missing))
            return false;
        var name = found.Record.Engine.Name.Text;
        if (bench.Workshop.Strip(name, whole ? true : null).Then(strip => bench.Workshop.FoundAndLeft(name).Then<StripSheet>(report => new StripSheet(found, strip, report) { Whole = whole })).IsOk(out sheet, out var problems))
            return true;
        missing = Pages.Plain.Answer(StatusCodes.Status422UnprocessableEntity, "Not so", problems[0].Allowed);
        return false;
    }
}
