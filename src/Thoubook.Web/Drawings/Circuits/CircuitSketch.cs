namespace Thoubook.Web.Drawings.Circuits;

/// <summary>What the drawing of an oil circuit is made from: numbers in the units that it is drawn in, and words. It knows nothing of how they were found.</summary>
public sealed record CircuitSketch
{
    public required string Title { get; init; }

    /// <summary>What a person hears instead of the drawing.</summary>
    public required string Spoken { get; init; }

    public required string PressureUnit { get; init; }

    public required string FlowUnit { get; init; }

    /// <summary>The unit of the figures at the bearings.</summary>
    public string FigureUnit { get; init; } = "";

    /// <summary>Digits after the point of a pressure.</summary>
    public int PressureDigits { get; init; } = 1;

    public required IReadOnlyList<SketchNode> Nodes { get; init; }

    public required IReadOnlyList<SketchElement> Elements { get; init; }

    public IReadOnlyList<SketchGauge> Gauges { get; init; } = [];

    /// <summary>Nothing of it is known yet: all of it is drawn in dashed lines.</summary>
    public bool IsImagined { get; init; }
}

/// <param name="Name">Of the place.</param>
/// <param name="Pressure">Gauge pressure, in the unit of the drawing.</param>
public sealed record SketchNode(string Name, double Pressure)
{
    /// <summary>Its pressure is given: a tank, a sump, a feed from outside.</summary>
    public bool IsReservoir { get; init; }
}

/// <param name="Label">As a person says it.</param>
/// <param name="From">Index of its first node.</param>
/// <param name="To">Index of its second.</param>
/// <param name="Mark">How it is drawn.</param>
public sealed record SketchElement(string Label, int From, int To, SketchMark Mark)
{
    /// <summary>In the unit of the drawing, positive from its first node to its second.</summary>
    public double Flow { get; init; }

    /// <summary>The clearance or bore that decides its flow, as it is lettered.</summary>
    public string? Figure { get; init; }

    /// <summary>What it does: <c>shut, 52 to open</c>.</summary>
    public string? Says { get; init; }

    /// <summary>Whether the figure was measured; else it is drawn in dashes.</summary>
    public bool IsMeasured { get; init; } = true;

    /// <summary>Closed off: drawn with two dots.</summary>
    public bool IsBlanked { get; init; }
}

/// <param name="Name">Of the gauge.</param>
/// <param name="Node">Index of the node that it reads.</param>
/// <param name="Figure">What it will read, as it is lettered.</param>
public sealed record SketchGauge(string Name, int Node, string Figure)
{
    public string? Band { get; init; }

    /// <summary>The least that it may read, in the unit of the drawing.</summary>
    public double? Least { get; init; }

    public double? Greatest { get; init; }
}

public enum SketchMark
{
    Line,
    Strainer,
    Filter,
    Cooler,
    Valve,
    Bearing,
    Jet,
    Gap,
    Consumer,
    Pump,
    ScavengePump,
}
