using System.Text;
using Thoubook.Files.Schedules;
using Thoubook.Record;
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

        IReadOnlyList<IncomingFile> files = [IncomingFile.Pasted(form.FileName, form.Text)];
        var options = OptionsOf(form, record, posted.By);
        IReadOnlyList<Problem> problems = [];
        if (posted["step"] == "take" && bench.Workshop.Import(files, options).IsOk(out var taken, out problems))
        {
            var name = taken.Reading.Record.Engine.Name;
            return new SeeOther(taken.Reading.Schedules.Count > 0 ? Where.Figures(name) : Where.Bench(name));
        }

        var refused = problems.Where(p => !p.IsQuestion).ToList();
        if (ImportReading.SortOf(form.Text) == FileSort.Schedule)
        {
            return ScheduleImport.Of(form.Text, form.FileName, options, record.Documents).IsOk(out var schedule, out problems)
                ? Page<ImportPage>(new { Engine = record, Form = form, Schedule = schedule, Problems = (IReadOnlyList<Problem>)refused }, StatusOf(refused))
                : Page<ImportPage>(new { Engine = record, Form = form, Problems = problems }, StatusCodes.Status422UnprocessableEntity);
        }

        var looked = bench.Workshop.LookAt(files, options);
        return refused.Count == 0 && looked.IsOk(out var reading, out problems)
            ? Page<ImportPage>(new { Engine = record, Form = form, Other = string.Join(" ", ((Outcome<ImportReading>.Ok)looked).Cautions.Select(c => c.Text).Prepend(InWords(reading.Record))) })
            : Page<ImportPage>(new { Engine = record, Form = form, Problems = problems }, StatusCodes.Status422UnprocessableEntity);
    }

    private static int StatusOf(List<Problem> refused) => refused.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity;

    private static string InWords(EngineRecord said) =>
        $"{said.Engine.Name}: {Said.Count(said.Parts.Count, "part")}, {Said.Count(said.Dimensions.Count, "dimension")}, {Said.Count(said.Fits.Count, "fit")}, {Said.Count(said.Readings.Count, "reading")}.";

    private static ImportOptions OptionsOf(ImportForm form, EngineRecord record, string by) => new(by)
    {
        Engine = record.Engine.Name.Text,
        Confirmed = form.Confirmed,
        Document = form.Book.Length > 0 ? form.Book : null,
        Unit = form.Unit switch { "in" => StatedUnit.Inch, "mm" => StatedUnit.Millimetre, _ => StatedUnit.NotStated },
        Decimal = form.Decimal switch { "point" => DecimalMark.Point, "comma" => DecimalMark.Comma, _ => DecimalMark.Unstated },
    };

    private static IResult Export(string engine, Bench bench) =>
        bench.Find(engine, out var found, out var missing)
            ? bench.Workshop.Export(found.Record.Engine.Name.Text).IsOk(out var text, out var problems)
                ? TypedResults.File(Encoding.UTF8.GetBytes(text), "application/yaml; charset=utf-8", $"{Slug(found.Record.Engine.Name.Text)}.yaml")
                : Plain.Answer(StatusCodes.Status422UnprocessableEntity, "Not given out", string.Join(" ", problems))
            : missing;

    private static string Slug(string text)
    {
        var slug = string.Join('-', new string([.. text.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries));
        return slug.Length is 0 or > 60 ? "engine" : slug;
    }
}
