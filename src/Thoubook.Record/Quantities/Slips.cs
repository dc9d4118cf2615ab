namespace Thoubook.Record.Quantities;

/// <summary>One meaning of a reading that is likely a slip.</summary>
internal readonly record struct Slip(string Code, double Si, TradeUnit Unit);

/// <summary>What a surprising reading may have been meant to say.</summary>
internal static class Slips
{
    /// <summary>[m] 10 µin. A bare figure finer than this was written for another unit than the column's.</summary>
    private const double FinerThanAnyGauge = 0.25e-6;

    private static readonly (string Code, int Power)[] Places =
    [
        ("slip-ten-times-less", -1), ("slip-ten-times-more", 1),
        ("slip-hundred-times-less", -2), ("slip-hundred-times-more", 2),
        ("slip-thousand-times-less", -3), ("slip-thousand-times-more", 3),
    ];

    /// <summary>The meanings to choose from, as typed first; empty where the reading gives no cause to ask.</summary>
    public static IReadOnlyList<Slip> Of(Exact number, double si, TradeUnit unit, ReadingContext context, bool bare)
    {
        if (context.Plausible is not { } limits)
        {
            return bare && unit.Kind == QuantityKind.Length && si != 0 && Math.Abs(si) < FinerThanAnyGauge
                ? [AsTyped(si, unit), .. OtherUnits(number, unit)]
                : [];
        }

        var plausibility = new Plausibility(limits.Least, limits.Greatest);
        if (plausibility.IsNoSurprise(si))
            return [];
        var places = Places.Select(place => new Slip(place.Code, unit.ToSi(number * Exact.Decimal(1, place.Power)), unit));
        var others = bare ? OtherUnits(number, unit).Concat(places) : places.Concat(OtherUnits(number, unit));
        if (context.FitSigns == FitSigns.NotHere)
            others = others.Append(new Slip("slip-sign", unit.ToSi(-number), unit));
        var likely = others.Where(slip => plausibility.IsNoSurprise(slip.Si)).ToList();
        var explaining = likely.FindAll(slip => plausibility.Explains(slip.Si));
        if (explaining.Count == 0 && !plausibility.IsFarOff(si))
            return [];

        List<Slip> meanings = [AsTyped(si, unit)];
        foreach (var slip in explaining.Count > 0 ? explaining : likely)
        {
            if (!meanings.Exists(other => Math.Abs(other.Si - slip.Si) <= 1e-9 * Math.Abs(slip.Si)))
                meanings.Add(slip);
        }

        return meanings;
    }

    public static string Why(ReadingContext context, TradeUnit unit) => context.Plausible is { } limits
        ? $"Far from its limits, {unit.Show(limits.Least)} to {unit.Show(limits.Greatest)}; this may be a slip."
        : $"Finer than any gauge in the unit of its column, {unit}; another unit may be meant.";

    private static Slip AsTyped(double si, TradeUnit unit) => new("slip-as-typed", si, unit);

    private static IEnumerable<Slip> OtherUnits(Exact number, TradeUnit unit) =>
        TradeUnit.Usual(unit.Kind).Where(other => other != unit).Select(other => new Slip("slip-unit-" + other.Code, other.ToSi(number), other));
}
