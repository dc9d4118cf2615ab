using Thoubook.Record.Quantities;

namespace Thoubook.Record.Circuits;

/// <summary>What a size may be, in SI, and the same in words of whatever unit a person writes.</summary>
/// <param name="Least">[SI] the least that it may be.</param>
/// <param name="Greatest">[SI] the greatest that it may be; <see cref="double.MaxValue"/>: no bound.</param>
public sealed record SizeRange(double Least, double Greatest)
{
    /// <summary>Figures of a bound in a unit in which it is no round number.</summary>
    private const int Figures = 4;

    /// <summary>Whether it must be above <see cref="Least"/> and not just at it.</summary>
    public bool IsAboveLeast { get; init; }

    /// <summary>Whether it must be below <see cref="Greatest"/> and not just at it.</summary>
    public bool IsBelowGreatest { get; init; }

    /// <summary>A count of things.</summary>
    public bool IsWhole { get; init; }

    public bool Allows(double si) =>
        double.IsFinite(si)
        && (IsAboveLeast ? si > Least : si >= Least)
        && (IsBelowGreatest ? si < Greatest : si <= Greatest)
        && (!IsWhole || si == Math.Floor(si));

    /// <summary>In words: <c>above 0 in, up to 20 in</c>.</summary>
    /// <param name="unit">In which the bounds are told.</param>
    public string In(TradeUnit unit)
    {
        var whole = IsWhole ? "a whole number " : "";
        var least = IsAboveLeast ? $"above {Bound(Least, unit)}" : $"{Bound(Least, unit)} or more";
        return Greatest == double.MaxValue ? whole + least : $"{whole}{least}, {(IsBelowGreatest ? "below" : "up to")} {Bound(Greatest, unit)}";
    }

    /// <summary>What is wrong with a quantity; null where it may be.</summary>
    /// <param name="quantity">As a person wrote it.</param>
    /// <param name="of">What it is, with a capital: <c>A density at 15 °C</c>.</param>
    /// <param name="field">Where it stands; empty where that is told otherwise.</param>
    public Problem? Against(Quantity quantity, string of, string field = "") =>
        Allows(quantity.Si) ? null : new Problem("circuit-size", field, quantity.Text, $"{of}: {In(quantity.Unit)}.", "Look at the figure and its unit again.");

    private static string Bound(double si, TradeUnit unit)
    {
        var number = unit.FromSi(si);
        if (number == 0 || Math.Abs(number - Math.Round(number)) < 1e-9 * Math.Abs(number))
            return unit.Show(si);
        var places = Figures - 1 - (int)Math.Floor(Math.Log10(Math.Abs(number)));
        return unit.Show(si, Math.Max(0, places)) is var text && places > 0 ? Trimmed(text) : text;

        // A nought at the end of a bound says nothing.
        static string Trimmed(string text)
        {
            var end = text.IndexOf(' ', StringComparison.Ordinal) is >= 0 and var at ? at : text.Length;
            return text[..end].Contains('.', StringComparison.Ordinal) ? text[..end].TrimEnd('0').TrimEnd('.') + text[end..] : text;
        }
    }
}

/// <summary>What figures of a circuit may be beside the sizes of its elements; beyond that stands a slip of the pen or of the unit.</summary>
public static class CircuitRanges
{
    private static readonly double Psi = TradeUnit.Psi.Factor;
    private const double Foot = 0.3048;
    private const double CelsiusZero = 273.15;

    /// <summary>[m²/s] of an engine's oil at any temperature at which one is measured: 0.5 to 100,000 cSt.</summary>
    public static SizeRange KinematicViscosity { get; } = new(0.5e-6, 0.1);

    /// <summary>[Pa·s] 0.1 to 100,000 cP.</summary>
    public static SizeRange Viscosity { get; } = new(1e-4, 100);

    /// <summary>[kg/m³] at 15 °C.</summary>
    public static SizeRange DensityAt15 { get; } = new(750, 1100);

    /// <summary>[kg/m³] at any temperature at which an engine has oil.</summary>
    public static SizeRange Density { get; } = new(600, 1200);

    /// <summary>[-] share of its viscosity that an oil keeps in a film.</summary>
    public static SizeRange ShearFactor { get; } = new(0.3, 1);

    /// <summary>[K] −60 to 200 °C.</summary>
    public static SizeRange OilTemperature { get; } = new(CelsiusZero - 60, CelsiusZero + 200);

    /// <summary>[Pa] gauge, of a reservoir or a limit: above nothing at all.</summary>
    public static SizeRange Pressure { get; } = new(-TradeUnit.Atmosphere.Factor, 1500 * Psi) { IsAboveLeast = true };

    /// <summary>[Pa] gauge, at which oil is fed from outside.</summary>
    public static SizeRange FeedPressure { get; } = new(0, 1500 * Psi) { IsAboveLeast = true };

    /// <summary>[Pa] standard uncertainty of a gauge.</summary>
    public static SizeRange GaugeDoubt { get; } = new(0, 150 * Psi);

    /// <summary>[m] of a node or an instrument, from wherever heights are counted.</summary>
    public static SizeRange Height { get; } = new(-100 * Foot, 100 * Foot);

    /// <summary>[rad/s] No piston engine turns faster than 20,000 rev/min.</summary>
    public static SizeRange Speed { get; } = new(0, 20_000 * Math.PI / 30);

    /// <summary>[m³/s] through the whole circuit during a flow test.</summary>
    public static SizeRange CaughtFlow { get; } = new(0, ElementKeys.MostFlow) { IsAboveLeast = true };

    /// <summary>[-] how far a shaft that lies in its shell is off centre.</summary>
    public static SizeRange Eccentricity { get; } = new(0, 1) { IsBelowGreatest = true };
}
