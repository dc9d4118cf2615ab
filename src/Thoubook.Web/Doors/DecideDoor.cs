using Thoubook.Appraisal;
using Thoubook.Record;
using Thoubook.Web.Pages;
using Thoubook.Web.Sheets;
using Thoubook.Web.Writing;
using Thoubook.Workshop;
using static Thoubook.Web.Doors.Answers;

namespace Thoubook.Web.Doors;

/// <summary>Parts and pieces: what they are, what was seen on them, what was done to them and what becomes of them.</summary>
internal static class DecideDoor
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/engines/{engine}/parts", (string engine, Bench bench, HttpContext context, string q = "") =>
            bench.Find(engine, out var found, out var missing) ? Page<PartsPage>(new { Engine = found, Asked = q.Trim(), Bare = context.IsFragment() }) : missing);
        routes.MapGet("/engines/{engine}/parts/{**part}", (string engine, string part, Bench bench) =>
            bench.Find(engine, out var found, out var missing) ? PartPage(found, part) : missing);
        routes.MapGet("/engines/{engine}/decide", (string engine, Bench bench) =>
            bench.Find(engine, out var found, out var missing) ? Page<DecidePage>(new { Engine = found }) : missing);
        routes.MapGet("/engines/{engine}/decide/{**piece}", (string engine, string piece, Bench bench) =>
            bench.Find(engine, out var found, out var missing) ? PiecePage(found, piece) : missing);
        routes.MapPost("/engines/{engine}/pieces", Occupy);
        routes.MapPost("/engines/{engine}/liftings", Lift);
        routes.MapPost("/engines/{engine}/findings", Find);
        routes.MapPost("/engines/{engine}/works", Work);
        routes.MapPost("/engines/{engine}/decisions", Decide);
    }

    private static IResult PartPage(EngineAppraisal engine, string part, Func<PartNode, object>? with = null) =>
        PartName.TryRead(part, out var name, out _) && PartTree.Of(engine)[name] is { } node
            ? Page<PartPage>(with?.Invoke(node) ?? new { Engine = engine, Node = node }, with is null ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity)
            : Plain.Answer(StatusCodes.Status404NotFound, "Not here", "This engine has no part of that name.");

    private static IResult PiecePage(EngineAppraisal engine, string piece, Func<Record.Pieces.Piece, object>? with = null) =>
        PieceTag.TryRead(piece, out var tag, out _) && engine.Record.Index.Piece(tag) is { } found
            ? Page<PiecePage>(with?.Invoke(found) ?? new { Engine = engine, Piece = found }, with is null ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity)
            : Plain.Answer(StatusCodes.Status404NotFound, "Not here", "This workshop has no piece with that tag.");

    private static async Task<IResult> Occupy(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        var entry = new PieceEntry(found.Record.Engine.Name.Text, posted["part"], posted["piece"], posted.By) { Id = posted.Id };
        var problems = posted["step"] == "place" ? Refused(bench.Workshop.Place(entry)) : Refused(bench.Workshop.Choose(entry));
        return problems is null
            ? new SeeOther(Where.Back(posted["back"], Where.Parts(found.Record.Engine.Name)))
            : PartPage(found, posted["part"], node => new { Engine = found, Node = node, PieceProblems = problems, PieceTyped = posted["piece"] });
    }

    private static async Task<IResult> Lift(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        var problems = Refused(bench.Workshop.Lift(new LiftEntry(found.Record.Engine.Name.Text, posted["piece"], posted.By) { Id = posted.Id, Why = posted.Given("why") }));
        return problems is null
            ? new SeeOther(Where.Back(posted["back"], Where.Decide(found.Record.Engine.Name)))
            : PiecePage(found, posted["piece"], piece => new { Engine = found, Piece = piece, Problems = problems });
    }

    private static async Task<IResult> Find(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        var problems = Refused(bench.Workshop.AddFinding(new FindingEntry(found.Record.Engine.Name.Text, posted["what"], posted.By)
        {
            Id = posted.Id,
            Piece = posted.Given("piece"),
            Part = posted.Given("part"),
            Outcome = Words.TryRead<FindingOutcome>(posted["outcome"], out var outcome) ? outcome : FindingOutcome.Noted,
        }));
        if (problems is null)
            return new SeeOther(Where.Back(posted["back"], Where.Bench(found.Record.Engine.Name)));
        return posted.Has("part")
            ? PartPage(found, posted["part"], node => new { Engine = found, Node = node, FindingProblems = problems, FindingTyped = posted["what"] })
            : PiecePage(found, posted["piece"], piece => new { Engine = found, Piece = piece, Problems = problems });
    }

    private static async Task<IResult> Work(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        var problems = Refused(bench.Workshop.AddWork(new WorkEntry(found.Record.Engine.Name.Text, posted["piece"], posted["what"], posted.By) { Id = posted.Id, Altered = posted.All("altered"), RepairSize = posted.Given("repairSize") }));
        return problems is null
            ? new SeeOther(Where.Back(posted["back"], Where.Decide(found.Record.Engine.Name)))
            : PiecePage(found, posted["piece"], piece => new { Engine = found, Piece = piece, WorkProblems = problems });
    }

    private static async Task<IResult> Decide(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        var problems = Words.TryRead<DecisionChoice>(posted["choice"], out var choice)
            ? Refused(bench.Workshop.Decide(new DecisionEntry(found.Record.Engine.Name.Text, choice, posted.By)
            {
                Id = posted.Id,
                Piece = posted.Given("piece"),
                Figure = posted.Given("figure"),
                Basis = Words.TryRead<DecisionBasis>(posted["basis"], out var basis) ? basis : DecisionBasis.Measured,
                Why = posted.Given("why"),
            }))
            : [new Problem("decision", "choice", "none", $"A decision is one of {string.Join(", ", Words.All<DecisionChoice>())}.", "Choose one.")];
        if (problems is null)
            return new SeeOther(Where.Back(posted["back"], Where.Decide(found.Record.Engine.Name)));
        if (posted.Given("figure") is { } figure && bench.Find(engine, figure, out _, out var of, out _))
            return Page<FigurePage>(new { Engine = found, Figure = of, AcceptProblems = problems }, StatusCodes.Status422UnprocessableEntity);
        return PiecePage(found, posted["piece"], piece => new { Engine = found, Piece = piece, Problems = problems, Choice = posted["choice"], Basis = posted["basis"], Why = posted["why"] });
    }

    /// <summary>Why it was not taken; null where it was.</summary>
    private static IReadOnlyList<Problem>? Refused<T>(Outcome<T> outcome) => outcome.IsOk(out _, out var problems) ? null : problems;
}
