using Microsoft.Data.Sqlite;
using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Store.Writing;

/// <summary>The numbers behind names: what a reference is written as.</summary>
internal sealed class Identifiers(SqliteTransaction transaction, long engine) : IDisposable
{
    private readonly Dictionary<object, long> _known = [];
    private readonly Dictionary<string, Statement> _statements = new(StringComparer.Ordinal);

    public void Add(object name, long id) => _known[name] = id;

    /// <summary>Null where nothing of that name is stored.</summary>
    public long? Of(object name)
    {
        if (_known.TryGetValue(name, out var id))
            return id;
        if (Stored(name) is not long found)
            return null;
        _known.Add(name, found);
        return found;
    }

    /// <summary>Why a name was not found, with the nearest that is known.</summary>
    public Problem Unknown(object name, string field)
    {
        var (code, what, sql) = name switch
        {
            FigureName => ("unknown-figure", "dimension or fit of this engine", "SELECT part || '.' || local FROM figure WHERE engine_id = $engine"),
            PartName => ("unknown-part", "part of this engine", "SELECT name FROM part WHERE engine_id = $engine"),
            StepName => ("unknown-step", "step of this engine", "SELECT name FROM step WHERE engine_id = $engine"),
            JointName => ("unknown-joint", "joint of this engine", "SELECT name FROM joint WHERE engine_id = $engine"),
            SpaceName => ("unknown-space", "space of this engine", "SELECT name FROM space WHERE engine_id = $engine"),
            PieceTag => ("unknown-piece", "piece in this workshop", "SELECT tag FROM piece"),
            GaugeTag => ("unknown-gauge", "gauge in this workshop", "SELECT tag FROM gauge"),
            DocumentName => ("unknown-document", "document of this engine", "SELECT name FROM document WHERE engine_id = $engine"),
            _ => ("unknown-fact", "entry in this workshop", "SELECT '' LIMIT 0"),
        };
        using var command = transaction.Connection!.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = sql;
        command.Parameters.AddWithValue("$engine", engine);
        var names = new List<string>();
        using (var reader = command.ExecuteReader())
        {
            while (reader.Read())
                names.Add(reader.GetString(0));
        }

        return new Problem(code, field, $"\"{name}\"", $"There is no {what} of that name.", Nearest.Advice(name.ToString()!, names, "Name one that is there, or add it first."));
    }

    public void Dispose()
    {
        foreach (var statement in _statements.Values)
            statement.Dispose();
    }

    private object? Stored(object name) => name switch
    {
        FigureName figure => Statement("SELECT id FROM figure WHERE engine_id = $engine AND part = $part AND local = $local", "engine", "part", "local").Ask(engine, figure.Part.Path, figure.Local),
        PartName part => Statement("SELECT id FROM part WHERE engine_id = $engine AND name = $name", "engine", "name").Ask(engine, part.Path),
        DocumentName document => Statement("SELECT id FROM document WHERE engine_id = $engine AND name = $name", "engine", "name").Ask(engine, document.Text),
        StepName step => Statement("SELECT id FROM step WHERE engine_id = $engine AND name = $name", "engine", "name").Ask(engine, step.Text),
        JointName joint => Statement("SELECT id FROM joint WHERE engine_id = $engine AND name = $name", "engine", "name").Ask(engine, joint.Text),
        SpaceName space => Statement("SELECT id FROM space WHERE engine_id = $engine AND name = $name", "engine", "name").Ask(engine, space.Text),
        PieceTag piece => Statement("SELECT id FROM piece WHERE tag = $tag", "tag").Ask(piece.Text),
        GaugeTag gauge => Statement("SELECT id FROM gauge WHERE tag = $tag", "tag").Ask(gauge.Text),
        FactId fact => Statement("SELECT sequence FROM entry WHERE id = $id", "id").Ask(fact.Value.ToByteArray(bigEndian: true)),
        _ => throw new ArgumentException($"Nothing is known by a {name.GetType().Name}.", nameof(name)),
    };

    private Statement Statement(string sql, params string[] parameters)
    {
        if (!_statements.TryGetValue(sql, out var statement))
            _statements[sql] = statement = Writing.Statement.Of(transaction, sql, parameters);
        return statement;
    }
}
