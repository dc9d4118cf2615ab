using Thoubook.Appraisal.Estimates;
using Thoubook.Appraisal.Oil;
using Thoubook.Record;
using Thoubook.Record.Circuits;

namespace Thoubook.Cli.Answers;

// The shapes of the oil in docs/scripts.md. Pressures are gauge, in Pa; flows in m³/s; speeds in rad/s; temperatures in K; clearances and lifts in m.

/// <summary>A value with the ends of the band that holds it 95 times in 100.</summary>
internal sealed record BandAnswer(double Value, double Low, double High)
{
    public static BandAnswer Of(Estimate estimate) => new(estimate.Value, estimate.Value - estimate.Band, estimate.Value + estimate.Band);
}

internal sealed record OilPointAnswer(double Speed, double OilTemperature, double Viscosity, double Density)
{
    public static OilPointAnswer Of(OilAnswer answer) => new(answer.Point.Speed, answer.Point.OilTemperature, answer.Viscosity, answer.Density);
}

/// <summary>What <c>oil show ENGINE --json</c> answers.</summary>
internal sealed record OilShowAnswer(
    string Engine,
    bool Invented,
    OilPointAnswer At,
    OilTrialAnswer? Trial,
    OilDrawsAnswer? Draws,
    IReadOnlyList<OilGaugeAnswer> Gauges,
    IReadOnlyList<OilConsumerAnswer> Consumers,
    IReadOnlyList<OilPumpAnswer> Pumps,
    IReadOnlyList<OilValveAnswer> Valves,
    IReadOnlyList<OilStateAnswer> States,
    OilFurthestAnswer? Furthest,
    OilDrainDownAnswer? DrainDown,
    IReadOnlyList<OilDoubtAnswer> Doubt,
    IReadOnlyDictionary<string, double> Nodes,
    IReadOnlyDictionary<string, double> Elements,
    string HowSolved,
    IReadOnlyList<string> Cautions);

internal sealed record OilGaugeAnswer(string Name, string At, double Value, double Low, double High)
{
    public static OilGaugeAnswer Of(GaugeAnswer gauge) => new(gauge.Gauge.Name.Text, gauge.Gauge.At.Text, gauge.Pressure.Value, gauge.Low, gauge.High);
}

/// <summary>One that takes oil.</summary>
/// <param name="Share">[-] of what all pressure pumps deliver.</param>
/// <param name="FedAt">[Pa]</param>
/// <param name="Figure">The dimension or fit that decides its flow, if one does.</param>
internal sealed record OilConsumerAnswer(string Name, string Kind, double Flow, double Share, double FedAt, bool Blanked, OilFigureAnswer? Figure)
{
    public static OilConsumerAnswer Of(ElementAnswer element) =>
        new(element.Element.Name.Text, element.Element.Kind.Word(), element.Flow, element.Share, element.From, element.Element.Blanked, element.Deciding is { } figure ? OilFigureAnswer.Of(figure) : null);
}

/// <param name="Value">[m] At the temperature of the point.</param>
internal sealed record OilFigureAnswer(string Name, double Value, double StandardUncertainty, bool Measured)
{
    public static OilFigureAnswer Of(CircuitFigure figure) => new(figure.Name.ToString(), figure.Value.Value, figure.Value.StandardUncertainty, figure.IsMeasured);
}

internal sealed record OilPumpAnswer(string Name, double Delivery, double Capacity, double Slip, double Filling, double? SuctionReserve, double? Margin, OilScavengeAnswer? Scavenge)
{
    public static OilPumpAnswer Of(PumpAnswer pump) => new(
        pump.Element.Element.Name.Text,
        pump.Delivery,
        pump.Capacity,
        pump.Slip,
        pump.Filling,
        pump.SuctionReserve,
        pump.Margin,
        pump.Scavenge is { } scavenge ? new(scavenge.Arrives, scavenge.AirShare, scavenge.Ratio, scavenge.KeepsUp) : null);
}

internal sealed record OilScavengeAnswer(double Arrives, double AirShare, double Ratio, bool KeepsUp);

internal sealed record OilValveAnswer(string Name, double Flow, double Lift, double FullLift, double Cracking, bool Open)
{
    public static OilValveAnswer Of(ValveAnswer valve) => new(valve.Element.Element.Name.Text, valve.Element.Flow, valve.Lift, valve.FullLift, valve.Cracking, valve.IsOpen);
}

/// <summary>A state of running. Where it could not be worked out, <c>refused</c> says why.</summary>
internal sealed record OilStateAnswer(string Name, double Speed, double OilTemperature, string? Verdict, IReadOnlyList<OilGaugeVerdictAnswer> Gauges, string? Refused)
{
    public static OilStateAnswer Of(OilState state, Outcome<Appraisal.Oil.StateAnswer> outcome) => outcome.IsOk(out var answer, out var problems)
        ? new(state.Name, state.Speed.Si, state.OilTemperature.Si, answer.Verdict?.Word(), [.. answer.Gauges.Select(OilGaugeVerdictAnswer.Of)], null)
        : new(state.Name, state.Speed.Si, state.OilTemperature.Si, null, [], string.Join(" ", problems.Select(p => p.ToString())));
}

internal sealed record OilGaugeVerdictAnswer(string Name, double Value, double Low, double High, double? Least, double? Greatest, string? Verdict, double? Probability, string Reason)
{
    public static OilGaugeVerdictAnswer Of(GaugeVerdict verdict) => new(
        verdict.Gauge.Gauge.Name.Text,
        verdict.Gauge.Pressure.Value,
        verdict.Gauge.Low,
        verdict.Gauge.High,
        verdict.Limit?.Least?.Si,
        verdict.Limit?.Greatest?.Si,
        verdict.Verdict?.Word(),
        verdict.Limit is null ? null : verdict.Probability,
        verdict.Reason);
}

/// <summary>Draws of the main gauge: their mean, and from where to where 95 in 100 of them lie.</summary>
internal sealed record OilDrawsAnswer(int Number, double Mean, double Low, double High);

/// <summary>What runs from the tank through the standing pump.</summary>
/// <param name="Hours">[h]</param>
/// <param name="Volume">[m³]</param>
internal sealed record OilDrainDownAnswer(double Hours, double Volume);

/// <param name="Pressure">[Pa] the lowest at the feed of any bearing.</param>
internal sealed record OilFurthestAnswer(string Name, double Pressure);

/// <summary>What one source adds to the band of the main gauge: half its width at 95 in 100, of this share alone.</summary>
internal sealed record OilDoubtAnswer(string Source, double HalfWidth, string? Assumed);

/// <summary>What is supposed, and the main gauge then less now.</summary>
internal sealed record OilTrialAnswer(string Name, BandAnswer Then, BandAnswer Difference, IReadOnlyList<string> Remarks)
{
    public static OilTrialAnswer Of(TrialAnswer trial) => new(trial.Trial.Name, BandAnswer.Of(trial.Then.Pressure), BandAnswer.Of(trial.Difference), trial.Remarks);
}

/// <summary>What <c>oil rank ENGINE --json</c> answers.</summary>
internal sealed record OilRankAnswer(
    string Engine,
    bool Invented,
    double Speed,
    double OilTemperature,
    IReadOnlyList<OilCostAnswer> Costs,
    IReadOnlyList<OilMeasureNextAnswer> MeasureNext,
    IReadOnlyList<OilTrialAnswer> Trials,
    IReadOnlyList<string> Cautions);

/// <summary>What a figure costs: the pressure that the main gauge would gain if it stood at the middle of its new limits.</summary>
internal sealed record OilCostAnswer(string Name, double PressureCost, double Low, double High, double Value, double AsNew, bool Measured, IReadOnlyList<string> Elements)
{
    public static OilCostAnswer Of(PressureCost cost) => new(
        cost.Figure.Name.ToString(),
        cost.Cost.Value,
        cost.Cost.Value - cost.Cost.Band,
        cost.Cost.Value + cost.Cost.Band,
        cost.Figure.Value.Value,
        cost.AsNew,
        cost.Figure.IsMeasured,
        [.. cost.Elements.Select(e => e.Name.Text)]);
}

internal sealed record OilMeasureNextAnswer(string Name, double Adds, double BandWithout)
{
    public static OilMeasureNextAnswer Of(MeasureNext next) => new(next.Figure.ToString(), next.Adds, next.BandWithout);
}

/// <summary>What <c>oil map ENGINE --json</c> answers: the main gauge, by oil temperature and then by speed.</summary>
internal sealed record OilMapAnswer(string Engine, bool Invented, string Gauge, IReadOnlyList<double> Speeds, IReadOnlyList<double> Temperatures, IReadOnlyList<IReadOnlyList<BandAnswer>> Pressures, IReadOnlyList<string> Cautions);

/// <summary>What <c>oil flow-test ENGINE --json</c> answers.</summary>
internal sealed record OilFlowTestAnswer(string Engine, bool Invented, string FedAt, double Pressure, double OilTemperature, BandAnswer Total, IReadOnlyList<OilFlowAnswer> Each, OilMostAnswer? Most, IReadOnlyList<OilFlowTestReadingAnswer> Tests, IReadOnlyList<string> Cautions);

/// <summary>The one way that hides the bearings.</summary>
/// <param name="Flow">[m³/s]</param>
/// <param name="Left">[m³/s] of the total with it blanked.</param>
internal sealed record OilMostAnswer(string Name, double Flow, double? Left);

internal sealed record OilFlowAnswer(string Name, BandAnswer Flow);

internal sealed record OilFlowTestReadingAnswer(string Id, double Flow, BandAnswer? Expected, double Deviation, bool Stands, bool Calibrates, string Says, IReadOnlyList<OilCaughtAnswer> Each)
{
    public static OilFlowTestReadingAnswer Of(FlowTestReading reading) => new(
        reading.Test.Id.ToString(),
        reading.Test.Flow.Si,
        reading.Expected is { } expected ? BandAnswer.Of(expected) : null,
        reading.Deviation,
        reading.Standing.Stands,
        reading.Calibrates,
        reading.Says,
        [.. reading.Each.Select(e => new OilCaughtAnswer(e.Element.Name.Text, BandAnswer.Of(e.Expected), e.Deviation, e.Says))]);
}

internal sealed record OilCaughtAnswer(string Name, BandAnswer Expected, double Deviation, string Says);

/// <summary>A flow test, or its acceptance, as it was stored.</summary>
internal sealed record OilTestStoredAnswer(string Id, string Stored, OilFlowTestReadingAnswer? Reading);
