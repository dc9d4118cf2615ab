using Microsoft.Data.Sqlite;
using NodaTime;
using Thoubook.Record;
using Thoubook.Store.Tables;

namespace Thoubook.Store.Writing;

/// <summary>Gives out the workshop's sequence numbers, one for each entry, inside the transaction that writes them.</summary>
internal sealed class EntryWriter : IDisposable
{
    private readonly Statement _entry;
    private readonly Statement _edit;
    private readonly OffsetDateTime _now;
    private readonly string _by;

    public EntryWriter(SqliteTransaction transaction, OffsetDateTime now, string by)
    {
        _entry = Statement.Insert(transaction, EntryTable.Entries);
        _edit = Statement.Insert(transaction, EntryTable.Edits);
        _now = now;
        _by = by;
        using var last = Statement.Of(transaction, "SELECT max(sequence) FROM entry");
        Sequence = (long?)last.Ask() ?? 0;
    }

    /// <summary>The last number given out.</summary>
    public long Sequence { get; private set; }

    public long Fact(Fact fact, string kind, long engine)
    {
        Write(fact.Id, engine, kind, fact.At, fact.By);
        return Sequence;
    }

    public void Edit(long? engine, string definition, object name, int revision, string? before, string after)
    {
        Write(FactId.New(), engine, EntryTable.Edits.Name, _now, _by);
        _edit.Run(Sequence, definition, name.ToString(), (long)revision, before, after);
    }

    public void Dispose()
    {
        _entry.Dispose();
        _edit.Dispose();
    }

    private void Write(FactId id, long? engine, string kind, OffsetDateTime at, string by)
    {
        Sequence++;
        _entry.Run(Sequence, id.Value.ToByteArray(bigEndian: true), engine, kind, Moments.Nanoseconds(at), (long)Moments.OffsetSeconds(at), by);
    }
}
