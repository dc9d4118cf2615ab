using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Tests.Measures;

public sealed class ReadingContextsTests
{
    [Fact]
    public void ABareNumber_IsInTheUnitOfTheLimitsThatGovern()
    {
        var dimension = new Dimension(FigureName.Of("body.depth"))
        {
            LimitSets =
            [
                new LimitSet(new Limits { NewLeast = Length("31.80 mm"), NewGreatest = Length("31.85 mm") }) { Marks = ["I"] },
                new LimitSet(new Limits { NewLeast = Length("1.2530 in"), NewGreatest = Length("1.2540 in") }),
            ],
        };

        Assert.Equal(TradeUnit.Millimetre, Context(dimension, "I").BareUnit);
        Assert.Equal(TradeUnit.Inch, Context(dimension, "II").BareUnit);
        Assert.Equal(TradeUnit.Inch, Context(dimension, null).BareUnit);
        Assert.Null(Context(dimension with { LimitSets = [] }, null).BareUnit);
    }

    [Theory]
    [InlineData("1.25 in", "1.26 in", null, null, 1.25, 1.26)]
    [InlineData("1.25 in", "1.26 in", null, "1.28 in", 1.25, 1.28)]
    [InlineData("1.25 in", "1.26 in", "1.20 in", null, 1.20, 1.26)]
    [InlineData("1.25 in", null, null, "1.28 in", 1.25, 1.28)]
    [InlineData(null, null, null, "5 thou", 0, 0.005)]
    [InlineData("-2 thou", "-1 thou", null, null, -0.002, -0.001)]
    public void WhatIsPlausible_LiesBetweenTheLimitsNewAndWorn(string? newLeast, string? newGreatest, string? wornLeast, string? wornGreatest, double least, double greatest)
    {
        var plausible = Context(WithLimits(newLeast, newGreatest, wornLeast, wornGreatest), null).Plausible;
        Assert.NotNull(plausible);
        Assert.Equal(least * 0.0254, plausible.Value.Least, 1e-12);
        Assert.Equal(greatest * 0.0254, plausible.Value.Greatest, 1e-12);
    }

    [Theory]
    [InlineData("1.25 in", null, null, null)]
    [InlineData(null, null, "1.20 in", null)]
    [InlineData(null, null, null, null)]
    public void LimitsOpenAbove_SayNothingOfWhatIsPlausible(string? newLeast, string? newGreatest, string? wornLeast, string? wornGreatest) =>
        Assert.Null(Context(WithLimits(newLeast, newGreatest, wornLeast, wornGreatest), null).Plausible);

    [Fact]
    public void RepairSizes_WidenWhatIsPlausible()
    {
        var dimension = WithLimits("2.50 in", "2.51 in", null, null) with { RepairSizes = [new RepairSize("-020", Length("-20 thou")), new RepairSize("+010", Length("10 thou"))] };
        var plausible = Context(dimension, null).Plausible!.Value;
        Assert.Equal(2.48 * 0.0254, plausible.Least, 1e-12);
        Assert.Equal(2.52 * 0.0254, plausible.Greatest, 1e-12);
    }

    [Fact]
    public void TightAndLoose_AreSaidOfFitsOnly()
    {
        Assert.Equal(FitSigns.TightIsNegative, ReadingContexts.For(new Fit(FigureName.Of("pump.float")), Engine(null)).FitSigns);
        Assert.Equal(FitSigns.NotHere, Context(WithLimits(null, null, null, null), null).FitSigns);
    }

    private static ReadingContext Context(Dimension dimension, string? mark) => ReadingContexts.For(dimension, Engine(mark));

    private static EngineRecord Engine(string? mark) => new(new Engine(new EngineName("Sandpiper six"), Purpose.StandRun) { Mark = mark });

    private static Dimension WithLimits(string? newLeast, string? newGreatest, string? wornLeast, string? wornGreatest) => new(FigureName.Of("body.depth"))
    {
        LimitSets = [new LimitSet(new Limits { NewLeast = Given(newLeast), NewGreatest = Given(newGreatest), WornLeast = Given(wornLeast), WornGreatest = Given(wornGreatest) })],
    };

    private static Quantity? Given(string? text) => text is null ? null : Length(text);

    private static Quantity Length(string text) => QuantityReader.Read(text, new ReadingContext { Kind = QuantityKind.Length }).IsOk(out var quantity, out _) ? quantity : throw new InvalidOperationException(text);
}
