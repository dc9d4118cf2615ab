using Thoubook.Record;
using Thoubook.Record.Circuits;

namespace Thoubook.Web.Pages.Oil;

/// <summary>What stands in the form for an element: as it was sent, or as it is.</summary>
public sealed record ElementForm
{
    public const string SizeField = "size-";

    /// <summary>Empty for a new one.</summary>
    public string Name { get; init; } = "";

    public bool IsNew { get; init; }

    public int Revision { get; init; }

    public ElementKind Kind { get; init; }

    public string From { get; init; } = "";

    public string To { get; init; } = "";

    public string Vent { get; init; } = "";

    public string Part { get; init; } = "";

    public string Label { get; init; } = "";

    public string Note { get; init; } = "";

    public bool Blanked { get; init; }

    public IReadOnlyDictionary<string, string> Sizes { get; init; } = new Dictionary<string, string>();

    public IReadOnlyList<Problem> Problems { get; init; } = [];

    public static ElementForm Of(ElementDefinition element, EngineRecord record) => new()
    {
        Name = element.Name.Text,
        Revision = element.Revision,
        Kind = element.Kind,
        From = element.From.Text,
        To = element.To.Text,
        Vent = element.Vent?.Text ?? "",
        Part = element.Part?.Path ?? "",
        Label = element.Label ?? "",
        Note = element.Note ?? "",
        Blanked = element.Blanked,
        Sizes = element.Values.ToDictionary(v => v.Key, v => CircuitText.Write(v.Value, element.Part, record)),
    };

    public bool IsWrong(string field) => Problems.Any(p => p.Field == field || p.Field.EndsWith($", {field}", StringComparison.Ordinal));
}
