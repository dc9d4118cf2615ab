using Thoubook.Record;

namespace Thoubook.Store.Tests;

public class RoundTripTests
{
    [Fact]
    public void Write_ThenLoad_GivesTheRecordBack()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        var pump = Bench.Pump() with { Readings = [Bench.Reading(1.2535)] };

        Bench.Ok(store.Write(Change.Whole(pump, "owner")));

        Assert.Equal(RecordText.Of(pump), RecordText.Of(Bench.Ok(store.Load(Bench.Engine))));
    }

    [Fact]
    public void Write_Again_ChangesNothing()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        var pump = Bench.Pump() with { Readings = [Bench.Reading(1.2535)] };
        var first = Bench.Ok(store.Write(Change.Whole(pump, "owner")));

        var second = Bench.Ok(store.Write(Change.Whole(pump, "owner")));

        Assert.True(second.IsNothing);
        Assert.Equal(first.Sequence, second.Sequence);
        Assert.Equal(first.Sequence, store.Sequence());
    }
}
