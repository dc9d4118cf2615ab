using System.Diagnostics.CodeAnalysis;

namespace Thoubook.Store.Tables;

/// <summary>
/// Everything ever written is an entry: a fact, or an edit of a definition. Its sequence number is the workshop's; the greatest one is the
/// workshop's state. The tables of facts and of edits hold what each entry says.
/// </summary>
internal sealed class EntryTable : Table
{
    [SetsRequiredMembers]
    private EntryTable(string name, IReadOnlyList<Column> lead, IReadOnlyList<Column> content)
        : base(name, lead, content)
    {
        AppendOnly = true;
        Key = [lead[0].Name];
    }

    /// <summary>Number, identifier, whose engine (none where it is the workshop's own), what kind (the table that says the rest), when, who.</summary>
    public static EntryTable Entries { get; } = new(
        "entry",
        [Number("sequence")],
        [
            new Plain("id", ColumnKind.Blob),
            Number("engine_id", "engine", nullable: true),
            new Plain("kind", ColumnKind.Text),
            new Plain("at_utc_ns", ColumnKind.Integer),
            new Plain("offset_s", ColumnKind.Integer),
            new Plain("by_whom", ColumnKind.Text),
        ])
    { Unique = [["id"]], FoundBy = [["engine_id", "kind"]] };

    /// <summary>An edit of a definition: in which table, of which name, what it was and what it became, as JSON. No before: it was added.</summary>
    public static EntryTable Edits { get; } = new(
        "definition_edit",
        [Number("sequence", "entry")],
        [
            new Plain("definition", ColumnKind.Text),
            new Plain("name", ColumnKind.Text),
            new Plain("revision", ColumnKind.Integer),
            new Plain("before", ColumnKind.Text, Nullable: true),
            new Plain("after", ColumnKind.Text),
        ]);

    /// <summary>What a conclusion relied on, in the order given.</summary>
    public static EntryTable ReliedOn { get; } = new(
        "relied_on",
        [Number("sequence", "entry"), Number("position"), Number("on_sequence", "entry")],
        [])
    { Key = ["sequence", "position"] };

    private sealed record Plain(string Name, ColumnKind Kind, bool Nullable = false) : Column(Name, Kind, Nullable, null);
}
