using Thoubook.Appraisal.Oil;
using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Mechanics.Metrology;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;
using Thoubook.Workshop.Oil;
using Thoubook.Workshop.Plots;

namespace Thoubook.Cli.Verbs;

internal static class OilShowVerb
{
    private const int FewestDraws = 100;
    private const int MostDraws = 200_000;

    /// <summary>The same every time, so that the same record gives the same answer.</summary>
    private const ulong Seed = 1;

    /// <summary>[h] From one day's work to the next.</summary>
    private const double Overnight = 12;

    private static readonly Option Draws = new("draws", "NUMBER", "draws everything uncertain so many times, such as 20000, and solves the circuit for each: the band without taking it for straight");

    public static readonly Verb Show = new("oil show", "Says what the oil gauges will read, where the oil goes, and how each state stands to its limits.", Run)
    {
        Operands = [OilVerbs.Engine],
        Options = [OilVerbs.Speed, OilVerbs.OilTemperature, .. OilVerbs.Supposing, Draws, OilVerbs.Plot, Option.Confirm, Option.Json],
        More = "Exit status 0 where every state has enough pressure or is too close to call, 1 where one has too little or too much.",
        Examples =
        [
            new("thoubook oil show \"Sandpiper six\"", "at hot idle."),
            new("thoubook oil show \"Sandpiper six\" --speed 1400rev/min --oil-temp 80°C --json", "at another point, for a program."),
            new("thoubook oil show \"Sandpiper six\" --suppose crankcase/main-3.oil-clearance=2thou", "as if number 3 main had this clearance."),
            new("thoubook oil show \"Sandpiper six\" --draws 20000", "the band by draws as well."),
            new("thoubook oil show \"Sandpiper six\" --change lower-half/oil-pumps/pressure-pump/body.depth=-1.5thou --oil \"SAE 50\"", "the pump body lapped by a thou and a half, and a thicker oil."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal)
    {
        if (!OilVerbs.Ask(request, terminal).Then(asked => asked.System.At(asked.Point).Then(answer => Tried(asked).Then(trial => Drawn(request, asked).Then<Shown>(draws => new Shown(asked, answer, trial, draws))))).IsOk(out var shown, out var problems))
            return terminal.Refuse(request, problems);
        var (asked, answer) = (shown.Asked, shown.Answer);
        var states = asked.Circuit.States.Zip(asked.System.States()).ToArray();
        var cautions = Cautions(asked.Circuit, answer);
        if (OilVerbs.Draw(request, terminal, () => OilPlots.Consumers(answer, asked.Name, asked.Where)) is { } problem)
            return terminal.Refuse(request, [problem]);
        if (request.Has(Option.Json))
            terminal.Json(Answer(shown, states, cautions), AnswerJson.Shapes.OilShowAnswer);
        else
            Tell(terminal, shown, states, cautions);
        return states.Any(s => s.Second.IsOk(out var state, out _) && state.Verdict is OilVerdict.TooLow or OilVerdict.TooHigh) ? ExitStatus.FallsShort : ExitStatus.Good;
    }

    private static Outcome<TrialAnswer?> Tried(OilAsked asked) =>
        asked.Trial is { } trial ? asked.Now.Try(trial, asked.Point).Then<TrialAnswer?>(answer => answer) : (TrialAnswer?)null;

    private static Outcome<Sample?> Drawn(Request request, OilAsked asked)
    {
        if (request[Draws] is not { } text)
            return (Sample?)null;
        if (!QuantityReader.Read(text, new ReadingContext { Kind = QuantityKind.Number, Confirmed = request.Confirmed }).IsOk(out var number, out var problems))
            return new Outcome<Sample?>.Refused([.. problems.Select(p => p with { Field = "--draws" })]);
        return number.Si is >= FewestDraws and <= MostDraws && number.Si == Math.Floor(number.Si)
            ? asked.System.Draws(asked.Point, (int)number.Si, Seed).Then<Sample?>(sample => sample)
            : new Problem("draws", "--draws", Request.Quoted(text), $"A whole number from {FewestDraws} to {MostDraws}.", "Write such as 20000.");
    }

    private static OilShowAnswer Answer(Shown shown, (OilState, Outcome<Appraisal.Oil.StateAnswer>)[] states, IReadOnlyList<Caution> cautions) => Answer(shown, shown.Asked, shown.Answer, states, cautions);

    private static OilShowAnswer Answer(Shown shown, OilAsked asked, OilAnswer answer, (OilState, Outcome<Appraisal.Oil.StateAnswer>)[] states, IReadOnlyList<Caution> cautions) => new(
        asked.Record.Engine.Name.Text,
        asked.Record.Engine.Invented,
        OilPointAnswer.Of(answer),
        shown.Trial is { } trial ? OilTrialAnswer.Of(trial) : null,
        shown.Draws is { } draws ? new(draws.Count, draws.Mean, draws.Quantile(0.025), draws.Quantile(0.975)) : null,
        [.. answer.Gauges.Select(OilGaugeAnswer.Of)],
        [.. answer.Consumers.Select(OilConsumerAnswer.Of)],
        [.. answer.Pumps.Select(OilPumpAnswer.Of)],
        [.. answer.Valves.Select(OilValveAnswer.Of)],
        [.. states.Select(s => OilStateAnswer.Of(s.Item1, s.Item2))],
        answer.Furthest is { } furthest ? new(furthest.Element.Name.Text, furthest.From) : null,
        asked.System.DrainDown(Overnight).IsOk(out var drained, out _) ? new(Overnight, drained) : null,
        [.. OilSystem.Doubt(answer).Select(d => new OilDoubtAnswer(d.Source.Name, d.HalfWidth, OilDoubts.Stated(d.Source)))],
        answer.Nodes.ToDictionary(n => n.Name.Text, n => n.Pressure),
        answer.Elements.ToDictionary(e => e.Element.Name.Text, e => e.Flow),
        $"{answer.HowSolved} {answer.HowBands}",
        [.. cautions.Select(c => c.Text)]);

    private static void Tell(Terminal terminal, Shown shown, (OilState, Outcome<Appraisal.Oil.StateAnswer>)[] states, IReadOnlyList<Caution> cautions)
    {
        var (asked, answer) = (shown.Asked, shown.Answer);
        terminal.Out.WriteLine($"{asked.Name}: {asked.Where}");
        foreach (var line in asked.Supposed)
            terminal.Out.WriteLine(line);
        foreach (var caution in cautions.Where(c => c.Code == OilAnswer.NilGap))
            terminal.Out.WriteLine($"Caution: {caution.Text}");
        if (shown.Trial is { } trial && asked.Now.NotUsed(trial.Trial).Count == 0)
            terminal.Out.WriteLine($"Main gauge {asked.Difference(trial.Difference)}.");
        Section(terminal, Gauges(asked, answer));
        Section(terminal, States(asked, states));
        Section(terminal, Pumps(asked, answer));
        Section(terminal, Valves(asked, answer));
        Section(terminal, Consumers(asked, answer));
        terminal.Out.WriteLine();
        if (answer.Furthest is { } furthest)
            terminal.Out.WriteLine($"Least fed bearing: {furthest.Element.Name}, {asked.Pressure(furthest.From)}.");
        var doubt = OilSystem.Doubt(answer).Take(4).Where(d => d.HalfWidth > 0).ToArray();
        if (doubt.Length > 0)
            terminal.Out.WriteLine($"What makes the band of the main gauge: {string.Join("; ", doubt.Select(d => $"{d.Source.Name} ± {asked.Pressure(d.HalfWidth)}{(OilDoubts.Stated(d.Source) is { } stated ? $" (assumed: {stated})" : "")}"))}.");
        if (shown.Draws is { } draws)
            terminal.Out.WriteLine($"Of {draws.Count} draws of the main gauge, each solved whole, 95 in 100 lie from {asked.Band(draws.Quantile(0.025), draws.Quantile(0.975))}; their mean is {asked.Pressure(draws.Mean)}.");
        if (asked.System.DrainDown(Overnight).IsOk(out var drained, out _) && drained > 0)
            terminal.Out.WriteLine($"Standing cold for {TradeUnit.Hour.Show(Overnight * TradeUnit.Hour.Factor)}, {TradeUnit.Litre.Show(drained, 2)} runs from the tank through the pump.");
        terminal.Out.WriteLine(answer.HowBands);
        terminal.Out.WriteLine($"Clearances stand as they are at this oil temperature. {answer.HowSolved}");
        foreach (var caution in cautions.Where(c => c.Code != OilAnswer.NilGap))
            terminal.Out.WriteLine($"Caution: {caution.Text}");
    }

    private static void Section(Terminal terminal, Table table)
    {
        if (table.IsEmpty)
            return;
        terminal.Out.WriteLine();
        table.WriteTo(terminal);
    }

    private static Table Gauges(OilAsked asked, OilAnswer answer)
    {
        var table = new Table("gauge", "reads", "95 times in 100", "at");
        foreach (var gauge in answer.Gauges)
            table.Add(gauge.Gauge.Name.Text, asked.Pressure(gauge.Pressure.Value), asked.Band(gauge.Low, gauge.High), gauge.Gauge.At.Text);
        return table;
    }

    private static Table States(OilAsked asked, (OilState State, Outcome<Appraisal.Oil.StateAnswer> Outcome)[] states)
    {
        var table = new Table("state", "gauge", "reads", "verdict", "reason");
        foreach (var (state, outcome) in states)
        {
            if (!outcome.IsOk(out var answer, out var problems))
            {
                table.Add(state.Name, "", "", "—", string.Join(" ", problems.Select(Refusals.Sentence)));
                continue;
            }

            foreach (var gauge in answer.Gauges.Where((g, i) => i == 0 || g.Limit is not null))
                table.Add(state.Name, gauge.Gauge.Gauge.Name.Text, asked.Pressure(gauge.Gauge.Pressure.Value), gauge.Verdict?.Word() ?? "—", gauge.Reason);
        }

        return table;
    }

    private static Table Pumps(OilAsked asked, OilAnswer answer)
    {
        var table = new Table("pump", "delivers", "slip", "filled", "suction in hand", "scavenge ratio", "let go by the main valve");
        foreach (var pump in answer.Pumps)
        {
            table.Add(
                pump.Element.Element.Name.Text,
                OilAsked.Flow(pump.Delivery),
                OilAsked.Share(pump.Slip),
                OilAsked.Share(pump.Filling),
                pump.SuctionReserve is { } reserve ? asked.Pressure(reserve) : "—",
                pump.Scavenge is { } scavenge ? $"{TradeUnit.One.Show(scavenge.Ratio, 2)}{(scavenge.KeepsUp ? "" : ", does not keep up")}" : "—",
                pump.Margin is { } margin ? OilAsked.Share(margin) : "—");
        }

        return table;
    }

    private static Table Valves(OilAsked asked, OilAnswer answer)
    {
        var table = new Table("valve", "lift", "of", "opens at", "lets through");
        foreach (var valve in answer.Valves)
            table.Add(valve.Element.Element.Name.Text, valve.IsOpen ? TradeUnit.Thou.Show(valve.Lift, 1) : "shut", TradeUnit.Thou.Show(valve.FullLift, 0), asked.Pressure(valve.Cracking), OilAsked.Flow(valve.Element.Flow));
        return table;
    }

    private static Table Consumers(OilAsked asked, OilAnswer answer)
    {
        var table = new Table("takes oil", "flow", "share", "fed at", "decided by");
        foreach (var consumer in answer.Consumers)
            table.Add(consumer.Element.Name.Text, consumer.Element.Blanked ? "blanked" : OilAsked.Flow(consumer.Flow), OilAsked.Share(consumer.Share), asked.Pressure(consumer.From), consumer.Deciding is { } figure ? asked.Figure(figure) : "");
        return table;
    }

    /// <summary>What the answer itself warns of, then what stands wherever such a thing is shown.</summary>
    private static IReadOnlyList<Caution> Cautions(OilCircuit circuit, OilAnswer answer)
    {
        var cautions = new List<Caution>(answer.Cautions);
        if (answer.Valves.Count > 0)
            cautions.Add(OilCautions.ReliefValve);
        if (circuit.Elements.Any(e => e.Blanked))
            cautions.Add(OilCautions.BlankedPort);
        cautions.Add(OilCautions.Prediction);
        return [.. cautions.Distinct()];
    }

    private sealed record Shown(OilAsked Asked, OilAnswer Answer, TrialAnswer? Trial, Sample? Draws);
}
