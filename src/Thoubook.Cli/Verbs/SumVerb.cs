using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Mechanics.Sums;
using Thoubook.Record;
using Thoubook.Record.Quantities;
using Thoubook.Workshop;

namespace Thoubook.Cli.Verbs;

internal static class SumVerb
{
    private static readonly Option List = new("list", null, "lists the sums there are");

    public static readonly Verb Sum = new("sum", "Does one engineering sum and shows its working.", Run)
    {
        Operands = [new("NAME", "the sum") { Optional = true }, new("KEY=VALUE", "an input: a quantity with its unit, or a word; one that belongs to a list is given again for each item") { Optional = true, Rest = true }],
        Options = [List, Option.Confirm, Option.Json],
        More = "thoubook sum NAME --help tells the inputs of one sum, with their ranges and examples. No workshop is needed.",
        HelpOnOperands = HelpOnSum,
        Examples =
        [
            new("thoubook sum --list", "the sums there are."),
            new("thoubook sum conformance --help", "what that one takes."),
            new("thoubook sum conformance value=1.2530in u=0.1thou min=1.2530in max=1.2540in", "how probable it is that the thing is within its limits."),
            new("thoubook sum expansion size=1.2535in material=\"cast aluminium\" temperature=80°C --json", "for a program."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal)
    {
        if (request.Has(List))
            return ListSums(request, terminal);
        if (request.Operands.Count == 0)
            return terminal.Refuse(request, [new Problem("too-few", "", "no NAME", $"NAME is one of {string.Join(", ", Mechanics.Sums.Sums.All.Select(s => s.Name))}.", "Name a sum, or run thoubook sum --list.")]);

        var given = new List<(string, string)>();
        foreach (var word in request.Operands.Skip(1))
        {
            var equals = word.IndexOf('=');
            if (equals <= 0)
                return terminal.Refuse(request, [new Problem("no-key", "", Request.Quoted(word), "Each input is written KEY=VALUE.", $"The keys: thoubook sum {request.Operands[0]} --help. A value with spaces goes in quotes.")]);
            given.Add((word[..equals].Trim(), word[(equals + 1)..]));
        }

        if (!SumQuestion.Ask(request.Operands[0], given, request.Confirmed).IsOk(out var answer, out var problems))
            return terminal.Refuse(request, problems);
        if (request.Has(Option.Json))
            terminal.Json(SumAnswered.Of(answer), AnswerJson.Shapes.SumAnswered);
        else
            Tell(terminal, answer);
        return ExitStatus.Good;
    }

    private static ExitStatus ListSums(Request request, Terminal terminal)
    {
        if (request.Has(Option.Json))
        {
            terminal.Json([.. Mechanics.Sums.Sums.All.Select(SumDescribed.Of)], AnswerJson.Shapes.IReadOnlyListSumDescribed);
            return ExitStatus.Good;
        }

        var table = new Table("sum", "question");
        foreach (var sum in Mechanics.Sums.Sums.All)
            table.Add(sum.Name, sum.Question);
        table.WriteTo(terminal);
        return ExitStatus.Good;
    }

    private static ExitStatus? HelpOnSum(Request request, Terminal terminal)
    {
        if (request.Operands.Count == 0)
            return null;
        if (!SumQuestion.Find(request.Operands[0]).IsOk(out var sum, out var problems))
            return terminal.Refuse(problems);

        terminal.Out.WriteLine($"thoubook sum {sum.Name} KEY=VALUE…");
        terminal.Out.WriteLine();
        terminal.Out.WriteLine(sum.Question);
        terminal.Out.WriteLine();
        var inputs = new Table("input", "in the working", "allowed", "left out", "what");
        foreach (var input in sum.Inputs)
            inputs.Add(input.Key + (input.List is null ? "" : " …"), input.Symbol, Allowed(input), LeftOut(input), input.Name);
        inputs.WriteTo(terminal);
        terminal.Out.WriteLine();
        var outputs = new Table("output", "in the working", "unit", "what");
        foreach (var output in sum.Outputs)
            outputs.Add(output.Key, output.Symbol, SumInput.UnitOf(output.Measure) is Units.Any ? "that of the inputs" : SumInput.UnitOf(output.Measure), output.Name);
        outputs.WriteTo(terminal);
        terminal.Out.WriteLine();
        if (sum.Inputs.Any(i => i.List is not null))
            terminal.Out.WriteLine("An input marked … is given again for each item of its list, in the same order.");
        terminal.Out.WriteLine($"Source: {sum.Source}");
        terminal.Out.WriteLine();
        terminal.Out.WriteLine("Examples");
        foreach (var example in sum.Examples)
            terminal.Out.WriteLine($"  thoubook sum {sum.Name} {example}");
        return ExitStatus.Good;
    }

    private static string Allowed(SumInput input) => input.Measure switch
    {
        Measure.Word => string.Join(", ", input.Words),
        Measure.Name => "a name",
        _ => input.Allowed.InWords(input.Unit),
    };

    private static string LeftOut(SumInput input) => input switch
    {
        { Default: { } value } when double.IsInfinity(value) => "taken as known",
        { Default: { } value } => $"{value:G9}",
        { Words: [var first, ..] } => first,
        { IsOptional: true } or { Measure: Measure.Name } => "may be",
        _ => "",
    };

    private static void Tell(Terminal terminal, SumAnswer answer)
    {
        terminal.Out.WriteLine(answer.Result.Answer);
        terminal.Out.WriteLine();
        var values = new Table("figure", "value", "what");
        foreach (var value in answer.Result.Values)
            values.Add(value.Key, Shown(value.Value, value.Unit, answer.UnitFor(value.Unit)), value.Name);
        values.WriteTo(terminal);
        terminal.Out.WriteLine();
        var working = new Table("working", "=", "unit", "what", "from");
        foreach (var line in answer.Result.Working.Lines)
            working.Add(line.Symbol, string.Join("; ", line.Values.Select(v => $"{v:G9}")), line.Unit, line.What, string.Join(". ", new[] { line.Formula, line.Source }.Where(t => t.Length > 0)));
        working.WriteTo(terminal);
        terminal.Out.WriteLine();
        terminal.Out.WriteLine($"Source: {answer.Sum.Source}");
        foreach (var caution in answer.Result.Cautions)
            terminal.Out.WriteLine($"Caution: {caution}");
    }

    /// <summary>A figure in the unit that the asker wrote, where it is of that kind.</summary>
    private static string Shown(double value, string unit, TradeUnit? asked) =>
        !double.IsFinite(value) ? "without bound"
        : asked is not null && TradeUnit.Default(asked.Kind).Symbol == unit ? QuantityText.InTradeUnits(value, asked)
        : unit == Units.None ? $"{value:G9}" : $"{value:G9} {unit}";
}
