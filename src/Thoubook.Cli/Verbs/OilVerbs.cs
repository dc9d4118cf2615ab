using Thoubook.Appraisal.Estimates;
using Thoubook.Appraisal.Oil;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;
using Thoubook.Workshop.Oil;
using Thoubook.Workshop.Plots;

namespace Thoubook.Cli.Verbs;

/// <summary>The verbs of the oil system, and what they share: which engine, where it runs, what is supposed.</summary>
internal static class OilVerbs
{
    public static readonly Operand Engine = new("ENGINE", "the engine by name");
    public static readonly Option Speed = new("speed", "SPEED", "of the engine, such as 450rev/min; else that of hot idle");
    public static readonly Option OilTemperature = new("oil-temp", "TEMPERATURE", "of the oil, such as 80°C; else that of hot idle");
    public static readonly Option Suppose = new("suppose", "NAME=VALUE", "a dimension or fit at this very value, or ELEMENT.KEY=VALUE for a size of an element; may be given again. Nothing is written") { Many = true };
    public static readonly Option Change = new("change", "NAME=±VALUE", "a dimension or fit changed by this much, its doubt kept; may be given again. Nothing is written") { Many = true };
    public static readonly Option Oil = new("oil", "GRADE", "another oil, such as \"SAE 50\"");
    public static readonly Option Blank = new("blank", "ELEMENT", "an element closed by a plug; may be given again") { Many = true };
    public static readonly Option Open = new("open", "ELEMENT", "a blanked element fitted again; may be given again") { Many = true };
    public static readonly Option Plot = new("plot", "FILE", "draws it to a new file as well: .svg or .png");

    public static readonly IReadOnlyList<Option> Supposing = [Suppose, Change, Oil, Blank, Open];

    public static IReadOnlyList<Verb> All { get; } = [OilStartVerb.Start, OilShowVerb.Show, OilRankVerb.Rank, OilMapVerb.Map, OilPumpVerb.Pump, OilFlowTestVerb.FlowTest];

    /// <summary>The oil system that a command line means, as it is and as supposed.</summary>
    public static Outcome<OilAsked> Ask(Request request, Terminal terminal) => Ask(request, terminal, request[Speed], request[OilTemperature]);

    /// <inheritdoc cref="Ask(Request, Terminal)"/>
    public static Outcome<OilAsked> Ask(Request request, Terminal terminal, string? speed, string? oilTemperature) => Workshops.Open(request, terminal).Then(workshop =>
    {
        using (workshop)
        {
            return workshop.Engine(request.Operands[0]).Then(record => workshop.Oil(request.Operands[0])
                .Then(now => OilQuestion.Point(now, record, speed, oilTemperature, request.Confirmed)
                .Then(point => Supposed(request, record, now)
                .Then<OilAsked>(supposed => new OilAsked(record, now, supposed.Trial, supposed.System, point)))));
        }
    });

    /// <summary>Draws where that was asked for; null where it was not, or all went well.</summary>
    public static Problem? Draw(Request request, Terminal terminal, Func<DrawnPlot> draw)
    {
        if (request[Plot] is not { } file)
            return null;
        if (draw().Save(file) is { } problem)
            return problem with { Field = "--plot" };
        terminal.Error.WriteLine($"Drawn to {file}.");
        return null;
    }

    private static Outcome<(OilTrial? Trial, OilSystem System)> Supposed(Request request, EngineRecord record, OilSystem now)
    {
        var supposition = new OilSupposition { Set = request.All(Suppose), ChangeBy = request.All(Change), Oil = request[Oil], Blank = request.All(Blank), Open = request.All(Open) };
        return supposition.IsNothing
            ? (null, now)
            : OilQuestion.Trial(record, supposition, request.Confirmed).Then(trial => now.Suppose(trial).Then<(OilTrial?, OilSystem)>(system => (trial, system)));
    }
}

/// <summary>What was asked of an oil system.</summary>
/// <param name="Record">Of the engine.</param>
/// <param name="Now">As the record stands.</param>
/// <param name="Trial">What is supposed; null where nothing is.</param>
/// <param name="System">As supposed; else as it stands.</param>
/// <param name="Point">Where it runs.</param>
internal sealed record OilAsked(EngineRecord Record, OilSystem Now, OilTrial? Trial, OilSystem System, OilPoint Point)
{
    public OilCircuit Circuit => Record.Circuit!;

    /// <summary>The unit in which the engine's own limits of pressure are written.</summary>
    private TradeUnit PressureUnit { get; } = Record.Circuit!.PressureUnit;

    /// <summary>The unit in which its states give speeds.</summary>
    public TradeUnit SpeedUnit { get; } = Record.Circuit!.States is [var first, ..] ? first.Speed.Unit : TradeUnit.RevolutionPerMinute;

    public TradeUnit TemperatureUnit { get; } = Record.Circuit!.States is [var first, ..] ? first.OilTemperature.Unit : TradeUnit.Celsius;

    public string Name => $"{Record.Engine.Name}{(Record.Engine.Invented ? " (invented for demonstration)" : "")}";

    /// <summary>The state that the point is that of, if it is.</summary>
    public OilState? State => Circuit.States.FirstOrDefault(s => Math.Abs(s.Speed.Si - Point.Speed) < 1e-6 && Math.Abs(s.OilTemperature.Si - Point.OilTemperature) < 1e-6);

    public string Where => $"{SpeedUnit.Show(Point.Speed)}, oil {TemperatureUnit.Show(Point.OilTemperature)}{(State is { } state ? $" ({state.Name})" : "")}";

    /// <summary>What is supposed, and what of it no pressure hangs on; nothing where nothing is.</summary>
    public IReadOnlyList<string> Supposed => Trial is { } trial ? [$"Supposed: {trial.Name}.", .. Now.NotUsed(trial)] : [];

    public string Pressure(double pascals) => PressureUnit.Show(pascals, Digits);

    public string Band(double low, double high) => $"{PressureNumber(low)} to {Pressure(high)}";

    /// <summary>A difference with its half width: <c>+2.1 psi ± 0.4</c>.</summary>
    public string Difference(Estimate pressure) => !IsSeen(pressure.Value) && !IsSeen(pressure.Band) ? "nothing that can be seen" : $"{(pressure.Value < 0 ? "" : "+")}{Pressure(pressure.Value)} ± {PressureNumber(pressure.Band)}";

    /// <summary>Whether a difference of pressure is more than nought as it is shown.</summary>
    public bool IsSeen(double pascals) => Math.Abs(PressureUnit.FromSi(pascals)) >= 0.5 * Math.Pow(10, -Digits);

    public string PressureNumber(double pascals) => TradeUnit.One.Show(PressureUnit.FromSi(pascals), Digits);

    public string PressureSymbol => PressureUnit.Symbol;

    /// <summary>Flows in litres a minute, which is not asked about.</summary>
    public static string Flow(double flow) => Math.Abs(TradeUnit.LitrePerMinute.FromSi(flow)) < 0.9995
        ? TradeUnit.LitrePerMinute.Show(flow, 3)
        : TradeUnit.LitrePerMinute.Show(flow, 2);

    /// <summary>What one bearing lets through, as it is caught.</summary>
    public static string SmallFlow(double flow) => TradeUnit.CubicCentimetrePerMinute.Show(flow, 0);

    /// <summary>Whether a flow is more than nought as it is caught.</summary>
    public static bool IsCaught(double flow) => TradeUnit.CubicCentimetrePerMinute.FromSi(flow) >= 0.5;

    public static string Share(double share) => TradeUnit.Percent.Show(share, 1);

    /// <summary>A clearance in the unit of its limits.</summary>
    public string Figure(CircuitFigure figure) => $"{FigureValue(figure.Name, figure.Value.Value)} {figure.Name}{(figure.IsMeasured ? "" : " (not measured)")}";

    public string FigureValue(FigureName name, double si) => Record.Index.Figure(name) is { } figure
        ? (figure.UnitOfLimits ?? TradeUnit.Usual(figure.Kind)[0]) is var unit && unit == TradeUnit.Inch ? unit.Show(si, 4) : unit.Show(si, 2)
        : TradeUnit.Thou.Show(si, 2);

    private int Digits { get; } = Record.Circuit!.PressureDigits;
}
