using Thoubook.Files.Text;
using Thoubook.Record;

namespace Thoubook.Files.EngineFiles;

/// <summary>A section of facts of one kind.</summary>
/// <param name="section">The section's key.</param>
/// <param name="blank">What an entry is read over.</param>
/// <param name="shape">Its keys.</param>
/// <param name="content">What an entry says, beside who and when: an identifier is made from it where the file gives none.</param>
internal sealed class FactList<T>(string section, T blank, Shape<T> shape, Func<T, IEnumerable<string?>> content)
    where T : Fact
{
    public string Section => section;

    public IReadOnlyList<string> Keys => shape.Keys;

    public List<T> Read(YamlMap root, Scope scope, FactIds ids, Func<T, YamlNode, T>? fill = null)
    {
        var facts = new List<T>();
        if (root[section] is not { } node || node is YamlScalar { IsLeftOut: true })
            return facts;
        if (node is not YamlList list)
        {
            scope.Refuse(node, section, "file-shape", node.What, $"Under {section} stands a list.", "Begin each entry on its own line with a dash: - { key: value }.");
            return facts;
        }

        foreach (var entry in list.Items)
        {
            scope.Entry = section;
            if (scope.Problems.IsFull)
                break;
            if (ReadEntry(entry, scope, ids, fill) is { } fact)
                facts.Add(fact);
        }

        scope.Entry = "";
        return facts;
    }

    /// <summary>Null where it could not be read; the reason is then in the problems.</summary>
    public T? ReadEntry(YamlNode entry, Scope scope, FactIds ids, Func<T, YamlNode, T>? fill = null)
    {
        if (!shape.TryRead(entry, blank, scope, out var fact))
            return null;
        var isOwn = fact.Id == default;
        if (isOwn)
            fact = fact with { Id = ids.For(section, fact, content(fact)) };
        if (isOwn && scope.Record.Index.Fact(fact.Id) is T known)
        {
            fact = known;
        }
        else
        {
            fact = ids.Sign(fact);
            fact = fill is null ? fact : fill(fact, entry);
        }

        if (scope.Facts.TryAdd(fact.Id, entry))
            return fact;
        scope.Refuse(entry, "id", "file-id-twice", fact.Id.ToString(), $"Each identifier stands once; this one is on line {scope.Facts[fact.Id].Line} already.", "Leave one of the entries out, or leave out its id.");
        return null;
    }

    public (YamlScalar Key, YamlNode Value)? Write(IReadOnlyList<T> facts, Scope scope) => facts.Count == 0
        ? null
        : (new YamlScalar(section, isQuoted: false), new YamlList([.. facts.Select(f => shape.Write(f, scope, isOneLine: true))]));
}
