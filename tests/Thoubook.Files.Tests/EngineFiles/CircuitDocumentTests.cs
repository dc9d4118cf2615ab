using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Thoubook.Files.EngineFiles;
using Thoubook.Record;
using Thoubook.Record.Circuits;

namespace Thoubook.Files.Tests.EngineFiles;

/// <summary>What is published of the kinds of element, in the schema and in the documentation, is what the catalogue says of them.</summary>
public sealed class CircuitDocumentTests
{
    private const string SchemaPath = "docs/engine-file.schema.json";
    private const string PagePath = "docs/circuit.md";
    private const string TableHead = "| kind | key | what it is | |\n| --- | --- | --- | --- |\n";

    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    [Fact]
    public void TheElementsOfTheSchema_AreThoseOfTheCatalogue()
    {
        var schema = JsonNode.Parse(TestFiles.Read(SchemaPath))!.AsObject();
        var definitions = new JsonObject();
        foreach (var (name, definition) in schema["definitions"]!.AsObject())
        {
            if (name.StartsWith("element-", StringComparison.Ordinal))
                continue;
            if (name != "element")
            {
                definitions[name] = definition!.DeepClone();
                continue;
            }

            definitions[name] = new JsonObject
            {
                ["description"] = "An element of the circuit, by its kind. Flow counts positive from its first node to its second.",
                ["anyOf"] = new JsonArray([.. ElementKinds.All.Select(k => new JsonObject { ["$ref"] = $"#/definitions/{KnownKeys.GroupOf(k.Kind)}" })]),
            };
            foreach (var shape in ElementKinds.All)
                definitions[KnownKeys.GroupOf(shape.Kind)] = Definition(shape);
        }

        schema["definitions"] = definitions;
        Same(SchemaPath, schema.ToJsonString(Readable) + "\n");
    }

    [Fact]
    public void TheTableOfTheDocumentation_IsTheCatalogue()
    {
        var page = TestFiles.Read(PagePath);
        var start = page.IndexOf(TableHead, StringComparison.Ordinal);
        var end = page.IndexOf("\n\n", start, StringComparison.Ordinal) + 1;
        Same(PagePath, page[..start] + Table() + page[end..]);
    }

    private static string Table()
    {
        var text = new StringBuilder(TableHead);
        foreach (var shape in ElementKinds.All)
        {
            text.Append($"| **{shape.Kind.Word()}** | | {shape.Says} | |\n");
            foreach (var key in shape.Keys)
                text.Append($"| | `{key.Name}` | {key.Kind.Word().Replace('-', ' ')}: {key.Says} | {Need(shape, key)} |\n");
            if (shape.VentLeftOut is { } vent)
                text.Append($"| | `vent` | the node that its spring chamber is open to; {vent} where left out | |\n");
        }

        return text.ToString();
    }

    private static string Need(ElementShape shape, ElementKey key) =>
        shape.OneOf.FirstOrDefault(g => g.Contains(key.Name)) is { } group ? $"one of {string.Join(", ", group)}"
        : key.Need == KeyNeed.Required ? "required"
        : shape.Together.FirstOrDefault(g => g.Skip(1).Contains(key.Name)) is { } with ? $"with {with[0]}" : "";

    private static JsonObject Definition(ElementShape shape)
    {
        var properties = new JsonObject
        {
            ["kind"] = new JsonObject { ["enum"] = new JsonArray(shape.Kind.Word()), ["description"] = "What sort of thing it is." },
            ["from"] = Node("The node that it leads from."),
            ["to"] = Node("The node that it leads to."),
            ["part"] = new JsonObject { ["type"] = "string", ["description"] = "The part that it is; names of dimensions and fits are looked up from there upwards." },
        };
        if (shape.VentLeftOut is { } vent)
            properties["vent"] = Node($"The node that its spring chamber is open to; {vent} where left out.");
        foreach (var key in shape.Keys)
            properties[key.Name] = new JsonObject { ["$ref"] = "#/definitions/quantity", ["description"] = $"{char.ToUpperInvariant(key.Says[0])}{key.Says[1..]}. {char.ToUpperInvariant(key.Allowed.In(key.UsualUnit)[0])}{key.Allowed.In(key.UsualUnit)[1..]}." };
        properties["blanked"] = new JsonObject { ["type"] = "boolean", ["description"] = "Closed by a plug or a plate." };
        properties["label"] = Text("What the drawing calls it.");
        properties["note"] = Text("Anything else.");
        return new JsonObject
        {
            ["description"] = shape.Says,
            ["type"] = "object",
            ["additionalProperties"] = false,
            ["properties"] = properties,
            ["required"] = new JsonArray(["kind", "from", "to", .. shape.Keys.Where(k => k.Need == KeyNeed.Required).Select(k => k.Name)]),
        };
    }

    private static JsonObject Node(string says) => new() { ["type"] = "string", ["pattern"] = "^[A-Za-z0-9][A-Za-z0-9_-]*$", ["description"] = says };

    private static JsonObject Text(string says) => new() { ["type"] = new JsonArray("string", "number", "null"), ["description"] = says };

    private static void Same(string path, string expected)
    {
        var published = TestFiles.Read(path);
        if (published != expected)
            File.WriteAllText(Path.Combine(TestFiles.Root, Path.ChangeExtension(path, ".received" + Path.GetExtension(path))), expected);
        Assert.Equal(expected, published);
    }
}
