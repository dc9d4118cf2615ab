using System.Text;
using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Files.Schedules;
using Thoubook.Record;
using Thoubook.Record.Quantities;
using Thoubook.Store;
using Thoubook.Workshop;
using Thoubook.Workshop.Importing;

namespace Thoubook.Cli.Verbs;

internal static class ImportVerb
{
    private static readonly Option DryRun = new("dry-run", null, "shows what is understood and writes nothing; needs no engine and no workshop");
    private static readonly Option Unit = new("unit", "in|mm", "of the figures of a schedule that name none");
    private static readonly Option Decimal = new("decimal", "point|comma", "the decimal mark of the file");
    private static readonly Option DocumentName = new("document", "NAME", "the document that a schedule was copied from; else named after the file");
    private static readonly Option Mapping = new("mapping", "FILE", "what each column of a schedule holds; else it is worked out");
    private static readonly Option KeepMapping = new("keep-mapping", "FILE", "writes the mapping used, to be stated another time");

    public static readonly Verb Import = new("import", "Takes in engine files, tables of readings, or a schedule of limits copied from a manual.", Run)
    {
        Operands = [new("FILE", "an engine file (YAML) with its tables of readings (CSV), or schedules (CSV)") { Rest = true }],
        Options = [Option.Engine, DryRun, Unit, Decimal, Option.Confirm, DocumentName, Mapping, KeepMapping, Option.By, Option.Json],
        More = """
            All or nothing: a problem in one file refuses all, and importing again changes nothing. What a schedule means and does not say is asked;
            --confirm CODE, --unit and --decimal answer, and nothing is written while anything is asked.
            """,
        Examples =
        [
            new("thoubook import sandpiper-six.yaml readings.csv", "an engine with its readings; makes the workshop where there is none."),
            new("thoubook import schedule.csv --dry-run", "what is understood of each line, and what is asked."),
            new("thoubook import schedule.csv --engine \"Sandpiper six\" --document overhaul-book --unit in --by owner", "its limits, into an engine that is there."),
            new("thoubook import readings.csv --engine \"Sandpiper six\" --by bench", "a table of readings alone."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal)
    {
        if (!ReadOptions(request).IsOk(out var options, out var problems))
            return terminal.Refuse(request, problems);
        var files = new List<IncomingFile>();
        foreach (var path in request.Operands)
        {
            terminal.Progress($"Reading {path} …");
            if (!IncomingFile.OnDisk(path).Text().IsOk(out var text, out problems))
                return terminal.Refuse(request, problems);
            var name = Path.GetFileName(path);
            if (ImportReading.SortOf(text) == FileSort.Schedule && (request.Has(DryRun) || request.Has(KeepMapping)))
            {
                var status = LookAtSchedule(request, terminal, options, name, text);
                if (request.Has(DryRun) || status != ExitStatus.Good)
                    return status;
            }

            files.Add(IncomingFile.Pasted(name, text));
        }

        return request.Has(DryRun) ? LookAt(request, terminal, options, files) : Take(request, terminal, options, files);
    }

    private static Outcome<ImportOptions> ReadOptions(Request request)
    {
        var problems = new List<Problem>();
        var unit = Choose(request, Unit, problems, ("in", StatedUnit.Inch), ("mm", StatedUnit.Millimetre));
        var mark = Choose(request, Decimal, problems, ("point", DecimalMark.Point), ("comma", DecimalMark.Comma));
        ScheduleMapping? mapping = null;
        if (request[Mapping] is { } file && !IncomingFile.OnDisk(file).Text().Then(text => ScheduleMapping.Read(text, Path.GetFileName(file))).IsOk(out mapping, out var wrong))
            problems.AddRange(wrong);
        if (request.Has(DryRun) && request.Operands.Count > 1)
            problems.Add(new("dry-run-one", "--dry-run", $"{request.Operands.Count} files", "One file is looked at at a time.", "Name one."));
        return problems.Count > 0
            ? new Outcome<ImportOptions>.Refused(problems)
            : new ImportOptions(Facts.By(request))
            {
                Engine = request[Option.Engine],
                Confirmed = request.Confirmed,
                Unit = unit,
                Decimal = mark,
                Mapping = mapping,
                Document = request[DocumentName],
            };
    }

    private static T Choose<T>(Request request, Option option, List<Problem> problems, params (string Word, T Value)[] known)
        where T : struct
    {
        if (request[option] is not { } word)
            return default;
        foreach (var (name, value) in known)
        {
            if (name == word)
                return value;
        }

        problems.Add(new("unknown-word", "--" + option.Name, Request.Quoted(word), $"One of: {string.Join(", ", known.Select(k => k.Word))}.", "Use one of these words."));
        return default;
    }

    private static ExitStatus Take(Request request, Terminal terminal, ImportOptions options, IReadOnlyList<IncomingFile> files) => Workshops.With(request, terminal, WhenMissing.MakeOne, workshop =>
    {
        terminal.Progress("Taking in …");
        var outcome = workshop.Import(files, options);
        if (!outcome.IsOk(out var imported, out var problems))
            return terminal.Refuse(request, problems);
        var leftOut = imported.Reading.Schedules.SelectMany(s => s.Proposal.LeftOut).ToArray();
        if (request.Has(Option.Json))
            terminal.Json(ImportedAnswer.Of(imported, leftOut.Length), AnswerJson.Shapes.ImportedAnswer);
        else
            terminal.Out.WriteLine(imported.Summary);
        foreach (var row in leftOut)
            terminal.Error.WriteLine($"Line {row.Row}: {row.Name}: left out, for it gives no limits to judge by.");
        terminal.Say(outcome);
        return ExitStatus.Good;
    });

    private static ExitStatus LookAt(Request request, Terminal terminal, ImportOptions options, IReadOnlyList<IncomingFile> files)
    {
        // Where there is no workshop, the files are read as they stand.
        using var workshop = Workshops.Open(request, terminal) is Outcome<OpenWorkshop>.Ok { Value: var open } ? open : null;
        var now = terminal.Clock.GetCurrentInstant().WithOffset(NodaTime.Offset.Zero);
        var outcome = workshop?.LookAt(files, options) ?? ImportReading.Of(files, options, now, _ => null);
        if (!outcome.IsOk(out var reading, out var problems))
            return terminal.Refuse(request, problems);
        terminal.Say(outcome);
        var (name, sort) = reading.Files[0];
        if (request.Has(Option.Json))
        {
            terminal.Json(DryRunAnswer.Of(name, sort, reading.Record), AnswerJson.Shapes.DryRunAnswer);
            return ExitStatus.Good;
        }

        var says = SaysAnswer.Of(reading.Record);
        terminal.Out.WriteLine($"{name}: {says.Engine}, {says.Parts} parts, {says.Dimensions} dimensions, {says.Fits} fits, {says.Gauges} gauges, {says.Pieces} pieces, {says.Readings} readings, {says.OtherFacts} other facts. Nothing was written.");
        return ExitStatus.Good;
    }

    /// <summary>Shows a schedule row by row, with what it asks; needs neither engine nor workshop.</summary>
    private static ExitStatus LookAtSchedule(Request request, Terminal terminal, ImportOptions options, string name, string text)
    {
        if (!ScheduleImport.Of(text, name, options, []).IsOk(out var schedule, out var problems))
            return terminal.Refuse(request, problems);
        var reading = schedule.Reading;
        if (request[KeepMapping] is { } keep && KeepMappingIn(keep, reading.Mapping) is { } notKept)
            return terminal.Refuse(request, [notKept]);
        if (!request.Has(DryRun))
            return ExitStatus.Good;
        if (request.Has(Option.Json))
            terminal.Json(DryRunAnswer.Of(name, reading), AnswerJson.Shapes.DryRunAnswer);
        else
            Show(terminal, reading);
        return reading.AsksNothing ? ExitStatus.Good : terminal.Refuse(reading.Questions);
    }

    private static Problem? KeepMappingIn(string file, ScheduleMapping mapping)
    {
        if (Path.Exists(file))
            return new("file-exists", "--keep-mapping", Request.Quoted(file), "A new file: nothing is overwritten.", "Name another, or move that one away.");
        try
        {
            File.WriteAllText(file, mapping.ToString(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new("file-not-written", "--keep-mapping", Request.Quoted(file), e.Message, "Name a file in a folder that may be written.");
        }
    }

    private static void Show(Terminal terminal, ScheduleReading reading)
    {
        var table = new Table("line", "kind", "new", "worn", "what");
        foreach (var row in reading.Rows.Where(r => r.ContinuationOf is null && r.Kind != RowKind.Other))
        {
            foreach (var relation in row.Beside.Prepend(row))
                table.Add($"{row.Row}".PadLeft(4), relation.Kind.Word(), Range(relation.New, relation), Range(relation.Worn, relation), row.Ask is null ? relation.Name ?? string.Join(" ", row.Notes) : $"{relation.Name} — asked");
        }

        table.WriteTo(terminal);
        terminal.Out.WriteLine();
        terminal.Out.WriteLine("Columns");
        terminal.Out.Write(reading.Mapping.ToString());
    }

    private static string Range(Bounds bounds, ScheduleRow row) => (bounds.Min, bounds.Max) switch
    {
        (null, null) => "—",
        ({ } min, null) => $"from {Shown(min, row)}",
        (null, { } max) => $"to {Shown(max, row)}",
        ({ } min, { } max) when min == max => Shown(min, row),
        ({ } min, { } max) => $"{Shown(min, row)} to {Shown(max, row)}",
    };

    private static string Shown(double value, ScheduleRow row) =>
        row.Printed is { Kind: not QuantityKind.Angle } unit ? unit.Show(value) : $"{value:G9} {row.Unit}";
}
