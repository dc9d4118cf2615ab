using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Workshop;

namespace Thoubook.Cli.Verbs;

internal static class ReadingVerbs
{
    private static readonly Option Piece = new("piece", "TAG", "the piece measured; else the one chosen for the part");
    private static readonly Option Place = new("place", "PLACE", "where on it: A1, front/upright");
    private static readonly Option Gauge = new("gauge", "TAG", "the measuring instrument");
    private static readonly Option Temperature = new("temp", "TEMPERATURE", "of the piece, such as 19 °C");
    private static readonly Option Method = new("method", "METHOD", "how a fit was measured on parts put together: feeler, dial, plastic strip, slackened joint or other");
    private static readonly Option Note = new("note", "TEXT", "a remark kept with it");
    private static readonly Option Why = new("why", "REASON", "the reason");
    private static readonly Option From = new("from", "FILE", "readings from a file, - for standard input: CSV under a head line, or one reading a line");

    /// <summary>Options that a table of readings has columns for.</summary>
    internal static readonly IReadOnlyList<Option> OnlyInLines = [Piece, Place, Gauge, Temperature, Method, Option.At, Option.Id, Note];

    private static readonly IReadOnlyList<Option> OfOneReading = [.. OnlyInLines, Option.By, Option.Confirm];

    public static readonly Verb Add = new("reading add", "Writes down a reading of a dimension, or a check of a fit, and prints its identifier.", RunAdd)
    {
        Operands = [new("ENGINE", "the engine by name"), new("DIMENSION", "the dimension or fit: part/path.name") { Optional = true }, new("VALUE", "what was read; a bare number is in the unit of the limits") { Optional = true, Rest = true }],
        Options = [.. OfOneReading, From, Option.Json],
        More = """
            With --from, each identifier is printed when its reading is on the disc and not before. A line is DIMENSION VALUE and any of the options above, or
            a line of CSV under a head line such as of,piece,place,value [in],gauge,by. --by stands for lines that do not say who; without a head line the other
            options stand for lines that do not say likewise. A line that cannot be taken is told with its number, the others are taken, and the exit status is 2.
            The same line of CSV sent twice is stored once.
            """,
        Examples =
        [
            new("thoubook reading add \"Sandpiper six\" lower-half/pressure-pump/body.depth 1.2535 --place A1 --gauge M-07 --temp \"19 °C\" --by owner", "one reading, in the unit of the limits."),
            new("thoubook reading add \"Sandpiper six\" lower-half/pressure-pump.driver-end-float \"2.5 thou\" --method feeler --by owner", "a fit measured on parts put together."),
            new("thoubook reading add \"Sandpiper six\" --from - --by bench < readings.csv", "many, each acknowledged as it is stored."),
        ],
    };

    public static readonly Verb Strike = new("reading strike", "Strikes out a reading or any other fact, with a reason; it stays visible.", RunStrike)
    {
        Operands = [new("ENGINE", "the engine by name"), new("ID", "the identifier of the fact")],
        Options = [Why, Option.By, Option.At, Option.Id],
        More = "A strike-out is a fact and can itself be struck out: so an error in striking out is undone.",
        Examples = [new("thoubook reading strike \"Sandpiper six\" 01932c5e-0000-7000-8000-000000000001 --why \"wrong piece\" --by owner", "it no longer counts and is still shown.")],
    };

    public static readonly Verb List = new("reading list", "Lists the readings and checks of an engine, those struck out among them.", RunList)
    {
        Operands = [new("ENGINE", "the engine by name"), new("DIMENSION", "only of this dimension or fit") { Optional = true }],
        Options = [Option.Json],
        Examples =
        [
            new("thoubook reading list \"Sandpiper six\" lower-half/pressure-pump/body.depth", "the readings of one dimension, with their identifiers."),
            new("thoubook reading list \"Sandpiper six\" --json", "all, for a program."),
        ],
    };

    private static ExitStatus RunAdd(Request request, Terminal terminal)
    {
        var fromFile = request[From];
        if (fromFile is null && request.Operands.Count < 3)
            return terminal.Refuse(request, [new Problem("too-few", "", request.Operands.Count < 2 ? "no DIMENSION" : "no VALUE", "A reading is DIMENSION VALUE, such as lower-half/pressure-pump/body.depth 1.2535.", "Give both, or --from FILE.")]);
        if (fromFile is not null && request.Operands.Count > 1)
            return terminal.Refuse(request, [new Problem("too-many", "", Request.Quoted(request.Operands[1]), "With --from the readings stand in the file.", "Leave it out, or leave out --from.")]);

        return Workshops.With(request, terminal, workshop =>
        {
            if (fromFile is not null)
                return ReadingLines.Add(request, terminal, workshop, fromFile);
            if (!Entry(request, request.Operands[1], string.Join(' ', request.Operands.Skip(2))).Then(workshop.AddReading).IsOk(out var recorded, out var problems))
                return terminal.Refuse(request, problems);
            if (request.Has(Option.Json))
                terminal.Json(RecordedAnswer.Of(recorded), AnswerJson.Shapes.RecordedAnswer);
            else
                terminal.Out.WriteLine(recorded.Fact.Id);
            terminal.Error.WriteLine($"{recorded.Figure.Name}: {recorded.Value.Understood}");
            return ExitStatus.Good;
        });
    }

    /// <summary>What one reading says; <paramref name="usual"/> stands for what it does not.</summary>
    internal static Outcome<ReadingEntry> Entry(Request request, string figure, string value, Request? usual = null)
    {
        string? Said(Option option) => request[option] ?? usual?[option];
        var method = CheckMethod.Other;
        if (Said(Method) is { } word && !Words.Read<CheckMethod>(word, "--method").IsOk(out method, out var problems))
            return new Outcome<ReadingEntry>.Refused(problems);
        return Facts.Signature(request, usual).Then<ReadingEntry>(signed => new ReadingEntry((usual ?? request).Operands[0], figure, value, signed.By)
        {
            Piece = Said(Piece),
            Place = Said(Place),
            Gauge = Said(Gauge),
            Temperature = Said(Temperature),
            Method = method,
            At = signed.At,
            Id = signed.Id,
            Note = Said(Note),
            Confirmed = usual is null ? request.Confirmed : request.Confirmed.Union(usual.Confirmed).ToHashSet(StringComparer.Ordinal),
        });
    }

    /// <summary>One reading written as a line of its own: DIMENSION VALUE and options.</summary>
    internal static Verb Line { get; } = new("reading", "", (_, _) => ExitStatus.Good)
    {
        Operands = [new("DIMENSION", "the dimension or fit"), new("VALUE", "what was read") { Rest = true }],
        Options = OfOneReading,
        Examples = [],
    };

    private static ExitStatus RunStrike(Request request, Terminal terminal) => Facts.Write(request, terminal, workshop =>
        Facts.Identifier(request.Operands[1]).Then(of => Facts.Signature(request).Then(signed => workshop.StrikeOut(
            new StrikeOutEntry(request.Operands[0], of, request[Why] ?? "", signed.By) { At = signed.At, Id = signed.Id }).Then<Fact>(f => f))));

    private static ExitStatus RunList(Request request, Terminal terminal) => Workshops.With(request, terminal, workshop =>
    {
        if (!workshop.Engine(request.Operands[0]).Then(record => Wanted(record, request.Operands.ElementAtOrDefault(1))).IsOk(out var listed, out var problems))
            return terminal.Refuse(request, problems);
        if (request.Has(Option.Json))
        {
            terminal.Json(listed, AnswerJson.Shapes.IReadOnlyListReadingAnswer);
            return ExitStatus.Good;
        }

        var table = new Table("identifier", "of", "piece", "place", "value", "gauge", "by", "when", "standing");
        foreach (var one in listed)
            table.Add(one.Id, one.Name, one.Piece ?? "", one.Place, one.Shown, one.Gauge ?? "", one.By, one.At, one.Stands ? "" : one.Why);
        if (table.IsEmpty)
            terminal.Error.WriteLine("No readings.");
        else
            table.WriteTo(terminal);
        return ExitStatus.Good;
    });

    private static Outcome<IReadOnlyList<ReadingAnswer>> Wanted(EngineRecord record, string? figure)
    {
        FigureName? only = null;
        if (figure is not null)
        {
            if (!OpenWorkshop.Find(record, figure).IsOk(out var found, out var problems))
                return new Outcome<IReadOnlyList<ReadingAnswer>>.Refused(problems);
            only = found.Name;
        }

        return new Outcome<IReadOnlyList<ReadingAnswer>>.Ok(
            [
                .. record.Readings.Where(r => only is null || r.Figure == only).Select(r => ReadingAnswer.Of(r, record)),
                .. record.Checks.Where(c => only is null || c.Figure == only).Select(c => ReadingAnswer.Of(c, record)),
            ],
            []);
    }
}
