using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Oil;

/// <summary>The sum <c>seconds</c>.</summary>
internal static class SecondsSum
{
    private static readonly string[] Cups = ["saybolt-universal", "saybolt-furol", "redwood-1", "redwood-2"];

    public static Sum Description { get; } = new(Answer)
    {
        Name = "seconds",
        Question = "What is the viscosity of an oil that an old book gives in Saybolt or Redwood seconds, or the other way round?",
        Source = "ASTM D2161 for Saybolt (Furol from memory); the usual formulas of the Redwood cups",
        Inputs =
        [
            new("cup", "", "the cup", Measure.Word) { Words = Cups },
            new("seconds", "t", "seconds of the cup", Measure.Time) { Allowed = Allowed.Between(1, OutflowSeconds.Greatest), IsOptional = true },
            new("viscosity", "ν", "kinematic viscosity, in place of the seconds", Measure.KinematicViscosity) { Allowed = Allowed.Between(1e-7, 1), IsOptional = true },
            new("temperature", "T", "temperature of the oil in the cup; usual were 100, 130 and 210 °F, with Redwood 70, 140 and 200 °F", Measure.Temperature) { Allowed = Allowed.Between(250, 450), Default = 310.928 },
        ],
        Outputs =
        [
            new("viscosity", "ν", "kinematic viscosity", Measure.KinematicViscosity),
            new("seconds", "t", "seconds of the cup", Measure.Time),
            new("squares", "n", "viscosity in mm²/s (cSt)", Measure.Number),
        ],
        Examples = ["cup=saybolt-universal seconds=100s temperature=210°F", "cup=redwood-1 viscosity=110cSt"],
        Together = Check,
    };

    private static IEnumerable<SumProblem> Check(SumInputs inputs)
    {
        var (cup, seconds, viscosity) = (CupOf(inputs), inputs.Maybe("seconds"), inputs.Maybe("viscosity"));
        if (seconds is null == viscosity is null)
            yield return new("seconds", seconds is null ? "neither seconds nor viscosity" : "seconds and viscosity", "one of the two", "Give what is known and leave the other out.");
        else if (seconds < OutflowSeconds.Least(cup))
            yield return new("seconds", Invariant($"{seconds:G6} s"), Invariant($"{OutflowSeconds.Least(cup)} s or more of this cup"), "So thin an oil runs out too fast for this cup to tell its viscosity; use another cup's figure.");
        else if (viscosity is { } nu && OutflowSeconds.LeastViscosity(cup, inputs["temperature"]) is var least && nu < 1e-6 * least)
            yield return new("viscosity", Invariant($"{1e6 * nu:G6} mm²/s"), Invariant($"{least:G4} mm²/s or more for this cup"), "So thin an oil runs out too fast for this cup; choose another.");
    }

    private static string Answer(SumInputs inputs, Written trace)
    {
        var (cup, temperature) = (CupOf(inputs), inputs["temperature"]);
        if (inputs.Maybe("seconds") is { } seconds)
            OutflowSeconds.Viscosity(cup, seconds, temperature, trace);
        else
            OutflowSeconds.Seconds(cup, inputs["viscosity"], temperature, trace);
        if (cup == OutflowCup.SayboltFurol && Math.Abs(temperature - 323.15) > 3 && Math.Abs(temperature - 372.04) > 3)
            trace.Caution("Furol seconds were taken at 122 or 210 °F; the formula of the nearer one is used.");
        return "The figures belong to the temperature in the cup, not to another.";
    }

    private static OutflowCup CupOf(SumInputs inputs) => (OutflowCup)Array.IndexOf(Cups, inputs.Word("cup"));

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
