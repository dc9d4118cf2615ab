using Thoubook.Workshop.Oil;

namespace Thoubook.Web.Pages.Oil;

/// <summary>What a person supposes of the oil system beside the slides, as typed.</summary>
public sealed record OilSupposed
{
    /// <summary>A dimension, a fit, or a size of an element.</summary>
    public string What { get; init; } = "";

    public string Becomes { get; init; } = "";

    public string Grade { get; init; } = "";

    /// <summary>An element to be blanked.</summary>
    public string Blank { get; init; } = "";

    /// <summary>A blanked element to be fitted again.</summary>
    public string Open { get; init; } = "";

    public bool IsNothing => Supposition.IsNothing;

    public OilSupposition Supposition => new()
    {
        Set = What.Length + Becomes.Length > 0 ? [$"{What}={Becomes}"] : [],
        Oil = Grade.Length > 0 ? Grade : null,
        Blank = Blank.Length > 0 ? [Blank] : [],
        Open = Open.Length > 0 ? [Open] : [],
    };

    public static OilSupposed Of(IQueryCollection asked)
    {
        return new() { What = Said("what"), Becomes = Said("becomes"), Grade = Said("grade"), Blank = Said("blank"), Open = Said("open") };

        string Said(string field) => asked[field].ToString().Trim();
    }
}
