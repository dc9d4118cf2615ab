using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Web.Pages.Closing;
using Thoubook.Web.Sheets;
using Thoubook.Web.Writing;
using Thoubook.Workshop;

namespace Thoubook.Web.Doors;

/// <summary>What is written while an engine is closed up. What is not taken comes back on the sheet that it was written on, with what was typed.</summary>
internal static class ClosingFactsDoor
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/engines/{engine}/signatures", (string engine, Bench bench, HttpContext context) => Write(engine, bench, context, "sign", (workshop, name, posted) =>
            Refused(workshop.Sign(new SignEntry(name, posted["step"], posted.By)
            {
                Id = posted.Id,
                SecondLook = posted.Has("second"),
                Photographed = posted.Has("photographed"),
                Placing = posted.Has("placing"),
                Note = posted.Given("note"),
            }))));
        routes.MapPost("/engines/{engine}/joint-states", (string engine, Bench bench, HttpContext context) => Write(engine, bench, context, "joint", (workshop, name, posted) =>
            Words.Read<JointStage>(posted["stage"], "stage").IsOk(out var stage, out var problems)
                ? Refused(workshop.MakeJoint(new JointEntry(name, posted["joint"], stage, posted.By) { Id = posted.Id, Applied = posted.Has("applied") ? posted.Text("applied") : null, Note = posted.Given("note"), Confirmed = posted.Confirmed }))
                : problems));
        routes.MapPost("/engines/{engine}/acceptances", (string engine, Bench bench, HttpContext context) => Write(engine, bench, context, "hold", (workshop, name, posted) =>
            Refused(workshop.Accept(new AcceptEntry(name, posted["step"], posted["hold"], posted.By) { Id = posted.Id, Why = posted.Given("why") }))));
        routes.MapPost("/engines/{engine}/departures", (string engine, Bench bench, HttpContext context) => Write(engine, bench, context, "depart", Depart));
        routes.MapPost("/engines/{engine}/debts", (string engine, Bench bench, HttpContext context) => Write(engine, bench, context, "owe", (workshop, name, posted) =>
            Words.Read<Deadline>(posted["deadline"], "deadline").IsOk(out var deadline, out var problems)
                ? Refused(workshop.Owe(new OwedEntry(name, posted["what"], deadline, posted.By) { Id = posted.Id, Item = posted.Given("item"), Why = posted.Given("why") }))
                : problems));
        routes.MapPost("/engines/{engine}/settlements", (string engine, Bench bench, HttpContext context) => Write(engine, bench, context, "settle", (workshop, name, posted) =>
            Of(posted) is { } of ? Refused(workshop.Settle(new SettleEntry(name, of, posted.By) { Id = posted.Id, How = posted.Given("how") })) : [NothingMeant]));
        routes.MapPost("/engines/{engine}/counts", (string engine, Bench bench, HttpContext context) => Write(engine, bench, context, "count", (workshop, name, posted) =>
            Words.Read<CountedWay>(posted["way"], "way").IsOk(out var way, out var problems)
                ? Refused(workshop.Count(new CountEntry(name, posted["what"], posted.Text("number"), way, posted.By) { Id = posted.Id, Space = posted.Given("space"), Note = posted.Given("note") }))
                : problems));
        routes.MapPost("/engines/{engine}/undoings", (string engine, Bench bench, HttpContext context) => Write(engine, bench, context, "undo", (workshop, name, posted) =>
            Of(posted) is { } of ? Refused(workshop.Undo(new UndoEntry(name, posted.By) { Id = posted.Id, Of = of, Why = posted.Given("why") })) : [NothingMeant]));
    }

    private static Problem NothingMeant => new("nothing-meant", "of", "nothing", "The form did not say what is meant.", "Open the page again and choose it there.");

    private static IReadOnlyList<Problem> Depart(OpenWorkshop workshop, string name, Posted posted)
    {
        var kind = Words.TryRead<DepartureKind>(posted["kind"], out var said) ? said : DepartureKind.Other;
        return Refused(workshop.Depart(new DepartureEntry(name, posted["what"], posted["why"], posted.By)
        {
            Id = posted.Id,
            Kind = kind,
            Piece = posted.Given("piece"),
            Joint = posted.Given("joint"),
            Item = posted.Given("item"),
            Evidence = posted.Given("evidence"),
            Purposes = [.. posted.All("purposes").Select(p => Words.TryRead<Purpose>(p, out var purpose) ? purpose : (Purpose?)null).OfType<Purpose>()],
            Undoing = posted.Given("undoing"),
        }));
    }

    private static async Task<IResult> Write(string engine, Bench bench, HttpContext context, string form, Func<OpenWorkshop, string, Posted, IReadOnlyList<Problem>> write)
    {
        var posted = await Posted.Read(context);
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        var name = found.Record.Engine.Name;
        var problems = write(bench.Workshop, name.Text, posted);
        if (problems.Count == 0)
            return new SeeOther(Where.Back(posted["back"], Where.CloseUp(name)));
        if (!CloseUpDoor.Find(engine, bench, new(), out var sheet, out missing))
            return missing;
        return CloseUpDoor.Sheet(sheet, posted["sheet"], new ClosingForm
        {
            Sent = form switch { "joint" => $"joint {posted["joint"]}", "hold" => $"hold {posted["hold"]}", "settle" => $"settle {posted["of"]}", _ => form },
            Id = posted.Id,
            Typed = posted.Fields.ToDictionary(f => f, f => string.Join(", ", posted.All(f))),
            Problems = problems,
            Way = form switch { "depart" => MissingWay.Depart, "owe" => MissingWay.Owe, _ => null },
            Item = WorkItem.TryRead(posted["item"], out var item, out _) ? item : null,
        });
    }

    private static FactId? Of(Posted posted) => Guid.TryParse(posted["of"], out var of) ? new FactId(of) : null;

    private static IReadOnlyList<Problem> Refused<T>(Outcome<T> outcome) => outcome.IsOk(out _, out var problems) ? [] : problems;
}
