using System.Text;
using Thoubook.Files.Schedules;
using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Quantities;
using Thoubook.Web.Pages;
using Thoubook.Web.Sheets;
using Thoubook.Web.Writing;
using Thoubook.Workshop.Importing;
using static Thoubook.Web.Doors.Answers;

namespace Thoubook.Web.Doors;

/// <summary>Files in and out: looked at first, taken whole or not at all.</summary>
internal static class ImportDoor
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/engines/{engine}/import", (string engine, Bench bench) =>
            bench.Find(engine, out var found, out var missing) ? Page<ImportPage>(new { Engine = found.Record }) : missing);
        routes.MapPost("/engines/{engine}/import", Import);
        routes.MapGet("/engines/{engine}/export", Export);
    }

    private static async Task<IResult> Import(string engine, Bench bench, HttpContext context)
    {
        var posted = await Posted.Read(context);
        if (!bench.Find(engine, out var found, out var missing))
            return missing;
        var record = found.Record;
        var form = new ImportForm
        {
            Text = posted.Text("text"),
            FileName = posted.Given("fileName") ?? "pasted",
            Book = posted["book"],
            Edition = posted["edition"],
            Unit = posted["unit"],
            Decimal = posted["decimal"],
            Confirmed = posted.Confirmed,
        };
        if (posted.File("file") is { } file)
        {
            using var content = file.OpenReadStream();
            if (!IncomingFile.Sent(file.FileName, content).Text().IsOk(out var text, out var unreadable))
                return Page<ImportPage>(new { Engine = record, Form = form, Problems = unreadable }, StatusCodes.Status422UnprocessableEntity);
            form = form with { Text = text, FileName = Path.GetFileName(file.FileName) };
        }

        if (posted["step"] == "edit")
            return Page<ImportPage>(new { Engine = record, Form = form });
        if (string.IsNullOrWhiteSpace(form.Text))
            return Page<ImportPage>(new { Engine = record, Form = form, Problems = (IReadOnlyList<Problem>)[new Problem("nothing", "text", "nothing", "A text, or a file.", "Paste it, or choose a file.")] }, StatusCodes.Status422UnprocessableEntity);
        return ImportReading.SortOf(form.Text) == FileSort.Schedule ? OfSchedule(bench, record, form, posted) : OfFile(bench, record, form, posted);
    }

    private static IResult OfSchedule(Bench bench, EngineRecord record, ImportForm form, Posted posted)
    {
        var options = new ScheduleOptions
        {
            Unit = form.Unit switch { "in" => StatedUnit.Inch, "mm" => StatedUnit.Millimetre, _ => StatedUnit.NotStated },
            Decimal = MarkOf(form),
            Confirmed = form.Confirmed,
        };
        if (!ScheduleReader.ReadText(form.Text, form.FileName, options).IsOk(out var reading, out var problems))
            return Page<ImportPage>(new { Engine = record, Form = form, Problems = problems }, StatusCodes.Status422UnprocessableEntity);
        var document = BookOf(form, record);
        var proposal = ScheduleProposal.From(reading, document.Name);
        if (posted["step"] == "take")
        {
            var incoming = new EngineRecord(record.Engine)
            {
                Documents = [document],
                Parts = [.. proposal.Parts.Where(p => record.Index.Part(p.Name) is null)],
                Dimensions = proposal.Dimensions,
                Fits = proposal.Fits,
            };
            if (bench.Workshop.Save(incoming, posted.By).IsOk(out _, out problems))
                return new SeeOther(Where.Figures(record.Engine.Name));
        }

        return Page<ImportPage>(new { Engine = record, Form = form, Schedule = reading, Proposal = proposal, Problems = problems }, problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity);
    }

    private static IResult OfFile(Bench bench, EngineRecord record, ImportForm form, Posted posted)
    {
        IReadOnlyList<IncomingFile> files = [IncomingFile.Pasted(form.FileName, form.Text)];
        var options = new ImportOptions(posted.By) { Engine = record.Engine.Name.Text, Confirmed = form.Confirmed, Decimal = MarkOf(form) };
        IReadOnlyList<Problem> problems;
        if (posted["step"] == "take")
        {
            if (bench.Workshop.Import(files, options).IsOk(out var taken, out problems))
                return new SeeOther(Where.Bench(taken.Reading.Record.Engine.Name));
        }
        else if (bench.Workshop.LookAt(files, options).IsOk(out var reading, out problems))
        {
            var said = reading.Record;
            return Page<ImportPage>(new { Engine = record, Form = form, Other = $"{said.Engine.Name}: {Said.Count(said.Parts.Count, "part")}, {Said.Count(said.Dimensions.Count, "dimension")}, {Said.Count(said.Fits.Count, "fit")}, {Said.Count(said.Readings.Count, "reading")}." });
        }

        return Page<ImportPage>(new { Engine = record, Form = form, Problems = problems }, StatusCodes.Status422UnprocessableEntity);
    }

    private static IResult Export(string engine, Bench bench) =>
        bench.Find(engine, out var found, out var missing)
            ? bench.Workshop.Export(found.Record.Engine.Name.Text).IsOk(out var text, out var problems)
                ? TypedResults.File(Encoding.UTF8.GetBytes(text), "application/yaml; charset=utf-8", $"{Slug(found.Record.Engine.Name.Text)}.yaml")
                : Plain.Answer(StatusCodes.Status422UnprocessableEntity, "Not given out", string.Join(" ", problems))
            : missing;

    /// <summary>The document that the rows cite: the one the engine knows by that name, else a new one.</summary>
    private static Document BookOf(ImportForm form, EngineRecord record)
    {
        var name = new DocumentName(Slug(form.Book.Length > 0 ? form.Book : "schedule"));
        return record.Index.Document(name) ?? new Document(name)
        {
            Title = form.Book.Length > 0 ? form.Book : "Schedule of limits",
            Edition = form.Edition.Length > 0 ? form.Edition : null,
        };
    }

    private static string Slug(string text)
    {
        var slug = string.Join('-', new string([.. text.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries));
        return slug.Length is 0 or > 60 ? "engine" : slug;
    }

    private static DecimalMark MarkOf(ImportForm form) => form.Decimal switch
    {
        "point" => DecimalMark.Point,
        "comma" => DecimalMark.Comma,
        _ => DecimalMark.Unstated,
    };
}
