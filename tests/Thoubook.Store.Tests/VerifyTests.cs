using Microsoft.Data.Sqlite;

namespace Thoubook.Store.Tests;

public class VerifyTests
{
    [Theory]
    [InlineData("DROP TRIGGER reading_is_never_changed", "reading_is_never_changed")]
    [InlineData("DROP TRIGGER entry_is_never_deleted; PRAGMA foreign_keys = OFF; DELETE FROM entry WHERE sequence = 3", "Entry 3 is missing")]
    [InlineData("DROP TRIGGER reading_is_never_deleted; DELETE FROM reading", "what it says is missing")]
    [InlineData("DROP TRIGGER reading_is_never_changed; UPDATE reading SET value_unit = 'cubit'", "cubit")]
    [InlineData("UPDATE figure SET side = 'sideways'", "sideways")]
    [InlineData("PRAGMA foreign_keys = OFF; DELETE FROM gauge", "refers to gauge")]
    [InlineData("UPDATE engine SET name_key = 'ELSE'", "not found by its name")]
    public void Verify_FindsWhatSomebodyDidToTheDatabase(string sql, string said)
    {
        using var bench = new Bench();
        using var store = bench.Open();
        Bench.Ok(store.Write(Change.Whole(AppendOnlyTests.FullPump(), "owner")));
        Assert.True(store.Verify().IsSound);

        using (var connection = new SqliteConnection($"Data Source={bench.Database};Pooling=False;Foreign Keys=False"))
        {
            connection.Open();
            connection.Do(sql);
        }

        Assert.Contains(store.Verify().Problems, p => p.Contains(said, StringComparison.Ordinal));
    }

    [Fact]
    public void Verify_FindsAFileThatIsNotWhatItWas()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        var folder = Directory.CreateDirectory(Path.Combine(bench.Folder, "files")).FullName;
        File.WriteAllText(Path.Combine(folder, "2c26b46b68ffc68ff99b453c1d30413413422d706483bfa0f98a5e886266e7ae.txt"), "foo");
        Assert.Equal((true, 1), (store.Verify().IsSound, store.Verify().Files));

        File.WriteAllText(Path.Combine(folder, "2c26b46b68ffc68ff99b453c1d30413413422d706483bfa0f98a5e886266e7ae.txt"), "bar");

        Assert.Contains("another hash", Assert.Single(store.Verify().Problems), StringComparison.Ordinal);
    }

    [Fact]
    public void Backup_TakenWhileOthersWrite_IsRestored()
    {
        using var bench = new Bench();
        using var elsewhere = new Bench();
        using var store = bench.Open();
        Bench.Ok(store.Write(Change.Whole(Bench.Pump(), "owner")));
        var backup = Path.Combine(elsewhere.Folder, "copy.db");
        var (written, stopping) = (0, false);
        var writer = new Thread(() =>
        {
            while (!Volatile.Read(ref stopping))
            {
                Bench.Ok(store.Write(new Change(Bench.Engine, "bench") { Facts = [Bench.Reading(1.2535)] }));
                Interlocked.Increment(ref written);
            }
        });
        writer.Start();
        while (Volatile.Read(ref written) < 20)
            Thread.Sleep(1);
        var acknowledged = Volatile.Read(ref written);

        Bench.Ok(store.Backup(backup));
        Volatile.Write(ref stopping, true);
        writer.Join();

        var folder = Bench.Ok(WorkshopStore.Restore(backup, Path.Combine(elsewhere.Folder, "restored")));
        using var restored = Bench.Ok(WorkshopStore.Open(folder, WhenMissing.Refuse, NodaTime.SystemClock.Instance));
        Assert.True(restored.Verify().IsSound);
        Assert.InRange(Bench.Ok(restored.Load(Bench.Engine)).Readings.Count, acknowledged, written);
        Bench.Ok(restored.Write(new Change(Bench.Engine, "bench") { Facts = [Bench.Reading(1.2536)] }));

        Assert.Equal("backup-there", Bench.Refused(store.Backup(backup)).Code);
        Assert.Equal("workshop-there", Bench.Refused(WorkshopStore.Restore(backup, folder)).Code);
    }

    [Fact]
    public void Restore_FromSomethingElse_IsRefused()
    {
        using var bench = new Bench();
        var letter = Path.Combine(bench.Folder, "letter.db");
        File.WriteAllText(letter, "dear sir, this is no backup at all");

        Assert.Equal("not-a-workshop", Bench.Refused(WorkshopStore.Restore(letter, Path.Combine(bench.Folder, "new"))).Code);
    }
}
