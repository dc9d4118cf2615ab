using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.EngineFiles;

/// <summary>A size of an element: a quantity, or the name of a dimension or fit, looked up from the element's part upwards.</summary>
internal sealed class CircuitValueForm(ElementKey key, ElementDefinition element) : Form<CircuitValue?>
{
    private static readonly Dictionary<QuantityKind, Form<Quantity?>> Quantities = Enum.GetValues<QuantityKind>().ToDictionary(k => k, Forms.Quantity);

    public override bool TryRead(YamlNode node, string name, Scope scope, out CircuitValue? value)
    {
        value = null;
        if (node is YamlScalar scalar && FigureNames.LooksLikeOne(scalar.Value.Trim()))
        {
            if (!CircuitText.Figure(scalar.Value.Trim(), element.Part, scope.Record).IsOk(out value, out var problems) && !IsBroken(scalar.Value.Trim(), scope))
                scope.Refuse(node, name, problems[0]);
        }
        else if (Quantities[key.Kind].TryRead(node, name, scope, out var quantity) && quantity is not null)
        {
            value = new CircuitValue.Given(quantity);
        }

        return value is not null;
    }

    public override YamlNode? Write(CircuitValue? value, Scope scope) => value switch
    {
        CircuitValue.Taken taken => new YamlScalar(CircuitText.Write(taken, element.Part, scope.Record), isQuoted: false),
        CircuitValue.Given given => Quantities[key.Kind].Write(given.Quantity, scope),
        _ => null,
    };

    /// <summary>A figure whose own entry could not be read is told of there.</summary>
    private static bool IsBroken(string written, Scope scope) =>
        FigureName.TryRead(written.TrimStart('/'), out var name, out _) && scope.Broken.Contains(name);
}

/// <summary>An element: the keys of every element, and those of its kind.</summary>
internal static class ElementForm
{
    private static readonly Dictionary<ElementKind, Shape<ElementDefinition>> Shapes = ElementKinds.All.ToDictionary(s => s.Kind, ShapeOf);

    /// <summary>The keys of a kind, those of every element among them.</summary>
    public static IReadOnlyList<string> KeysOf(ElementKind kind) => Shapes[kind].Keys;

    public static bool TryRead(YamlNode node, ElementDefinition blank, Scope scope, out ElementDefinition element)
    {
        element = blank;
        if (node is not YamlMap map)
        {
            scope.Refuse(node, "", "file-shape", node.What, "An element is a group of keys: kind, from, to and the sizes of its kind.", "Write { kind: pipe, from: delivery, to: gallery, bore: 1/2 in, length: 8 in }.");
            return false;
        }

        if (map["kind"] is not { } kind || kind is YamlScalar { IsLeftOut: true })
        {
            scope.Refuse(map, "kind", "file-key-missing", "nothing", $"An element says its kind: {string.Join(", ", Words.All<ElementKind>())}.", "Write kind: and one of these.");
            return false;
        }

        return Forms.WordOrNone<ElementKind>().TryRead(kind, "kind", scope, out var of) && Shapes[of!.Value].TryRead(node, blank, scope, out element);
    }

    public static YamlMap Write(ElementDefinition element, Scope scope, bool isOneLine) => Shapes[element.Kind].Write(element, scope, isOneLine);

    private static Shape<ElementDefinition> ShapeOf(ElementShape kind)
    {
        var shape = new Shape<ElementDefinition>($"{("aeiou".Contains(kind.Kind.Word()[0], StringComparison.Ordinal) ? "an" : "a")} {kind.Kind.Word()}")
            .Key("kind", Forms.WordOrNone<ElementKind>(), e => e.Kind, (e, v) => e with { Kind = v!.Value }, Need.Required)
            .Key("from", Circuits.Node, e => e.From, (e, v) => e with { From = v }, Need.Required)
            .Key("to", Circuits.Node, e => e.To, (e, v) => e with { To = v }, Need.Required)
            .Key("part", References.Part, e => e.Part, (e, v) => e with { Part = v });
        if (kind.HasVent)
            shape.Key("vent", Circuits.NodeOrNone, e => e.Vent, (e, v) => e with { Vent = v });
        foreach (var key in kind.Keys)
            shape.Key(key.Name, (e, _) => new CircuitValueForm(key, e), e => e.Value(key.Name), (e, v) => e with { Values = [.. e.Values, new ElementValue(key.Name, v!)] });
        return shape
            .Key("blanked", Forms.YesNo, e => e.Blanked, (e, v) => e with { Blanked = v })
            .Key("label", Forms.Text, e => e.Label, (e, v) => e with { Label = v })
            .Key("note", Forms.Text, e => e.Note, (e, v) => e with { Note = v });
    }
}

/// <summary>Entries that each stand under their name.</summary>
/// <param name="what">What they are, for messages.</param>
/// <param name="blank">What the entry of a name is read over, or why it is no name.</param>
/// <param name="nameOf">The name of an entry.</param>
/// <param name="read">Reads what stands under the name.</param>
/// <param name="write">Writes it.</param>
internal sealed class NamedForm<T>(string what, Func<string, Outcome<T>> blank, Func<T, string> nameOf, NamedForm<T>.Reader read, Func<T, Scope, bool, YamlMap> write) : Form<IReadOnlyList<T>>
{
    public delegate bool Reader(YamlNode node, T blank, Scope scope, out T item);

    public bool IsOneLine { get; init; }

    public override bool TryRead(YamlNode node, string key, Scope scope, out IReadOnlyList<T> value)
    {
        var items = new List<T>();
        value = items;
        if (node is not YamlMap map)
        {
            scope.Refuse(node, key, "file-shape", node.What, $"Here stand names of {what}, each with its keys.", "Write name: { key: value }.");
            return false;
        }

        var entry = scope.Entry;
        foreach (var (name, inner) in map.Entries)
        {
            scope.Entry = entry;
            if (!blank(name.Value.Trim()).IsOk(out var item, out var problems))
            {
                scope.Refuse(name, key, problems[0]);
                continue;
            }

            scope.Entry = $"{entry}, {key}, {name.Value.Trim()}";
            if (read(inner is YamlScalar { IsLeftOut: true } ? new YamlMap([], inner.Line, inner.Column) : inner, item, scope, out item))
                items.Add(item);
        }

        scope.Entry = entry;
        return true;
    }

    public override YamlNode? Write(IReadOnlyList<T> value, Scope scope) => value.Count == 0
        ? null
        : new YamlMap([.. value.Select(v => (TextForm.Scalar(nameOf(v)), (YamlNode)write(v, scope, true)))]) { IsOneLine = IsOneLine };
}
