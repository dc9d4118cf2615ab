using System.Collections.Frozen;

namespace Thoubook.Record;

/// <summary>
/// The words of the trade for the members of an enumeration: <c>StandRun</c> is written <c>stand-run</c>, and a member may carry its own
/// spelling with <see cref="WordAttribute"/>. Screens, commands, files and the store all write and read these words.
/// </summary>
public static class Words
{
    public static string Word<T>(this T value)
        where T : struct, Enum => Table<T>.Words[value];

    public static IReadOnlyList<string> All<T>()
        where T : struct, Enum => Table<T>.InOrder;

    public static bool TryRead<T>(string? word, out T value)
        where T : struct, Enum => Table<T>.Values.TryGetValue(word?.Trim() ?? "", out value);

    public static Outcome<T> Read<T>(string word, string field)
        where T : struct, Enum => TryRead<T>(word, out var value)
            ? value
            : new Problem("unknown-word", field, NameText.Quote(word), $"One of: {string.Join(", ", All<T>())}.", "Use one of these words.");

    private static class Table<T>
        where T : struct, Enum
    {
        public static readonly FrozenDictionary<T, string> Words = Enum.GetValues<T>().ToFrozenDictionary(v => v, Spelling);
        public static readonly IReadOnlyList<string> InOrder = [.. Enum.GetValues<T>().Select(v => Words[v])];
        public static readonly FrozenDictionary<string, T> Values = Words.ToFrozenDictionary(p => p.Value, p => p.Key, StringComparer.OrdinalIgnoreCase);

        private static string Spelling(T value)
        {
            var name = value.ToString();
            var own = typeof(T).GetField(name)!.GetCustomAttributes(typeof(WordAttribute), false);
            if (own is [WordAttribute word])
                return word.Text;
            var letters = new List<char>();
            foreach (var c in name)
            {
                if (char.IsUpper(c) && letters.Count > 0)
                    letters.Add('-');
                letters.Add(char.ToLowerInvariant(c));
            }

            return new string([.. letters]);
        }
    }
}

[AttributeUsage(AttributeTargets.Field)]
public sealed class WordAttribute(string text) : Attribute
{
    public string Text { get; } = text;
}
