namespace Thoubook.Web.Writing;

/// <summary>What stands in the form for taking a file in.</summary>
public sealed record ImportForm
{
    public string Text { get; init; } = "";

    /// <summary>The name of the file, for messages; never used as a path.</summary>
    public string FileName { get; init; } = "pasted";

    /// <summary>The book that the limits stand in.</summary>
    public string Book { get; init; } = "";

    public string Unit { get; init; } = "";

    public string Decimal { get; init; } = "";

    public IReadOnlySet<string> Confirmed { get; init; } = new HashSet<string>(StringComparer.Ordinal);
}
