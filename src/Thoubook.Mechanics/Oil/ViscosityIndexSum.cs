using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Oil;

/// <summary>The sum <c>viscosity-index</c>.</summary>
internal static class ViscosityIndexSum
{
    public static Sum Description { get; } = new(Answer)
    {
        Name = "viscosity-index",
        Question = "How little does an oil thin between 40 and 100 °C?",
        Source = "ASTM D2270-10",
        Inputs =
        [
            new("at-forty", "ν_40", "kinematic viscosity at 40 °C", Measure.KinematicViscosity) { Allowed = Allowed.Between(2e-6, 0.1) },
            new("at-hundred", "ν_100", "kinematic viscosity at 100 °C", Measure.KinematicViscosity) { Allowed = Allowed.Between(ViscosityIndex.LeastAt100, 1e-2) },
        ],
        Outputs = [new("index", "VI", "viscosity index", Measure.Number)],
        Examples = ["at-forty=73.3cSt at-hundred=8.86cSt"],
        Together = inputs => inputs["at-hundred"] < inputs["at-forty"]
            ? []
            : [new("at-hundred", "an oil not thinner at 100 °C than at 40 °C", "less than at 40 °C", "Check both figures, or exchange them.")],
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var index = ViscosityIndex.Of(inputs["at-forty"], inputs["at-hundred"], trace);
        if (index is < 0 or > 400)
            trace.Caution("No lubricating oil has such an index: check both figures.");
        return index switch
        {
            < 80 => "It thins more than straight mineral oils usually do.",
            <= 110 => "It thins as straight mineral oils do.",
            _ => "It thins less than straight mineral oils do, as multigrades and synthetic oils.",
        };
    }
}
