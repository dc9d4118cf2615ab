using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Metrology;

/// <summary>The sum <c>uncertainty</c>.</summary>
internal static class UncertaintySum
{
    private static readonly string[] Kinds = ["standard", "rectangular", "triangular", "arcsine", "resolution", "expanded"];

    public static Sum Description { get; } = new(Answer)
    {
        Name = "uncertainty",
        Question = "How well is a value known, from repeated readings and from what is known of the gauge and the rest?",
        Source = "JCGM 100:2008",
        Inputs =
        [
            new("reading", "x", "repeated readings", Measure.Any) { List = "reading", IsOptional = true },
            new("contribution", "q", "what each other source adds, as its kind says", Measure.AnyDifference) { List = "contribution", Allowed = Allowed.ZeroOrMore, IsOptional = true },
            new("kind", "", "what each contribution is: a standard uncertainty, a half width, a step, or an expanded uncertainty with factor 2", Measure.Word) { List = "contribution", Words = Kinds },
            new("sensitivity", "c", "what one unit of each source does to the value, with its sign", Measure.Number) { List = "contribution", Default = 1 },
            new("degrees-of-freedom", "ν", "degrees of freedom of each contribution; left out, it is taken as known", Measure.Number) { List = "contribution", Allowed = Allowed.AboveZero, Default = double.PositiveInfinity },
            new("source", "", "name of each source; the same name is one and the same error", Measure.Name) { List = "contribution" },
            new("probability", "p", "probability that the expanded uncertainty holds", Measure.Number) { Allowed = Allowed.Between(0.5, 0.999999), Default = 0.95 },
        ],
        Outputs =
        [
            new("mean", "x_mean", "mean of the readings", Measure.Any),
            new("scatter", "s", "scatter of the readings", Measure.AnyDifference),
            new("standard-uncertainty", "u_c", "combined standard uncertainty", Measure.AnyDifference),
            new("degrees-of-freedom", "ν_eff", "effective degrees of freedom", Measure.Number),
            new("coverage-factor", "k", "coverage factor", Measure.Number),
            new("expanded-uncertainty", "U", "expanded uncertainty", Measure.AnyDifference),
        ],
        Examples = ["reading=1.2531in reading=1.2530in reading=1.2532in contribution=0.1thou kind=rectangular source=micrometer contribution=0.1thou kind=resolution source=step"],
        Together = inputs => (inputs.CountOf("reading"), inputs.CountOf("contribution")) switch
        {
            (0, 0) => [new("contribution", "neither readings nor contributions", "at least one contribution, or two readings", "Give what is known.")],
            (1, _) => [new("reading", "one reading", "two or more, or none", "Read again, or give the repeatability as a contribution.")],
            _ => [],
        },
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var readings = inputs.Each("reading");
        var kinds = inputs.EachWord("kind");
        var contributions = inputs.Each("contribution");
        var parts = new UncertaintyBudget.Part[contributions.Length];
        for (var i = 0; i < parts.Length; i++)
        {
            var source = inputs.EachWord("source")[i];
            parts[i] = new UncertaintyBudget.Part(source.Length > 0 ? source : $"contribution {i + 1}", contributions[i], Divisor(kinds[i]), inputs.Each("sensitivity")[i], inputs.Each("degrees-of-freedom")[i]);
        }

        var budget = UncertaintyBudget.Of(readings, parts, inputs["probability"], trace);
        return budget.StandardUncertainty == 0 ? "Nothing that was given makes the value doubtful." : "The value lies within ± U with the stated probability.";
    }

    private static double Divisor(string kind) => kind switch
    {
        "rectangular" => Math.Sqrt(3),
        "triangular" => Math.Sqrt(6),
        "arcsine" => Math.Sqrt(2),
        "resolution" => Math.Sqrt(12),
        "expanded" => 2,
        _ => 1,
    };
}
