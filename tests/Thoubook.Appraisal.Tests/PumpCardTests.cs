using Thoubook.Appraisal.Oil;
using Thoubook.OutsideChecks;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal.Tests;

public sealed class PumpCardTests
{
    private const double Thou = 25.4e-6;

    [Fact]
    public void Card_SaysWhatTheThreeDimensionsAmountTo()
    {
        var card = Card(Pump());
        Assert.Equal(["pump/body.depth", "pump/driver.width", "pump/joint.thickness", "pump/driven.width"], card.Sizes.Select(s => s.Figure.Name.ToString()));
        Assert.Equal(["driver-end-float", "driven-end-float"], card.EndFloats.Select(f => f.Figure.Name.Local));
        Assert.Equal(["as it stands", "gasket of 6 thou in place of the film", "body lapped by 1.5 thou", "body skimmed by 0.2 thou, to mid limits"], card.Choices.Select(c => c.Name));
        Assert.Equal(["20 °C", "hot", "coldest start"], card.Choices[0].Floats.Where(f => f.Fit == card.EndFloats[0]).Select(f => f.State));
        foreach (var at in card.Choices[0].Floats)
        {
            // As it stands it is what the fit itself says in that state.
            var state = at.Fit.States.Single(s => s.Name == at.State);
            Assert.Equal(state.Estimate!.Value, at.Float.Value);
            Assert.Equal(state.RiskOfNil!.Value, at.RiskOfNil, 1e-9);
            Assert.True(at.IsMeasured);
        }

        Assert.Equal(1, card.Choices[0].EndLeak!.Value);
        Assert.Equal(0, card.Choices[0].Change);
    }

    [Fact]
    [CommonPractice("a gasket under the cover adds its whole compressed thickness to the end float; a sealing film adds next to nothing")]
    public void Gasket_AddsItsThickness_LessTheFilm()
    {
        var card = Card(Pump());
        foreach (var state in (string[])["20 °C", "hot", "coldest start"])
            Outside.Check($"end float that a gasket of 6 thou adds in the place of 0.2 thou of film, {state}, thou", 6 - 0.2, (At(card, 1, state) - At(card, 0, state)) / Thou, 1e-3);
        var film = At(card, 0, "20 °C") - (At(Card(Pump(film: null)), 0, "20 °C") - (0.15 * Thou));
        Outside.Check("end float that the film adds, thou", 0.2, film / Thou, 0.01);

        // The gasket's own doubt comes in, the film's goes.
        var sources = card.Choices[1].Floats[0].Float.Contributions;
        Assert.Contains(sources, c => c.Source.Name == "compressed thickness of the gasket" && Math.Abs(c.Value - (0.6 * Thou)) < 1e-12);
        Assert.Equal(5.8 * Thou, card.Choices[1].Change, 1e-9);
        Assert.Equal(5.8 * Thou, card.Choices[1].Trial.ChangeBy[FigureName.Of("pump/joint.thickness")], 1e-9);
    }

    [Fact]
    public void Lapping_TakesWhatItSays_AndKeepsTheDoubt()
    {
        var card = Card(Pump(), new PumpTrials { Lapping = 2 * Thou, Skim = 4 * Thou });
        Assert.Equal(["as it stands", "gasket of 6 thou in place of the film", "body lapped by 2 thou", "body skimmed by 4 thou"], card.Choices.Select(c => c.Name));
        for (var i = 0; i < card.Choices[0].Floats.Count; i++)
        {
            var (before, lapped, skimmed) = (card.Choices[0].Floats[i], card.Choices[2].Floats[i], card.Choices[3].Floats[i]);
            Assert.Equal(-2, (lapped.Float.Value - before.Float.Value) / Thou, 1e-9);
            Assert.Equal(-4, (skimmed.Float.Value - before.Float.Value) / Thou, 1e-9);
            Assert.Equal(before.Float.StandardUncertainty, lapped.Float.StandardUncertainty);
            Assert.True(before.RiskOfNil <= lapped.RiskOfNil && lapped.RiskOfNil <= skimmed.RiskOfNil);
        }

        // Lapped off the body, so that every fit of the depth follows.
        Assert.Equal([KeyValuePair.Create(FigureName.Of("pump/body.depth"), -2 * Thou)], card.Choices[2].Trial.ChangeBy);
        Assert.DoesNotContain(Card(Pump(), new PumpTrials { Lapping = 0 }).Choices, c => c.Name.Contains("lapped", StringComparison.Ordinal));
    }

    [Fact]
    [CommonPractice("a gear pump's body must be deeper than its gears are wide; at nil float it locks; the dangerous case is the coldest start")]
    public void SkimmedTooFar_BindsAtTheColdestStart()
    {
        var card = Card(Pump(), new PumpTrials { Skim = 2.9 * Thou });
        var caution = Assert.Single(card.Cautions, c => c.Code == "pump-may-bind");
        Outside.CheckWord("temperature state in which a pump with an aluminium body and steel gears binds first", "coldest start", caution.Text.Contains("at coldest start", StringComparison.Ordinal) ? "coldest start" : caution.Text);
        var skimmed = card.Choices[^1].Floats;
        Assert.True(skimmed.Where(f => f.State == "coldest start").Min(f => f.RiskOfNil) > skimmed.Where(f => f.State == "hot").Max(f => f.RiskOfNil));
    }

    [Fact]
    public void EndLeak_GoesWithTheCubeOfTheHotFloats()
    {
        var card = Card(Pump());
        double Cubes(int choice) => card.Choices[choice].Floats.Where(f => f.State == "hot").Sum(f => Math.Pow(f.Float.Value, 3));
        for (var i = 0; i < card.Choices.Count; i++)
            Assert.Equal(Cubes(i) / Cubes(0), card.Choices[i].EndLeak!.Value, 1e-9);
        Assert.True(card.Choices[1].EndLeak > 8 && card.Choices[2].EndLeak < 0.5);

        // All of it lapped away leaks nothing; where nothing leaks now there is nothing to compare with.
        Assert.Equal(0, Card(Pump(), new PumpTrials { Lapping = 20 * Thou }).Choices[2].EndLeak);
        Assert.Null(Card(Pump(depth: "1.2400 in")).Choices[0].EndLeak);
    }

    [Fact]
    public void Unmeasured_StandsByTheDrawing_AndSaysSo()
    {
        var card = Card(Pump(film: null));
        Assert.All(card.Choices[0].Floats, f => Assert.False(f.IsMeasured));
        Assert.Contains(card.Cautions, c => c.Code == "pump-not-measured" && c.Text.Contains("pump/joint.thickness", StringComparison.Ordinal));
        Assert.Contains(card.Choices[0].Floats[0].Float.Contributions, c => c.Source.Kind == Estimates.SourceKind.Drawing);
        Assert.DoesNotContain(card.Choices[1].Floats[0].Float.Contributions, c => c.Source.Kind == Estimates.SourceKind.Drawing && Math.Abs(c.Value) > 1e-9);

        var nothing = Assert.IsType<Outcome<PumpCard>.Refused>(PumpCards.Of(new SmallEngine().Part("pump/body").Fit("pump.driver-end-float", [(1, "pump/body.depth")], kind: FitKind.EndFloat).Dimension("pump/body.depth").Appraise(), "pump", new PumpTrials()));
        Assert.Equal("pump-not-measured", nothing.Problems[0].Code);
        Assert.Contains("pump/body.depth", nothing.Problems[0].DoThis, StringComparison.Ordinal);
    }

    [Fact]
    public void FloatMeasuredAsSuch_Counts_AndGrowsWithItsParts()
    {
        var engine = Pump(gauge: "2 thou").Gauge("F", "0.02 thou");
        foreach (var fit in (string[])["pump.driver-end-float", "pump.driven-end-float"])
            engine.Check(fit, "4 thou", gauge: "F");
        var card = Card(engine);
        Assert.Equal(FitBasis.Check, card.EndFloats[0].Basis);
        Assert.Equal(4, At(card, 0, "20 °C") / Thou, 1e-6);
        var by = card.EndFloats[0].States;
        Assert.Equal(by[1].Expected!.Value - by[0].Expected!.Value, At(card, 0, "hot") - At(card, 0, "20 °C"), 1e-12);
    }

    [Fact]
    public void Pump_IsFoundByElement_PathOrLastName()
    {
        var engine = Pump(under: "lower-half/pressure-pump").Change(r => r with
        {
            Circuit = new OilCircuit
            {
                Elements =
                [
                    new(new ElementName("feed"), ElementKind.GearPump, new NodeName("tank"), new NodeName("gallery")) { Values = [new("end-float", new CircuitValue.Taken(FigureName.Of("lower-half/pressure-pump.driver-end-float")))] },
                    new(new ElementName("main"), ElementKind.Pipe, new NodeName("gallery"), new NodeName("sump")),
                ],
            },
        });
        var appraisal = engine.Appraise();
        foreach (var name in (string[])["feed", "lower-half/pressure-pump", "pressure-pump"])
        {
            Assert.True(PumpCards.Of(appraisal, name, new PumpTrials()).IsOk(out var card, out _), name);
            Assert.Equal("feed", card.Element?.Name.Text);
            Assert.Equal("lower-half/pressure-pump", card.Part.Path);
        }

        foreach (var name in (string[])["main", "pressure-pum"])
        {
            var refused = Assert.IsType<Outcome<PumpCard>.Refused>(PumpCards.Of(appraisal, name, new PumpTrials()));
            Assert.Equal("unknown-pump", refused.Problems[0].Code);
            Assert.Contains("lower-half/pressure-pump", refused.Problems[0].Allowed, StringComparison.Ordinal);
        }

        var none = Assert.IsType<Outcome<PumpCard>.Refused>(PumpCards.Of(new SmallEngine().Appraise(), "pump", new PumpTrials()));
        Assert.Contains("No part", none.Problems[0].Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public void Oil_IsThatOfTheSystemWithEachChoice()
    {
        var engine = Pump().Change(r => r with { Circuit = Circuit() });
        var card = Card(engine);
        Assert.Equal((450 * Math.PI / 30, 353.15), (card.At!.Value.Speed, card.At.Value.OilTemperature));
        Assert.True(OilSystem.Of(engine.Appraise()).IsOk(out var system, out _));
        foreach (var choice in card.Choices)
        {
            Assert.True(system.Try(choice.Trial, system.HotIdle).IsOk(out var tried, out _));
            Assert.Equal(tried.Difference.Value, choice.Oil!.Difference!.Value, 1e-6);
            Assert.Equal(tried.Then.Pressure.Value, choice.Oil.Main!.Pressure.Value, 1e-6);
        }

        var (stands, gasket, lapped) = (card.Choices[0].Oil!, card.Choices[1].Oil!, card.Choices[2].Oil!);
        Assert.Equal((0, 0), (stands.Difference!.Value, stands.Difference.StandardUncertainty));
        Assert.True(gasket.Slip > stands.Slip && stands.Slip > lapped.Slip && lapped.Slip > 0);
        Assert.True(gasket.Difference!.Value < 0 && lapped.Difference!.Value > 0);
    }

    [Fact]
    public void Oil_IsLeftOutWhereTheCircuitCannotSay()
    {
        Assert.Null(Card(Pump()).At);
        foreach (var circuit in (OilCircuit[])
        [
            Circuit() with { Oil = new OilChoice { Grade = "no such grade" } },
            Circuit() with { Elements = [.. Circuit().Elements.Skip(1)] },
            Circuit() with { Nodes = [] },
        ])
        {
            var card = Card(Pump().Change(r => r with { Circuit = circuit }));
            Assert.Null(card.At);
            Assert.All(card.Choices, c => Assert.Null(c.Oil));
        }

    }

    private static OilCircuit Circuit() => new()
    {
        Oil = new OilChoice { Grade = "SAE 40" },
        Elements =
        [
            new(new ElementName("feed"), ElementKind.GearPump, new NodeName("tank"), new NodeName("gallery"))
            {
                Values =
                [
                    Size("teeth", "14"), Size("tip-diameter", "50.8 mm"), Size("centre-distance", "44.45 mm"), Size("hub-diameter", "22 mm"), Size("speed-ratio", "0.5"),
                    new("width", new CircuitValue.Taken(FigureName.Of("pump/driver.width"))), new("end-float", new CircuitValue.Taken(FigureName.Of("pump.driver-end-float"))),
                ],
            },
            new(new ElementName("bearing"), ElementKind.GroovedBearing, new NodeName("gallery"), new NodeName("sump"))
            {
                Values = [Size("diameter", "2.5 in", ElementKind.GroovedBearing), Size("clearance", "6 thou", ElementKind.GroovedBearing), Size("land", "0.5 in", ElementKind.GroovedBearing)],
            },
        ],
        Nodes = [new(new NodeName("tank")) { Pressure = SmallEngine.Q("0 psi") }, new(new NodeName("sump")) { Pressure = SmallEngine.Q("0 psi") }],
        Gauges = [new(new OilGaugeName("main"), new NodeName("gallery"))],
        States = [new(OilState.HotIdle, SmallEngine.Q("450 rev/min"), SmallEngine.Q("80 °C")) { Limits = [new(new OilGaugeName("main")) { Least = SmallEngine.Q("10 psi") }] }],
    };

    private static ElementValue Size(string key, string text, ElementKind kind = ElementKind.GearPump) =>
        QuantityReader.Read(text, ReadingContext.None with { Kind = ElementKinds.Of(kind).Key(key)!.Kind }).IsOk(out var quantity, out var problems)
            ? new(key, new CircuitValue.Given(quantity))
            : throw new ArgumentException(string.Join("; ", problems), nameof(text));

    [Fact]
    public void MagnesiumBody_IsLappedWithCare()
    {
        Assert.Contains(Card(Pump(body: "cast magnesium")).Cautions, c => c.Code == "magnesium-swarf");
        Assert.DoesNotContain(Card(Pump()).Cautions, c => c.Code == "magnesium-swarf");
        Assert.Contains(Card(Pump()).Cautions, c => c.Text.Contains("Size says nothing of cracks", StringComparison.Ordinal));
    }

    private static SmallEngine Pump(string under = "pump", string? film = "0.2 thou", string gauge = "0.05 thou", string depth = "1.2535 in", string body = "cast aluminium")
    {
        var engine = new SmallEngine()
            .Engine(e => e with { Temperatures = [new(TemperatureState.Hot, SmallEngine.Q("80 °C"), []), new(TemperatureState.ColdestStart, SmallEngine.Q("-10 °C"), [])] })
            .Gauge("M", gauge)
            .Part($"{under}/body", body)
            .Part($"{under}/driver")
            .Part($"{under}/driven")
            .Part($"{under}/joint", "sealing film")
            .Dimension($"{under}/body.depth", "1.2530 in", "1.2540 in", wornGreatest: "1.2560 in")
            .Dimension($"{under}/driver.width", "1.2505 in", "1.2515 in", wornLeast: "1.2490 in")
            .Dimension($"{under}/driven.width", "1.2505 in", "1.2515 in", wornLeast: "1.2490 in")
            .Dimension($"{under}/joint.thickness", "0 thou", "0.3 thou")
            .Reading($"{under}/body.depth", depth, gauge: "M")
            .Reading($"{under}/driver.width", "1.2510 in", gauge: "M")
            .Reading($"{under}/driven.width", "1.2508 in", gauge: "M");
        if (film is not null)
            engine.Reading($"{under}/joint.thickness", film, gauge: "M");
        foreach (var gear in (string[])["driven", "driver"])
            engine.Fit($"{under}.{gear}-end-float", [(1, $"{under}/body.depth"), (-1, $"{under}/{gear}.width"), (1, $"{under}/joint.thickness")], "1.5 thou", "3.5 thou", "5 thou", FitKind.EndFloat);
        return engine;
    }

    private static PumpCard Card(SmallEngine engine, PumpTrials? trials = null) =>
        PumpCards.Of(engine.Appraise(), "pump", trials ?? new PumpTrials()).IsOk(out var card, out var problems) ? card : throw new Xunit.Sdk.XunitException(string.Join("; ", problems));

    private static double At(PumpCard card, int choice, string state) => card.Choices[choice].Floats.First(f => f.Fit == card.EndFloats[0] && f.State == state).Float.Value;
}
