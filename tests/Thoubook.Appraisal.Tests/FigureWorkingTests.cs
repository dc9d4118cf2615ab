using Thoubook.Mechanics.Tests.Sums;
using Thoubook.Record.Measures;

namespace Thoubook.Appraisal.Tests;

/// <summary>Every formula that a figure's working prints, worked out again from the inputs it prints, gives the value it prints.</summary>
public sealed class FigureWorkingTests
{
    private static SmallEngine Engine() => new SmallEngine().Gauge("M", "0.1 thou", "0.05 thou").Gauge("B", "0.12 thou", "0.06 thou")
        .Part("case", "cast aluminium").Part("shaft")
        .Dimension("case.bore", "2.5010 in", "2.5016 in", wornGreatest: "2.5030 in")
        .Dimension("shaft.journal", "2.4990 in", "2.4995 in", wornLeast: "2.4975 in")
        .Fit("case.running", [(1, "case.bore"), (-1, "shaft.journal")], "1.5 thou", "2.6 thou", "4.5 thou")
        .Reading("case.bore", "2.5016 in", "A1", "B", "26 °C").Reading("case.bore", "2.5018 in", "A1", "B", "26 °C").Reading("case.bore", "2.5014 in", "B1", "B", "24 °C")
        .Reading("shaft.journal", "2.4992 in", "A1", "M");

    [Theory]
    [InlineData("case.bore")]
    [InlineData("shaft.journal")]
    [InlineData("case.running")]
    public void EveryFormula_GivesItsPrintedValue(string figure)
    {
        var engine = Engine();
        var appraised = engine.Appraise()[Record.FigureName.Of(figure)]!;
        var working = FigureWorking.Of(appraised, engine.Record);
        var formulas = working.Lines.Where(l => l.Formula.Length > 0).ToList();
        Assert.True(formulas.Count >= 2);
        foreach (var line in formulas)
        {
            var again = FormulaEvaluator.Evaluate(line.Formula, line.Inputs).Single;
            Assert.Equal(line.Values[0], again, 1e-9 * Math.Max(1e-3, Math.Abs(line.Values[0])));
        }

        Assert.Equal(appraised.Estimate!.Value, working.Lines.Single(l => l.Symbol == "d").Values[0], 1e-14);
        Assert.Equal(appraised.Estimate.StandardUncertainty, working.Lines.Single(l => l.Symbol == "u").Values[0], 1e-16);
    }

    [Fact]
    public void Working_LeadsDownToTheReadingsAndTheGauge()
    {
        var engine = Engine();
        var working = FigureWorking.Of(engine.AppraiseDimension("case.bore"), engine.Record);
        Assert.Equal(3, working.Lines.Count(l => l.What.StartsWith("read at", StringComparison.Ordinal)));
        Assert.Contains(working.Lines, l => l.Source.Contains("2.5018 in, B, bench", StringComparison.Ordinal));
        Assert.Contains(working.Lines, l => l.What.EndsWith(": B", StringComparison.Ordinal));
    }

    [Fact]
    public void TaperPastItsLimit_IsWhatTheReasonSays()
    {
        var reason = new SmallEngine().Gauge("M", "0.05 thou", "0.02 thou").Part("shaft")
            .Dimension("shaft.journal", "2.4990 in", "2.4995 in", wornLeast: "2.4975 in", change: d => d with { Taper = new FormLimit(null, SmallEngine.Q("0.5 thou")) })
            .Reading("shaft.journal", "2.4993 in", "A1", "M").Reading("shaft.journal", "2.4984 in", "B1", "M").AppraiseDimension("shaft.journal").Reason;
        Assert.StartsWith("Its taper, 0.90 thou between B1 and A1, is past the 0.50 thou allowed", reason, StringComparison.Ordinal);
    }

    [Fact]
    public void AdviceForALoad_SpeaksInTheUnitOfTheLoad()
    {
        var engine = new SmallEngine().Part("spring").Dimension("spring.load", "40 lbf", "44 lbf", wornLeast: "36 lbf", change: d => d with { Kind = Record.Quantities.QuantityKind.Force })
            .Reading("spring.load", "36.1 lbf");
        var advice = engine.AppraiseDimension("spring.load").Advice;
        Assert.NotNull(advice);
        Assert.DoesNotContain("thou", advice.Text, StringComparison.Ordinal);
    }
}
