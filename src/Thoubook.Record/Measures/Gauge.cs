using NodaTime;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Measures;

/// <summary>A measuring instrument.</summary>
public sealed record Gauge(GaugeTag Tag)
{
    public int Revision { get; init; }

    /// <summary>What it is: <c>outside micrometer 2 to 3 in</c>.</summary>
    public string? What { get; init; }

    /// <summary>The least step it shows.</summary>
    public Quantity? Resolution { get; init; }

    /// <summary>Standard uncertainty as last checked: the share common to every reading taken with it.</summary>
    public Quantity? Uncertainty { get; init; }

    /// <summary>Standard deviation of one reading repeated at one place, where the workshop has found it.</summary>
    public Quantity? Repeatability { get; init; }

    /// <summary>What it is made of, for the correction to 20 °C; steel where not said.</summary>
    public string? Material { get; init; }

    public LocalDate? Checked { get; init; }

    public string? Note { get; init; }
}
