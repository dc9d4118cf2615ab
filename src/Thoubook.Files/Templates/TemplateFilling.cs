using System.Globalization;
using System.Text.RegularExpressions;
using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Files.Templates;

/// <summary>Fills the blanks of a template.</summary>
internal sealed partial class TemplateFilling(TemplateAnswers answers)
{
    private const string When = "when";
    private const string Each = "each";
    private const string Is = "is";
    private const string Else = "else";
    private const string AlsoKey = "also";
    private const string IfThereKey = "if-there";

    private readonly Dictionary<string, IReadOnlyList<string>> _also = [];
    private readonly HashSet<PartName> _partsIfThere = [];
    private readonly HashSet<SpaceName> _spacesIfThere = [];

    public IReadOnlyDictionary<string, IReadOnlyList<string>> Also => _also;

    public IReadOnlySet<PartName> PartsIfThere => _partsIfThere;

    public IReadOnlySet<SpaceName> SpacesIfThere => _spacesIfThere;

    public YamlMap Fill(YamlMap root) => Map(root, new Dictionary<string, string>());

    private YamlMap Map(YamlMap map, IReadOnlyDictionary<string, string> numbers)
    {
        var filled = new List<(YamlScalar, YamlNode)>();
        var named = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (key, value) in map.Entries)
        {
            if (key.Value is When or Each)
                continue;
            foreach (var at in Times(value, numbers))
            {
                var name = Text(key.Value, at);
                if (Node(value, at) is not { } one || !named.Add(name))
                    continue;
                if (one is YamlMap entry)
                    one = WithoutOwn(name, entry);
                filled.Add((new YamlScalar(name, key.IsQuoted, key.Line, key.Column), one));
            }
        }

        return new YamlMap(filled, map.Line, map.Column);
    }

    /// <summary>What a group is filled with; null where nothing is left of it.</summary>
    private YamlNode? Node(YamlNode node, IReadOnlyDictionary<string, string> numbers)
    {
        switch (node)
        {
            case YamlMap map when map[Is] is { } meant:
                return Node(Holds(map, numbers) ? meant : map[Else]!, numbers);
            case YamlMap map:
                return Map(map, numbers);
            case YamlList list:
                return new YamlList([.. list.Items.SelectMany(i => Times(i, numbers).Select(at => Node(i, at))).OfType<YamlNode>()], list.Line, list.Column);
            case YamlScalar scalar:
                var text = Text(scalar.Value, numbers);
                return text.Trim().Length == 0 && scalar.Value.Length > 0 ? null : new YamlScalar(text, scalar.IsQuoted, scalar.Line, scalar.Column);
            default:
                throw new InvalidOperationException();
        }
    }

    /// <summary>The keys of a template that no engine file has, taken note of and left out.</summary>
    private YamlMap WithoutOwn(string name, YamlMap entry)
    {
        if (entry[AlsoKey] is YamlList also)
            _also[name] = [.. also.Items.OfType<YamlScalar>().Select(s => s.Value)];
        if (entry[IfThereKey] is YamlScalar { Value: "part" } && PartName.TryRead(name, out var part, out _))
            _partsIfThere.Add(part);
        else if (entry[IfThereKey] is YamlScalar { Value: "space" })
            _spacesIfThere.Add(new SpaceName(name));
        return new YamlMap([.. entry.Entries.Where(e => e.Key.Value is not (AlsoKey or IfThereKey))], entry.Line, entry.Column);
    }

    /// <summary>Once for each time that a node stands: none where it does not.</summary>
    private IEnumerable<IReadOnlyDictionary<string, string>> Times(YamlNode node, IReadOnlyDictionary<string, string> numbers)
    {
        var map = node as YamlMap;
        if (map?[Each] is not YamlScalar each)
            return Stands(map, numbers) ? [numbers] : [];
        return each.Value.Split(" and ").Aggregate<string, IEnumerable<IReadOnlyDictionary<string, string>>>([numbers], (all, loop) => all.SelectMany(at => Loop(loop, each, at))).Where(at => Stands(map, at));
    }

    private IEnumerable<IReadOnlyDictionary<string, string>> Loop(string loop, YamlScalar each, IReadOnlyDictionary<string, string> numbers)
    {
        if (loop.Split(" of ") is not [var name, var words])
            throw Broken(each, "each: is written n of key");
        var all = answers.Counts.TryGetValue(words.Trim(), out var count)
            ? Enumerable.Range(1, count).Select(i => i.ToString(CultureInfo.InvariantCulture))
            : words.Split(',').Select(w => w.Trim());
        return all.Select(one => new Dictionary<string, string>(numbers) { [name.Trim()] = one });
    }

    /// <summary>Where it does not hold, what stands under else: stands in its stead.</summary>
    private bool Stands(YamlMap? map, IReadOnlyDictionary<string, string> numbers) => map?[Else] is not null || Holds(map, numbers);

    /// <summary>Every condition is looked at, so that one which is written wrong is not passed over.</summary>
    private bool Holds(YamlMap? map, IReadOnlyDictionary<string, string> numbers) =>
        map?[When] is not YamlScalar when || !when.Value.Split(" and ").Select(condition => Holds(condition, when, numbers)).ToList().Contains(false);

    private bool Holds(string condition, YamlScalar at, IReadOnlyDictionary<string, string> numbers)
    {
        var isNot = condition.Contains("!=", StringComparison.Ordinal);
        if (condition.Split(isNot ? "!=" : "=") is not [var key, var words])
            throw Broken(at, "when: is written key=word or key!=word");
        var found = Value(key.Trim(), numbers) ?? throw Broken(at, $"there is no question {key}");
        return words.Split('|').Any(w => Text(w.Trim(), numbers) == found) != isNot;
    }

    private string Text(string text, IReadOnlyDictionary<string, string> numbers) =>
        Blank().Replace(text, blank => Value(blank.Groups["key"].Value, numbers) ?? throw new InvalidDataException($"The template has no answer for {blank.Value} in {text}."));

    private string? Value(string key, IReadOnlyDictionary<string, string> numbers)
    {
        if (numbers.TryGetValue(key, out var number))
            return number;
        if (answers.Texts.TryGetValue(key, out var text))
            return text;
        if (key.Split('@') is [var part, var which])
            return answers.Texts.GetValueOrDefault($"{part}#{answers.Texts.GetValueOrDefault(which)}");
        return numbers.TryGetValue("n", out var n) ? answers.Texts.GetValueOrDefault($"{key}#{n}") : null;
    }

    private static InvalidDataException Broken(YamlScalar at, string why) => new($"Line {at.Line} of the template, {at.What}: {why}.");

    [GeneratedRegex(@"\{(?<key>[a-z@-]+)\}", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Blank();
}
