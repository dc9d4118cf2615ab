using Thoubook.Record;

namespace Thoubook.Files.Text;

/// <summary>The problems of one file, all of them up to <see cref="Most"/>, each with its line and column.</summary>
public sealed class ProblemList(string fileName)
{
    /// <summary>How many are told; a file with more than that is wrong as a whole.</summary>
    public const int Most = 100;

    private readonly List<Problem> _problems = [];

    public string FileName { get; } = fileName;

    /// <summary>How many were met, told or not.</summary>
    public int Count { get; private set; }

    public bool IsFull => Count >= Most;

    /// <summary>In the order of the file, with a last word where there were more.</summary>
    public IReadOnlyList<Problem> All
    {
        get
        {
            var inOrder = _problems.OrderBy(p => p.At?.Line ?? 0).ThenBy(p => p.At?.Column ?? 0).ToList();
            if (Count > Most)
                inOrder.Add(new Problem("more-problems", "", $"{Count - Most} more", $"The first {Most} are told.", "Put these right and import again."));
            return inOrder;
        }
    }

    public void Add(int line, int column, Problem problem)
    {
        if (++Count <= Most)
            _problems.Add(problem with { At = new Problem.Place(FileName, line, column) });
    }

    public void Add(int line, int column, string code, string field, string found, string allowed, string doThis) =>
        Add(line, column, new Problem(code, field, found, allowed, doThis));
}
