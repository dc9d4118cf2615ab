using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal.Verdicts;

/// <summary>A doubt or a form error in words, in the unit in which such a thing is spoken of beside the figure's limits.</summary>
internal static class SmallAmount
{
    /// <summary>[m] Below this a workshop's gauges cannot tell. Common practice: a tenth of a tenth.</summary>
    public const double BeyondTheWorkshop = 0.5e-6;

    public static string Of(Figure figure, double si)
    {
        var unit = figure.UnitOfLimits ?? TradeUnit.Default(figure.Kind);
        if (figure.Kind != QuantityKind.Length)
            return $"{si / unit.Factor:0.###} {unit.Symbol}";
        return unit == TradeUnit.Millimetre || unit == TradeUnit.Micrometre || unit == TradeUnit.Metre || unit == TradeUnit.Centimetre
            ? $"{si / 1e-6:0.0} µm"
            : $"{si / TradeUnit.Thou.Factor:0.00} thou";
    }
}
