using Thoubook.Appraisal.Oil;
using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Cli.Verbs;

internal static class OilPumpVerb
{
    private static readonly Option Gasket = new("gasket", "THICKNESS", "a gasket in the place of the film, as compressed; 6 thou where left out");
    private static readonly Option Lap = new("lap", "AMOUNT", "lapped off the joint face of the body; 1.5 thou where left out");
    private static readonly Option Skim = new("skim", "AMOUNT", "skimmed off the joint face; to the middle of the new limits where left out");

    public static readonly Verb Pump = new("oil pump", "The card of a gear pump: end float cold and hot, the risk of nil, and what a gasket, lapping or a skim would make of it.", Run)
    {
        Operands = [new("ENGINE", "the engine by name"), new("PUMP", "the pump: its element of the circuit, the path of its part, or the last name of that path")],
        Options = [Gasket, Lap, Skim, Option.Confirm, Option.Json],
        Examples =
        [
            new("thoubook oil pump \"Sandpiper six\" pressure-pump", "the pressure pump as it stands, with a gasket, lapped and skimmed."),
            new("thoubook oil pump \"Sandpiper six\" scavenge-front --gasket 10thou --lap 2thou", "with another gasket, and lapped by another amount."),
            new("thoubook oil pump \"Sandpiper six\" pressure-pump --json", "the same, for a program."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal)
    {
        if (!Trials(request).Then(trials => Workshops.Appraise(request, terminal, request.Operands[0]).Then(appraisal => PumpCards.Of(appraisal, request.Operands[1], trials))).IsOk(out var card, out var problems))
            return terminal.Refuse(request, problems);
        if (request.Has(Option.Json))
            terminal.Json(PumpCardAnswer.Of(card), AnswerJson.Shapes.PumpCardAnswer);
        else
            Tell(terminal, card);
        return ExitStatus.Good;
    }

    private static Outcome<PumpTrials> Trials(Request request)
    {
        var trials = new PumpTrials();
        foreach (var option in (Option[])[Gasket, Lap, Skim])
        {
            if (request[option] is not { } text)
                continue;
            if (!QuantityReader.Read(text, ReadingContext.None with { Kind = QuantityKind.Length, Confirmed = request.Confirmed }).IsOk(out var amount, out var problems))
                return new Outcome<PumpTrials>.Refused([.. problems.Select(p => p with { Field = $"--{option.Name}" })]);
            if (amount.Si <= 0)
                return new Problem("pump-trial", $"--{option.Name}", Request.Quoted(text), "An amount above nil.", "Leave it out for the usual one.");
            trials = option == Gasket ? trials with { Gasket = amount.Si } : option == Lap ? trials with { Lapping = amount.Si } : trials with { Skim = amount.Si };
        }

        return trials;
    }

    private static void Tell(Terminal terminal, PumpCard card)
    {
        terminal.Out.WriteLine($"{card.Part}{(card.Element is { } element ? $", in the circuit as {element.Name}" : "")}");
        terminal.Out.WriteLine();
        var sizes = new Table("size", "value", "from");
        foreach (var size in card.Sizes)
            sizes.Add(size.Figure.Name.ToString(), size.Details.Counting is { } value ? TradeUnit.Inch.Show(value.Value, 5) : "—", size.Details.Basis.Word());
        sizes.WriteTo(terminal);
        terminal.Out.WriteLine();
        var states = card.EndFloats[0].States.Select(s => s.Name).ToArray();
        var table = new Table(["pump", "end float", .. states, "risk of nil", "end leak", "slip", "main gauge"]);
        foreach (var choice in card.Choices)
        {
            foreach (var fit in card.EndFloats)
            {
                var isFirst = fit == card.EndFloats[0];
                var floats = choice.Floats.Where(f => f.Fit == fit).ToArray();
                table.Add(
                [
                    isFirst ? choice.Name : "",
                    fit.Figure.Name.Local,
                    .. states.Select(s => floats.FirstOrDefault(f => f.State == s) is { } at ? $"{at.Float.Value / TradeUnit.Thou.Factor:F2} ± {at.Float.Band / TradeUnit.Thou.Factor:F2} thou" : "—"),
                    floats.MaxBy(f => f.RiskOfNil) is { } worst ? Risk(worst) : "—",
                    !isFirst ? "" : choice.EndLeak is { } leak ? $"{leak:F2} ×" : "—",
                    !isFirst ? "" : choice.Oil is { } oil ? $"{100 * oil.Slip:F1} %" : "—",
                    !isFirst ? "" : choice.Oil is { Main: { } main, Difference: { } difference } ? $"{Psi(main.Pressure.Value):F1} psi{(choice.Change == 0 ? "" : $" ({Psi(difference.Value):+0.0;−0.0;0.0} ± {Psi(difference.Band):F1})")}" : "—",
                ]);
            }
        }

        table.WriteTo(terminal);
        if (card.HotIdle is { } point)
            terminal.Out.WriteLine($"Slip and gauge at {TradeUnit.RevolutionPerMinute.Show(point.Speed, 0)} of the engine, oil at {point.OilTemperature - 273.15:F0} °C; in brackets against the pump as it stands.");
        terminal.Say(card.Cautions);
    }

    private static double Psi(double pascals) => TradeUnit.Psi.FromSi(pascals);

    private static string Risk(PumpFloat worst) => worst.RiskOfNil < 5e-4 ? "none" : $"{100 * worst.RiskOfNil:F1} in 100 at {worst.State}";
}
