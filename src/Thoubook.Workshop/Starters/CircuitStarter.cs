using Thoubook.Record;
using Thoubook.Record.Circuits;
using static Thoubook.Workshop.Starters.StarterQuestion;

namespace Thoubook.Workshop.Starters;

/// <summary>What the starter drew: the circuit, and what has to be added to the engine so that it can be measured.</summary>
/// <param name="Circuit">The circuit, revision 0.</param>
/// <param name="Added">Parts and fits that the engine lacks: the clearances that decide the pressure, with assumed limits. Nothing else.</param>
public sealed record StartedCircuit(OilCircuit Circuit, EngineRecord Added);

/// <summary>
/// Draws the circuit of an engine from a dozen questions. Sizes that the engine's record has are taken from there by their usual names; the
/// rest is assumed and says so in the element's note.
/// </summary>
public static class CircuitStarter
{
    /// <summary>Stands first in the note of an element that has assumed sizes; the keys follow.</summary>
    public const string Assumed = "assumed, measure it: ";

    public static IReadOnlyList<StarterQuestion> Questions { get; } =
    [
        Choice<Sump>("sump", "Wet or dry sump?"),
        Count("mains", "How many main bearings?", 1, 16, "3"),
        Choice<Groove>("groove", "Is the groove in the main bearings full, all round, or half?"),
        Count("big-ends", "How many big ends? Left out: one less than mains, at least one.", 1, 16, "2"),
        Choice<BigEndFeed>("big-end-feed", "Are the big ends fed through the crank from the mains, or by splash?"),
        Choice<ReliefBody>("relief", "What is the relief body: a single valve, a cascade (a later stage is fed by what an earlier one spills), a relief with a reducing valve, or a jet and relief for the low pressure?"),
        Choice<YesNo>("filter", "Is there a filter in the main flow?"),
        Choice<YesNo>("cooler", "Is there a cooler?"),
        Count("camshaft-bearings", "How many camshaft bearings are fed with oil? They are on the low pressure where there is one.", 0, 16, "0"),
        Count("timing-jets", "How many jets on the timing gears?", 0, 12, "0"),
        Choice<OilConsumer>("consumer", "Is there a hydraulic propeller or a governor that takes oil?"),
        Choice<YesNo>("consumer-blanked", "Is it blanked off?"),
        Count("scavenge-pumps", "How many scavenge pumps? A wet sump has none.", 0, 4, "0"),
        new("mains-at", "Which parts are the main bearings? {n} is the number; or the names of their clearances, with commas between.", "crankcase/main-{n}"),
        new("big-ends-at", "Which parts are the big ends, in the same way?", "rods/rod-{n}"),
        new("camshaft-at", "Which parts are the camshaft bearings, in the same way?", "camshaft/bearing-{n}"),
        new("pump-at", "Which part is the pressure pump?", "pressure-pump"),
        new("scavenge-at", "Which parts are the scavenge pumps?", "scavenge-pump-{n}"),
        new("journal", "How thick are the main journals, where the record does not say?", "2 in"),
        new("oil", "Which oil?", "SAE 40"),
        new("idle", "How fast does it idle?", "450 rev/min"),
    ];

    /// <summary>Draws the circuit.</summary>
    /// <param name="record">The engine; it may have nothing yet.</param>
    /// <param name="answers">Text by the question's key; what is left out is as usual.</param>
    public static Outcome<StartedCircuit> Make(EngineRecord record, IReadOnlyDictionary<string, string> answers) =>
        CircuitAnswers.Of(answers).Then(read => new CircuitDraughtsman(record, read).Draw());
}
