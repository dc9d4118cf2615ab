using Thoubook.Record.Quantities;

namespace Thoubook.Record;

/// <summary>One physical engine.</summary>
public sealed record Engine(EngineName Name, Purpose Purpose)
{
    public int Revision { get; init; }

    /// <summary>Its mark or modification, as documents name the engines that a row applies to.</summary>
    public string? Mark { get; init; }

    public string? SerialNumber { get; init; }

    /// <summary>The modification states that it has: parts of another belong to another engine. Empty: not said, and all belong here.</summary>
    public IReadOnlyList<string> States { get; init; } = [];

    public string? Note { get; init; }

    /// <summary>Invented for demonstration; every page and sheet says so.</summary>
    public bool Invented { get; init; }

    /// <summary>The least probability at which a figure is called inside its limits, or beyond them. 0.5 to 1, usually 0.95.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>The named temperature states at which fits are worked out beside 20 °C: <c>hot</c>, <c>coldest start</c> and any other.</summary>
    public IReadOnlyList<TemperatureState> Temperatures { get; init; } = [];

    public bool HasState(string state) => States.Contains(state, StringComparer.OrdinalIgnoreCase);
}

/// <summary>What the engine is for. It decides the standard that departures and judgements are held to.</summary>
public enum Purpose
{
    Display,
    StandRun,

    /// <summary>In a vehicle, a boat or plant.</summary>
    Working,

    /// <summary>Use that a licensed body must release; nothing here ever says that an engine is fit for it.</summary>
    Licensed,
}

/// <summary>How warm each part is in a named state: the longest named place that a part lies in gives its temperature.</summary>
public sealed record TemperatureState(string Name, Quantity Everywhere, IReadOnlyList<PartTemperature> Parts)
{
    public const string Hot = "hot";
    public const string ColdestStart = "coldest start";

    /// <summary>[K] of the part in this state.</summary>
    public double Of(PartName part)
    {
        var best = Everywhere;
        var depth = 0;
        foreach (var named in Parts)
        {
            if (named.Part.Depth > depth && part.IsWithin(named.Part))
            {
                best = named.Temperature;
                depth = named.Part.Depth;
            }
        }

        return best.Si;
    }
}

public sealed record PartTemperature(PartName Part, Quantity Temperature);
