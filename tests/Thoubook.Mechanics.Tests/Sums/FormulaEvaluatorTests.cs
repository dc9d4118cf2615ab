using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Tests.Sums;

public sealed class FormulaEvaluatorTests
{
    private static readonly WorkingInput[] Inputs = [new("a", [3], false), new("b_1", [2], false), new("x", [1, 2, 4], true), new("one", [5], true)];

    [Theory]
    [InlineData("a + b_1 × 2", 7)]
    [InlineData("(a + b_1) × 2", 10)]
    [InlineData("a − b_1 − 1", 0)]
    [InlineData("12/a/b_1", 2)]
    [InlineData("−a^2", -9)]
    [InlineData("2^3^1", 8)]
    [InlineData("sqrt(a × 12)", 6)]
    [InlineData("sum(x^2)", 21)]
    [InlineData("sum(x)/count(x) − greatest(x) + least(x)", 7.0 / 3 - 3)]
    [InlineData("max(a, b_1) − min(a, b_1)", 1)]
    [InlineData("exp(ln(a)) + abs(−b_1)", 5)]
    [InlineData("Phi(0) + T(0, a)", 1)]
    [InlineData("sum(one)", 5)]
    [InlineData("0.25 × 4", 1)]
    [InlineData("sin(π/6) + cos(π/3)", 1)]
    [InlineData("tan(acos(0.6)) × a", 4)]
    public void Evaluate_FollowsTheNotation(string formula, double expected) =>
        Assert.Equal(expected, FormulaEvaluator.Evaluate(formula, Inputs).Single, 1e-12);

    [Theory]
    [InlineData("a +")]
    [InlineData("a b_1")]
    [InlineData("(a")]
    [InlineData("c")]
    [InlineData("sum(a)")]
    [InlineData("sinh(a)")]
    [InlineData("x + one")]
    public void Evaluate_RefusesWhatIsNotInTheNotation(string formula) =>
        Assert.Throws<FormatException>(() => FormulaEvaluator.Evaluate(formula, Inputs).Single);

    [Fact]
    public void Notation_NamesExactlyTheFunctionsThatCanBeEvaluated()
    {
        foreach (var name in Formulas.Functions.Keys)
        {
            var formula = name is "sum" or "count" or "least" or "greatest" ? $"{name}(x)" : name is "min" or "max" or "T" or "t" or "g" ? $"{name}(0.9 × 10, 0.95)" : $"{name}(0.5)";
            if (name == "t")
                formula = "t(0.9, 3)";
            Assert.False(double.IsNaN(FormulaEvaluator.Evaluate(formula, Inputs).Single), name);
        }
    }

    [Fact]
    public void SymbolsIn_LeavesFunctionsAndNumbersOut() =>
        Assert.Equal(["a_T", "b"], Formulas.SymbolsIn("sqrt(sum((a_T × b)^2)) + 1.5 × b × π"));
}
