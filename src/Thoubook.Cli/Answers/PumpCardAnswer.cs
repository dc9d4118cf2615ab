using Thoubook.Appraisal.Oil;
using Thoubook.Record;

namespace Thoubook.Cli.Answers;

/// <summary>What <c>oil pump ENGINE PUMP --json</c> answers. Lengths in m, pressures in Pa.</summary>
internal sealed record PumpCardAnswer(string Part, string? Element, IReadOnlyList<PumpSizeAnswer> Sizes, PumpDutyAnswer? Duty, IReadOnlyList<PumpChoiceAnswer> Choices, IReadOnlyList<string> Cautions)
{
    public static PumpCardAnswer Of(PumpCard card) => new(
        card.Part.Path,
        card.Element?.Name.Text,
        [.. card.Sizes.Select(s => new PumpSizeAnswer(s.Figure.Name.ToString(), s.Details.Counting?.Value, s.Details.Counting?.StandardUncertainty, s.Details.Basis.Word()))],
        card.Duty is { } duty ? new(duty.State.Name, duty.Speed, duty.State.OilTemperature.Si, duty.Viscosity, duty.Pressure) : null,
        [.. card.Choices.Select(PumpChoiceAnswer.Of)],
        [.. card.Cautions.Select(c => c.Text)]);
}

internal sealed record PumpSizeAnswer(string Name, double? Value, double? StandardUncertainty, string Basis);

internal sealed record PumpChoiceAnswer(string Name, double Change, IReadOnlyList<PumpFloatAnswer> Floats, double? EndLeak, double? Slip)
{
    public static PumpChoiceAnswer Of(PumpChoice choice) => new(
        choice.Name,
        choice.Change,
        [.. choice.Floats.Select(f => new PumpFloatAnswer(f.Fit.Figure.Name.ToString(), f.State, f.Float.Value, f.Float.Value - f.Float.Band, f.Float.Value + f.Float.Band, f.IsMeasured, f.RiskOfNil))],
        choice.EndLeak,
        choice.Slip);
}

internal sealed record PumpFloatAnswer(string Name, string State, double Value, double Low, double High, bool IsMeasured, double RiskOfNil);

/// <summary>Speed of the pump in rad/s, temperature in K, viscosity in Pa·s.</summary>
internal sealed record PumpDutyAnswer(string State, double Speed, double OilTemperature, double Viscosity, double Pressure);
