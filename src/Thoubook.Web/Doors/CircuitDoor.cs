using Thoubook.Appraisal;
using Thoubook.Appraisal.Oil;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;
using Thoubook.Web.Pages;
using Thoubook.Web.Pages.Oil;
using Thoubook.Web.Sheets;
using Thoubook.Web.Writing;
using Thoubook.Workshop;
using Thoubook.Workshop.Starters;
using static Thoubook.Web.Doors.Answers;

namespace Thoubook.Web.Doors;

/// <summary>The circuit as a definition: begun from a dozen questions, corrected element by element. And the cards of its pumps.</summary>
internal static class CircuitDoor
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/engines/{engine}/oil/start", (string engine, Bench bench) => bench.Find(engine, out var found, out var missing) ? Page<StartPage>(new { Engine = found }) : missing);
        routes.MapPost("/engines/{engine}/oil/start", Start);
        routes.MapGet("/engines/{engine}/oil/circuit", (string engine, Bench bench) => Find(engine, bench, out var found, out var missing) ? Circuit(found, bench) : missing);
        routes.MapGet("/engines/{engine}/oil/circuit/{element}", Element);
        routes.MapPost("/engines/{engine}/oil/circuit", Write);
        routes.MapPost("/engines/{engine}/oil/removals", Remove);
        routes.MapGet("/engines/{engine}/oil/pumps/{pump}", PumpCard);
    }

    /// <summary>The circuit as it is drawn and listed, with why it has no answer where it has none.</summary>
    public static IResult Circuit(EngineAppraisal engine, StateAnswer? shown, IReadOnlyList<Problem> why) => Page<CircuitPage>(new { Engine = engine, Shown = shown, Why = why });

    private static IResult Circuit(EngineAppraisal engine, Bench bench) =>
        bench.Oil(engine).Then(found => found.States[0]).IsOk(out var shown, out var why)
            ? Circuit(engine, shown, [])
            : Circuit(engine, null, why);

    private static async Task<IResult> Start(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        var answers = CircuitStarter.Questions.Where(q => posted.Has(q.Key)).ToDictionary(q => q.Key, q => posted[q.Key]);
        IReadOnlyList<Problem> problems;
        if (posted["step"] == "see")
        {
            if (CircuitStarter.Make(found.Record, answers).IsOk(out var started, out problems))
                return Page<StartPage>(new { Engine = found, Given = (IReadOnlyDictionary<string, string>)answers, Started = started });
        }
        else if (bench.Workshop.StartCircuit(found.Record.Engine.Name.Text, answers, posted.By).IsOk(out _, out problems))
        {
            return new SeeOther(Where.Circuit(found.Record.Engine.Name));
        }

        return Page<StartPage>(new { Engine = found, Given = (IReadOnlyDictionary<string, string>)answers, Problems = problems }, StatusCodes.Status422UnprocessableEntity);
    }

    private static IResult Element(string engine, string element, Bench bench, string kind = "")
    {
        if (!Find(engine, bench, out var found, out var missing))
            return missing;
        ElementForm form;
        if (element == "new")
            form = new() { IsNew = true };
        else if (ElementName.TryRead(element, out var name, out _) && found.Record.Circuit!.Element(name) is { } known)
            form = ElementForm.Of(known, found.Record);
        else
            return Plain.Answer(StatusCodes.Status404NotFound, "Not here", "The circuit has no element of that name.");
        return Page<ElementPage>(new { Engine = found, Form = Words.TryRead<ElementKind>(kind, out var other) ? form with { Kind = other } : form });
    }

    private static async Task<IResult> Write(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!Find(engine, bench, out var found, out var missing))
            return missing;
        if (!Words.TryRead<ElementKind>(posted["kind"], out var kind))
            return Plain.Answer(StatusCodes.Status400BadRequest, "Nothing was written", "The form did not say what kind of element is meant.");
        var sizes = ElementKinds.Of(kind).Keys.Select(k => (k.Name, Text: posted.Text(ElementForm.SizeField + k.Name))).Where(s => s.Text.Trim().Length > 0).ToList();
        var outcome = bench.Workshop.EditElement(new ElementEntry(found.Record.Engine.Name.Text, posted["element"], posted.By)
        {
            Revision = posted.Revision,
            Kind = posted["kind"],
            From = posted["from"],
            To = posted["to"],
            Vent = posted.Given("vent"),
            Part = posted.Given("part"),
            Label = posted.Given("label"),
            Note = posted.Given("note"),
            Blanked = posted.Has("blanked"),
            Values = sizes,
            Confirmed = posted.Confirmed,
        });
        if (outcome.IsOk(out _, out var problems))
            return new SeeOther($"{Where.Circuit(found.Record.Engine.Name)}#elements");

        // Both values stand on the page; whoever sends it again has seen what is there now.
        Find(engine, bench, out found, out _);
        var known = ElementName.TryRead(posted["element"], out var name, out _) ? found!.Record.Circuit?.Element(name) : null;
        var isNew = posted.Revision == 0;
        return Page<ElementPage>(
            new
            {
                Engine = found!,
                Form = new ElementForm
                {
                    Name = posted["element"],
                    IsNew = isNew,
                    Revision = isNew ? 0 : known?.Revision ?? 0,
                    Kind = kind,
                    From = posted["from"],
                    To = posted["to"],
                    Vent = posted["vent"],
                    Part = posted["part"],
                    Label = posted["label"],
                    Note = posted["note"],
                    Blanked = posted.Has("blanked"),
                    Sizes = sizes.ToDictionary(s => s.Name, s => s.Text),
                    Problems = problems,
                },
            },
            StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> Remove(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!Find(engine, bench, out var found, out var missing))
            return missing;
        if (bench.Workshop.RemoveElement(found.Record.Engine.Name.Text, posted["element"], posted.Revision, posted.By).IsOk(out _, out var problems))
            return new SeeOther($"{Where.Circuit(found.Record.Engine.Name)}#elements");
        return Find(engine, bench, out found, out missing) && ElementName.TryRead(posted["element"], out var name, out _) && found.Record.Circuit!.Element(name) is { } known
            ? Page<ElementPage>(new { Engine = found, Form = ElementForm.Of(known, found.Record) with { Problems = problems } }, StatusCodes.Status422UnprocessableEntity)
            : missing ?? Plain.Answer(StatusCodes.Status404NotFound, "Not here", "The circuit has no element of that name.");
    }

    private static IResult PumpCard(string engine, string pump, Bench bench, HttpContext context)
    {
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        var given = PumpCardPage.Amounts.Where(a => context.Request.Query[a.Key].ToString().Trim().Length > 0).ToDictionary(a => a.Key, a => context.Request.Query[a.Key].ToString().Trim());
        var problems = new List<Problem>();
        double? Amount(string key)
        {
            if (!given.TryGetValue(key, out var text))
                return null;
            if (QuantityReader.Read(text, ReadingContext.None with { Kind = QuantityKind.Length }).IsOk(out var amount, out var wrong) && amount.Si > 0)
                return amount.Si;
            problems.AddRange(wrong.Count > 0 ? wrong.Select(p => p with { Field = key }) : [new Problem("pump-trial", key, text, "An amount above nil.", "Leave it out for the usual one.")]);
            return null;
        }

        var trials = new PumpTrials { Gasket = Amount("gasket") ?? PumpTrials.UsualGasket, Lapping = Amount("lap") ?? PumpTrials.UsualLapping, Skim = Amount("skim") };
        if (!PumpCards.Of(found, pump, trials).IsOk(out var card, out var refused))
            return Plain.Answer(StatusCodes.Status404NotFound, "Not here", string.Join(' ', refused.Select(p => $"{p.Allowed} {p.DoThis}")));
        return Page<PumpCardPage>(
            new
            {
                Engine = found,
                Card = card,
                Asked = pump,
                Given = (IReadOnlyDictionary<string, string>)given,
                Problems = (IReadOnlyList<Problem>)problems,
            },
            problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity);
    }

    /// <summary>An engine that has a circuit.</summary>
    private static bool Find(string engine, Bench bench, [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out EngineAppraisal? found, [System.Diagnostics.CodeAnalysis.NotNullWhen(false)] out IResult? missing)
    {
        if (!bench.Find(engine, out found, out missing))
            return false;
        if (found.Record.Circuit is not null)
            return true;
        missing = new SeeOther(Where.Oil(found.Record.Engine.Name));
        return false;
    }
}
