using Thoubook.Appraisal.Verdicts;
using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;

namespace Thoubook.Appraisal.Tests;

public sealed class VerdictTests
{
    private const string Bore = "case.bore";
    private const string Journal = "shaft.journal";

    /// <summary>A bore new 2.5010 to 2.5016, worn 2.5030 in, read once with a gauge good to 0.1 thou.</summary>
    private static SmallEngine WithBore(string reading) => new SmallEngine().Gauge("M", "0.1 thou", "0.02 thou").Part("case")
        .Dimension(Bore, "2.5010 in", "2.5016 in", wornGreatest: "2.5030 in").Reading(Bore, reading, gauge: "M");

    [Theory]
    [InlineData("2.5013 in", Verdict.AsNew)]
    [InlineData("2.5016 in", Verdict.WithinWornLimits)]   // new size not proved, use is
    [InlineData("2.5022 in", Verdict.WithinWornLimits)]
    [InlineData("2.5030 in", Verdict.TooCloseToCall)]
    [InlineData("2.5033 in", Verdict.BeyondWornLimits)]
    [InlineData("2.5010 in", Verdict.TooCloseToCall)]     // at the unworn end, which wear does not excuse
    [InlineData("2.5006 in", Verdict.OffSize)]
    public void Bore_AgainstItsLimits_SaysWhatTheReadingsProve(string reading, Verdict expected) =>
        Assert.Equal(expected, WithBore(reading).AppraiseDimension(Bore).Verdict);

    [Fact]
    public void Bore_AtTheNewLimit_SaysNewSizeNotProved() =>
        Assert.Contains("New size not proved", WithBore("2.5016 in").AppraiseDimension(Bore).Reason, StringComparison.Ordinal);

    [Theory]
    [InlineData("2.4992 in", Verdict.AsNew)]
    [InlineData("2.4980 in", Verdict.WithinWornLimits)]
    [InlineData("2.4972 in", Verdict.BeyondWornLimits)]
    [InlineData("2.4999 in", Verdict.OffSize)]
    public void Shaft_WearsDownwards(string reading, Verdict expected)
    {
        var engine = new SmallEngine().Gauge("M", "0.1 thou", "0.02 thou").Part("shaft")
            .Dimension(Journal, "2.4990 in", "2.4995 in", wornLeast: "2.4975 in").Reading(Journal, reading, gauge: "M");
        Assert.Equal(expected, engine.AppraiseDimension(Journal).Verdict);
    }

    [Theory]
    [InlineData("10.00 mm", Verdict.AsNew)]
    [InlineData("10.20 mm", Verdict.OffSize)]
    [InlineData("9.80 mm", Verdict.OffSize)]
    [InlineData("10.05 mm", Verdict.TooCloseToCall)]
    public void NoWearDirection_OffSizeAtEitherEnd(string reading, Verdict expected)
    {
        var engine = new SmallEngine().Gauge("M", "5 µm", "1 µm").Part("shim").Dimension("shim.width", "9.95 mm", "10.05 mm").Reading("shim.width", reading, gauge: "M");
        Assert.Equal(expected, engine.AppraiseDimension("shim.width").Verdict);
    }

    [Fact]
    public void NoWornLimits_TheNewLimitsBind()
    {
        var engine = new SmallEngine().Gauge("M", "0.1 thou", "0.02 thou").Part("case")
            .Dimension(Bore, "2.5010 in", "2.5016 in", change: d => d with { Wear = WearDirection.Grows }).Reading(Bore, "2.5022 in", gauge: "M");
        Assert.Equal(Verdict.BeyondWornLimits, engine.AppraiseDimension(Bore).Verdict);
    }

    [Theory]
    [InlineData(WearAllowance.NoWearPermitted, Verdict.BeyondWornLimits)]
    [InlineData(WearAllowance.NotAWearItem, Verdict.OffSize)]
    public void PrintedNil_MeansWhatWasAnswered(WearAllowance answered, Verdict expected)
    {
        var engine = new SmallEngine().Gauge("M", "0.1 thou", "0.02 thou").Part("case")
            .Dimension(Bore, "2.5010 in", "2.5016 in", change: d => d with { Wear = WearDirection.Grows }, wear: answered).Reading(Bore, "2.5022 in", gauge: "M");
        Assert.Equal(expected, engine.AppraiseDimension(Bore).Verdict);
    }

    [Fact]
    public void NoReading_NotMeasured_WithNullValue()
    {
        var appraised = new SmallEngine().Part("case").Dimension(Bore, "2.5010 in", "2.5016 in").AppraiseDimension(Bore);
        Assert.Equal(Verdict.NotMeasured, appraised.Verdict);
        Assert.Null(appraised.Estimate);
        Assert.Null(appraised.Probability);
    }

    [Fact]
    public void NoLimits_NoVerdict()
    {
        var appraised = new SmallEngine().Part("case").Dimension(Bore).Reading(Bore, "2.5013 in").AppraiseDimension(Bore);
        Assert.Null(appraised.Verdict);
        Assert.NotNull(appraised.Estimate);
        Assert.Contains("No limits", appraised.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void OnePlaceOfMany_BeyondTheLimit_IsTheVerdictOfAll()
    {
        var engine = WithBore("2.5013 in");
        foreach (var place in new[] { "A2", "B1", "B2", "C1" })
            engine.Reading(Bore, "2.5013 in", place, "M");
        Assert.Equal(Verdict.AsNew, engine.AppraiseDimension(Bore).Verdict);
        engine.Reading(Bore, "2.5034 in", "C2", "M");
        Assert.Equal(Verdict.BeyondWornLimits, engine.AppraiseDimension(Bore).Verdict);
    }

    [Fact]
    public void ManyPlacesNearTheLimit_ConformLessProbablyThanOne()
    {
        // Their own errors are independent, so that all of them conform is less probable than that one does.
        var one = new SmallEngine().Gauge("M", "0.01 thou", "0.1 thou").Part("case").Dimension(Bore, "2.5010 in", "2.5016 in", wornGreatest: "2.5030 in");
        one.Reading(Bore, "2.50284 in", "A1", "M");
        var alone = one.AppraiseDimension(Bore).Probability!.Worn;
        foreach (var place in new[] { "A2", "B1", "B2", "C1", "C2" })
            one.Reading(Bore, "2.50284 in", place, "M");
        var together = one.AppraiseDimension(Bore).Probability!.Worn;
        Assert.InRange(alone, 0.93, 0.96);
        Assert.Equal(Math.Pow(alone, 6), together, 0.02);
    }

    [Fact]
    public void FormLimit_Exceeded_CountsThoughTheSizeIsGood()
    {
        var engine = new SmallEngine().Gauge("M", "0.05 thou", "0.02 thou").Part("shaft")
            .Dimension(Journal, "2.4990 in", "2.4995 in", wornLeast: "2.4975 in", change: d => d with { Taper = new FormLimit(null, SmallEngine.Q("0.5 thou")) })
            .Reading(Journal, "2.4993 in", "A1", "M").Reading(Journal, "2.4984 in", "B1", "M");
        Assert.Equal(Verdict.BeyondWornLimits, engine.AppraiseDimension(Journal).Verdict);
    }

    [Fact]
    public void RepairSize_MovesTheLimits_AndOldReadingsNoLongerCount()
    {
        var engine = new SmallEngine().Gauge("M", "0.05 thou", "0.02 thou").Part("shaft")
            .Dimension(Journal, "2.4990 in", "2.4995 in", wornLeast: "2.4975 in", change: d => d with { RepairSizes = [new RepairSize("-010", SmallEngine.Q("-10 thou"))] })
            .Reading(Journal, "2.4960 in", "A1", "M");
        Assert.Equal(Verdict.BeyondWornLimits, engine.AppraiseDimension(Journal).Verdict);
        engine.Work("shaft", ["journal"], "-010");
        var between = engine.AppraiseDimension(Journal);
        Assert.Equal(Verdict.NotMeasured, between.Verdict);
        Assert.Single(between.Details.NotCounting);
        engine.Reading(Journal, "2.4892 in", "A1", "M");
        Assert.Equal(Verdict.AsNew, engine.AppraiseDimension(Journal).Verdict);
    }

    /// <summary>fits-schedule worked example: bush worn to 2.5028 with a journal at 2.4981, each inside its own worn limit, the pair not.</summary>
    private static SmallEngine Pair(string bore, string journal, CombiningRule rule = CombiningRule.BothLimitsMustPass) => new SmallEngine()
        .Gauge("B", "0.05 thou", "0.02 thou").Gauge("M", "0.05 thou", "0.02 thou").Document("book", rule).Part("case").Part("shaft")
        .Dimension(Bore, "2.5010 in", "2.5016 in", wornGreatest: "2.5030 in", document: "book")
        .Dimension(Journal, "2.4990 in", "2.4995 in", wornLeast: "2.4975 in", document: "book")
        .Fit("case.running", [(1, Bore), (-1, Journal)], "1.5 thou", "2.6 thou", "4.5 thou", document: "book")
        .Reading(Bore, bore, gauge: "B").Reading(Journal, journal, gauge: "M");

    [Fact]
    public void BothPartsWithinTheirLimits_PairBeyond_IsBeyond()
    {
        var engine = Pair("2.5028 in", "2.4981 in");
        var fit = engine.AppraiseFit("case.running");
        Assert.Equal(4.7e-3 * 0.0254, fit.Estimate!.Value, 1e-9);
        Assert.Equal(Verdict.BeyondWornLimits, fit.Verdict);
        Assert.Equal(Verdict.WithinWornLimits, engine.AppraiseDimension(Bore).Verdict);
    }

    [Fact]
    public void TooClose_IsTooTight() => Assert.Equal(Verdict.TooTight, Pair("2.5004 in", "2.4995 in").AppraiseFit("case.running").Verdict);

    [Theory]
    [InlineData(CombiningRule.BothLimitsMustPass, Verdict.BeyondWornLimits)]
    [InlineData(CombiningRule.ClearanceGoverns, Verdict.WithinWornLimits)]
    [InlineData(CombiningRule.DimensionGoverns, Verdict.BeyondWornLimits)]
    public void BushBeyond_ClearanceWithin_ByTheRuleOfTheEdition(CombiningRule rule, Verdict expected)
    {
        var engine = Pair("2.5034 in", "2.4994 in", rule);
        var fit = engine.AppraiseFit("case.running");
        Assert.Equal(Verdict.WithinWornLimits, fit.Verdict);
        Assert.Equal(expected, fit.Combined);
        Assert.Equal(rule, fit.Rule);
        Assert.Equal(expected, engine.AppraiseDimension(Bore).Combined);
    }

    [Fact]
    public void UnmeasuredTerm_NotMeasured_ValueNull_ExpectedStillStands()
    {
        var fit = new SmallEngine().Part("case").Part("shaft").Dimension(Bore, "2.5010 in", "2.5016 in").Dimension(Journal, "2.4990 in", "2.4995 in")
            .Fit("case.running", [(1, Bore), (-1, Journal)], "1.5 thou", "2.6 thou").Reading(Bore, "2.5013 in").AppraiseFit("case.running");
        Assert.Equal(Verdict.NotMeasured, fit.Verdict);
        Assert.Null(fit.Estimate);
        Assert.Equal(FigureName.Of(Journal), Assert.Single(fit.Unmeasured));
        Assert.NotNull(fit.States[0].Expected);
    }

    [Fact]
    public void NoLeastClearance_NilIsTheHardLimit()
    {
        var engine = new SmallEngine().Gauge("M", "0.05 thou", "0.02 thou").Part("case").Part("shaft").Dimension(Bore).Dimension(Journal)
            .Fit("case.running", [(1, Bore), (-1, Journal)], null, "2.6 thou").Reading(Bore, "2.5000 in", gauge: "M").Reading(Journal, "2.5004 in", gauge: "M");
        Assert.Equal(Verdict.TooTight, engine.AppraiseFit("case.running").Verdict);
    }

    [Fact]
    public void OneGaugeForBoth_ItsErrorCancelsInTheFit()
    {
        var one = Pair("2.5018 in", "2.4981 in").Change(r => r with { Readings = [.. r.Readings.Select(x => x with { Gauge = new GaugeTag("M") })] });
        var two = Pair("2.5018 in", "2.4981 in");
        double shared = one.AppraiseFit("case.running").Estimate!.StandardUncertainty, apart = two.AppraiseFit("case.running").Estimate!.StandardUncertainty;
        Assert.True(shared < apart / 1.5, $"Measured with one gauge u = {shared:G3} m, with two {apart:G3} m.");
        var bore = one.AppraiseDimension(Bore).Estimate!;
        var journal = one.AppraiseDimension(Journal).Estimate!;
        Assert.True(bore.CovarianceWith(journal) > 0);
        var u2 = (bore.StandardUncertainty * bore.StandardUncertainty) + (journal.StandardUncertainty * journal.StandardUncertainty) - (2 * bore.CovarianceWith(journal));
        Assert.Equal(Math.Sqrt(u2), shared, 1e-12);
    }

    [Fact]
    public void AcceptedOnJudgement_ClearsItAndStaysVisible()
    {
        var engine = WithBore("2.5033 in");
        Assert.Single(engine.Appraise().InTheWay);
        engine.Change(r => r with
        {
            Decisions = [new Decision(FactId.New(), engine.Now(), "owner", DecisionChoice.Keep) { Figure = FigureName.Of(Bore), Basis = DecisionBasis.AcceptedOnJudgement, Why = "stand use only" }],
        });
        var appraisal = engine.Appraise();
        Assert.Empty(appraisal.InTheWay);
        Assert.Equal("stand use only", Assert.Single(appraisal.Accepted).Decision!.Why);
    }

    [Fact]
    public void Blanked_StandsInNobodysWay()
    {
        var engine = WithBore("2.5033 in").Change(r => r with { Parts = [.. r.Parts.Select(p => p with { Intent = Record.Parts.PartIntent.Blanked })] });
        Assert.Empty(engine.Appraise().InTheWay);
    }

    [Fact]
    public void PairGoodAndPartBeyond_BothMustPass_StandsInTheWayOnce()
    {
        var engine = Pair("2.5034 in", "2.4994 in");
        var matter = Assert.Single(engine.Appraise().InTheWay);
        Assert.Equal(FigureName.Of(Bore), matter.Figure);
        engine.Change(r => r with
        {
            Decisions = [new Decision(FactId.New(), engine.Now(), "owner", DecisionChoice.Keep) { Figure = FigureName.Of(Bore), Basis = DecisionBasis.AcceptedOnJudgement, Why = "stand use only" }],
        });
        Assert.Empty(engine.Appraise().InTheWay);
    }

    [Fact]
    public void PairTooTightAndPartBeyond_BothStandInTheWay()
    {
        // The shaft is past its new size at the unworn end and the bore past its worn one at the other: each says its own.
        var engine = Pair("2.5004 in", "2.4995 in").Reading(Journal, "2.4960 in", "B1", "M");
        var figures = engine.Appraise().InTheWay.Select(m => m.Figure!.Value.ToString()).ToArray();
        Assert.Contains("case.running", figures);
        Assert.Contains(Journal, figures);
    }

    [Theory]
    [InlineData(CombiningRule.BothLimitsMustPass, 1)]
    [InlineData(CombiningRule.ClearanceGoverns, 0)]
    [InlineData(CombiningRule.DimensionGoverns, 1)]
    public void WornPartInAGoodPair_StandsInTheWay_ByTheRuleOfTheEdition(CombiningRule rule, int expected) =>
        Assert.Equal(expected, Pair("2.5034 in", "2.4994 in", rule).Appraise().InTheWay.Count);

    [Fact]
    public void FormGood_SizePastTheUnwornEnd_IsOffSize()
    {
        var engine = new SmallEngine().Gauge("M", "0.05 thou", "0.02 thou").Part("shaft")
            .Dimension(Journal, "2.4990 in", "2.4995 in", wornLeast: "2.4975 in", change: d => d with { Taper = new FormLimit(null, SmallEngine.Q("0.5 thou")) })
            .Reading(Journal, "2.5000 in", "A1", "M").Reading(Journal, "2.5001 in", "B1", "M");
        Assert.Equal(Verdict.OffSize, engine.AppraiseDimension(Journal).Verdict);
    }

    [Fact]
    public void JudgementOnThePiece_DoesNotClearWhatNoLongerStands()
    {
        var engine = WithBore("2.5013 in");
        var reading = engine.Record.Readings[0];
        engine.Change(r => r with { Decisions = [new Decision(FactId.New(), engine.Now(), "owner", DecisionChoice.Keep) { Figure = FigureName.Of(Bore), Piece = new PieceTag("case"), ReliesOn = [reading.Id] }] });
        engine.Work("case", ["bore"]).Reading(Bore, "2.5013 in", gauge: "M");
        engine.Change(r => r with { Decisions = [.. r.Decisions, new Decision(FactId.New(), engine.Now(), "owner", DecisionChoice.Keep) { Piece = new PieceTag("case"), Basis = DecisionBasis.AcceptedOnJudgement, Why = "stand use only" }] });
        var matter = Assert.Single(engine.Appraise().InTheWay);
        Assert.Equal(MatterKind.NoLongerStands, matter.Kind);
    }
}
