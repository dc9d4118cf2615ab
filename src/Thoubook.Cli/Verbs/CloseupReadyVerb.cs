using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Workshop.Closing;

namespace Thoubook.Cli.Verbs;

internal static class CloseupReadyVerb
{
    private static readonly Option Lies = new("attitude", "WORD", $"how the engine lies: {string.Join(", ", Words.All<Attitude>())}; else as the step signed last had it");
    private static readonly Option Away = new("away", "TOOL", "a tool that is not at hand; may be given again") { Many = true };
    private static readonly Option All = new("all", null, "all that the rest wants first, not only what is next");

    public static readonly Verb Ready = new("closeup ready", "What can be done now, and what the rest wants first.", Run)
    {
        Operands = [CloseupVerbs.Engine],
        Options = [Lies, Away, All, Option.Json],
        More = "Half-done joints stand first. Steps that suit the way the engine lies come before those for which it must be turned, and of these the most pressing.",
        Examples =
        [
            new("thoubook closeup ready \"Sandpiper six\"", "what to do next."),
            new("thoubook closeup ready \"Sandpiper six\" --attitude inverted --away \"torque wrench\"", "with the engine upside down and the wrench lent out."),
            new("thoubook closeup ready \"Sandpiper six\" --json", "for a program: now, and later with what each wants."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal)
    {
        Attitude? attitude = null;
        if (request[Lies] is { } word)
        {
            if (!Words.Read<Attitude>(word, "--attitude").IsOk(out var read, out var problems))
                return terminal.Refuse(request, problems);
            attitude = read;
        }

        return CloseupVerbs.Ask(request, terminal, (_, closing) =>
        {
            if (request.Has(Option.Json))
                terminal.Json(CloseupReadyAnswer.Of(closing), AnswerJson.Shapes.CloseupReadyAnswer);
            else
                Tell(terminal, closing, request.Has(All));
            return ExitStatus.Good;
        }, new ClosingQuestion { Attitude = attitude, ToolsAway = request.All(Away) });
    }

    private static void Tell(Terminal terminal, CloseUp closing, bool all)
    {
        CloseupVerbs.Tell(terminal, "Half done:", closing.HalfDone.Select(w => w.Why));
        CloseupVerbs.Tell(terminal, "Owed:", closing.Debts.Select(CloseupVerbs.Said));
        var done = closing.Plan.Steps.Count(s => closing.IsDone(s.Name));
        terminal.Out.WriteLine($"{done} of {closing.Plan.Steps.Count} steps are done.{(closing.Attitude is { } lies ? $" The engine lies {lies.Word()}." : "")}{Left(closing)}");
        terminal.Out.WriteLine();
        if (closing.Now.Count == 0)
        {
            terminal.Out.WriteLine(closing.Later.Count == 0 ? "Nothing is left to do." : "Nothing can be done now.");
        }
        else
        {
            terminal.Out.WriteLine("Can be done now:");
            var now = new Table("step", "takes", "float", "attitude", "what");
            foreach (var ready in closing.Now)
                now.Add(ready.Step.Name.Text, CloseupVerbs.Minutes(ready.Step.Seconds / 60.0), ready.Times is { } t ? t.IsCritical ? "none" : CloseupVerbs.Minutes(t.TotalFloat) : "", Attitude(ready), ready.Step.Said);
            now.WriteTo(terminal);
        }

        var next = all ? closing.Later : [.. closing.Later.OrderBy(w => w.Wants.Count).Take(8)];
        if (next.Count == 0)
            return;
        terminal.Out.WriteLine();
        terminal.Out.WriteLine(all ? "The rest wants first:" : "Next, and what it wants first:");
        foreach (var waiting in next)
        {
            terminal.Out.WriteLine($"  {waiting.Step.Name}");
            foreach (var want in waiting.Wants.Take(all ? int.MaxValue : 4))
                terminal.Out.WriteLine($"    {want.Kind.Word()}: {want.Why}");
            if (!all && waiting.Wants.Count > 4)
                terminal.Out.WriteLine($"    and {waiting.Wants.Count - 4} more");
        }

        if (!all && closing.Later.Count > next.Count)
            terminal.Out.WriteLine($"{closing.Later.Count - next.Count} more wait; --all names them.");
        foreach (var fault in closing.Plan.Faults)
            terminal.Out.WriteLine($"Look at: {fault.What}");
    }

    private static string Attitude(ReadyStep ready) => ready.Step.Attitude is { } lies ? ready.SuitsAttitude ? lies.Word() : $"{lies.Word()} (turn it)" : "";

    private static string Left(CloseUp closing)
    {
        if (!closing.LeftFor(1).IsOk(out var one, out _) || !closing.LeftFor(2).IsOk(out var two, out _) || one.Length == 0)
            return "";
        var hand = one.Lent.Count switch { 0 => "", 1 => $" with a spare hand for {one.Lent[0]}", var n => $" with a spare hand for {n} steps" };
        return $" Left: {CloseupVerbs.Minutes(one.Length)} for one{hand}, {CloseupVerbs.Minutes(two.Length)} for two.";
    }
}
