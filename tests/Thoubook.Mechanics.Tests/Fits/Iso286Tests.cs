using CsCheck;
using Thoubook.Mechanics.Fits;

namespace Thoubook.Mechanics.Tests.Fits;

public sealed class Iso286Tests
{
    [Fact]
    public void Limits_AgreeWithThePublishedTables()
    {
        foreach (var row in ReferenceTable.Read("iso286-limits.csv"))
        {
            var (letter, grade) = Split(row["class"]);
            foreach (var millimetres in new[] { Math.Max(row.Number("over_mm") + 0.001, 1.001), row.Number("upto_mm") })
            {
                Assert.True(Iso286.TryDeviations(millimetres / 1000, letter, grade, out var limits, out var why), why);
                row.Check($"{row["class"]} upper deviation [µm]", row.Number("upper_um"), limits.Greatest * 1e6, 1e-6);
                row.Check($"{row["class"]} lower deviation [µm]", row.Number("lower_um"), limits.Least * 1e6, 1e-6);
            }
        }
    }

    [Theory]
    [InlineData(25, "H", 7, 0, 21, "U. C. Jindal, Machine Design, example 4-2")]
    [InlineData(25, "r", 6, 28, 41, "U. C. Jindal, Machine Design, example 4-2")]
    [InlineData(50, "H", 8, 0, 39, "U. C. Jindal, Machine Design, example 4-3")]
    [InlineData(50, "g", 7, -34, -9, "U. C. Jindal, Machine Design, example 4-3")]
    [InlineData(50, "H", 7, 0, 25, "V. B. Bhandari, Design of Machine Elements, example 3.3")]
    [InlineData(50, "s", 6, 43, 59, "V. B. Bhandari, Design of Machine Elements, example 3.3")]
    public void Limits_AgreeWithTextbooks(double millimetres, string letter, int grade, double lower, double upper, string source)
    {
        Assert.True(Iso286.TryDeviations(millimetres / 1000, letter, grade, out var limits, out _));
        Outside.Check($"{millimetres} mm {letter}{grade} lower deviation [µm]", lower, limits.Least * 1e6, 1e-6, source, "published");
        Outside.Check($"{millimetres} mm {letter}{grade} upper deviation [µm]", upper, limits.Greatest * 1e6, 1e-6, source, "published");
    }

    [Fact]
    public void Border_BelongsToTheLowerRange()
    {
        Assert.True(Iso286.TryDeviations(0.030, "H", 7, out var at, out _));
        Assert.True(Iso286.TryDeviations(0.030001, "H", 7, out var above, out _));
        Assert.Equal(21e-6, at.Greatest, 1e-12);
        Assert.Equal(25e-6, above.Greatest, 1e-12);
        Assert.True(Iso286.TryDeviations(0.1 + 0.2, "H", 7, out _, out _));
    }

    [Theory]
    [InlineData(0.0009, "H", 7)]
    [InlineData(0.6, "H", 7)]
    [InlineData(0.03, "H", 4)]
    [InlineData(0.03, "H", 12)]
    [InlineData(0.03, "K", 9)]
    [InlineData(0.03, "z", 7)]
    public void OutsideTheTables_SaysWhy(double size, string letter, int grade)
    {
        Assert.False(Iso286.TryDeviations(size, letter, grade, out _, out var why));
        Assert.NotEmpty(why);
    }

    [Fact]
    public void HoleAndShaftOfOneLetter_MirrorEachOther() =>
        Gen.Select(Gen.Double[0.0011, 0.5], Gen.Int[5, 11], Gen.Int[0, 3].Select(i => new[] { "f", "g", "h", "js" }[i])).Sample((size, grade, letter) =>
        {
            Assert.True(Iso286.TryDeviations(size, letter, grade, out var shaft, out _));
            Assert.True(Iso286.TryDeviations(size, letter.ToUpperInvariant(), grade, out var hole, out _));
            Assert.Equal(-shaft.Least, hole.Greatest, 1e-12);
            Assert.Equal(-shaft.Greatest, hole.Least, 1e-12);
        });

    private static (string Letter, int Grade) Split(string text)
    {
        var letters = text.TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9');
        return (letters, int.Parse(text[letters.Length..], System.Globalization.CultureInfo.InvariantCulture));
    }
}
