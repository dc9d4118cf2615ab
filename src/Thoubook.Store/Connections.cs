using Microsoft.Data.Sqlite;

namespace Thoubook.Store;

internal enum Access
{
    Read,
    Write,
}

/// <summary>The one place where a connection to a workshop's database is opened.</summary>
internal static class Connections
{
    /// <summary>How long a connection waits for another program that is writing.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    public static SqliteConnection Open(string file, Access access)
    {
        var connection = new SqliteConnection(Text(file, access));
        try
        {
            connection.Open();
            connection.Do(access == Access.Write
                ? "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;"
                : "PRAGMA query_only = ON;");
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <summary>Closes the connections that are kept open for the next one to ask.</summary>
    public static void Close(string file)
    {
        foreach (var access in Enum.GetValues<Access>())
        {
            using var connection = new SqliteConnection(Text(file, access));
            SqliteConnection.ClearPool(connection);
        }
    }

    /// <summary>The two kinds of access differ in their text, so that the pool never mixes them.</summary>
    private static string Text(string file, Access access) => new SqliteConnectionStringBuilder
    {
        DataSource = file,
        Mode = access == Access.Write ? SqliteOpenMode.ReadWriteCreate : SqliteOpenMode.ReadWrite,
        ForeignKeys = true,
        Pooling = true,
        DefaultTimeout = (int)Patience.TotalSeconds,
    }.ToString();

    public static void Do(this SqliteConnection connection, string sql, SqliteTransaction? transaction = null)
    {
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    public static object? Ask(this SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar() is { } value and not DBNull ? value : null;
    }
}
