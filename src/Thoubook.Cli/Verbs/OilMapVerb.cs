using Thoubook.Appraisal.Oil;
using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Workshop.Oil;
using Thoubook.Workshop.Plots;

namespace Thoubook.Cli.Verbs;

internal static class OilMapVerb
{
    private static readonly Option Speeds = OilVerbs.Speed with { What = "a speed of the map; given again for each, else from slow idle to above the fastest state", Many = true };
    private static readonly Option Temperatures = OilVerbs.OilTemperature with { What = "an oil temperature of the map; given again for each, else from the coldest state to above the hottest", Many = true };

    public static readonly Verb Map = new("oil map", "Gives the main gauge over speed and oil temperature, with its band.", Run)
    {
        Operands = [OilVerbs.Engine],
        Options = [Speeds, Temperatures, .. OilVerbs.Supposing, OilVerbs.Plot, Option.Confirm, Option.Json],
        Examples =
        [
            new("thoubook oil map \"Sandpiper six\"", "over the range of its states."),
            new("thoubook oil map \"Sandpiper six\" --plot map.svg", "drawn as well."),
            new("thoubook oil map \"Sandpiper six\" --speed 400rev/min --speed 800rev/min --oil-temp 60°C --oil-temp 80°C --json", "these points, for a program."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal)
    {
        if (!OilVerbs.Ask(request, terminal, speed: null, oilTemperature: null).Then(asked => Mapped(request, asked).Then<(OilAsked, OilMap)>(map => (asked, map))).IsOk(out var known, out var problems))
            return terminal.Refuse(request, problems);
        var (asked, map) = known;
        var gauge = asked.Circuit.Gauges[0].Name.Text;
        if (OilVerbs.Draw(request, terminal, () => OilPlots.Map(map, asked.Name, gauge, asked.SpeedUnit, asked.TemperatureUnit)) is { } problem)
            return terminal.Refuse(request, [problem]);
        if (request.Has(Option.Json))
        {
            terminal.Json(
                new OilMapAnswer(
                    asked.Record.Engine.Name.Text,
                    asked.Record.Engine.Invented,
                    gauge,
                    map.Speeds,
                    map.Temperatures,
                    [.. map.Points.Select(row => (IReadOnlyList<BandAnswer>)[.. row.Select(p => new BandAnswer(p.Pressure, p.Low, p.High))])],
                    [OilCautions.Prediction.Text]),
                AnswerJson.Shapes.OilMapAnswer);
            return ExitStatus.Good;
        }

        terminal.Out.WriteLine($"{asked.Name}: the {gauge} gauge in {asked.PressureSymbol}, with half the width of the band that holds it 95 times in 100");
        foreach (var line in asked.Supposed)
            terminal.Out.WriteLine(line);
        terminal.Out.WriteLine();
        var table = new Table(["oil", .. map.Speeds.Select(s => asked.SpeedUnit.Show(s))]);
        for (var i = 0; i < map.Temperatures.Count; i++)
            table.Add([asked.TemperatureUnit.Show(map.Temperatures[i]), .. map.Points[i].Select(p => $"{asked.PressureNumber(p.Pressure)} ± {asked.PressureNumber((p.High - p.Low) / 2)}")]);
        table.WriteTo(terminal);
        terminal.Out.WriteLine();
        terminal.Out.WriteLine($"Caution: {OilCautions.Prediction.Text}");
        return ExitStatus.Good;
    }

    private static Outcome<OilMap> Mapped(Request request, OilAsked asked) =>
        OilQuestion.Values(asked.Record, request.All(Speeds), OilQuestion.Speed, request.Confirmed).Then(speeds =>
        OilQuestion.Values(asked.Record, request.All(Temperatures), OilQuestion.OilTemperature, request.Confirmed).Then(temperatures =>
        {
            var usual = OilMapRange.Of(asked.Circuit, asked.Now.HotIdle);
            return asked.System.Map(speeds.Count > 0 ? speeds : usual.Speeds, temperatures.Count > 0 ? temperatures : usual.Temperatures);
        }));
}
