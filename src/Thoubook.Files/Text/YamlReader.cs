using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Thoubook.Files.Text;

/// <summary>
/// Reads YAML into a small tree with the place of everything. A text from elsewhere is hostile until proved otherwise: depth and number of
/// nodes are limited, and anchors, aliases and tags (by which a small text can grow without end) are refused, as are keys given twice.
/// </summary>
internal sealed class YamlReader
{
    public const int MostDepth = 12;
    public const int MostNodes = 6_000_000;

    private readonly Scanner _scanner;
    private readonly Parser _parser;
    private readonly ProblemList _problems;
    private int _nodes;

    private YamlReader(string text, ProblemList problems)
    {
        _scanner = new Scanner(new StringReader(text), skipComments: true);
        _parser = new Parser(_scanner);
        _problems = problems;
    }

    /// <summary>The root of the one document in the text; null where it could not be read, with the reason in the problems.</summary>
    public static YamlNode? Read(string text, ProblemList problems)
    {
        var reader = new YamlReader(text, problems);
        try
        {
            return reader.Document();
        }
        catch (YamlException e)
        {
            Explain(e, text, problems);
            return null;
        }
        catch (Stop)
        {
            return null;
        }
    }

    private YamlNode? Document()
    {
        Next();
        if (_parser.Current is StreamStart)
            Next();
        if (_parser.Current is not DocumentStart)
        {
            _problems.Add(1, 1, "yaml-empty", "", "nothing", "The file is empty.", "Check that this is the right file.");
            return null;
        }

        Next();
        var root = Node(1);
        Next();
        Next();
        if (_parser.Current is DocumentStart second)
            throw Refuse(second, "yaml-documents", "a second document", "One file holds one engine, in one document.", "Put it into a file of its own.");
        return root;
    }

    private YamlNode Node(int depth)
    {
        var at = _parser.Current!;
        if (depth > MostDepth)
            throw Refuse(at, "yaml-depth", $"more than {MostDepth} levels, one within the other", $"An engine file is at most {MostDepth} levels deep.", "Look for a bracket or an indent that was not closed.");
        if (++_nodes > MostNodes)
            throw Refuse(at, "yaml-nodes", $"more than {MostNodes} items", $"A file holds at most {MostNodes} items.", "Divide it into several files.");
        if (at is NodeEvent { Anchor.IsEmpty: false })
            throw Refuse(at, "yaml-anchor", "an anchor (&)", "Anchors and aliases are not used in engine files.", "Write the text out where it is meant, or put it in quotes if & belongs to it.");
        if (at is NodeEvent { Tag.IsEmpty: false })
            throw Refuse(at, "yaml-tag", "a tag (!)", "Tags are not used in engine files.", "Leave it out, or put the text in quotes if ! belongs to it.");

        switch (at)
        {
            case Scalar scalar:
                return new YamlScalar(scalar.Value, scalar.Style != ScalarStyle.Plain, Line(at), Column(at));
            case SequenceStart:
                return new YamlList(Items(depth), Line(at), Column(at));
            case MappingStart:
                return new YamlMap(Entries(depth), Line(at), Column(at));
            case AnchorAlias:
                throw Refuse(at, "yaml-anchor", "an alias (*)", "Anchors and aliases are not used in engine files.", "Write the text out where it is meant, or put it in quotes if * belongs to it.");
            default:
                throw Refuse(at, "yaml-shape", "something else than a value", "A key is followed by a value, a list or a group of keys.", "Look at this line and the one above it.");
        }
    }

    private List<YamlNode> Items(int depth)
    {
        var items = new List<YamlNode>();
        for (Next(); _parser.Current is not SequenceEnd; Next())
            items.Add(Node(depth + 1));
        return items;
    }

    private List<(YamlScalar Key, YamlNode Value)> Entries(int depth)
    {
        var entries = new List<(YamlScalar, YamlNode)>();
        var lines = new Dictionary<string, int>(StringComparer.Ordinal);
        for (Next(); _parser.Current is not MappingEnd; Next())
        {
            var at = _parser.Current!;
            if (Node(depth + 1) is not YamlScalar key)
                throw Refuse(at, "yaml-key", "a key that is a list or a group", "A key is one word or name.", "Look for a bracket too many, or a name with { or [ in it that needs quotes.");
            Next();
            var value = Node(depth + 1);
            if (lines.TryAdd(key.Value, key.Line))
                entries.Add((key, value));
            else
                _problems.Add(key.Line, key.Column, "yaml-key-twice", "", $"{key.What} on line {lines[key.Value]} and again here", "Each key stands once in its group.", "Leave one out, or give it the name that was meant.");
        }

        return entries;
    }

    private void Next()
    {
        try
        {
            _parser.MoveNext();
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or IndexOutOfRangeException)
        {
            // The scanner has no words of its own for some broken texts.
            throw new SyntaxErrorException(_scanner.CurrentPosition, _scanner.CurrentPosition, "Something that cannot stand here");
        }
    }

    private Stop Refuse(ParsingEvent at, string code, string found, string allowed, string doThis)
    {
        _problems.Add(Line(at), Column(at), code, "", found, allowed, doThis);
        return new Stop();
    }

    private static int Line(ParsingEvent at) => (int)at.Start.Line;

    private static int Column(ParsingEvent at) => (int)at.Start.Column;

    private static void Explain(YamlException e, string text, ProblemList problems)
    {
        var lines = text.Split('\n');
        var (line, column) = ((int)Math.Max(1, e.Start.Line), (int)Math.Max(1, e.Start.Column));
        if (e.Message.Contains("tab", StringComparison.OrdinalIgnoreCase))
        {
            for (var i = line - 1; i < lines.Length; i++)
            {
                if (lines[i].AsSpan(0, lines[i].Length - lines[i].AsSpan().TrimStart().Length).IndexOf('\t') is var tab and >= 0)
                {
                    problems.Add(i + 1, tab + 1, "yaml-tab", "", "a tab at the beginning of the line", "Lines are set in with spaces.", "Replace the tab by spaces.");
                    return;
                }
            }
        }

        var written = lines.ElementAtOrDefault(line - 1)?.Trim() ?? "";
        problems.Add(
            line,
            column,
            "yaml-shape",
            "",
            written.Length > 60 ? $"\"{written[..60]}…\"" : written.Length > 0 ? $"\"{written}\"" : "the end of the text",
            $"Not well-formed YAML here: {e.Message.TrimEnd('.')}.",
            "Look at this line and the one above it: a missing colon, quote or bracket, or a wrong indent.");
    }

    /// <summary>Ends the reading of a text that is refused as a whole; the reason is in the problems.</summary>
    private sealed class Stop : Exception;
}
