using System.Globalization;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Tests.Quantities;

/// <summary>The corpus at the door of the reader itself. Expected values were worked out with exact fractions from the definitions of the units.</summary>
public class QuantityReaderTests
{
    public static IEnumerable<TheoryDataRow<int>> Lines => QuantityCorpus.Strings.Select(row => new TheoryDataRow<int>(row.Line) { TestDisplayName = row.ToString() });

    [Theory]
    [MemberData(nameof(Lines))]
    public void Read_EveryStringOfTheCorpus_ComesOutAsStated(int line)
    {
        var row = QuantityCorpus.Strings.Single(row => row.Line == line);
        Assert.Equal(Expected(row), Got(row));
    }

    [Fact]
    public void Read_UnderACultureWithDecimalCommas_ComesOutTheSame()
    {
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        (comma.NumberFormat.NumberDecimalSeparator, comma.NumberFormat.NumberGroupSeparator, comma.NumberFormat.NegativeSign) = (",", ".", "~");
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = comma;
            Assert.All(QuantityCorpus.Strings, row => Assert.Equal(Expected(row), Got(row)));
            Assert.Equal("-0.0005 in (-0.5 thou, -0.0127 mm)", Ok("-0.0005 in", ReadingContext.None).Understood);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Corpus_CoversEveryUnitAndEveryKind()
    {
        var taken = QuantityCorpus.Strings.Where(row => row.Outcome == "ok").Select(row => row.Unit).ToHashSet(StringComparer.Ordinal);
        string[] rare = ["m2", "m3", "mm3", "pt-us", "qt-imperial", "qt-us", "m3-per-s", "l-per-s", "l-per-h", "gal-us-per-min", "arcsec", "ppm-per-degf"];
        Assert.Empty(TradeUnit.All.Select(unit => unit.Code).Except(taken).Except(rare));
        Assert.True(QuantityCorpus.Strings.Count > 700);
    }

    [Theory]
    [InlineData("0.0025 in", "0.0025 in (2.5 thou, 0.0635 mm)")]
    [InlineData("2.5 thou", "2.5 thou (0.0025 in, 0.0635 mm)")]
    [InlineData("80,02 mm", "80.02 mm (3.15039 in, 3150.39 thou)")]
    [InlineData("4 tenths", "4 tenths (0.0004 in, 0.4 thou, 0.01016 mm)")]
    [InlineData("1 1/2\"", "1.5 in (1500 thou, 38.1 mm)")]
    [InlineData("2 ft 3 in", "27 in (27000 thou, 685.8 mm)")]
    [InlineData("60 psi", "60 psi (4.13685 bar, 413.685 kPa)")]
    [InlineData("180 °F", "180 °F (82.2222 °C)")]
    [InlineData("45 lb ft", "45 lbf ft (540 lbf in, 61.0118 N m)")]
    [InlineData("15 %", "15% (0.15)")]
    public void Understood_ReadsBackInTheUnitsOfTheTrade(string text, string understood) =>
        Assert.Equal(understood, Ok(text, ReadingContext.None).Understood);

    [Theory]
    [InlineData("0.0005T", "-0.0005 in (-0.5 thou, -0.0127 mm), tight")]
    [InlineData("(0.0005)", "-0.0005 in (-0.5 thou, -0.0127 mm), tight")]
    [InlineData("0.0015", "0.0015 in (1.5 thou, 0.0381 mm), loose")]
    [InlineData("0", "0 in (0 thou, 0 mm)")]
    public void Understood_OnAFit_SaysTightOrLoose(string text, string understood) =>
        Assert.Equal(understood, Ok(text, QuantityCorpus.Contexts["fit"]).Understood);

    [Fact]
    public void Understood_OfATemperatureDifference_SaysThatItIsOne() =>
        Assert.Equal("18 °F (10 °C), a difference", Ok("18", QuantityCorpus.Contexts["rise"]).Understood);

    [Fact]
    public void Read_KeepsTheTextAsTyped() => Assert.Equal("  .0015\" ", Ok("  .0015\" ", ReadingContext.None).Text);

    [Theory]
    [InlineData("-0.0005")]
    [InlineData("-1/64")]
    [InlineData("-3 lb")]
    public void Read_NegativeFigureThatIsAsked_KeepsItsSignInEveryMeaning(string text)
    {
        Assert.False(QuantityReader.Read(text, ReadingContext.None).IsOk(out _, out var problems));
        Assert.All(Assert.Single(problems).Meanings, meaning => Assert.StartsWith("-", meaning.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void Read_UnitAskedOfAWrongSpelling_NamesTheNearest()
    {
        Assert.False(QuantityReader.Read("10 mmm", ReadingContext.None).IsOk(out _, out var problems));
        Assert.Equal("Write mm if that is meant.", problems[0].DoThis);
        Assert.False(QuantityReader.Read("10 inhces", ReadingContext.None).IsOk(out _, out problems));
        Assert.Equal("Write inches if that is meant.", problems[0].DoThis);
    }

    [Fact]
    public void Read_BareUnitOfAnotherKind_IsABrokenContract() => Assert.Throws<ArgumentException>(
        () => QuantityReader.Read("1", new ReadingContext { Kind = QuantityKind.Pressure, BareUnit = TradeUnit.Inch }));

    [Fact]
    public void Read_AWornPartThatIsNoSlip_IsNeverAsked()
    {
        var context = QuantityCorpus.Contexts["size"];
        for (var tenths = 12000; tenths <= 13000; tenths++)
        {
            var typed = $"{tenths / 10000}.{tenths % 10000:D4}";
            Assert.True(QuantityReader.Read(typed, context).IsOk(out var size, out _), typed);
            Assert.Equal(tenths * 2.54e-6, size.Si, 1e-12);
        }
    }

    [Fact]
    public void Read_ASlipOfOneTwoOrThreePlaces_IsAskedForEveryReadingWithinItsLimits()
    {
        (string Context, int Least, int Greatest)[] pairs = [("size", 12530, 12560), ("clearance", 15, 50)];
        foreach (var (context, least, greatest) in pairs)
        {
            for (var tenths = least; tenths <= greatest; tenths++)
            {
                foreach (var (power, code) in new[] { (1, "slip-ten-times-less"), (2, "slip-hundred-times-less"), (3, "slip-thousand-times-less") })
                {
                    var typed = $"{tenths}e{power - 4}";
                    Assert.False(QuantityReader.Read(typed + " in", QuantityCorpus.Contexts[context]).IsOk(out _, out var problems), typed);
                    Assert.Contains(problems[0].Meanings, meaning => meaning.Code == code);
                }
            }
        }
    }

    private static Quantity Ok(string text, ReadingContext context)
    {
        Assert.True(QuantityReader.Read(text, context).IsOk(out var quantity, out var problems), string.Join(' ', problems));
        return quantity;
    }

    private static string Expected(CorpusString row) => row.Outcome == "ok" ? $"{row} ok {row.Si:R} {row.Unit}" : $"{row} {row.Outcome} {string.Join(' ', row.Codes)}";

    private static string Got(CorpusString row)
    {
        if (!QuantityReader.Read(row.Text, QuantityCorpus.ContextOf(row)).IsOk(out var quantity, out var problems))
        {
            var problem = Assert.Single(problems);
            return problem.IsQuestion
                ? $"{row} ask {string.Join(' ', problem.Meanings.Select(meaning => meaning.Code))}"
                : $"{row} refused {problem.Code}";
        }

        Assert.Equal(quantity.Kind, quantity.Unit.Kind);
        Assert.Equal(row.Text, quantity.Text);

        // Where the factor holds π the product of two nearest doubles may miss the nearest by the last place; all others are the nearest.
        var si = quantity.Kind is QuantityKind.Angle or QuantityKind.RotationalSpeed && row.Si is { } expected && Math.Abs(quantity.Si - expected) <= 4e-16 * Math.Abs(expected)
            ? expected
            : quantity.Si;
        return $"{row} ok {si:R} {quantity.Unit.Code}";
    }
}
