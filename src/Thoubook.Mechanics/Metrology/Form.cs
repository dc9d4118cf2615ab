using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Metrology;

/// <summary>Ovality and taper of a bore or a journal from readings at depths and on axes. Each is a measurand of its own.</summary>
public static class Form
{
    /// <summary>A departure from true form and the two places between which it was found.</summary>
    /// <param name="Amount">[any] greatest less least, on diameter; 0 where no two places can be compared.</param>
    /// <param name="GreatestAt">[-] index of the place with the greater reading; −1 where none.</param>
    /// <param name="LeastAt">[-] index of the place with the lesser reading; −1 where none.</param>
    public readonly record struct FormError(double Amount, int GreatestAt, int LeastAt)
    {
        /// <summary>Whether there were two places to compare.</summary>
        public bool IsKnown => GreatestAt >= 0;
    }

    /// <summary>Ovality: the greatest difference between axes at one depth.</summary>
    /// <param name="diameters">[any] mean diameter at each place.</param>
    /// <param name="depths">[-] which depth each place is at, as a number that names it; same order.</param>
    /// <returns>[any] the ovality and where it was found; unknown where no depth has two axes.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Lists of unlike length, or a diameter not finite.</exception>
    /// <remarks>Model: greatest over depths of (greatest − least diameter at that depth), on diameter. Source: practice of the trade, see docs/sums/metrology.md (common practice). Check: FormTests.</remarks>
    public static FormError Ovality(ReadOnlySpan<double> diameters, ReadOnlySpan<int> depths) => GreatestDifference(diameters, depths);

    /// <summary>Taper: the greatest difference between depths on one axis.</summary>
    /// <param name="diameters">[any] mean diameter at each place.</param>
    /// <param name="axes">[-] which axis each place is on, as a number that names it; same order.</param>
    /// <returns>[any] the taper and where it was found; unknown where no axis has two depths.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Lists of unlike length, or a diameter not finite.</exception>
    /// <remarks>Model: greatest over axes of (greatest − least diameter on that axis), on diameter, total over the length read. Source: practice of the trade, see docs/sums/metrology.md (common practice). Check: FormTests.</remarks>
    public static FormError Taper(ReadOnlySpan<double> diameters, ReadOnlySpan<int> axes) => GreatestDifference(diameters, axes);

    private static FormError GreatestDifference(ReadOnlySpan<double> values, ReadOnlySpan<int> groups)
    {
        Guard.SameCount(groups.Length, values.Length, "number of places");
        var found = new FormError(0, -1, -1);
        for (var i = 0; i < values.Length; i++)
        {
            Guard.Finite(values[i], "", "diameter");
            for (var j = 0; j < i; j++)
            {
                if (groups[i] != groups[j])
                    continue;
                var (greatest, least) = values[i] > values[j] ? (i, j) : (j, i);
                var amount = values[greatest] - values[least];
                if (!found.IsKnown || amount > found.Amount)
                    found = new FormError(amount, greatest, least);
            }
        }

        return found;
    }
}
