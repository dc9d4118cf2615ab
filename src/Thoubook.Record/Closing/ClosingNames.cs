using System.Diagnostics.CodeAnalysis;

namespace Thoubook.Record.Closing;

/// <summary>The name of a step: <c>fit-sump</c>, or <c>pump/fit-driver</c> where it belongs to a sub-assembly.</summary>
public readonly record struct StepName : IComparable<StepName>
{
    public StepName(string text) => Text = ClosingNames.Checked(text, "a step's name", nameof(text));

    public string Text { get => field ?? ""; }

    public static bool TryRead(string text, out StepName name, [NotNullWhen(false)] out Problem? problem) =>
        ClosingNames.TryRead(text, "step-name", "A step", "fit-sump or pump/fit-driver", t => new StepName(t), out name, out problem);

    public int CompareTo(StepName other) => string.CompareOrdinal(Text, other.Text);

    public override string ToString() => Text;
}

/// <summary>The name of a space: <c>crankcase</c>.</summary>
public readonly record struct SpaceName : IComparable<SpaceName>
{
    public SpaceName(string text) => Text = ClosingNames.Checked(text, "a space's name", nameof(text));

    public string Text { get => field ?? ""; }

    public static bool TryRead(string text, out SpaceName name, [NotNullWhen(false)] out Problem? problem) =>
        ClosingNames.TryRead(text, "space-name", "A space", "crankcase", t => new SpaceName(t), out name, out problem);

    public int CompareTo(SpaceName other) => string.CompareOrdinal(Text, other.Text);

    public override string ToString() => Text;
}

/// <summary>The name of a joint: <c>sump-studs</c>.</summary>
public readonly record struct JointName : IComparable<JointName>
{
    public JointName(string text) => Text = ClosingNames.Checked(text, "a joint's name", nameof(text));

    public string Text { get => field ?? ""; }

    public static bool TryRead(string text, out JointName name, [NotNullWhen(false)] out Problem? problem) =>
        ClosingNames.TryRead(text, "joint-name", "A joint", "sump-studs", t => new JointName(t), out name, out problem);

    public int CompareTo(JointName other) => string.CompareOrdinal(Text, other.Text);

    public override string ToString() => Text;
}

/// <summary>The name of parts that go together or not at all: <c>high-pressure-feed</c>.</summary>
public readonly record struct TogetherName : IComparable<TogetherName>
{
    public TogetherName(string text) => Text = ClosingNames.Checked(text, "the name of a group of parts", nameof(text));

    public string Text { get => field ?? ""; }

    public static bool TryRead(string text, out TogetherName name, [NotNullWhen(false)] out Problem? problem) =>
        ClosingNames.TryRead(text, "together-name", "A group of parts", "high-pressure-feed", t => new TogetherName(t), out name, out problem);

    public int CompareTo(TogetherName other) => string.CompareOrdinal(Text, other.Text);

    public override string ToString() => Text;
}

/// <summary>The name of a line that permission to run asks for by hand: <c>extinguisher</c>.</summary>
public readonly record struct PermissionName : IComparable<PermissionName>
{
    public PermissionName(string text) => Text = ClosingNames.Checked(text, "the name of a line", nameof(text));

    public string Text { get => field ?? ""; }

    public static bool TryRead(string text, out PermissionName name, [NotNullWhen(false)] out Problem? problem) =>
        ClosingNames.TryRead(text, "permission-name", "A line of the permission to run", "extinguisher", t => new PermissionName(t), out name, out problem);

    public int CompareTo(PermissionName other) => string.CompareOrdinal(Text, other.Text);

    public override string ToString() => Text;
}

/// <summary>The name of a tool, as steps call it: <c>cam nut spanner</c>. Compared without regard to case.</summary>
public readonly record struct ToolName : IEquatable<ToolName>, IComparable<ToolName>
{
    public ToolName(string text) => Text = NameText.Label(text, nameof(text));

    public string Text { get => field ?? ""; }

    public static bool TryRead(string text, out ToolName name, [NotNullWhen(false)] out Problem? problem) =>
        NameText.TryLabel(text, "tool-name", "The name of a tool", t => new ToolName(t), out name, out problem);

    public bool Equals(ToolName other) => string.Equals(Text, other.Text, StringComparison.OrdinalIgnoreCase);

    public override int GetHashCode() => StringComparer.OrdinalIgnoreCase.GetHashCode(Text);

    public int CompareTo(ToolName other) => string.Compare(Text, other.Text, StringComparison.OrdinalIgnoreCase);

    public override string ToString() => Text;
}

internal static class ClosingNames
{
    public static string Checked(string text, string what, string parameter) => IsName(text)
        ? text
        : throw new ArgumentException($"{NameText.Quote(text)} is not {what}: letters, digits, hyphens and underscores.", parameter);

    public static bool TryRead<T>(string text, string code, string what, string example, Func<string, T> make, out T name, [NotNullWhen(false)] out Problem? problem)
        where T : struct
    {
        problem = IsName(text)
            ? null
            : new Problem(code, "", NameText.Quote(text), $"{what} is named in letters, digits, hyphens and underscores, such as {example}.", "Write the name so; what it is may say more.");
        name = problem is null ? make(text) : default;
        return problem is null;
    }

    private static bool IsName(string text) => text.Length <= 120 && text.Split('/').All(NameText.IsShortName);
}
