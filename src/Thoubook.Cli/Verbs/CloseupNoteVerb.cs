using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Cli.Verbs;

internal static class CloseupNoteVerb
{
    public static readonly Verb Note = new("closeup note", "The leaving note: where the work was left, half-done joints first.", Run)
    {
        Operands = [CloseupVerbs.Engine],
        Options = [Option.Json],
        More = "It makes itself from what was written; nothing need be done when work stops.",
        Examples = [new("thoubook closeup note \"Sandpiper six\"", "read it when you come back.")],
    };

    private static ExitStatus Run(Request request, Terminal terminal) => Workshops.With(request, terminal, workshop =>
    {
        if (!workshop.LeavingNote(request.Operands[0]).IsOk(out var note, out var problems))
            return terminal.Refuse(request, problems);
        if (request.Has(Option.Json))
            terminal.Json(LeavingNoteAnswer.Of(note), AnswerJson.Shapes.LeavingNoteAnswer);
        else
            Tell(terminal, note);
        return ExitStatus.Good;
    });

    private static void Tell(Terminal terminal, LeavingNote note)
    {
        CloseupVerbs.Tell(terminal, "Half done:", note.HalfDone.Select(w => w.Why));
        CloseupVerbs.Tell(terminal, "Running:", note.Running.Select(r => r.Kind == RunningKind.Cure
            ? $"{r.Step} cures until {r.Until:uuuu-MM-dd HH:mm}"
            : $"{r.Step} is open until {r.Until:uuuu-MM-dd HH:mm}: what is built on it is done by then"));
        CloseupVerbs.Tell(terminal, "Begun and not signed:", note.Begun.Select(s => s.Name.Text));
        CloseupVerbs.Tell(terminal, "No longer stands:", note.Fallen.Select(f => $"{f.Fact.Headline}: {f.Standing.Why}"));
        CloseupVerbs.Tell(terminal, "Left over:", note.LeftOver.Select(w => w.Why));
        CloseupVerbs.Tell(terminal, "Owed:", note.Debts.Select(CloseupVerbs.Said));
        if (note.Attitude is { } lies)
            terminal.Out.WriteLine($"The engine lies {lies.Word()}.");
        terminal.Out.WriteLine(note.Last is { } last ? $"Last written: {last.Headline}, by {last.By}, {last.At:uuuu-MM-dd HH:mm}." : "Nothing is written yet.");
    }
}
