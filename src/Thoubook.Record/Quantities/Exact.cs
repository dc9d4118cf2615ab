using System.Numerics;

namespace Thoubook.Record.Quantities;

/// <summary>A number exactly as written: a whole number over a whole number above 0. It becomes a <see cref="double"/> once, at the end, by the nearest.</summary>
public readonly struct Exact : IEquatable<Exact>
{
    private const long ExactInDouble = 1L << 53;

    private readonly BigInteger numerator;
    private readonly BigInteger denominator;

    public Exact(BigInteger numerator, BigInteger denominator)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(denominator);
        this.numerator = numerator;
        this.denominator = denominator;
    }

    public static Exact One { get; } = new(1, 1);

    public BigInteger Numerator => numerator;

    /// <summary>Above 0, also for the default value, which is 0.</summary>
    public BigInteger Denominator => denominator.IsZero ? BigInteger.One : denominator;

    public int Sign => numerator.Sign;

    /// <summary>Digits times ten to a power: 24010 and -4 is 2.4010.</summary>
    public static Exact Decimal(BigInteger digits, int power) => power >= 0
        ? new Exact(digits * BigInteger.Pow(10, power), 1)
        : new Exact(digits, BigInteger.Pow(10, -power));

    public static Exact operator *(Exact a, Exact b) => new(a.numerator * b.numerator, a.Denominator * b.Denominator);

    public static Exact operator +(Exact a, Exact b) =>
        a.Denominator == b.Denominator
            ? new(a.numerator + b.numerator, a.Denominator)
            : new(a.numerator * b.Denominator + b.numerator * a.Denominator, a.Denominator * b.Denominator);

    public static Exact operator -(Exact a) => new(-a.numerator, a.Denominator);

    public static bool operator ==(Exact a, Exact b) => a.Equals(b);

    public static bool operator !=(Exact a, Exact b) => !a.Equals(b);

    public static Exact Multiply(Exact left, Exact right) => left * right;

    public static Exact Add(Exact left, Exact right) => left + right;

    public static Exact Negate(Exact item) => -item;

    /// <summary>The nearest double; ties go to the even one.</summary>
    public double ToDouble()
    {
        if (numerator.IsZero)
            return 0;
        var over = BigInteger.Abs(numerator);
        var under = Denominator;
        if (over <= ExactInDouble && under <= ExactInDouble)
            return (double)numerator / (double)under;

        // 62 or 63 bits of the quotient, the last of them set when anything was left over: the one rounding is then the conversion to double.
        var shift = 62 - (int)(over.GetBitLength() - under.GetBitLength());
        var quotient = shift >= 0
            ? BigInteger.DivRem(over << shift, under, out var rest)
            : BigInteger.DivRem(over, under << -shift, out rest);
        var bits = (long)quotient | (rest.IsZero ? 0L : 1L);
        return Math.ScaleB((double)bits, -shift) * numerator.Sign;
    }

    public bool Equals(Exact other) => numerator * other.Denominator == other.numerator * Denominator;

    public override bool Equals(object? obj) => obj is Exact other && Equals(other);

    public override int GetHashCode() => ToDouble().GetHashCode();

    public override string ToString() => Denominator.IsOne ? $"{numerator}" : $"{numerator}/{Denominator}";
}
