using Thoubook.Mechanics.Heat;

namespace Thoubook.Mechanics.Tests.Heat;

public sealed class MaterialsTests
{
    [Theory]
    [InlineData("cast aluminium", 21.5)]
    [InlineData("bronze", 18.0)]
    [InlineData("magnesium", 26.0)]
    [InlineData("copper", 17.0)]
    [InlineData("silver", 19.7)]
    [InlineData("titanium", 8.6)]
    [InlineData("invar", 1.6)]
    [Published("Callister, Fundamentals of Materials Science and Engineering, 3rd ed., table B.6")]
    public void Expansion_AgreesWithTheHandbook(string name, double millionths)
    {
        Assert.True(Materials.TryFind(name, out var material, out _));
        Outside.Check($"expansion of {name} [1e-6/K]", millionths, material.Expansion.Value * 1e6, 1e-9);
    }

    [Theory]
    [InlineData("brass", 19.9, 20.5)]
    [InlineData("ductile iron", 10.6, 11.2)]
    [InlineData("wrought aluminium", 22.9, 23.6)]
    [Published("Callister, Fundamentals of Materials Science and Engineering, 3rd ed., table B.6, alloys of the family")]
    public void Expansion_LiesAmongTheAlloysOfItsFamily(string name, double least, double greatest)
    {
        Assert.True(Materials.TryFind(name, out var material, out _));
        Outside.Check($"expansion of {name} [1e-6/K]", 0.5 * (least + greatest), material.Expansion.Value * 1e6, 0.5 * (greatest - least));
    }

    [Theory]
    [InlineData("steel", 11.3, 15.5)]
    [InlineData("austenitic steel", 16.2, 18.4)]
    [InlineData("cast aluminium", 21.1, 24.7)]
    [InlineData("magnesium", 25.2, 28.8)]
    [InlineData("bronze", 18.0, 18.5)]
    [Published("table of linear expansion by family of alloy, ranges per °F converted")]
    public void Expansion_LiesInTheRangeOfItsFamily(string name, double least, double greatest)
    {
        Assert.True(Materials.TryFind(name, out var material, out _));
        Outside.Check($"expansion of {name}, range of the family [1e-6/K]", 0.5 * (least + greatest), material.Expansion.Value * 1e6, (0.5 * (greatest - least)) + 1e-9);
    }

    [Fact]
    public void EveryMaterial_HasSourcesAndABelievableCoefficient()
    {
        Assert.All(Materials.All, material =>
        {
            Assert.NotEmpty(material.Figures);
            Assert.All(material.Figures, figure => Assert.Matches("(published|from memory)", figure.Source));

            // Metals; what goes between them in a joint grows more and is known less well.
            var isMetal = material.Name != "sealing film";
            Assert.InRange(material.Expansion.Value, 1e-6, isMetal ? 30e-6 : 200e-6);
            Assert.InRange(material.Expansion.StandardUncertainty, 0.02 * material.Expansion.Value * 0.999999, (isMetal ? 0.12 : 0.5) * material.Expansion.Value);
        });
    }

    [Fact]
    public void UncertaintyComesFromTheSpread()
    {
        Assert.True(Materials.TryFind("cast iron", out var iron, out _));
        Assert.Equal(10.65e-6, iron.Expansion.Value, 1e-12);
        Assert.Equal((11.4e-6 - 9.0e-6) / Math.Sqrt(12), iron.Expansion.StandardUncertainty, 1e-12);
        Assert.True(Materials.TryFind("copper", out var copper, out _));
        Assert.Equal(0.02 * 17e-6, copper.Expansion.StandardUncertainty, 1e-12);
    }

    [Theory]
    [InlineData("Cast  Aluminium", "cast aluminium")]
    [InlineData("aluminum", "cast aluminium")]
    [InlineData("phosphor-bronze", "phosphor bronze")]
    [InlineData("BABBITT", "white metal")]
    [InlineData("grey cast iron", "cast iron")]
    [InlineData("nitrided steel", "nitrided steel")]
    public void TryFind_TakesOtherNames(string written, string expected)
    {
        Assert.True(Materials.TryFind(written, out var material, out var nearest));
        Assert.Equal(expected, material.Name);
        Assert.Empty(nearest);
    }

    [Theory]
    [InlineData("stel", "steel")]
    [InlineData("alumnium", "aluminium")]
    [InlineData("bras", "brass")]
    public void TryFind_UnknownName_NamesTheNearest(string written, string expected)
    {
        Assert.False(Materials.TryFind(written, out _, out var nearest));
        Assert.Contains(expected, nearest);
    }

    [Fact]
    public void TryFind_Nonsense_NamesNothing()
    {
        Assert.False(Materials.TryFind("xyzzy plugh", out _, out var nearest));
        Assert.Empty(nearest);
        Assert.False(Materials.TryFind("", out _, out _));
    }
}
