using Microsoft.Data.Sqlite;
using NodaTime;
using Thoubook.Record;
using Thoubook.Store.Snapshots;
using Thoubook.Store.Tables;

namespace Thoubook.Store.Writing;

/// <summary>Writes a change inside one transaction: everything, or nothing and every problem at once.</summary>
internal sealed class ChangeWriter(SqliteTransaction transaction, Change change, OffsetDateTime now)
{
    /// <summary>Enough to see what is wrong with a file.</summary>
    public const int MostProblems = 50;

    private readonly List<Problem> _problems = [];
    private int _added;
    private int _edited;
    private int _unchanged;

    public Outcome<Changed> Write()
    {
        if (string.IsNullOrWhiteSpace(change.By) || change.By.Length > 80)
            return new Problem("who", "by", $"\"{change.By}\"", "A name or a role, up to 80 characters.", "Say who does it.");

        using var entries = new EntryWriter(transaction, now, change.By);
        if (change.Definition is { } definition && !definition.Name.Equals(change.Engine))
            throw new ArgumentException("The engine defined is not the engine changed.");
        if ((change.Defines ? Define(entries) : Find()) is not { } engine)
            return new Outcome<Changed>.Refused(_problems);

        using var identifiers = engine.Identifiers;
        using var facts = new FactWriter(transaction, entries, identifiers, engine.Id, change.Circumstances, _problems);
        var stored = facts.Write(change.Facts);
        if (_problems.Count > 0)
            return new Outcome<Changed>.Refused([.. _problems.Take(MostProblems)]);
        return new Changed(entries.Sequence, stored) { Added = _added, Edited = _edited, Unchanged = _unchanged, FactsAdded = facts.Added };
    }

    /// <summary>The engine's number, where nothing is defined.</summary>
    private (long Id, Identifiers Identifiers)? Find()
    {
        using var find = Statement.Of(transaction, "SELECT id FROM engine WHERE name_key = $key", "key");
        if (find.Ask(DefinitionTables.NameKey(change.Engine)) is long id)
            return (id, new Identifiers(transaction, id));
        _problems.Add(EngineNames.Unknown(transaction, change.Engine));
        return null;
    }

    private (long Id, Identifiers Identifiers)? Define(EntryWriter entries)
    {
        var reader = new SnapshotReader(transaction.Connection!, transaction);
        var there = reader.Definitions(change.Engine);
        if (there is null && change.Definition is null)
            return Find();

        var engineId = reader.EngineId;
        using (var none = new Identifiers(transaction, engineId))
        {
            none.Add(change.Engine, engineId);
            Count(Writer(DefinitionTables.Engines, there is null ? [] : [there.Engine]).Write(change.Definition is { } engine ? [engine] : [], null, none, entries));
            engineId = none.Of(change.Engine)!.Value;
        }

        var identifiers = new Identifiers(transaction, engineId);
        reader.Known.Documents.ToList().ForEach(d => identifiers.Add(d.Value, d.Key));
        reader.Known.Parts.ToList().ForEach(p => identifiers.Add(p.Value, p.Key));
        reader.Known.Figures.ToList().ForEach(f => identifiers.Add(f.Value, f.Key));
        Count(Writer(DefinitionTables.Documents, there?.Documents ?? []).Write(change.Documents, engineId, identifiers, entries));
        Count(Writer(DefinitionTables.Parts, there?.Parts ?? []).Write(change.Parts, engineId, identifiers, entries));
        Count(Writer(DefinitionTables.Gauges, there?.Gauges ?? reader.Gauges()).Write(change.Gauges, engineId, identifiers, entries));
        Count(Writer(DefinitionTables.Pieces, there?.Pieces ?? reader.Pieces()).Write(change.Pieces, engineId, identifiers, entries));
        Count(Writer(FigureTables.Figures, there is null ? [] : [.. there.Dimensions, .. there.Fits]).Write(change.Figures, engineId, identifiers, entries));
        reader.Known.Spaces.ToList().ForEach(s => identifiers.Add(s.Value, s.Key));
        reader.Known.Joints.ToList().ForEach(j => identifiers.Add(j.Value, j.Key));
        reader.Known.Steps.ToList().ForEach(s => identifiers.Add(s.Value, s.Key));
        Count(Writer(ClosingTables.Spaces, there?.Spaces ?? []).Write(change.Spaces, engineId, identifiers, entries));
        Count(Writer(ClosingTables.Joints, there?.Joints ?? []).Write(change.Joints, engineId, identifiers, entries));
        Count(Writer(ClosingTables.Steps, there?.Steps ?? []).Write(change.Steps, engineId, identifiers, entries));
        reader.Known.Together.ToList().ForEach(t => identifiers.Add(t.Value, t.Key));
        reader.Known.Tools.ToList().ForEach(t => identifiers.Add(t.Value, t.Key));
        reader.Known.PermissionItems.ToList().ForEach(p => identifiers.Add(p.Value, p.Key));
        Count(Writer(ClosingTables.Together, there?.Together ?? []).Write(change.Together, engineId, identifiers, entries));
        Count(Writer(ClosingTables.Tools, there?.Tools ?? []).Write(change.Tools, engineId, identifiers, entries));
        Count(Writer(ClosingTables.PermissionItems, there?.PermissionItems ?? []).Write(change.PermissionItems, engineId, identifiers, entries));
        if (change.Circuit is { } circuit)
        {
            if (reader.Known.Circuit is { } number)
                identifiers.Add(CircuitTables.Key, number);
            Count(Writer(CircuitTables.Circuits, there?.Circuit is { } stored ? [stored] : []).Write([CircuitTables.Dated(circuit, there?.Circuit)], engineId, identifiers, entries));
        }

        return (engineId, identifiers);
    }

    private DefinitionWriter<T> Writer<T>(DefinitionTable<T> table, IEnumerable<T> there)
        where T : class => new(transaction, table, there.ToDictionary(table.KeyOf), change.WhenThere, _problems);

    private void Count((int Added, int Edited, int Unchanged) written)
    {
        _added += written.Added;
        _edited += written.Edited;
        _unchanged += written.Unchanged;
    }
}

internal static class EngineNames
{
    public static Problem Unknown(SqliteTransaction transaction, EngineName name)
    {
        using var command = transaction.Connection!.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = "SELECT name FROM engine ORDER BY name_key";
        var names = new List<string>();
        using (var reader = command.ExecuteReader())
        {
            while (reader.Read())
                names.Add(reader.GetString(0));
        }

        return new("unknown-engine", "engine", $"\"{name}\"", "There is no engine of that name in this workshop.", Nearest.Advice(name.Text, names, names.Count == 0 ? "Make an engine or import one first." : $"There are: {string.Join(", ", names.Take(10))}."));
    }
}
