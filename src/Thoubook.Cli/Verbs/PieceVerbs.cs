using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Workshop;

namespace Thoubook.Cli.Verbs;

internal static class PieceVerbs
{
    private static readonly Option Why = new("why", "REASON", "the reason");
    private static readonly Operand Engine = new("ENGINE", "the engine by name");
    private static readonly Operand Piece = new("PIECE", "the tag of the piece");
    private static readonly Operand Part = new("PART", "the part, by its place in the tree");

    public static readonly Verb Choose = new("piece choose", "Chooses a piece for a part: fits use it from now on.", RunChoose)
    {
        Operands = [Engine, Piece, Part],
        Options = [Option.By, Option.At, Option.Id],
        Examples = [new("thoubook piece choose \"Sandpiper six\" P-31 lower-half/pressure-pump/body --by owner", "the readings of P-31 count for the body.")],
    };

    public static readonly Verb Place = new("piece place", "Places a piece in a part: checks on parts put together rely on it.", RunPlace)
    {
        Operands = [Engine, Piece, Part],
        Options = [Option.By, Option.At, Option.Id],
        Examples = [new("thoubook piece place \"Sandpiper six\" P-31 lower-half/pressure-pump/body --by bench", "it lies in its place.")],
    };

    public static readonly Verb Lift = new("piece lift", "Lifts a piece out: ends its placing, or its choice where it is not placed.", RunLift)
    {
        Operands = [Engine, Piece],
        Options = [Why, Option.By, Option.At, Option.Id],
        More = "What relied on the piece being in place no longer stands.",
        Examples = [new("thoubook piece lift \"Sandpiper six\" P-31 --why \"to lap it\" --by machinist", "it is out of the engine.")],
    };

    private static ExitStatus RunChoose(Request request, Terminal terminal) =>
        Facts.Write(request, terminal, workshop => Entry(request).Then(entry => workshop.Choose(entry).Then<Fact>(f => f)));

    private static ExitStatus RunPlace(Request request, Terminal terminal) =>
        Facts.Write(request, terminal, workshop => Entry(request).Then(entry => workshop.Place(entry).Then<Fact>(f => f)));

    private static Outcome<PieceEntry> Entry(Request request) => Facts.Signature(request).Then<PieceEntry>(signed =>
        new PieceEntry(request.Operands[0], request.Operands[2], request.Operands[1], signed.By) { At = signed.At, Id = signed.Id });

    private static ExitStatus RunLift(Request request, Terminal terminal) =>
        Facts.Write(request, terminal, workshop => Facts.Signature(request).Then(signed => workshop.Lift(
            new LiftEntry(request.Operands[0], request.Operands[1], signed.By) { Why = request[Why], At = signed.At, Id = signed.Id }).Then<Fact>(f => f)));
}
