using System.Collections;
using Microsoft.Data.Sqlite;
using Thoubook.Record;
using Thoubook.Store.Tables;

namespace Thoubook.Store.Writing;

/// <summary>Adds and edits the definitions of one kind, each with the entry that says who changed what.</summary>
internal sealed class DefinitionWriter<T>(SqliteTransaction transaction, DefinitionTable<T> table, IReadOnlyDictionary<object, T> there, WhenThere whenThere, List<Problem> problems)
    where T : class
{
    /// <summary>Adds those that are new, edits those that differ.</summary>
    /// <param name="engine">The engine that an added one belongs to or came with; null for an engine itself.</param>
    public (int Added, int Edited, int Unchanged) Write(IReadOnlyList<T> definitions, long? engine, Identifiers identifiers, EntryWriter entries)
    {
        if (definitions.Count == 0)
            return default;
        using var insert = Statement.Insert(transaction, table);
        using var update = Statement.Update(transaction, table);
        using var lastId = Statement.Of(transaction, "SELECT last_insert_rowid()");
        using var engineOf = Statement.Of(transaction, table.Name == DefinitionTables.Engines.Name ? "SELECT id FROM engine WHERE id = $id" : $"SELECT engine_id FROM {table.Name} WHERE id = $id", "id");
        var (added, edited, unchanged) = (0, 0, 0);
        var writtenLists = new List<(long Id, T Definition, bool Replaces)>();
        var met = new HashSet<object>();
        foreach (var definition in definitions)
        {
            var key = table.KeyOf(definition);
            var field = $"{table.Name} {key}";
            if (!met.Add(key))
            {
                problems.Add(new("given-twice", field, $"\"{key}\"", $"A {table.Name} of this name is given twice.", "Give it once."));
                continue;
            }

            var stored = there.GetValueOrDefault(key);
            if (stored is null)
            {
                if (Resolve(table.Content, table.Values(definition), field, identifiers) is not { } values)
                    continue;
                insert.Run(Row(null, engine, 1, values));
                var id = (long)lastId.Ask()!;
                identifiers.Add(key, id);
                writtenLists.Add((id, definition, Replaces: false));
                entries.Edit(table.Name == DefinitionTables.Engines.Name ? id : engine, table.Name, key, 1, null, DefinitionText.Write(table, definition));
                added++;
            }
            else if (Same(stored, definition))
            {
                unchanged++;
            }
            else if (Clash(stored, definition, field) is { } clash)
            {
                problems.Add(clash);
            }
            else
            {
                if (Resolve(table.Content, table.Values(definition), field, identifiers) is not { } values)
                    continue;
                var id = identifiers.Of(key) ?? throw new InvalidOperationException($"{field} has no number.");
                var owner = (long?)engineOf.Ask(id);
                if (engine is not null && owner != engine && table.RevisionOf(definition) == 0)
                {
                    problems.Add(Elsewhere(stored, definition, field));
                    continue;
                }

                var revision = table.RevisionOf(stored) + 1;
                update.Run(Row(id, owner, revision, values));
                writtenLists.Add((id, definition, Replaces: true));
                entries.Edit(owner, table.Name, key, revision, DefinitionText.Write(table, stored), DefinitionText.Write(table, definition));
                edited++;
            }
        }

        foreach (var list in table.Lists)
            WriteLists(list, writtenLists, identifiers);
        return (added, edited, unchanged);
    }

    private void WriteLists(IListOf<T> list, List<(long Id, T Definition, bool Replaces)> written, Identifiers identifiers)
    {
        using var insert = Statement.Insert(transaction, list.Table);
        using var delete = Statement.Of(transaction, $"DELETE FROM {list.Table.Name} WHERE {list.Table.OwnerColumn} = $owner", "owner");
        foreach (var (id, definition, replaces) in written)
        {
            if (replaces)
                delete.Run(id);
            var position = 0L;
            foreach (var row in list.Rows(definition))
            {
                if (Resolve(list.Table.Content, row, $"{table.Name} {table.KeyOf(definition)}", identifiers) is { } values)
                    insert.Run([id, position++, .. values]);
            }
        }
    }

    private Problem? Clash(T stored, T given, string field)
    {
        var (inForce, carried) = (table.RevisionOf(stored), table.RevisionOf(given));
        if (carried == inForce || (carried == 0 && whenThere == WhenThere.Replace))
            return null;
        var (was, now) = Difference(stored, given);
        return carried == 0
            ? new("there-already", field, now, $"It is there already, as {was}.", "Choose another name, or edit the one that is there.")
            : new("revision-clash", field, now, $"Somebody has changed it since you opened it (revision {inForce}, yours was made from {carried}); it is now {was}.", "Look at what is there now, and make your change again if it is still wanted.");
    }

    private Problem Elsewhere(T stored, T given, string field)
    {
        var (was, now) = Difference(stored, given);
        return new("described-elsewhere", field, now, $"It came with another engine of this workshop, where it is described as {was}.", $"Give this {table.Name} a tag of its own if it is another; else describe both alike, or edit it in the workshop.");
    }

    /// <summary>The columns and lists in which two differ, as each has them.</summary>
    private (string Stored, string Given) Difference(T stored, T given)
    {
        var (was, now) = (new List<string>(), new List<string>());
        var (old, @new) = (table.Values(stored), table.Values(given));
        for (var i = 0; i < old.Length; i++)
        {
            if (!Equals(old[i], @new[i]))
            {
                was.Add($"{table.Content[i].Name}: {old[i] ?? "none"}");
                now.Add($"{table.Content[i].Name}: {@new[i] ?? "none"}");
            }
        }

        foreach (var list in table.Lists)
        {
            var (oldRows, newRows) = (Rows(list, stored), Rows(list, given));
            if (oldRows.SequenceEqual(newRows))
                continue;

            // Of a long list only the rows that differ; all where they differ in nothing but their order.
            var (onlyOld, onlyNew) = (oldRows.Except(newRows).ToList(), newRows.Except(oldRows).ToList());
            var isOrder = onlyOld.Count + onlyNew.Count == 0;
            was.Add($"{list.Table.Name}: {Said(isOrder ? oldRows : onlyOld)}");
            now.Add($"{list.Table.Name}: {Said(isOrder ? newRows : onlyNew)}");
        }

        return (string.Join(", ", was), string.Join(", ", now));

        static List<string> Rows(IListOf<T> list, T of) =>
            [.. list.Rows(of).Select(r => string.Join(" ", r.Where((v, i) => v is not null && (list.Table.Content[i].Name.EndsWith("_text", StringComparison.Ordinal) || v is not double))))];

        static string Said(List<string> rows) => rows.Count > 0 ? string.Join(" | ", rows) : "none";
    }

    private bool Same(T a, T b) =>
        Same(table.Values(a), table.Values(b))
        && table.Lists.All(list => list.Rows(a).ToList() is var x && list.Rows(b).ToList() is var y && x.Count == y.Count && x.Zip(y).All(p => Same(p.First, p.Second)));

    private static bool Same(object?[] a, object?[] b) => StructuralComparisons.StructuralEqualityComparer.Equals(a, b);

    private object?[]? Resolve(IReadOnlyList<Column> columns, object?[] values, string field, Identifiers identifiers) =>
        References.Resolve(columns, values, field, identifiers, problems);

    private object?[] Row(long? id, long? engine, long revision, object?[] values) => table.Lead.Count == 2
        ? [id, revision, .. values]
        : [id, engine, revision, .. values];
}

internal static class References
{
    /// <summary>The values with names turned into numbers; null, and the problems told, where a name is not known.</summary>
    public static object?[]? Resolve(IReadOnlyList<Column> columns, object?[] values, string field, Identifiers identifiers, List<Problem> problems)
    {
        var known = true;
        for (var i = 0; i < values.Length; i++)
        {
            if (columns[i].References is null || values[i] is not { } name)
                continue;
            values[i] = identifiers.Of(name);
            if (values[i] is null)
            {
                problems.Add(identifiers.Unknown(name, field));
                known = false;
            }
        }

        return known ? values : null;
    }
}
