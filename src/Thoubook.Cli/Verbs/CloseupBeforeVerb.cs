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
            new("thoubook closeup before \"Sandpiper six\" crankcase", "before the sump goes on."),
            new("thoubook closeup before \"Sandpiper six\" crankcase --json", "for a program."),
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
        foreach (var missing in open)
            Tell(terminal, missing);
        var covered = before.Missing.Where(m => m.CoveredBy is not null).ToList();
        if (covered.Count > 0)
            terminal.Out.WriteLine("May be closed over:");
        foreach (var missing in covered)
            Tell(terminal, missing);
    }

    private static void Tell(Terminal terminal, Missing missing)
    {
        terminal.Out.WriteLine($"  {missing.Want.Kind.Word()}{(missing.Want.IsHalfDone ? ", half done" : "")}: {missing.Want.Why}");
        if (missing.CoveredBy is { } cover)
            terminal.Out.WriteLine($"      {cover.Headline}");
        var way = missing.CostToGetBackIn;
        terminal.Out.WriteLine(way.Steps.Count == 0
            ? "      can be reached at any time"
            : $"      to get back in later: {CloseupVerbs.Minutes(way.Minutes)}, {way.Steps.Count} {(way.Steps.Count == 1 ? "step" : "steps")}{(way.Consumables.Count > 0 ? $"; new: {string.Join(", ", way.Consumables.GroupBy(c => c, StringComparer.Ordinal).Select(g => g.Count() == 1 ? g.Key : $"{g.Count()} × {g.Key}"))}" : "")}");
    }
}
