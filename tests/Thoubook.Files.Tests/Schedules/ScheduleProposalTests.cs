using Thoubook.Files.Schedules;
using Thoubook.Record;
using Thoubook.Record.Measures;

namespace Thoubook.Files.Tests.Schedules;

public class ScheduleProposalTests
{
    /// <summary>All figures invented.</summary>
    private const string Table = """
        Ref,Description,New (in),Worn (in)
        ,CRANKSHAFT,,
        12,Main bearing bore,2.5010-2.5016,2.5030
        ,Main journal diameter,2.4990-2.4995,2.4975
        ,Main bearing clearance,.0015-.0026,.0045
        13,End float,.004-.008,.012
        14,Thrust washer thickness,.120-.122,Nil
        ,Journal ovality,,.001
        """;

    private static ScheduleProposal Proposal(params string[] codes) =>
        ScheduleProposal.From(Understood.Read(Table, Understood.Confirming(codes)), new DocumentName("overhaul-book"));

    [Fact]
    public void Rows_BecomeDimensionsAndFits_NamedByTheirWords_CitingTheirLine()
    {
        var proposal = Proposal();

        Assert.Equal(["crankshaft"], proposal.Parts.Select(part => part.Name.ToString()));
        var bore = Assert.Single(proposal.Dimensions, dimension => dimension.Name.ToString() == "crankshaft.main-bearing-bore");
        Assert.Equal(2.5030 * 0.0254, bore.LimitSets[0].Limits.WornGreatest!.Si, 1e-12);
        Assert.Equal("2.503 in", bore.LimitSets[0].Limits.WornGreatest!.Text);
        Assert.Equal("line 3, ref. 12", bore.LimitSets[0].Source!.Row);
        var floats = Assert.Single(proposal.Fits, fit => fit.Name.ToString() == "crankshaft.end-float");
        Assert.Equal((FitKind.EndFloat, Side.Total), (floats.FitKind, floats.Side));
    }

    [Fact]
    public void HoleShaftAndClearance_AreLinked()
    {
        var clearance = Assert.Single(Proposal().Fits, fit => fit.FitKind == FitKind.Clearance);

        Assert.Equal(
            [new GapTerm(1, FigureName.Of("crankshaft.main-bearing-bore")), new GapTerm(-1, FigureName.Of("crankshaft.main-journal-diameter"))],
            clearance.Gap);
        Assert.Equal(Side.Diametral, clearance.Side);
    }

    [Fact]
    public void RowThatAsks_IsLeftOut_UntilItIsAnswered()
    {
        Assert.Contains(Proposal().LeftOut, row => row.Row == 7);
        var code = Understood.Read(Table).Rows[6].Ask!.Code;

        var washer = Assert.Single(Proposal(code).Dimensions, dimension => dimension.Name.ToString() == "crankshaft.thrust-washer-thickness");

        Assert.Equal(WearAllowance.NoWearPermitted, washer.LimitSets[0].Limits.Wear);
        Assert.False(washer.LimitSets[0].Limits.HasWorn);
    }

    [Fact]
    public void NothingThatAsks_IsEverProposed()
    {
        foreach (var name in new[] { "s1-diesel-v12-stacked-units", "s2-camshaft-desired-clearance", "s3-flat-four-millimetres", "s4-rules-per-inch" })
        {
            var reading = Understood.Read(ReferenceFiles.Csv(name));
            var proposal = ScheduleProposal.From(reading, new DocumentName("manual"));
            var asked = reading.Rows.Where(row => row.Ask is not null).Select(row => $"line {row.Row}").ToHashSet();

            Assert.All(
                proposal.Dimensions.SelectMany(dimension => dimension.LimitSets).Concat(proposal.Fits.SelectMany(fit => fit.LimitSets)),
                set => Assert.DoesNotContain(set.Source!.Row!.Split(',')[0], asked));
            Assert.Equal(proposal.Dimensions.Length + proposal.Fits.Length, proposal.Dimensions.Select(d => d.Name).Concat(proposal.Fits.Select(f => f.Name)).Distinct().Count());
        }
    }
}
