using CsCheck;
using Thoubook.Appraisal.Estimates;
using Thoubook.Appraisal.Verdicts;
using Thoubook.Record;
using Thoubook.Record.Measures;

namespace Thoubook.Appraisal.Tests;

public sealed class EstimateTests
{
    private const string Bore = "case.bore";

    private static SmallEngine Engine(Counting? counts = null, string material = "steel") => new SmallEngine().Gauge("M", "0.1 thou", "0.05 thou").Gauge("N", "0.1 thou", "0.05 thou")
        .Part("case", material).Dimension(Bore, "2.5010 in", "2.5016 in", wornGreatest: "2.5030 in", change: d => d with { Counts = counts });

    [Fact]
    public void ReadingsAtOnePlace_AreAveragedFirst_ThenTheGreatestPlaceCounts()
    {
        var details = Engine().Reading(Bore, "2.5012 in", "A1", "M").Reading(Bore, "2.5016 in", "A1", "M").Reading(Bore, "2.5015 in", "B1", "M").AppraiseDimension(Bore).Details;
        Assert.Equal(2.5015 * 0.0254, details.Greatest!.Value, 1e-10);
        Assert.Equal(2.5014 * 0.0254, details.Least!.Value, 1e-10);
        Assert.Equal(details.Greatest, details.Counting);
    }

    [Fact]
    public void OvalityAndTaper_AreTakenInTheirOwnDirections()
    {
        var details = Engine().Reading(Bore, "2.5012 in", "A1", "M").Reading(Bore, "2.5015 in", "A2", "M").Reading(Bore, "2.5013 in", "B1", "M").Reading(Bore, "2.5017 in", "B2", "M").AppraiseDimension(Bore).Details;
        Assert.Equal(0.0004 * 0.0254, details.Ovality!.Value, 1e-10);
        Assert.Equal("B2", details.Ovality.High.Text);
        Assert.Equal(0.0002 * 0.0254, details.Taper!.Value, 1e-10);
        Assert.Equal("A2", details.Taper.Low.Text);
    }

    [Fact]
    public void GaugeUncertainty_DoesNotShrinkWithRepeats_RepeatabilityDoes()
    {
        var once = Engine().Reading(Bore, "2.5013 in", gauge: "M").AppraiseDimension(Bore).Estimate!;
        var engine = Engine();
        for (var i = 0; i < 16; i++)
            engine.Reading(Bore, "2.5013 in", gauge: "M");
        var often = engine.AppraiseDimension(Bore).Estimate!;
        Assert.Equal(Share(once, SourceKind.Gauge), Share(often, SourceKind.Gauge), 1e-12);
        Assert.Equal(Share(once, SourceKind.Repeatability) / 4, Share(often, SourceKind.Repeatability), 1e-12);
    }

    [Fact]
    public void AwayFrom20_LightAlloyReadWithSteelGauge_IsTakenTo20()
    {
        // Read at 30 °C: the alloy has grown by its own coefficient, the gauge by steel's, so the size at 20 °C is the less by their difference.
        var warm = Engine(material: "cast aluminium").Reading(Bore, "2.5013 in", gauge: "M", temperature: "30 °C").AppraiseDimension(Bore).Estimate!;
        var (alloy, steel) = (Material("cast aluminium"), Material("steel"));
        Assert.Equal(2.5013 * 0.0254 * (1 - (10 * (alloy.Expansion.Value - steel.Expansion.Value))), warm.Value, 1e-11);
    }

    [Fact]
    public void TwoGaugesThatDisagree_AreSaidSo_AndTheDoubtGrows()
    {
        var agree = Engine().Reading(Bore, "2.5013 in", gauge: "M").Reading(Bore, "2.5013 in", gauge: "N").AppraiseDimension(Bore);
        var disagree = Engine().Reading(Bore, "2.5008 in", gauge: "M").Reading(Bore, "2.5018 in", gauge: "N").AppraiseDimension(Bore);
        Assert.Empty(agree.Details.Disagreements);
        Assert.Single(disagree.Details.Disagreements);
        Assert.Contains(disagree.Cautions, c => c.Code == "gauges-disagree");
        Assert.True(disagree.Estimate!.StandardUncertainty > 2 * agree.Estimate!.StandardUncertainty);
    }

    [Fact]
    public void TransposedFigures_AreHintedAt_AndStillCount()
    {
        var engine = Engine();
        foreach (var (place, read) in new[] { ("A1", "2.5013 in"), ("A2", "2.5014 in"), ("B1", "2.5013 in"), ("B2", "2.5012 in"), ("C1", "2.5031 in"), ("C2", "2.5013 in") })
            engine.Reading(Bore, read, place, "M");
        var details = engine.AppraiseDimension(Bore).Details;
        Assert.Equal("2.5031 in", Assert.Single(details.Outliers).Reading.Value.Text);
        Assert.Equal(6, details.Readings.Count);
        Assert.Equal(2.5031 * 0.0254, details.Greatest!.Value, 1e-10);
    }

    [Fact]
    public void StruckOut_NoLongerCounts_AndStruckBackIn_CountsAgain()
    {
        var engine = Engine().Reading(Bore, "2.5013 in", gauge: "M").Reading(Bore, "2.5033 in", gauge: "M");
        engine.StrikeOut(engine.Record.Readings[1].Id);
        Assert.Equal(2.5013 * 0.0254, engine.AppraiseDimension(Bore).Estimate!.Value, 1e-10);
        engine.StrikeOut(engine.Record.StrikeOuts[0].Id, "it was right after all");
        Assert.Equal(2.5023 * 0.0254, engine.AppraiseDimension(Bore).Estimate!.Value, 1e-10);
    }

    [Fact]
    public void OrderOfReadings_ChangesNothing() => Gen.Int[2_50100, 2_50160].Array[2, 12].Sample(reads =>
    {
        var there = Engine();
        var back = Engine();
        for (var i = 0; i < reads.Length; i++)
        {
            there.Reading(Bore, $"{reads[i] / 100_000m} in", $"A{i % 3}", "M");
            back.Reading(Bore, $"{reads[^(i + 1)] / 100_000m} in", $"A{(reads.Length - 1 - i) % 3}", "M");
        }

        var (a, b) = (there.AppraiseDimension(Bore), back.AppraiseDimension(Bore));
        Assert.Equal(a.Estimate!.Value, b.Estimate!.Value, 1e-13);
        Assert.Equal(a.Estimate.StandardUncertainty, b.Estimate.StandardUncertainty, 1e-13);
        Assert.Equal(a.Verdict, b.Verdict);
    }, iter: 100);

    [Fact]
    public void Millimetres_GiveTheVerdictThatInchesGive() => Gen.Int[2_5000_00, 2_5040_00].Sample(read =>
    {
        var inches = read / 1_000_000m;
        var one = Engine().Reading(Bore, $"{inches} in", gauge: "M").AppraiseDimension(Bore);
        var other = Engine().Reading(Bore, $"{inches * 25.4m} mm", gauge: "M").AppraiseDimension(Bore);
        Assert.Equal(one.Estimate!.Value, other.Estimate!.Value, 1e-14);
        Assert.Equal(one.Verdict, other.Verdict);
        Assert.Equal(one.Probability!.Worn, other.Probability!.Worn, 1e-9);
    }, iter: 200);

    [Fact]
    public void ProbabilityOfConformance_FallsAsItWears()
    {
        var before = 1.0;
        for (var read = 2.5020m; read <= 2.5040m; read += 0.0001m)
        {
            var p = Engine().Reading(Bore, $"{read} in", gauge: "M").AppraiseDimension(Bore).Probability!;
            Assert.True(p.Worn <= before + 1e-12);
            Assert.InRange(p.Worn + p.PastWornEnd + p.PastOtherEnd, 0.999, 1.001);
            before = p.Worn;
        }

        Assert.True(before < 1e-6);
    }

    [Theory]
    [InlineData("hot", 80)]
    [InlineData("coldest start", -10)]
    public void LightAlloyBodyOnSteelGear_FloatFollowsTheTemperature(string state, double celsius)
    {
        var engine = new SmallEngine().Gauge("M", "0.05 thou", "0.02 thou").Part("body", "cast aluminium").Part("gear", "steel")
            .Engine(e => e with { Temperatures = [new TemperatureState(state, SmallEngine.Q($"{celsius} °C"), [])] })
            .Dimension("body.depth", "1.2530 in", "1.2540 in").Dimension("gear.width", "1.2505 in", "1.2515 in")
            .Fit("body.float", [(1, "body.depth"), (-1, "gear.width")], "1.5 thou", "3.5 thou", "5 thou", FitKind.EndFloat)
            .Reading("body.depth", "1.2535 in", gauge: "M").Reading("gear.width", "1.2515 in", gauge: "M");
        var fit = engine.AppraiseFit("body.float");
        var (alloy, steel) = (Material("cast aluminium"), Material("steel"));
        var rise = celsius - 20;
        var expected = (1.2535 * 0.0254 * (1 + (alloy.Expansion.Value * rise))) - (1.2515 * 0.0254 * (1 + (steel.Expansion.Value * rise)));
        var there = fit.States.Single(s => s.Name == state);
        Assert.Equal(expected, there.Estimate!.Value, 1e-12);
        Assert.True(there.Estimate.StandardUncertainty > fit.States[0].Estimate!.StandardUncertainty);
        Assert.Equal(2e-3 * 0.0254, fit.States[0].Estimate!.Value, 1e-10);
    }

    [Fact]
    public void ColdestStart_NilFloat_IsSaidToBind()
    {
        var engine = new SmallEngine().Gauge("M", "0.05 thou", "0.02 thou").Part("body", "cast aluminium").Part("gear", "steel")
            .Engine(e => e with { Temperatures = [new TemperatureState(TemperatureState.ColdestStart, SmallEngine.Q("-20 °C"), [])] })
            .Dimension("body.depth", "1.2530 in", "1.2540 in").Dimension("gear.width", "1.2505 in", "1.2535 in")
            .Fit("body.float", [(1, "body.depth"), (-1, "gear.width")], "0.2 thou", "3.5 thou", "5 thou", FitKind.EndFloat)
            .Reading("body.depth", "1.2535 in", gauge: "M").Reading("gear.width", "1.2530 in", gauge: "M");
        Assert.Equal(Verdict.AsNew, engine.AppraiseFit("body.float").Verdict);
        Assert.Contains(engine.Appraise().InTheWay, m => m.Kind == MatterKind.MayBind);
    }

    [Fact]
    public void WorstCase_HoldsTheRootSumSquare()
    {
        var fit = new SmallEngine().Part("body").Part("gear").Dimension("body.depth", "1.2530 in", "1.2540 in").Dimension("gear.width", "1.2505 in", "1.2515 in")
            .Fit("body.float", [(1, "body.depth"), (-1, "gear.width")], "1.5 thou", "3.5 thou").AppraiseFit("body.float");
        var state = fit.States[0];
        Assert.Equal(1.5e-3 * 0.0254, state.WorstCase!.Value.Least, 1e-10);
        Assert.Equal(3.5e-3 * 0.0254, state.WorstCase.Value.Greatest, 1e-10);
        Assert.Equal(Math.Sqrt(0.5) * 1e-3 * 0.0254, state.RootSumSquareHalfWidth!.Value, 1e-10);
    }

    [Fact]
    public void RepeatsThatScatterMoreThanTheGauge_AreBelieved()
    {
        var details = Engine().Reading(Bore, "2.5010 in", "A1", "M").Reading(Bore, "2.5014 in", "A1", "M").Reading(Bore, "2.5018 in", "A1", "M").AppraiseDimension(Bore).Details;
        Assert.Equal(0.0004 * 0.0254, details.RepeatScatter, 1e-10);
        Assert.Equal(2, details.RepeatDegreesOfFreedom);
    }

    [Fact]
    public void WhereTheMeanCounts_PlacesThatDifferAddTheirShare()
    {
        var alike = Engine(Counting.Mean).Reading(Bore, "2.5013 in", "A1", "M").Reading(Bore, "2.5013 in", "B1", "M").Reading(Bore, "2.5013 in", "C1", "M").AppraiseDimension(Bore).Estimate!;
        var unlike = Engine(Counting.Mean).Reading(Bore, "2.5008 in", "A1", "M").Reading(Bore, "2.5013 in", "B1", "M").Reading(Bore, "2.5018 in", "C1", "M").AppraiseDimension(Bore).Estimate!;
        Assert.Equal(0, Share(alike, SourceKind.Place));

        // Scatter of the places 0.5 thou over √3 of them, less what repeats explain (0.05 thou over √3).
        var expected = Math.Sqrt((0.5 * 0.5 / 3) - (0.05 * 0.05 / 3)) * 25.4e-6;
        Assert.Equal(expected, Share(unlike, SourceKind.Place), 1e-9);
    }

    [Fact]
    public void ClosestAndWidest_AreOverThePlacesOfBothParts()
    {
        var engine = new SmallEngine().Gauge("M", "0.02 thou", "0.01 thou").Part("case").Part("shaft")
            .Engine(e => e with { Temperatures = [new TemperatureState("cold", SmallEngine.Q("0 °C"), [])] })
            .Dimension("case.bore", "2.5010 in", "2.5016 in", wornGreatest: "2.5030 in").Dimension("shaft.journal", "2.4990 in", "2.4995 in", wornLeast: "2.4975 in")
            .Fit("case.running", [(1, "case.bore"), (-1, "shaft.journal")], "0.2 thou", "2.6 thou", "4.5 thou")
            .Reading("case.bore", "2.4996 in", "A1", "M").Reading("case.bore", "2.5014 in", "B1", "M").Reading("shaft.journal", "2.4996 in", "A1", "M").Reading("shaft.journal", "2.4990 in", "B1", "M");
        var fit = engine.AppraiseFit("case.running");
        Assert.Equal(0, fit.Least!.Value, 1e-9);
        Assert.Equal(2.4e-3 * 0.0254, fit.Greatest!.Value, 1e-9);
        Assert.Equal(Verdict.TooTight, fit.Verdict);
        Assert.All(fit.States, s => Assert.InRange(s.RiskOfNil!.Value, 0.3, 0.7));
    }

    private static Mechanics.Heat.Material Material(string name) => Mechanics.Heat.Materials.TryFind(name, out var found, out _) ? found : throw new ArgumentException(name, nameof(name));

    private static double Share(Estimate estimate, SourceKind kind) => Math.Sqrt(estimate.Contributions.Where(c => c.Source.Kind == kind).Sum(c => c.Value * c.Value));
}
