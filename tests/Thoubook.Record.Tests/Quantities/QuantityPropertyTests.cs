using System.Diagnostics;
using System.Globalization;
using System.Numerics;
using CsCheck;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Tests.Quantities;

public class QuantityPropertyTests
{
    private static readonly ReadingContext[] Contexts = [.. QuantityCorpus.Contexts.Values];

    private static readonly Gen<ReadingContext> AnyContext = Gen.OneOf<ReadingContext>(Contexts);

    /// <summary>Pieces of what people write, put together at random, so that most strings come near to being quantities.</summary>
    private static readonly Gen<string> AnyText = Gen.Frequency(
        (6, Gen.OneOf<string>([
            "0", "1", "2", "12", "250", "0025", "1/2", "11/64", "½", ".", ",", "-", "\u2212", "+", "±", " ", " ", "\u00a0", "(", ")", "T", "L", "t", "l", "\"", "'", "''", "/", "e", "e-3", "×10⁻⁶",
            "in", "inch", "thou", "tenths", "mm", "mil", "µm", "psi", "lb", "lbf", "ft", "gal", "°F", "°", "K", "C", "rpm", "per", "sq", "kg", "m", "min", "s", "%", "nil", "do.", "two", "half a", "NaN",
            "\u200b", "\u0661", "\uff11", "\ud83d", "\0", "\n", "∞", "٫", "²", "^2", "abs", "to", "x", "1,250", "80,02", "1 250", "1.2.3",
        ]).Array[0, 9].Select(string.Concat)),
        (2, Gen.String[0, 30]),
        (1, Gen.OneOf<string>([.. QuantityCorpus.Strings.Select(row => row.Text)]).SelectMany(text => Gen.Int[0, text.Length].Select(at => text[..at] + text[Math.Min(at + 1, text.Length)..]))));

    [Fact]
    public void Read_AnyText_NeverThrowsAndIsAlwaysFinite() => Gen.Select(AnyText, AnyContext).Sample(
        (text, context) => Assert.Null(QuantityFuzz.Fault(text, context)),
        iter: 60_000,
        print: Print);

    /// <summary>The share of the fuzzing that every test run does: mutations of the corpus for one second; <c>tools/fuzz</c> goes on for longer.</summary>
    [Fact]
    public void Read_MutatedCorpus_NeverThrowsAndIsAlwaysFinite()
    {
        var random = new Random(20);
        var until = Stopwatch.GetTimestamp() + Stopwatch.Frequency;
        for (var seen = 0; seen < 5_000 || Stopwatch.GetTimestamp() < until; seen++)
        {
            var text = QuantityFuzz.Mutate(QuantityCorpus.Strings, random);
            var context = Contexts[random.Next(Contexts.Length)];
            Assert.True((QuantityFuzz.Fault(text, context) ?? QuantityFuzz.FaultOfAnswers(text, context)) is null, Print((text, context)));
        }
    }

    [Fact]
    public void Read_ConfirmingAnyOfferedCode_SettlesItOrAsksAnotherQuestion() => Gen.Select(AnyText, AnyContext).Sample(
        (text, context) => Assert.Null(QuantityFuzz.FaultOfAnswers(text, context)),
        iter: 20_000,
        print: Print);

    [Fact]
    public void Read_ConfirmingAnyOfferedCode_OfTheCorpus_SettlesIt() => Assert.All(
        QuantityCorpus.Strings.Where(row => row.Outcome == "ask" && row.Confirm.Length < 2),
        row => Assert.Null(QuantityFuzz.FaultOfAnswers(row.Text, QuantityCorpus.Contexts[row.Context])));

    /// <summary>What is written is read back to the same value, to the nine figures that are written.</summary>
    [Fact]
    public void Format_ThenRead_GivesTheSameQuantity() => Gen.Select(Gen.OneOf<TradeUnit>([.. TradeUnit.All]), Gen.Double[-1e6, 1e6], Gen.Int[-6, 3]).Sample(
        (unit, number, power) =>
        {
            var si = WithinReach(number * Math.Pow(10, power)) * unit.Factor + unit.Offset;
            var text = QuantityText.Format(si, unit);
            Assert.True(QuantityReader.Read(text, new ReadingContext { Kind = unit.Kind }).IsOk(out var quantity, out var problems), $"{text}: {string.Join(' ', problems)}");
            Assert.Same(unit, quantity.Unit);
            Assert.True(Math.Abs(quantity.Si - si) <= 1e-8 * Math.Abs(si - unit.Offset) + 1e-15 * Math.Abs(unit.Offset), $"{text} is {quantity.Si:R}, not {si:R}");
        },
        iter: 20_000);

    [Fact]
    public void Full_ThenRead_GivesTheSameDouble() => Gen.Select(Gen.Enum<QuantityKind>(), Gen.Double[-1e6, 1e6], Gen.Int[-9, 6]).Sample(
        (kind, number, power) =>
        {
            var si = WithinReach(number * Math.Pow(10, power));
            Assert.True(QuantityReader.Read(QuantityText.Full(si, kind), new ReadingContext { Kind = kind }).IsOk(out var quantity, out _));
            Assert.Equal(si, quantity.Si);
        },
        iter: 20_000);

    /// <summary>The same size written in another unit is the same size: the thou and the inch exactly, because both are exact decimals of a metre.</summary>
    [Fact]
    public void Read_InAnotherUnit_GivesTheSameValue() => Gen.Int[-50_000, 50_000].Sample(
        tenths =>
        {
            var sign = tenths < 0 ? "-" : "";
            var size = Math.Abs(tenths);
            string[] ways =
            [
                $"{sign}{size} tenths",
                $"{sign}{size / 10}.{size % 10} thou",
                $"{sign}{size / 10000}.{size % 10000:D4} in",
                $"{sign}{size / 10000},{size % 10000:D4}\"",
                $"{sign}{size * 254 / 100000}.{size * 254 % 100000:D5} mm",
                $"{sign}{size * 254}e-8 m",
            ];
            var read = ways.Select(way => Taken(way, ReadingContext.None)).ToArray();
            Assert.All(read, si => Assert.Equal(read[0], si));
        },
        iter: 5_000);

    [Fact]
    public void Read_AnyDecimal_IsTheNearestDouble() => Gen.Select(Gen.Long[0, 999_999_999_999], Gen.Int[0, 14]).Sample(
        (digits, places) =>
        {
            var text = digits.ToString("D" + (places + 1).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
            text = places == 0 ? text : text.Insert(text.Length - places, ".");
            var nearest = double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
            Assert.Equal(nearest, Taken(text + " m", ReadingContext.None));
        },
        iter: 20_000);

    [Fact]
    public void ToDouble_OfAnyFraction_IsTheNearest() => Gen.Select(Gen.Long[1, long.MaxValue], Gen.Long[1, long.MaxValue], Gen.Long[1, long.MaxValue]).Sample(
        (a, b, c) =>
        {
            var exact = new Exact((BigInteger)a * b, c);
            var got = exact.ToDouble();
            Assert.True(Distance(got) <= Distance(Math.BitIncrement(got)) && Distance(got) <= Distance(Math.BitDecrement(got)), $"{a}*{b}/{c} is not {got:R}");

            // |value - a b / c| in whole numbers, times c and a power of two that is the same for all three: the double is a whole number times a power of two.
            BigInteger Distance(double value)
            {
                var bits = BitConverter.DoubleToInt64Bits(value);
                var power = (int)(bits >> 52) - 1075;
                var whole = (bits & ((1L << 52) - 1)) | (1L << 52);
                return BigInteger.Abs(((BigInteger)whole * c << (power + 200)) - (exact.Numerator << 200));
            }
        },
        iter: 5_000);

    /// <summary>Nought instead of a number that no measured quantity comes near.</summary>
    private static double WithinReach(double number) => Math.Abs(number) < 1e-9 ? 0 : number;

    private static double Taken(string text, ReadingContext context)
    {
        Assert.True(QuantityReader.Read(text, context).IsOk(out var quantity, out var problems), $"{text}: {string.Join(' ', problems)}");
        return quantity.Si;
    }

    private static string Print((string Text, ReadingContext Context) sample) =>
        $"\"{string.Concat(sample.Text.Select(c => c is >= ' ' and < '\u007f' ? c.ToString() : $"\\u{(int)c:X4}"))}\" in {QuantityCorpus.Contexts.First(pair => ReferenceEquals(pair.Value, sample.Context)).Key}";
}
