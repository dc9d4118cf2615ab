using System.Text.RegularExpressions;
using Thoubook.Record;

namespace Thoubook.Store.Tests;

public partial class KilledTests
{
    private const int Readings = 500;

    [Fact]
    public void Killed_AtAnyMoment_EveryAcknowledgedReadingIsThere()
    {
        var template = WriterProcess.Template();
        var random = new Random(20261101);
        for (var kill = 0; kill < 20; kill++)
        {
            using var bench = new Bench();
            File.WriteAllBytes(bench.Database, template);
            var after = random.Next(Readings);
            var acknowledged = new List<string>();
            using (var writer = WriterProcess.Start(bench, Readings))
            {
                while (acknowledged.Count < after && writer.StandardOutput.ReadLine() is { } id)
                    acknowledged.Add(id);
                Thread.SpinWait(random.Next(200_000));
                writer.Kill();
                // What it said before it died counts as well, unless it died in the middle of saying it.
                var rest = writer.StandardOutput.ReadToEnd();
                acknowledged.AddRange(rest[..(rest.LastIndexOf('\n') + 1)].Split('\n', StringSplitOptions.RemoveEmptyEntries));
                writer.WaitForExit();
            }

            Assert.InRange(acknowledged.Count, after, Readings);
            using var store = bench.Open(WhenMissing.Refuse);
            var stored = Bench.Ok(store.Load(Bench.Engine)).Readings.Select(r => r.Id.ToString()).ToHashSet(StringComparer.Ordinal);
            Assert.Empty(acknowledged.Except(stored));
            Assert.InRange(stored.Count, acknowledged.Count, acknowledged.Count + 1);
            Assert.Empty(store.Verify().Problems);
        }
    }

    /// <summary>A kill cannot show a flush that is missing, since the system keeps what was written: so the call itself is watched.</summary>
    [Fact]
    [Trait("needs", "strace")]
    public void Acknowledged_OnlyAfterTheDiskWasMadeToKeepIt()
    {
        const int Few = 40;
        using var bench = new Bench();
        File.WriteAllBytes(bench.Database, WriterProcess.Template());
        var log = Path.Combine(bench.Folder, "calls");
        using (var writer = WriterProcess.Start(bench, Few, "strace", "-f", "-e", "trace=fdatasync,fsync,write", "-o", log))
        {
            writer.StandardOutput.ReadToEnd();
            writer.WaitForExit();
            Assert.Equal(0, writer.ExitCode);
        }

        var (synced, acknowledged) = (0, 0);
        foreach (var call in File.ReadLines(log))
        {
            if (SyncDone().IsMatch(call))
                synced++;
            if (!Acknowledgement().IsMatch(call))
                continue;
            acknowledged++;
            Assert.True(synced > 0, $"Reading {acknowledged} was acknowledged before any sync of its own: {call}");
            synced = 0;
        }

        Assert.Equal(Few, acknowledged);
    }

    [Fact]
    public void TwoPrograms_WritingAtOnce_LoseNothing_AndNumberEachEntryOnce()
    {
        const int Each = 100;
        using var bench = new Bench();
        File.WriteAllBytes(bench.Database, WriterProcess.Template());
        using var store = bench.Open(WhenMissing.Refuse);
        var before = store.Sequence();

        using var one = WriterProcess.Start(bench, Each);
        using var two = WriterProcess.Start(bench, Each);
        for (var i = 0; i < Each; i++)
            Bench.Ok(store.Write(new Change(Bench.Engine, "owner") { Facts = [Bench.Reading(1.2535)] }));
        foreach (var writer in new[] { one, two })
        {
            writer.StandardOutput.ReadToEnd();
            writer.WaitForExit();
            Assert.Equal(0, writer.ExitCode);
        }

        var record = Bench.Ok(store.Load(Bench.Engine));
        Assert.Equal(3 * Each, record.Readings.Count);
        Assert.Equal(Enumerable.Range(1, 3 * Each).Select(i => before + i), record.Readings.Select(r => r.Sequence));
        Assert.Equal(before + 3 * Each, store.Sequence());
        Assert.Empty(store.Verify().Problems);
    }

    [Fact]
    public void Write_WhileAnotherHoldsTheDatabase_IsRefusedInWords_AndNothingIsWritten()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        Bench.Ok(store.Write(Change.Whole(Bench.Pump(), "owner")));
        using var other = Connections.Open(bench.Database, Access.Write);
        using (other.BeginTransaction(deferred: false))
        {
            Assert.Equal("workshop-busy", Bench.Refused(store.Write(new Change(Bench.Engine, "owner") { Facts = [Bench.Reading(1.2535)] })).Code);
            Assert.Empty(Bench.Ok(store.Load(Bench.Engine)).Readings);
        }

        Bench.Ok(store.Write(new Change(Bench.Engine, "owner") { Facts = [Bench.Reading(1.2535)] }));
    }

    [GeneratedRegex(@"(fdatasync|fsync)(\(\d+\)| resumed>\)) += 0", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex SyncDone();

    [GeneratedRegex(@"write\(\d+, ""[0-9a-f]{8}-[0-9a-f]{4}-", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Acknowledgement();
}
