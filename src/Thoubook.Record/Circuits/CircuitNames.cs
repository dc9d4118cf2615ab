using System.Diagnostics.CodeAnalysis;

namespace Thoubook.Record.Circuits;

/// <summary>The name of a node of the circuit, a place where the oil has one pressure: <c>gallery-1</c>.</summary>
public readonly record struct NodeName : IComparable<NodeName>
{
    public NodeName(string text) => Text = NameText.IsShortName(text) ? text : throw new ArgumentException($"{NameText.Quote(text)} is not a node's name: letters, digits, hyphens and underscores.", nameof(text));

    public string Text { get => field ?? ""; }

    public static bool TryRead(string text, out NodeName name, [NotNullWhen(false)] out Problem? problem) =>
        NameText.TryShortName(text, "node-name", "A node of the circuit", "gallery-1", t => new NodeName(t), out name, out problem);

    public int CompareTo(NodeName other) => string.CompareOrdinal(Text, other.Text);

    public override string ToString() => Text;
}

/// <summary>The name of an element of the circuit: <c>pressure-pump</c>, <c>main-1</c>.</summary>
public readonly record struct ElementName : IComparable<ElementName>
{
    public ElementName(string text) => Text = NameText.IsShortName(text) ? text : throw new ArgumentException($"{NameText.Quote(text)} is not an element's name: letters, digits, hyphens and underscores.", nameof(text));

    public string Text { get => field ?? ""; }

    public static bool TryRead(string text, out ElementName name, [NotNullWhen(false)] out Problem? problem) =>
        NameText.TryShortName(text, "element-name", "An element of the circuit", "main-1", t => new ElementName(t), out name, out problem);

    public int CompareTo(ElementName other) => string.CompareOrdinal(Text, other.Text);

    public override string ToString() => Text;
}

/// <summary>What an oil pressure gauge is called: <c>main</c>, <c>low pressure</c>. Compared without regard to case.</summary>
public readonly record struct OilGaugeName : IComparable<OilGaugeName>
{
    public OilGaugeName(string text) => Text = NameText.Label(text, nameof(text));

    public string Text { get => field ?? ""; }

    public static bool TryRead(string text, out OilGaugeName name, [NotNullWhen(false)] out Problem? problem) =>
        NameText.TryLabel(text, "oil-gauge-name", "The name of an oil gauge", t => new OilGaugeName(t), out name, out problem);

    public bool Equals(OilGaugeName other) => string.Equals(Text, other.Text, StringComparison.OrdinalIgnoreCase);

    public override int GetHashCode() => StringComparer.OrdinalIgnoreCase.GetHashCode(Text);

    public int CompareTo(OilGaugeName other) => string.Compare(Text, other.Text, StringComparison.OrdinalIgnoreCase);

    public override string ToString() => Text;
}
