using Thoubook.Workshop;

namespace Thoubook.Cli.Answers;

/// <summary>A reading or a check as it was stored.</summary>
internal sealed record RecordedAnswer(string Id, string Name, double Value, string Unit, string Understood)
{
    public static RecordedAnswer Of(Recorded recorded) =>
        new(recorded.Fact.Id.ToString(), recorded.Figure.Name.ToString(), recorded.Value.Si, recorded.Value.SiUnit, recorded.Value.Understood);
}
