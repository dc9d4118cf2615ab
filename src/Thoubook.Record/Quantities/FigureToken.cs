namespace Thoubook.Record.Quantities;

public enum FigureTokenKind
{
    Number,

    /// <summary>A unit that follows a number.</summary>
    Unit,

    /// <summary>T or L after a number or its unit.</summary>
    FitLetter,

    /// <summary>Any other word; with <see cref="FigureToken.Units"/> where it could be a unit.</summary>
    Word,

    /// <summary>Plus, or plus-minus.</summary>
    Sign,
    Open,
    Close,

    /// <summary>A single dash of any length, a minus among them: whether it is a sign, a range or a hyphen is for the caller to judge.</summary>
    Dash,
    Slash,
    Comma,

    /// <summary>"The same as above": a lone inch mark, <c>,,</c>, <c>do.</c></summary>
    Ditto,

    /// <summary>Dashes that stand for nothing: two or more in a row, or one that is all there is.</summary>
    NilDashes,
    Other,
}

/// <summary>How a number is written.</summary>
public enum FigureForm
{
    /// <summary>Not a number.</summary>
    None,
    Whole,

    /// <summary>With a decimal point.</summary>
    Decimal,
    DecimalComma,

    /// <summary>With marks between groups of three that can mean nothing else.</summary>
    Grouped,
    Fraction,
    Mixed,

    /// <summary>With a power of ten.</summary>
    Exponent,

    /// <summary>In words: two, half a.</summary>
    Spelled,

    /// <summary>More than one meaning, or one that contradicts the stated decimal mark: <see cref="FigureToken.Values"/> has a code for each.</summary>
    Doubtful,

    /// <summary>No number can be written so: two points, uneven groups.</summary>
    Broken,
}

/// <summary>One value that a number may have.</summary>
/// <param name="Value">Exactly as written.</param>
/// <param name="Written">The same with a decimal point and without group marks.</param>
/// <param name="Code">Confirms this value where the number is doubtful; else empty.</param>
public readonly record struct FigureValue(Exact Value, string Written, string Code)
{
    public double ToDouble() => Value.ToDouble();
}

/// <summary>A number, a word, a mark in a piece of text.</summary>
/// <param name="Kind">What sort of thing it is.</param>
/// <param name="Text">As it stands there.</param>
/// <param name="Start">Its first character, counted from 0.</param>
public sealed record FigureToken(FigureTokenKind Kind, string Text, int Start)
{
    public int Length => Text.Length;

    public int End => Start + Text.Length;

    public FigureForm Form { get; init; }

    /// <summary>One value; several where the number is doubtful; none where it is broken or no number.</summary>
    public IReadOnlyList<FigureValue> Values { get; init; } = [];

    /// <summary>Every unit that is written so, those first that may stand anywhere.</summary>
    public IReadOnlyList<TradeUnit> Units => Spelled is null ? [] : [.. Spelled.All];

    internal SpelledUnits? Spelled { get; init; }

    /// <summary>The units it may be where this kind is expected (null: any).</summary>
    public IReadOnlyList<TradeUnit> UnitsOf(QuantityKind? kind) => Spelled?.For(kind) ?? [];
}
