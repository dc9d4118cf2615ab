using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Store.Tests;

public sealed class ClosingTests
{
    [Theory]
    [InlineData("by lamp")]
    [InlineData(null)]
    public void Write_Load_GivesEverythingBack(string? note)
    {
        using var bench = new Bench();
        using var store = bench.Open();
        var record = ClosedUp.Over(Bench.Pump(), note);

        Bench.Ok(store.Write(Change.Whole(record, "owner")));

        Assert.Equal(RecordText.Of(record), RecordText.Of(Bench.Ok(store.Load(Bench.Engine))));
        Assert.True(store.Verify().IsSound, string.Join('\n', store.Verify().Problems));
        Assert.True(Bench.Ok(store.Write(Change.Whole(record, "owner"))).IsNothing);
    }

    [Fact]
    public void Write_AStepEdited_LeavesTheOthers_AndAClashShowsBoth()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        Bench.Ok(store.Write(Change.Whole(ClosedUp.Over(Bench.Pump()), "owner")));
        var step = Bench.Ok(store.Load(Bench.Engine)).Steps[0];

        Assert.Equal(1, Bench.Ok(store.Write(new Change(Bench.Engine, "bench") { Steps = [step with { People = 3, After = [] }] })).Edited);

        var now = Bench.Ok(store.Load(Bench.Engine)).Steps;
        Assert.Equal((2, 3, 0, 2), (now[0].Revision, now[0].People, now[0].After.Count, now[0].Holds.Count));
        Assert.Equal((1, 2), (now[1].Revision, now.Count));
        var clash = Bench.Refused(store.Write(new Change(Bench.Engine, "owner") { Steps = [step with { People = 1 }] }));
        Assert.Equal("revision-clash", clash.Code);
        Assert.Contains("people: 3", clash.Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_ASignatureOfAStepThatIsNotThere_IsRefused()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        Bench.Ok(store.Write(Change.Whole(ClosedUp.Over(Bench.Pump()), "owner")));

        var problem = Bench.Refused(store.Write(new Change(Bench.Engine, "owner") { Facts = [new Signature(FactId.New(), Bench.Morning, "owner", new StepName("cover-no"))] }));

        Assert.Equal("unknown-step", problem.Code);
        Assert.Contains("cover-on", problem.DoThis, StringComparison.Ordinal);
    }

    [Fact]
    public void ADeparture_TravelsWithItsPiece()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        Bench.Ok(store.Write(Change.Whole(ClosedUp.Over(Bench.Pump()), "owner")));
        var other = Bench.Pump("Other pump", "P-9");

        Bench.Ok(store.Write(Change.Whole(other, "owner")));
        Assert.Empty(Bench.Ok(store.Load(other.Engine.Name)).Departures);
        Bench.Ok(store.Write(new Change(other.Engine.Name, "owner") { Facts = [new Chosen(FactId.New(), Bench.Morning, "owner", new PieceTag("P-1"), Bench.Body)] }));

        Assert.Equal("wire", Assert.Single(Bench.Ok(store.Load(other.Engine.Name)).Departures).What);
    }
}
