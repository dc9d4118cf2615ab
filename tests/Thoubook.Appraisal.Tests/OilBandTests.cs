using Thoubook.Appraisal.Oil;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using static Thoubook.Appraisal.Tests.OilEngine;
using static Thoubook.Appraisal.Tests.SmallEngine;

namespace Thoubook.Appraisal.Tests;

/// <summary>The band that a gauge is shown with, set beside draws of everything uncertain, each solved whole.</summary>
public sealed class OilBandTests
{
    private const int Draws = 20_000;

    /// <summary>[-] A valve that opens a little above what the gauge reads without it.</summary>
    private const double JustShut = 1.1;

    private static readonly FlowTestSetting Test = new(new NodeName("gallery"), Q("30 psi"), Q("30 °C"));

    /// <summary>Shut by far, about to open, just open, and wide open.</summary>
    /// <param name="opens">[-] at which the valve opens, by what the gauge would read without it.</param>
    /// <param name="isTested">Whether the circuit is fitted to a flow test.</param>
    [Theory]
    [InlineData(3, false)]
    [InlineData(1.3, false)]
    [InlineData(1.1, false)]
    [InlineData(1.02, false)]
    [InlineData(0.98, false)]
    [InlineData(0.9, false)]
    [InlineData(0.7, false)]
    [InlineData(0.4, false)]
    [InlineData(1.1, true)]
    [InlineData(0.95, true)]
    [InlineData(0.8, true)]
    public void BesideAnOpeningValve_AgreesWithTheDraws(double opens, bool isTested)
    {
        var engine = With(opens, isTested);
        var system = engine.Oil();
        var gauge = system.MainGauge();
        var drawn = Good(system.Draws(system.HotIdle, Draws, 7));
        var (low, high) = (drawn.Quantile(0.025), drawn.Quantile(0.975));
        var width = high - low;
        Assert.True(Math.Abs(gauge.High - gauge.Low - width) < 0.1 * width, Told());
        Assert.True(Math.Abs(gauge.Low - low) < 0.1 * width && Math.Abs(gauge.High - high) < 0.1 * width, Told());

        string Told() => $"opens at {opens}: shown {gauge.Low / Psi:F2} to {gauge.High / Psi:F2}, drawn {low / Psi:F2} to {high / Psi:F2}, reads {gauge.Pressure.Value / Psi:F2}";
    }

    /// <summary>Beside an opening valve the band by slopes is far from the truth, so that the agreement above says something.</summary>
    [Fact]
    public void BySlopes_ItWouldNotAgree()
    {
        var gauge = With(JustShut, false).Oil().MainGauge();
        Assert.True(gauge.High - gauge.Pressure.Value < 0.6 * gauge.Pressure.Band, $"{gauge.High - gauge.Pressure.Value} of {gauge.Pressure.Band}");
    }

    [Fact]
    public void WhereNothingBends_ItIsTheBandBySlopes()
    {
        var gauge = Two("0.01 thou").Circuit(c => c with { Elements = [.. c.Elements.Select(e => e.Kind == ElementKind.GroovedBearing ? e with { Values = [.. e.Values, .. Element("x", ElementKind.GroovedBearing, "a", "b", ("eccentricity", "0"), ("film-rise", "0 K")).Values] } : e)] }).Oil().MainGauge();
        Assert.Equal(1, (gauge.High - gauge.Low) / (2 * gauge.Pressure.Band), 0.03);
    }

    [Fact]
    public void EveryGauge_HasIt_AndTheAnswerSaysHow()
    {
        var system = With(JustShut, false).Circuit(c => c with { Gauges = [new OilGauge(new OilGaugeName("far"), new NodeName("gallery")) { Uncertainty = Q("1 psi") }, .. c.Gauges] }).Oil();
        var answer = Good(system.At(system.HotIdle));
        Assert.All(answer.Gauges, g => Assert.True(g.High - g.Pressure.Value < 0.75 * g.Pressure.Band));

        // Its own doubt goes either way.
        Assert.True(answer.Gauges[0].High > answer.Gauges[1].High && answer.Gauges[0].Low < answer.Gauges[1].Low);
        Assert.Contains("solved there", answer.HowBands, StringComparison.Ordinal);
    }

    [Fact]
    public void Map_BendsWhereAValveOpens_AndOnlyThere()
    {
        var system = With(JustShut, false).Oil();
        var idle = system.HotIdle;
        var map = Good(system.Map([idle.Speed * 0.4, idle.Speed], [idle.OilTemperature]));
        var gauge = Good(system.At(idle)).Gauges[0];
        Assert.Equal(gauge.High, map.Points[0][1].High, 1e-6 * gauge.High);
        Assert.Equal(map.Points[0][0].High - map.Points[0][0].Pressure, map.Points[0][0].Pressure - map.Points[0][0].Low, 1e-6 * gauge.High);
    }

    /// <summary>A verdict goes by how probable a reading is, and that by draws too.</summary>
    [Theory]
    [InlineData(1.1, 0.75)]
    [InlineData(1.1, 1.08)]
    [InlineData(0.9, 0.8)]
    [InlineData(0.9, 0.7)]
    public void Verdict_IsAsProbableAsTheDrawsSay(double opens, double least)
    {
        var engine = With(opens, false);
        var reads = Two("0.3 thou").Oil().MainGauge().Pressure.Value;
        var limit = Q($"{least * reads / Psi:F4} psi");
        var gauge = Good(Assert.Single(engine.Circuit(c => c with { States = [c.States[0] with { Limits = [new GaugeLimit(new OilGaugeName("main")) { Least = limit }] }] }).Oil().States())).Gauges[0];
        var drawn = Good(engine.Oil().Draws(engine.Oil().HotIdle, Draws, 7));
        var below = Enumerable.Range(1, 999).Count(i => drawn.Quantile(i / 1000.0) < limit.Si) / 999.0;
        Assert.True(below is > 0.02 and < 0.98, $"{below}");
        Assert.Equal(1 - below, gauge.Probability, 0.03);
        Assert.Equal(gauge.Probability, 1 - Good(Assert.Single(engine.Circuit(c => c with { States = [c.States[0] with { Limits = [new GaugeLimit(new OilGaugeName("main")) { Greatest = limit }] }] }).Oil().States())).Gauges[0].Probability, 1e-9);
    }

    private static SmallEngine With(double opens, bool isTested)
    {
        var cracking = $"{opens * Two("0.3 thou").Oil().MainGauge().Pressure.Value / Psi:F3} psi";
        var engine = Two("0.3 thou").Circuit(c => c with
        {
            FlowTest = Test,
            Elements = [.. c.Elements, Element("relief", ElementKind.DiscValve, "gallery", "sump", ("seat", "0.6 in"), ("cracking", cracking), ("spring", "10 lbf/in"), ("lift", "0.3 in"))],
        });
        if (!isTested)
            return engine;
        var expected = Good(engine.Oil().FlowTestExpected()).Total.Value;
        var test = new FlowTest(FactId.New(), engine.Now(), "bench", Test.Pressure, Test.OilTemperature, Q($"{1.15 * expected * 6e7:F3} cc/min")) { FedAt = Test.At };
        return engine.Change(r => r with { FlowTests = [test], Calibrations = [new Calibration(FactId.New(), engine.Now(), "owner", test.Id)] });
    }
}
