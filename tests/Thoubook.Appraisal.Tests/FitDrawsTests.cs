using Thoubook.Record;
using Thoubook.Record.Measures;

namespace Thoubook.Appraisal.Tests;

/// <summary>Random draws against the closed form: two ways of thinking that rarely share a mistake.</summary>
public sealed class FitDrawsTests
{
    private static FitAppraisal Pair(string bore, string journal, bool oneGauge = false, string gauge = "0.15 thou") => new SmallEngine()
        .Gauge("B", gauge, "0.05 thou").Gauge("M", gauge, "0.05 thou").Part("case").Part("shaft")
        .Dimension("case.bore", "2.5010 in", "2.5016 in", wornGreatest: "2.5030 in").Dimension("shaft.journal", "2.4990 in", "2.4995 in", wornLeast: "2.4975 in")
        .Fit("case.running", [(1, "case.bore"), (-1, "shaft.journal")], "1.5 thou", "2.6 thou", "4.5 thou")
        .Reading("case.bore", bore, "A1", "B").Reading("case.bore", "2.5013 in", "B1", "B").Reading("shaft.journal", journal, "A1", oneGauge ? "B" : "M")
        .AppraiseFit("case.running");

    [Theory]
    [InlineData("2.5014 in", "2.4992 in", false)]
    [InlineData("2.5014 in", "2.4992 in", true)]
    [InlineData("2.5030 in", "2.4985 in", false)]
    [InlineData("2.5016 in", "2.4999 in", true)]
    public void Draws_AgreeWithTheClosedForm(string bore, string journal, bool oneGauge)
    {
        var fit = Pair(bore, journal, oneGauge);
        var drawn = FitDraws.Of(fit);
        var u = fit.Estimate!.StandardUncertainty;

        // Five standard errors of 100,000 draws.
        Assert.Equal(fit.Estimate.Value, drawn.Mean, 5 * u / Math.Sqrt(FitDraws.UsualDraws));
        Assert.Equal(u, drawn.StandardDeviation, 5 * u / Math.Sqrt(2.0 * FitDraws.UsualDraws));
        Assert.Equal(fit.Probability!.New, drawn.ProbabilityNew, 0.008);
        Assert.Equal(fit.Probability.Worn, drawn.ProbabilityWorn, 0.008);
    }

    /// <summary>A doubt as wide as the tolerance: the closest may be past one limit and the widest past the other, and they move together.</summary>
    [Fact]
    public void PoorGauge_ClosestAndWidestTogether_AgreeWithTheClosedForm()
    {
        var fit = Pair("2.5018 in", "2.4994 in", gauge: "0.8 thou");
        Assert.True(fit.Greatest!.Value - fit.Least!.Value > 0.4e-3 * 0.0254);
        Assert.Equal(FitDraws.Of(fit).ProbabilityNew, fit.Probability!.New, 0.008);
    }

    [Fact]
    public void SameSeed_SameAnswer() => Assert.Equal(FitDraws.Of(Pair("2.5014 in", "2.4992 in"), seed: 7), FitDraws.Of(Pair("2.5014 in", "2.4992 in"), seed: 7));

    [Fact]
    public void NotMeasured_IsRefused()
    {
        var fit = new SmallEngine().Part("case").Dimension("case.bore", "1 in", "1.1 in").Fit("case.f", [(1, "case.bore")], "0 in", "1 in").AppraiseFit("case.f");
        Assert.Throws<ArgumentException>(() => FitDraws.Of(fit));
    }
}
