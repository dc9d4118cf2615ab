using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;

namespace Thoubook.Cli.Verbs;

internal static class EnginesVerb
{
    public static readonly Verb Engines = new("engines", "Lists the engines of the workshop.", Run)
    {
        Options = [Option.Json],
        Examples =
        [
            new("thoubook engines", "name and purpose of each."),
            new("thoubook engines --workshop ~/boatyard --json", "of another workshop, for a program."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal) => Workshops.With(request, terminal, workshop =>
    {
        var engines = workshop.Engines();
        if (request.Has(Option.Json))
        {
            terminal.Json([.. engines.Select(e => new EngineAnswer(e.Name.Text, e.Purpose.Word()))], AnswerJson.Shapes.IReadOnlyListEngineAnswer);
            return ExitStatus.Good;
        }

        var table = new Table("engine", "purpose", "readings", "note");
        foreach (var engine in engines)
            table.Add(engine.Name.Text, engine.Purpose.Word(), $"{engine.Readings}".PadLeft(8), engine.Invented ? "Invented for demonstration." : engine.Note ?? "");
        if (table.IsEmpty)
            terminal.Error.WriteLine("No engine is in this workshop yet: thoubook import FILE takes one in.");
        else
            table.WriteTo(terminal);
        return ExitStatus.Good;
    });
}
