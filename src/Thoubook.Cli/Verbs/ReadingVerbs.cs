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
    private static readonly Option Method = new("method", "METHOD", $"how a fit was measured on parts put together: {string.Join(", ", Words.All<CheckMethod>())}");
    private static readonly Option Note = new("note", "TEXT", "a remark kept with it");
    private static readonly Option From = new("from", "FILE", "readings from a file, - for standard input: CSV under a head line, or one reading a line");

    private static readonly IReadOnlyList<Option> OfOneReading = [Piece, Place, Gauge, Temperature, Method, Option.By, Option.At, Option.Id, Note, Option.Confirm];

    public static readonly Verb Add = new("reading add", "Writes down a reading of a dimension, or a check of a fit, and prints its identifier.", RunAdd)
    {
        Operands = [new("ENGINE", "the engine by name"), new("DIMENSION", "the dimension or fit: part/path.name") { Optional = true }, new("VALUE", "what was read; a bare number is in the unit of the limits") { Optional = true, Rest = true }],
        Options = [.. OfOneReading, From, Option.Json],
        More = """
            With --from, each identifier is printed when its reading is on the disc and not before. A line is DIMENSION VALUE and any of the options above, or
            a line of CSV under a head line such as of,piece,place,value [in],gauge,by. Options given with the command stand for lines that do not say. A line
            that cannot be taken is told with its number, the others are taken, and the exit status is 2.
            """,
        Examples =
        [
            new("thoubook reading add \"Sandpiper six\" lower-half/pressure-pump/body.depth 1.2535 --place A1 --gauge M-07 --temp \"19 °C\" --by owner", "one reading, in the unit of the limits."),
            new("thoubook reading add \"Sandpiper six\" lower-half/pressure-pump.driver-end-float \"2.5 thou\" --method feeler --by owner", "a fit measured on parts put together."),
            new("thoubook reading add \"Sandpiper six\" --from - --by bench < readings.csv", "many, each acknowledged as it is stored."),
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
        var problems = new List<Problem>();
        var by = Said(Option.By);
        if (string.IsNullOrWhiteSpace(by))
            problems.Add(new Problem("no-by", "--by", "nobody", "Each fact says who: a name or a role.", "Add --by, such as --by owner."));
        var at = Facts.Moment(Said(Option.At), problems);
        var id = Facts.Identifier(request[Option.Id], "--id", problems);
        var method = CheckMethod.Other;
        if (Said(Method) is { } word && !Words.Read<CheckMethod>(word, "--method").IsOk(out method, out var wrong))
            problems.AddRange(wrong);
        return problems.Count > 0
            ? new Outcome<ReadingEntry>.Refused(problems)
            : new ReadingEntry((usual ?? request).Operands[0], figure, value, by!)
            {
                Piece = Said(Piece),
                Place = Said(Place),
                Gauge = Said(Gauge),
                Temperature = Said(Temperature),
                Method = method,
                At = at,
                Id = id,
                Note = Said(Note),
                Confirmed = usual is null ? request.Confirmed : request.Confirmed.Union(usual.Confirmed).ToHashSet(StringComparer.Ordinal),
            };
    }

    /// <summary>One reading written as a line of its own: DIMENSION VALUE and options.</summary>
    internal static Verb Line { get; } = new("reading", "", (_, _) => ExitStatus.Good)
    {
        Operands = [new("DIMENSION", "the dimension or fit"), new("VALUE", "what was read") { Rest = true }],
        Options = OfOneReading,
        Examples = [],
    };
}
