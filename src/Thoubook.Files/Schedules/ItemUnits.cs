using Thoubook.Record.Quantities;

namespace Thoubook.Files.Schedules;

/// <summary>In which unit the figures of one cell are, and what says so.</summary>
/// <param name="Main">Of the figures printed first; null: not known.</param>
/// <param name="Repeat">Of the figures in brackets or on the line below; null: not known.</param>
internal sealed record CellUnits(TradeUnit? Main, TradeUnit? Repeat)
{
    /// <summary>Why the unit is not known, where it is more than that nothing says it.</summary>
    public string Doubt { get; init; } = "";

    public string Note { get; init; } = "";
}

/// <summary>Works out the unit of every figure: printed at it, at the head of its column, in the table's unit column, proved by its repeat, stated for the file.</summary>
internal sealed class ItemUnits(ScheduleOptions options)
{
    /// <summary>What sort of quantity an item is measured in, by its words.</summary>
    public static QuantityKind? Expected(ItemWords words, RowKind? kind)
    {
        if (kind == RowKind.Torque)
            return QuantityKind.Torque;
        if (words.HasAny(["unbalance", "imbalance"]))
            return null;
        if (kind == RowKind.Spring)
        {
            return words.Has("rate") ? QuantityKind.Stiffness
                : words.HasAny(["load", "loaded", "force", "tension", "strength", "poundage", "weight"]) || (words.Has("pressure") && !words.Has("length") && !words.Has("height")) ? QuantityKind.Force
                : QuantityKind.Length;
        }

        if (words.HasAny(["weight", "mass"]))
            return QuantityKind.Mass;
        if (words.HasAny(["preload", "pull", "load"]))
            return QuantityKind.Force;
        if (words.Has("angle"))
            return QuantityKind.Angle;
        if (kind is null or RowKind.Other && !words.IsForm && !words.SayWear && words.SayNoLength)
        {
            return words.Has("pressure") || words.Has("compression") ? QuantityKind.Pressure
                : words.Has("temperature") ? QuantityKind.Temperature
                : words.HasAny(["capacity", "volume"]) ? QuantityKind.Volume
                : words.HasAny(["speed", "rpm"]) ? QuantityKind.RotationalSpeed
                : words.HasAny(["timing", "advance", "opens", "closes"]) ? QuantityKind.Angle
                : null;
        }

        return QuantityKind.Length;
    }

    /// <summary>The one unit printed at figures anywhere in an item's cells; null where there is none, or more than one.</summary>
    public static TradeUnit? PrintedIn(ScheduleItem item, QuantityKind? expected)
    {
        var units = item.Cells.Values.Select(cell => cell.Main).OfType<FigureSpan>()
            .Select(span => Printed(span, expected).Unit).OfType<TradeUnit>().Distinct().ToList();
        return units is [var only] && only.Kind == expected ? only : null;
    }

    public CellUnits Of(FigureCell cell, FigureCell? below, ColumnRole role, string unitWord, QuantityKind? expected, TradeUnit? ofRow)
    {
        var main = cell.Main ?? cell.Repeat!;
        var repeat = cell.Main is null ? below?.Main ?? below?.Repeat : cell.Repeat ?? below?.Main ?? below?.Repeat;
        var printed = Printed(main, expected);
        var printedRepeat = repeat is null ? null : Printed(repeat, expected).Unit;
        if (printed.Doubt.Length > 0)
            return new CellUnits(null, null) { Doubt = printed.Doubt };
        var unit = printed.Unit;
        var note = "";
        if (unit is null && cell.UnknownUnit.Length > 0)
        {
            unit = repeat is null ? null : ByRatio(main, repeat, printedRepeat);
            if (unit is null)
                return new CellUnits(null, printedRepeat) { Doubt = $"'{cell.UnknownUnit}' at the figure is no unit that is known." };
            note = $"The unit is printed '{cell.UnknownUnit}'; the figures in brackets show that {unit} is meant.";
        }

        if (unit is null && expected is not null)
        {
            // The row's own unit goes before that of the column; two of one kind that differ are no answer.
            var own = TableUnit(unitWord, expected);
            if (own is not null && role.Unit is { } headUnit && headUnit != own && headUnit.Kind == own.Kind)
                return new CellUnits(null, printedRepeat) { Doubt = $"The row says {own}, and the heading of the column {headUnit}." };
            var head = own ?? role.Unit;
            unit = head?.Kind == expected ? head
                : repeat is not null && expected == QuantityKind.Length && ByRatio(main, repeat, printedRepeat) is { } proved ? proved
                : ofRow ?? (expected == QuantityKind.Length ? Stated() : null);
        }

        return new CellUnits(unit, printedRepeat ?? Other(unit)) { Note = note };
    }

    private static TradeUnit? Other(TradeUnit? unit) =>
        unit == TradeUnit.Inch ? TradeUnit.Millimetre : unit == TradeUnit.Millimetre ? TradeUnit.Inch : null;

    private TradeUnit? Stated() => options.Unit switch
    {
        StatedUnit.Inch => TradeUnit.Inch,
        StatedUnit.Millimetre => TradeUnit.Millimetre,
        _ => null,
    };

    private static TradeUnit? TableUnit(string word, QuantityKind? expected) => word.Length == 0 ? null : TradeUnit.Find(word, expected);

    /// <summary>A figure and its repeat 25.4 times as great are inches and millimetres, and the other way round.</summary>
    public static TradeUnit? ByRatio(FigureSpan main, FigureSpan repeat, TradeUnit? repeatUnit)
    {
        var a = Math.Abs(main.Figures.Last().Number.ToDouble());
        var b = Math.Abs(repeat.Figures.Last().Number.ToDouble());
        if (a == 0 || b == 0)
            return null;
        var ratio = b / a;
        return Math.Abs(ratio / 25.4 - 1) < 0.05 && repeatUnit != TradeUnit.Inch ? TradeUnit.Inch
            : Math.Abs(ratio * 25.4 - 1) < 0.05 && repeatUnit != TradeUnit.Millimetre ? TradeUnit.Millimetre
            : null;
    }

    /// <summary>The unit printed at the figures of a range; one printed at either end is that of both.</summary>
    private static (TradeUnit? Unit, string Doubt) Printed(FigureSpan span, QuantityKind? expected)
    {
        var printed = span.Figures.Select(figure => figure.Units).FirstOrDefault(units => !units.IsEmpty);
        if (printed.IsDefaultOrEmpty)
            return (null, "");
        var fitting = printed.Where(unit => unit.Kind == expected).ToList();
        if (fitting.Count == 0)
            fitting = [.. printed];
        return fitting.Count == 1 ? (fitting[0], "") : (null, $"The unit may be {string.Join(" or ", fitting.Select(unit => $"{unit} of {unit.Kind.ToString().ToLowerInvariant()}"))}.");
    }
}
