namespace Thoubook.Mechanics.Sums;

/// <summary>The known names nearest to one that is not known, for "did you mean".</summary>
internal static class NearestName
{
    /// <summary>Up to three known names that differ in few letters or of which one begins with the other, nearest first.</summary>
    public static IReadOnlyList<string> To(string name, IEnumerable<string> known) =>
    [
        .. known.Distinct(StringComparer.OrdinalIgnoreCase)
            .Select(candidate => (candidate, distance: Distance(name.ToLowerInvariant(), candidate.ToLowerInvariant())))
            .Where(pair => pair.distance <= Math.Max(2, Math.Min(name.Length, pair.candidate.Length) / 2))
            .OrderBy(pair => pair.distance).ThenBy(pair => pair.candidate, StringComparer.Ordinal)
            .Take(3).Select(pair => pair.candidate),
    ];

    /// <summary>Letters to put in, leave out, change or swap; a word missing at either end counts one.</summary>
    private static int Distance(string a, string b)
    {
        if (a.Length > 2 && b.Length > 2 && (b.Contains(a, StringComparison.Ordinal) || a.Contains(b, StringComparison.Ordinal)))
            return 1;
        var rows = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
            rows[i, 0] = i;
        for (var j = 0; j <= b.Length; j++)
            rows[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var change = rows[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                rows[i, j] = Math.Min(change, 1 + Math.Min(rows[i - 1, j], rows[i, j - 1]));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    rows[i, j] = Math.Min(rows[i, j], rows[i - 2, j - 2] + 1);
            }
        }

        return rows[a.Length, b.Length];
    }
}
