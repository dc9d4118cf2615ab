using Thoubook.Mechanics.Heat;
using Thoubook.Mechanics.Metrology;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Fits;

/// <summary>The sum <c>stack</c>.</summary>
internal static class StackSum
{
    private static readonly string[] SpreadWords = ["rectangular", "triangular", "normal", "arcsine"];

    public static Sum Description { get; } = new(Answer)
    {
        Name = "stack",
        Question = "What gap do several sizes make together, at worst and likely, each at its own temperature?",
        Source = "Scholz, Tolerance stack analysis methods, 1995; JCGM 100:2008 for the spreads; JCGM 101:2008 for the draws",
        Inputs =
        [
            new("nominal", "L", "middle of each size at 20 °C", Measure.Length) { List = "term" },
            new("coefficient", "a", "what one unit of each size adds to the gap, with its sign", Measure.Number) { List = "term", Default = 1 },
            new("half-width", "b", "half the width between the limits of each size", Measure.Length) { List = "term", Allowed = Allowed.ZeroOrMore, Default = 0 },
            new("distribution", "", "how each size lies between its limits", Measure.Word) { List = "term", Words = SpreadWords },
            new("name", "", "what each size is", Measure.Name) { List = "term" },
            new("temperature", "T", "temperature of each part", Measure.Temperature) { List = "term", Allowed = Allowed.Between(200, 800), Default = Expansion.Reference },
            new("material", "", "material of each part by name", Measure.Name) { List = "term" },
            new("expansion", "α", "mean coefficient of linear expansion of each part, in place of materials", Measure.Expansion) { List = "term", Allowed = Allowed.Between(-1e-4, 1e-3), Default = 0 },
            new("shift", "m", "share of each half width that a steady offset may use up", Measure.Number) { List = "term", Allowed = Allowed.Between(0, 1), Default = 0 },
            new("min", "G_min", "least gap wanted", Measure.Length) { IsOptional = true },
            new("max", "G_max", "greatest gap wanted", Measure.Length) { IsOptional = true },
            new("draws", "n", "random draws (Monte Carlo); left out, none are made", Measure.Number) { Allowed = Allowed.Between(1_000, 10_000_000), IsOptional = true },
            new("seed", "", "start of the draws; the same seed gives the same figures", Measure.Number) { Allowed = Allowed.Between(0, 1e15), Default = 1 },
        ],
        Outputs =
        [
            new("gap", "G", "gap with every size at its middle", Measure.Length),
            new("worst-least", "G_worst_least", "least gap that the limits allow", Measure.Length),
            new("worst-greatest", "G_worst_greatest", "greatest gap that the limits allow", Measure.Length),
            new("root-sum-square", "R", "half width by root sum square", Measure.Length),
            new("inflated-root-sum-square", "R_infl", "half width by root sum square times 1.5", Measure.Length),
            new("mean-shift", "R_shift", "half width with steady offsets", Measure.Length),
            new("standard-deviation", "σ", "standard deviation of the gap", Measure.Length),
            new("probability", "P", "probability that the gap lies within what is wanted, taken as normal", Measure.Number),
            new("drawn-mean", "G_drawn", "mean gap of the draws", Measure.Length),
            new("drawn-standard-deviation", "σ_drawn", "standard deviation of the draws", Measure.Length),
            new("drawn-probability", "P_drawn", "share of the draws within what is wanted", Measure.Number),
            new("drawn-low", "G_low", "gap below which 0.135 % of the draws lie", Measure.Length),
            new("drawn-high", "G_high", "gap above which 0.135 % of the draws lie", Measure.Length),
        ],
        Examples = ["name=body nominal=1.2535in coefficient=1 half-width=0.5thou name=gear nominal=1.2510in coefficient=-1 half-width=0.5thou min=1.5thou max=3.5thou"],
        Together = Check,
    };

    private static IEnumerable<SumProblem> Check(SumInputs inputs)
    {
        if (inputs.IsGiven("material") && inputs.IsGiven("expansion"))
            yield return new SumProblem("expansion", "material and expansion", "one of the two", "Leave one out.");
        if (inputs.IsGiven("temperature") && !inputs.IsGiven("material") && !inputs.IsGiven("expansion"))
            yield return new SumProblem("temperature", "temperatures without material or expansion", "a material or a coefficient for each term", "Give material or expansion for each term, or leave the temperatures out.");
        foreach (var name in inputs.IsGiven("material") ? inputs.EachWord("material") : [])
        {
            if (!Materials.TryFind(name, out _, out var nearest))
                yield return ExpansionSum.Unknown("material", name, nearest);
        }

        if (inputs.Maybe("min") > inputs.Maybe("max"))
            yield return new SumProblem("min", "min above max", "min not above max", "Exchange them or check the figures.");
    }

    private static string Answer(SumInputs inputs, Written trace)
    {
        var expansions = inputs.IsGiven("material")
            ? [.. inputs.EachWord("material").Select(name => Materials.TryFind(name, out var material, out _) ? material.Expansion.Value : 0)]
            : inputs.Each("expansion");
        var (nominals, coefficients, halfWidths, spreads, temperatures, shifts) = (inputs.Each("nominal"), inputs.Each("coefficient"), inputs.Each("half-width"), inputs.EachWord("distribution"), inputs.Each("temperature"), inputs.Each("shift"));
        var terms = new StackTerm[nominals.Length];
        for (var i = 0; i < terms.Length; i++)
        {
            terms[i] = new StackTerm(coefficients[i], nominals[i], halfWidths[i], (Spread)Array.IndexOf(SpreadWords, spreads[i]))
            {
                Expansion = expansions[i],
                Rise = temperatures[i] - Expansion.Reference,
                MeanShift = shifts[i],
            };
        }

        var gap = Stack.Of(terms, trace);
        var wanted = Interval.Between(inputs.Maybe("min") ?? double.NegativeInfinity, inputs.Maybe("max") ?? double.PositiveInfinity);
        Stack.Within(gap, wanted, trace);
        if (inputs.Maybe("draws") is { } draws)
            Drawn(terms, (int)draws, (ulong)inputs["seed"], wanted, trace);

        return wanted == Interval.Unlimited ? "The gap follows from the sizes as below."
            : wanted.Contains(gap.Worst.Least) && wanted.Contains(gap.Worst.Greatest) ? "The gap is as wanted whatever the sizes within their limits."
            : gap.Worst.Greatest < wanted.Least || gap.Worst.Least > wanted.Greatest ? "The gap is never as wanted with these sizes."
            : "The gap is as wanted for some of the sizes within their limits, not for all.";
    }

    private static void Drawn(StackTerm[] terms, int draws, ulong seed, Interval wanted, Written trace)
    {
        var sample = Stack.Draw(terms, draws, seed);
        var how = $"JCGM 101:2008, {draws} draws from seed {seed}";
        trace.Given("G_drawn", "mean gap of the draws", sample.Mean, Units.Metre, how);
        trace.Given("σ_drawn", "standard deviation of the draws", sample.StandardDeviation, Units.Metre, how);
        trace.Given("G_low", "gap below which 0.135 % of the draws lie", sample.Quantile(0.00135), Units.Metre, how);
        trace.Given("G_high", "gap above which 0.135 % of the draws lie", sample.Quantile(0.99865), Units.Metre, how);
        if (wanted != Interval.Unlimited)
            trace.Given("P_drawn", "share of the draws within what is wanted", sample.ShareWithin(wanted), Units.None, how);
        if (draws < 100_000)
            trace.Caution("With fewer than 100,000 draws the tails are rough.");
    }
}
