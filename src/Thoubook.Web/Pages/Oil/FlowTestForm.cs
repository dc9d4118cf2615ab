using Thoubook.Record;

namespace Thoubook.Web.Pages.Oil;

/// <summary>What stands in the form for a flow test.</summary>
public sealed record FlowTestForm
{
    /// <summary>Made with the form, so that a form sent twice is stored once.</summary>
    public FactId Id { get; init; } = FactId.New();

    public IReadOnlyDictionary<string, string> Given { get; init; } = new Dictionary<string, string>();

    public IReadOnlyList<Problem> Problems { get; init; } = [];

    public bool IsWrong(string field) => Problems.Any(p => p.Field.Replace("-", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal)
        .Equals(field == "temperature" ? "oiltemperature" : field.Replace("-", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase));
}
