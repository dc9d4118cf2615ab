using Thoubook.Record;

namespace Thoubook.Cli.Speaking;

/// <summary>Answers written as words: <c>mains=7</c>.</summary>
internal static class KeyValues
{
    /// <param name="words">The words.</param>
    /// <param name="list">The command line that lists the keys.</param>
    public static Outcome<IReadOnlyDictionary<string, string>> Read(IEnumerable<string> words, string list)
    {
        var answers = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var word in words)
        {
            var equals = word.IndexOf('=');
            if (equals <= 0)
                return new Problem("no-key", "", Request.Quoted(word), "Each answer is written KEY=VALUE.", $"The keys: {list}. A value with spaces goes in quotes.");
            if (!answers.TryAdd(word[..equals].Trim(), word[(equals + 1)..]))
                return new Problem("key-twice", word[..equals], "it twice", "Each question is answered once.", "Leave one out.");
        }

        return answers;
    }
}
