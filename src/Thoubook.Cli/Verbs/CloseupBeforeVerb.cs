using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Cli.Verbs;

internal static class CloseupBeforeVerb
{
    public static readonly Verb Before = new("closeup before", "What is missing in a space before it is closed, and what each thing would cost to reach later.", Run)
    {
        Operands = [CloseupVerbs.Engine, CloseupVerbs.Space],
        Options = [Option.Json],
        More = "Exit status 0 where nothing is missing that is not covered by a departure or owed, 1 where something is. The cost is that of getting back in once the whole engine is closed up.",
        Examples =
        [
            new("thoubook closeup before \"Sandpiper six\" crank-chamber", "before the lower half goes on."),
            new("thoubook closeup before \"Sandpiper six\" crank-chamber --json", "for a program."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal) => CloseupVerbs.Ask(request, terminal, (_, closing) =>
    {
        if (!CloseupVerbs.FindSpace(closing, request.Operands[1]).IsOk(out var space, out var problems))
            return terminal.Refuse(request, problems);
        var before = closing.BeforeYouClose(space);
        if (request.Has(Option.Json))
            terminal.Json(CloseupBeforeAnswer.Of(before), AnswerJson.Shapes.CloseupBeforeAnswer);
        else
            Tell(terminal, before);
        return before.MayBeClosed ? ExitStatus.Good : ExitStatus.FallsShort;
    });

    private static void Tell(Terminal terminal, BeforeClosing before)
    {
        terminal.Out.WriteLine($"{before.Space}: {(before.IsClosed ? "closed" : "open")}. {(before.Closes.Count == 0 ? "No step closes it." : $"Closed by {string.Join(", ", before.Closes)}.")}");
        terminal.Out.WriteLine();
        if (before.Missing.Count == 0)
        {
            terminal.Out.WriteLine("Nothing is missing in it.");
            return;
        }

        var open = before.Missing.Where(m => m.CoveredBy is null).ToList();
        terminal.Out.WriteLine(open.Count == 0 ? "Everything missing is covered." : $"Missing: {open.Count}.");
        Tell(terminal, open);
        var covered = before.Missing.Where(m => m.CoveredBy is not null).ToList();
        if (covered.Count > 0)
            terminal.Out.WriteLine("\nMay be closed over:");
        Tell(terminal, covered);
    }

    /// <summary>The same cost is said once, over all that it is the cost of.</summary>
    private static void Tell(Terminal terminal, IReadOnlyList<Missing> missing)
    {
        foreach (var group in missing.GroupBy(m => string.Join('\n', m.CostToGetBackIn.Steps)))
        {
            var way = group.First().CostToGetBackIn;
            terminal.Out.WriteLine();
            terminal.Out.WriteLine(way.Steps.Count == 0
                ? "  Can be reached at any time:"
                : $"  To get back in later: {CloseupVerbs.Minutes(way.Minutes)}, {way.Steps.Count} {(way.Steps.Count == 1 ? "step" : "steps")}{(way.Consumables.Count > 0 ? $"; new: {CloseupVerbs.Consumables(way)}" : "")}");
            foreach (var one in group)
                terminal.Out.WriteLine($"    {one.Want.Kind.Word()}{(one.Want.IsHalfDone ? ", half done" : "")}: {one.Want.Why}{(one.CoveredBy is { } cover ? $". {cover.Headline}" : "")}");
        }
    }
}
