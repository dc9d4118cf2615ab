using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Workshop.Starters;

namespace Thoubook.Cli.Verbs;

internal static class CloseupStartVerb
{
    private static readonly Option Questions = new("questions", null, "lists what the starter asks, with what is taken where a question is not answered");
    private static readonly Option See = new("see", null, "shows what would be added and writes nothing");

    public static readonly Verb Start = new("closeup start", "Adds a sub-assembly to an engine: its parts, fits, joints and steps, from a dozen answers.", Run)
    {
        Operands = [new("ENGINE", "the engine by name") { Optional = true }, new("STARTER", "which sub-assembly; left out: they are listed") { Optional = true }, new("KEY=VALUE", "an answer; a value with spaces goes in quotes") { Optional = true, Rest = true }],
        Options = [Questions, See, Option.Confirm, Option.By, Option.Json],
        More = """
            Parts that the engine has are used by their usual names; where two may be meant it is asked. A part or a figure that it has under another name is answered by the starter's
            name for it, such as pressure-pump/joint=oil-pump/cover-gasket. What is there stays as it is: only what is missing is added, and it says what it left. Limits are left for your document.
            """,
        Examples =
        [
            new("thoubook closeup start", "the sub-assemblies there are."),
            new("thoubook closeup start \"Sandpiper six\" gear-pump --questions", "what is asked for a gear pump."),
            new("thoubook closeup start \"Sandpiper six\" gear-pump seal=gasket screws=8 --see", "what would be added; nothing is written."),
            new("thoubook closeup start \"Sandpiper six\" gear-pump seal=gasket screws=8 \"locking=lock wire\" --by owner", "adds it."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal)
    {
        if (request.Operands.Count < 2)
            return List(request, terminal);
        if (!Starter.Find(request.Operands[1]).IsOk(out var starter, out var problems))
            return terminal.Refuse(request, problems);
        if (request.Has(Questions))
            return Ask(request, terminal, starter);
        if (!KeyValues.Read(request.Operands.Skip(2).Concat(request.Confirmed), $"thoubook closeup start ENGINE {starter.Key} --questions").IsOk(out var answers, out problems))
            return terminal.Refuse(request, problems);

        return Workshops.With(request, terminal, workshop =>
        {
            var engine = request.Operands[0];
            var outcome = request.Has(See) ? workshop.SeeStarter(engine, starter.Key, answers) : workshop.AddStarter(engine, starter.Key, answers, Facts.By(request));
            if (!outcome.IsOk(out var started, out var refused))
                return terminal.Refuse(request, refused);
            if (request.Has(Option.Json))
                terminal.Json(StartedAnswer.Of(starter.Key, started, !request.Has(See)), AnswerJson.Shapes.StartedAnswer);
            else
                Tell(terminal, started, !request.Has(See));
            return ExitStatus.Good;
        });
    }

    private static ExitStatus List(Request request, Terminal terminal)
    {
        if (request.Has(Option.Json))
        {
            terminal.Json(Starter.All.Select(StarterAnswer.Of).ToList(), AnswerJson.Shapes.IReadOnlyListStarterAnswer);
            return ExitStatus.Good;
        }

        var table = new Table("starter", "what", "questions", "minutes to answer");
        foreach (var starter in Starter.All)
            table.Add(starter.Key, starter.Words, $"{starter.Questions.Count}", $"{starter.Minutes}");
        table.WriteTo(terminal);
        return ExitStatus.Good;
    }

    private static ExitStatus Ask(Request request, Terminal terminal, Starter starter)
    {
        if (request.Has(Option.Json))
            terminal.Json([StarterAnswer.Of(starter)], AnswerJson.Shapes.IReadOnlyListStarterAnswer);
        else
            QuestionTable.Of(starter.Questions).WriteTo(terminal);
        return ExitStatus.Good;
    }

    private static void Tell(Terminal terminal, Started started, bool written)
    {
        var added = started.Added;
        var table = new Table("step", "kind", "what", "min", "holds", "closes");
        foreach (var step in added.Steps)
            table.Add(step.Name.Text, step.Kind.Word(), step.Said, $"{step.Seconds / 60}", $"{step.Holds.Count}", string.Join(", ", step.Closes));
        table.WriteTo(terminal);
        foreach (var taken in started.Taken)
            terminal.Out.WriteLine($"Taken: {taken.There} for {taken.Drawn}.");
        foreach (var wider in started.Widened)
            terminal.Out.WriteLine($"Said in addition: {wider}.");
        foreach (var part in started.Unplaced)
            terminal.Out.WriteLine($"Look at: no step puts {part} in place.");
        foreach (var fault in started.Faults)
            terminal.Out.WriteLine($"Look at: {fault.What}");
        if (started.Left.Count > 0)
            terminal.Out.WriteLine($"Left as it is: {string.Join(", ", started.Left)}.");
        terminal.Error.WriteLine($"{added.Parts.Count} parts, {added.Dimensions.Count} dimensions, {added.Fits.Count} fits, {added.Spaces.Count} spaces, {added.Joints.Count} joints and {added.Steps.Count} steps {(written ? "added" : "would be added; nothing is written")}.");
    }
}
