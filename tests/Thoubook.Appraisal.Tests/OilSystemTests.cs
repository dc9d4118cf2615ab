using Thoubook.Appraisal.Estimates;
using Thoubook.Appraisal.Oil;
using Thoubook.Mechanics.Oil;
using Thoubook.OutsideChecks;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using static Thoubook.Appraisal.Tests.OilEngine;
using static Thoubook.Appraisal.Tests.SmallEngine;

namespace Thoubook.Appraisal.Tests;

public sealed class OilSystemTests
{
    private static readonly FigureName First = FigureName.Of("main-1.clearance");

    [Fact]
    public void Gauge_ReadsWhatTwoBearingsHoldBackOfThePumpsDelivery()
    {
        var system = Two().Oil();
        var answer = Good(system.At(system.HotIdle));

        // By hand: both lands of both bearings side by side, oil 10 K warmer in the films.
        Assert.True(EngineOil.TryGrade("SAE 40", out var oil, out _));
        var conductance = 2 * 2 * Math.PI * 0.0508 * Math.Pow(1.5 * Thou, 3) * (1 + (1.5 * 0.36)) / (12 * 0.0127);
        var pressure = 4e-6 * 7.5 * oil.DynamicViscosity(363.15) / conductance;
        Assert.Equal(1, answer.Gauges[0].Pressure.Value / pressure, 1e-9);
        Assert.Equal(2, answer.Consumers.Count);
        Assert.All(answer.Consumers, c => Assert.Equal(0.5, c.Share, 1e-9));
        Assert.Equal(3 * Thou, answer.Consumers[0].Deciding!.Value.Value, 1e-12);
        Assert.Empty(answer.Cautions);
    }

    [Fact]
    public void ClearancesReadWithOneGauge_ShareItsErrorInTheBand()
    {
        var together = Two("0.3 thou").Oil().MainGauge().Pressure;
        var share = Assert.Single(together.Contributions, c => c.Source.Kind == SourceKind.Gauge && c.Source.Name.StartsWith('B'));

        // Both clearances together go by 0.3 thou of 3, and the pressure by three times as much, the other way.
        Assert.Equal(-3 * 0.3 / 3, share.Value / together.Value, 1e-3);
        Assert.True(together.Band > Two("0.1 thou").Oil().MainGauge().Pressure.Band);
    }

    [Fact]
    public void StrikingOutOneReading_ChangesTheBand()
    {
        var engine = Two();
        var before = engine.Oil().MainGauge();
        engine.StrikeOut(engine.Record.Readings[0].Id);
        var after = engine.Oil().MainGauge();
        Assert.NotEqual(before.Pressure.Value, after.Pressure.Value);
        Assert.True(after.Pressure.Band > before.Pressure.Band);

        // What is no longer measured falls back on the drawing, and says so.
        var next = Good(engine.Oil().MeasureNext(engine.Oil().HotIdle));
        Assert.Equal("main-1.bore", next[0].Figure.ToString());
        Assert.True(next[0].BandWithout < after.Pressure.Band);
        Assert.False(Good(engine.Oil().At(engine.Oil().HotIdle)).Consumers.Single(c => c.Element.Name.Text == "main-1").Deciding!.IsMeasured);
    }

    [Fact]
    public void Cost_IsWhatTheGaugeGainsWithTheFigureAsNew()
    {
        var system = Two(firstBore: "2.0045 in").Oil();
        var costs = Good(system.Costs(system.HotIdle));
        Assert.Equal(["main-1.clearance", "main-2.clearance"], costs.Select(c => c.Figure.Name.ToString()));
        Assert.Equal(2 * Thou, costs[0].AsNew, 1e-12);
        var trial = Good(system.Try(new OilTrial("as new") { Set = new Dictionary<FigureName, double> { [First] = 2 * Thou } }, system.HotIdle));
        Assert.Equal(trial.Difference.Value, costs[0].Cost.Value, 1e-6 * Math.Abs(trial.Difference.Value));
        Assert.Equal(trial.Then.Pressure.Value - system.MainGauge().Pressure.Value, trial.Difference.Value, 1e-6);
        Assert.Equal("main-1", Assert.Single(costs[0].Elements).Name.Text);
    }

    [Fact]
    public void Difference_HasASmallerBandThanThePressures()
    {
        var system = Two("0.3 thou").Oil();
        var trial = Good(system.Try(new OilTrial("closer by a tenth") { ChangeBy = new Dictionary<FigureName, double> { [First] = -0.1 * Thou } }, system.HotIdle));
        Assert.True(trial.Difference.Value > 0);
        Assert.True(trial.Difference.Band < trial.Then.Pressure.Band / 3, $"{trial.Difference.Band} against {trial.Then.Pressure.Band}");

        // A change of a dimension goes into every fit of it.
        var bore = Good(system.Try(new OilTrial("bore") { ChangeBy = new Dictionary<FigureName, double> { [FigureName.Of("main-1.bore")] = -0.1 * Thou } }, system.HotIdle));
        Assert.Equal(trial.Difference.Value, bore.Difference.Value, 1e-9 * trial.Difference.Value);
    }

    [Fact]
    [CommonPractice("±0.35 thou on a 2.5 thou clearance is about −35 / +50 % in its flow")]
    public void FlowOfABearing_GoesWithTheCubeOfItsClearance()
    {
        double Flow(double clearance)
        {
            var system = Two().Circuit(c => c with
            {
                Nodes = [.. c.Nodes, new NodeDefinition(new NodeName("gallery")) { Pressure = Q("30 psi") }],
                Elements = [.. c.Elements.Where(e => e.Name.Text == "main-1")],
            }).Oil();
            return Good(Good(system.Suppose(new OilTrial("so") { Set = new Dictionary<FigureName, double> { [First] = clearance } })).At(system.HotIdle)).Elements[0].Flow;
        }

        Outside.Check("flow of a bearing 0.35 thou tighter than 2.5, in per cent of its flow", -35, ((Flow(2.15 * Thou) / Flow(2.5 * Thou)) - 1) * 100, 2);
        Outside.Check("flow of a bearing 0.35 thou wider than 2.5, in per cent of its flow", 50, ((Flow(2.85 * Thou) / Flow(2.5 * Thou)) - 1) * 100, 2);
    }

    [Fact]
    public void States_AreJudgedByTheLimitsOfTheirGauges()
    {
        OilVerdict? Verdict(string? least, string? greatest) => Good(Assert.Single(Two().Circuit(c => c with
        {
            States = [c.States[0] with { Limits = [new GaugeLimit(new OilGaugeName("main")) { Least = least is null ? null : Q(least), Greatest = greatest is null ? null : Q(greatest) }] }],
        }).Oil().States())).Verdict;

        var reads = Two().Oil().MainGauge();
        var (psi, band) = (reads.Pressure.Value / Psi, reads.Pressure.Band / Psi);
        Assert.Equal(OilVerdict.Enough, Verdict($"{psi - (2 * band):F3} psi", null));
        Assert.Equal(OilVerdict.TooLow, Verdict($"{psi + (2 * band):F3} psi", null));
        Assert.Equal(OilVerdict.TooHigh, Verdict(null, $"{psi - (2 * band):F3} psi"));
        Assert.Equal(OilVerdict.TooCloseToCall, Verdict($"{psi:F3} psi", null));
        Assert.Null(Verdict(null, null));
    }

    [Fact]
    public void Blanked_CarriesNothing_AndFittedAgainTakesItsShare()
    {
        var engine = Two().Circuit(c => c with { Elements = [.. c.Elements, Element("jet", ElementKind.Jet, "gallery", "sump", ("bore", "0.04 in")) with { Blanked = true }] });
        var system = engine.Oil();
        var answer = Good(system.At(system.HotIdle));
        Assert.Equal(0, answer.Elements.Single(e => e.Element.Name.Text == "jet").Flow);
        Assert.Equal(Two().Oil().MainGauge().Pressure.Value, answer.Gauges[0].Pressure.Value, 1e-6);
        var opened = Good(system.Try(new OilTrial("jet fitted") { Opened = [new ElementName("jet")] }, system.HotIdle));
        Assert.True(opened.Difference.Value < 0);
        Assert.Equal("not-blanked", Assert.Single(Bad(system.Suppose(new OilTrial("main fitted") { Opened = [new ElementName("main-1")] }))).Code);
        Assert.Contains(system.UsualTrials(system.HotIdle), t => t.Name == "jet fitted again");
        Assert.Contains(system.UsualTrials(system.HotIdle), t => t.Oil?.Grade == "SAE 50");
    }

    [Fact]
    public void Fits_GrowWithTheOilTowardsTheHotState()
    {
        var engine = Two().Engine(e => e with { Temperatures = [new TemperatureState(TemperatureState.Hot, Q("80 °C"), [])] })
            .Change(r => r with { Parts = [.. r.Parts.Select(p => p.Name.Leaf == "main-1" ? p with { Material = "cast aluminium" } : p)] });
        var system = engine.Oil();
        double At(double celsius) => Good(system.At(new OilPoint(47, celsius + 273.15))).Consumers.Single(c => c.Element.Name.Text == "main-1").Deciding!.Value.Value;
        var hot = ((FitAppraisal)engine.Appraise()[First]!).States[1].Estimate!.Value;
        Assert.Equal(hot, At(80), 1e-12);
        Assert.Equal(3 * Thou, At(20), 1e-12);
        Assert.Equal((hot + (3 * Thou)) / 2, At(50), 1e-12);
        Assert.True(hot > 3.5 * Thou);
    }

    [Fact]
    public void ScavengePump_IsSetAgainstWhatFallsToTheSump()
    {
        var system = Two().Circuit(c => c with
        {
            Nodes = [.. c.Nodes, new NodeDefinition(new NodeName("tank")) { Pressure = Q("0 psi") }],
            Elements = [.. c.Elements, Element("scavenge", ElementKind.Pump, "sump", "tank", ("displacement", "10 cc"), ("need", "80 %"), ("air", "20 %"))],
        }).Oil();
        var pump = Good(system.At(system.HotIdle)).Pumps.Single(p => p.Scavenge is not null);

        // It moves 10 where 4 are delivered; of these 0.8 arrive, with a fifth of air: 4.
        Assert.Equal(2.5, pump.Scavenge!.Ratio, 1e-9);
        Assert.True(pump.Scavenge.KeepsUp);
        Assert.Equal(0.2, pump.Scavenge.AirShare);
    }

    [Fact]
    public void WhatCannotBe_IsNamed()
    {
        Assert.Equal("no-circuit", Bad(OilSystem.Of(Two().Change(r => r with { Circuit = null }).Appraise()))[0].Code);
        Assert.Equal("oil-grade", Bad(OilSystem.Of(Two().Circuit(c => c with { Oil = new OilChoice { Grade = "SAE 41" } }).Appraise()))[0].Code);
        var unsaid = Two().Circuit(c => c with { Oil = OilChoice.NotSaid }).Oil();
        Assert.Equal("oil-not-said", Bad(unsaid.At(unsaid.HotIdle))[0].Code);
        Assert.True(unsaid.At(unsaid.HotIdle with { Viscosity = 0.02, Density = 870 }).IsOk(out _, out _));
        var tight = Two(firstBore: "1.9990 in").Oil();
        Assert.Contains(Good(tight.At(tight.HotIdle)).Cautions, c => c.Code == "nil-gap");
        var problem = Assert.Single(Bad(Two().Oil().Suppose(new OilTrial("no such") { Set = new Dictionary<FigureName, double> { [FigureName.Of("main-1.clearanse")] = 1 } })));
        Assert.Contains("main-1.clearance", problem.DoThis, StringComparison.Ordinal);
        var wide = Two(firstBore: "5.0 in").Oil();
        Assert.Equal(("circuit, elements, main-1, clearance", "3000 thou"), Bad(wide.At(wide.HotIdle))[0] is var large ? (large.Field, large.Found) : default);
        var island = Two().Circuit(c => c with { Elements = [.. c.Elements, Element("lost", ElementKind.Pipe, "nowhere", "elsewhere", ("bore", "0.5 in"), ("length", "4 in"))] }).Oil();
        Assert.Equal("circuit, elements, lost, from", Bad(island.At(island.HotIdle))[0].Field);
        Assert.Contains("nowhere", Bad(island.At(island.HotIdle))[0].ToString(), StringComparison.Ordinal);
        var size = Good(Two().Circuit(c => c with { Elements = [.. c.Elements.Select(e => e.Name.Text == "main-2" ? Element("main-2", ElementKind.GroovedBearing, "gallery", "sump", ("diameter", "50 mm"), ("clearance", "main-2.clearance"), ("land", "0.5 in")) : e)] }).Oil()
            .Suppose(new OilTrial("as wide") { Sizes = [new TrialSize(new("main-2"), "diameter", 25e-6)] }));
        Assert.Equal("clearance 3 thou and diameter 0.025 mm", Bad(size.At(size.HotIdle))[0].Found);
    }

    [Theory]
    [InlineData("12 psi", "psi absolute")]
    [InlineData("0.8 bar", "bar absolute")]
    public void PumpThatDoesNotFill_IsToldInTheUnitOfTheLimits(string limit, string says)
    {
        var answer = Good(Two().Circuit(c => c with
        {
            Elements = [Element("suction", ElementKind.Pipe, "sump", "inlet", ("bore", "0.12 in"), ("length", "60 in")), Element("pump", ElementKind.Pump, "inlet", "gallery", ("displacement", "4 cc"), ("inlet-limit", "5 psi")), .. c.Elements.Skip(1)],
            States = [c.States[0] with { Limits = [new GaugeLimit(new OilGaugeName("main")) { Least = Q(limit) }] }],
        }).Oil() is var system ? system.At(system.HotIdle with { OilTemperature = 283.15 }) : default!);
        var caution = Assert.Single(answer.Cautions);
        Assert.Equal("circuit-pump-starved", caution.Code);
        Assert.StartsWith($"pump fills only {answer.Pumps[0].Filling * 100:F0} in 100: its inlet is at ", caution.Text, StringComparison.Ordinal);
        Assert.Contains(says, caution.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void FlowTest_IsPredictedReadAndFittedTo()
    {
        var setting = new FlowTestSetting(new NodeName("gallery"), Q("30 psi"), Q("30 °C"));
        var engine = Two("0.3 thou").Circuit(c => c with { FlowTest = setting });
        var expected = Good(engine.Oil().FlowTestExpected());

        // The shafts lie in their bottom shells, the films are no warmer than the oil.
        Assert.True(EngineOil.TryGrade("SAE 40", out var oil, out _));
        var flow = 2 * 2 * Math.PI * 0.0508 * Math.Pow(1.5 * Thou, 3) * (1 + (1.5 * 0.95 * 0.95)) / (12 * 0.0127) * 30 * Psi / oil.DynamicViscosity(303.15);
        Assert.Equal(1, expected.Total.Value / flow, 1e-9);
        Assert.Equal(2, expected.Each.Count);
        Assert.Equal(expected.Total.Value, expected.Each.Sum(e => e.Flow.Value), 1e-9 * flow);

        FlowTest Test(double times) => new(FactId.New(), engine.Now(), "bench", setting.Pressure, setting.OilTemperature, Q($"{times * flow * 6e7:F3} cc/min")) { FedAt = setting.At };
        Assert.Contains("As expected", Read(Test(1.05)).Says, StringComparison.Ordinal);
        Assert.Contains("plug", Read(Test(3)).Says, StringComparison.Ordinal);
        Assert.Contains("Less", Read(Test(0.2)).Says, StringComparison.Ordinal);
        Assert.False(Read(Test(1.05)).Calibrates);

        // Accepted, more flow than expected lowers the pressure and narrows its band.
        var before = engine.Oil().MainGauge().Pressure;
        var test = Test(1.3);
        engine.Change(r => r with { FlowTests = [test], Calibrations = [new Calibration(FactId.New(), engine.Now(), "bench", test.Id)] });
        var after = engine.Oil().MainGauge().Pressure;
        Assert.True(Assert.Single(engine.Oil().FlowTests()).Calibrates);
        Assert.True(after.Value < before.Value);
        Assert.True(after.Band < 0.8 * before.Band, $"{after.Band} after {before.Band}");

        // A slip of the pen or a lost plug is not what the sizes leave open: nothing is fitted to it, even where it was accepted.
        Assert.False(Read(test).IsFarOff);
        Assert.True(Read(Test(1000)).IsFarOff);
        Assert.True(Read(Test(0.001)).IsFarOff);
        var slip = Test(1000);
        var misled = Two("0.3 thou").Circuit(c => c with { FlowTest = setting }).Change(r => r with { FlowTests = [slip], Calibrations = [new Calibration(FactId.New(), engine.Now(), "bench", slip.Id)] });
        Assert.False(Assert.Single(misled.Oil().FlowTests()).Calibrates);
        Assert.Equal(before.Value, misled.Oil().MainGauge().Pressure.Value);

        // Struck out, it counts no longer.
        Assert.Equal(before.Value, engine.StrikeOut(test.Id).Oil().MainGauge().Pressure.Value);

        FlowTestReading Read(FlowTest one) => Assert.Single(Two("0.3 thou").Circuit(c => c with { FlowTest = setting }).Change(r => r with { FlowTests = [one] }).Oil().FlowTests());
    }

    [Fact]
    public void Draws_AgreeWithTheBandWhereDoubtIsSmall_AndRepeat()
    {
        var system = Two("0.02 thou").Oil();
        var sample = Good(system.Draws(system.HotIdle, 20_000, 3));
        var gauge = system.MainGauge().Pressure;
        Assert.Equal(1, sample.StandardDeviation / gauge.StandardUncertainty, 0.1);
        Assert.Equal(1, sample.Quantile(0.5) / gauge.Value, 0.02);
        Assert.Equal(sample.Quantile(0.31), Good(system.Draws(system.HotIdle, 20_000, 3)).Quantile(0.31));
        Assert.NotEqual(sample.Quantile(0.31), Good(system.Draws(system.HotIdle, 20_000, 4)).Quantile(0.31));
    }

    [Fact]
    public void Map_IsTheGaugeAtEachPoint()
    {
        var system = Two().Oil();
        var map = Good(system.Map([20, 47.1, 120], [313.15, 353.15]));
        var one = Good(system.At(new OilPoint(47.1, 353.15))).Gauges[0];
        // The solver leaves a share of 1e-12 unbalanced, whichever point it came from.
        Assert.Equal(1, map.Points[1][1].Pressure / one.Pressure.Value, 1e-11);
        Assert.Equal(1, map.Points[1][1].High / (one.Pressure.Value + one.Pressure.Band), 1e-8);
        Assert.True(map.Points[0][2].Pressure > map.Points[0][0].Pressure);
        Assert.True(map.Points[0][1].Pressure > map.Points[1][1].Pressure);
    }
}
