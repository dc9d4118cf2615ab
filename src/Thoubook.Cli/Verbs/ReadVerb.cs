using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Cli.Verbs;

internal static class ReadVerb
{
    private static readonly Option For = new("for", "DIMENSION", "reads it as a reading of this dimension or fit of the engine");

    public static readonly Verb Read = new("read", "Shows what would be understood by a measured quantity.", Run)
    {
        Operands = [new("TEXT", "a quantity as the trade writes it") { Rest = true }],
        Options = [Option.Engine, For, Option.Confirm, Option.Json],
        More = "A bare number is in the unit of the dimension's limits; where there is none, or another unit is more likely, it asks, and --confirm CODE answers.",
        Examples =
        [
            new("thoubook read 2.5 thou", "0.0635 mm."),
            new("thoubook read -0.5thou", "a minus is part of the figure."),
            new("thoubook read \"1 1/2 in\" --json", "the value in metres, for a program."),
            new("thoubook read 1.2535 --engine \"Sandpiper six\" --for lower-half/pressure-pump/body.depth", "as a reading of that dimension would be understood."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal)
    {
        if (!Context(request, terminal).IsOk(out var context, out var problems))
            return terminal.Refuse(request, problems);
        var text = string.Join(' ', request.Operands);
        var read = QuantityReader.Read(text, context with { Confirmed = request.Confirmed });

        // Where nothing says what it is of, a figure that only a fit may carry (T, L, brackets) is read as a fit's.
        if (request[For] is null && read is Outcome<Quantity>.Refused { Problems: [{ IsQuestion: false }] }
            && QuantityReader.Read(text, context with { Confirmed = request.Confirmed, FitSigns = FitSigns.TightIsNegative }) is var asFit
            && asFit is Outcome<Quantity>.Ok or Outcome<Quantity>.Refused { Problems: [{ IsQuestion: true }] })
            read = asFit;
        if (!read.IsOk(out var quantity, out problems))
            return terminal.Refuse(request, problems);

        var cautions = ((Outcome<Quantity>.Ok)read).Cautions;
        if (request.Has(Option.Json))
        {
            terminal.Json(ReadAnswer.Of(quantity, cautions), AnswerJson.Shapes.ReadAnswer);
            return ExitStatus.Good;
        }

        terminal.Out.WriteLine($"{quantity.Kind.Word()}: {quantity.Understood}");
        terminal.Say(cautions);
        return ExitStatus.Good;
    }

    private static Outcome<ReadingContext> Context(Request request, Terminal terminal) => (request[Option.Engine], request[For]) switch
    {
        (null, null) => ReadingContext.None,
        ({ } engine, { } figure) => ContextOf(request, terminal, engine, figure),
        _ => new Problem("for-what", "--engine", "only one of --engine and --for", "They go together: which engine, and which of its dimensions or fits.", "Give both or neither."),
    };

    // By itself, so that reading a text alone loads nothing of the workshop.
    private static Outcome<ReadingContext> ContextOf(Request request, Terminal terminal, string engine, string figure) =>
        Workshops.FindFigure(request, terminal, engine, figure).Then<ReadingContext>(f => ReadingContexts.For(f.Figure, f.Record));
}
