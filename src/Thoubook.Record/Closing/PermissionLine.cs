using System.Diagnostics.CodeAnalysis;
using NodaTime;

namespace Thoubook.Record.Closing;

/// <summary>One line of the permission to run, granted by name for a purpose. It lapses when what it relied on is disturbed, and no other with it.</summary>
public sealed record PermissionLine(FactId Id, OffsetDateTime At, string By, LineKey Line, Purpose Purpose) : Fact(Id, At, By), IConclusion
{
    public IReadOnlyList<FactId> ReliesOn { get; init; } = [];

    public string? Note { get; init; }

    public override string Headline => $"permission to run, {Line}";
}

/// <summary>Which line of the permission to run: <c>space crankcase</c>, <c>joint feed-union</c>, <c>line extinguisher</c>.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Name">Of the space, joint, oil verdict or written line; the identifier of the debt or the departure.</param>
public readonly record struct LineKey(LineKind Kind, string Name)
{
    public static bool TryRead(string text, out LineKey line, [NotNullWhen(false)] out Problem? problem)
    {
        var blank = text.IndexOf(' ', StringComparison.Ordinal);
        if (blank > 0 && Words.TryRead<LineKind>(text[..blank], out var kind) && text[(blank + 1)..].Trim() is { Length: > 0 and <= 200 } name)
        {
            line = new(kind, name);
            problem = null;
            return true;
        }

        line = default;
        problem = new Problem("permission-line", "", NameText.Quote(text), $"A line of the permission is named by what it is about ({string.Join(", ", Words.All<LineKind>())}) and its name.", "Write it so, such as joint feed-union.");
        return false;
    }

    public override string ToString() => $"{Kind.Word()} {Name}";
}

public enum LineKind
{
    /// <summary>An outermost space that is to be closed.</summary>
    Space,

    /// <summary>A joint that lies in no space.</summary>
    Joint,

    /// <summary>Something owed before the start.</summary>
    Debt,

    /// <summary>A departure that must stand for the purpose.</summary>
    Departure,

    /// <summary>A verdict on the oil pressure in a state of running.</summary>
    Oil,

    /// <summary>A line written by hand.</summary>
    Line,
}
