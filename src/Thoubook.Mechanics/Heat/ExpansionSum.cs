using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Heat;

/// <summary>The sum <c>expansion</c>.</summary>
internal static class ExpansionSum
{
    public static Sum Description { get; } = new(Answer)
    {
        Name = "expansion",
        Question = "How large is a part at another temperature than 20 °C?",
        Source = "Definition of the mean coefficient of linear expansion; ISO 1:2016 for 20 °C; coefficients from the table of materials",
        Inputs =
        [
            new("size", "L_20", "size at 20 °C", Measure.Length),
            new("temperature", "T", "temperature of the part", Measure.Temperature) { Allowed = Allowed.Between(200, 800) },
            new("material", "", "material by name", Measure.Name),
            new("expansion", "α", "mean coefficient of linear expansion, in place of a material", Measure.Expansion) { Allowed = Allowed.Between(-1e-4, 1e-3), IsOptional = true },
        ],
        Outputs =
        [
            new("growth", "ΔL", "growth from 20 °C", Measure.Length),
            new("size", "L_T", "size at the temperature", Measure.Length),
            new("standard-uncertainty", "u_ΔL", "standard uncertainty of the growth from the coefficient", Measure.Length),
        ],
        Examples = ["size=1.2535in material=\"cast aluminium\" temperature=80°C", "size=82.95mm expansion=21.5e-6/K temperature=120°C"],
        Together = inputs => (inputs.MaybeWord("material"), inputs.Maybe("expansion")) switch
        {
            (null, null) => [new("material", "neither material nor expansion", "one of the two", "Name a material, or give its coefficient.")],
            ({ } name, null) => Materials.TryFind(name, out _, out var nearest) ? [] : [Unknown("material", name, nearest)],
            ({ }, { }) => [new("expansion", "material and expansion", "one of the two", "Leave one out.")],
            _ => [],
        },
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var name = inputs.MaybeWord("material");
        ExpansionCoefficient coefficient;
        var source = "";
        if (name is not null && Materials.TryFind(name, out var material, out _))
            (coefficient, source) = (material.Expansion, material.Source);
        else
            coefficient = new ExpansionCoefficient(inputs["expansion"], 0);
        var growth = Expansion.Growth(inputs["size"], coefficient, inputs["temperature"], source, trace);
        return growth < 0 ? "It shrinks." : growth > 0 ? "It grows." : "It keeps its size.";
    }

    internal static SumProblem Unknown(string key, string name, IReadOnlyList<string> nearest) =>
        new(key, name, "a material of the table", nearest.Count > 0 ? $"Did you mean {string.Join(" or ", nearest)}? Or give the coefficient as expansion." : "Give the coefficient as expansion instead.");
}
