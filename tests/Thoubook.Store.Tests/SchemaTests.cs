using System.Globalization;
using System.IO.Compression;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Store.Schema;

namespace Thoubook.Store.Tests;

public class SchemaTests
{
    [Fact]
    public void Migrations_DoNotLagTheModel()
    {
        using var connection = new SqliteConnection("Data Source=:memory:");
        using var context = WorkshopContext.On(connection);

        Assert.False(context.Database.HasPendingModelChanges(), "The tables have changed: add a migration.");
        Assert.Equal(SchemaUpdate.Newest, context.Database.GetMigrations().Last());
    }

    [Theory]
    [InlineData(Access.Write, 1L)]
    [InlineData(Access.Read, 0L)]
    internal void EveryConnection_ThatMayWrite_SyncsFully(Access access, long writes)
    {
        using var bench = new Bench();
        using var store = bench.Open();
        using var connection = Connections.Open(bench.Database, access);

        Assert.Equal("wal", connection.Ask("PRAGMA journal_mode"));
        Assert.Equal(1L, connection.Ask("PRAGMA foreign_keys"));
        Assert.Equal(1L - writes, connection.Ask("PRAGMA query_only"));
        Assert.Equal(2L, connection.Ask("PRAGMA synchronous"));
    }

    [Fact]
    public void Connections_AreOpenedInOnePlace_SoThatNoneForgetsToSync()
    {
        var opening = Directory.EnumerateFiles(Path.Combine(Root(), "src"), "*.cs", SearchOption.AllDirectories)
            .Where(f => File.ReadAllText(f).Contains("new SqliteConnection(", StringComparison.Ordinal))
            .Select(f => Path.GetFileName(f));

        Assert.Equal(["Connections.cs"], opening);
    }

    [Fact]
    public void Open_OlderSchema_IsBackedUpFirst_AndAMigrationThatFailsLeavesItAsItWas()
    {
        using var bench = new Bench();
        using (var store = bench.Open())
            Bench.Ok(store.Write(Change.Whole(Bench.Pump() with { Readings = [Bench.Reading(1.2535)] }, "owner")));
        Pretend(bench, $"DELETE FROM __EFMigrationsHistory WHERE MigrationId <> '{SchemaUpdate.Newest}'; UPDATE __EFMigrationsHistory SET MigrationId = '20250101000000_Before'");

        // The tables are there already, so that the migration fails: what was there must be in the backup and still in place.
        Assert.ThrowsAny<SqliteException>(() => WorkshopStore.Open(bench.Folder, WhenMissing.Refuse, NodaTime.SystemClock.Instance));

        var backup = Assert.Single(Directory.GetFiles(Path.Combine(bench.Folder, "backups")));
        using var copy = Connections.Open(backup, Access.Read);
        Assert.Equal(1L, copy.Ask("SELECT count(*) FROM reading"));
        SqliteConnection.ClearAllPools();
        Pretend(bench, $"UPDATE __EFMigrationsHistory SET MigrationId = '{SchemaUpdate.Newest}'");
        using var again = bench.Open(WhenMissing.Refuse);
        Assert.True(again.Verify().IsSound);
    }

    [Fact]
    public void Open_AStoreOfTheFirstSchema_IsBackedUp_AndKeepsEverything()
    {
        using var bench = new Bench();
        using (var packed = new GZipStream(File.OpenRead(Path.Combine(Root(), "tests/Thoubook.Store.Tests/Older/first.db.gz")), CompressionMode.Decompress))
        using (var database = File.Create(bench.Database))
            packed.CopyTo(database);
        var before = EveryRow(bench.Database);

        using var store = bench.Open(WhenMissing.Refuse);

        var backup = Assert.Single(Directory.GetFiles(Path.Combine(bench.Folder, "backups")));
        Assert.Equal(before, EveryRow(backup));
        var after = EveryRow(bench.Database).ToHashSet(StringComparer.Ordinal);
        Assert.Equal(24, store.Sequence());
        Assert.True(before.Count > 60 && before.TrueForAll(Kept), string.Join('\n', before.Where(r => !Kept(r))));
        Assert.True(store.Verify().IsSound, string.Join('\n', store.Verify().Problems));

        // A table may have gained columns, at their end.
        bool Kept(string row) => after.Contains(row) || after.Any(a => a.StartsWith($"{row}|", StringComparison.Ordinal));

        // And it takes what is new in this schema.
        var engine = new EngineName("Sandpiper six");
        var record = Bench.Ok(store.Load(engine));
        Assert.Null(record.Circuit);
        Assert.Equal((1, 4, 1), (record.Readings.Count, record.Dimensions.Count + record.Fits.Count, record.Checks.Count));
        var plain = Bench.Circuit() with { Elements = [Bench.Circuit().Elements[^1]], States = [] };
        Bench.Ok(store.Write(new Change(engine, "owner") { Circuit = plain, Facts = [Bench.FlowTest()] }));
        Assert.Equal("front jet", Bench.Ok(store.Load(engine)).Circuit!.Elements[0].Label);
        var step = new Step(new StepName("sump-on")) { Holds = [new HoldPoint(HoldKind.Cleanliness, "wiped")] };
        Bench.Ok(store.Write(new Change(engine, "owner") { Steps = [step], Facts = [new Signature(FactId.New(), Bench.Morning, "owner", step.Name)] }));
        Assert.Equal(("wiped", step.Name), (Bench.Ok(store.Load(engine)).Steps[0].Holds[0].What, Bench.Ok(store.Load(engine)).Signatures[0].Step));
        Assert.All(record.Parts, p => Assert.Empty(p.Asks));
        Assert.Empty(record.Engine.States);
        Bench.Ok(store.Write(new Change(engine, "owner") { Tools = [new KeptTool(new ToolName("spanner")) { Kept = "drawer 3" }], Facts = [new AsFound(FactId.New(), Bench.Morning, "bench", "which way") { Part = record.Parts[0].Name, Words = "to the left" }] }));
        Assert.Equal(("drawer 3", "to the left"), (Bench.Ok(store.Load(engine)).Tools[0].Kept, Bench.Ok(store.Load(engine)).AsFound[0].Words));
    }

    [Fact]
    public void Open_NewerSchema_IsRefused_AndNothingChanged()
    {
        using var bench = new Bench();
        bench.Open().Dispose();
        Pretend(bench, "INSERT INTO __EFMigrationsHistory VALUES ('99990101000000_Later', '10.0')");

        Assert.Equal("workshop-newer", Bench.Refused(WorkshopStore.Open(bench.Folder, WhenMissing.MakeOne, NodaTime.SystemClock.Instance)).Code);
        Assert.False(Directory.Exists(Path.Combine(bench.Folder, "backups")));
    }

    [Fact]
    public void Open_AfterAMigrationThatWasKilled_GoesOn()
    {
        using var bench = new Bench();
        using (var connection = Connections.Open(bench.Database, Access.Write))
            connection.Do("CREATE TABLE __EFMigrationsLock (Id INTEGER PRIMARY KEY, Timestamp TEXT NOT NULL); INSERT INTO __EFMigrationsLock VALUES (1, 'then')");
        SqliteConnection.ClearAllPools();

        using var store = bench.Open();

        Assert.True(store.Verify().IsSound);
    }

    [Fact]
    public void Open_NoWorkshop_IsRefused_UnlessOneIsWanted()
    {
        using var bench = new Bench();

        Assert.Equal("no-workshop", Bench.Refused(WorkshopStore.Open(bench.Folder, WhenMissing.Refuse, NodaTime.SystemClock.Instance)).Code);
        Assert.Empty(Directory.GetFileSystemEntries(bench.Folder));
    }

    [Theory]
    [InlineData("this is a letter, not a workshop; it is long enough to hold a header of any kind")]
    [InlineData("short")]
    public void Open_AnotherKindOfFile_IsRefused_AndLeftAlone(string contents)
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Database, contents);

        Assert.Equal("not-a-workshop", Bench.Refused(WorkshopStore.Open(bench.Folder, WhenMissing.MakeOne, NodaTime.SystemClock.Instance)).Code);
        Assert.Equal(contents, File.ReadAllText(bench.Database));
    }

    [Fact]
    public void Open_AnotherProgramsDatabase_IsRefused_AndLeftAlone()
    {
        using var bench = new Bench();
        using (var connection = new SqliteConnection($"Data Source={bench.Database};Pooling=False"))
        {
            connection.Open();
            connection.Do("CREATE TABLE stamps (country TEXT)");
        }

        var before = File.ReadAllBytes(bench.Database);
        Assert.Equal("not-a-workshop", Bench.Refused(WorkshopStore.Open(bench.Folder, WhenMissing.MakeOne, NodaTime.SystemClock.Instance)).Code);
        Assert.Equal(before, File.ReadAllBytes(bench.Database));
    }

    [Fact]
    public void Open_DamagedDatabase_IsRefusedOrFoundOut()
    {
        using var bench = new Bench();
        using (var store = bench.Open())
            Bench.Ok(store.Write(Change.Whole(Bench.Pump() with { Readings = [.. Enumerable.Range(0, 500).Select(i => Bench.Reading(1.25 + i * 1e-5))] }, "owner")));
        SqliteConnection.ClearAllPools();
        using (var file = new FileStream(bench.Database, FileMode.Open))
        {
            file.Position = file.Length / 2;
            file.Write(new byte[8192]);
        }

        if (WorkshopStore.Open(bench.Folder, WhenMissing.Refuse, NodaTime.SystemClock.Instance).IsOk(out var damaged, out var problems))
        {
            using (damaged)
                Assert.False(damaged.Verify().IsSound);
        }
        else
        {
            Assert.Equal("workshop-damaged", Assert.Single(problems).Code);
        }
    }

    /// <summary>Every row of every table, and every trigger, as text.</summary>
    private static List<string> EveryRow(string database)
    {
        using var connection = new SqliteConnection($"Data Source={database};Mode=ReadOnly;Pooling=False");
        connection.Open();
        var rows = Read("SELECT 'trigger ' || name || ' ' || sql FROM sqlite_master WHERE type = 'trigger' ORDER BY 1");
        foreach (var table in Read("SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY 1"))
            rows.AddRange(Read($"SELECT * FROM {table}").Select(r => $"{table}: {r}"));
        return rows;

        List<string> Read(string sql)
        {
            using var command = connection.CreateCommand();
            command.CommandText = sql;
            using var reader = command.ExecuteReader();
            var read = new List<string>();
            while (reader.Read())
                read.Add(string.Join('|', Enumerable.Range(0, reader.FieldCount).Select(i => reader.GetValue(i) is byte[] bytes ? Convert.ToHexString(bytes) : Convert.ToString(reader.GetValue(i), CultureInfo.InvariantCulture))));
            return read;
        }
    }

    private static string Root()
    {
        var root = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(root, "thoubook.slnx")))
            root = Path.GetDirectoryName(root)!;
        return root;
    }

    private static void Pretend(Bench bench, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={bench.Database};Pooling=False");
        connection.Open();
        connection.Do(sql);
    }
}
