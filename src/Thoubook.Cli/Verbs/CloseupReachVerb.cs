using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Cli.Verbs;

internal static class CloseupReachVerb
{
    public static readonly Verb Reach = new("closeup reach", "The shortest strip to reach a part, or to have a space open.", Run)
    {
        Operands = [CloseupVerbs.Engine, new("PART", "the part, by its place in the tree, or a space by name")],
        Options = [Option.Json],
        More = "Signed steps are undone that close over it, and everything done since that was built on these. The minutes are what these steps took, and will take again.",
        Examples =
        [
            new("thoubook closeup reach \"Sandpiper six\" lower-half/oil-pumps/pressure-pump/driver", "what comes off, in which order, and what must be new."),
            new("thoubook closeup reach \"Sandpiper six\" crank-chamber --json", "a space, for a program."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal) => CloseupVerbs.Ask(request, terminal, (_, closing) =>
    {
        if (!Find(closing, request.Operands[1].Trim()).IsOk(out var found, out var problems))
            return terminal.Refuse(request, problems);
        var (reach, takeOut) = found.Part is { } part ? (closing.ToReach(part), closing.ToTakeOut(part)) : (closing.ToGetBackIn(found.Space!.Value), null);
        if (request.Has(Option.Json))
        {
            terminal.Json(
                new CloseupReachAnswer(request.Operands[1].Trim(), reach.Minutes, [.. reach.Steps.Select(s => s.Text)], reach.Consumables, takeOut is null ? null : WayBackInAnswer.Of(takeOut)),
                AnswerJson.Shapes.CloseupReachAnswer);
            return ExitStatus.Good;
        }

        Tell(terminal, found.Part is null ? "To have it open" : "To reach it", reach);
        if (takeOut is not null && !takeOut.Steps.SequenceEqual(reach.Steps))
            Tell(terminal, "To have it out", takeOut);
        return ExitStatus.Good;
    });

    private static Outcome<(PartName? Part, SpaceName? Space)> Find(CloseUp closing, string text)
    {
        if (PartName.TryRead(text, out var part, out _) && closing.Plan.Record.Index.Part(part) is not null)
            return (part, null);
        if (closing.Plan.Spaces.All.Any(s => s.Name.Text == text))
            return (null, new SpaceName(text));
        var known = closing.Plan.Record.Parts.Select(p => p.Name.Path).Concat(closing.Plan.Spaces.All.Select(s => s.Name.Text));
        return new Problem("unknown-part", "PART", $"\"{text}\"", "The engine has no part and no space of that name.", Nearest.Advice(text, known, "thoubook appraise ENGINE names the parts."));
    }

    private static void Tell(Terminal terminal, string head, WayBackIn way)
    {
        if (way.Steps.Count == 0)
        {
            terminal.Out.WriteLine($"{head}: nothing need be undone.");
            return;
        }

        terminal.Out.WriteLine($"{head}, undo {way.Steps.Count} {(way.Steps.Count == 1 ? "step" : "steps")}, {CloseupVerbs.Minutes(way.Minutes)}:");
        foreach (var step in way.Steps)
            terminal.Out.WriteLine($"  {step}");
        if (way.Consumables.Count > 0)
            terminal.Out.WriteLine($"Must be new: {CloseupVerbs.Consumables(way)}.");
        terminal.Out.WriteLine();
    }
}
