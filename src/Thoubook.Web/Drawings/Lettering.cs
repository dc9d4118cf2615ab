using System.Globalization;
using Thoubook.Appraisal;
using Thoubook.Appraisal.Estimates;
using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Web.Drawings;

/// <summary>How the figures of one dimension or fit are lettered: in the unit of its limits as typed, with as many digits as its band leaves room for.</summary>
public sealed class Lettering
{
    private readonly int _limitDigits;

    private Lettering(TradeUnit unit, TradeUnit small, int limitDigits) => (Unit, Small, _limitDigits) = (unit, small, limitDigits);

    public TradeUnit Unit { get; }

    /// <summary>The unit of bands and of differences: thou beside inches.</summary>
    public TradeUnit Small { get; }

    public static Lettering Of(FigureAppraisal appraisal, EngineRecord record)
    {
        var figure = appraisal.Figure;
        var typed = figure.Governing(record.Engine.Mark)?.Limits.Given.FirstOrDefault()?.Unit ?? figure.UnitOfLimits ?? ReadIn(appraisal) ?? TradeUnit.Usual(figure.Kind)[0];
        var unit = figure is Fit && typed == TradeUnit.Inch ? TradeUnit.Thou : typed;
        return For(unit, figure.LimitSets.SelectMany(s => s.Limits.Given).Select(q => q.Si));
    }

    public static Lettering For(TradeUnit unit, IEnumerable<double> limits)
    {
        var digits = limits.Select(si => Decimals(unit.FromSi(si))).DefaultIfEmpty(0).Max();
        return new(unit, unit == TradeUnit.Inch ? TradeUnit.Thou : unit, digits);
    }

    public string Value(Estimate estimate) => Number(estimate.Value, Unit, DigitsFor(estimate.Band / Unit.Factor));

    public string Value(double si, double band) => Number(si, Unit, DigitsFor(band / Unit.Factor));

    /// <summary>The band as it stands after ±: with its unit where that is not the unit of the value.</summary>
    public string BandText(double band)
    {
        var digits = Math.Clamp((int)Math.Ceiling(-Math.Log10(Math.Max(band / Small.Factor, 1e-9) / 3)), 0, 7);
        var number = Number(band, Small, digits);
        return Small == Unit ? number : $"{number} {Small.Symbol}";
    }

    /// <summary>A difference in the small unit, with its unit: <c>0.2 thou</c>.</summary>
    public string Difference(double si, double band)
    {
        var digits = Math.Clamp((int)Math.Ceiling(-Math.Log10(Math.Max(band / Small.Factor, 1e-9) / 1.01)), 0, 6);
        return $"{Number(si, new ScaleOnly(Small), digits)} {Small.Symbol}";
    }

    public string Limit(double si) => Number(si, Unit, _limitDigits);

    private int DigitsFor(double band) => band > 0
        ? Math.Clamp((int)Math.Ceiling(-Math.Log10(band / 3)), Math.Min(_limitDigits, 6), 7)
        : _limitDigits;

    private static TradeUnit? ReadIn(FigureAppraisal appraisal) => appraisal switch
    {
        DimensionAppraisal dimension => dimension.Details.Readings is [var first, ..] ? first.Value.Unit : null,
        FitAppraisal fit => fit.Checks.Select(c => c.Check.Value.Unit).FirstOrDefault(),
        _ => null,
    };

    private static int Decimals(double number)
    {
        var text = Math.Abs(number).ToString("0.######", CultureInfo.InvariantCulture);
        var point = text.IndexOf('.');
        return point < 0 ? 0 : text.Length - point - 1;
    }

    private static string Number(double si, TradeUnit unit, int digits) => Signed(unit.FromSi(si), digits);

    private static string Number(double si, ScaleOnly scale, int digits) => Signed(si / scale.Unit.Factor, digits);

    private static string Signed(double number, int digits)
    {
        var text = Math.Abs(number).ToString("F" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return number < 0 && text.AsSpan().IndexOfAnyInRange('1', '9') >= 0 ? "−" + text : text;
    }

    /// <summary>A difference has no offset, even of a temperature.</summary>
    private readonly record struct ScaleOnly(TradeUnit Unit);
}
