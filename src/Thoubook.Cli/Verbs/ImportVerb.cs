using System.Text;
using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Files.Schedules;
using Thoubook.Record;
using Thoubook.Record.Documents;
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
        Operands = [new("FILE", "an engine file (YAML) with its tables of readings (CSV), or one schedule (CSV)") { Rest = true }],
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
        var texts = new List<(string Path, string Text)>();
        foreach (var path in request.Operands)
        {
            terminal.Progress($"Reading {path} …");
            if (!IncomingFile.OnDisk(path).Text().IsOk(out var text, out problems))
                return terminal.Refuse(request, problems);
            texts.Add((path, text));
        }

        if (!texts.Any(t => ImportReading.SortOf(t.Text) == FileSort.Schedule))
            return TakeFiles(request, terminal, options, [.. texts.Select(t => IncomingFile.Pasted(Path.GetFileName(t.Path), t.Text))]);
        return texts is [var only]
            ? TakeSchedule(request, terminal, options, only.Path, only.Text)
            : terminal.Refuse(request, [new Problem("schedule-alone", "", $"{texts.Count} files", "A schedule is taken in by itself, so that what it asks can be answered.", "Import each file alone.")]);
    }

    private static Outcome<ScheduleOptions> ReadOptions(Request request)
    {
        var problems = new List<Problem>();
        var unit = Choose(request, Unit, problems, ("in", StatedUnit.Inch), ("mm", StatedUnit.Millimetre));
        var mark = Choose(request, Decimal, problems, ("point", DecimalMark.Point), ("comma", DecimalMark.Comma));
        ScheduleMapping? mapping = null;
        if (request[Mapping] is { } file && !IncomingFile.OnDisk(file).Text().Then(text => ScheduleMapping.Read(text, Path.GetFileName(file))).IsOk(out mapping, out var wrong))
            problems.AddRange(wrong);
        return problems.Count > 0
            ? new Outcome<ScheduleOptions>.Refused(problems)
            : new ScheduleOptions { Unit = unit, Decimal = mark, Mapping = mapping, Confirmed = request.Confirmed };
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

    /// <summary>Engine files and tables of readings.</summary>
    private static ExitStatus TakeFiles(Request request, Terminal terminal, ScheduleOptions options, IReadOnlyList<IncomingFile> files)
    {
        var terms = new ImportOptions(Facts.By(request)) { Engine = request[Option.Engine], Confirmed = options.Confirmed, Decimal = options.Decimal };
        if (request.Has(DryRun))
            return LookAt(request, terminal, files, terms);
        return Workshops.With(request, terminal, WhenMissing.MakeOne, workshop =>
        {
            terminal.Progress("Taking in …");
            if (!workshop.Import(files, terms).IsOk(out var imported, out var problems))
                return terminal.Refuse(request, problems);
            if (request.Has(Option.Json))
                terminal.Json(ImportedAnswer.Of(imported.Reading.Record.Engine.Name, imported.Changed), AnswerJson.Shapes.ImportedAnswer);
            else
                terminal.Out.WriteLine(imported.Summary);
            return ExitStatus.Good;
        });
    }

    private static ExitStatus LookAt(Request request, Terminal terminal, IReadOnlyList<IncomingFile> files, ImportOptions terms)
    {
        // Where there is no workshop, the files are read as they stand.
        var workshop = Workshops.Open(request, terminal) is Outcome<OpenWorkshop>.Ok { Value: var open } ? open : null;
        using (workshop)
        {
            var now = terminal.Clock.GetCurrentInstant().WithOffset(NodaTime.Offset.Zero);
            if (!(workshop?.LookAt(files, terms) ?? ImportReading.Of(files, terms, now, _ => null)).IsOk(out var reading, out var problems))
                return terminal.Refuse(request, problems);
            var name = string.Join(", ", reading.Files.Select(f => f.Name));
            if (request.Has(Option.Json))
            {
                terminal.Json(DryRunAnswer.Of(name, reading.Files[0].Sort, reading.Record), AnswerJson.Shapes.DryRunAnswer);
                return ExitStatus.Good;
            }

            var says = SaysAnswer.Of(reading.Record);
            terminal.Out.WriteLine($"{name}: {says.Engine}, {says.Parts} parts, {says.Dimensions} dimensions, {says.Fits} fits, {says.Gauges} gauges, {says.Pieces} pieces, {says.Readings} readings, {says.OtherFacts} other facts. Nothing was written.");
            return ExitStatus.Good;
        }
    }

    private static ExitStatus TakeSchedule(Request request, Terminal terminal, ScheduleOptions options, string path, string text)
    {
        if (!ScheduleReader.ReadText(text, Path.GetFileName(path), options).IsOk(out var reading, out var problems))
            return terminal.Refuse(request, problems);
        if (request[KeepMapping] is { } keep && KeepMappingIn(keep, reading.Mapping) is { } notKept)
            return terminal.Refuse(request, [notKept]);
        if (request.Has(DryRun))
        {
            if (request.Has(Option.Json))
                terminal.Json(DryRunAnswer.Of(Path.GetFileName(path), reading), AnswerJson.Shapes.DryRunAnswer);
            else
                Show(terminal, reading);
            return reading.AsksNothing ? ExitStatus.Good : terminal.Refuse(reading.Questions);
        }

        if (!reading.AsksNothing)
            return terminal.Refuse(request, reading.Questions);
        if (request[Option.Engine] is not { } engine)
            return terminal.Refuse(request, [new Problem("import-engine", "--engine", "no engine", "A schedule's limits go into an engine.", "Say which: --engine ENGINE; or --dry-run to look at it alone.")]);
        if (!DocumentOf(request, path).IsOk(out var document, out problems))
            return terminal.Refuse(request, problems);
        return Workshops.With(request, terminal, workshop =>
        {
            if (!workshop.TakeSchedule(engine, reading, document, Facts.By(request)).IsOk(out var taken, out var wrong))
                return terminal.Refuse(request, wrong);
            var answer = ImportedAnswer.Of(new EngineName(engine), taken.Changed, taken.Proposal.LeftOut.Length);
            if (request.Has(Option.Json))
                terminal.Json(answer, AnswerJson.Shapes.ImportedAnswer);
            else
                terminal.Out.WriteLine($"{answer.Engine}: {answer.Added} added, {answer.Changed} changed, {answer.Same} the same.");
            foreach (var row in taken.Proposal.LeftOut)
                terminal.Error.WriteLine($"{Path.GetFileName(path)}({row.Row},1): {row.Name}: left out, for it gives no limits that can be judged by.");
            return ExitStatus.Good;
        });
    }

    private static Outcome<Document> DocumentOf(Request request, string path)
    {
        var stated = request[DocumentName];
        var name = stated ?? new string([.. Path.GetFileNameWithoutExtension(path).ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')]).Trim('-');
        return Record.DocumentName.TryRead(name, out var document, out var problem)
            ? new Document(document)
            : problem with { Field = "--document" };
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
