using Thoubook.Appraisal.Estimates;
using Thoubook.Mechanics.Heat;
using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal.Oil;

/// <summary>
/// What a dimension or fit amounts to in the circuit at an oil temperature: as measured, else within the drawing's limits. A fit grows or closes with
/// its parts: between 20 °C and the engine's hot state in proportion to the oil's temperature, below 20 °C the same towards the coldest start.
/// </summary>
/// <param name="appraisal">The engine, supposed values taken in.</param>
/// <param name="changes">[SI] What a trial changes figures by; a dimension's change goes into every fit that it belongs to.</param>
internal sealed class FigureValues(EngineAppraisal appraisal, IReadOnlyDictionary<FigureName, double> changes)
{
    private const double Rectangular = 0.57735026918962576;

    /// <summary>Null where neither readings nor limits say anything.</summary>
    /// <param name="name">The dimension or fit.</param>
    /// <param name="oilTemperature">[K]</param>
    public CircuitFigure? At(FigureName name, double oilTemperature) => appraisal[name] switch
    {
        DimensionAppraisal { Details.Counting: { } counting } dimension => new(name, Changed(counting, ChangeOf(name)), dimension.Details.IsMeasured),
        FitAppraisal fit => OfFit(fit, oilTemperature),
        _ => null,
    };

    /// <summary>[SI] The middle of the new limits, at the temperature; null where a figure has none.</summary>
    public double? AsNew(FigureName name, double oilTemperature) => appraisal[name] switch
    {
        { Limits: { NewLeast: { } least, NewGreatest: { } greatest } } figure => ((least + greatest) / 2) + (figure is FitAppraisal fit ? Growth(fit, oilTemperature) : 0),
        _ => null,
    };

    /// <summary>The unit in which a figure's limits are written; null where it has none.</summary>
    public TradeUnit? UnitOf(FigureName name) => appraisal[name]?.Figure.UnitOfLimits;

    /// <summary>[SI] What a fit changes by, its own change and those of its dimensions together.</summary>
    public double ChangeOf(FitAppraisal fit) => ChangeOf(fit.Figure.Name) + fit.Fit.Gap.Sum(term => term.Coefficient * ChangeOf(term.Of));

    private CircuitFigure? OfFit(FitAppraisal fit, double oilTemperature)
    {
        var name = fit.Figure.Name;
        if ((fit.Estimate ?? fit.States[0].Expected ?? WithinOwnLimits(fit)) is not { } at20)
            return null;
        return new(name, Changed(at20, ChangeOf(fit) + Growth(fit, oilTemperature)), fit.Estimate is not null);
    }

    /// <summary>[m] from 20 °C to the temperature.</summary>
    private double Growth(FitAppraisal fit, double oilTemperature)
    {
        var rise = oilTemperature - Expansion.Reference;
        var warmed = rise >= 0 ? TemperatureState.Hot : TemperatureState.ColdestStart;
        if (appraisal.Record.Engine.Temperatures.FirstOrDefault(t => t.Name == warmed) is not { } state
            || fit.States.FirstOrDefault(s => s.Name == warmed)?.Expected is not { } there || fit.States[0].Expected is not { } here
            || Math.Abs(state.Everywhere.Si - Expansion.Reference) < 1)
            return 0;
        return (there.Value - here.Value) * rise / (state.Everywhere.Si - Expansion.Reference);
    }

    private static Estimate? WithinOwnLimits(FitAppraisal fit) => fit.Limits is { NewLeast: { } least, NewGreatest: { } greatest }
        ? new Estimate((least + greatest) / 2, [new(new(SourceKind.Drawing, $"limits of {fit.Figure.Name}"), (greatest - least) / 2 * Rectangular, double.PositiveInfinity)])
        : null;

    private static Estimate Changed(Estimate estimate, double by) => by == 0 ? estimate : new Estimate(estimate.Value + by, estimate.Contributions);

    private double ChangeOf(FigureName name) => changes.GetValueOrDefault(name);
}
