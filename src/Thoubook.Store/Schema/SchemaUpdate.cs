using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;
using Thoubook.Record;

namespace Thoubook.Store.Schema;

/// <summary>Brings a workshop's database up to this program's schema, after a backup of what was there.</summary>
internal static class SchemaUpdate
{
    /// <summary>The last migration, so that it can be seen without Entity Framework that there is nothing to do.</summary>
    public const string Newest = "20261125174331_AsFound";

    /// <summary>Marks the file as a workshop's: "Thou".</summary>
    public const int ApplicationId = 0x54686F75;

    private static readonly byte[] Header = "SQLite format 3\0"u8.ToArray();

    public static Outcome<string> Apply(string folder, string file, IClock clock)
    {
        if (Found(file) is { } newest)
        {
            if (newest == Newest)
                return file;
            if (string.CompareOrdinal(newest, Newest) > 0)
                return new Problem("workshop-newer", "", $"schema {newest}", $"A newer Thoubook wrote this workshop; this one knows schemas up to {Newest}. Nothing was changed.", "Use the newer program.");
        }

        // Whoever holds the file is the only one who migrates; the system lets go of it however that program ends.
        using var turn = Turn(Path.Combine(folder, "workshop.lock"));
        if (turn is null)
            return new Problem("workshop-busy", "", file, "Another program is bringing this workshop up to date. Nothing was changed.", "Try again in a moment.");

        newest = Found(file);
        if (newest == Newest)
            return file;
        if (newest is null && File.Exists(file) && new FileInfo(file).Length > 0 && !IsEmpty(file))
            return Faults.NotAWorkshop(file);
        if (newest is not null)
            Backups.Make(file, Path.Combine(folder, "backups", $"before-{Newest}-{Stamp(clock)}.db"));

        using var connection = Connections.Open(file, Access.Write);
        connection.Do("DROP TABLE IF EXISTS __EFMigrationsLock");
        using var context = WorkshopContext.On(connection);
        context.Database.Migrate();
        return file;
    }

    public static bool IsWorkshop(string file) => Found(file) is not null;

    /// <summary>The last migration that a file has; null for none, or where the file is not there.</summary>
    private static string? Found(string file)
    {
        if (!File.Exists(file) || new FileInfo(file).Length == 0)
            return null;
        using (var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete))
        {
            Span<byte> start = stackalloc byte[16];
            if (stream.ReadAtLeast(start, 16, throwOnEndOfStream: false) < 16 || !start.SequenceEqual(Header))
                throw new SqliteException("file is not a database", 26);
        }

        using var connection = Connections.Open(file, Access.Read);
        if (connection.Ask("PRAGMA application_id") is not long id || id != ApplicationId)
            return null;
        return (string?)connection.Ask("SELECT MigrationId FROM __EFMigrationsHistory ORDER BY MigrationId DESC LIMIT 1");
    }

    private static bool IsEmpty(string file)
    {
        using var connection = Connections.Open(file, Access.Read);
        return connection.Ask("SELECT count(*) FROM sqlite_master WHERE name NOT LIKE '\\_\\_EFMigrations%' ESCAPE '\\'") is 0L;
    }

    private static FileStream? Turn(string lockFile)
    {
        for (var tries = 0; tries < 100; tries++)
        {
            try
            {
                return new FileStream(lockFile, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (tries < 99)
            {
                Thread.Sleep(100);
            }
            catch (IOException)
            {
                break;
            }
        }

        return null;
    }

    private static string Stamp(IClock clock) =>
        InstantPattern.CreateWithInvariantCulture("uuuuMMdd'T'HHmmss'Z'").Format(clock.GetCurrentInstant());
}
