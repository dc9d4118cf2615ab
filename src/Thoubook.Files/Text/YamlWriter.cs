using System.Globalization;
using System.Text;

namespace Thoubook.Files.Text;

/// <summary>Writes a tree as YAML: groups under each other, short ones in braces on one line, texts in quotes only where they need them.</summary>
internal sealed class YamlWriter
{
    private readonly StringBuilder _text = new();

    public static string Write(YamlMap root)
    {
        var writer = new YamlWriter();
        writer.Block(root, 0);
        return writer._text.ToString();
    }

    private void Block(YamlMap map, int indent)
    {
        foreach (var (key, value) in map.Entries)
        {
            _text.Append(' ', indent).Append(Quoted(key, isInBraces: false)).Append(':');
            switch (value)
            {
                case YamlMap { IsOneLine: false, Entries.Count: > 0 } inner:
                    _text.Append('\n');
                    Block(inner, indent + 2);
                    break;
                case YamlList list when list.Items.Any(i => i is not YamlScalar):
                    _text.Append('\n');
                    foreach (var item in list.Items)
                        Line(_text.Append(' ', indent + 2).Append("- "), item, isInBraces: false).Append('\n');
                    break;
                default:
                    Line(_text.Append(' '), value, isInBraces: false).Append('\n');
                    break;
            }
        }
    }

    private static StringBuilder Line(StringBuilder text, YamlNode node, bool isInBraces)
    {
        switch (node)
        {
            case YamlScalar scalar:
                return text.Append(Quoted(scalar, isInBraces));
            case YamlList list:
                text.Append('[');
                for (var i = 0; i < list.Items.Count; i++)
                    Line(text.Append(i == 0 ? "" : ", "), list.Items[i], isInBraces: true);
                return text.Append(']');
            case YamlMap { Entries: [] }:
                return text.Append("{}");
            case YamlMap map:
                text.Append("{ ");
                for (var i = 0; i < map.Entries.Count; i++)
                    Line(text.Append(i == 0 ? "" : ", ").Append(Quoted(map.Entries[i].Key, isInBraces: true)).Append(": "), map.Entries[i].Value, isInBraces: true);
                return text.Append(" }");
            default:
                throw new InvalidOperationException();
        }
    }

    private static string Quoted(YamlScalar scalar, bool isInBraces) =>
        !scalar.IsQuoted && IsPlain(scalar.Value, isInBraces) ? scalar.Value : InQuotes(scalar.Value);

    private static bool IsPlain(string text, bool isInBraces)
    {
        if (text == "~")
            return true;
        if (text.Length == 0 || !(char.IsLetterOrDigit(text[0]) || text[0] is '(' or '.' or '/' or '+' or '°' || text[0] == '-' && text.Length > 1 && (char.IsLetterOrDigit(text[1]) || text[1] == '.')))
            return false;
        if (text[^1] is ' ' or ':' || text.Contains("  ", StringComparison.Ordinal))
            return false;
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            var isSafe = char.IsLetterOrDigit(c) || c is ' ' or '.' or '/' or '(' or ')' or '+' or '-' or '°' or '%' or ';' or '=' or '\'' or '"' or '_' or '–' or '—' or '×' or '½' or '¼' or '¾'
                || c is ',' && !isInBraces
                || c is '*' && (text[i - 1] != ' ' || i + 1 < text.Length && text[i + 1] == ' ')   // else it reads as an alias
                || c is ':' && text[i + 1] != ' ' && !isInBraces;
            if (!isSafe)
                return false;
        }

        return true;
    }

    private static string InQuotes(string text)
    {
        var quoted = new StringBuilder("\"");
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (char.IsSurrogate(c))
            {
                // A letter outside the basic plane stands as it is; half of one is no letter.
                var isWhole = i + 1 < text.Length && char.IsSurrogatePair(c, text[i + 1]);
                quoted.Append(isWhole ? text.AsSpan(i++, 2) : "\uFFFD");
                continue;
            }

            _ = c switch
            {
                '"' => quoted.Append("\\\""),
                '\\' => quoted.Append("\\\\"),
                '\n' => quoted.Append("\\n"),
                '\r' => quoted.Append("\\r"),
                '\t' => quoted.Append("\\t"),
                _ when char.IsControl(c) || c is '\u2028' or '\u2029' or '\uFEFF' or '\uFFFE' or '\uFFFF' =>
                    quoted.Append("\\u").Append(((int)c).ToString("X4", CultureInfo.InvariantCulture)),
                _ => quoted.Append(c),
            };
        }

        return quoted.Append('"').ToString();
    }
}
