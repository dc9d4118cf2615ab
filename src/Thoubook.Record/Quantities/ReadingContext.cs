namespace Thoubook.Record.Quantities;

/// <summary>What the place where a quantity is written says about it: the column head, the dimension's limits, what was confirmed.</summary>
public sealed record ReadingContext
{
    public static ReadingContext None { get; } = new();

    /// <summary>What is expected; null takes the kind of <see cref="BareUnit"/>, or else whatever the unit says.</summary>
    public QuantityKind? Kind { get; init; }

    /// <summary>The unit of a bare number: of the column head, or of that dimension's limits as typed. Null: a bare number is asked.</summary>
    public TradeUnit? BareUnit { get; init; }

    /// <summary>
    /// [SI] The least and the greatest of this dimension's or fit's limits, new and worn together, as they stand: the reader knows how far beyond
    /// them an honest reading may lie (see <see cref="Plausibility"/>). Where only a greatest is known (an ovality, a wear limit), the least is 0.
    /// Null: nothing is known.
    /// </summary>
    public (double Least, double Greatest)? Plausible { get; init; }

    /// <summary>Which mark is the decimal one, where a file or a form has stated it.</summary>
    public DecimalMark Decimal { get; init; } = DecimalMark.Unstated;

    /// <summary>Whether T or L, or brackets, may say tight or loose: on fits they may.</summary>
    public FitSigns FitSigns { get; init; } = FitSigns.NotHere;

    /// <summary>The codes of questions that the person has answered.</summary>
    public IReadOnlySet<string> Confirmed { get; init; } = new HashSet<string>(StringComparer.Ordinal);
}

public enum DecimalMark
{
    Unstated,
    Point,
    Comma,
}

public enum FitSigns
{
    NotHere,

    /// <summary>T or brackets: tight, negative. L or nothing: loose, positive.</summary>
    TightIsNegative,
}
