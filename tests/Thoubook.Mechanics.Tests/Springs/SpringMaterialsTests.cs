using Thoubook.Mechanics.Springs;

namespace Thoubook.Mechanics.Tests.Springs;

public sealed class SpringMaterialsTests
{
    [Theory]
    [InlineData("drawn steel wire", 81.5, 206)]
    [InlineData("Music-Wire", 81.5, 206)]
    [Published("moduli of EN 10270-1 wire, glossary of a spring maker")]
    public void DrawnWire_HasTheModuliOfTheStandard(string name, double shear, double young)
    {
        Assert.True(SpringMaterials.TryFind(name, out var material, out var nearest));
        Assert.Empty(nearest);
        Outside.Check($"shear modulus of {name} [GPa]", shear, 1e-9 * material.Shear, 1e-9);
        Outside.Check($"modulus of elasticity of {name} [GPa]", young, 1e-9 * material.Young, 1e-9);
    }

    [Theory]
    [InlineData("oil tempered", 79.5)]
    [InlineData("stainless", 70)]
    [InlineData("17-7 stainless", 73)]
    [InlineData("bronze", 42)]
    [InlineData("brass", 39)]
    [InlineData("beryllium copper", 47)]
    [InlineData("hot rolled steel", 78.5)]
    [FromMemory("EN 13906-1, table of spring materials")]
    public void Others_HaveTheShearModulusOfTheTable(string name, double shear)
    {
        Assert.True(SpringMaterials.TryFind(name, out var material, out _));
        Outside.Check($"shear modulus of {name} [GPa]", shear, 1e-9 * material.Shear, 1e-9);
    }

    [Fact]
    public void EveryMaterial_IsElasticAsMetalsAre() =>
        Assert.All(SpringMaterials.All, material => Assert.InRange((material.Young / (2 * material.Shear)) - 1, 0.2, 0.45));

    [Fact]
    public void UnknownName_NamesTheNearest()
    {
        Assert.False(SpringMaterials.TryFind("musik wire", out _, out var nearest));
        Assert.Contains("music wire", nearest);
    }
}
