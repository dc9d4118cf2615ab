using Microsoft.Data.Sqlite;
using Thoubook.Record;
using Thoubook.Store.Tables;

namespace Thoubook.Store.Writing;

/// <summary>Appends facts. One that is stored already is left as it is, if it says the same.</summary>
internal sealed class FactWriter(SqliteTransaction transaction, EntryWriter entries, Identifiers identifiers, long engine, Circumstances circumstances, List<Problem> problems) : IDisposable
{
    private readonly Statement _find = Statement.Of(transaction, "SELECT sequence, engine_id, kind, at_utc_ns, offset_s, by_whom FROM entry WHERE id = $id", "id");
    private readonly Statement _reliedOn = Statement.Insert(transaction, EntryTable.ReliedOn);
    private readonly Statement _reliedOnBy = Statement.Of(transaction, "SELECT group_concat(on_sequence) FROM (SELECT on_sequence FROM relied_on WHERE sequence = $sequence ORDER BY position)", "sequence");
    private readonly Dictionary<FactTable, Statement> _inserts = [];
    private readonly Dictionary<FactTable, Statement> _selects = [];

    public int Added { get; private set; }

    /// <summary>Every fact as it is stored now. Numbers are given out first, so that a fact may rely on one further down.</summary>
    public IReadOnlyList<Fact> Write(IReadOnlyList<Fact> facts)
    {
        var stored = new Fact[facts.Count];
        var before = new object?[facts.Count][];
        for (var i = 0; i < facts.Count; i++)
        {
            var fact = facts[i];
            if (!Moments.CanHold(fact.At))
            {
                problems.Add(new("time-out-of-range", fact.Headline, fact.At.ToString(), $"A time from {Moments.Earliest} to {Moments.Latest}.", "Correct the date."));
                continue;
            }

            before[i] = _find.Row(fact.Id.Value.ToByteArray(bigEndian: true))!;
            var sequence = before[i] is { } row ? (long)row[0]! : entries.Fact(fact, FactTables.For(fact).Name, engine);
            identifiers.Add(fact.Id, sequence);
            stored[i] = fact with { Sequence = sequence, At = before[i] is { } first && circumstances == Circumstances.FilledIn ? Moments.Read((long)first[3]!, (int)(long)first[4]!) : fact.At };
        }

        for (var i = 0; i < facts.Count && problems.Count < ChangeWriter.MostProblems; i++)
        {
            if (stored[i] is not { } fact)
                continue;
            if (before[i] is { } entry)
                Compare(fact, entry);
            else
                Append(fact);
        }

        return stored;
    }

    public void Dispose()
    {
        _find.Dispose();
        _reliedOn.Dispose();
        _reliedOnBy.Dispose();
        foreach (var statement in _inserts.Values.Concat(_selects.Values))
            statement.Dispose();
    }

    private void Append(Fact fact)
    {
        var table = FactTables.For(fact);
        if (References.Resolve(table.Content, table.Values(fact), fact.Headline, identifiers, problems) is not { } values)
            return;
        For(_inserts, table, t => Statement.Insert(transaction, t)).Run([fact.Sequence, .. values]);
        var position = 0L;
        foreach (var on in ReliesOn(fact))
            _reliedOn.Run(fact.Sequence, position++, on);
        Added++;
    }

    private void Compare(Fact fact, object?[] entry)
    {
        var table = FactTables.For(fact);
        var difference = entry[1] is long there && there != engine ? "it belongs to another engine"
            : (string)entry[2]! != table.Name ? $"it is a {entry[2]}"
            : circumstances == Circumstances.Stated && ((long)entry[3]! != Moments.Nanoseconds(fact.At) || (long)entry[4]! != Moments.OffsetSeconds(fact.At)) ? $"its time is {Moments.Read((long)entry[3]!, (int)(long)entry[4]!)}"
            : (string)entry[5]! != fact.By ? $"it is by {entry[5]}"
            : DifferentColumn(fact, table);
        if (difference is not null)
            problems.Add(new("id-taken", fact.Headline, fact.Id.ToString(), $"An entry with this identifier is stored already and says something else: {difference}. Entries are never changed.", "Give this one an identifier of its own; strike the other out if it is wrong."));
    }

    private string? DifferentColumn(Fact fact, FactTable table)
    {
        var row = For(_selects, table, t => Statement.Of(transaction, $"SELECT {string.Join(", ", t.Content.Select(c => c.Name))} FROM {t.Name} WHERE sequence = $sequence", "sequence")).Row(fact.Sequence)!;
        if (References.Resolve(table.Content, table.Values(fact), fact.Headline, identifiers, problems) is not { } values)
            return null;
        for (var i = 0; i < values.Length; i++)
        {
            if (!Equals(values[i], row[i]))
                return table.Content[i].References is null ? $"{table.Content[i].Name} is {row[i] ?? "not given"}" : $"another {table.Content[i].References} is named";
        }

        if (circumstances == Circumstances.FilledIn)
            return null;
        var on = string.Join(',', ReliesOn(fact));
        return on == ((string?)_reliedOnBy.Ask(fact.Sequence) ?? "") ? null : "it relies on others";
    }

    private IEnumerable<long> ReliesOn(Fact fact)
    {
        if (fact is not IConclusion conclusion)
            yield break;
        foreach (var id in conclusion.ReliesOn)
        {
            if (identifiers.Of(id) is { } sequence)
                yield return sequence;
            else
                problems.Add(identifiers.Unknown(id, fact.Headline));
        }
    }

    private static Statement For(Dictionary<FactTable, Statement> statements, FactTable table, Func<FactTable, Statement> make)
    {
        if (!statements.TryGetValue(table, out var statement))
            statements[table] = statement = make(table);
        return statement;
    }
}
