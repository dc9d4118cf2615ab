using System.Globalization;
using Thoubook.Mechanics.Sums;
using Thoubook.Record.Quantities;
using Thoubook.Web.Sheets;

namespace Thoubook.Web.Pages;

/// <summary>How the figures of a sum are shown: in the unit that the asker wrote, where they are of its kind.</summary>
internal static class SumText
{
    public static string Of(double value, string unit, TradeUnit? asked)
    {
        if (asked is not null && TradeUnit.Default(asked.Kind).Symbol == unit)
        {
            // A size of some inches reads better in inches, a share of a thou better in thou.
            if (asked == TradeUnit.Thou && Math.Abs(value) > 0.1 * TradeUnit.Inch.Factor)
                asked = TradeUnit.Inch;
            else if (asked == TradeUnit.Inch && Math.Abs(value) < 0.01 * TradeUnit.Inch.Factor)
                asked = TradeUnit.Thou;
            return QuantityText.Format(Rounded(value, asked), asked).Replace('-', '−');
        }

        var number = Math.Abs(value) is >= 1e-4 and < 1e6 or 0 ? value.ToString("0.######", CultureInfo.InvariantCulture) : value.ToString("0.####e0", CultureInfo.InvariantCulture);
        return unit is "-" or "" ? number : $"{number} {unit}";
    }

    private static double Rounded(double si, TradeUnit unit) => unit.Offset != 0 ? si : Math.Round(si / unit.Factor, 6) * unit.Factor;

    /// <summary>The question of an example as an address, to be seen worked out.</summary>
    public static string Address(Sum sum, string example)
    {
        var given = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var pair in Parts(example))
        {
            if (pair.IndexOf('=') is var at and > 0)
                given[pair[..at]] = given.TryGetValue(pair[..at], out var before) ? $"{before}; {pair[(at + 1)..]}" : pair[(at + 1)..];
        }

        return $"{Where.Sums}/{sum.Name}?ask=1{string.Concat(given.Select(g => $"&{Uri.EscapeDataString(g.Key)}={Uri.EscapeDataString(g.Value)}"))}";
    }

    /// <summary>Words apart by blanks, quoted ones kept together.</summary>
    private static IEnumerable<string> Parts(string example)
    {
        var word = new System.Text.StringBuilder();
        var quoted = false;
        foreach (var c in example)
        {
            if (c is '"' or '\'')
                quoted = !quoted;
            else if (c == ' ' && !quoted)
            {
                if (word.Length > 0)
                    yield return word.ToString();
                word.Clear();
            }
            else
                word.Append(c);
        }

        if (word.Length > 0)
            yield return word.ToString();
    }
}
