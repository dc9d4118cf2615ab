using Thoubook.Appraisal.Verdicts;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal.Tests;

/// <summary>Advice is followed in simulation: the truth is drawn from what is known, the readings asked for are taken, and the verdict must be settled.</summary>
public sealed class AdviceTests
{
    private const string Bore = "case.bore";
    private const double Inch = 0.0254;
    private const double Thou = 25.4e-6;

    [Theory]
    [InlineData(2.50290, "0.005 thou", 0.12)]   // the scatter of the hand is the doubt: more readings will do
    [InlineData(2.50285, "0.03 thou", 0.15)]
    [InlineData(2.50295, "0.15 thou", 0.02)]    // the gauge is the doubt: only a better one will do
    [InlineData(2.50310, "0.15 thou", 0.05)]
    public void FollowingTheAdvice_SettlesTheVerdict_InEightOfTenDraws(double read, string gaugeUncertainty, double repeatThou)
    {
        var asked = Engine(read, gaugeUncertainty, repeatThou).AppraiseDimension(Bore);
        Assert.Equal(Verdict.TooCloseToCall, asked.Verdict);
        var advice = asked.Advice;
        Assert.NotNull(advice);

        var random = new Random(20260301);
        var gauge = SmallEngine.Q(gaugeUncertainty).Si;
        var repeat = repeatThou * Thou;
        const int Draws = 400;
        var settled = 0;
        for (var draw = 0; draw < Draws; draw++)
        {
            // What may be true, given the reading: its own error is one draw of the gauge's and one of the hand's.
            var gaugeError = gauge * Normal(random);
            var truth = (read * Inch) - gaugeError - (repeat * Normal(random));
            var engine = Engine(read, gaugeUncertainty, repeatThou);
            if (advice.MoreReadings is { } more)
            {
                for (var i = 0; i < more; i++)
                    engine.Reading(Bore, Metres(truth + gaugeError + (repeat * Normal(random))), gauge: "M");
            }
            else
            {
                // Once with the better gauge; what was read before with the worse one is struck out, as one does.
                var better = advice.GaugeUncertainty!.Value;
                engine.Gauge("better", $"{better * 1e6:R} µm", "0.0001 µm").StrikeOut(engine.Record.Readings[0].Id, "read again with a better gauge")
                    .Reading(Bore, Metres(truth + (better * Normal(random))), gauge: "better");
            }

            if (engine.AppraiseDimension(Bore).Verdict is not Verdict.TooCloseToCall)
                settled++;
        }

        Assert.True(settled >= 0.8 * Draws, $"{settled} of {Draws} settled by: {advice.Text}");
    }

    [Fact]
    public void TooClose_FitNamesTheTermThatTheDoubtOwesMostTo()
    {
        var fit = new SmallEngine().Gauge("good", "0.02 thou", "0.01 thou").Gauge("poor", "0.2 thou", "0.01 thou").Part("case").Part("shaft")
            .Dimension(Bore, "2.5010 in", "2.5016 in").Dimension("shaft.journal", "2.4990 in", "2.4995 in")
            .Fit("case.running", [(1, Bore), (-1, "shaft.journal")], "1.5 thou", "2.6 thou", "4.5 thou")
            .Reading(Bore, "2.5035 in", gauge: "poor").Reading("shaft.journal", "2.4990 in", gauge: "good").AppraiseFit("case.running");
        Assert.Equal(Verdict.TooCloseToCall, fit.Verdict);
        Assert.Equal(Bore, fit.Advice!.ReadAgain.ToString());
    }

    private static SmallEngine Engine(double read, string gaugeUncertainty, double repeatThou) => new SmallEngine()
        .Gauge("M", gaugeUncertainty, $"{repeatThou} thou").Part("case")
        .Dimension(Bore, "2.5010 in", "2.5016 in", wornGreatest: "2.5030 in").Reading(Bore, $"{read:0.00000} in", gauge: "M");

    private static string Metres(double si) => $"{si / Inch:0.00000000} in";

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
