using NodaTime;
using Thoubook.Record;
using Thoubook.Store.Schema;
using Thoubook.Store.Snapshots;
using Thoubook.Store.Verifying;
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

    /// <summary>The engine that a piece came with; null where the workshop has no piece of that tag.</summary>
    public EngineName? HomeOf(PieceTag piece) => EnginesOf("SELECT engine.name FROM piece JOIN engine ON engine.id = piece.engine_id WHERE piece.tag = $tag", piece) is [var home] ? home : null;

    /// <summary>The engines for which a piece was ever chosen, or in which it was placed.</summary>
    public IReadOnlyList<EngineName> EnginesThatHeld(PieceTag piece) => EnginesOf(
        """
        SELECT DISTINCT engine.name FROM piece
        JOIN (SELECT piece_id, sequence FROM chosen UNION ALL SELECT piece_id, sequence FROM placed) AS held ON held.piece_id = piece.id
        JOIN entry ON entry.sequence = held.sequence JOIN engine ON engine.id = entry.engine_id WHERE piece.tag = $tag
        """,
        piece);

    /// <summary>Writes a change, all of it or nothing. It is on the disk when this returns.</summary>
    public Outcome<Changed> Write(Change change) => Write([change]).Then<Changed>(all => all[0]);

    /// <summary>Writes changes of several engines in one transaction.</summary>
    public Outcome<IReadOnlyList<Changed>> Write(IReadOnlyList<Change> changes) => Faults.Guarded<IReadOnlyList<Changed>>(_file, () =>
    {
        using var connection = Connections.Open(_file, Access.Write);
        using var transaction = connection.BeginTransaction(deferred: false);
        connection.Do("PRAGMA defer_foreign_keys = ON", transaction);
        var now = _clock.GetCurrentInstant().WithOffset(Offset.Zero);
        var written = new List<Changed>();
        foreach (var change in changes)
        {
            if (!new ChangeWriter(transaction, change, now).Write().IsOk(out var changed, out var problems))
                return new Outcome<IReadOnlyList<Changed>>.Refused(problems);
            written.Add(changed);
        }

        if (!written.TrueForAll(c => c.IsNothing))
            transaction.Commit();
        return written;
    });

    /// <summary>Looks the whole workshop through.</summary>
    public VerifyReport Verify() => StoreCheck.Run(Folder, _file);

    /// <summary>Copies the database as it is at this moment, while others go on working; a file of that name must not be there.</summary>
    public Outcome<string> Backup(string path)
    {
        path = Path.GetFullPath(path);
        if (Path.Exists(path))
            return new Problem("backup-there", "", path, "There is a file of that name already.", "Name another.");
        return Faults.Guarded<string>(_file, () =>
        {
            Backups.Make(_file, path);
            return path;
        });
    }

    /// <summary>Makes a workshop in a folder from a backup, once the backup has been looked through.</summary>
    public static Outcome<string> Restore(string backup, string folder)
    {
        folder = Path.GetFullPath(folder);
        var file = Path.Combine(folder, DatabaseName);
        if (File.Exists(file))
            return new Problem("workshop-there", "", folder, "There is a workshop in this folder already.", "Restore into an empty folder, then put it in the old one's place.");
        return Faults.Guarded<string>(backup, () => SchemaUpdate.IsWorkshop(backup) ? backup : Faults.NotAWorkshop(backup)).Then<string>(_ =>
        {
            Directory.CreateDirectory(folder);
            Backups.Make(backup, file);
            if (StoreCheck.Run(folder, file) is { IsSound: false } report)
            {
                File.Delete(file);
                return new Outcome<string>.Refused([.. report.Problems.Select(p => new Problem("backup-not-sound", "", backup, p, "Use another backup."))]);
            }

            return folder;
        });
    }

    public void Dispose() => Connections.Close(_file);

    private List<EngineName> EnginesOf(string sql, PieceTag piece)
    {
        using var connection = Connections.Open(_file, Access.Read);
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.Parameters.AddWithValue("$tag", piece.Text);
        using var reader = command.ExecuteReader();
        var engines = new List<EngineName>();
        while (reader.Read())
            engines.Add(new EngineName(reader.GetString(0)));
        return engines;
    }
}
