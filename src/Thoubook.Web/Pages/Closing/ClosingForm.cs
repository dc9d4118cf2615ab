using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Web.Pages.Closing;

/// <summary>What stands in the forms of a sheet of closing up: which way was chosen for which missing thing, and what was sent and not taken.</summary>
public sealed record ClosingForm
{
    public static ClosingForm None { get; } = new();

    /// <summary>The form that was sent: <c>sign</c>, <c>joint cover-studs</c>; empty: none.</summary>
    public string Sent { get; init; } = "";

    public FactId? Id { get; init; }

    public IReadOnlyDictionary<string, string> Typed { get; init; } = new Dictionary<string, string>();

    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>Whether a missing thing is to be departed from or owed.</summary>
    public MissingWay? Way { get; init; }

    /// <summary>The missing thing.</summary>
    public WorkItem? Item { get; init; }

    public bool WasSent(string form) => Sent == form;

    public IReadOnlyList<Problem> ProblemsOf(string form) => WasSent(form) ? Problems : [];

    /// <summary>Made with the form, so that a form sent twice is stored once.</summary>
    public FactId IdOf(string form) => WasSent(form) && Id is { } id ? id : FactId.New();

    public string TypedIn(string form, string field, string otherwise = "") => WasSent(form) ? Typed.GetValueOrDefault(field, "") : otherwise;
}

/// <summary>What can be done about a missing thing beside doing it.</summary>
public enum MissingWay
{
    Depart,
    Owe,
}
