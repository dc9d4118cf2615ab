using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Workshop.Oil;

namespace Thoubook.Workshop.Tests.Oil;

public sealed class OilQuestionTests : IDisposable
{
    private const double Thou = 2.54e-5;
    private static readonly HashSet<string> NothingConfirmed = [];
    private readonly OilBench _bench = new();

    public void Dispose() => _bench.Dispose();

    [Fact]
    public void Trial_ABareNumber_IsInTheUnitOfTheLimits()
    {
        var trial = Bench.Ok(OilQuestion.Trial(_bench.Record, new OilSupposition { Set = [$"{OilBench.Clearance}=2"] }, NothingConfirmed));

        Assert.Equal(2 * Thou, trial.Set[FigureName.Of(OilBench.Clearance)], 1e-12);
        Assert.Equal($"{OilBench.Clearance} at 2 thou", trial.Name);
    }

    [Theory]
    [InlineData("crankshaft.main=-1.5thou", -1.5, "crankshaft.main less by 1.5 thou")]
    [InlineData("crankshaft.main=+0.5 thou", 0.5, "crankshaft.main more by 0.5 thou")]
    public void Trial_AChange_IsAnAmountWithItsSign(string text, double thou, string name)
    {
        var trial = Bench.Ok(OilQuestion.Trial(_bench.Record, new OilSupposition { ChangeBy = [text] }, NothingConfirmed));

        Assert.Equal(thou * Thou, trial.ChangeBy[FigureName.Of("crankshaft.main")], 1e-12);
        Assert.Equal(name, trial.Name);
    }

    [Fact]
    public void Trial_OfAnElement_IsASizeOfIt()
    {
        var trial = Bench.Ok(OilQuestion.Trial(_bench.Record, new OilSupposition { Set = ["relief.cracking=50"], Oil = " SAE 50 ", Blank = ["main"], Open = ["port"] }, NothingConfirmed));

        var size = Assert.Single(trial.Sizes);
        Assert.Equal(("relief", "cracking"), (size.Element.Text, size.Key));
        Assert.Equal(50 * 6894.757293168361, size.Value, 1e-3);
        Assert.Equal("SAE 50", trial.Oil?.Grade);
        Assert.Equal(["main"], trial.Blanked.Select(e => e.Text));
        Assert.Equal(["port"], trial.Opened.Select(e => e.Text));
        Assert.Equal("relief.cracking at 50 psi; oil SAE 50; main blanked; port fitted again", trial.Name);
    }

    [Theory]
    [InlineData("crankcase/main.clearence=2", "unknown-figure", "crankcase/main.clearance")]
    [InlineData("crankcase/main.clearance", "no-value", "Such as")]
    [InlineData("relief.cracking=-5 psi", "circuit-size", "Suppose another")]
    [InlineData("crankcase/main.clearance=2 psi", "unit-wrong-kind", "")]
    public void Trial_WhatIsNotUnderstood_IsRefusedWithItsPlace(string text, string code, string doThis)
    {
        var problem = Bench.Refused(OilQuestion.Trial(_bench.Record, new OilSupposition { Set = [text] }, NothingConfirmed));

        Assert.Equal(code, problem.Code);
        Assert.Equal("suppose", problem.Field);
        Assert.Contains(doThis, problem.DoThis, StringComparison.Ordinal);
    }

    [Fact]
    public void Trial_EverythingWrong_IsToldAtOnce()
    {
        var supposed = new OilSupposition { Set = ["nothing.there=1"], ChangeBy = ["crankshaft.main"], Blank = ["mian"] };
        var refused = Assert.IsType<Outcome<Appraisal.Oil.OilTrial>.Refused>(OilQuestion.Trial(_bench.Record, supposed, NothingConfirmed));

        Assert.Equal(["suppose", "change", "blank"], refused.Problems.Select(p => p.Field));
        Assert.Contains("main", refused.Problems[2].DoThis, StringComparison.Ordinal);
    }

    [Fact]
    public void Trial_SupposedTwice_IsRefused()
    {
        var supposed = new OilSupposition { Set = [$"{OilBench.Clearance}=2", $"{OilBench.Clearance}=3"] };
        Assert.Equal("supposed-twice", Bench.Refused(OilQuestion.Trial(_bench.Record, supposed, NothingConfirmed)).Code);
    }

    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    public void Trial_AnOilWithoutAName_IsRefused(string oil)
    {
        var supposed = new OilSupposition { Oil = oil };
        Assert.False(supposed.IsNothing);
        var problem = Bench.Refused(OilQuestion.Trial(_bench.Record, supposed, NothingConfirmed));
        Assert.Equal(("oil-grade", "oil"), (problem.Code, problem.Field));
    }

    [Fact]
    public void Trial_OfASize_IsRefusedInTheUnitThatWasWritten()
    {
        var problem = Bench.Refused(OilQuestion.Trial(_bench.Record, new OilSupposition { Set = ["relief.seat=-12 mm"] }, NothingConfirmed));
        Assert.Equal(("-12 mm", "The seat of a disc valve is above 0 mm, up to 1524 mm."), (problem.Found, problem.Allowed));
    }

    [Fact]
    public void Values_ABareNumber_IsInTheUnitOfTheStates()
    {
        Assert.Equal([450 * Math.PI / 30], Bench.Ok(OilQuestion.Values(_bench.Record, ["450"], OilQuestion.Speed, NothingConfirmed)));
        Assert.Equal([353.15], Bench.Ok(OilQuestion.Values(_bench.Record, ["80"], OilQuestion.OilTemperature, NothingConfirmed)));
        Assert.Equal("speed-range", Bench.Refused(OilQuestion.Values(_bench.Record, ["-450"], OilQuestion.Speed, NothingConfirmed)).Code);
        Assert.Equal("speed-range", Bench.Refused(OilQuestion.Values(_bench.Record, ["45000"], OilQuestion.Speed, NothingConfirmed)).Code);
        Assert.Equal("oil-temp", Bench.Refused(OilQuestion.Values(_bench.Record, ["450 rev/min"], OilQuestion.OilTemperature, NothingConfirmed)).Field);
    }

    [Fact]
    public void Point_WhatIsLeftOut_IsThatOfHotIdle()
    {
        var system = Bench.Ok(_bench.Workshop.Oil(OilBench.Engine));
        var point = Bench.Ok(OilQuestion.Point(system, _bench.Record, null, "60 °C", NothingConfirmed));

        Assert.Equal(450 * Math.PI / 30, point.Speed, 1e-9);
        Assert.Equal(333.15, point.OilTemperature, 1e-9);
    }

    [Fact]
    public void MapRange_HoldsEveryState_InRoundFigures()
    {
        var circuit = _bench.Record.Circuit!;
        var range = OilMapRange.Of(circuit, new(450 * Math.PI / 30, 353.15));

        Assert.Equal([200, 400, 600, 800, 1000, 1200, 1400, 1600, 1800], range.Speeds.Select(s => Math.Round(s * 30 / Math.PI)));
        Assert.Equal([10, 20, 30, 40, 50, 60, 70, 80, 90], range.Temperatures.Select(t => Math.Round(t - 273.15, 6)));
        Assert.All(circuit.States, s => Assert.InRange(s.Speed.Si, range.Speeds[0], range.Speeds[^1]));
    }
}
