using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using NJsonSchema;
using Thoubook.Files.EngineFiles;
using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Closing;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Tests.EngineFiles;

public sealed partial class SchemaTests
{
    private static readonly JsonObject Schema = JsonNode.Parse(EngineFile.Schema)!.AsObject();
    private static readonly JsonObject Groups = Schema["definitions"]!.AsObject();

    /// <summary>What the example of the documentation has no need of.</summary>
    private const string Rest = """
        engine: { name: Sandpiper six, purpose: stand-run }
        documents: { overhaul-book: { marks: [I] } }
        parts: { pump/body: {} }
        dimensions:
          pump/body.depth:
            new: [1.2530 in, 1.2540 in]
            ovality: { new: 0.5 thou, worn: { typed: "1", means: 1 thou } }
            also: [{ new: 1.2530 in, worn: 1.2560 in, allowance: not a wear item, document: overhaul-book, marks: [I] }]
        fits:
          pump.end-float:
            gap: body.depth
            wear: grows
            new: [1 thou, 2 thou]
            allowance: no wear permitted
            marks: [I]
            also: [{ new: [1 thou, 3 thou], document: overhaul-book }]
            note: the body alone
        pieces: { P-1: {} }
        choices: [{ piece: P-1, part: pump/body, id: 01932c5e-0000-7000-8000-000000000001 }]
        placings: [{ piece: P-1, part: pump/body, id: 01932c5e-0000-7000-8000-000000000002 }]
        liftings: [{ of: 01932c5e-0000-7000-8000-000000000002, id: 01932c5e-0000-7000-8000-000000000003 }]
        readings: [{ of: pump/body.depth, value: 1.2535, id: 01932c5e-0000-7000-8000-000000000004 }]
        works: [{ piece: P-1, what: washed, id: 01932c5e-0000-7000-8000-000000000005 }]
        findings: [{ what: sludge, id: 01932c5e-0000-7000-8000-000000000006 }]
        checks: [{ of: pump.end-float, value: 1.5, note: dry, id: 01932c5e-0000-7000-8000-000000000007 }]
        decisions: [{ choice: hold, piece: P-1, id: 01932c5e-0000-7000-8000-000000000008 }]
        strike-outs: [{ of: 01932c5e-0000-7000-8000-000000000006, why: from the other engine, id: 01932c5e-0000-7000-8000-000000000009 }]
        """;

    [Fact]
    public void TheKeysOfTheSchema_AreTheKeysThatAreRead()
    {
        var published = Groups.Where(g => g.Value!["properties"] is not null).ToDictionary(g => g.Key, g => KeysOf(g.Value!));
        published[""] = KeysOf(Schema);

        Assert.Equal(Sorted(KnownKeys.ByGroup.Keys), Sorted(published.Keys));
        foreach (var (group, keys) in KnownKeys.ByGroup)
            Assert.Equal($"{group}: {string.Join(' ', Sorted(keys))}", $"{group}: {string.Join(' ', Sorted(published[group]))}");
    }

    [Fact]
    public void EveryKeyOfTheSchema_StandsInAnExampleThatImports()
    {
        var met = new HashSet<string>(StringComparer.Ordinal);
        foreach (var text in new[] { TestFiles.Block("docs/engine-file.md", "yaml"), TestFiles.Block("docs/circuit.md", "yaml"), TestFiles.Block("docs/closing.md", "yaml"), Rest })
        {
            Assert.True(EngineFile.Read(text, "example.yaml", TestFiles.Terms).IsOk(out _, out var problems), string.Join('\n', problems));
            Meet(JsonOf(text), Schema, "", met);
        }

        Assert.Empty(KnownKeys.ByGroup.SelectMany(g => g.Value.Select(k => Named(g.Key, k))).Except(met));
    }

    [Fact]
    public async Task TheExamples_AreValidBySchema()
    {
        var schema = await JsonSchema.FromJsonAsync(EngineFile.Schema, TestContext.Current.CancellationToken);
        foreach (var text in new[] { TestFiles.Block("docs/engine-file.md", "yaml"), TestFiles.Block("docs/circuit.md", "yaml"), TestFiles.Block("docs/closing.md", "yaml"), Rest })
        {
            Assert.Empty(schema.Validate(JsonOf(text)!.ToJsonString()).Select(e => e.ToString()));
            Assert.True(EngineFile.Read(text, "example.yaml", TestFiles.Terms).IsOk(out var record, out _));
            Assert.Empty(schema.Validate(JsonOf(EngineFile.Write(record))!.ToJsonString()).Select(e => e.ToString()));
        }
    }

    [Theory]
    [InlineData("engine: { name: Sandpiper six, purpose: stand-run, colour: green }")]
    [InlineData("engine: { name: Sandpiper six, purpose: pleasure }")]
    [InlineData("engine: { name: Sandpiper six }")]
    [InlineData("engine: { name: Sandpiper six, purpose: stand-run }\nreadings: [{ of: a.b }]")]
    [InlineData("engine: { name: Sandpiper six, purpose: stand-run }\ndimensions: { a.b: { new: [1 in, 2 in, 3 in] } }")]
    public async Task WhatIsNotRead_IsNotValidBySchema(string text)
    {
        var schema = await JsonSchema.FromJsonAsync(EngineFile.Schema, TestContext.Current.CancellationToken);

        Assert.NotEmpty(schema.Validate(JsonOf(text)!.ToJsonString()));
        Assert.False(EngineFile.Read(text, "example.yaml", TestFiles.Terms).IsOk(out _, out _));
    }

    [Fact]
    public void TheWordsOfTheSchema_AreTheWordsOfTheRecord()
    {
        Assert.Equal(Words.All<Purpose>(), WordsOf("engine", "purpose"));
        Assert.Equal(Words.All<CombiningRule>(), WordsOf("document", "rule"));
        Assert.Equal(Words.All<PartIntent>(), WordsOf("part", "intent"));
        Assert.Equal(Words.All<PieceOrigin>(), WordsOf("piece", "origin"));
        Assert.Equal(Words.All<QuantityKind>(), WordsOf("dimension", "kind"));
        Assert.Equal(Words.All<Side>(), WordsOf("dimension", "side"));
        Assert.Equal(Words.All<WearDirection>(), WordsOf("dimension", "wear"));
        Assert.Equal(Words.All<WearAllowance>(), WordsOf("dimension", "allowance"));
        Assert.Equal(Words.All<Counting>(), WordsOf("dimension", "counts"));
        Assert.Equal(Words.All<FitKind>(), WordsOf("fit", "kind"));
        Assert.Equal(Words.All<QuantityKind>(), WordsOf("fit", "quantity"));
        Assert.Equal(Words.All<FindingOutcome>(), WordsOf("finding", "outcome"));
        Assert.Equal(Words.All<CheckMethod>(), WordsOf("check", "method"));
        Assert.Equal(Words.All<DecisionChoice>(), WordsOf("decision", "choice"));
        Assert.Equal(Words.All<DecisionBasis>(), WordsOf("decision", "basis"));
        Assert.Equal(Words.All<StepKind>(), WordsOf("step", "kind"));
        Assert.Equal(Words.All<Attitude>(), WordsOf("step", "attitude"));
        Assert.Equal(Words.All<JointStage>(), WordsOf("step", "brings"));
        Assert.Equal(Words.All<JointStage>(), WordsOf("joint-state", "stage"));
        Assert.Equal(Words.All<HoldKind>(), WordsOf("hold-point", "kind"));
        Assert.Equal(Words.All<DepartureKind>(), WordsOf("departure", "kind"));
        Assert.Equal(Words.All<Deadline>(), WordsOf("debt", "deadline"));
        Assert.Equal(Words.All<CountedWay>(), WordsOf("count", "way"));
        Assert.Equal(Words.All<ElementKind>(), Groups["element"]!["anyOf"]!.AsArray().Select(c => WordsOf(c!["$ref"]!.GetValue<string>().Split('/')[^1], "kind").Single()));
    }

    [Fact]
    public void EveryKeyOfTheSchema_IsDescribed()
    {
        var bare = Groups.Append(new("", Schema))
            .SelectMany(g => (g.Value!["properties"] as JsonObject ?? []).Select(p => (Key: $"{g.Key}: {p.Key}", p.Value)))
            .Where(p => Resolved(p.Value!)["description"] is null && p.Value!["description"] is null)
            .Select(p => p.Key);

        Assert.Empty(bare);
    }

    /// <summary>Walks a text along the schema and notes each key that it meets, by the group that it stands in.</summary>
    private static void Meet(JsonNode? node, JsonNode schema, string group, HashSet<string> met)
    {
        if (schema["$ref"] is { } reference)
        {
            var name = reference.GetValue<string>().Split('/')[^1];
            Meet(node, Groups[name]!, name, met);
            return;
        }

        foreach (var choice in schema["anyOf"]?.AsArray() ?? [])
        {
            // Of the kinds of element, the one that it is.
            if (group != "element" || Resolved(choice!)["properties"]!["kind"]!["enum"]![0]!.GetValue<string>() == node?["kind"]?.ToString())
                Meet(node, choice!, group, met);
        }

        if (node is JsonArray list && schema["items"] is { } items)
        {
            foreach (var item in list)
                Meet(item, items, group, met);
        }
        else if (node is JsonObject map)
        {
            foreach (var (key, value) in map)
            {
                if (schema["properties"]?[key] is { } known)
                {
                    met.Add(Named(group, key));
                    Meet(value, known, group, met);
                }
                else if (schema["additionalProperties"] is JsonObject others)
                {
                    Meet(value, others, group, met);
                }
            }
        }
    }

    /// <summary>A key with its group; those that every element has are one, whatever the kind.</summary>
    private static string Named(string group, string key) =>
        group.StartsWith("element-", StringComparison.Ordinal) && key is "kind" or "from" or "to" or "part" or "blanked" or "label" or "note" ? $"element: {key}" : $"{group}: {key}";

    private static List<string> KeysOf(JsonNode group) => [.. group["properties"]!.AsObject().Select(p => p.Key)];

    private static List<string> Sorted(IEnumerable<string> keys) => [.. keys.Order(StringComparer.Ordinal)];

    private static JsonNode Resolved(JsonNode schema) => schema["$ref"] is { } reference ? Groups[reference.GetValue<string>().Split('/')[^1]]! : schema;

    private static List<string> WordsOf(string group, string key) => [.. Groups[group]!["properties"]![key]!["enum"]!.AsArray().Select(w => w!.GetValue<string>())];

    /// <summary>A text as an editor sees it: plain numbers, truths and nothings are what they look like.</summary>
    private static JsonNode? JsonOf(string text)
    {
        var problems = new ProblemList("example.yaml");
        var root = YamlReader.Read(text, problems);
        Assert.Empty(problems.All);
        return Json(root!);

        static JsonNode? Json(YamlNode node) => node switch
        {
            YamlMap map => new JsonObject(map.Entries.Select(e => KeyValuePair.Create(e.Key.Value, Json(e.Value)))),
            YamlList list => new JsonArray([.. list.Items.Select(Json)]),
            YamlScalar { IsLeftOut: true } => null,
            YamlScalar { IsQuoted: false, Value: "true" or "false" } truth => JsonValue.Create(truth.Value == "true"),
            YamlScalar { IsQuoted: false } number when Number().IsMatch(number.Value) => JsonNode.Parse(number.Value),
            YamlScalar scalar => JsonValue.Create(scalar.Value),
            _ => throw new InvalidOperationException(),
        };
    }

    [GeneratedRegex(@"^-?(0|[1-9]\d*)(\.\d+)?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Number();
}
