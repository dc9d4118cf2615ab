using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Valves;

/// <summary>The sum <c>relief-setting</c>.</summary>
internal static class ReliefSettingSum
{
    public static Sum Description { get; } = new(Answer)
    {
        Name = "relief-setting",
        Question = "What do shims, turns of the screw and lapping the seat do to the setting of a relief valve?",
        Source = "Spring rate over seat area (common practice)",
        Inputs =
        [
            new("setting", "p_0", "setting now", Measure.Pressure) { Allowed = Allowed.Between(0, 1e8) },
            new("spring", "k", "spring rate", Measure.Stiffness) { Allowed = Allowed.Between(10, 1e7) },
            new("seat", "d", "contact diameter of the seat, or of the piston", Measure.Length) { Allowed = Allowed.Between(1e-3, 0.1) },
            new("shim", "s", "shim added; below 0 where taken out", Measure.Length) { Allowed = Allowed.Between(-0.1, 0.1), Default = 0 },
            new("lapped", "t", "taken off the seat or the valve's face", Measure.Length) { Allowed = Allowed.Between(0, 0.01), Default = 0 },
            new("wanted", "p_2", "setting wanted", Measure.Pressure) { Allowed = Allowed.Between(0, 1e8), IsOptional = true },
            new("pitch", "P", "pitch of the adjusting screw", Measure.Length) { Allowed = Allowed.Between(1e-4, 0.01), IsOptional = true },
        ],
        Outputs =
        [
            new("setting", "p_1", "setting after shim and lapping", Measure.Pressure),
            new("by-shim", "e", "change of the setting for a tenth of a millimetre of shim", Measure.Pressure),
            new("shim-for-wanted", "s_2", "shim to add for the setting wanted", Measure.Length),
            new("turns-for-wanted", "n", "turns of the screw inwards for the setting wanted", Measure.Number),
        ],
        Examples = ["setting=45psi spring=2.2N/mm seat=14mm lapped=5thou wanted=60psi pitch=1mm"],
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var (setting, spring, seat) = (inputs["setting"], inputs["spring"], inputs["seat"]);
        var after = ValveSetting.After(setting, spring, seat, inputs["shim"], inputs["lapped"], trace);
        trace.Line("e", "change of the setting for a tenth of a millimetre of shim", "k × 0.0001/A", ValveSetting.ByShim(spring, Math.PI * seat * seat / 4) * 1e-4, Units.Pascal);
        trace.Caution("Before a spring is shimmed up, find out why it fell: a sunk seat, a tired spring or the wrong one.");
        if (after < 0)
            trace.Caution("The spring no longer reaches the valve: a setting below nil means that it lies open.");
        if (inputs.Maybe("wanted") is not { } wanted)
            return "The setting follows the shims and the seat as below.";
        trace.Given("p_2", "setting wanted", wanted, Units.Pascal);
        var shim = trace.Line("s_2", "shim to add for the setting wanted", "(p_2 − p_1) × A/k", ValveSetting.ShimFor(after, wanted, spring, seat), Units.Metre);
        if (inputs.Maybe("pitch") is { } pitch)
        {
            trace.Given("P", "pitch of the adjusting screw", pitch, Units.Metre);
            trace.Line("n", "turns of the screw inwards for the setting wanted", "s_2/P", shim / pitch, Units.None);
        }

        return shim < 0 ? "Shim is to come out, or the screw to be turned out." : "Shim is to be added, or the screw to be turned in.";
    }
}
