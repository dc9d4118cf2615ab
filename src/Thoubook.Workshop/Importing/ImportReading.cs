using NodaTime;
using Thoubook.Appraisal;
using Thoubook.Appraisal.Oil;
using Thoubook.Files;
using Thoubook.Files.EngineFiles;
using Thoubook.Files.Readings;
using Thoubook.Record;

namespace Thoubook.Workshop.Importing;

/// <summary>Files understood, before anything is written: all of one engine, laid together.</summary>
/// <param name="Record">What the files say, and no more.</param>
/// <param name="Files">What each turned out to be.</param>
public sealed record ImportReading(EngineRecord Record, IReadOnlyList<(string Name, FileSort Sort)> Files)
{
    /// <summary>The schedules of limits among them, row by row.</summary>
    public IReadOnlyList<ScheduleImport> Schedules { get; init; } = [];

    /// <summary>Reads files of one engine, in the order in which they rest on each other: engine files, then schedules, then readings.</summary>
    /// <param name="files">All or nothing: a problem in one refuses all.</param>
    /// <param name="options">What the person says.</param>
    /// <param name="now">For facts that give no time.</param>
    /// <param name="known">What the workshop already holds; needs no workshop where there is none.</param>
    public static Outcome<ImportReading> Of(IReadOnlyList<IncomingFile> files, ImportOptions options, OffsetDateTime now, Func<EngineName, EngineRecord?> known)
    {
        var problems = new List<Problem>();
        var texts = new List<(string Name, string Text, FileSort Sort)>();
        foreach (var file in files)
        {
            if (file.Text().IsOk(out var text, out var refusals))
                texts.Add((file.Name, text, SortOf(text)));
            else
                problems.AddRange(refusals);
        }

        var schedules = new List<ScheduleImport>();
        EngineRecord? record = null;
        (string Name, string Text)? circuit = null;
        foreach (var (name, text, sort) in texts.OrderBy(t => t.Sort))
        {
            var terms = new ImportTerms(now, options.By)
            {
                Confirmed = options.Confirmed,
                Decimal = options.Decimal,
                Known = engine => record?.Engine.Name == engine ? Joining.Join(known(engine), record) : known(engine),
            };
            var outcome = sort switch
            {
                FileSort.EngineFile => EngineFile.Read(text, name, terms),
                FileSort.Schedule => EngineOf(name, record, options, terms).Then(engine => OfSchedule(text, name, options, engine, schedules)),
                _ => EngineOf(name, record, options, terms).Then(engine => ReadingsFile.Read(text, name, engine, terms)),
            };
            if (!outcome.IsOk(out var read, out var refusals))
                problems.AddRange(refusals);
            else if (record is not null && record.Engine.Name != read.Engine.Name)
                problems.Add(new Problem("import-engines", "", $"{record.Engine.Name} and {read.Engine.Name}", "Files taken in together belong to one engine, so that all of them or none are written.", "Import each engine by itself.") { At = new Problem.Place(name, 1, 1) });
            else
                (record, circuit) = (record is null ? read : Joining.Join(record, read), read.Circuit is null ? circuit : (name, text));
        }

        if (record is null && problems.Count == 0)
            problems.Add(new Problem("import-nothing", "", "no file", "At least one file to take in.", "Name a file."));
        return problems.Count > 0
            ? new Outcome<ImportReading>.Refused(problems)
            : new Outcome<ImportReading>.Ok(
                new ImportReading(record!, [.. texts.Select(t => (t.Name, t.Sort))]) { Schedules = schedules },
                circuit is { } of ? Cautions(Joining.Join(known(record!.Engine.Name), record), of.Name, of.Text) : []);
    }

    /// <summary>What keeps the circuit of a file from being solved. It is taken in all the same, for one that is half drawn is worth keeping; a figure that is not measured yet is no fault of it.</summary>
    private static IReadOnlyList<Caution> Cautions(EngineRecord record, string name, string text) =>
        OilSystem.Of(Appraiser.Appraise(record)).Then(system => system.At(system.HotIdle)).Told(problems => EngineFile.Placed(text, name, problems)).IsOk(out _, out var problems)
            ? []
            : [.. problems.Where(p => p.Code != "circuit-figure-unknown").Select(p => new Caution(p.Code, $"The circuit cannot be solved as it is. {p}"))];

    /// <summary>What a text is, by what stands in it: the sections of an engine file, the head of a table of readings, or neither.</summary>
    public static FileSort SortOf(string text) =>
        EngineFile.LooksLikeOne(text) ? FileSort.EngineFile
        : ReadingsFile.IsHead(text) ? FileSort.Readings
        : FileSort.Schedule;

    /// <summary>Whatever a schedule asks is answered before any of it is taken.</summary>
    private static Outcome<EngineRecord> OfSchedule(string text, string name, ImportOptions options, EngineRecord engine, List<ScheduleImport> schedules)
    {
        if (!ScheduleImport.Of(text, name, options, engine.Documents).IsOk(out var schedule, out var problems))
            return new Outcome<EngineRecord>.Refused(problems);
        problems = [.. schedule.Reading.Questions, .. schedule.Clashes(engine)];
        if (problems.Count == 0 && schedule.Proposal.Dimensions.IsEmpty && schedule.Proposal.Fits.IsEmpty)
            problems = [new Problem("schedule-nothing", "", "no row with limits", "A schedule has a head line and under it rows with limits.", "Check that this is the right file, or state what each column holds (a mapping).") { At = new Problem.Place(name, 1, 1) }];
        if (problems.Count > 0)
            return new Outcome<EngineRecord>.Refused(problems);
        schedules.Add(schedule);
        return schedule.Over(engine);
    }

    private static Outcome<EngineRecord> EngineOf(string file, EngineRecord? record, ImportOptions options, ImportTerms terms)
    {
        if (record is not null)
            return terms.Known(record.Engine.Name)!;
        if (options.Engine is null)
            return new Problem("import-engine", "engine", "no engine", "A table belongs to an engine.", "Say which: --engine NAME, or import it together with its engine file.") { At = new Problem.Place(file, 1, 1) };
        if (!EngineName.TryRead(options.Engine, out var name, out var problem))
            return problem with { Field = "engine" };
        return terms.Known(name) is { } known
            ? known
            : new Problem("unknown-engine", "engine", $"\"{options.Engine}\"", "There is no engine of that name in this workshop.", "Correct the name, or import its engine file first.");
    }
}
