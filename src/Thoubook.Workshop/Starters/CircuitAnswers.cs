using System.Globalization;
using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Workshop.Starters;

internal enum Sump
{
    Wet,
    Dry,
}

internal enum Groove
{
    Full,
    Half,
}

internal enum BigEndFeed
{
    Crank,
    Splash,
}

internal enum ReliefBody
{
    Single,
    Cascade,

    [Word("reducing valve")]
    ReducingValve,

    [Word("jet and relief")]
    JetAndRelief,
}

internal enum YesNo
{
    No,
    Yes,
}

internal enum OilConsumer
{
    None,
    Propeller,
    Governor,
}

/// <summary>What was answered to the circuit starter, everything left unanswered filled in.</summary>
internal sealed class CircuitAnswers
{
    private readonly IReadOnlyDictionary<string, string> _given;
    private readonly List<Problem> _problems = [];

    private CircuitAnswers(IReadOnlyDictionary<string, string> given) => _given = given;

    public Sump Sump { get; private set; }

    public int Mains { get; private set; }

    public Groove Groove { get; private set; }

    public int BigEnds { get; private set; }

    public BigEndFeed BigEndFeed { get; private set; }

    public ReliefBody Relief { get; private set; }

    public bool HasFilter { get; private set; }

    public bool HasCooler { get; private set; }

    public int CamshaftBearings { get; private set; }

    public int TimingJets { get; private set; }

    public OilConsumer Consumer { get; private set; }

    public bool IsConsumerBlanked { get; private set; }

    public int ScavengePumps { get; private set; }

    public string Oil { get; private set; } = "";

    public Quantity Idle { get; private set; } = null!;

    public Quantity Journal { get; private set; } = null!;

    /// <summary>Where things are in the engine: a part or a figure, by the question's key; <c>{n}</c> or a list where there are several.</summary>
    public string Place(string key) => Text(key);

    public static Outcome<CircuitAnswers> Of(IReadOnlyDictionary<string, string> given)
    {
        var keys = CircuitStarter.Questions.Select(q => q.Key).ToList();
        var answers = new CircuitAnswers(given);
        foreach (var key in given.Keys.Where(k => !keys.Contains(k, StringComparer.Ordinal)))
            answers._problems.Add(new("unknown-question", key, $"\"{key}\"", $"The questions are: {string.Join(", ", keys)}.", Nearest.Advice(key, keys, "Use one of these.")));
        answers.Read();
        return answers._problems.Count > 0 ? new Outcome<CircuitAnswers>.Refused(answers._problems) : answers;
    }

    private void Read()
    {
        Sump = Word<Sump>("sump");
        Mains = Number("mains");
        Groove = Word<Groove>("groove");
        BigEnds = Number("big-ends");
        BigEndFeed = Word<BigEndFeed>("big-end-feed");
        Relief = Word<ReliefBody>("relief");
        HasFilter = Word<YesNo>("filter") == YesNo.Yes;
        HasCooler = Word<YesNo>("cooler") == YesNo.Yes;
        CamshaftBearings = Number("camshaft-bearings");
        TimingJets = Number("timing-jets");
        Consumer = Word<OilConsumer>("consumer");
        IsConsumerBlanked = Word<YesNo>("consumer-blanked") == YesNo.Yes;
        ScavengePumps = Number("scavenge-pumps");
        Oil = Text("oil");
        Idle = Size("idle", QuantityKind.RotationalSpeed);
        Journal = Size("journal", QuantityKind.Length);

        if (Relief == ReliefBody.ReducingValve && CamshaftBearings + TimingJets == 0)
            _problems.Add(new("reducing-valve-of-nothing", "relief", Text("relief"), "A reducing valve feeds camshaft bearings or jets on the timing gears.", "Say how many: camshaft-bearings or timing-jets."));
        if (Sump == Sump.Wet && ScavengePumps > 0)
            _problems.Add(new("scavenge-of-wet-sump", "scavenge-pumps", Text("scavenge-pumps"), "A wet sump has no scavenge pump: the oil stays under the crank.", "Answer sump=dry, or leave scavenge-pumps out."));
        if (Sump == Sump.Dry && ScavengePumps == 0)
            _problems.Add(new("scavenge-missing", "scavenge-pumps", Text("scavenge-pumps"), "A dry sump is emptied by one scavenge pump or more.", "Say how many."));
    }

    private string Text(string key)
    {
        var question = CircuitStarter.Questions.Single(q => q.Key == key);
        if (_given.TryGetValue(key, out var text) && !string.IsNullOrWhiteSpace(text))
            return text.Trim();

        // Left unanswered, these follow from another answer.
        return key switch
        {
            "scavenge-pumps" when _given.TryGetValue("sump", out var sump) && sump.Trim() == Sump.Dry.Word() => "1",
            "big-ends" when _given.TryGetValue("mains", out var mains) && StarterQuestion.Whole(mains) is { } number && number <= CircuitStarter.Questions.Single(q => q.Key == "mains").Most => Math.Max(1, number - 1).ToString(CultureInfo.InvariantCulture),
            _ => question.Usual,
        };
    }

    private T Word<T>(string key)
        where T : struct, Enum
    {
        if (CircuitStarter.Questions.Single(q => q.Key == key).Word(Text(key)).IsOk(out var word, out var problems) && Words.TryRead<T>(word, out var value))
            return value;
        _problems.AddRange(problems);
        return default;
    }

    private int Number(string key)
    {
        var question = CircuitStarter.Questions.Single(q => q.Key == key);
        if (question.Number(Text(key)).IsOk(out var number, out var problems))
            return number;
        _problems.AddRange(problems);
        return question.Fewest;
    }

    private Quantity Size(string key, QuantityKind kind)
    {
        if (!QuantityReader.Read(Text(key), new ReadingContext { Kind = kind }).IsOk(out var quantity, out var problems))
            _problems.AddRange(problems.Select(p => p with { Field = key }));
        else if (quantity.Si <= 0)
            _problems.Add(new("circuit-size", key, quantity.Text, "It is above 0.", "Correct it."));
        return quantity;
    }
}
