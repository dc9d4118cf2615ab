using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;
using Thoubook.Store;
using Thoubook.Web.Pages;
using Thoubook.Web.Sheets;
using Thoubook.Web.Writing;
using Thoubook.Workshop.Starters;
using static Thoubook.Web.Doors.Answers;

namespace Thoubook.Web.Doors;

/// <summary>The workshop: its engines, gauges, documents and its store.</summary>
internal static class WorkshopDoor
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/workshop", (Bench bench) => Sheet(bench));
        routes.MapGet("/workshop/verify", (Bench bench) => Sheet(bench, bench.Workshop.Verify()));
        routes.MapPost("/workshop/gauges", AddGauge);
        routes.MapGet("/workshop/new-engine", () => Page<NewEnginePage>(new { }));
        routes.MapPost("/workshop/new-engine", MakeEngine);
    }

    private static IResult Sheet(Bench bench, VerifyReport? report = null, IReadOnlyList<Problem>? problems = null, IReadOnlyDictionary<string, string>? typed = null)
    {
        var engines = bench.Workshop.Engines();
        var gauges = new SortedDictionary<GaugeTag, Gauge>();
        var documents = new List<(EngineName, Document)>();
        foreach (var engine in engines)
        {
            if (!bench.Workshop.Engine(engine.Name).IsOk(out var record, out _))
                continue;
            documents.AddRange(record.Documents.Select(d => (engine.Name, d)));
            foreach (var gauge in record.Gauges)
                gauges[gauge.Tag] = gauge;
        }

        return Page<WorkshopPage>(
            new
            {
                Engines = engines,
                Gauges = (IReadOnlyList<Gauge>)[.. gauges.Values],
                Documents = (IReadOnlyList<(EngineName, Document)>)documents,
                bench.Workshop.Folder,
                Report = report,
                GaugeProblems = problems ?? [],
                GaugeTyped = typed ?? new Dictionary<string, string>(),
            },
            problems is null ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> AddGauge(Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        string[] fields = ["tag", "what", "resolution", "uncertainty"];
        var problems = new List<Problem>();
        if (!GaugeTag.TryRead(posted["tag"], out var tag, out var wrong))
            problems.Add(wrong);
        var resolution = Length("resolution");
        var uncertainty = Length("uncertainty");
        if (problems.Count == 0 && bench.Workshop.Engines() is [var first, ..])
        {
            var gauge = new Gauge(tag) { What = posted.Given("what"), Resolution = resolution, Uncertainty = uncertainty };
            if (bench.Workshop.Define(first.Name.Text, gauge, posted.By).IsOk(out _, out var refused))
                return new SeeOther(Where.Workshop);
            problems.AddRange(refused);
        }

        return Sheet(bench, null, problems, fields.ToDictionary(f => f, f => posted[f]));

        Quantity? Length(string field)
        {
            if (posted.Given(field) is null)
                return null;
            if (QuantityReader.Read(posted.Text(field), new ReadingContext { Kind = QuantityKind.Length, Confirmed = posted.Confirmed }).IsOk(out var quantity, out var refused))
                return quantity;
            problems.AddRange(refused.Select(p => p with { Field = field }));
            return null;
        }
    }

    private static async Task<IResult> MakeEngine(Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        var purpose = Words.TryRead<Purpose>(posted["purpose"], out var asked) ? asked : Purpose.StandRun;
        if (!EngineName.TryRead(posted["name"], out var name, out var problem))
            return Again([problem with { Field = "name" }]);
        var engine = new Engine(name, purpose) { Mark = posted.Given("mark"), SerialNumber = posted.Given("serial") };
        if (!bench.Workshop.MakeEngine(engine, posted.By).IsOk(out var made, out var problems))
            return Again(problems);
        return new SeeOther(posted.Has("starter") && Starter.Find(posted["starter"]).IsOk(out var starter, out _) ? Where.Starter(made.Name, starter) : Where.Bench(made.Name));

        IResult Again(IReadOnlyList<Problem> said) =>
            Page<NewEnginePage>(new { Typed = posted["name"], PurposeTyped = purpose.Word(), Problems = said }, StatusCodes.Status422UnprocessableEntity);
    }
}
