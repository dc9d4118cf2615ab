using Microsoft.Data.Sqlite;
using NodaTime;
using Thoubook.Record;
using Thoubook.Store.Schema;
using Thoubook.Store.Snapshots;
using Thoubook.Store.Writing;

namespace Thoubook.Store;

/// <summary>What to do where a folder holds no workshop.</summary>
public enum WhenMissing
{
    Refuse,
    MakeOne,
}

/// <summary>An engine of the workshop, in a list.</summary>
public sealed record EngineEntry(EngineName Name, Purpose Purpose)
{
    public bool Invented { get; init; }

    public string? Note { get; init; }

    public long Readings { get; init; }
}

/// <summary>A workshop's record on disk: the database <c>workshop.db</c> in a folder. Any number of programs may use it at once.</summary>
public sealed class WorkshopStore : IDisposable
{
    public const string DatabaseName = "workshop.db";

    private readonly string _file;
    private readonly IClock _clock;

    private WorkshopStore(string folder, string file, IClock clock)
    {
        Folder = folder;
        _file = file;
        _clock = clock;
    }

    public string Folder { get; }

    /// <summary>Opens a workshop, brought up to this program's schema.</summary>
    public static Outcome<WorkshopStore> Open(string folder, WhenMissing whenMissing, IClock clock)
    {
        folder = Path.GetFullPath(folder);
        var file = Path.Combine(folder, DatabaseName);
        if (!File.Exists(file) && whenMissing == WhenMissing.Refuse)
            return new Problem("no-workshop", "workshop", folder, "There is no workshop in this folder.", "Name the folder of a workshop, or make one by importing an engine.");
        Directory.CreateDirectory(folder);
        return Faults.Guarded(file, () => SchemaUpdate.Apply(folder, file, clock))
            .Then<WorkshopStore>(_ => new WorkshopStore(folder, file, clock));
    }

    /// <summary>The greatest sequence number: it changes with everything that is written, whichever program wrote it.</summary>
    public long Sequence()
    {
        using var connection = Connections.Open(_file, Access.Read);
        return (long)connection.Ask("SELECT coalesce(max(sequence), 0) FROM entry")!;
    }

    public IReadOnlyList<EngineEntry> Engines()
    {
        using var connection = Connections.Open(_file, Access.Read);
        using var command = connection.CreateCommand();
        command.CommandText = """
            SELECT name, purpose, invented, note, (SELECT count(*) FROM entry WHERE entry.engine_id = engine.id AND entry.kind = 'reading') FROM engine ORDER BY name_key
            """;
        using var reader = command.ExecuteReader();
        var row = new Tables.RowReader(reader, new());
        var engines = new List<EngineEntry>();
        while (row.Next())
            engines.Add(new(new EngineName(row.Text()), row.Word<Purpose>()) { Invented = row.Integer() != 0, Note = row.TextOrNull(), Readings = row.Integer() });
        return engines;
    }

    /// <summary>Everything known of an engine at one moment.</summary>
    public Outcome<EngineRecord> Load(EngineName name)
    {
        using var connection = Connections.Open(_file, Access.Read);
        using var transaction = connection.BeginTransaction(deferred: true);
        return new SnapshotReader(connection, transaction).Load(name) is { } record ? record : EngineNames.Unknown(transaction, name);
    }

    /// <summary>Writes a change, all of it or nothing. It is on the disk when this returns.</summary>
    public Outcome<Changed> Write(Change change) => Faults.Guarded<Changed>(_file, () =>
    {
        using var connection = Connections.Open(_file, Access.Write);
        using var transaction = connection.BeginTransaction(deferred: false);
        connection.Do("PRAGMA defer_foreign_keys = ON", transaction);
        var outcome = new ChangeWriter(transaction, change, _clock.GetCurrentInstant().WithOffset(Offset.Zero)).Write();
        if (outcome is Outcome<Changed>.Ok ok && !ok.Value.IsNothing)
            transaction.Commit();
        return outcome;
    });

    public void Dispose()
    {
        using var write = new SqliteConnection(Connections.Text(_file, Access.Write));
        using var read = new SqliteConnection(Connections.Text(_file, Access.Read));
        SqliteConnection.ClearPool(write);
        SqliteConnection.ClearPool(read);
    }
}
