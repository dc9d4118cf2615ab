using Thoubook.Files.Templates;
using Thoubook.Files.Text;
using Thoubook.Record;

namespace Thoubook.Workshop.Starters;

/// <summary>
/// A sub-assembly of an engine drawn up beforehand, to begin with: its parts, dimensions and fits, their limits left open, and how it goes together. A few questions say
/// what differs. The templates lie beside this file.
/// </summary>
public sealed class Starter
{
    private static readonly string[] Keys = ["gear-pump", "relief-valve", "main-bearings", "pistons", "sump", "cylinder-head", "timing-drive"];

    private readonly EngineTemplate _template;

    private Starter(string key)
    {
        using var stream = typeof(Starter).Assembly.GetManifestResourceStream($"{key}.yaml")!;
        using var reader = new StreamReader(stream);
        _template = EngineTemplate.Read(reader.ReadToEnd(), $"{key}.yaml");
        Key = key;
        Words = Text(_template.Head, "what");
        Minutes = StarterQuestion.Whole(Text(_template.Head, "minutes")) ?? 0;
        Questions = [.. ((YamlMap)_template.Head["questions"]!).Entries.Select(e => Question(e.Key.Value, (YamlMap)e.Value))];
    }

    public static IReadOnlyList<Starter> All { get; } = [.. Keys.Select(k => new Starter(k))];

    /// <summary>Its short name.</summary>
    public string Key { get; }

    /// <summary>What it is, for a choice on a page.</summary>
    public string Words { get; }

    /// <summary>About how many minutes it takes to answer.</summary>
    public int Minutes { get; }

    public IReadOnlyList<StarterQuestion> Questions { get; }

    public static Outcome<Starter> Find(string key) => All.FirstOrDefault(s => string.Equals(s.Key, key.Trim(), StringComparison.OrdinalIgnoreCase)) is { } starter
        ? starter
        : new Problem("unknown-starter", "starter", $"\"{key}\"", $"One of: {string.Join(", ", All.Select(s => s.Key))}.", Nearest.Advice(key, All.Select(s => s.Key), "Use one of these."));

    /// <summary>What it adds to an engine. Nothing that is there already is changed.</summary>
    /// <param name="record">The engine; it may have nothing yet.</param>
    /// <param name="answers">Text by the question's key; what is left out is as usual. A part or a figure of the starter may be answered by its own name too, with that of the engine.</param>
    public Outcome<Started> On(EngineRecord record, IReadOnlyDictionary<string, string> answers) => StarterAnswers.Of(this, record, answers)
        .Then(read => _template.Draw(record.Engine, read.ForTemplate))
        .Then(drawn => StarterNames.Of(drawn, record, answers, Questions).Then(names => StarterAdditions.Of(drawn, names, record)));

    private static StarterQuestion Question(string key, YamlMap map)
    {
        IReadOnlyList<string> choices = Texts(map, "choices");
        var part = Text(map, "part");
        return new StarterQuestion(key, Text(map, "ask"), part.Length > 0 ? part : map["usual"] is null && choices.Count > 0 ? choices[0] : Text(map, "usual"))
        {
            Choices = choices,
            Fewest = StarterQuestion.Whole(Text(map, "from")) ?? 0,
            Most = StarterQuestion.Whole(Text(map, "to")),
            AtMost = Text(map, "at-most") is { Length: > 0 } most ? most : null,
            IsPart = part.Length > 0,
            NumberedBy = Text(map, "number") is { Length: > 0 } by ? by : null,
            MayBe = Text(map, "may-be") is { Length: > 0 } same ? same : null,
            Also = Texts(map, "also"),
        };
    }

    private static string Text(YamlMap map, string key) => (map[key] as YamlScalar)?.Value ?? "";

    private static IReadOnlyList<string> Texts(YamlMap map, string key) => map[key] is YamlList list ? [.. list.Items.OfType<YamlScalar>().Select(s => s.Value)] : [];
}

/// <summary>What a starter would add to an engine, and what of it is there already.</summary>
/// <param name="Added">The definitions that the engine lacks, and the spaces and joints of which something more is said; nothing else.</param>
public sealed record Started(EngineRecord Added)
{
    /// <summary>What the starter draws and is there already, as it is: nothing of it is touched.</summary>
    public IReadOnlyList<string> Left { get; init; } = [];

    /// <summary>Parts and figures of the engine that are taken for those of the starter under other names.</summary>
    public IReadOnlyList<Taken> Taken { get; init; } = [];

    /// <summary>What is said in addition of spaces and joints that were there: parts that lie in them too, and in which space they lie where nothing said it.</summary>
    public IReadOnlyList<string> Widened { get; init; } = [];

    /// <summary>Parts in the starter's spaces, and within the parts that it puts in place, that no step puts in place.</summary>
    public IReadOnlyList<PartName> Unplaced { get; init; } = [];

    /// <summary>What is wrong with the plan as it would stand and is not with the plan that is there.</summary>
    public IReadOnlyList<Thoubook.Record.Closing.PlanFault> Faults { get; init; } = [];
}

/// <summary>A thing of the engine taken for one of the starter.</summary>
/// <param name="Drawn">As the starter names it.</param>
/// <param name="There">As the engine does.</param>
public sealed record Taken(string Drawn, string There);
