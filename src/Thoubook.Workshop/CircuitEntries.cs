using Thoubook.Record;

namespace Thoubook.Workshop;

/// <summary>An element of the circuit as a person enters it: names and sizes as typed.</summary>
/// <param name="Engine">By name.</param>
/// <param name="Element">Its name in the circuit.</param>
/// <param name="By">Who says so.</param>
public sealed record ElementEntry(string Engine, string Element, string By)
{
    /// <summary>The element's revision when it was opened; 0: it is new.</summary>
    public int Revision { get; init; }

    public string? Kind { get; init; }

    public string? From { get; init; }

    public string? To { get; init; }

    public string? Vent { get; init; }

    public string? Part { get; init; }

    public bool Blanked { get; init; }

    public string? Label { get; init; }

    public string? Note { get; init; }

    /// <summary>Key and text of each size; a blank one is left out.</summary>
    public IReadOnlyList<(string Key, string Text)> Values { get; init; } = [];

    /// <summary>The codes of questions answered.</summary>
    public IReadOnlySet<string> Confirmed { get; init; } = new HashSet<string>(StringComparer.Ordinal);
}

/// <summary>A flow test as it was made: oil from outside, and what ran through.</summary>
/// <param name="Engine">By name.</param>
/// <param name="Pressure">At the node that was fed, as typed.</param>
/// <param name="OilTemperature">As typed.</param>
/// <param name="By">Who made it.</param>
public sealed record FlowTestEntry(string Engine, string Pressure, string OilTemperature, string By) : Entry(Engine, By)
{
    /// <summary>The node that was fed; null: the one that the circuit names for its flow test.</summary>
    public string? FedAt { get; init; }

    /// <summary>All that ran through; null where <see cref="Volume"/> and <see cref="Time"/> say it.</summary>
    public string? Flow { get; init; }

    /// <summary>What was caught from the sump in <see cref="Time"/>.</summary>
    public string? Volume { get; init; }

    public string? Time { get; init; }

    /// <summary>Element and flow, as typed, where it was caught by itself.</summary>
    public IReadOnlyList<(string Element, string Flow)> Caught { get; init; } = [];

    public string? Note { get; init; }

    /// <summary>The codes of questions answered.</summary>
    public IReadOnlySet<string> Confirmed { get; init; } = new HashSet<string>(StringComparer.Ordinal);
}

/// <summary>A flow test accepted to calibrate by.</summary>
public sealed record CalibrationEntry(string Engine, FactId FlowTest, string By) : Entry(Engine, By)
{
    public string? Why { get; init; }
}
