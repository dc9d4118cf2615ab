using Thoubook.Appraisal.Oil;
using Thoubook.Mechanics.Oil;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using static Thoubook.Appraisal.Tests.OilEngine;
using static Thoubook.Appraisal.Tests.SmallEngine;

namespace Thoubook.Appraisal.Tests;

/// <summary>From the words of an element to its law, each by a circuit small enough for hand reckoning.</summary>
public sealed class OilLawsTests
{
    private const double Viscosity = 0.02;
    private const double Density = 870;
    private static readonly OilPoint Stated = new(47.1, 353.15) { Viscosity = Viscosity, Density = Density };

    [Fact]
    public void Valve_OpensAtItsCracking_OrWhereItsPreloadSays_AboveTheBackPressure()
    {
        // A seat of 10 mm: 31.4 N are 4 bar.
        double Cracks(string key, string value, string back) => Between($"{back} bar", "5 bar", Element("valve", ElementKind.DiscValve, "high", "low", ("seat", "10 mm"), (key, value), ("spring", "5 N/mm"), ("lift", "2 mm"))).Valves[0].Cracking / 1e5;

        Assert.Equal(4, Cracks("cracking", "4 bar", "0"), 1e-9);
        Assert.Equal(4.5, Cracks("cracking", "4 bar", "0.5"), 1e-9);
        Assert.Equal(4, Cracks("preload", "31.41592653589793 N", "0"), 1e-9);
    }

    [Fact]
    public void PistonValve_LeaksRoundItsPistonWhileShut()
    {
        var valve = Between("0 bar", "2 bar", Element("valve", ElementKind.PistonValve, "high", "low", ("piston", "20 mm"), ("port", "10 mm"), ("cracking", "4 bar"), ("spring", "5 N/mm"), ("lift", "4 mm"), ("overlap", "1 mm"), ("leak-gap", "0.1 mm"), ("leak-length", "15 mm"))).Valves[0];
        Assert.False(valve.IsOpen);
        Assert.Equal(4e5, valve.Cracking, 1);
        Assert.Equal(Math.PI * 0.02 * Math.Pow(0.05e-3, 3) / (12 * 0.015) * 2e5 / Viscosity, valve.Element.Flow, 1e-15);
    }

    [Fact]
    public void Filter_PassesWhatItIsRatedAt_LessWhatIsClogged()
    {
        double Flow(params (string, string)[] more) => Between("0 bar", "0.5 bar", Element("filter", ElementKind.Filter, "high", "low", [("rated-flow", "12 L/min"), ("rated-loss", "0.5 bar"), ("rated-viscosity", "20 cP"), .. more])).Elements[0].Flow;

        Assert.Equal(2e-4, Flow(), 1e-12);
        Assert.Equal(1.5e-4, Flow(("clogged", "25 %")), 1e-12);
    }

    [Fact]
    public void Cooler_IsPassedByWhereItsByPassOpens()
    {
        double Flow(string pressure, bool hasByPass) => Between("0 bar", pressure, Element("cooler", ElementKind.Cooler, "high", "low", [("tubes", "40"), .. (hasByPass ? new[] { ("by-pass", "1 bar"), ("by-pass-bore", "12 mm") } : []), ("bore", "4 mm"), ("length", "300 mm")])).Elements[0].Flow;

        Assert.Equal(Flow("0.9 bar", false), Flow("0.9 bar", true), 1e-12);
        Assert.True(Flow("1.1 bar", true) > 1.05 * Flow("1.1 bar", false));
    }

    [Fact]
    public void Pump_SlipsByItsLeak_NotByWhatItDoesNotFill()
    {
        // At 0.4 bar absolute half way between nothing and full.
        var engine = Two().Circuit(c => c with
        {
            Nodes = [.. c.Nodes, new NodeDefinition(new NodeName("tank")) { Pressure = Q("-0.61325 bar") }],
            Elements = [.. c.Elements.Where(e => e.Kind != ElementKind.Pump), Element("pump", ElementKind.Pump, "tank", "gallery", ("displacement", "4 cc"), ("inlet-limit", "0.3 bar"), ("fills-at", "0.5 bar"))],
        });
        var pump = Good(engine.Oil().At(Stated)).Pumps[0];
        Assert.Equal(0.5, pump.Filling, 1e-6);
        Assert.Equal(0, pump.Slip, 1e-6);
        Assert.Equal(4e-6 * 47.1 / (2 * Math.PI), pump.Capacity, 1e-12);
        Assert.Equal(pump.Capacity / 2, pump.Delivery, 1e-10);
        Assert.Equal(-0.1e5, pump.SuctionReserve!.Value, 1);
    }

    [Fact]
    public void Gauge_AboveItsTapping_ReadsLessByTheColumn()
    {
        double Reads(string? height) => Good(Two().Circuit(c => c with { Gauges = [c.Gauges[0] with { Height = height is null ? null : Q(height) }] }).Oil().At(Stated)).Gauges[0].Pressure.Value;

        Assert.Equal(Density * 9.80665 * 1.5, Reads(null) - Reads("1.5 m"), 1e-6);
    }

    [Fact]
    public void FurthestBearing_IsTheOneFedAtLeast()
    {
        var system = Two().Circuit(c => c with
        {
            Elements = [c.Elements[0], c.Elements[1], Element("way", ElementKind.LaminarPipe, "gallery", "end", ("bore", "4 mm"), ("length", "2 m")), c.Elements[2] with { From = new NodeName("end") }],
        }).Oil();
        var answer = Good(system.At(Stated));
        Assert.Equal("main-2", answer.Furthest!.Element.Name.Text);
        Assert.True(answer.Furthest.From < answer.Gauges[0].Pressure.Value);
        Assert.Contains(answer.Elements, e => e is { Role: ElementRole.Passage, Element.Name.Text: "way" });
    }

    [Fact]
    public void DrainDown_IsWhatTheStandingPumpLeaks()
    {
        // One metre of oil over a leak of 1e-13 m³: by hand, at 20 °C for ten hours.
        Assert.True(EngineOil.TryGrade("SAE 40", out var oil, out _));
        var system = Two().Circuit(c => c with
        {
            Nodes = [.. c.Nodes, new NodeDefinition(new NodeName("tank")) { Pressure = Q("0 bar"), Height = Q("1 m") }],
            Elements = [Element("pump", ElementKind.Pump, "tank", "sump", ("displacement", "4 cc"), ("leak", "0.1 mm3")), c.Elements[1], c.Elements[2], Element("feed", ElementKind.Pump, "sump", "gallery", ("displacement", "4 cc"), ("leak", "0.0001 mm3"))],
        }).Oil();
        var expected = 1e-10 * oil.Density(293.15) * 9.80665 / oil.DynamicViscosity(293.15) * 36_000;
        Assert.Equal(1, Good(system.DrainDown(10)) / expected, 1e-9);
    }

    [Fact]
    public void JetsOwnDoubt_IsAShareOfItsDischarge()
    {
        var jet = Element("jet", ElementKind.Jet, "gallery", "sump", ("bore", "1.2 mm"), ("discharge", "62 %"));
        var answer = Good(Two().Circuit(c => c with { Elements = [c.Elements[0], jet] }).Oil().At(Stated));

        // Alone behind a pump, 5 in 100 more discharge are 10 in 100 less pressure.
        var share = Assert.Single(answer.Gauges[0].Pressure.Contributions, s => s.Source.Name == "discharge coefficients of jets and valves");
        Assert.Equal(-0.1, share.Value / answer.Gauges[0].Pressure.Value, 1e-5);
    }

    [Fact]
    public void Lapping_IsTriedWhereItLeavesAFloat_AndClosesBothGears()
    {
        SmallEngine Pump(string depth) => new SmallEngine().Part("body").Part("driver").Part("driven").Gauge("D", "0.1 thou")
            .Dimension("body.depth", "1.2530 in", "1.2540 in").Dimension("driver.width", "1.2505 in", "1.2515 in").Dimension("driven.width", "1.2505 in", "1.2515 in")
            .Fit("driver.end-float", [(1, "body.depth"), (-1, "driver.width")], "1.5 thou", "3.5 thou").Fit("driven.end-float", [(1, "body.depth"), (-1, "driven.width")], "1.5 thou", "3.5 thou")
            .Reading("body.depth", depth, gauge: "D").Reading("driver.width", "1.2500 in", gauge: "D").Reading("driven.width", "1.2500 in", gauge: "D")
            .Change(r => r with
            {
                Circuit = Simple() with
                {
                    Elements =
                    [
                        Element("pump", ElementKind.GearPump, "sump", "gallery", ("teeth", "11"), ("tip-diameter", "2 in"), ("centre-distance", "1.7 in"), ("width", "driver.width"), ("end-float", "driver.end-float"), ("driven-end-float", "driven.end-float"), ("hub-diameter", "0.6 in")),
                        Element("jet", ElementKind.Jet, "gallery", "sump", ("bore", "3 mm")),
                    ],
                },
            });

        var system = Pump("1.2545 in").Oil();
        var lapped = Assert.Single(system.UsualTrials(system.HotIdle), t => t.Name.Contains("lapped", StringComparison.Ordinal));
        Assert.Equal(-1.5 * Thou, Assert.Single(lapped.ChangeBy).Value, 1e-12);
        Assert.Equal("body.depth", lapped.ChangeBy.Keys.Single().ToString());
        var trial = Good(system.Try(lapped, system.HotIdle));
        Assert.True(trial.Difference.Value > 0);
        Assert.True(Good(Good(system.Suppose(lapped)).At(system.HotIdle)).Pumps[0].Slip < 0.5 * Good(system.At(system.HotIdle)).Pumps[0].Slip);

        // Less than two thou of float leave nothing to lap off.
        var tight = Pump("1.2519 in").Oil();
        Assert.DoesNotContain(tight.UsualTrials(tight.HotIdle), t => t.Name.Contains("lapped", StringComparison.Ordinal));
    }

    [Fact]
    public void Cost_OfAHotFit_IsAgainstItsNewLimitsHot()
    {
        var system = Two().Engine(e => e with { Temperatures = [new TemperatureState(TemperatureState.Hot, Q("80 °C"), [])] })
            .Change(r => r with { Parts = [.. r.Parts.Select(p => p.Name.Leaf == "main-1" ? p with { Material = "cast aluminium" } : p)] }).Oil();
        var cost = Good(system.Costs(system.HotIdle)).Single(c => c.Figure.Name.ToString() == "main-1.clearance");
        Assert.Equal(1 * Thou, cost.Figure.Value.Value - cost.AsNew, 1e-9);
        Assert.True(cost.AsNew > 2.5 * Thou);
    }

    /// <summary>One element between two reservoirs.</summary>
    private static OilAnswer Between(string low, string high, ElementDefinition element) => Good(Two().Circuit(c => c with
    {
        Nodes = [new NodeDefinition(new NodeName("low")) { Pressure = Q(low) }, new NodeDefinition(new NodeName("high")) { Pressure = Q(high) }],
        Elements = [element],
        Gauges = [],
    }).Oil().At(Stated));
}
