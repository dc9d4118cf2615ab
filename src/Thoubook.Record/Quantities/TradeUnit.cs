namespace Thoubook.Record.Quantities;

/// <summary>A unit as the trade writes it. SI value = number × <see cref="Factor"/> + <see cref="Offset"/>.</summary>
public sealed partial class TradeUnit
{
    private readonly Exact? factor;
    private readonly Exact offset;

    private TradeUnit(string code, string symbol, QuantityKind kind, Exact? factor, double nearest, Exact offset, string[] spellings, string[] onlyWhereExpected)
    {
        Code = code;
        Symbol = symbol;
        Kind = kind;
        this.factor = factor;
        this.offset = offset;
        Factor = nearest;
        Offset = offset.ToDouble();
        Spellings = spellings;
        SpellingsWhereExpected = onlyWhereExpected;
    }

    /// <summary>Names the unit once and for all: in the codes of questions (<c>unit-thou</c>) and wherever a unit is stored.</summary>
    public string Code { get; }

    /// <summary>As the trade writes it; two units of different kinds may share one (°F as a temperature and as a difference).</summary>
    public string Symbol { get; }

    public QuantityKind Kind { get; }

    /// <summary>[SI unit] How much one of it is.</summary>
    public double Factor { get; }

    /// <summary>[SI unit] Where its nought lies; 0 except for temperatures.</summary>
    public double Offset { get; }

    /// <summary>How it may be written, the symbol included, where any kind of quantity may stand.</summary>
    public IReadOnlyList<string> Spellings { get; }

    /// <summary>How it may be written only where its kind is expected: a kg of force, a minute of arc.</summary>
    public IReadOnlyList<string> SpellingsWhereExpected { get; }

    internal bool IsMetricLength => Kind == QuantityKind.Length && (this == Metre || this == Centimetre || this == Millimetre || this == Micrometre || this == TenthMillimetre);

    /// <summary>The SI unit in which the record keeps this kind.</summary>
    public static TradeUnit Default(QuantityKind kind) => Usual(kind, si: true)[0];

    /// <summary>The units in which the trade writes this kind, commonest first: what a bare number may mean, and what a quantity is read back in.</summary>
    public static IReadOnlyList<TradeUnit> Usual(QuantityKind kind) => Usual(kind, si: false);

    /// <summary>The one unit so written; null if there is none, or more than one (lb where neither mass nor force is expected, gal).</summary>
    public static TradeUnit? Find(string symbol, QuantityKind? kind = null) => FindAll(symbol, kind) is [var only] ? only : null;

    /// <summary>Every unit that may be so written where this kind is expected (null: any).</summary>
    public static IReadOnlyList<TradeUnit> FindAll(string symbol, QuantityKind? kind = null)
    {
        ArgumentNullException.ThrowIfNull(symbol);
        return UnitSpelling.Whole(symbol) is { } spelled ? spelled.For(kind) : [];
    }

    /// <summary>The unit with this <see cref="Code"/>; null if there is none.</summary>
    public static TradeUnit? FromCode(string code) => UnitSpelling.ByCode(code);

    /// <summary>[SI] The nearest double of the exact product; where the factor holds π, the product of the nearest doubles.</summary>
    public double ToSi(Exact number)
    {
        var si = factor is { } exact ? (number * exact + offset).ToDouble() : number.ToDouble() * Factor;
        return si == 0 ? 0 : si;
    }

    /// <summary>How many of a smaller unit of the same kind one of this is; a whole number for all that stand together in 2 ft 3 in.</summary>
    internal Exact In(TradeUnit smaller) => factor is { } mine && smaller.factor is { } other
        ? mine * new Exact(other.Denominator, other.Numerator)
        : new Exact((long)Math.Round(Factor / smaller.Factor), 1);

    /// <summary>The number of this unit that an SI value is.</summary>
    public double FromSi(double si) => (si - Offset) / Factor;

    /// <summary>An SI value in this unit: <c>2.5 thou</c>.</summary>
    /// <param name="si">[SI] the value.</param>
    /// <param name="digits">Digits after the point, trailing noughts kept; null: as many as say something, trailing noughts dropped.</param>
    public string Show(double si, int? digits = null) => QuantityText.Format(si, this, digits);

    public override string ToString() => Symbol.Length > 0 ? Symbol : "number";
}
