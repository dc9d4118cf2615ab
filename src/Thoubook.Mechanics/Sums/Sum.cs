using System.Globalization;

namespace Thoubook.Mechanics.Sums;

/// <summary>
/// An engineering calculation that can be asked by name: its question, its inputs and outputs, its source, and the way to run it on
/// quantities already read into SI. Nothing here throws for what a person gave: it answers with all that is wrong.
/// </summary>
public sealed class Sum
{
    private readonly Func<SumInputs, Written, string> _answer;

    /// <summary>A sum.</summary>
    /// <param name="answer">Runs the traced functions and puts the answer in one sentence.</param>
    internal Sum(Func<SumInputs, Written, string> answer) => _answer = answer;

    /// <summary>What the asker calls it.</summary>
    public required string Name { get; init; }

    /// <summary>The question it answers.</summary>
    public required string Question { get; init; }

    /// <summary>Where its formulas come from.</summary>
    public required string Source { get; init; }

    /// <summary>What it takes, in order.</summary>
    public required IReadOnlyList<SumInput> Inputs { get; init; }

    /// <summary>What it gives. One that a question does not lead to (a limit that was not given) is left out of the answer.</summary>
    public required IReadOnlyList<SumOutput> Outputs { get; init; }

    /// <summary>Questions as the asker would write them, after the name.</summary>
    public required IReadOnlyList<string> Examples { get; init; }

    /// <summary>What inputs that are each allowed may have wrong together.</summary>
    internal Func<SumInputs, IEnumerable<SumProblem>> Together { get; init; } = _ => [];

    /// <summary>Answers a question, or says everything that is wrong with it.</summary>
    /// <param name="request">Quantities in SI and words, by key.</param>
    /// <returns>The answer with its working, or the problems.</returns>
    public SumOutcome Run(SumRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        var problems = new List<SumProblem>();
        foreach (var key in request.Quantities.Keys.Concat(request.Words.Keys).Where(key => Inputs.All(input => input.Key != key)))
        {
            var nearest = NearestName.To(key, Inputs.Select(input => input.Key));
            problems.Add(new SumProblem(key, key, $"one of {string.Join(", ", Inputs.Select(input => input.Key))}", nearest.Count > 0 ? $"Did you mean {string.Join(" or ", nearest)}?" : "Leave it out."));
        }

        foreach (var input in Inputs)
            problems.AddRange(Check(input, request));
        foreach (var list in Inputs.Where(input => input.List is not null).GroupBy(input => input.List!, StringComparer.Ordinal))
            problems.AddRange(CheckList(list.Key, [.. list], request));

        var inputs = new SumInputs(Inputs, request);
        if (problems.Count == 0)
            problems.AddRange(Together(inputs));
        if (problems.Count > 0)
            return new SumOutcome.Refused(problems);

        var writer = new WorkingWriter(request.Unit);
        var answer = _answer(inputs, writer.Trace);
        var working = writer.Working;
        var values = Outputs
            .Select(output => (output, line: working.Lines.FirstOrDefault(line => line.Symbol == output.Symbol)))
            .Where(pair => pair.line is not null)
            .Select(pair => new SumValue(pair.output.Key, pair.output.Symbol, pair.output.Name, pair.line!.Values[0], pair.line.Unit));
        return new SumOutcome.Answered(new SumResult(answer, [.. values], working, writer.Cautions));
    }

    private static IEnumerable<SumProblem> Check(SumInput input, SumRequest request)
    {
        var isWord = input.Measure is Measure.Word or Measure.Name;
        if (isWord ? request.Quantities.ContainsKey(input.Key) : request.Words.ContainsKey(input.Key))
            yield return new SumProblem(input.Key, isWord ? "a quantity" : "a word", isWord ? "a word" : "a quantity", "Give it as what it is.");
        var count = request.Count(input.Key);
        if (input.List is null && count > 1)
            yield return new SumProblem(input.Key, string.Create(CultureInfo.InvariantCulture, $"{count} values"), "one value", "Give it once.");
        if (count == 0 && input.List is null && input.Default is null && !input.IsOptional && !isWord)
            yield return new SumProblem(input.Key, "nothing", input.Allowed.InWords(input.Unit), $"Give {input.Key}, the {input.Name}.");
        foreach (var value in request.Quantities.GetValueOrDefault(input.Key) ?? [])
        {
            if (!input.Allowed.Contains(value))
                yield return new SumProblem(input.Key, string.Create(CultureInfo.InvariantCulture, $"{value:G9} {request.UnitOf(input)}"), input.Allowed.InWords(request.UnitOf(input)), "Check the figure and its unit.");
            else if (input.IsWhole && value != Math.Floor(value))
                yield return new SumProblem(input.Key, string.Create(CultureInfo.InvariantCulture, $"{value:G9}"), "a whole number", "Count again.");
        }

        foreach (var word in request.Words.GetValueOrDefault(input.Key) ?? [])
        {
            if (input.Words.Count > 0 && !input.Words.Contains(word))
                yield return new SumProblem(input.Key, word, $"one of {string.Join(", ", input.Words)}", "Choose one of these.");
        }
    }

    private static IEnumerable<SumProblem> CheckList(string list, IReadOnlyList<SumInput> inputs, SumRequest request)
    {
        var first = inputs[0];
        var expected = request.Count(first.Key);
        if (expected == 0 && !first.IsOptional)
            yield return new SumProblem(first.Key, "nothing", $"one or more, one for each {list}", $"Give {first.Key} once for each {list}.");
        foreach (var input in inputs.Skip(1))
        {
            var count = request.Count(input.Key);
            if (count != 0 && count != expected)
            {
                yield return new SumProblem(
                    input.Key,
                    string.Create(CultureInfo.InvariantCulture, $"{count} of {input.Key} beside {expected} of {first.Key}"),
                    $"one for each {list}, or none",
                    input.Default is { } value
                        ? string.Create(CultureInfo.InvariantCulture, $"Give {input.Key} for every {list}; {value:G6} is what is taken where none is given.")
                        : $"Give {input.Key} for every {list}, in the same order.");
            }
        }
    }
}

/// <summary>A question to a sum: quantities in SI and words, by key.</summary>
/// <param name="Quantities">[any] one value, or several in order, for each key.</param>
/// <param name="Words">One word, or several in order, for each key.</param>
/// <param name="Unit">SI unit of the inputs that may be any quantity; "-" where they are plain numbers.</param>
public sealed record SumRequest(IReadOnlyDictionary<string, IReadOnlyList<double>> Quantities, IReadOnlyDictionary<string, IReadOnlyList<string>> Words, string Unit)
{
    internal int Count(string key) => (Quantities.GetValueOrDefault(key)?.Count ?? 0) + (Words.GetValueOrDefault(key)?.Count ?? 0);

    internal string UnitOf(SumInput input) => input.Unit == Units.Any ? Unit : input.Unit;
}

/// <summary>What came of asking a sum.</summary>
public abstract record SumOutcome
{
    private SumOutcome()
    {
    }

    /// <summary>It was answered.</summary>
    /// <param name="Result">The answer.</param>
    public sealed record Answered(SumResult Result) : SumOutcome;

    /// <summary>It could not be answered as it was asked.</summary>
    /// <param name="Problems">Everything that is wrong.</param>
    public sealed record Refused(IReadOnlyList<SumProblem> Problems) : SumOutcome;
}

/// <summary>One thing wrong with a question.</summary>
/// <param name="Key">The input.</param>
/// <param name="Found">What was found.</param>
/// <param name="Allowed">What would be right.</param>
/// <param name="DoThis">What the asker can do.</param>
public sealed record SumProblem(string Key, string Found, string Allowed, string DoThis);

/// <summary>The answer of a sum.</summary>
/// <param name="Answer">In one sentence.</param>
/// <param name="Values">The outputs that the question led to.</param>
/// <param name="Working">How they came about.</param>
/// <param name="Cautions">What the asker should know beside them: validity in words.</param>
public sealed record SumResult(string Answer, IReadOnlyList<SumValue> Values, Working Working, IReadOnlyList<string> Cautions);

/// <summary>One figure of an answer.</summary>
/// <param name="Key">Stable name for programs.</param>
/// <param name="Symbol">Its line in the working.</param>
/// <param name="Name">What it is, in words.</param>
/// <param name="Value">[any] the figure.</param>
/// <param name="Unit">Its SI unit.</param>
public sealed record SumValue(string Key, string Symbol, string Name, double Value, string Unit);

/// <summary>The inputs of a question after they were checked, defaults filled in.</summary>
internal sealed class SumInputs(IReadOnlyList<SumInput> inputs, SumRequest request)
{
    public double this[string key] => Maybe(key) ?? throw new InvalidOperationException($"{key} was not given and has no default.");

    public double? Maybe(string key) => request.Quantities.GetValueOrDefault(key) is { Count: > 0 } given ? given[0] : Input(key).Default;

    public string Word(string key) => MaybeWord(key) ?? Input(key).Words[0];

    public string? MaybeWord(string key) => request.Words.GetValueOrDefault(key) is { Count: > 0 } given ? given[0] : null;

    /// <summary>How many items the list of an input has.</summary>
    public int CountOf(string key) => request.Count(inputs.First(input => input.List == Input(key).List).Key);

    public bool IsGiven(string key) => request.Count(key) > 0;

    public double[] Each(string key) => request.Quantities.GetValueOrDefault(key) is { Count: > 0 } given
        ? [.. given]
        : [.. Enumerable.Repeat(Input(key).Default ?? double.NaN, CountOf(key))];

    public string[] EachWord(string key) => request.Words.GetValueOrDefault(key) is { Count: > 0 } given
        ? [.. given]
        : [.. Enumerable.Repeat(Input(key).Words is [var first, ..] ? first : "", CountOf(key))];

    private SumInput Input(string key) => inputs.First(input => input.Key == key);
}
