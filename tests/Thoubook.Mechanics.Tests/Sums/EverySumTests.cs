using CsCheck;
using Thoubook.Mechanics.Fits;
using Thoubook.Mechanics.Heat;
using Thoubook.Mechanics.Metrology;
using Thoubook.Mechanics.Sums;
using AllSums = Thoubook.Mechanics.Sums.Sums;

namespace Thoubook.Mechanics.Tests.Sums;

/// <summary>What every sum promises, asked with random questions made from its own description of its inputs.</summary>
public sealed class EverySumTests
{
    public static TheoryData<string> Names => [.. AllSums.All.Select(sum => sum.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryPrintedFormula_EvaluatesToItsPrintedValue(string name)
    {
        var sum = AllSums.Find(name, out _)!;
        var (answered, lines) = (0, 0);
        Questions(sum).Sample(
            request =>
            {
                if (sum.Run(request) is not SumOutcome.Answered(var result))
                    return;
                Interlocked.Increment(ref answered);
                foreach (var line in result.Working.Lines.Where(line => line.Formula.Length > 0))
                {
                    Interlocked.Increment(ref lines);
                    var value = FormulaEvaluator.Evaluate(line.Formula, line.Inputs);
                    Assert.Equal(line.IsList, value.IsList);
                    Assert.Equal(line.Values.Count, value.Items.Length);
                    for (var i = 0; i < value.Items.Length; i++)
                        AssertSame(line, value.Items[i], line.Values[i]);
                }
            },
            iter: 2_000);
        Assert.True(answered >= 40, $"{name}: only {answered} questions were answered; the test shows too little.");
        Assert.True(lines >= 3 * answered, $"{name}: the working has hardly a formula.");
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryAnswer_IsCompleteAndFinite(string name)
    {
        var sum = AllSums.Find(name, out _)!;
        var seen = new System.Collections.Concurrent.ConcurrentDictionary<string, bool>();
        Questions(sum).Sample(
            request =>
            {
                if (sum.Run(request) is not SumOutcome.Answered(var result))
                    return;
                Assert.NotEmpty(result.Answer);
                foreach (var value in result.Values)
                {
                    seen.TryAdd(value.Key, true);
                    Assert.True(double.IsFinite(value.Value) || value.Key == "degrees-of-freedom", $"{name}: {value.Key} is {value.Value}");
                    Assert.False(string.IsNullOrEmpty(value.Unit));
                    Assert.NotEqual(Units.Any, value.Unit);
                }
            },
            iter: 2_000);
        Assert.Equal(sum.Outputs.Select(output => output.Key).Order(), seen.Keys.Order());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryDescription_IsComplete(string name)
    {
        var sum = AllSums.Find(name, out _)!;
        Assert.EndsWith("?", sum.Question, StringComparison.Ordinal);
        Assert.NotEmpty(sum.Source);
        Assert.NotEmpty(sum.Examples);
        Assert.Equal(sum.Inputs.Count, sum.Inputs.Select(input => input.Key).Distinct().Count());
        Assert.Equal(sum.Outputs.Count, sum.Outputs.Select(output => output.Key).Distinct().Count());
        Assert.All(sum.Inputs, input => Assert.Matches("^[a-z]+(-[a-z]+)*$", input.Key));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void NothingGiven_IsRefusedWithWhatIsMissing(string name)
    {
        var refused = Assert.IsType<SumOutcome.Refused>(AllSums.Find(name, out _)!.Run(Request("m")));
        Assert.NotEmpty(refused.Problems);
        Assert.All(refused.Problems, problem => Assert.NotEmpty(problem.DoThis));
    }

    [Fact]
    public void SilentTrace_AllocatesNothing()
    {
        var terms = new StackTerm[] { new(1, 0.0318, 1e-5), new(-1, 0.0317, 1e-5, Spread.Normal), new(1, 1e-5, 1e-6, Spread.Triangular) };
        double[] readings = [1, 1.1, 0.9];
        double[] own = [0.1, 0.1, 0.1];
        UncertaintyBudget.Part[] parts = [new("gauge", 1e-6, 1, 1, 10), new("step", 1e-6, 3.46, 1, double.PositiveInfinity)];
        var interval = Interval.Between(0, 1);
        var sink = 0.0;
        Ask();
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 100; i++)
            Ask();
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(double.IsFinite(sink));

        void Ask()
        {
            sink += Conformance.Within(0.9, 0.1, interval).Within;
            sink += Conformance.Within(0.9, 0.1, 5, interval).Within;
            sink += Stack.Of(terms).Nominal;
            sink += Expansion.Growth(1, 2e-5, 350);
            sink += UncertaintyBudget.Of(readings, parts, 0.95, default(Silent)).Expanded;
            sink += Conformance.AllWithin(readings, own, own, interval).Within;
        }
    }

    [Fact]
    public void SilentAndWritten_GiveTheSame()
    {
        Gen.Select(Gen.Double[-1, 2], Gen.Double[0.01, 1], Gen.Double[1, 50]).Sample((y, u, nu) =>
        {
            var writer = new WorkingWriter("m");
            Assert.Equal(Conformance.Within(y, u, nu, Interval.Between(0, 1)), Conformance.Within(y, u, nu, Interval.Between(0, 1), writer.Trace));
        });
    }

    [Fact]
    public void UnknownInput_IsRefusedWithTheNearest()
    {
        var refused = Assert.IsType<SumOutcome.Refused>(AllSums.Find("conformance", out _)!.Run(Request("m", ("valu", 1), ("u", 1), ("min", 0))));
        Assert.Contains(refused.Problems, problem => problem.Key == "valu" && problem.DoThis.Contains("value", StringComparison.Ordinal));
        Assert.Contains(refused.Problems, problem => problem.Key == "value" && problem.Found == "nothing");
    }

    [Fact]
    public void ListsOfUnlikeLength_AreRefused_NotSpread()
    {
        var refused = Assert.IsType<SumOutcome.Refused>(AllSums.Find("stack", out _)!.Run(Request("m", ("nominal", 0.03), ("nominal", 0.02), ("coefficient", -1))));
        Assert.Contains(refused.Problems, problem => problem.Key == "coefficient" && problem.Found.Contains('2', StringComparison.Ordinal));
    }

    [Fact]
    public void UnknownSum_NamesTheNearest()
    {
        Assert.Null(AllSums.Find("conformence", out var nearest));
        Assert.Equal(["conformance"], nearest);
    }

    internal static SumRequest Request(string unit, params (string Key, double Value)[] quantities) => new(
        quantities.GroupBy(pair => pair.Key).ToDictionary(group => group.Key, group => (IReadOnlyList<double>)[.. group.Select(pair => pair.Value)]),
        new Dictionary<string, IReadOnlyList<string>>(),
        unit);

    /// <summary>Random questions: every input now given, now left out, lists of one to six, values from the allowed range near 1.</summary>
    private static Gen<SumRequest> Questions(Sum sum) => Gen.Select(Gen.Int[0, int.MaxValue / 2], Gen.Int[1, 6]).Select((seed, count) =>
    {
        var random = new Random(seed);
        var quantities = new Dictionary<string, IReadOnlyList<double>>();
        var words = new Dictionary<string, IReadOnlyList<string>>();
        var lists = sum.Inputs.Where(input => input.List is not null).Select(input => input.List!).Distinct().ToDictionary(list => list, _ => random.Next(7));
        foreach (var input in sum.Inputs)
        {
            var isFirst = input.List is not null && sum.Inputs.First(other => other.List == input.List) == input;
            var mayLeaveOut = input.Default is not null || input.IsOptional || input.Measure is Measure.Word or Measure.Name;
            if (!isFirst && mayLeaveOut && random.Next(2) == 0)
                continue;
            var times = input.List is null ? 1 : isFirst || lists[input.List] > 0 ? lists[input.List] : 0;
            if (times == 0)
                continue;
            if (input.Measure == Measure.Word)
                words[input.Key] = [.. Enumerable.Range(0, times).Select(_ => input.Words[random.Next(input.Words.Count)])];
            else if (input.Measure == Measure.Name)
                words[input.Key] = [.. Enumerable.Range(0, times).Select(_ => NamesFor(input)[random.Next(2)])];
            else
                quantities[input.Key] = [.. Enumerable.Range(0, times).Select(_ => Within(input, random))];
        }

        return new SumRequest(quantities, words, "m");
    });

    private static string[] NamesFor(SumInput input) => input.Key == "grade" ? ["SAE 40", "15W-40"] : ["steel", "bronze"];

    private static double Within(SumInput input, Random random)
    {
        if (input.Key == "draws")
            return 2_000;
        var least = double.IsInfinity(input.Allowed.Least) ? -2 : input.Allowed.Least;
        var greatest = double.IsInfinity(input.Allowed.Greatest) ? Math.Max(2, least + 2) : input.Allowed.Greatest;
        var value = least + ((greatest - least) * (0.001 + (0.998 * random.NextDouble())));
        return input.IsWhole ? Math.Floor(value) + (Math.Floor(value) < input.Allowed.Least ? 1 : 0) : value;
    }

    private static void AssertSame(WorkingLine line, double expected, double got)
    {
        if (expected.Equals(got))
            return;
        var size = line.Inputs.SelectMany(input => input.Values).Where(double.IsFinite).Select(Math.Abs).DefaultIfEmpty(1).Max();
        Assert.True(Math.Abs(expected - got) <= 1e-12 * Math.Max(Math.Abs(got), Math.Min(size, 1)), $"{line.Symbol} = {line.Formula}: evaluated {expected:R}, printed {got:R}");
    }
}
