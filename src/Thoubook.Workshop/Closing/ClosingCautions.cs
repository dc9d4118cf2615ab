using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Workshop.Closing;

/// <summary>Where putting an engine together can do harm: said at the same place by every door.</summary>
public static class ClosingCautions
{
    public static Caution TurningOver { get; } = new(
        "turning-over",
        "Turning over and lifting: loose gears and followers fall out, so lock or take out what is not held. Sling it at its lifting eyes over a trolley or a stand that is rated for it, and keep hands and feet from under it.");

    public static Caution TurningByHand { get; } = new(
        "turning-by-hand",
        "Turn it slowly, by hand, with the ignition dead and plugs out. Stop at the first thing felt: look before you push. Hands and rags clear of gears.");

    public static Caution Heat { get; } = new(
        "heat",
        "Heating and cooling for a fit: no open flame near oil or cleaning fluid, even heat and a stated greatest temperature, dry gloves. What is chilled burns the skin and draws damp; liquid gas wants air in the room and eye cover.");

    public static Caution Adhesive { get; } = new(
        "adhesive",
        "Adhesives and jointing: clean and dry threads and faces, gloves and air as their sheet says, and the cure over before oil or fuel comes to it.");

    public static Caution Cleaning { get; } = new(
        "cleaning",
        "Cleaning: no petrol, its vapour finds a flame across the room; earth the tray against static; oily rags in a shut metal bin, they can light by themselves. Old gaskets may hold asbestos, old paint lead, plating cadmium: wet them, never grind or blow them. Magnesium swarf burns and must not be wetted.");

    public static Caution Departures { get; } = new(
        "departures",
        "Mark the piece itself: a tag, a punch mark or paint where the next person sees it. A departure that stands only in a book is lost with the book.");

    public static Caution StopLimits { get; } = new(
        "stop-limits",
        "Permission to run loosens no limit at which the engine is stopped. These are fixed before the start from its documents, and whoever watches may stop it without a word.");

    public static Caution Licensed { get; } = new(
        "licensed",
        "Use under a licence is released by the licensed body that answers for it, and by nobody here. What stands here is evidence for that body.");

    /// <summary>Those of a step, as it is described.</summary>
    /// <param name="step">Which.</param>
    /// <param name="joints">The joints that it makes.</param>
    /// <param name="attitude">How the engine lies now; null: not known.</param>
    public static IReadOnlyList<Caution> Of(Step step, IReadOnlyList<Joint> joints, Attitude? attitude)
    {
        var words = string.Join(' ', step.Tools.Append(step.What).Append(step.Note).Concat(step.Holds.Select(h => h.What)));
        var made = string.Join(' ', joints.SelectMany(j => new[] { j.Locking, j.Sealing }));
        return
        [
            .. (step.Attitude is { } lies && attitude is { } now && lies != now) || Says(words, "sling", "hoist", "lift", "crane", "turn over", "turned over") ? One(TurningOver) : [],
            .. step.Kind == StepKind.TurnByHand ? One(TurningByHand) : [],
            .. Says(words, "heat", "oven", "hot plate", "warm", "blowlamp", "torch", "chill", "freez", "dry ice", "nitrogen") ? One(Heat) : [],
            .. step.Kind == StepKind.Seal || Says($"{words} {made}", "adhesive", "retaining compound", "thread lock", "threadlock", "locking compound", "jointing", "sealant", "compound") ? One(Adhesive) : [],
            .. Says(words, "wash", "clean", "paraffin", "solvent", "degrease", "petrol") ? One(Cleaning) : [],
        ];
    }

    private static Caution[] One(Caution caution) => [caution];

    private static bool Says(string text, params string[] words) => words.Any(w => text.Contains(w, StringComparison.OrdinalIgnoreCase));
}
