using System.Diagnostics.CodeAnalysis;

namespace Thoubook.Record;

/// <summary>A part's place in the tree, written <c>lower-half/pressure-pump/driver</c>: up to 12 segments of small letters, digits and hyphens.</summary>
public readonly record struct PartName : IComparable<PartName>
{
    private readonly string? _path;

    private PartName(string path) => _path = path;

    public string Path => _path ?? "";

    /// <summary>The last segment.</summary>
    public string Leaf => Path[(Path.LastIndexOf('/') + 1)..];

    /// <summary>The part it lies in; null at the top.</summary>
    public PartName? Parent => Path.LastIndexOf('/') is var slash and >= 0 ? new PartName(Path[..slash]) : null;

    public int Depth => Path.AsSpan().Count('/') + 1;

    /// <summary>Whether this is <paramref name="other"/> or lies within it.</summary>
    public bool IsWithin(PartName other) =>
        Path.StartsWith(other.Path, StringComparison.Ordinal) && (Path.Length == other.Path.Length || Path[other.Path.Length] == '/');

    public static PartName Of(string path) => TryRead(path, out var name, out var problem) ? name : throw new ArgumentException(problem.ToString(), nameof(path));

    public static bool TryRead(string path, out PartName name, [NotNullWhen(false)] out Problem? problem)
    {
        name = default;
        problem = null;
        var segments = path.Split('/');
        if (segments.Any(s => s is "." or ".."))
        {
            problem = new Problem("part-cycle", "", NameText.Quote(path), "The tree of parts is written from the top down; dots do not lead back up, so that no part can lie within itself.", "Write the whole way from the top, such as lower-half/pressure-pump/driver.");
            return false;
        }

        if (path.Length is 0 or > 200 || segments.Length > 12 || !segments.All(NameText.IsSegment))
        {
            problem = new Problem("part-name", "", NameText.Quote(path), "A part is named by its place in the tree, such as lower-half/pressure-pump/driver: small letters, digits and hyphens, up to 12 levels.", "Write the name so.");
            return false;
        }

        name = new PartName(path);
        return true;
    }

    public PartName Child(string segment) => Of($"{Path}/{segment}");

    public int CompareTo(PartName other) => string.CompareOrdinal(Path, other.Path);

    public override string ToString() => Path;
}

/// <summary>The name of a figure of the engine, a dimension or a fit: <c>part/path.name</c>. One namespace for both.</summary>
public readonly record struct FigureName : IComparable<FigureName>
{
    public FigureName(PartName part, string local)
    {
        if (!NameText.IsSegment(local))
            throw new ArgumentException($"{NameText.Quote(local)} is not a figure's name: small letters, digits and hyphens.", nameof(local));
        Part = part;
        Local = local;
    }

    public PartName Part { get; }

    public string Local { get => field ?? ""; }

    public static FigureName Of(string text) => TryRead(text, out var name, out var problem) ? name : throw new ArgumentException(problem.ToString(), nameof(text));

    public static bool TryRead(string text, out FigureName name, [NotNullWhen(false)] out Problem? problem)
    {
        name = default;
        var dot = text.LastIndexOf('.');
        if (dot > 0 && NameText.IsSegment(text[(dot + 1)..]) && PartName.TryRead(text[..dot], out var part, out _))
        {
            name = new FigureName(part, text[(dot + 1)..]);
            problem = null;
            return true;
        }

        problem = new Problem("figure-name", "", NameText.Quote(text), "A dimension or a fit is named part/path.name, such as lower-half/pressure-pump/body.depth.", "Write the name so.");
        return false;
    }

    public int CompareTo(FigureName other)
    {
        var part = Part.CompareTo(other.Part);
        return part != 0 ? part : string.CompareOrdinal(Local, other.Local);
    }

    public override string ToString() => $"{Part}.{Local}";
}

/// <summary>The tag on a physical piece: what stands on the brass disc. Unique in the workshop.</summary>
public readonly record struct PieceTag : IComparable<PieceTag>
{
    public PieceTag(string text) => Text = NameText.Label(text, nameof(text));

    public string Text { get => field ?? ""; }

    public static bool TryRead(string text, out PieceTag name, [NotNullWhen(false)] out Problem? problem) =>
        NameText.TryLabel(text, "piece-tag", "The tag on a piece", t => new PieceTag(t), out name, out problem);

    public int CompareTo(PieceTag other) => string.CompareOrdinal(Text, other.Text);

    public override string ToString() => Text;
}

/// <summary>The tag on a measuring instrument. Unique in the workshop.</summary>
public readonly record struct GaugeTag : IComparable<GaugeTag>
{
    public GaugeTag(string text) => Text = NameText.Label(text, nameof(text));

    public string Text { get => field ?? ""; }

    public static bool TryRead(string text, out GaugeTag name, [NotNullWhen(false)] out Problem? problem) =>
        NameText.TryLabel(text, "gauge-tag", "The tag on a gauge", t => new GaugeTag(t), out name, out problem);

    public int CompareTo(GaugeTag other) => string.CompareOrdinal(Text, other.Text);

    public override string ToString() => Text;
}

/// <summary>The short name of a document: <c>overhaul-book</c>.</summary>
public readonly record struct DocumentName : IComparable<DocumentName>
{
    public DocumentName(string text) =>
        Text = NameText.IsSegment(text) ? text : throw new ArgumentException($"{NameText.Quote(text)} is not a document's name: small letters, digits and hyphens.", nameof(text));

    public string Text { get => field ?? ""; }

    public static bool TryRead(string text, out DocumentName name, [NotNullWhen(false)] out Problem? problem)
    {
        problem = NameText.IsSegment(text)
            ? null
            : new Problem("document-name", "", NameText.Quote(text), "A document is named in small letters, digits and hyphens, such as overhaul-book.", "Write the name so; its title may say more.");
        name = problem is null ? new DocumentName(text) : default;
        return problem is null;
    }

    public int CompareTo(DocumentName other) => string.CompareOrdinal(Text, other.Text);

    public override string ToString() => Text;
}

/// <summary>The name of an engine, as its people write it: <c>Sandpiper six</c>. Compared without regard to case.</summary>
public readonly record struct EngineName : IEquatable<EngineName>, IComparable<EngineName>
{
    public EngineName(string text) => Text = NameText.Label(text, nameof(text));

    public string Text { get => field ?? ""; }

    public static bool TryRead(string text, out EngineName name, [NotNullWhen(false)] out Problem? problem) =>
        NameText.TryLabel(text, "engine-name", "The name of an engine", t => new EngineName(t), out name, out problem);

    public bool Equals(EngineName other) => string.Equals(Text, other.Text, StringComparison.OrdinalIgnoreCase);

    public override int GetHashCode() => StringComparer.OrdinalIgnoreCase.GetHashCode(Text);

    public int CompareTo(EngineName other) => string.Compare(Text, other.Text, StringComparison.OrdinalIgnoreCase);

    public override string ToString() => Text;
}

/// <summary>
/// A place on a piece where it is measured, written <c>A1</c> (plane A, direction 1) or <c>front/upright</c>: the plane says how deep or how far along,
/// the direction says which way round. Places of one plane give the ovality, places of one direction the taper.
/// </summary>
public readonly record struct PlaceName : IComparable<PlaceName>
{
    public PlaceName(string text)
    {
        Text = NameText.Label(text, nameof(text));
        var slash = Text.IndexOf('/');
        if (slash >= 0)
        {
            Plane = Text[..slash].Trim();
            Direction = Text[(slash + 1)..].Trim();
            return;
        }

        var letters = 0;
        while (letters < Text.Length && char.IsAsciiLetter(Text[letters]))
            letters++;
        if (letters is > 0 and <= 2 && letters < Text.Length && Text.AsSpan(letters).IndexOfAnyExceptInRange('0', '9') < 0)
        {
            Plane = Text[..letters];
            Direction = Text[letters..];
        }
        else
        {
            Plane = Text;
            Direction = "";
        }
    }

    /// <summary>A reading whose place was not noted.</summary>
    public static PlaceName NotNoted { get; } = new("not noted");

    public static bool TryRead(string text, out PlaceName name, [NotNullWhen(false)] out Problem? problem) =>
        NameText.TryLabel(text, "place-name", "A place on a piece", t => new PlaceName(t), out name, out problem);

    public string Text { get => field ?? ""; }

    public string Plane { get => field ?? ""; }

    /// <summary>Empty where the place has no direction of its own.</summary>
    public string Direction { get => field ?? ""; }

    public bool Equals(PlaceName other) => string.Equals(Text, other.Text, StringComparison.OrdinalIgnoreCase);

    public override int GetHashCode() => StringComparer.OrdinalIgnoreCase.GetHashCode(Text);

    public int CompareTo(PlaceName other) => string.Compare(Text, other.Text, StringComparison.OrdinalIgnoreCase);

    public override string ToString() => Text;
}

internal static class NameText
{
    public static bool IsSegment(string text) =>
        text.Length is > 0 and <= 60
        && char.IsAsciiLetterOrDigit(text[0]) && char.IsAsciiLetterOrDigit(text[^1])
        && text.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-');

    /// <summary>A short name within a circuit: letters of either case, digits, hyphens and underscores.</summary>
    public static bool IsShortName(string text) =>
        text.Length is > 0 and <= 60 && char.IsAsciiLetterOrDigit(text[0]) && char.IsAsciiLetterOrDigit(text[^1]) && text.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_');

    public static bool TryShortName<T>(string text, string code, string what, string example, Func<string, T> make, out T name, [NotNullWhen(false)] out Problem? problem)
        where T : struct
    {
        problem = IsShortName(text)
            ? null
            : new Problem(code, "", Quote(text), $"{what} is named in letters, digits, hyphens and underscores, such as {example}.", "Write the name so; its label may say more.");
        name = problem is null ? make(text) : default;
        return problem is null;
    }

    /// <summary>One line of at most 80 characters with neither end blank.</summary>
    public static string Label(string text, string parameter) =>
        IsLabel(text) ? text.Trim() : throw new ArgumentException($"{Quote(text)} is not a name: one line of 1 to 80 characters.", parameter);

    public static bool TryLabel<T>(string text, string code, string what, Func<string, T> make, out T name, [NotNullWhen(false)] out Problem? problem)
        where T : struct
    {
        problem = IsLabel(text) ? null : new Problem(code, "", Quote(text), $"{what} is one line of 1 to 80 characters.", "Write it so.");
        name = problem is null ? make(text) : default;
        return problem is null;
    }

    private static bool IsLabel(string text) => text.Trim() is { Length: > 0 and <= 80 } trimmed && !trimmed.Any(char.IsControl);

    /// <summary>What a person wrote, in quotes, cut short where it is long.</summary>
    public static string Quote(string text)
    {
        var shown = new string([.. text.Take(60).Select(c => char.IsControl(c) ? '·' : c)]);
        return text.Length > 60 ? $"\"{shown}…\"" : $"\"{shown}\"";
    }
}
