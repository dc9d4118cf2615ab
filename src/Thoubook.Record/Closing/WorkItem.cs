using System.Diagnostics.CodeAnalysis;

namespace Thoubook.Record.Closing;

/// <summary>One thing that can be missing when a space is closed: <c>part pump/driver</c>, <c>joint sump-studs</c>, <c>hold fit-sump: turns free</c>.</summary>
public readonly record struct WorkItem(ItemKind Kind, string Name)
{
    public static WorkItem Of(PartName part) => new(ItemKind.Part, part.Path);

    public static WorkItem Of(JointName joint) => new(ItemKind.Joint, joint.Text);

    public static WorkItem Of(StepName step) => new(ItemKind.Step, step.Text);

    public static WorkItem Of(StepName step, HoldPoint hold) => new(ItemKind.Hold, $"{step}: {hold.What}");

    public static bool TryRead(string text, out WorkItem item, [NotNullWhen(false)] out Problem? problem)
    {
        var blank = text.IndexOf(' ', StringComparison.Ordinal);
        if (blank > 0 && Words.TryRead<ItemKind>(text[..blank], out var kind) && text[(blank + 1)..].Trim() is { Length: > 0 } name)
        {
            item = new(kind, name);
            problem = null;
            return true;
        }

        item = default;
        problem = new Problem("work-item", "", NameText.Quote(text), $"What is meant is named by its kind ({string.Join(", ", Words.All<ItemKind>())}) and its name.", "Write it so, such as joint sump-studs.");
        return false;
    }

    public override string ToString() => $"{Kind.Word()} {Name}";
}

public enum ItemKind
{
    Part,
    Joint,
    Step,

    /// <summary>A hold point: the step, a colon and the point.</summary>
    Hold,

    /// <summary>What was counted out and has not come back.</summary>
    Count,
}
