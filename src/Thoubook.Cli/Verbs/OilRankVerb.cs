using Thoubook.Appraisal.Oil;
using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Workshop.Oil;
using Thoubook.Workshop.Plots;

namespace Thoubook.Cli.Verbs;

internal static class OilRankVerb
{
    public static readonly Verb Rank = new("oil rank", "Says which clearance costs the most oil pressure, what to measure next, and what a repair would buy.", Run)
    {
        Operands = [OilVerbs.Engine],
        Options = [OilVerbs.Speed, OilVerbs.OilTemperature, .. OilVerbs.Supposing, OilVerbs.Plot, Option.Confirm, Option.Json],
        More = "A cost is what the main gauge would gain if that figure stood at the middle of its new limits. Differences are surer than the pressures themselves: what both owe to one gauge cancels.",
        Examples =
        [
            new("thoubook oil rank \"Sandpiper six\"", "at hot idle, worst first."),
            new("thoubook oil rank \"Sandpiper six\" --speed 1400rev/min --plot costs.svg", "at cruise, drawn as well."),
            new("thoubook oil rank \"Sandpiper six\" --json", "for a program."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal)
    {
        if (!OilVerbs.Ask(request, terminal).Then(asked => asked.System.Costs(asked.Point).Then(costs => asked.System.MeasureNext(asked.Point).Then<Ranked>(next => new Ranked(asked, costs, next, Trials(asked))))).IsOk(out var ranked, out var problems))
            return terminal.Refuse(request, problems);
        if (OilVerbs.Draw(request, terminal, () => OilPlots.Costs(ranked.Costs, ranked.Asked.Name, ranked.Asked.Where)) is { } problem)
            return terminal.Refuse(request, [problem]);
        if (request.Has(Option.Json))
        {
            terminal.Json(
                new OilRankAnswer(
                    ranked.Asked.Record.Engine.Name.Text,
                    ranked.Asked.Record.Engine.Invented,
                    ranked.Asked.Point.Speed,
                    ranked.Asked.Point.OilTemperature,
                    [.. ranked.Costs.Select(OilCostAnswer.Of)],
                    [.. ranked.Next.Select(OilMeasureNextAnswer.Of)],
                    [.. ranked.Trials.Select(OilTrialAnswer.Of)],
                    [OilCautions.Prediction.Text]),
                AnswerJson.Shapes.OilRankAnswer);
            return ExitStatus.Good;
        }

        Tell(terminal, ranked);
        return ExitStatus.Good;
    }

    private static TrialAnswer[] Trials(OilAsked asked) =>
        [.. asked.System.UsualTrials(asked.Point).Select(t => asked.System.Try(t, asked.Point).IsOk(out var answer, out _) ? answer : null).OfType<TrialAnswer>()];

    private static void Tell(Terminal terminal, Ranked ranked)
    {
        var asked = ranked.Asked;
        terminal.Out.WriteLine($"{asked.Name}: {asked.Where}");
        foreach (var line in asked.Supposed)
            terminal.Out.WriteLine(line);
        terminal.Out.WriteLine();
        terminal.Out.WriteLine("Where the pressure goes, worst first: what the main gauge would gain with each as new. Clearances as at this oil temperature");
        var costs = new Table("figure", "now", "as new", "costs", "taken by");
        foreach (var cost in ranked.Costs.Where(c => asked.IsSeen(c.Cost.Value)))
        {
            costs.Add(
                cost.Figure.Name.ToString(),
                $"{asked.FigureValue(cost.Figure.Name, cost.Figure.Value.Value)}{(cost.Figure.IsMeasured ? "" : " (not measured)")}",
                asked.FigureValue(cost.Figure.Name, cost.AsNew),
                asked.Difference(cost.Cost),
                string.Join(", ", cost.Elements.Select(e => e.Name.Text)));
        }

        costs.WriteTo(terminal);
        if (ranked.Costs.Count(c => !asked.IsSeen(c.Cost.Value)) is > 0 and var unseen)
            terminal.Out.WriteLine($"{unseen} more change nothing that the gauge would show.");
        terminal.Out.WriteLine();
        if (ranked.Next.Count == 0)
        {
            terminal.Out.WriteLine("What to measure next: nothing here hangs on a figure that is not measured.");
        }
        else
        {
            terminal.Out.WriteLine("What to measure next: what each figure that is not measured adds to the band of the main gauge");
            var next = new Table("figure", "adds", "band without it");
            foreach (var one in ranked.Next)
                next.Add(one.Figure.ToString(), $"± {asked.Pressure(one.Adds)}", $"± {asked.Pressure(one.BandWithout)}");
            next.WriteTo(terminal);
        }

        if (ranked.Trials.Length > 0)
        {
            terminal.Out.WriteLine();
            terminal.Out.WriteLine("What a repair would buy");
            var trials = new Table("trial", "main gauge then", "difference");
            foreach (var trial in ranked.Trials)
                trials.Add(trial.Trial.Name, asked.Pressure(trial.Then.Pressure.Value), asked.Difference(trial.Difference));
            trials.WriteTo(terminal);
        }

        terminal.Out.WriteLine();
        terminal.Out.WriteLine($"Caution: {OilCautions.Prediction.Text}");
    }

    private sealed record Ranked(OilAsked Asked, IReadOnlyList<PressureCost> Costs, IReadOnlyList<MeasureNext> Next, TrialAnswer[] Trials);
}
