namespace Thoubook.Record;

/// <summary>What was probably meant by a word that is not known: the known one that the fewest slips of the pen turn into it.</summary>
public static class Nearest
{
    /// <summary>The nearest of the known words; null where none is near enough to be worth naming.</summary>
    /// <remarks>A slip is a letter left out, put in, changed, or swapped with the next. Of two equally near the first in order is taken.</remarks>
    public static string? Of(string word, IEnumerable<string> known)
    {
        string? best = null;
        var fewest = Math.Max(2, word.Length / 3) + 1;
        foreach (var candidate in known)
        {
            if (Math.Abs(candidate.Length - word.Length) >= fewest)
                continue;
            var slips = Slips(word, candidate);
            if (slips < fewest && slips < Math.Max(word.Length, candidate.Length))
                (best, fewest) = (candidate, slips);
        }

        return best;
    }

    /// <summary>What to do, naming the nearest known word where there is one.</summary>
    public static string Advice(string word, IEnumerable<string> known, string otherwise) =>
        Of(word, known) is { } nearest ? $"Did you mean {nearest}?" : otherwise;

    private static int Slips(string a, string b)
    {
        var beforeLast = new int[b.Length + 1];
        var last = new int[b.Length + 1];
        var row = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
            last[j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = Same(a[i - 1], b[j - 1]) ? 0 : 1;
                row[j] = Math.Min(Math.Min(last[j] + 1, row[j - 1] + 1), last[j - 1] + change);
                if (i > 1 && j > 1 && Same(a[i - 1], b[j - 2]) && Same(a[i - 2], b[j - 1]))
                    row[j] = Math.Min(row[j], beforeLast[j - 2] + 1);
            }

            (beforeLast, last, row) = (last, row, beforeLast);
        }

        return last[b.Length];
    }

    private static bool Same(char a, char b) => char.ToLowerInvariant(a) == char.ToLowerInvariant(b);
}
