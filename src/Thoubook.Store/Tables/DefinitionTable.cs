using System.Diagnostics.CodeAnalysis;

namespace Thoubook.Store.Tables;

/// <summary>Whose a definition is.</summary>
internal enum Owner
{
    /// <summary>The engine's: its key is unique there.</summary>
    Engine,

    /// <summary>The workshop's: its key is unique in the workshop.</summary>
    Workshop,
}

/// <summary>Rows that belong to a definition and are written with it, in their order.</summary>
internal abstract class ListTable : Table
{
    [SetsRequiredMembers]
    protected ListTable(string name, string owner, IReadOnlyList<Column> content)
        : base(name, [Number($"{owner}_id", owner), Number("position")], content)
    {
        Key = [$"{owner}_id", "position"];
        OwnerColumn = $"{owner}_id";
    }

    public string OwnerColumn { get; }
}

/// <summary>The lists of a <typeparamref name="TOwner"/>.</summary>
internal interface IListOf<in TOwner>
{
    ListTable Table { get; }

    IEnumerable<object?[]> Rows(TOwner owner);
}

internal sealed class ListTable<TOwner, TItem> : ListTable, IListOf<TOwner>
{
    private readonly IReadOnlyList<Column<TItem>> _columns;
    private readonly Func<TOwner, IEnumerable<TItem>> _items;
    private readonly Func<RowReader, TItem> _read;

    [SetsRequiredMembers]
    public ListTable(string name, string owner, Func<TOwner, IEnumerable<TItem>> items, Columns<TItem> columns, Func<RowReader, TItem> read)
        : base(name, owner, columns.All)
    {
        _columns = columns.All;
        _items = items;
        _read = read;
    }

    ListTable IListOf<TOwner>.Table => this;

    public IEnumerable<object?[]> Rows(TOwner owner) => _items(owner).Select(item => _columns.Select(c => c.Value(item)).ToArray());

    public TItem Item(RowReader row) => _read(row);
}

/// <summary>Definitions of one kind. They may be edited; each edit leaves an entry.</summary>
internal sealed class DefinitionTable<T> : Table
{
    private readonly IReadOnlyList<Column<T>> _columns;
    private readonly Func<RowReader, int, T> _read;

    [SetsRequiredMembers]
    public DefinitionTable(string name, Owner owner, string[] unique, Func<T, object> key, Func<T, int> revision, Columns<T> columns, Func<RowReader, int, T> read)
        : base(name, Leads(name, owner), columns.All)
    {
        Owner = owner;
        KeyOf = key;
        RevisionOf = revision;
        _columns = columns.All;
        _read = read;
        Key = ["id"];
        Unique = [owner == Owner.Engine ? ["engine_id", .. unique] : unique];
    }

    public Owner Owner { get; }

    /// <summary>The name by which it is known and others refer to it.</summary>
    public Func<T, object> KeyOf { get; }

    public Func<T, int> RevisionOf { get; }

    public IReadOnlyList<IListOf<T>> Lists { get; init; } = [];

    public object?[] Values(T definition) => [.. _columns.Select(c => c.Value(definition))];

    public T Definition(RowReader row, int revision) => _read(row, revision);

    // A piece or a gauge is the workshop's, yet it came with some engine: engine_id says which.
    private static Column[] Leads(string name, Owner owner) => name == "engine"
        ? [Number("id"), Number("revision")]
        : [Number("id"), Number("engine_id", "engine", nullable: owner == Owner.Workshop), Number("revision")];
}
