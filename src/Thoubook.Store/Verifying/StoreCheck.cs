using System.Security.Cryptography;
using Microsoft.Data.Sqlite;
using Thoubook.Record;
using Thoubook.Store.Snapshots;
using Thoubook.Store.Tables;

namespace Thoubook.Store.Verifying;

/// <summary>Looks through a whole workshop for anything that ought not to be so.</summary>
internal sealed class StoreCheck
{
    private readonly SqliteConnection _connection;
    private readonly SqliteTransaction _transaction;
    private readonly List<string> _problems = [];

    private StoreCheck(SqliteConnection connection, SqliteTransaction transaction)
    {
        _connection = connection;
        _transaction = transaction;
    }

    public static VerifyReport Run(string folder, string file)
    {
        var (problems, entries, engines) = (new List<string>(), 0L, 0);
        try
        {
            using var connection = Connections.Open(file, Access.Read);
            using var transaction = connection.BeginTransaction(deferred: true);
            var check = new StoreCheck(connection, transaction);
            entries = check.Numbers("SELECT count(*) FROM entry")[0];
            engines = check.Everything();
            problems.AddRange(check._problems);
        }
        catch (SqliteException fault)
        {
            problems.Add($"The database could not be read through: {fault.Message}");
        }

        var files = Files(Path.Combine(folder, "files"), problems);
        return new(problems, entries, engines, files);
    }

    private int Everything()
    {
        foreach (var said in Texts("PRAGMA integrity_check").Where(t => t != "ok"))
            _problems.Add($"The database is damaged: {said}.");
        foreach (var table in Texts("SELECT DISTINCT \"table\" || ' refers to ' || parent FROM pragma_foreign_key_check"))
            _problems.Add($"A row of {table} that is not there.");
        Triggers();
        Sequence();
        foreach (var table in FactTables.All.Append<Table>(EntryTable.Edits))
            RowsOf(table);
        Ends();
        return Engines();
    }

    private void Triggers()
    {
        var there = Texts("SELECT name FROM sqlite_master WHERE type = 'trigger'").ToHashSet(StringComparer.Ordinal);
        foreach (var table in Schema.WorkshopContext.Tables.Where(t => t.AppendOnly))
        {
            foreach (var refused in new[] { "changed", "deleted", "replaced" })
            {
                if (!there.Contains($"{table.Name}_is_never_{refused}"))
                    _problems.Add($"Nothing keeps the rows of {table.Name} from being {refused}: the trigger {table.Name}_is_never_{refused} is gone.");
            }
        }
    }

    /// <summary>Every number from 1 to the last belongs to one entry.</summary>
    private void Sequence()
    {
        foreach (var after in Numbers("""
            SELECT coalesce((SELECT 0 WHERE EXISTS (SELECT 1 FROM entry) AND NOT EXISTS (SELECT 1 FROM entry WHERE sequence = 1)), -1)
            UNION ALL SELECT e.sequence FROM entry AS e WHERE e.sequence < (SELECT max(sequence) FROM entry) AND NOT EXISTS (SELECT 1 FROM entry AS n WHERE n.sequence = e.sequence + 1)
            """).Where(n => n >= 0))
        {
            _problems.Add($"Entry {after + 1} is missing, though later ones are there.");
        }
    }

    private void RowsOf(Table table)
    {
        foreach (var sequence in Numbers($"SELECT e.sequence FROM entry AS e LEFT JOIN {table.Name} AS t ON t.sequence = e.sequence WHERE e.kind = '{table.Name}' AND t.sequence IS NULL"))
            _problems.Add($"Entry {sequence} is a {table.Name}, yet what it says is missing.");
        foreach (var sequence in Numbers($"SELECT t.sequence FROM {table.Name} AS t LEFT JOIN entry AS e ON e.sequence = t.sequence AND e.kind = '{table.Name}' WHERE e.sequence IS NULL"))
            _problems.Add($"A row of {table.Name} stands under {sequence}, which is no entry of that kind.");
    }

    private void Ends()
    {
        foreach (var sequence in Numbers("SELECT l.sequence FROM lifted AS l JOIN entry AS e ON e.sequence = l.of_sequence WHERE e.kind NOT IN ('chosen', 'placed')"))
            _problems.Add($"Entry {sequence} ends something that is neither a choice nor a placing.");
        foreach (var sequence in Numbers("SELECT c.sequence FROM calibration AS c JOIN entry AS e ON e.sequence = c.of_sequence WHERE e.kind <> 'flow_test'"))
            _problems.Add($"Entry {sequence} calibrates by something that is no flow test.");
        foreach (var sequence in Numbers($"SELECT s.sequence FROM strike_out AS s JOIN entry AS e ON e.sequence = s.of_sequence WHERE e.kind = '{EntryTable.Edits.Name}'"))
            _problems.Add($"Entry {sequence} strikes out an edit, which is no fact.");
    }

    /// <summary>Every engine can be read: its words, units and names are known ones.</summary>
    private int Engines()
    {
        var names = Texts("SELECT name FROM engine");
        foreach (var name in names)
        {
            try
            {
                if (new SnapshotReader(_connection, _transaction).Load(new EngineName(name)) is null)
                    _problems.Add($"{name} is listed but not found by its name.");
            }
            catch (Exception fault) when (fault is InvalidDataException or ArgumentException or KeyNotFoundException or InvalidOperationException)
            {
                _problems.Add($"{name} cannot be read: {fault.Message}");
            }
        }

        return names.Count;
    }

    /// <summary>Every file kept beside the database has the name of its contents.</summary>
    private static int Files(string folder, List<string> problems)
    {
        if (!Directory.Exists(folder))
            return 0;
        var count = 0;
        foreach (var path in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
        {
            count++;
            using var file = File.OpenRead(path);
            if (!string.Equals(Convert.ToHexStringLower(SHA256.HashData(file)), Path.GetFileNameWithoutExtension(path), StringComparison.OrdinalIgnoreCase))
                problems.Add($"The file {Path.GetRelativePath(folder, path)} is not what it was when it was stored: its contents have another hash.");
        }

        return count;
    }

    private List<string> Texts(string sql) => Rows(sql, r => r.GetString(0));

    private List<long> Numbers(string sql) => Rows(sql, r => r.GetInt64(0));

    private List<T> Rows<T>(string sql, Func<SqliteDataReader, T> read)
    {
        using var command = _connection.CreateCommand();
        command.Transaction = _transaction;
        command.CommandText = sql;
        using var reader = command.ExecuteReader();
        var rows = new List<T>();
        while (reader.Read())
            rows.Add(read(reader));
        return rows;
    }
}
