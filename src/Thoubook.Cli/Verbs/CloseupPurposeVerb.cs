using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Workshop;
using Thoubook.Workshop.Closing;

namespace Thoubook.Cli.Verbs;

internal static class CloseupPurposeVerb
{
    private static readonly Option Change = new("change", null, "changes it; else it is only shown what would come of it");

    public static readonly Verb Purpose = new("closeup purpose", "What another purpose would come to: departures that no longer stand, what undoing each costs, and lines of the permission that lapse.", Run)
    {
        Operands = [CloseupVerbs.Engine, new("PURPOSE", $"{string.Join(", ", Words.All<Purpose>())}; left out: the present one") { Optional = true }],
        Options = [Change, Option.By, Option.Json],
        More = "Exit status 0 where every departure stands for that purpose, 1 where one does not. Nothing is undone by a change; what no longer stands says so from then on.",
        Examples =
        [
            new("thoubook closeup purpose \"Sandpiper six\" working", "what stands in the way of putting it to work."),
            new("thoubook closeup purpose \"Sandpiper six\" working --change --by owner", "changes what it is for."),
        ],
    };

    public static readonly Verb States = new("closeup states", "Parts that are not simply fitted: of another modification state, deleted, blanked off, deferred, of unknown function; what goes together; tools kept.", RunStates)
    {
        Operands = [CloseupVerbs.Engine],
        Options = [Option.Json],
        Examples = [new("thoubook closeup states \"Sandpiper six\"", "what belongs to this engine, and what stands in the stead of what does not.")],
    };

    private static ExitStatus Run(Request request, Terminal terminal) => Workshops.With(request, terminal, workshop =>
    {
        var name = request.Operands[0];
        if (!workshop.Engine(name).Then(record => request.Operands.Count > 1 ? Words.Read<Purpose>(request.Operands[1], "PURPOSE") : record.Engine.Purpose).Then(purpose => workshop.PurposeChange(name, purpose)).IsOk(out var change, out var problems))
            return terminal.Refuse(request, problems);
        if (request.Has(Change) && !workshop.ChangePurpose(new PurposeEntry(name, change.To, Facts.By(request))).IsOk(out _, out problems))
            return terminal.Refuse(request, problems);
        if (request.Has(Option.Json))
            terminal.Json(PurposeAnswer.Of(change, request.Has(Change)), AnswerJson.Shapes.PurposeAnswer);
        else
            Tell(terminal, change, request.Has(Change));
        return change.Falls.Count == 0 ? ExitStatus.Good : ExitStatus.FallsShort;
    });

    private static void Tell(Terminal terminal, PurposeChange change, bool changed)
    {
        terminal.Out.WriteLine(change.From == change.To ? $"For {change.To.Word()}, as it is." : changed ? $"Changed from {change.From.Word()} to {change.To.Word()}." : $"From {change.From.Word()} to {change.To.Word()}; nothing is changed yet.");
        terminal.Out.WriteLine();
        if (change.Falls.Count > 0)
        {
            terminal.Out.WriteLine("Departures that would not stand:");
            foreach (var fall in change.Falls)
            {
                terminal.Out.WriteLine($"  {fall.Departure.What} ({string.Join(", ", fall.Departure.Purposes.Select(p => p.Word()))}){(fall.StandsNow ? "" : ", as already now")}");
                terminal.Out.WriteLine($"      {Cost(fall.Cost)}{(fall.Departure.Undoing is { } undoing ? $"; {undoing}" : "")}");
            }

            terminal.Out.WriteLine($"All of them together: {Cost(change.AllUndone)}.");
            terminal.Out.WriteLine();
        }

        CloseupVerbs.Tell(terminal, "Lines of the permission to run that lapse:", change.Lapses.Select(l => l.Line.ToString()));
        CloseupVerbs.Tell(terminal, "Departures that would stand:", change.Comes.Select(d => d.What));
        if (change.To == Record.Purpose.Licensed)
            terminal.Out.WriteLine($"Caution: {ClosingCautions.Licensed.Text}");
    }

    private static string Cost(WayBackIn way) => way.Steps.Count == 0
        ? "nothing signed need be undone"
        : $"{way.Steps.Count} {(way.Steps.Count == 1 ? "step" : "steps")}, {CloseupVerbs.Minutes(way.Minutes)}{(way.Consumables.Count > 0 ? $"; new: {string.Join(", ", way.Consumables)}" : "")}";

    private static ExitStatus RunStates(Request request, Terminal terminal) => Workshops.With(request, terminal, workshop =>
    {
        if (!workshop.PartsApart(request.Operands[0]).IsOk(out var apart, out var problems))
            return terminal.Refuse(request, problems);
        if (request.Has(Option.Json))
        {
            terminal.Json(StatesAnswer.Of(apart), AnswerJson.Shapes.StatesAnswer);
            return ExitStatus.Good;
        }

        terminal.Out.WriteLine(apart.States.Count == 0 ? "Which modification states it has is not said: all parts belong to it." : $"In the states: {string.Join(", ", apart.States)}.");
        terminal.Out.WriteLine();
        CloseupVerbs.Tell(terminal, "Of another state:", apart.OfAnotherState.Select(p => $"{p.Name}: {p.ModificationState}"));
        CloseupVerbs.Tell(terminal, "Deleted:", apart.Deleted.Select(p => $"{p.Name}: by {p.DeletedBy}"));
        CloseupVerbs.Tell(terminal, "Not on this engine:", apart.NotOnThisEngine.Select(p => p.Name.Path));
        CloseupVerbs.Tell(terminal, "Blanked off or deferred:", apart.InStead.Select(p => $"{p.Part.Name}: {p.Part.Intent.Word()}{(p.Part.InItsStead is { } stead ? $", in its stead {stead}" : "")}{(p.Want is { } want ? $"  ({want.Why})" : "")}"));
        CloseupVerbs.Tell(terminal, "Together or not at all:", apart.Together.Select(t => $"{string.Join(" and ", t.Together.Parts)}{(t.IsWhole ? "" : $"  ({string.Join(" and ", t.Left)} not to be fitted)")}"));
        CloseupVerbs.Tell(terminal, "Nobody knows what for:", apart.FunctionUnknown.Select(p => $"{p.Name}{(p.Note is { } note ? $": {note}" : "")}"));
        CloseupVerbs.Tell(terminal, "Tools:", apart.Tools.Select(t => $"{t.Name}{(t.What is { } what ? $", {what}" : "")}{(t.Made is { } made ? $", made {made}" : "")}: {t.Kept ?? "where it is kept is not said"}"));
        return ExitStatus.Good;
    });
}
