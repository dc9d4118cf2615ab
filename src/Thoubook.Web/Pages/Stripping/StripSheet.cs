using Thoubook.Appraisal;
using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Web.Pages.Stripping;

/// <summary>What the sheet of taking apart shows.</summary>
/// <param name="Engine">As it stands.</param>
/// <param name="Strip">What comes off.</param>
/// <param name="Report">What was found against what was left.</param>
public sealed record StripSheet(EngineAppraisal Engine, Strip Strip, IReadOnlyList<FoundAndLeft> Report)
{
    public EngineRecord Record => Engine.Record;

    public EngineName Name => Record.Engine.Name;

    /// <summary>The part that is to come out, as it was asked for.</summary>
    public string Wanted { get; init; } = "";

    public ComesOff? Off { get; init; }

    /// <summary>Asked for as it came, with everything in place, though something is signed.</summary>
    public bool Whole { get; init; }

    /// <summary>Which removal is opened; empty: the first of which something is still asked.</summary>
    public string At { get; init; } = "";

    /// <summary>Why what was sent was not taken, by the number of the ask; 0 stands for what was added by hand.</summary>
    public IReadOnlyDictionary<int, IReadOnlyList<Problem>> Problems { get; init; } = new Dictionary<int, IReadOnlyList<Problem>>();

    /// <summary>What was typed, by the number of the ask.</summary>
    public IReadOnlyDictionary<int, string> Typed { get; init; } = new Dictionary<int, string>();

    /// <summary>What comes off: on the way to the part where one was asked for, else everything.</summary>
    public IReadOnlyList<Removal> Removals => Off?.Removals ?? Strip.Removals;

    public Removal? Opened => Removals.FirstOrDefault(r => KeyOf(r) == At) ?? Removals.FirstOrDefault(r => Strip.Open(r).Any());

    public static string KeyOf(Removal removal) => removal.Step?.Name.Text ?? (removal.Parts.Count > 0 ? $"part {removal.Parts[0]}" : $"joint {removal.Joints[0]}");

    /// <summary>What a removal is, as a person says it.</summary>
    public static string SaidOf(Removal removal) => Sheets.Said.Sentence(removal.Step is { } step
        ? step.What ?? Sheets.Said.Words(step.Name.Text)
        : removal.Parts.Count > 0 ? string.Join(", ", removal.Parts.Select(p => Sheets.Said.Words(p.Leaf))) : string.Join(", ", removal.Joints.Select(j => Sheets.Said.Words(j.Text))));

    /// <summary>What an ask is of and asks, as a person says it.</summary>
    public static string SaidOf(Ask ask) => ask.Kind switch
    {
        AskKind.Tag => $"Tag on {ItemOf(ask)}",
        AskKind.Figure => Sheets.Said.Sentence($"{Sheets.Said.Words(ask.Figure!.Value.Local)} of {Sheets.Said.Words(ask.Figure.Value.Part.Leaf)}"),
        _ => Sheets.Said.Sentence($"{ItemOf(ask)}: {ask.What}"),
    };

    public static string SaidOf(AsFound found) => found.Skipped
        ? $"passed over{(found.Words is { } why ? $": {why}" : "")}"
        : string.Join(", ", new[] { found.Value?.Text, found.Words, found.Tag is { } tag ? $"tag {tag}" : null }.OfType<string>());

    /// <summary>The name of the part or the joint, without the way to it.</summary>
    private static string ItemOf(Ask ask) => Sheets.Said.Words(ask.Of.Name[(ask.Of.Name.LastIndexOf('/') + 1)..]);
}
