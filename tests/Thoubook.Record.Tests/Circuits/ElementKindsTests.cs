using Thoubook.Record.Circuits;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Tests.Circuits;

/// <summary>The catalogue of element kinds, and what it refuses.</summary>
public sealed class ElementKindsTests
{
    [Fact]
    public void EveryKind_OneShapeInOrder() =>
        Assert.Equal(Enum.GetValues<ElementKind>(), ElementKinds.All.Select(s => s.Kind));

    [Fact]
    public void EveryShape_NamesItsOwnKeysAndAllowsItsDefaults()
    {
        foreach (var shape in ElementKinds.All)
        {
            Assert.Equal(shape.Keys.Count, shape.Keys.Select(k => k.Name).Distinct().Count());
            Assert.All(shape.Keys, k => Assert.True(k.Default is not { } si || k.Allows(si), $"{shape.Kind.Word()} {k.Name}"));
            Assert.All(shape.Keys.Where(k => k.Default is not null), k => Assert.Contains("where left out", k.Says, StringComparison.Ordinal));
            Assert.All(shape.OneOf.Concat(shape.Together).SelectMany(g => g), k => Assert.NotNull(shape.Key(k)));
            Assert.All(shape.Orders, o => Assert.True(shape.Key(o.Lesser) is not null && shape.Key(o.Greater) is not null));
            Assert.All(shape.Keys, k => Assert.True(k.Least < k.Greatest));
        }
    }

    [Theory]
    [InlineData(ElementKind.Pipe, "bore", -0.01, "circuit-size")]
    [InlineData(ElementKind.Pipe, "number", 1.5, "circuit-size")]
    [InlineData(ElementKind.GroovedBearing, "eccentricity", 1, "circuit-size")]
    [InlineData(ElementKind.GroovedBearing, "clearance", double.NaN, "circuit-size")]
    [InlineData(ElementKind.GroovedBearing, "clearance", 0.012, "circuit-sizes")]
    [InlineData(ElementKind.CheckValve, "full-open", 0, "circuit-sizes")]
    [InlineData(ElementKind.Pipe, "bore", 1e-6, "circuit-sizes")]
    [InlineData(ElementKind.GroovedBearing, "lands", 3, "circuit-size")]
    [InlineData(ElementKind.Jacket, "gap", 0.02, "circuit-sizes")]
    public void Check_UnphysicalSize_Refused(ElementKind kind, string key, double si, string code)
    {
        var sizes = new Dictionary<string, double> { ["bore"] = 0.01, ["length"] = 1, ["diameter"] = 0.011, ["clearance"] = 1e-4, ["land"] = 0.02, [key] = si };
        var problems = ElementKinds.Of(kind).Check(k => sizes.TryGetValue(k, out var v) ? v : null, _ => null, sizes.Keys.ToHashSet()).ToList();
        Assert.Equal(code, Assert.Single(problems).Code);
        Assert.Contains(key, problems[0].ToString(), StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("mm", "bore -10 mm", "above 0 mm, up to 1524 mm")]
    [InlineData("thou", "bore -393.700787 thou", "above 0 thou, up to 60000 thou")]
    [InlineData(null, "bore -0.393700787 in", "above 0 in, up to 60 in")]
    public void Check_SpeaksInTheUnitThatWasWritten(string? unit, string found, string allowed)
    {
        var problem = Assert.Single(ElementKinds.Of(ElementKind.Jet).Check(k => k == "bore" ? -0.01 : null, _ => unit is null ? null : TradeUnit.Find(unit, QuantityKind.Length)));
        Assert.Equal(found, $"bore {problem.Found}");
        Assert.Equal($"Bore of a jet: {allowed}.", problem.Allowed);
    }

    [Fact]
    public void Check_OfTwoSizes_EachInItsOwnUnit_OrThatOfTheOther()
    {
        string Found(string? lesser, string? greater) => Assert.Single(ElementKinds.Of(ElementKind.GroovedBearing).Check(
            k => k switch { "clearance" => 0.012, "diameter" => 0.011, "land" => 0.02, _ => null },
            k => (k == "clearance" ? lesser : k == "diameter" ? greater : null) is { } unit ? TradeUnit.Find(unit, QuantityKind.Length) : null)).Found;
        Assert.Equal("clearance 12 mm and diameter 0.433070866 in", Found("mm", "in"));
        Assert.Equal("clearance 12 mm and diameter 11 mm", Found(null, "mm"));
        Assert.Equal("clearance 0.472440945 in and diameter 0.433070866 in", Found(null, null));
    }

    [Theory]
    [InlineData(0.0254, 1e8, "psi", "0.000003684 psi or more, up to 14504 psi")]
    [InlineData(0, 1524e-3, "mm", "0 mm or more, up to 1524 mm")]
    [InlineData(0, 0.1016, "mm", "0 mm or more, up to 101.6 mm")]
    [InlineData(0, double.MaxValue, "mm", "0 mm or more")]
    public void Range_IsToldInTheUnitAsked(double least, double greatest, string unit, string words) =>
        Assert.Equal(words, new SizeRange(least, greatest).In(TradeUnit.Find(unit)!));

    [Fact]
    public void CheckKeys_MissingAlternativesAndCompanions_EachNamed()
    {
        var valve = ElementKinds.Of(ElementKind.DiscValve);
        Assert.Equal(["cracking"], valve.CheckKeys(new HashSet<string> { "seat", "spring", "lift" }).Select(p => p.Field));
        Assert.Equal(["circuit-key-twice"], valve.CheckKeys(new HashSet<string> { "seat", "spring", "lift", "cracking", "preload" }).Select(p => p.Code));
        Assert.Empty(valve.CheckKeys(new HashSet<string> { "seat", "spring", "lift", "preload" }));
        var piston = ElementKinds.Of(ElementKind.PistonValve);
        Assert.Equal(["leak-length"], piston.CheckKeys(new HashSet<string> { "piston", "port", "spring", "lift", "preload", "leak-gap" }).Select(p => p.Field));
        Assert.Equal(["bore", "length"], ElementKinds.Of(ElementKind.Pipe).CheckKeys(new HashSet<string>()).Select(p => p.Field));
    }

    [Theory]
    [InlineData(Side.Diametral, true)]
    [InlineData(Side.Total, true)]
    [InlineData(Side.Size, true)]
    [InlineData(Side.Radial, false)]
    [InlineData(Side.PerSide, false)]
    public void Takes_FigureOnOneSide_NotWhereBothAreMeant(Side side, bool isTaken) =>
        Assert.Equal(isTaken, ElementKinds.Of(ElementKind.GroovedBearing).Key("clearance")!.Takes(side));
}
