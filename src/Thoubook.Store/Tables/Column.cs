using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Store.Tables;

internal enum ColumnKind
{
    Integer,
    Real,
    Text,
    Blob,
}

/// <summary>One column as the database sees it.</summary>
/// <param name="References">The table whose key it holds; the value written is then a name or an identifier, looked up when it is written.</param>
internal abstract record Column(string Name, ColumnKind Kind, bool Nullable, string? References);

/// <summary>A column and where its value comes from.</summary>
internal sealed record Column<T>(string Name, ColumnKind Kind, bool Nullable, string? References, Func<T, object?> Value)
    : Column(Name, Kind, Nullable, References);

/// <summary>The columns of rows made from a <typeparamref name="T"/>, in the order in which they are written and read back.</summary>
internal sealed class Columns<T>
{
    private readonly List<Column<T>> _all = [];

    public IReadOnlyList<Column<T>> All => _all;

    public Columns<T> Text(string name, Func<T, string> value) => Add(name, ColumnKind.Text, false, value);

    public Columns<T> TextOrNull(string name, Func<T, string?> value) => Add(name, ColumnKind.Text, true, value);

    public Columns<T> Integer(string name, Func<T, long> value) => Add(name, ColumnKind.Integer, false, x => value(x));

    public Columns<T> Real(string name, Func<T, double> value) => Add(name, ColumnKind.Real, false, x => value(x));

    public Columns<T> Word<TWord>(string name, Func<T, TWord> value)
        where TWord : struct, Enum => Add(name, ColumnKind.Text, false, x => value(x).Word());

    public Columns<T> WordOrNull<TWord>(string name, Func<T, TWord?> value)
        where TWord : struct, Enum => Add(name, ColumnKind.Text, true, x => value(x)?.Word());

    /// <summary>A list of short texts, as a JSON array in one column.</summary>
    public Columns<T> List(string name, Func<T, IEnumerable<string>> value) => Add(name, ColumnKind.Text, false, x => ListText.Write(value(x)));

    /// <summary>Three columns: the SI value, the unit's code (which also says the kind), the text as typed.</summary>
    public Columns<T> Quantity(string name, Func<T, Quantity> value) => Quantity(name, value, nullable: false);

    public Columns<T> QuantityOrNull(string name, Func<T, Quantity?> value) => Quantity(name, value, nullable: true);

    public Columns<T> Reference(string name, string table, Func<T, object> value) => Add(name, ColumnKind.Integer, false, value, table);

    public Columns<T> ReferenceOrNull(string name, string table, Func<T, object?> value) => Add(name, ColumnKind.Integer, true, value, table);

    private Columns<T> Quantity(string name, Func<T, Quantity?> value, bool nullable) => this
        .Add($"{name}_si", ColumnKind.Real, nullable, x => value(x)?.Si)
        .Add($"{name}_unit", ColumnKind.Text, nullable, x => value(x)?.Unit.Code)
        .Add($"{name}_text", ColumnKind.Text, nullable, x => value(x)?.Text);

    private Columns<T> Add(string name, ColumnKind kind, bool nullable, Func<T, object?> value, string? references = null)
    {
        _all.Add(new(name, kind, nullable, references, value));
        return this;
    }
}
