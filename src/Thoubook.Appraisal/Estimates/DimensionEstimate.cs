using Thoubook.Record;

namespace Thoubook.Appraisal.Estimates;

/// <summary>What is known of a dimension of the chosen piece, at 20 °C.</summary>
public sealed class DimensionEstimate
{
    public required EstimateBasis Basis { get; init; }

    /// <summary>The value that counts; for a dimension that was not measured, the middle of the drawing's limits. Null where there is neither.</summary>
    public required Estimate? Counting { get; init; }

    /// <summary>Over all places; equal to <see cref="Counting"/> where the mean counts or one place was read.</summary>
    public required Estimate? Least { get; init; }

    public required Estimate? Greatest { get; init; }

    /// <summary>By place, in the order of their names. Empty where not measured.</summary>
    public IReadOnlyList<PlaceEstimate> Places { get; init; } = [];

    /// <summary>Places asked for and not read.</summary>
    public IReadOnlyList<PlaceName> MissingPlaces { get; init; } = [];

    public FormEstimate? Ovality { get; init; }

    public FormEstimate? Taper { get; init; }

    /// <summary>[SI] standard deviation of one reading repeated at one place.</summary>
    public double RepeatScatter { get; init; }

    public double RepeatDegreesOfFreedom { get; init; } = double.PositiveInfinity;

    /// <summary>The readings that made it.</summary>
    public IReadOnlyList<Reading> Readings { get; init; } = [];

    /// <summary>Readings that no longer count: struck out, or work came after. Still shown.</summary>
    public IReadOnlyList<Reading> NotCounting { get; init; } = [];

    /// <summary>Readings that stand out from the rest. A hint: none is dropped.</summary>
    public IReadOnlyList<OutlierHint> Outliers { get; init; } = [];

    public IReadOnlyList<GaugeDisagreement> Disagreements { get; init; } = [];

    public bool IsMeasured => Basis is EstimateBasis.Readings or EstimateBasis.Supposed;
}

public enum EstimateBasis
{
    Readings,

    [Word("drawing limits")]
    DrawingLimits,

    Supposed,

    Nothing,
}

/// <summary>The readings at one place, averaged.</summary>
/// <param name="Place">The place.</param>
/// <param name="Value">[SI] mean at 20 °C.</param>
/// <param name="Readings">How many.</param>
/// <param name="OwnUncertainty">[SI] the share that no other place has: scatter over √n.</param>
/// <param name="SharedUncertainty">[SI] the share common to all places: gauge, temperature.</param>
public readonly record struct PlaceEstimate(PlaceName Place, double Value, int Readings, double OwnUncertainty, double SharedUncertainty)
{
    public double StandardUncertainty => Math.Sqrt((OwnUncertainty * OwnUncertainty) + (SharedUncertainty * SharedUncertainty));
}

/// <summary>An error of form: the greatest difference found, and where.</summary>
public sealed record FormEstimate(double Value, double StandardUncertainty, PlaceName High, PlaceName Low);

/// <summary>A reading that stands out: by how many scatters, and what would be usual.</summary>
public sealed record OutlierHint(Reading Reading, double Statistic, double Critical);

/// <summary>Two gauges that do not agree at one place.</summary>
/// <param name="Difference">[SI] first less second.</param>
public sealed record GaugeDisagreement(FigureName Figure, PlaceName Place, GaugeTag First, GaugeTag Second, double Difference);
