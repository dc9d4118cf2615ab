using Thoubook.Record;

namespace Thoubook.Files.Text;

/// <summary>
/// A question about one line of a file. Its codes carry the line (<c>unit-in@12</c>), so that an answer is for that line; the same code without
/// the line answers for the whole file.
/// </summary>
internal static class FileQuestions
{
    public static Problem OnLine(Problem problem, int line) => problem.IsQuestion
        ? problem with
        {
            Code = $"{problem.Code}@{line}",
            Meanings = [.. problem.Meanings.Select(m => m with { Code = $"{m.Code}@{line}" })],
        }
        : problem;

    /// <summary>The codes that hold on a line.</summary>
    public static IReadOnlySet<string> ConfirmedFor(int line, IReadOnlySet<string> confirmed)
    {
        if (confirmed.Count == 0)
            return confirmed;
        var end = $"@{line}";
        var here = confirmed.Where(c => c.EndsWith(end, StringComparison.Ordinal)).Select(c => c[..^end.Length]).ToHashSet(StringComparer.Ordinal);
        here.UnionWith(confirmed.Where(c => !c.Contains('@', StringComparison.Ordinal)));
        return here;
    }
}
