using System.Diagnostics.CodeAnalysis;
using NodaTime;
using Thoubook.Record;

namespace Thoubook.Store.Tables;

/// <summary>What every fact has; it stands in the entry that the fact's own row belongs to.</summary>
internal readonly record struct FactHead(long Sequence, FactId Id, OffsetDateTime At, string By, IReadOnlyList<FactId> ReliesOn);

/// <summary>Facts of one kind: a row for each, under its entry's sequence number. Rows are only ever added.</summary>
internal abstract class FactTable : Table
{
    [SetsRequiredMembers]
    protected FactTable(string name, IReadOnlyList<Column> content)
        : base(name, [Number("sequence", "entry")], content)
    {
        Key = ["sequence"];
        AppendOnly = true;
        FoundBy = content.Any(c => c.Name == "piece_id") ? [["piece_id"]] : [];
    }

    public abstract Type Holds { get; }

    /// <summary>What the columns of the content hold for a fact, references as names and identifiers.</summary>
    public abstract object?[] Values(Fact fact);

    public abstract Fact Fact(FactHead head, RowReader row);
}

internal sealed class FactTable<T> : FactTable
    where T : Fact
{
    private readonly IReadOnlyList<Column<T>> _columns;
    private readonly Func<FactHead, RowReader, T> _read;

    [SetsRequiredMembers]
    public FactTable(string name, Columns<T> columns, Func<FactHead, RowReader, T> read)
        : base(name, columns.All)
    {
        _columns = columns.All;
        _read = read;
    }

    public override Type Holds => typeof(T);

    public override object?[] Values(Fact fact) => [.. _columns.Select(c => c.Value((T)fact))];

    public override T Fact(FactHead head, RowReader row) => _read(head, row);
}
