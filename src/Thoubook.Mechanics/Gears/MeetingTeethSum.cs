using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Gears;

/// <summary>The sum <c>meeting-teeth</c>.</summary>
internal static class MeetingTeethSum
{
    public static Sum Description { get; } = new(Answer)
    {
        Name = "meeting-teeth",
        Question = "Which teeth of two gears meet, and after how many turns do they meet again?",
        Source = "Arithmetic of the hunting tooth (common practice)",
        Inputs =
        [
            new("teeth", "z_1", "teeth of the first gear", Measure.Number) { IsWhole = true, Allowed = Allowed.Between(1, 1_000) },
            new("other-teeth", "z_2", "teeth of the second gear", Measure.Number) { IsWhole = true, Allowed = Allowed.Between(1, 1_000) },
        ],
        Outputs =
        [
            new("common-divisor", "g_c", "greatest number that divides both", Measure.Number),
            new("partners", "n", "teeth of the second gear that one tooth of the first meets", Measure.Number),
            new("engagements", "N", "engagements before a pair meets again", Measure.Number),
            new("turns", "r_1", "turns of the first gear before a pair meets again", Measure.Number),
            new("other-turns", "r_2", "turns of the second gear before a pair meets again", Measure.Number),
        ],
        Examples = ["teeth=10 other-teeth=11", "teeth=11 other-teeth=11"],
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var (first, second) = ((int)inputs["teeth"], (int)inputs["other-teeth"]);
        var met = MeetingTeeth.Of(first, second, trace);
        trace.Line("r_2", "turns of the second gear before a pair meets again", "N/z_2", first / met.CommonDivisor, Units.None);
        return met.CommonDivisor == 1 ? "Each tooth meets each." : first == second ? "The same teeth always meet: a damaged tooth marks one mate only." : "Each tooth meets some of the others only.";
    }
}
