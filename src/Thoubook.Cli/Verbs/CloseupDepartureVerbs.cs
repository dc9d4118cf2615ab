using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Workshop;

namespace Thoubook.Cli.Verbs;

internal static class CloseupDepartureVerbs
{
    private static readonly Option Why = new("why", "REASON", "the reason");
    private static readonly Option Kind = new("kind", "WORDS", $"{string.Join(", ", Words.All<DepartureKind>())}; else other");
    private static readonly Option Piece = new("piece", "PIECE", "the piece that it belongs to; it travels with it");
    private static readonly Option Joint = new("joint", "JOINT", "the joint that it belongs to");
    private static readonly Option Item = new("item", "ITEM", "what may be closed over meanwhile: part, joint, step, hold or count, and its name, such as \"joint lower-half/flange\"");
    private static readonly Option Evidence = new("evidence", "TEXT", "what shows that it holds");
    private static readonly Option For = new("for", "PURPOSE", $"for which it stands: {string.Join(", ", Words.All<Purpose>())}; may be given again; else for what the engine is for now") { Many = true };
    private static readonly Option Undoing = new("undoing", "TEXT", "how it is undone");
    private static readonly Option How = new("how", "TEXT", "how it was done");

    public static readonly Verb Depart = new("closeup depart", "Writes down a departure from the maker's method, before or after the fact.", RunDepart)
    {
        Operands = [CloseupVerbs.Engine, new("WHAT", "what is done otherwise")],
        Options = [Why, Kind, Piece, Joint, Item, Evidence, For, Undoing, Option.By, Option.At, Option.Id],
        More = "It belongs to a piece, with which it goes to another engine, or to a joint. Mark the piece itself as well: paper is lost sooner than steel.",
        Examples = [new("thoubook closeup depart \"Sandpiper six\" \"locking wire in place of tab washers\" --why \"none to be had\" --kind \"locking changed\" --joint lower-half/flange --for display --for stand-run --undoing \"cut the wire, fit tabs\" --by owner", "good enough for a stand.")],
    };

    public static readonly Verb Owe = new("closeup owe", "Puts something off with a deadline.", RunOwe)
    {
        Operands = [CloseupVerbs.Engine, new("WHAT", "what is still to be done"), new("DEADLINE", string.Join(", ", Words.All<Deadline>()))],
        Options = [Item, Why, Option.By, Option.At, Option.Id],
        Examples = [new("thoubook closeup owe \"Sandpiper six\" \"bend the last tab\" \"before it is turned\" --item \"joint lower-half/flange\" --why \"no drift here\" --by bench", "owed, and shown until it is settled.")],
    };

    public static readonly Verb Settle = new("closeup settle", "Writes down that what was owed is done.", RunSettle)
    {
        Operands = [CloseupVerbs.Engine, new("UUID", "the debt, as closeup note names it")],
        Options = [How, Option.By, Option.At, Option.Id],
        Examples = [new("thoubook closeup settle \"Sandpiper six\" 0192f0b1-0000-7000-8000-000000005004 --how \"annealed and fitted\" --by bench", "no longer owed.")],
    };

    private static ExitStatus RunDepart(Request request, Terminal terminal) => Facts.Write(request, terminal, workshop => Facts.Signature(request).Then(signed =>
    {
        var purposes = new List<Purpose>();
        foreach (var word in request.All(For))
        {
            if (!Words.Read<Purpose>(word, "--for").IsOk(out var purpose, out var problems))
                return new Outcome<Fact>.Refused(problems);
            purposes.Add(purpose);
        }

        return (request[Kind] is { } text ? Words.Read<DepartureKind>(text, "--kind") : DepartureKind.Other).Then(kind => workshop.Depart(
            new DepartureEntry(request.Operands[0], request.Operands[1], request[Why] ?? "", signed.By)
            {
                At = signed.At,
                Id = signed.Id,
                Kind = kind,
                Piece = request[Piece],
                Joint = request[Joint],
                Item = request[Item],
                Evidence = request[Evidence],
                Purposes = purposes,
                Undoing = request[Undoing],
            }).Then<Fact>(f => f));
    }));

    private static ExitStatus RunOwe(Request request, Terminal terminal) => Facts.Write(request, terminal, workshop => Facts.Signature(request).Then(signed =>
        Words.Read<Deadline>(request.Operands[2], "DEADLINE").Then(deadline => workshop.Owe(
            new OwedEntry(request.Operands[0], request.Operands[1], deadline, signed.By) { At = signed.At, Id = signed.Id, Item = request[Item], Why = request[Why] }).Then<Fact>(f => f))));

    private static ExitStatus RunSettle(Request request, Terminal terminal) => Facts.Write(request, terminal, workshop => Facts.Signature(request).Then(signed =>
        Facts.Identifier(request.Operands[1]).Then(id => workshop.Settle(
            new SettleEntry(request.Operands[0], id, signed.By) { At = signed.At, Id = signed.Id, How = request[How] }).Then<Fact>(f => f))));
}
