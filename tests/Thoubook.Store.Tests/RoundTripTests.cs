using CsCheck;
using Thoubook.Record;

namespace Thoubook.Store.Tests;

public class RoundTripTests
{
    [Fact]
    public void Write_ThenLoad_GivesTheRecordBack()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        var pump = AppendOnlyTests.FullPump();

        Bench.Ok(store.Write(Change.Whole(pump, "owner")));

        Assert.Equal(RecordText.Of(pump), RecordText.Of(Bench.Ok(store.Load(Bench.Engine))));
    }

    [Fact]
    public void Write_AnyRecord_ThenLoad_GivesItBack() => AnyRecord.Generator.Sample(
        record =>
        {
            using var bench = new Bench();
            using var store = bench.Open();
            Bench.Ok(store.Write(Change.Whole(record, "owner")));
            var loaded = Bench.Ok(store.Load(record.Engine.Name));
            Assert.Equal(RecordText.Of(record), RecordText.Of(loaded));

            var again = Bench.Ok(store.Write(Change.Whole(loaded, "owner")));
            Assert.True(again.IsNothing);
            Assert.True(store.Verify().IsSound);
        },
        iter: 60,
        threads: 1);

    [Fact]
    public void Write_Again_ChangesNothing()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        var pump = AppendOnlyTests.FullPump();
        var first = Bench.Ok(store.Write(Change.Whole(pump, "owner")));

        var second = Bench.Ok(store.Write(Change.Whole(pump, "owner")));

        Assert.True(second.IsNothing);
        Assert.Equal(pump.Facts.Count(), second.FactsThereBefore);
        Assert.Equal(first.Sequence, second.Sequence);
        Assert.Equal(first.Sequence, store.Sequence());
    }

    [Fact]
    public void Sequence_IsOneForEachEntry_WithoutGaps()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        var pump = AppendOnlyTests.FullPump();

        var changed = Bench.Ok(store.Write(Change.Whole(pump, "owner")));

        Assert.Equal(changed.Added + changed.FactsAdded, changed.Sequence);
        Assert.Equal(changed.Facts.Count, changed.Facts.Select(f => f.Sequence).Distinct().Count());
    }
}
