using Thoubook.Appraisal;
using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;
using Thoubook.Web.Pages;
using Thoubook.Web.Sheets;
using Thoubook.Web.Writing;
using Thoubook.Workshop;
using static Thoubook.Web.Doors.Answers;

namespace Thoubook.Web.Doors;

/// <summary>Measure: the list of figures, one figure, and writing and striking out readings.</summary>
internal static class MeasureDoor
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/engines/{engine}/measure", Figures);
        routes.MapGet("/engines/{engine}/measure/{**figure}", Figure);
        routes.MapGet("/engines/{engine}/read-back", ReadBack);
        routes.MapGet("/engines/{engine}/draws", Draws);
        routes.MapPost("/engines/{engine}/readings", Write);
        routes.MapPost("/engines/{engine}/strike-outs", StrikeOut);
        routes.MapPost("/engines/{engine}/limits", WriteLimits);
    }

    private static IResult Figures(string engine, Bench bench, HttpContext context, string q = "", string verdict = "", string kind = "", string page = "") =>
        bench.Find(engine, out var found, out var missing)
            ? Page<FiguresPage>(new { Engine = found, Asked = q.Trim(), VerdictAsked = verdict, Kind = kind is "fits" or "dimensions" ? kind : "", Page = int.TryParse(page, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var at) ? Math.Min(at, 1000) : 0, Bare = context.IsFragment() })
            : missing;

    private static IResult Figure(string engine, string figure, Bench bench, HttpContext context, string written = "", string held = "", string gauge = "", string draws = "")
    {
        if (!bench.Find(engine, figure, out var found, out var of, out var missing))
            return missing;
        var fact = Guid.TryParse(written, out var id) ? found.Record.Index.Fact(new FactId(id)) : null;
        return Page<FigurePage>(new { Engine = found, Figure = of, Bare = context.IsFragment(), Entry = new ReadingForm { Written = fact, Held = held, Gauge = gauge }, Draws = draws.Length > 0 ? Drawn(of) : null });
    }

    /// <summary>The fit by random draws, on request.</summary>
    private static IResult Draws(string engine, string figure, Bench bench) => bench.Find(engine, figure, out var found, out var of, out var missing)
        ? Page<FitDrawsResult>(new { Engine = found.Record.Engine.Name, Figure = of.Figure.Name, Draws = Drawn(of), Letters = Drawings.Lettering.Of(of, found.Record), CanDraw = true })
        : missing;

    private static FitDraws? Drawn(FigureAppraisal figure) => figure is FitAppraisal { Estimate: not null, Least: not null, Greatest: not null } fit ? FitDraws.Of(fit) : null;

    /// <summary>What an entry would be taken for, as it is typed. Nothing is written.</summary>
    private static IResult ReadBack(string engine, string figure, Bench bench, string value = "")
    {
        if (value.Trim().Length == 0)
            return Page<ReadBack>(new { Hint = "" });
        return bench.Workshop.Understand(engine, figure, value, new HashSet<string>(StringComparer.Ordinal)).IsOk(out var quantity, out var problems)
            ? Page<ReadBack>(new { Understood = quantity.Understood })
            : Page<ReadBack>(new { Problems = problems });
    }

    private static async Task<IResult> Write(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        var figure = posted["figure"];
        if (!bench.Find(engine, figure, out var found, out var of, out var missing))
            return missing;
        var form = new ReadingForm
        {
            Id = posted.Id,
            Value = posted.Text("value"),
            Place = posted.Given("placeElse") ?? posted["place"],
            Gauge = posted["gauge"],
            Temperature = posted.Text("temperature"),
            Piece = posted["piece"],
            Method = posted["method"],
            Note = posted["note"],
            By = posted["by"],
            Held = posted["held"],
            Confirmed = posted.All("confirm"),
        };
        if (posted["step"] == "read")
        {
            var read = bench.Workshop.Understand(found.Record.Engine.Name.Text, figure, form.Value, posted.Confirmed).IsOk(out var quantity, out var asked);
            return Again(form with { ReadBack = read ? quantity.Understood : null, Problems = asked }, read ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity);
        }

        var outcome = bench.Workshop.AddReading(new ReadingEntry(found.Record.Engine.Name.Text, figure, form.Value, posted.By)
        {
            Id = form.Id,
            Place = form.Place,
            Gauge = form.Gauge,
            Temperature = form.Temperature,
            Piece = form.Piece,
            Method = Words.TryRead<CheckMethod>(form.Method, out var method) ? method : CheckMethod.Other,
            Note = form.Note,
            Confirmed = posted.Confirmed,
        });
        if (!outcome.IsOk(out var recorded, out var problems))
            return Again(form with { Problems = problems }, StatusCodes.Status422UnprocessableEntity);
        if (!context.IsFragment())
            return new SeeOther($"{Where.Figure(found.Record.Engine.Name, of.Figure.Name)}?written={recorded.Fact.Id}&held={Uri.EscapeDataString(form.Held)}&gauge={Uri.EscapeDataString(form.Gauge)}#entry");

        return bench.Find(engine, figure, out var after, out var now, out missing)
            ? Page<FigurePage>(new { Engine = after, Figure = now, Bare = true, Entry = new ReadingForm { Written = recorded.Fact, Held = form.Held, Gauge = form.Gauge } })
            : missing;

        IResult Again(ReadingForm shown, int status) => Page<FigurePage>(new { Engine = found, Figure = of, Bare = context.IsFragment(), Entry = shown }, status);
    }

    private static async Task<IResult> StrikeOut(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!bench.Find(engine, posted["figure"], out var found, out var of, out var missing))
            return missing;
        if (!Guid.TryParse(posted["of"], out var id))
            return Plain.Answer(StatusCodes.Status400BadRequest, "Nothing was written", "The form did not say which reading is meant.");
        return bench.Workshop.StrikeOut(new StrikeOutEntry(found.Record.Engine.Name.Text, new FactId(id), posted["why"], posted.By) { Id = posted.Id }).IsOk(out _, out var problems)
            ? new SeeOther(Where.Figure(found.Record.Engine.Name, of.Figure.Name))
            : Page<FigurePage>(new { Engine = found, Figure = of, Bare = context.IsFragment(), Striking = (FactId?)new FactId(id), StrikeProblems = problems }, StatusCodes.Status422UnprocessableEntity);
    }

    /// <summary>Limits typed by hand for a figure that has none yet; each names its unit.</summary>
    private static async Task<IResult> WriteLimits(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!bench.Find(engine, posted["figure"], out var found, out var of, out var missing))
            return missing;
        var reading = ReadingContexts.ForLimitsOf(of.Figure) with { Confirmed = posted.Confirmed };
        var problems = new List<Problem>();
        var limits = new Limits { NewLeast = End("newLeast"), NewGreatest = End("newGreatest"), WornLeast = End("wornLeast"), WornGreatest = End("wornGreatest") };
        if (problems.Count == 0 && limits.IsEmpty)
            problems.Add(new Problem("no-limits", "newLeast", "nothing", "At least one limit, with its unit.", "Type what the book gives."));
        if (problems.Count == 0)
        {
            IReadOnlyList<LimitSet> sets = [.. of.Figure.LimitSets, new LimitSet(limits)];
            var name = found.Record.Engine.Name.Text;
            var written = of.Figure switch
            {
                Dimension dimension => bench.Workshop.Define(name, dimension with { LimitSets = sets, Revision = posted.Revision }, posted.By).IsOk(out _, out var refused) ? [] : refused,
                Fit fit => bench.Workshop.Define(name, fit with { LimitSets = sets, Revision = posted.Revision }, posted.By).IsOk(out _, out var refused) ? [] : refused,
                _ => [],
            };
            if (written.Count == 0)
                return new SeeOther(Where.Figure(found.Record.Engine.Name, of.Figure.Name));
            problems.AddRange(written);
        }

        var typed = LimitsTable.Ends.ToDictionary(e => e.Field, e => posted.Text(e.Field));
        return Page<FigurePage>(new { Engine = found, Figure = of, Bare = context.IsFragment(), LimitProblems = (IReadOnlyList<Problem>)problems, LimitsTyped = (IReadOnlyDictionary<string, string>)typed }, StatusCodes.Status422UnprocessableEntity);

        Quantity? End(string field)
        {
            if (posted.Given(field) is null)
                return null;
            if (QuantityReader.Read(posted.Text(field), reading).IsOk(out var quantity, out var wrong))
                return quantity;
            problems.AddRange(wrong.Select(p => p with { Field = field }));
            return null;
        }
    }
}
