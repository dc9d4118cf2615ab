using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Workshop.Starters;

namespace Thoubook.Cli.Verbs;

internal static class OilStartVerb
{
    private static readonly Option Questions = new("questions", null, "lists the questions, with what is taken where one is not answered");

    public static readonly Verb Start = new("oil start", "Draws the oil circuit of an engine that has none, from a dozen answers.", Run)
    {
        Operands = [new("ENGINE", "the engine by name") { Optional = true }, new("KEY=VALUE", "an answer; a value with spaces goes in quotes") { Optional = true, Rest = true }],
        Options = [Questions, Option.By],
        More = "Sizes that the engine's record has are taken from there by their usual names. The rest is assumed: the note of each element says what, and clearances that decide the pressure are added as fits to be measured.",
        Examples =
        [
            new("thoubook oil start --questions", "what can be answered, and how."),
            new("thoubook oil start \"Sandpiper six\" sump=dry mains=7 big-ends=6 relief=cascade scavenge-pumps=2 camshaft-bearings=4 --by owner", "a dry sump with two scavenge pumps; the camshaft on the low pressure."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal)
    {
        if (request.Has(Questions))
            return List(terminal);
        if (request.Operands.Count == 0)
            return terminal.Refuse(request, [new Problem("too-few", "", "no ENGINE", "ENGINE is the engine by name.", "Write thoubook oil start ENGINE KEY=VALUE…; thoubook oil start --questions lists the keys.")]);

        if (!KeyValues.Read(request.Operands.Skip(1), "thoubook oil start --questions").IsOk(out var answers, out var wrong))
            return terminal.Refuse(request, wrong);
        return Workshops.With(request, terminal, workshop =>
        {
            if (!workshop.StartCircuit(request.Operands[0], answers, Facts.By(request)).IsOk(out var circuit, out var problems))
                return terminal.Refuse(request, problems);
            Tell(terminal, circuit);
            return ExitStatus.Good;
        });
    }

    private static ExitStatus List(Terminal terminal)
    {
        QuestionTable.Of(CircuitStarter.Questions).WriteTo(terminal);
        return ExitStatus.Good;
    }

    private static void Tell(Terminal terminal, OilCircuit circuit)
    {
        var table = new Table("element", "kind", "from", "to", "assumed, measure it");
        foreach (var element in circuit.Elements)
        {
            var assumed = element.Note?.StartsWith(CircuitStarter.Assumed, StringComparison.Ordinal) == true ? element.Note[CircuitStarter.Assumed.Length..] : "";
            table.Add(element.Name.Text, element.Kind.Word() + (element.Blanked ? ", blanked" : ""), element.From.Text, element.To.Text, assumed);
        }

        table.WriteTo(terminal);
        terminal.Error.WriteLine($"{circuit.Elements.Count} elements drawn. Correct them in the browser or in the engine's file: thoubook export ENGINE.");
    }
}
