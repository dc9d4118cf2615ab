namespace Thoubook.Store.Tables;

/// <summary>
/// A table described once: from this description come the schema, the prepared statements that write its rows and those that read them.
/// </summary>
internal abstract class Table(string name, IReadOnlyList<Column> lead, IReadOnlyList<Column> content)
{
    public string Name { get; } = name;

    /// <summary>The columns that place a row: its own number, whose row it is, where in the list.</summary>
    public IReadOnlyList<Column> Lead { get; } = lead;

    /// <summary>The columns that say what it says.</summary>
    public IReadOnlyList<Column> Content { get; } = content;

    public required IReadOnlyList<string> Key { get; init; }

    /// <summary>Sets of columns that are unique together.</summary>
    public IReadOnlyList<string[]> Unique { get; init; } = [];

    /// <summary>Sets of columns that rows are found by beside the key.</summary>
    public IReadOnlyList<string[]> FoundBy { get; init; } = [];

    /// <summary>Whether rows are only ever added; triggers refuse anything else.</summary>
    public bool AppendOnly { get; init; }

    public IEnumerable<Column> All => Lead.Concat(Content);

    public string Insert => $"INSERT INTO {Name} ({Names(All)}) VALUES ({string.Join(", ", All.Select(c => $"${c.Name}"))})";

    public string Update => $"UPDATE {Name} SET {string.Join(", ", All.Where(c => !Key.Contains(c.Name)).Select(c => $"{c.Name} = ${c.Name}"))} WHERE {string.Join(" AND ", Key.Select(k => $"{k} = ${k}"))}";

    /// <summary>The columns of the content as a reader takes them: a reference to an entry is read as that entry's identifier.</summary>
    public string Read(string alias) => string.Join(", ", Content.Select(c => c.References == "entry"
        ? $"(SELECT referred.id FROM entry AS referred WHERE referred.sequence = {alias}.{c.Name})"
        : $"{alias}.{c.Name}"));

    protected static Column Number(string name, string? references = null, bool nullable = false) => new LeadColumn(name, nullable, references);

    private static string Names(IEnumerable<Column> columns) => string.Join(", ", columns.Select(c => c.Name));

    private sealed record LeadColumn(string Name, bool Nullable, string? References) : Column(Name, ColumnKind.Integer, Nullable, References);
}
