using Thoubook.Appraisal.Oil;
using Thoubook.Record;

namespace Thoubook.Cli.Answers;

/// <summary>What <c>oil pump ENGINE PUMP --json</c> answers. Lengths in m, pressures in Pa.</summary>
internal sealed record PumpCardAnswer(string Part, string? Element, string? Supposed, IReadOnlyList<PumpSizeAnswer> Sizes, PumpPointAnswer? At, IReadOnlyList<PumpChoiceAnswer> Choices, IReadOnlyList<string> Cautions)
{
    public static PumpCardAnswer Of(PumpCard card, OilTrial? trial) => new(
        card.Part.Path,
        card.Element?.Name.Text,
        trial?.Name,
        [.. card.Sizes.Select(s => new PumpSizeAnswer(s.Figure.Name.ToString(), s.Details.Counting?.Value, s.Details.Counting?.StandardUncertainty, s.Details.Basis.Word()))],
        card.At is { } point ? new(point.Speed, point.OilTemperature) : null,
        [.. card.Choices.Select(PumpChoiceAnswer.Of)],
        [.. card.Cautions.Select(c => c.Text)]);
}

internal sealed record PumpSizeAnswer(string Name, double? Value, double? StandardUncertainty, string Basis);

internal sealed record PumpChoiceAnswer(string Name, double Change, IReadOnlyList<PumpFloatAnswer> Floats, double? EndLeak, PumpOilAnswer? Oil)
{
    public static PumpChoiceAnswer Of(PumpChoice choice) => new(
        choice.Name,
        choice.Change,
        [.. choice.Floats.Select(f => new PumpFloatAnswer(f.Fit.Figure.Name.ToString(), f.State, f.Float.Value, f.Float.Value - f.Float.Band, f.Float.Value + f.Float.Band, f.IsMeasured, f.RiskOfNil))],
        choice.EndLeak,
        choice.Oil is { } oil ? new(oil.Slip, oil.Main?.Pressure.Value, oil.Main?.Low, oil.Main?.High, oil.Difference?.Value, oil.Difference?.StandardUncertainty) : null);
}

internal sealed record PumpFloatAnswer(string Name, string State, double Value, double Low, double High, bool IsMeasured, double RiskOfNil);

/// <summary>Speed of the engine in rad/s, temperature in K.</summary>
internal sealed record PumpPointAnswer(double Speed, double OilTemperature);

internal sealed record PumpOilAnswer(double Slip, double? Main, double? Low, double? High, double? Difference, double? StandardUncertainty);
