using System.Globalization;

namespace Thoubook.Record.Quantities;

/// <summary>Writes quantities so that <see cref="QuantityReader"/> reads them back.</summary>
public static class QuantityText
{
    private const int OwnFigures = 9;
    private const int BesideFigures = 6;

    /// <summary>An SI value in a unit: <c>2.5 thou</c>.</summary>
    /// <param name="si">[SI] the value; finite.</param>
    /// <param name="unit">The unit to write it in.</param>
    /// <param name="digits">Digits after the point, trailing noughts kept; null: nine significant figures, trailing noughts dropped.</param>
    public static string Format(double si, TradeUnit unit, int? digits = null)
    {
        ArgumentNullException.ThrowIfNull(unit);
        var number = unit.FromSi(si);
        return WithUnit(digits is { } places ? Fixed(number, places) : Significant(number, OwnFigures), unit);
    }

    /// <summary>An SI value in every unit in which the trade reads its kind: <c>0.0025 in (2.5 thou, 0.0635 mm)</c>.</summary>
    /// <param name="si">[SI] the value; finite.</param>
    /// <param name="unit">The unit that stands first: the one it was written in.</param>
    public static string InTradeUnits(double si, TradeUnit unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        var others = TradeUnit.Usual(unit.Kind).Where(other => other != unit).Select(other => WithUnit(Significant(other.FromSi(si), BesideFigures), other)).ToArray();
        return others.Length == 0 ? Format(si, unit) : $"{Format(si, unit)} ({string.Join(", ", others)})";
    }

    /// <summary>An SI value in the SI unit of its kind with every figure it has: reading it gives the same <see cref="double"/>.</summary>
    public static string Full(double si, QuantityKind kind) =>
        WithUnit(si.ToString("R", CultureInfo.InvariantCulture).Replace('E', 'e'), TradeUnit.Default(kind));

    private static string WithUnit(string number, TradeUnit unit) => unit.Symbol switch
    {
        "" => number,
        "°" or "%" => number + unit.Symbol,
        _ => $"{number} {unit.Symbol}",
    };

    private static string Fixed(double number, int places)
    {
        var text = number.ToString("F" + places.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.AsSpan().IndexOfAnyInRange('1', '9') < 0 ? text.TrimStart('-') : text;
    }

    private static string Significant(double number, int figures)
    {
        if (number == 0)
            return "0";
        var size = (int)Math.Floor(Math.Log10(Math.Abs(number)));
        if (size is < -7 or > 11)
            return number.ToString("G" + figures.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).Replace('E', 'e');
        var places = Math.Max(figures - 1 - size, 0);
        var text = number.ToString("F" + places.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.Contains('.', StringComparison.Ordinal) ? text.TrimEnd('0').TrimEnd('.') : text;
    }
}
