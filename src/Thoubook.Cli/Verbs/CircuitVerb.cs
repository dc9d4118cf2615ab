using NodaTime;
using Thoubook.Appraisal.Oil;
using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Files;
using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Quantities;
using Thoubook.Workshop.Oil;

namespace Thoubook.Cli.Verbs;

internal static class CircuitVerb
{
    private static readonly Option Speed = new("speed", "SPEED", "of the engine, such as 450rev/min; else that of the circuit's first state");
    private static readonly Option OilTemperature = new("oil-temp", "TEMPERATURE", "of the oil, such as 80°C; else that of the circuit's first state");
    private static readonly Option Viscosity = new("viscosity", "VISCOSITY", "dynamic, such as 20cP, where the oil is known by it; with --density");
    private static readonly Option Density = new("density", "DENSITY", "such as 870kg/m3; with --viscosity");

    public static readonly Verb Circuit = new("circuit", "Solves the circuit of an engine file on its own.", Run)
    {
        Operands = [new("FILE", "a file with a circuit: section")],
        Options = [Speed, OilTemperature, Viscosity, Density, Option.Confirm, Option.Json],
        More = "No workshop is needed. Sizes are taken from the parts, dimensions and fits of the same file. Pressures are gauge; flow counts positive from an element's first node to its second. The form of the file is told in docs/circuit.md.",
        Examples =
        [
            new("thoubook circuit engine.yaml", "pressures and flows at hot idle, the circuit's first state."),
            new("thoubook circuit engine.yaml --speed 1800rev/min --oil-temp 70°C", "at another point."),
            new("thoubook circuit engine.yaml --speed 900rpm --viscosity 40cP --density 870kg/m3 --json", "for a program: nodes in Pa, elements in m³/s."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal)
    {
        var path = request.Operands[0];
        var question = new CircuitQuestion { Speed = request[Speed], OilTemperature = request[OilTemperature], Viscosity = request[Viscosity], Density = request[Density], Confirmed = request.Confirmed };
        var answered = TextFile.ReadPath(path).Then(text => question.Ask(text, Path.GetFileName(path), new ImportTerms(terminal.Clock.GetCurrentInstant().WithOffset(Offset.Zero), Environment.UserName)));
        if (!answered.IsOk(out var answer, out var problems))
            return terminal.Refuse(request, problems);
        if (request.Has(Option.Json))
            terminal.Json(CircuitAnswer.Of(answer), AnswerJson.Shapes.CircuitAnswer);
        else
            Tell(terminal, answer);
        return ExitStatus.Good;
    }

    private static void Tell(Terminal terminal, OilAnswer answer)
    {
        var nodes = new Table("node", "pressure", "");
        foreach (var node in answer.Nodes)
            nodes.Add(node.Name.Text, TradeUnit.Psi.Show(node.Pressure, 2), node.IsReservoir ? "given" : "");
        nodes.WriteTo(terminal);
        terminal.Out.WriteLine();
        var elements = new Table("element", "kind", "from", "to", "flow");
        foreach (var element in answer.Elements)
            elements.Add(element.Element.Name.Text, element.Element.Kind.Word() + (element.Element.Blanked ? ", blanked" : ""), element.Element.From.Text, element.Element.To.Text, TradeUnit.LitrePerMinute.Show(element.Flow, 4));
        elements.WriteTo(terminal);
        terminal.Out.WriteLine();
        terminal.Out.WriteLine($"Oil: {TradeUnit.Centipoise.Show(answer.Viscosity, 2)}, {TradeUnit.KilogramPerCubicMetre.Show(answer.Density, 0)}. {answer.HowSolved}");
        foreach (var caution in answer.Cautions)
            terminal.Out.WriteLine($"Caution: {caution.Text}");
    }
}
