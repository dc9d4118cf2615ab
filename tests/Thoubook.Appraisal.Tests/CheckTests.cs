using Thoubook.Appraisal.Verdicts;
using Thoubook.Record;
using Thoubook.Record.Measures;

namespace Thoubook.Appraisal.Tests;

/// <summary>Fits measured as such, on parts put together, and what voids them.</summary>
public sealed class CheckTests
{
    private static SmallEngine Pump() => new SmallEngine().Part("body", "cast aluminium").Part("gear").Part("joint", "sealing film")
        .Dimension("body.depth", "1.2530 in", "1.2540 in").Dimension("gear.width", "1.2505 in", "1.2515 in").Dimension("joint.thickness", "0 thou", "0.3 thou")
        .Fit("body.float", [(1, "body.depth"), (-1, "gear.width"), (1, "joint.thickness")], "1.5 thou", "3.5 thou", "6 thou", FitKind.EndFloat);

    [Fact]
    public void Feeler_OnPartsPutTogether_GivesTheFit()
    {
        var fit = Pump().Check("body.float", "2.5 thou").AppraiseFit("body.float");
        Assert.Equal(FitBasis.Check, fit.Basis);
        Assert.Equal(2.5e-3 * 0.0254, fit.Estimate!.Value, 1e-10);
        Assert.NotEqual(Verdict.NotMeasured, fit.Verdict);
    }

    [Fact]
    public void LappedAfterwards_TheCheckNoLongerStands_AndTheFitIsNotMeasured()
    {
        var engine = Pump().Check("body.float", "2.5 thou").Work("body", ["depth"]);
        var fit = engine.AppraiseFit("body.float");
        Assert.Equal(Verdict.NotMeasured, fit.Verdict);
        Assert.False(fit.Checks[0].Standing.Stands);
        Assert.IsType<Work>(fit.Checks[0].Standing.BrokenBy);
        Assert.Contains(engine.Appraise().InTheWay, m => m.Kind == MatterKind.NoLongerStands);
    }

    [Fact]
    public void AnotherPieceChosen_TheCheckNoLongerStands()
    {
        var engine = Pump().Check("body.float", "2.5 thou");
        engine.Change(r => r with
        {
            Pieces = [.. r.Pieces, new Record.Pieces.Piece(new PieceTag("new gear")) { Origin = Record.Pieces.PieceOrigin.NewMade }],
            Choices = [.. r.Choices, new Chosen(FactId.New(), engine.Now(), "owner", new PieceTag("new gear"), PartName.Of("gear"))],
        });
        var standing = engine.AppraiseFit("body.float").Checks[0].Standing;
        Assert.False(standing.Stands);
        Assert.Contains("new gear", standing.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void DimensionsAndCheckDisagree_IsSaid()
    {
        var engine = Pump().Gauge("M", "0.05 thou", "0.02 thou").Reading("body.depth", "1.2535 in", gauge: "M").Reading("gear.width", "1.2510 in", gauge: "M").Reading("joint.thickness", "0.1 thou", gauge: "M")
            .Check("body.float", "9 thou");
        var fit = engine.AppraiseFit("body.float");
        Assert.Equal(FitBasis.Dimensions, fit.Basis);
        Assert.Contains(fit.Cautions, c => c.Code == "check-disagrees");
    }
}
