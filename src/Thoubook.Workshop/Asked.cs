using System.Diagnostics.CodeAnalysis;
using Thoubook.Record;

namespace Thoubook.Workshop;

/// <summary>Gathers what is wrong with something that was asked for, so that all of it can be said at once.</summary>
internal sealed class Asked
{
    private readonly List<Problem> _problems = [];

    public delegate bool NameReader<T>(string text, out T name, [NotNullWhen(false)] out Problem? problem);

    public IReadOnlyList<Problem> Problems => _problems;

    public void Refuse(Problem problem) => _problems.Add(problem);

    /// <summary>The value; null where it was refused.</summary>
    public T? Take<T>(Outcome<T> outcome)
        where T : class
    {
        if (outcome.IsOk(out var value, out var problems))
            return value;
        _problems.AddRange(problems);
        return null;
    }

    /// <summary>The name; null where none was given or it was refused.</summary>
    public T? Name<T>(string? text, NameReader<T> read, string field)
        where T : struct
    {
        if (string.IsNullOrWhiteSpace(text))
            return null;
        if (read(text, out var name, out var problem))
            return name;
        _problems.Add(problem with { Field = field });
        return null;
    }

    public Outcome<T> Refused<T>() => new Outcome<T>.Refused(_problems);
}
