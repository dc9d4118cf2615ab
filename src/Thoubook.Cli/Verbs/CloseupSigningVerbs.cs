using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Workshop;

namespace Thoubook.Cli.Verbs;

internal static class CloseupSigningVerbs
{
    private static readonly Option SecondLook = new("second-look", null, "the second look that the step asks for: another person's, or the same person's on another day");
    private static readonly Option Photographed = new("photographed", null, "the photograph asked for was taken");
    private static readonly Option Placing = new("placing", null, "the pieces chosen for the parts that it places are written as placed");
    private static readonly Option Applied = new("applied", "VALUE", "what was put on it: a torque, a stretch, an angle or a load, such as \"18 lbf ft\"");
    private static readonly Option NoteText = new("note", "TEXT", "a note");
    private static readonly Option Why = new("why", "REASON", "the reason");
    private static readonly Option OfStep = new("step", "STEP", "the signature of this step");
    private static readonly Option OfJoint = new("joint", "JOINT", "the state of this joint");
    private static readonly Option OfFact = new("of", "UUID", "this very entry");
    private static readonly Option InSpace = new("space", "SPACE", "out of which they came, or in which they were used");

    public static readonly Verb Sign = new("closeup sign", "Signs a step as done.", RunSign)
    {
        Operands = [CloseupVerbs.Engine, CloseupVerbs.Step],
        Options = [Placing, Photographed, SecondLook, NoteText, Option.By, Option.At, Option.Id],
        More = "What the step wants first is named thing by thing, and nothing is signed. Something missing is closed over only with a departure (closeup depart) or as owed (closeup owe).",
        Examples =
        [
            new("thoubook closeup sign \"Sandpiper six\" pumps/pressure-pump/gears --placing --by bench", "with the gears written as placed."),
            new("thoubook closeup sign \"Sandpiper six\" lower-half/on --photographed --by owner", "refused while anything inside is missing."),
        ],
    };

    public static readonly Verb Joint = new("closeup joint", "Writes down how far a joint is made.", RunJoint)
    {
        Operands = [CloseupVerbs.Engine, new("JOINT", "the joint by name"), new("STAGE", string.Join(", ", Words.All<JointStage>()))],
        Options = [Applied, NoteText, Option.By, Option.At, Option.Id, Option.Confirm],
        More = "A lower state than before says that it was slackened: what relied on it no longer stands.",
        Examples = [new("thoubook closeup joint \"Sandpiper six\" lower-half/flange tightened --applied \"12 lbf ft\" --by bench", "pulled up to its torque and not yet locked.")],
    };

    public static readonly Verb Accept = new("closeup accept", "Accepts a hold point of a step by name.", RunAccept)
    {
        Operands = [CloseupVerbs.Engine, CloseupVerbs.Step, new("HOLD", "the hold point, in its words")],
        Options = [Why, Option.By, Option.At, Option.Id],
        More = "A figure that its verdict passes needs no acceptance; one that it does not pass is accepted on judgement, with the reason.",
        Examples = [new("thoubook closeup accept \"Sandpiper six\" lower-half/on \"fitted bolts in the four reamed holes\" --by owner", "looked at, and in their places.")],
    };

    public static readonly Verb Undo = new("closeup undo", "Ends a signature or a joint's state: it was undone again, by no mistake.", RunUndo)
    {
        Operands = [CloseupVerbs.Engine],
        Options = [OfStep, OfJoint, OfFact, Why, Option.By, Option.At, Option.Id],
        More = "For something written by mistake, strike it out instead (reading strike).",
        Examples = [new("thoubook closeup undo \"Sandpiper six\" --step lower-half/on --why \"to look at the pick-up\" --by bench", "the lower half is off again.")],
    };

    public static readonly Verb Count = new("closeup count", "Counts plugs, jets, shims, tools or rags out, or in again.", RunCount)
    {
        Operands = [CloseupVerbs.Engine, new("NUMBER", "how many"), new("WHAT", "of what"), new("WAY", string.Join(" or ", Words.All<CountedWay>()))],
        Options = [InSpace, NoteText, Option.By, Option.At, Option.Id],
        More = "What is counted out of a space and not in again is missing before that space is closed.",
        Examples = [new("thoubook closeup count \"Sandpiper six\" 6 \"gallery plugs\" out --space crank-chamber --by bench", "six came out.")],
    };

    private static ExitStatus RunSign(Request request, Terminal terminal) => Facts.Write(request, terminal, workshop => Facts.Signature(request).Then(signed => workshop.Sign(
        new SignEntry(request.Operands[0], request.Operands[1], signed.By)
        {
            At = signed.At,
            Id = signed.Id,
            SecondLook = request.Has(SecondLook),
            Photographed = request.Has(Photographed),
            Placing = request.Has(Placing),
            Note = request[NoteText],
        }).Then<Fact>(f => f)));

    private static ExitStatus RunJoint(Request request, Terminal terminal) => Facts.Write(request, terminal, workshop => Facts.Signature(request).Then(signed =>
        Words.Read<JointStage>(request.Operands[2], "STAGE").Then(stage => workshop.MakeJoint(
            new JointEntry(request.Operands[0], request.Operands[1], stage, signed.By) { At = signed.At, Id = signed.Id, Applied = request[Applied], Note = request[NoteText], Confirmed = request.Confirmed }).Then<Fact>(f => f))));

    private static ExitStatus RunAccept(Request request, Terminal terminal) => Facts.Write(request, terminal, workshop => Facts.Signature(request).Then(signed => workshop.Accept(
        new AcceptEntry(request.Operands[0], request.Operands[1], request.Operands[2], signed.By) { At = signed.At, Id = signed.Id, Why = request[Why] }).Then<Fact>(f => f)));

    private static ExitStatus RunUndo(Request request, Terminal terminal) => Facts.Write(request, terminal, workshop => Facts.Signature(request).Then(signed =>
    {
        FactId? of = null;
        if (request[OfFact] is { } text)
        {
            if (!Facts.Identifier(text).IsOk(out var id, out var problems))
                return new Outcome<Fact>.Refused(problems);
            of = id;
        }

        return workshop.Undo(new UndoEntry(request.Operands[0], signed.By) { At = signed.At, Id = signed.Id, Step = request[OfStep], Joint = request[OfJoint], Of = of, Why = request[Why] }).Then<Fact>(f => f);
    }));

    private static ExitStatus RunCount(Request request, Terminal terminal) => Facts.Write(request, terminal, workshop => Facts.Signature(request).Then(signed =>
        Words.Read<CountedWay>(request.Operands[3], "WAY").Then(way => workshop.Count(
            new CountEntry(request.Operands[0], request.Operands[2], request.Operands[1], way, signed.By) { At = signed.At, Id = signed.Id, Space = request[InSpace], Note = request[NoteText] }).Then<Fact>(f => f))));
}
