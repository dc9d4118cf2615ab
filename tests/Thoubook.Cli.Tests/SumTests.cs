using System.Text.Json;
using Thoubook.Cli.Speaking;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Cli.Tests;

public sealed class SumTests
{
    public static TheoryData<string, string> Examples => [.. Sums.All.SelectMany(s => s.Examples.Select(e => (s.Name, e)))];

    [Theory]
    [MemberData(nameof(Examples))]
    public void Sum_EachExample_IsAnsweredWithItsWorking(string name, string example)
    {
        var answer = Spoken.Here(null, ["sum", name, .. ShellWords.Split(example), "--json"]).Is(ExitStatus.Good).Json;
        Assert.Equal(name, answer.GetProperty("sum").GetString());
        var values = answer.GetProperty("values").EnumerateArray().ToArray();
        Assert.NotEmpty(values);
        var working = answer.GetProperty("working").EnumerateArray().ToDictionary(l => l.GetProperty("symbol").GetString()!);
        foreach (var value in values)
            Assert.Equal(working[value.GetProperty("symbol").GetString()!].GetProperty("value").GetDouble(), value.GetProperty("value").GetDouble());
        Assert.Contains("working", Spoken.Here(null, ["sum", name, .. ShellWords.Split(example)]).Is(ExitStatus.Good).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Sum_LeadingMinus_IsPartOfTheFigure()
    {
        var answer = Spoken.Here(null, "sum", "stack", "nominal=-1mm", "--json").Is(ExitStatus.Good).Json;
        Assert.Equal(-0.001, Value(answer, "gap"));
    }

    [Fact]
    public void Sum_ListOfItems_KeepsTheirOrder()
    {
        var answer = Spoken.Here(null, "sum", "stack", "nominal=3mm", "coefficient=1", "nominal=1mm", "coefficient=-1", "--json").Is(ExitStatus.Good).Json;
        Assert.Equal(0.002, Value(answer, "gap"), 1e-15);
    }

    [Fact]
    public void Sum_NumbersWithoutUnit_WhereAnyQuantityMayStand_ArePlainNumbers()
    {
        var answer = Spoken.Here(null, "sum", "conformance", "value=1.5", "u=0.1", "min=1", "--json").Is(ExitStatus.Good).Json;
        Assert.Equal("-", answer.GetProperty("values").EnumerateArray().Single(v => v.GetProperty("key").GetString() == "accept-from").GetProperty("unit").GetString());
    }

    [Fact]
    public void Sum_OneInputWithUnitAndOneWithout_IsAsked()
    {
        var spoken = Spoken.Here(null, "sum", "conformance", "value=1.5 in", "u=0.1", "min=1 in", "--json").Is(ExitStatus.BadInput);
        var ask = spoken.Json;
        Assert.Equal("unit-in", ask.GetProperty("code").GetString());
        Spoken.Here(null, "sum", "conformance", "value=1.5 in", "u=0.1", "min=1 in", "--confirm", "unit-thou", "--json").Is(ExitStatus.Good);
    }

    [Theory]
    [InlineData("sum", "conformence", "value=1in")]
    [InlineData("sum", "conformance", "valeu=1in", "u=1thou", "min=1in")]
    [InlineData("sum", "expansion", "size=1in", "material=cast alumnium", "temperature=80°C")]
    public void Sum_UnknownWord_NamesTheNearest(params string[] words) =>
        Assert.Contains("Did you mean ", Spoken.Here(null, words).Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);

    [Theory]
    [InlineData("sum")]
    [InlineData("sum", "conformance", "1.5")]
    [InlineData("sum", "conformance", "=1.5")]
    [InlineData("sum", "conformance", "value=1in", "u=-1thou", "min=1in")]
    [InlineData("sum", "conformance", "value=1in", "u=1psi", "min=1in")]
    [InlineData("sum", "conformance", "value=1in", "value=2in", "u=1thou", "min=1in")]
    [InlineData("sum", "conformance", "value=NaN", "u=1thou", "min=1in")]
    [InlineData("sum", "stack", "nominal=1in", "nominal=2in", "coefficient=1")]
    public void Sum_BadInput_IsRefusedInWords(params string[] words)
    {
        var spoken = Spoken.Here(null, words).Is(ExitStatus.BadInput);
        Assert.StartsWith("thoubook: ", spoken.Error, StringComparison.Ordinal);
        Assert.Empty(spoken.Out);
    }

    [Fact]
    public void Sum_ListAsJson_DescribesEachSum()
    {
        var sums = Spoken.Here(null, "sum", "--list", "--json").Is(ExitStatus.Good).Json.EnumerateArray().ToArray();
        Assert.Equal(Sums.All.Select(s => s.Name), sums.Select(s => s.GetProperty("name").GetString()));
        foreach (var sum in sums)
        {
            Assert.Equal(["name", "question", "source", "inputs", "outputs", "examples"], sum.EnumerateObject().Select(p => p.Name));
            Assert.All(sum.GetProperty("inputs").EnumerateArray(), i => Assert.False(string.IsNullOrEmpty(i.GetProperty("key").GetString())));
        }
    }

    [Fact]
    public void Sum_ShowsFigures_InTheUnitsOfTheTradeOrThoseOfTheAsker()
    {
        var loss = Spoken.Here(null, "sum", "pipe-loss", "bore=12mm", "length=1.5m", "flow=20L/min", "viscosity=17cP").Is(ExitStatus.Good).Out;
        Assert.Contains("2.42237915 psi", loss, StringComparison.Ordinal);
        Assert.Contains("m/s", loss, StringComparison.Ordinal);
        var flow = Spoken.Here(null, "sum", "orifice-flow", "bore=1.5mm", "pressure=4bar").Is(ExitStatus.Good).Out;
        Assert.Contains("L/min", flow, StringComparison.Ordinal);
        var spring = Spoken.Here(null, "sum", "spring-test", "first-length=2in", "first-load=30lbf", "second-length=1.5in", "second-load=65lbf").Is(ExitStatus.Good).Out;
        Assert.Contains("70 lbf/in", spring, StringComparison.Ordinal);
        Assert.Contains("2.428571", spring, StringComparison.Ordinal);
    }

    [Fact]
    public void Sum_InWords_AsApproved()
    {
        Approved.Check("sum-list", Spoken.Here(null, "sum", "--list").Out);
        Approved.Check("sum-conformance-help", Spoken.Here(null, "sum", "conformance", "--help").Is(ExitStatus.Good).Out);
        Approved.Check("sum-conformance", Spoken.Here("", null, ["sum", "conformance", "value=1.2530in", "u=0.1thou", "min=1.2530in", "max=1.2540in"], width: 100).Out);
    }

    private static double Value(JsonElement answer, string key) =>
        answer.GetProperty("values").EnumerateArray().Single(v => v.GetProperty("key").GetString() == key).GetProperty("value").GetDouble();
}
