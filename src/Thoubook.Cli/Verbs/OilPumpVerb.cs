using Thoubook.Appraisal;
using Thoubook.Appraisal.Oil;
using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Quantities;
using Thoubook.Workshop.Oil;
using Thoubook.Workshop.Plots;

namespace Thoubook.Cli.Verbs;

internal static class OilPumpVerb
{
    private static readonly Option Gasket = new("gasket", "THICKNESS", "a gasket in the place of the film, as compressed; 6 thou where left out");
    private static readonly Option Lap = new("lap", "AMOUNT", "lapped off the joint face of the body; 1.5 thou where left out");
    private static readonly Option Skim = new("skim", "AMOUNT", "skimmed off the joint face; to the middle of the new limits where left out");

    /// <summary>What only a circuit can answer.</summary>
    private static readonly Option[] OilOptions = [OilVerbs.Speed, OilVerbs.OilTemperature, OilVerbs.Change, OilVerbs.Oil, OilVerbs.Blank, OilVerbs.Open, OilVerbs.Plot];

    public static readonly Verb Pump = new("oil pump", "The card of a gear pump: end float cold and hot, the risk of nil, and what a gasket, lapping or a skim would make of it.", Run)
    {
        Operands = [new("ENGINE", "the engine by name"), new("PUMP", "the pump: its element of the circuit, the path of its part, or the last name of that path")],
        Options = [Gasket, Lap, Skim, OilVerbs.Speed, OilVerbs.OilTemperature, .. OilVerbs.Supposing, OilVerbs.Plot, Option.Confirm, Option.Json],
        More = "Slip and main gauge need the engine's oil circuit; the end floats do not. What is supposed goes into every choice, so that they are set against the pump as supposed.",
        Examples =
        [
            new("thoubook oil pump \"Sandpiper six\" pressure-pump", "the pressure pump as it stands, with a gasket, lapped and skimmed."),
            new("thoubook oil pump \"Sandpiper six\" scavenge-front --gasket 10thou --lap 2thou", "with another gasket, and lapped by another amount."),
            new("thoubook oil pump \"Sandpiper six\" pressure-pump --speed 1400rev/min --oil \"SAE 50\"", "what it makes of the oil at cruise, with a thicker oil."),
            new("thoubook oil pump \"Sandpiper six\" pressure-pump --plot pump.svg", "the main gauge over the end float drawn as well: how far it pays to lap."),
            new("thoubook oil pump \"Sandpiper six\" pressure-pump --json", "the same, for a program."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal)
    {
        if (!Trials(request).Then(trials => Carded(request, terminal, trials)).IsOk(out var carded, out var problems))
            return terminal.Refuse(request, problems);
        var (card, asked, trial) = (carded.Card, carded.Asked, carded.Trial);
        if (request.Has(OilVerbs.Plot) && (asked is null || card.Curve.Count == 0 || card.Choices[0].Oil?.Main is null))
            return terminal.Refuse(request, [new("pump-plot", "--plot", Request.Quoted(request[OilVerbs.Plot]!), "The main gauge is drawn over the end float, and this pump is not in a circuit with a gauge.", "Leave --plot out, or put the pump into the circuit.")]);
        if (OilVerbs.Draw(request, terminal, () => OilPlots.Pump(card, asked!.Name, asked.Where, asked.Circuit)) is { } problem)
            return terminal.Refuse(request, [problem]);
        if (request.Has(Option.Json))
            terminal.Json(PumpCardAnswer.Of(card, trial), AnswerJson.Shapes.PumpCardAnswer);
        else
            Tell(terminal, card, asked, trial);
        return ExitStatus.Good;
    }

    /// <summary>The card in the engine's oil system; where it has none, of the pump alone, for which nothing but sizes can be supposed.</summary>
    private static Outcome<Answer> Carded(Request request, Terminal terminal, PumpTrials trials)
    {
        var asked = OilVerbs.Ask(request, terminal);
        if (asked.IsOk(out var oil, out var problems))
            return PumpCards.Of(oil.System, request.Operands[1], trials with { WithCurve = request.Has(OilVerbs.Plot) }, oil.Point).Then<Answer>(card => new Answer(card, oil, oil.Trial));
        if (problems is not [{ Code: "no-circuit" }] || OilOptions.Any(request.Has))
            return new Outcome<Answer>.Refused(problems);
        return Workshops.Appraise(request, terminal, request.Operands[0]).Then(appraisal => request.Has(OilVerbs.Suppose)
            ? OilQuestion.Trial(appraisal.Record, new OilSupposition { Set = request.All(OilVerbs.Suppose) }, request.Confirmed).Then(trial => Of(Appraiser.Appraise(appraisal.Record with { Supposed = trial.Set }), trial))
            : Of(appraisal, null));

        Outcome<Answer> Of(EngineAppraisal appraisal, OilTrial? trial) => PumpCards.Of(appraisal, request.Operands[1], trials).Then<Answer>(card => new Answer(card, null, trial));
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

    private static void Tell(Terminal terminal, PumpCard card, OilAsked? asked, OilTrial? trial)
    {
        terminal.Out.WriteLine($"{card.Part}{(card.Element is { } element ? $", in the circuit as {element.Name}" : "")}");
        foreach (var line in asked?.Supposed ?? (trial is null ? [] : [$"Supposed: {trial.Name}."]))
            terminal.Out.WriteLine(line);
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
                    !isFirst ? "" : asked is not null && choice.Oil is { Main: { } main, Difference: { } difference } ? $"{asked.Pressure(main.Pressure.Value)}{(choice.Change == 0 ? "" : $" ({asked.Difference(difference)})")}" : "—",
                ]);
            }
        }

        table.WriteTo(terminal);
        if (card.At is not null && asked is not null)
            terminal.Out.WriteLine($"Slip and gauge at {asked.Where}; in brackets against the pump as it stands{(trial is null ? "" : " with what is supposed")}.");
        terminal.Say(card.Cautions);
    }

    private static string Risk(PumpFloat worst) => worst.RiskOfNil < 5e-4 ? "none" : $"{100 * worst.RiskOfNil:F1} in 100 at {worst.State}";

    private sealed record Answer(PumpCard Card, OilAsked? Asked, OilTrial? Trial);
}
