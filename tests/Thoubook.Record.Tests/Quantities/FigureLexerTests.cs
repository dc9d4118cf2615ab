using Thoubook.Record.Quantities;

namespace Thoubook.Record.Tests.Quantities;

public class FigureLexerTests
{
    /// <summary>Cells as they stand in published schedules of limits.</summary>
    [Theory]
    [InlineData("0.041-0.059 mm (0.0016-0.0023 in)", "Number 0.041 | Dash - | Number 0.059 | Unit mm | Open ( | Number 0.0016 | Dash - | Number 0.0023 | Unit in | Close )")]
    [InlineData(".0005\" per inch of diameter", "Number 0.0005 | Unit \" | Word per | Word inch | Word of | Word diameter")]
    [InlineData("1/2 lbs.", "Number 1/2 | Unit lbs.")]
    [InlineData("6 3/4", "Number 6 3/4")]
    [InlineData("1/2-6-", "Number 1/2 | Dash - | Number 6 | Dash -")]
    [InlineData("(19.063)", "Open ( | Number 19.063 | Close )")]
    [InlineData("------", "NilDashes ------")]
    [InlineData("-", "NilDashes -")]
    [InlineData("\u2014", "NilDashes \u2014")]
    [InlineData("0.0005T to 0.0015L", "Number 0.0005 | FitLetter T | Word to | Number 0.0015 | FitLetter L")]
    [InlineData("0.0005T-0.0015L", "Number 0.0005 | FitLetter T | Dash - | Number 0.0015 | FitLetter L")]
    [InlineData("1.7495/1.7500", "Number 1.7495 | Slash / | Number 1.7500")]
    [InlineData("17, 19", "Number 17 | Comma , | Number 19")]
    [InlineData("\"", "Ditto \"")]
    [InlineData("do.", "Ditto do.")]
    [InlineData("do not renew", "Word do | Word not | Word renew")]
    [InlineData(",,", "Ditto ,,")]
    [InlineData("Ring 1 0.75-0.107 mm", "Word Ring | Number 1 | Number 0.75 | Dash - | Number 0.107 | Unit mm")]
    [InlineData("2 times allowable taper", "Number 2 | Word times | Word allowable | Word taper")]
    [InlineData("Original width + 15%", "Word Original | Word width | Sign + | Number 15 | Unit %")]
    [InlineData("pull 2 lbs.-11 oz.", "Word pull | Number 2 | Unit lbs. | Dash - | Number 11 | Unit oz.")]
    [InlineData("max. 0.020 mm", "Word max | Other . | Number 0.020 | Unit mm")]
    [InlineData("10.000 mmm (0.3937 in)", "Number 10.000 | Word mmm | Open ( | Number 0.3937 | Unit in | Close )")]
    [InlineData("F-.010", "Word F | Dash - | Number 0.010")]
    [InlineData("1.250 to 1.252 in.", "Number 1.250 | Word to | Number 1.252 | Unit in.")]
    [InlineData("1-1/2\" dia.", "Number 1 1/2 | Unit \" | Word dia | Other .")]
    [InlineData("60 psi at 2,000 rev/min", "Number 60 | Unit psi | Word at | Number 2.000~2000 | Unit rev/min")]
    [InlineData("", "")]
    [InlineData("  ", "")]
    public void Scan_OfACell_FindsItsFigures(string cell, string tokens) => Assert.Equal(tokens, Describe(FigureLexer.Scan(cell)));

    [Theory]
    [InlineData("80,02", DecimalMark.Unstated, FigureForm.DecimalComma, "80.02")]
    [InlineData("1,250", DecimalMark.Unstated, FigureForm.Doubtful, "1.250 decimal-comma, 1250 thousands-comma")]
    [InlineData("1,250", DecimalMark.Comma, FigureForm.DecimalComma, "1.250")]
    [InlineData("1,250", DecimalMark.Point, FigureForm.Grouped, "1250")]
    [InlineData("1.250", DecimalMark.Unstated, FigureForm.Decimal, "1.250")]
    [InlineData("1.250", DecimalMark.Comma, FigureForm.Doubtful, "1.250 decimal-point, 1250 thousands-point")]
    [InlineData("1,234.5", DecimalMark.Unstated, FigureForm.Grouped, "1234.5")]
    [InlineData("1.2.3", DecimalMark.Unstated, FigureForm.Broken, "")]
    [InlineData("11/64", DecimalMark.Unstated, FigureForm.Fraction, "11/64")]
    [InlineData("1½", DecimalMark.Unstated, FigureForm.Mixed, "1 1/2")]
    [InlineData("1e-3", DecimalMark.Unstated, FigureForm.Exponent, "1e-3")]
    public void Scan_OfANumber_SaysHowItIsWritten(string text, DecimalMark mark, FigureForm form, string values)
    {
        var number = Assert.Single(FigureLexer.Scan(text, mark));
        Assert.Equal((FigureTokenKind.Number, form), (number.Kind, number.Form));
        Assert.Equal(values, string.Join(", ", number.Values.Select(value => $"{value.Written} {value.Code}".TrimEnd())));
    }

    [Fact]
    public void Scan_WordsThatCouldBeUnits_CarryThem()
    {
        var tokens = FigureLexer.Scan("Clearance in mm");
        Assert.Equal([TradeUnit.Millimetre], tokens[2].Units.Where(unit => unit != TradeUnit.Thou));
        Assert.Equal(FigureTokenKind.Word, tokens[2].Kind);
        Assert.Empty(tokens[0].Units);
    }

    private static string Describe(IReadOnlyList<FigureToken> tokens) => string.Join(" | ", tokens.Select(token =>
        $"{token.Kind} {(token.Kind == FigureTokenKind.Number ? string.Join('~', token.Values.Select(value => value.Written)) : token.Text)}"));
}
