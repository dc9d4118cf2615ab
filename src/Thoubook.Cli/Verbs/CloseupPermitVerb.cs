using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Workshop;
using Thoubook.Workshop.Closing;

namespace Thoubook.Cli.Verbs;

internal static class CloseupPermitVerb
{
    private static readonly Option Withdraw = new("withdraw", null, "takes a line back that was granted");
    private static readonly Option Note = new("note", "TEXT", "a remark kept with it; with --withdraw the reason");

    public static readonly Verb Permit = new("closeup permit", "Permission to run: the list with what is missing, or one line of it granted by name.", Run)
    {
        Operands = [CloseupVerbs.Engine, new("LINE", "the line that is granted, such as \"joint pipes/suction-to\"; left out: the list") { Optional = true }],
        Options = [Withdraw, Note, Option.By, Option.At, Option.Id, Option.Json],
        More = "Exit status of the list: 0 where every line is granted and stands, 1 where one is not. A line lapses when what it relied on is disturbed, and no other with it. Use under a licence is released by the licensed body alone.",
        Examples =
        [
            new("thoubook closeup permit \"Sandpiper six\"", "what is granted, what lapsed and why, what is missing."),
            new("thoubook closeup permit \"Sandpiper six\" \"joint pipes/suction-to\" --note \"dry at 60 psi\" --by owner", "one line granted."),
            new("thoubook closeup permit \"Sandpiper six\" \"joint pipes/suction-to\" --withdraw --note \"weeps\" --by owner", "taken back."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal)
    {
        if (request.Operands.Count == 1)
            return request.Has(Withdraw)
                ? terminal.Refuse(request, [new("too-few", "", "no LINE", "LINE is the line that is taken back.", "Name it.")])
                : Workshops.With(request, terminal, workshop => Tell(request, terminal, workshop));
        return Facts.Write(request, terminal, workshop => Facts.Signature(request).Then(signed => request.Has(Withdraw)
            ? workshop.Withdraw(new WithdrawEntry(request.Operands[0], request.Operands[1], signed.By) { At = signed.At, Id = signed.Id, Why = request[Note] }).Then<Fact>(f => f)
            : workshop.Grant(new PermitEntry(request.Operands[0], request.Operands[1], signed.By) { At = signed.At, Id = signed.Id, Note = request[Note] }).Then<Fact>(f => f)));
    }

    private static ExitStatus Tell(Request request, Terminal terminal, OpenWorkshop workshop)
    {
        if (!workshop.Permission(request.Operands[0]).IsOk(out var permission, out var problems))
            return terminal.Refuse(request, problems);
        if (request.Has(Option.Json))
            terminal.Json(PermissionAnswer.Of(permission), AnswerJson.Shapes.PermissionAnswer);
        else
            InWords(terminal, permission);
        return permission.IsGranted ? ExitStatus.Good : ExitStatus.FallsShort;
    }

    private static void InWords(Terminal terminal, PermissionToRun permission)
    {
        terminal.Out.WriteLine(permission.NotGrantedHere ?? (permission.IsGranted ? $"Granted for {permission.Purpose.Word()}: every line stands." : $"Not granted for {permission.Purpose.Word()}: {permission.Lines.Count(l => l.IsGranted)} of {permission.Lines.Count} lines stand."));
        terminal.Out.WriteLine();
        CloseupVerbs.Tell(terminal, "Lapsed:", permission.Lines.Where(l => l.HasLapsed).Select(Said));
        CloseupVerbs.Tell(terminal, "Missing:", permission.Lines.Where(l => !l.HasLapsed && l.Ground.Missing is not null).Select(Said));
        CloseupVerbs.Tell(terminal, "Can be granted:", permission.Lines.Where(l => l is { HasLapsed: false, CanBeGranted: true }).Select(Said));
        CloseupVerbs.Tell(terminal, "Granted:", permission.Lines.Where(l => l.IsGranted).Select(l => $"{Said(l)}, by {l.Last!.By} on {l.Last.At.Date:uuuu-MM-dd}"));
        terminal.Out.WriteLine($"Caution: {ClosingCautions.StopLimits.Text}");
    }

    private static string Said(LineNow line) => $"{line.Ground.Line}: {line.Ground.What}{(line.Why.Length > 0 ? $"  ({line.Why})" : "")}";
}
