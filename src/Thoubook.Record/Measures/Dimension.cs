using Thoubook.Record.Quantities;

namespace Thoubook.Record.Measures;

/// <summary>A figure of the engine that has limits: a dimension of one part, or a fit between several.</summary>
public abstract record Figure(FigureName Name)
{
    public int Revision { get; init; }

    /// <summary>The sets of limits in the order given; the first that applies to the engine's mark governs, the others are shown where they differ.</summary>
    public IReadOnlyList<LimitSet> LimitSets { get; init; } = [];

    /// <summary>Null: worked out from the limits (a worn limit above the new ones grows, one below shrinks).</summary>
    public WearDirection? Wear { get; init; }

    public Side Side { get; init; }

    public QuantityKind Kind { get; init; } = QuantityKind.Length;

    public string? Note { get; init; }

    /// <summary>The set of limits that governs for an engine of this mark; null where none applies.</summary>
    public LimitSet? Governing(string? mark)
    {
        foreach (var set in LimitSets)
        {
            if (set.Marks.Count == 0 || (mark is not null && set.Marks.Contains(mark, StringComparer.OrdinalIgnoreCase)))
                return set;
        }

        return null;
    }

    /// <summary>The unit that a bare number for this figure is in: that of its limits as typed. Null where nothing says it.</summary>
    public TradeUnit? UnitOfLimits => LimitSets.SelectMany(s => s.Limits.Given).FirstOrDefault()?.Unit;
}

/// <summary>A measurable property of a part.</summary>
public sealed record Dimension(FigureName Name) : Figure(Name)
{
    /// <summary>Which of the values at several places counts; null: the most worn one, or the mean where wear has no direction.</summary>
    public Counting? Counts { get; init; }

    /// <summary>Greatest difference allowed between directions in one plane.</summary>
    public FormLimit? Ovality { get; init; }

    /// <summary>Greatest difference allowed between planes in one direction.</summary>
    public FormLimit? Taper { get; init; }

    public IReadOnlyList<RepairSize> RepairSizes { get; init; } = [];

    /// <summary>The places at which it is to be measured; empty: wherever the reading says.</summary>
    public IReadOnlyList<PlaceName> Places { get; init; } = [];
}

/// <summary>The greatest error of form, new and worn; null where not given.</summary>
public sealed record FormLimit(Quantity? New, Quantity? Worn);

/// <summary>A repair size: a named step by which both new and worn limits move (an undersize is negative). Clearances do not change.</summary>
public sealed record RepairSize(string Name, Quantity Step);
