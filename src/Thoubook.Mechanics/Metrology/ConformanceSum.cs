using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Metrology;

/// <summary>The sum <c>conformance</c>.</summary>
internal static class ConformanceSum
{
    public static Sum Description { get; } = new(Answer)
    {
        Name = "conformance",
        Question = "How probable is it that a measured thing lies within its limits, and what does that prove?",
        Source = "JCGM 106:2012; decision rule of ISO 14253-1:2017",
        Inputs =
        [
            new("value", "y", "best value", Measure.Any),
            new("u", "u", "standard uncertainty", Measure.AnyDifference) { Allowed = Allowed.AboveZero },
            new("min", "L", "lower limit", Measure.Any) { IsOptional = true },
            new("max", "U", "upper limit", Measure.Any) { IsOptional = true },
            new("degrees-of-freedom", "ν", "degrees of freedom of the standard uncertainty", Measure.Number) { Allowed = Allowed.AboveZero, IsOptional = true },
            new("probability", "p", "probability that a proof needs", Measure.Number) { Allowed = Allowed.Between(0.5, 0.999999), Default = DecisionRule.UsualProbability },
        ],
        Outputs =
        [
            new("probability", "P", "probability of conformance", Measure.Number),
            new("below", "P_below", "probability below the lower limit", Measure.Number),
            new("above", "P_above", "probability above the upper limit", Measure.Number),
            new("guard-factor", "k_g", "guard factor", Measure.Number),
            new("accept-from", "A_L", "least value that proves conformity", Measure.Any),
            new("accept-to", "A_U", "greatest value that proves conformity", Measure.Any),
        ],
        Examples = ["value=1.2530in u=0.1thou min=1.2530in max=1.2540in", "value=49.987mm u=2um min=49.966mm max=49.991mm"],
        Together = inputs => (inputs.Maybe("min"), inputs.Maybe("max")) switch
        {
            (null, null) => [new("min", "neither min nor max", "at least one limit", "Give min, max or both.")],
            ({ } min, { } max) when min > max => [new("min", "min above max", "min not above max", "Exchange them or check the figures.")],
            _ => [],
        },
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var limits = Interval.Between(inputs.Maybe("min") ?? double.NegativeInfinity, inputs.Maybe("max") ?? double.PositiveInfinity);
        var (y, u, p) = (inputs["value"], inputs["u"], inputs["probability"]);
        var dof = inputs.Maybe("degrees-of-freedom") ?? double.PositiveInfinity;
        var found = Conformance.Within(y, u, dof, limits, trace);
        trace.Given("p", "probability that a proof needs", p, Units.None);
        if (double.IsPositiveInfinity(dof))
            DecisionRule.AcceptanceZone(limits, u, p, trace);
        else if (dof < 3)
            trace.Caution("With so few degrees of freedom the answer leans on the readings being normal; more readings say more than this figure.");
        return found.Within >= p ? "Conformity is proved."
            : found.Below >= p ? "Non-conformity is proved: below the lower limit."
            : found.Above >= p ? "Non-conformity is proved: above the upper limit."
            : "Too close to call: neither conformity nor non-conformity is proved.";
    }
}
