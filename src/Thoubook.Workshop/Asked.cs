using System.Diagnostics.CodeAnalysis;
using Thoubook.Record;

namespace Thoubook.Workshop;

/// <summary>Reads what was asked for by name in a record and gathers what is wrong with it, so that all of it can be said at once.</summary>
internal sealed class Asked(EngineRecord record)
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
        if (read(text.Trim(), out var name, out var problem))
            return name;
        _problems.Add(problem with { Field = field });
        return null;
    }

    public GaugeTag? Gauge(string? text)
    {
        if (Name<GaugeTag>(text, GaugeTag.TryRead, "gauge") is not { } gauge)
            return null;
        if (record.Index.Gauge(gauge) is not null)
            return gauge;
        _problems.Add(new("unknown-gauge", "gauge", $"\"{gauge}\"", "There is no gauge of that tag in this workshop.", Nearest.Advice(gauge.Text, record.Gauges.Select(g => g.Tag.Text), "Add the gauge first, or leave it out.")));
        return null;
    }

    public PartName? Part(string? text)
    {
        if (Name<PartName>(text, PartName.TryRead, "part") is not { } part)
            return null;
        if (record.Index.Part(part) is not null)
            return part;
        _problems.Add(new("unknown-part", "part", $"\"{part}\"", "This engine has no part of that name.", Nearest.Advice(part.Path, record.Parts.Select(p => p.Name.Path), "Add the part first, or name one that is there.")));
        return null;
    }

    public string Words(string text, string field, string what)
    {
        if (string.IsNullOrWhiteSpace(text))
            _problems.Add(new("words-missing", field, "nothing", what, "Say it in a few words."));
        else if (text.Length > 2000)
            _problems.Add(new("words-too-long", field, $"{text.Length} characters", "Up to 2000 characters.", "Say it shorter."));
        return text.Trim();
    }

    public Outcome<T> Refused<T>() => new Outcome<T>.Refused(_problems);
}
