using NodaTime;
using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Files;
using Thoubook.Files.Text;
using Thoubook.Record.Quantities;
using Thoubook.Workshop.Closing;

namespace Thoubook.Cli.Verbs;

internal static class CloseupPlanVerb
{
    private static readonly Option People = new("people", "NUMBER", "how many do the work; else as many as it takes");

    public static readonly Verb Plan = new("closeup plan", "The times of a plan from its file on its own.", Run)
    {
        Operands = [new("FILE", "a file with a steps: section")],
        Options = [People, Option.Confirm, Option.Json],
        More = "No workshop is needed. The order is found from parts, joints, spaces and hold points, and from what is written by hand. Times are in minutes from the beginning. The form of the file is told in docs/closing.md.",
        Examples =
        [
            new("thoubook closeup plan engine.yaml", "earliest and latest times, and floats."),
            new("thoubook closeup plan engine.yaml --people 2 --json", "for a program: how long two people take as well."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal)
    {
        var path = request.Operands[0];
        var question = new PlanQuestion { People = request[People], Confirmed = request.Confirmed };
        var answered = TextFile.ReadPath(path).Then(text => question.Ask(text, Path.GetFileName(path), new ImportTerms(terminal.Clock.GetCurrentInstant().WithOffset(Offset.Zero), Environment.UserName)));
        if (!answered.IsOk(out var answer, out var problems))
            return terminal.Refuse(request, problems);
        if (request.Has(Option.Json))
            terminal.Json(PlanTimesAnswer.Of(answer), AnswerJson.Shapes.PlanTimesAnswer);
        else
            Tell(terminal, answer);
        return ExitStatus.Good;
    }

    private static void Tell(Terminal terminal, PlanAnswer answer)
    {
        var steps = new Table("step", "earliest", "to", "latest", "to", "float", "free");
        foreach (var step in answer.Plan.InOrder)
        {
            var times = answer.Schedule.Of(step.Name);
            steps.Add(step.Name.Text, Minutes(times.EarliestStart), Minutes(times.EarliestFinish), Minutes(times.LatestStart), Minutes(times.LatestFinish), Minutes(times.TotalFloat), Minutes(times.FreeFloat));
        }

        steps.WriteTo(terminal);
        terminal.Out.WriteLine();
        terminal.Out.WriteLine($"With as many people as it takes: {Minutes(answer.Schedule.Length)} min.");
        if (answer.Crew is { } crew)
            terminal.Out.WriteLine($"With {crew.People}: {Minutes(crew.Length)} min{(crew.IsShortest ? ", and no order is shorter" : "; a good order, not proved the shortest")}.");
        foreach (var fault in answer.Plan.Faults)
            terminal.Out.WriteLine($"Look at: {fault.What}");
    }

    private static string Minutes(double minutes) => TradeUnit.One.Show(minutes, 0);
}
