using Microsoft.Data.Sqlite;
using Thoubook.Store.Tables;

namespace Thoubook.Store.Writing;

/// <summary>A prepared statement with a parameter for each column, run again and again.</summary>
internal sealed class Statement : IDisposable
{
    private readonly SqliteCommand _command;

    private Statement(SqliteTransaction transaction, string sql, IEnumerable<string> parameters)
    {
        _command = transaction.Connection!.CreateCommand();
        _command.Transaction = transaction;
        _command.CommandText = sql;
        foreach (var name in parameters)
            _command.Parameters.Add(new SqliteParameter { ParameterName = $"${name}" });
        _command.Prepare();
    }

    public static Statement Insert(SqliteTransaction transaction, Table table) => new(transaction, table.Insert, table.All.Select(c => c.Name));

    public static Statement Update(SqliteTransaction transaction, Table table) => new(transaction, table.Update, table.All.Select(c => c.Name));

    public static Statement Of(SqliteTransaction transaction, string sql, params string[] parameters) => new(transaction, sql, parameters);

    public void Run(params ReadOnlySpan<object?> values)
    {
        Bind(values);
        _command.ExecuteNonQuery();
    }

    public object? Ask(params ReadOnlySpan<object?> values)
    {
        Bind(values);
        return _command.ExecuteScalar() is { } value and not DBNull ? value : null;
    }

    /// <summary>The first row; null where there is none.</summary>
    public object?[]? Row(params ReadOnlySpan<object?> values)
    {
        Bind(values);
        using var reader = _command.ExecuteReader();
        if (!reader.Read())
            return null;
        var row = new object?[reader.FieldCount];
        for (var i = 0; i < row.Length; i++)
            row[i] = reader.IsDBNull(i) ? null : reader.GetValue(i);
        return row;
    }

    public void Dispose() => _command.Dispose();

    private void Bind(ReadOnlySpan<object?> values)
    {
        for (var i = 0; i < values.Length; i++)
            _command.Parameters[i].Value = values[i] ?? DBNull.Value;
    }
}
