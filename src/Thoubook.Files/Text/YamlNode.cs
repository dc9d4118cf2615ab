namespace Thoubook.Files.Text;

/// <summary>A piece of a YAML text with its place; line and column count from 1, and are 0 for one that is made to be written.</summary>
public abstract class YamlNode(int line, int column)
{
    public int Line { get; } = line;

    public int Column { get; } = column;

    /// <summary>What it is, for a message.</summary>
    public abstract string What { get; }
}

/// <summary>A word, a number or a text. Everything is kept as it was written.</summary>
public sealed class YamlScalar(string value, bool isQuoted, int line = 0, int column = 0) : YamlNode(line, column)
{
    /// <summary>Without its quotes.</summary>
    public string Value { get; } = value;

    /// <summary>Whether it stood, or must stand, in quotes (or in a block of its own lines).</summary>
    public bool IsQuoted { get; } = isQuoted;

    /// <summary>Nothing, or ~: left out.</summary>
    public bool IsLeftOut => !IsQuoted && Value is "" or "~" or "null";

    public override string What => IsLeftOut ? "nothing" : Value.Length > 60 ? $"\"{Value[..60]}…\"" : $"\"{Value}\"";
}

public sealed class YamlList(IReadOnlyList<YamlNode> items, int line = 0, int column = 0) : YamlNode(line, column)
{
    public IReadOnlyList<YamlNode> Items { get; } = items;

    public override string What => "a list";
}

public sealed class YamlMap(IReadOnlyList<(YamlScalar Key, YamlNode Value)> entries, int line = 0, int column = 0) : YamlNode(line, column)
{
    public IReadOnlyList<(YamlScalar Key, YamlNode Value)> Entries { get; } = entries;

    /// <summary>Whether it is written on one line, in braces.</summary>
    public bool IsOneLine { get; init; }

    public YamlNode? this[string key] => Entries.FirstOrDefault(e => string.Equals(e.Key.Value, key, StringComparison.Ordinal)).Value;

    public override string What => "a group of keys";
}
