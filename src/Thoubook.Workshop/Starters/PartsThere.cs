using System.Globalization;
using Thoubook.Record;

namespace Thoubook.Workshop.Starters;

/// <summary>The parts that an engine has, those above a named part among them.</summary>
internal sealed class PartsThere
{
    private readonly HashSet<PartName> _parts = [];

    public PartsThere(EngineRecord record)
    {
        foreach (var named in record.Parts)
        {
            for (PartName? part = named.Name; part is { } name && _parts.Add(name); part = name.Parent)
            {
            }
        }
    }

    public bool Has(PartName part) => _parts.Contains(part);

    public bool Has(string path) => PartName.TryRead(path, out var part, out _) && _parts.Contains(part);

    /// <summary>The parts that may be meant: the usual one alone where it is there, else those of its name or of another that stand anywhere, the outermost of each branch.</summary>
    /// <param name="usual">As the starter names it; <c>{n}</c> for the number.</param>
    /// <param name="also">Other names: the last segment, or the whole way.</param>
    /// <param name="count">How many of them there are; null where they bear no number.</param>
    public IReadOnlyList<string> Like(string usual, IReadOnlyList<string> also, int? count)
    {
        if (AreAll(usual, count))
            return [usual];
        var own = Named([usual[(usual.LastIndexOf('/') + 1)..]], count);
        return own.Count > 0 ? own : Named(also, count);
    }

    private IReadOnlyList<string> Named(IReadOnlyList<string> names, int? count)
    {
        var found = names.Where(n => n.Contains('/', StringComparison.Ordinal) && AreAll(n, count)).ToList();
        foreach (var leaf in names.Where(n => !n.Contains('/', StringComparison.Ordinal)))
        {
            var first = Nth(leaf, 1);
            found.AddRange(_parts.Where(p => p.Leaf == first)
                .Select(p => p.Parent is { } around ? $"{around}/{leaf}" : leaf)
                .Where(pattern => AreAll(pattern, count)));
        }

        return [.. found.Distinct(StringComparer.Ordinal)
            .Where(f => !found.Exists(o => o != f && f.StartsWith(o + "/", StringComparison.Ordinal)))
            .OrderBy(f => f.Count(c => c == '/')).ThenBy(f => f, StringComparer.Ordinal)];
    }

    private bool AreAll(string pattern, int? count) => count is null or 1
        ? Has(Nth(pattern, 1))
        : pattern.Contains("{n}", StringComparison.Ordinal) && Enumerable.Range(1, count.Value).All(n => Has(Nth(pattern, n)));

    private static string Nth(string pattern, int n) => pattern.Replace("{n}", n.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal);
}
