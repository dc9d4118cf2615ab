using Thoubook.Mechanics.Oil;
using Thoubook.Mechanics.Sums;
using AllSums = Thoubook.Mechanics.Sums.Sums;

namespace Thoubook.Mechanics.Tests.Sums;

/// <summary>What the sums on oil, flow and springs answer and refuse beyond what every sum does.</summary>
public sealed class OilSumTests
{
    [Fact]
    public void Viscosity_ByGrade_IsThatOfTheGrade()
    {
        var result = Answered("viscosity", [("temperature", 353.15)], ("grade", "sae 40"));
        Assert.True(EngineOil.TryGrade("SAE 40", out var oil, out _));
        Assert.Equal(oil.KinematicViscosity(353.15), Value(result, "kinematic"));
        Assert.Equal(oil.DynamicViscosity(353.15), Value(result, "sheared"), 1e-15);
        Assert.Equal(oil.ViscosityUncertainty(353.15), Value(result, "standard-uncertainty"));
        Assert.Empty(result.Cautions);
        Assert.Contains("SAE 40", result.Answer, StringComparison.Ordinal);
        Assert.Contains("wax", Answered("viscosity", [("temperature", 250)], ("grade", "SAE 40")).Cautions.Single(), StringComparison.Ordinal);
        Assert.Equal(0.9 * Value(Answered("viscosity", [("temperature", 353.15)], ("grade", "15W-40")), "dynamic"), Value(Answered("viscosity", [("temperature", 353.15)], ("grade", "15W-40")), "sheared"), 1e-15);
    }

    [Fact]
    public void Viscosity_ByTwoPoints_LiesOnTheirLine()
    {
        var result = Answered("viscosity", [("temperature", 353.15), ("first-viscosity", 140e-6), ("second-viscosity", 14.2e-6), ("density", 890), ("shear", 0.8)]);
        var oil = EngineOil.FromTwoPoints(313.15, 140e-6, 373.15, 14.2e-6).WithDensity(890).WithShearFactor(0.8);
        Assert.Equal(oil.DynamicViscosity(353.15), Value(result, "sheared"), 1e-15);
        Assert.DoesNotContain(result.Values, value => value.Key == "standard-uncertainty");
        Assert.Contains("0.21", Answered("viscosity", [("temperature", 640), ("first-viscosity", 1.2e-6), ("second-viscosity", 0.5e-6)]).Cautions[^1], StringComparison.Ordinal);
        Assert.Contains("no oil flows", Answered("viscosity", [("temperature", 220), ("first-viscosity", 10), ("second-viscosity", 0.001)]).Cautions[^1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("viscosity", "grade", "temperature=300")]
    [InlineData("viscosity", "grade", "temperature=300 first-viscosity=1e-4")]
    [InlineData("viscosity", "second-viscosity", "temperature=300 first-viscosity=1e-5 second-viscosity=1e-4")]
    [InlineData("viscosity", "second-viscosity", "temperature=300 first-viscosity=1e-4 second-viscosity=1e-5 first-temperature=300 second-temperature=300")]
    [InlineData("viscosity", "temperature", "temperature=100 first-viscosity=1e-4 second-viscosity=1e-5")]
    [InlineData("viscosity-index", "at-hundred", "at-forty=1e-5 at-hundred=2e-5")]
    [InlineData("seconds", "seconds", "temperature=310")]
    [InlineData("seconds", "seconds", "seconds=100 viscosity=2e-5")]
    [InlineData("seconds", "seconds", "seconds=31")]
    [InlineData("seconds", "viscosity", "viscosity=1e-6")]
    [InlineData("pipe-loss", "bore", "bore=-0.01 length=1 flow=1e-4 viscosity=0.01")]
    [InlineData("pipe-loss", "roughness", "bore=0.01 length=1 flow=1e-4 viscosity=0.01 roughness=0.003")]
    [InlineData("orifice-flow", "viscosity", "bore=0.001 pressure=1e5 length=0.004")]
    [InlineData("orifice-flow", "length", "bore=0.001 pressure=1e5 viscosity=0.01")]
    [InlineData("orifice-flow", "length", "bore=0.001 pressure=1e5 viscosity=0.01 length=0.011")]
    [InlineData("orifice-flow", "length", "bore=0.001 pressure=1e5 viscosity=0.01 length=0.0019")]
    [InlineData("orifice-flow", "discharge", "bore=0.001 pressure=1e5 viscosity=0.01 length=0.004 discharge=0.7")]
    [InlineData("annulus-flow", "clearance", "diameter=0.005 clearance=0.006 length=0.05 pressure=1e5 viscosity=0.01")]
    [InlineData("grooved-bearing-flow", "clearance", "diameter=0.005 clearance=0.006 land=0.05 pressure=1e5 viscosity=0.01")]
    [InlineData("hole-fed-bearing-flow", "hole", "clearance=6e-5 width=0.02 hole=0.017 pressure=1e5 viscosity=0.01")]
    [InlineData("strainer-loss", "wire", "area=0.004 pitch=0.001 wire=0.00095 flow=1e-4 viscosity=0.01")]
    [InlineData("slot-flow", "gap", "width=0.02 gap=-1e-5 length=0.01 pressure=1e5 viscosity=0.01")]
    [InlineData("spring", "coil", "wire=0.004 active=6 free-length=0.062")]
    [InlineData("spring", "coil", "wire=0.004 coil=0.03 outside=0.034 active=6 free-length=0.062")]
    [InlineData("spring", "coil", "wire=0.004 coil=0.0079 active=6 free-length=0.062")]
    [InlineData("spring", "outside", "wire=0.004 outside=0.0119 active=6 free-length=0.062")]
    [InlineData("spring", "total", "wire=0.004 coil=0.03 active=6 total=5 free-length=0.062")]
    [InlineData("spring", "free-length", "wire=0.004 coil=0.03 active=6 free-length=0.032")]
    [InlineData("spring-test", "second-length", "first-length=0.05 first-load=100 second-length=0.05 second-load=150")]
    [InlineData("spring-test", "free-length", "first-length=0.05 first-load=100 second-length=0.04 second-load=200 free-length=0.045")]
    [InlineData("spring-test", "free-length", "first-length=0.04 first-load=200 second-length=0.05 second-load=100 free-length=0.0499")]
    [InlineData("spring-test", "second-load", "first-length=0.05 first-load=100 second-length=0.04 second-load=90")]
    [InlineData("spring-test", "second-load", "first-length=0.05 first-load=100 second-length=0.04 second-load=100")]
    [InlineData("spring-test", "fitted-length", "first-length=0.05 first-load=100 second-length=0.04 second-load=200 wanted-load=150")]
    [InlineData("centrifugal-head", "from-radius", "speed=100 from-radius=-0.01 to-radius=0.05")]
    public void Unphysical_IsRefusedByName(string name, string key, string given)
    {
        var refused = Assert.IsType<SumOutcome.Refused>(AllSums.Find(name, out _)!.Run(Asked(given)));
        var problem = Assert.Single(refused.Problems);
        Assert.Equal(key, problem.Key);
        Assert.NotEmpty(problem.Found);
        Assert.NotEmpty(problem.Allowed);
        Assert.NotEmpty(problem.DoThis);
    }

    [Fact]
    public void UnknownGrade_IsRefusedWithTheNearest()
    {
        var refused = Assert.IsType<SumOutcome.Refused>(AllSums.Find("viscosity", out _)!.Run(Asked("temperature=300", ("grade", "SAE 45"))));
        Assert.Contains("SAE 40", Assert.Single(refused.Problems).DoThis, StringComparison.Ordinal);
        var both = Assert.IsType<SumOutcome.Refused>(AllSums.Find("viscosity", out _)!.Run(Asked("temperature=300 first-viscosity=1e-4", ("grade", "SAE 40"))));
        Assert.Contains("two measured points", Assert.Single(both.Problems).DoThis, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("pipe-loss", "bore=0.012 length=1.5 flow=3.333e-4 viscosity=0.17", "laminar", "as a suction pipe")]
    [InlineData("pipe-loss", "bore=0.012 length=1.5 flow=3.333e-4 viscosity=0.012", "between", "")]
    [InlineData("pipe-loss", "bore=0.012 length=1.5 flow=3.333e-4 viscosity=0.0076", "between", "")]
    [InlineData("pipe-loss", "bore=0.012 length=1.5 flow=3.333e-4 viscosity=0.0074", "turbulent", "")]
    [InlineData("annulus-flow", "diameter=0.01 clearance=1.35e-3 length=0.05 pressure=3e5 viscosity=0.012", "cube", "")]
    [InlineData("annulus-flow", "diameter=0.01 clearance=1.45e-3 length=0.05 pressure=3e5 viscosity=0.012", "cube", "laminar film")]
    [InlineData("pipe-loss", "bore=0.01 length=1 flow=6.667e-4 viscosity=0.0085", "turbulent", "")]
    [InlineData("pipe-loss", "bore=0.01 length=1 flow=6.667e-4 viscosity=0.0085 roughness=6e-4", "turbulent", "a guess")]
    [InlineData("orifice-flow", "bore=0.0015 pressure=4e5 length=0.006 viscosity=0.012", "that length", "")]
    [InlineData("orifice-flow", "bore=0.0015 pressure=4e5 length=0.006 viscosity=0.0005", "that length", "stretched")]
    [InlineData("orifice-flow", "bore=0.0015 pressure=4e5", "that coefficient", "")]
    [InlineData("annulus-flow", "diameter=0.01 clearance=4e-5 length=0.05 pressure=3e5 viscosity=0.012", "cube", "")]
    [InlineData("annulus-flow", "diameter=0.01 clearance=2e-3 length=0.05 pressure=3e5 viscosity=0.012", "cube", "no longer flow as a laminar film")]
    [InlineData("slot-flow", "width=0.02 gap=5e-5 length=0.005 pressure=4e5 viscosity=0.5", "cube", "")]
    [InlineData("slot-flow", "width=0.02 gap=1.1e-3 length=0.005 pressure=4e3 viscosity=0.5", "cube", "not small")]
    [InlineData("grooved-bearing-flow", "diameter=0.06 clearance=6e-5 land=0.011 pressure=4e5 viscosity=0.012", "cube", "")]
    [InlineData("grooved-bearing-flow", "diameter=0.06 clearance=6.1e-4 land=0.011 pressure=4e3 viscosity=0.12", "cube", "hundredth")]
    [InlineData("hole-fed-bearing-flow", "clearance=6e-5 width=0.022 hole=0.005 pressure=4e5 viscosity=0.012", "cube", "")]
    [InlineData("hole-fed-bearing-flow", "clearance=6e-5 width=0.022 hole=0.007 pressure=4e5 viscosity=0.012", "cube", "0.3 of the width")]
    [InlineData("strainer-loss", "area=0.004 pitch=2.5e-4 wire=1e-4 flow=3.333e-4 viscosity=0.017", "grows as", "")]
    [InlineData("strainer-loss", "area=0.004 pitch=2.5e-4 wire=1e-4 flow=3.333e-4 viscosity=1", "too much", "")]
    [InlineData("centrifugal-head", "speed=261.8 from-radius=0.03 to-radius=0.075 feed=27000", "carries", "")]
    [InlineData("centrifugal-head", "speed=261.8 from-radius=0.03 to-radius=0.075 feed=26000", "does not", "")]
    [InlineData("centrifugal-head", "speed=261.8 from-radius=0.03 to-radius=0.01", "back", "")]
    [InlineData("centrifugal-head", "speed=261.8 from-radius=0.03 to-radius=0.04", "outwards", "")]
    [InlineData("spring", "wire=0.004 coil=0.03 active=6 free-length=0.062 load=350", "carries the load.", "")]
    [InlineData("spring", "wire=0.004 coil=0.03 active=6 free-length=0.062", "measured", "")]
    [InlineData("spring", "wire=0.004 coil=0.03 active=6 free-length=0.062 load=450", "closer", "")]
    [InlineData("spring", "wire=0.004 coil=0.03 active=6 free-length=0.062 load=490", "solid before", "")]
    [InlineData("spring", "wire=0.004 coil=0.03 active=6 free-length=0.09 load=600 seats=1", "buckles", "")]
    [InlineData("spring", "wire=0.004 coil=0.015 active=6 free-length=0.062", "measured", "outside 4 to 20")]
    [InlineData("spring", "wire=0.004 coil=0.03 active=6 free-length=0.062 tensile=1e9", "measured", "will set")]
    [InlineData("spring", "wire=0.004 coil=0.03 active=6 free-length=0.062 tensile=1.03e9", "measured", "")]
    [InlineData("spring-test", "first-length=0.05 first-load=150 second-length=0.04 second-load=311", "two lengths.", "")]
    [InlineData("spring-test", "first-length=0.05 first-load=150 second-length=0.04 second-load=311 fitted-length=0.044", "follows", "")]
    [InlineData("spring-test", "first-length=0.05 first-load=150 second-length=0.04 second-load=311 fitted-length=0.07", "follows", "loose")]
    [InlineData("spring-test", "first-length=0.05 first-load=150 second-length=0.04 second-load=311 fitted-length=0.044 wanted-load=260", "That much shim", "")]
    [InlineData("spring-test", "first-length=0.05 first-load=150 second-length=0.04 second-load=311 fitted-length=0.044 wanted-load=240", "come out", "")]
    [InlineData("spring-test", "first-length=0.05 first-load=150 second-length=0.04 second-load=311 fitted-length=0.044 wanted-load=280", "That much shim", "a tenth")]
    [InlineData("viscosity-index", "at-forty=73.3e-6 at-hundred=8.86e-6", "as straight", "")]
    [InlineData("viscosity-index", "at-forty=105e-6 at-hundred=14.4e-6", "less than", "")]
    [InlineData("viscosity-index", "at-forty=200e-6 at-hundred=10e-6", "more than", "check both")]
    [InlineData("oil-properties", "temperature=350", "mineral", "")]
    [InlineData("oil-properties", "temperature=480", "mineral", "stretched")]
    [InlineData("seconds", "seconds=100", "belong", "")]
    public void Answer_SaysWhatMatters(string name, string given, string answer, string caution)
    {
        var result = Assert.IsType<SumOutcome.Answered>(AllSums.Find(name, out _)!.Run(Asked(given))).Result;
        Assert.Contains(answer, result.Answer, StringComparison.Ordinal);
        if (caution.Length == 0)
            Assert.Empty(result.Cautions);
        else
            Assert.Contains(result.Cautions, text => text.Contains(caution, StringComparison.Ordinal));
    }

    [Fact]
    public void Spring_ByOutsideDiameterAndMaterial_IsTheSameSpring()
    {
        var mean = Answered("spring", [("wire", 0.004), ("coil", 0.03), ("active", 6), ("free-length", 0.062)], ("material", "music wire"));
        var outside = Answered("spring", [("wire", 0.004), ("outside", 0.034), ("active", 6), ("total", 8), ("free-length", 0.062), ("shear-modulus", 81.5e9)], ("ends", "ground"));
        Assert.Equal(Value(mean, "rate"), Value(outside, "rate"), 1e-6);
        Assert.Equal(Value(mean, "shortest-length"), Value(outside, "shortest-length"), 1e-12);
        var refused = Assert.IsType<SumOutcome.Refused>(AllSums.Find("spring", out _)!.Run(Asked("wire=0.004 coil=0.03 active=6 free-length=0.062 shear-modulus=8e10", ("material", "brass"))));
        Assert.Equal("shear-modulus", Assert.Single(refused.Problems).Key);
        refused = Assert.IsType<SumOutcome.Refused>(AllSums.Find("spring", out _)!.Run(Asked("wire=0.004 coil=0.03 active=6 free-length=0.062", ("material", "bras"))));
        Assert.Contains("brass", Assert.Single(refused.Problems).DoThis, StringComparison.Ordinal);
    }

    [Fact]
    public void SpringTest_TellsSetShimAndDoubt()
    {
        var result = Answered("spring-test", [("first-length", 0.05), ("first-load", 150), ("second-length", 0.04), ("second-load", 310), ("free-length", 0.062), ("fitted-length", 0.044), ("wanted-load", 270), ("load-uncertainty", 1), ("length-uncertainty", 5e-5)]);
        Assert.Equal(16000, Value(result, "rate"), 1e-6);
        Assert.Equal(0.062 - 0.059375, Value(result, "set"), 1e-9);
        Assert.Equal(16000 * 0.015375, Value(result, "load"), 1e-6);
        Assert.Equal((270 / 16000.0) - 0.015375, Value(result, "shim"), 1e-9);
        Assert.Equal(16000 * Math.Sqrt((2.0 / (160 * 160)) + (2 * 0.005 * 0.005)), Value(result, "standard-uncertainty"), 1e-6);
    }

    [Fact]
    public void Seconds_OfEachCup_AreThatCup()
    {
        foreach (var (word, cup) in (IEnumerable<(string, OutflowCup)>)[("saybolt-universal", OutflowCup.SayboltUniversal), ("saybolt-furol", OutflowCup.SayboltFurol), ("redwood-1", OutflowCup.RedwoodNo1), ("redwood-2", OutflowCup.RedwoodNo2)])
        {
            Assert.Equal(OutflowSeconds.Viscosity(cup, 150, 372), Value(Answered("seconds", [("seconds", 150), ("temperature", 372)], ("cup", word)), "viscosity"));
            Assert.Equal(OutflowSeconds.Seconds(cup, 4e-4, 372), Value(Answered("seconds", [("viscosity", 4e-4), ("temperature", 372)], ("cup", word)), "seconds"));
        }

        Assert.Contains("122 or 210", Answered("seconds", [("seconds", 150)], ("cup", "saybolt-furol")).Cautions.Single(), StringComparison.Ordinal);
        Assert.Empty(Answered("seconds", [("seconds", 150), ("temperature", 323)], ("cup", "saybolt-furol")).Cautions);
    }

    private static SumResult Answered(string name, (string Key, double Value)[] quantities, params (string Key, string Word)[] words) =>
        Assert.IsType<SumOutcome.Answered>(AllSums.Find(name, out _)!.Run(EverySumTests.Request("-", quantities) with { Words = WordsOf(words) })).Result;

    private static SumRequest Asked(string given, params (string Key, string Word)[] words) => EverySumTests.Request(
        "-",
        [.. given.Split(' ').Select(pair => pair.Split('=')).Select(pair => (pair[0], double.Parse(pair[1], System.Globalization.CultureInfo.InvariantCulture)))]) with
    { Words = WordsOf(words) };

    private static Dictionary<string, IReadOnlyList<string>> WordsOf((string Key, string Word)[] words) => words.ToDictionary(pair => pair.Key, pair => (IReadOnlyList<string>)[pair.Word]);

    private static double Value(SumResult result, string key) => result.Values.Single(value => value.Key == key).Value;
}
