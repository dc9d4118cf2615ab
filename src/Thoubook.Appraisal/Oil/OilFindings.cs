using Thoubook.Appraisal.Estimates;
using Thoubook.Record;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

/// <summary>What one clearance costs: the pressure that the main gauge would gain if it stood at the middle of its new limits.</summary>
/// <param name="Figure">As it is now.</param>
/// <param name="Cost">[Pa] with the doubt of the difference, which is less than that of the pressure.</param>
/// <param name="AsNew">[SI] The middle of its new limits, at the temperature.</param>
/// <param name="Elements">The elements that take it.</param>
public sealed record PressureCost(CircuitFigure Figure, Estimate Cost, double AsNew, IReadOnlyList<ElementDefinition> Elements);

/// <summary>A dimension or fit that is not measured, and what that adds to the band of the main gauge.</summary>
/// <param name="Figure">What to measure.</param>
/// <param name="Adds">[Pa] Half the width that its own share has at 95 in 100.</param>
/// <param name="BandWithout">[Pa] Half the width of the whole band were it known exactly.</param>
public sealed record MeasureNext(FigureName Figure, double Adds, double BandWithout);

/// <summary>A share of the doubt of a gauge.</summary>
/// <param name="Source">What it comes from.</param>
/// <param name="HalfWidth">[Pa] at 95 in 100, of this share alone.</param>
public sealed record DoubtShare(UncertaintySource Source, double HalfWidth);

/// <summary>What a trial does.</summary>
/// <param name="Trial">What was supposed.</param>
/// <param name="Then">The main gauge with it.</param>
/// <param name="Difference">[Pa] Then less now; what both owe to the same source cancels.</param>
public sealed record TrialAnswer(OilTrial Trial, GaugeAnswer Then, Estimate Difference)
{
    /// <summary>What of it no pressure hangs on, and where nothing is left of a gap, each in a sentence: to be said before the figures.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];
}

/// <summary>A stated condition of running and how the gauges stand to their limits there.</summary>
/// <param name="State">The state.</param>
/// <param name="Answer">The system there.</param>
/// <param name="Gauges">Each gauge with its limits, if it has any there.</param>
public sealed record StateAnswer(OilState State, OilAnswer Answer, IReadOnlyList<GaugeVerdict> Gauges)
{
    /// <summary>The gravest; null where no gauge has a limit.</summary>
    public OilVerdict? Verdict => Gauges.Where(g => g.Verdict is not null).Select(g => g.Verdict).Max();
}

/// <param name="Gauge">What it will read.</param>
/// <param name="Limit">Null where nothing is asked of it.</param>
/// <param name="Verdict">Null without a limit.</param>
/// <param name="Probability">[-] that it reads inside its limits.</param>
/// <param name="Reason">In a sentence.</param>
public sealed record GaugeVerdict(GaugeAnswer Gauge, GaugeLimit? Limit, OilVerdict? Verdict, double Probability, string Reason);

/// <summary>In the order of gravity, the gravest last.</summary>
public enum OilVerdict
{
    Enough,

    [Word("too close to call")]
    TooCloseToCall,

    [Word("too high")]
    TooHigh,

    [Word("too low")]
    TooLow,
}

/// <summary>The main gauge over speeds and oil temperatures.</summary>
/// <param name="Speeds">[rad/s]</param>
/// <param name="Temperatures">[K]</param>
/// <param name="Points">By temperature, then by speed.</param>
public sealed record OilMap(IReadOnlyList<double> Speeds, IReadOnlyList<double> Temperatures, IReadOnlyList<IReadOnlyList<MapPoint>> Points);

/// <param name="Pressure">[Pa]</param>
/// <param name="Low">[Pa] end of the band at 95 in 100.</param>
/// <param name="High">[Pa]</param>
public readonly record struct MapPoint(double Pressure, double Low, double High);

/// <summary>What the flow test before the sump goes on is expected to give.</summary>
/// <param name="Setting">Oil from outside, where and how.</param>
/// <param name="Total">[m³/s]</param>
/// <param name="Each">What each consumer passes, most first.</param>
public sealed record FlowTestExpected(FlowTestSetting Setting, Estimate Total, IReadOnlyList<ExpectedFlow> Each)
{
    /// <summary>The one way that takes so much of the total that it hides the bearings, and feeds none itself; null where there is none.</summary>
    public (ElementDefinition Element, double Flow)? Most { get; init; }
}

/// <param name="Element">The consumer.</param>
/// <param name="Flow">[m³/s]</param>
public sealed record ExpectedFlow(ElementDefinition Element, Estimate Flow);

/// <summary>A flow test of the record, read against what was expected.</summary>
/// <param name="Test">What was caught.</param>
/// <param name="Standing">Whether it still stands.</param>
/// <param name="Calibrates">Whether it is accepted and stands, so that every pressure is fitted to it.</param>
/// <param name="Expected">[m³/s] total, at the pressure and temperature of the test; null where it cannot be worked out, and <c>Says</c> tells why.</param>
/// <param name="Deviation">[-] what was caught less what was expected, in standard uncertainties of both.</param>
/// <param name="Says">In a sentence.</param>
/// <param name="Each">The same for each element that was caught by itself.</param>
public sealed record FlowTestReading(FlowTest Test, Standing Standing, bool Calibrates, Estimate? Expected, double Deviation, string Says, IReadOnlyList<CaughtReading> Each)
{
    /// <summary>So far from what was expected that something else than the doubt of the sizes is the cause: no pressure is fitted to it.</summary>
    public bool IsFarOff { get; init; }
}

/// <param name="Element">Which.</param>
/// <param name="Expected">[m³/s]</param>
/// <param name="Deviation">[-] in standard uncertainties.</param>
/// <param name="Says">In a sentence.</param>
public sealed record CaughtReading(ElementDefinition Element, Estimate Expected, double Deviation, string Says);
