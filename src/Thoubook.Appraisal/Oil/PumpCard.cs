using Thoubook.Appraisal.Estimates;
using Thoubook.Record;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

/// <summary>
/// What three dimensions of a gear pump amount to: depth of the body, widths of the gears and what lies in the joint give the end float cold and hot,
/// the risk that nothing is left of it, and what a gasket, lapping or a skim would make of it.
/// </summary>
public sealed record PumpCard
{
    public required PartName Part { get; init; }

    /// <summary>What it is in the oil circuit; null where the circuit does not have it.</summary>
    public ElementDefinition? Element { get; init; }

    /// <summary>The dimensions that make the end float: body, gears, joint.</summary>
    public required IReadOnlyList<DimensionAppraisal> Sizes { get; init; }

    /// <summary>The end floats, driver first.</summary>
    public required IReadOnlyList<FitAppraisal> EndFloats { get; init; }

    /// <summary>As it is first, then what could be done, side by side.</summary>
    public required IReadOnlyList<PumpChoice> Choices { get; init; }

    /// <summary>Where the oil of the choices is worked out; null where the circuit cannot be solved or does not have the pump.</summary>
    public OilPoint? At { get; init; }

    /// <summary>The oil over end floats from nearly nil to wider than any choice, rising; empty where <see cref="At"/> is null or it was not asked for.</summary>
    public IReadOnlyList<PumpFloatPoint> Curve { get; init; } = [];

    public IReadOnlyList<Caution> Cautions { get; init; } = [];
}

/// <summary>One way to leave the pump.</summary>
/// <param name="Name">In words.</param>
/// <param name="Change">[m] What it adds to the end float of every gear.</param>
/// <param name="Floats">Each gear in each temperature state.</param>
public sealed record PumpChoice(string Name, double Change, IReadOnlyList<PumpFloat> Floats)
{
    /// <summary>[-] Leak over the ends, hot where the engine has that state, by what it is as the pump stands; null where nothing leaks there now.</summary>
    public required double? EndLeak { get; init; }

    /// <summary>The same as a trial of the oil system.</summary>
    public required OilTrial Trial { get; init; }

    /// <summary>What it makes of the oil at hot idle; null where the card has no such point, or the circuit cannot be solved with it.</summary>
    public PumpOil? Oil { get; init; }
}

/// <summary>What the oil makes of one end float.</summary>
/// <param name="Float">[m] total, of the closest gear, in the first temperature state.</param>
/// <param name="Oil">There.</param>
public sealed record PumpFloatPoint(double Float, PumpOil Oil);

/// <param name="Slip">[-] Share of its capacity that leaks back.</param>
/// <param name="Main">The main gauge; null where the circuit has none.</param>
/// <param name="Difference">[Pa] of the main gauge, against the pump as it stands; what both owe to the same source cancels.</param>
public sealed record PumpOil(double Slip, GaugeAnswer? Main, Estimate? Difference);

/// <param name="Fit">Which end float.</param>
/// <param name="State"><c>20 °C</c>, <c>hot</c>, <c>coldest start</c> …</param>
/// <param name="Float">[m] total.</param>
/// <param name="IsMeasured">False where the drawing's limits stand for a dimension.</param>
/// <param name="RiskOfNil">[-] Probability that nothing is left: the gear binds between its faces.</param>
public sealed record PumpFloat(FitAppraisal Fit, string State, Estimate Float, bool IsMeasured, double RiskOfNil);

/// <summary>What the card compares the pump as it stands with.</summary>
public sealed record PumpTrials
{
    /// <summary>[m] 6 thou.</summary>
    public const double UsualGasket = 6 * 25.4e-6;

    /// <summary>[m] 1.5 thou.</summary>
    public const double UsualLapping = 1.5 * 25.4e-6;

    /// <summary>[m] Compressed thickness of a gasket in the place of the film, above 0.</summary>
    public double Gasket { get; init; } = UsualGasket;

    /// <summary>[m] Lapped off the joint face of the body, 0 or more.</summary>
    public double Lapping { get; init; } = UsualLapping;

    /// <summary>[m] Skimmed off the joint face of the body; null: what brings the closest end float to the middle of its new limits.</summary>
    public double? Skim { get; init; }

    /// <summary>Whether the oil is wanted over the end float as well.</summary>
    public bool WithCurve { get; init; }
}
