using Thoubook.Files.Text;
using Thoubook.Record;

namespace Thoubook.Files.EngineFiles;

/// <summary>How one value stands in an engine file: read from it and written to it.</summary>
internal abstract class Form<TValue>
{
    /// <summary>False where it could not be read; the reason is then in the problems.</summary>
    public abstract bool TryRead(YamlNode node, string key, Scope scope, out TValue value);

    /// <summary>Null where it is left out.</summary>
    public abstract YamlNode? Write(TValue value, Scope scope);
}

internal enum Need
{
    MayBeLeftOut,
    Required,
}

/// <summary>
/// The keys of one kind of entry, each with its form and its place in the record's type. Reading, writing and the list of known keys all come
/// from this one description.
/// </summary>
internal sealed class Shape<T>(string what)
{
    private readonly List<IKey> _keys = [];
    private readonly Dictionary<string, IKey> _byName = new(StringComparer.Ordinal);

    private interface IKey
    {
        string Name { get; }

        Need Need { get; }

        bool TryRead(YamlNode node, ref T item, Scope scope);

        YamlNode? Write(T item, Scope scope);
    }

    /// <summary>What the entry is, for messages: <c>a reading</c>.</summary>
    public string What { get; } = what;

    public IReadOnlyList<string> Keys => [.. _keys.Select(k => k.Name)];

    public Shape<T> Key<TValue>(string name, Form<TValue> form, Func<T, TValue> get, Func<T, TValue, T> set, Need need = Need.MayBeLeftOut) =>
        Key(name, (_, _) => form, get, set, need);

    /// <summary>A key whose form depends on those before it, such as a value that takes the unit of its dimension's limits.</summary>
    public Shape<T> Key<TValue>(string name, Func<T, Scope, Form<TValue>> form, Func<T, TValue> get, Func<T, TValue, T> set, Need need = Need.MayBeLeftOut)
    {
        var key = new KeyOf<TValue>(name, form, get, set, need);
        _keys.Add(key);
        _byName.Add(name, key);
        return this;
    }

    /// <summary>The entry read over a blank one; null where something in it could not be read.</summary>
    public bool TryRead(YamlNode node, T blank, Scope scope, out T item)
    {
        item = blank;
        if (node is not YamlMap map)
        {
            scope.Refuse(node, "", "file-shape", node.What, $"{Capital(What)} is a group of keys: {string.Join(", ", Keys)}.", "Write { key: value, … }, or the keys under it, each set in.");
            return false;
        }

        var isGood = true;
        var before = scope.Problems.Count;
        var given = new Dictionary<string, YamlNode>(StringComparer.Ordinal);
        foreach (var (key, value) in map.Entries)
        {
            if (_byName.ContainsKey(key.Value))
                given[key.Value] = value;
            else
                Unknown(key, What, Keys, scope);
        }

        foreach (var key in _keys)
        {
            if (given.TryGetValue(key.Name, out var value) && value is not YamlScalar { IsLeftOut: true })
                isGood &= key.TryRead(value, ref item, scope);
            else if (key.Need == Need.Required)
                scope.Refuse(value ?? map, key.Name, "file-key-missing", "nothing", $"{Capital(What)} needs {key.Name}.", $"Write {key.Name}: and its value.");
        }

        return isGood && scope.Problems.Count == before;
    }

    public YamlMap Write(T item, Scope scope, bool isOneLine)
    {
        var entries = new List<(YamlScalar, YamlNode)>();
        foreach (var key in _keys)
        {
            if (key.Write(item, scope) is { } value)
                entries.Add((new YamlScalar(key.Name, isQuoted: false), value));
        }

        return new YamlMap(entries) { IsOneLine = isOneLine };
    }

    public static void Unknown(YamlScalar key, string what, IEnumerable<string> known, Scope scope) =>
        scope.Refuse(key, "", "file-key-unknown", $"the key {key.What}", $"{Capital(what)} has the keys {string.Join(", ", known)}.", Nearest.Advice(key.Value, known, "Leave it out, or use one of these."));

    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private sealed class KeyOf<TValue>(string name, Func<T, Scope, Form<TValue>> form, Func<T, TValue> get, Func<T, TValue, T> set, Need need) : IKey
    {
        public string Name => name;

        public Need Need => need;

        public bool TryRead(YamlNode node, ref T item, Scope scope)
        {
            if (!form(item, scope).TryRead(node, name, scope, out var value))
                return false;
            item = set(item, value);
            return true;
        }

        public YamlNode? Write(T item, Scope scope) => form(item, scope).Write(get(item), scope);
    }
}
