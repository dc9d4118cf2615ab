using Thoubook.Appraisal.Estimates;
using Thoubook.Mechanics.Metrology;
using Thoubook.Record;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

/// <summary>Where the oil system runs: how fast the engine turns and how warm the oil is.</summary>
/// <param name="Speed">[rad/s] of the engine.</param>
/// <param name="OilTemperature">[K] at the pump.</param>
public readonly record struct OilPoint(double Speed, double OilTemperature)
{
    /// <summary>[Pa·s] Where the oil is known by its viscosity at the point and not by its grade: it is the same in every film. Null: by the grade.</summary>
    public double? Viscosity { get; init; }

    /// <summary>[kg/m³] at the point; null: by the oil's own.</summary>
    public double? Density { get; init; }
}

/// <summary>The whole oil system at one point. Pressures are gauge.</summary>
public sealed class OilAnswer
{
    public required OilPoint Point { get; init; }

    /// <summary>[Pa·s] of the oil in the passages; films may be warmer.</summary>
    public required double Viscosity { get; init; }

    /// <summary>[kg/m³]</summary>
    public required double Density { get; init; }

    /// <summary>What each gauge will read, the main one first.</summary>
    public required IReadOnlyList<GaugeAnswer> Gauges { get; init; }

    /// <summary>Every node, in the order of the definition.</summary>
    public required IReadOnlyList<NodeAnswer> Nodes { get; init; }

    /// <summary>Every element, in the order of the definition; blanked ones with no flow.</summary>
    public required IReadOnlyList<ElementAnswer> Elements { get; init; }

    /// <summary>What takes oil and gives it to the sump (bearings, jets, gaps, consumers), most first.</summary>
    public required IReadOnlyList<ElementAnswer> Consumers { get; init; }

    public required IReadOnlyList<PumpAnswer> Pumps { get; init; }

    public required IReadOnlyList<ValveAnswer> Valves { get; init; }

    /// <summary>[Pa] the lowest pressure at the feed of any bearing, and which.</summary>
    public ElementAnswer? Furthest { get; init; }

    /// <summary>How it was solved, in a sentence.</summary>
    public required string HowSolved { get; init; }

    /// <summary>How the bands of the gauges were found, in a sentence.</summary>
    public string HowBands => GaugeBands.How;

    /// <summary>The code of the caution that a gap has closed: no figure is to be read before it.</summary>
    public const string NilGap = "nil-gap";

    public IReadOnlyList<Caution> Cautions { get; init; } = [];
}

/// <summary>What a gauge will read.</summary>
public sealed record GaugeAnswer(OilGauge Gauge, Estimate Pressure)
{
    /// <summary>[Pa] the ends of the band that holds it 95 times in 100.</summary>
    public double Low { get; init; } = Pressure.Value - Pressure.Band;

    public double High { get; init; } = Pressure.Value + Pressure.Band;

    /// <summary>[-] How probable it is that it reads below a limit [Pa].</summary>
    internal Func<double, double> Below { get; init; } = limit => Conformance.Within(Pressure.Value, Pressure.StandardUncertainty, Pressure.DegreesOfFreedom, Interval.AtLeast(limit)).Below;
}

/// <param name="Pressure">[Pa]</param>
/// <param name="IsReservoir">Whether its pressure is given.</param>
/// <param name="Height">[m]</param>
public sealed record NodeAnswer(NodeName Name, double Pressure, bool IsReservoir, double Height);

/// <param name="Flow">[m³/s] positive from its first node to its second.</param>
/// <param name="From">[Pa] at its first node.</param>
/// <param name="To">[Pa] at its second.</param>
public sealed record ElementAnswer(ElementDefinition Element, double Flow, double From, double To)
{
    public ElementRole Role { get; init; }

    /// <summary>[-] of the oil that all pressure pumps deliver.</summary>
    public double Share { get; init; }

    /// <summary>The clearance, float or bore that decides its flow, if the engine's record has it: which figure, its value as used here, whether it was measured.</summary>
    public CircuitFigure? Deciding { get; init; }
}

public enum ElementRole
{
    /// <summary>Leads oil on: a pipe, a drilling, a strainer, a cooler.</summary>
    Passage,
    Consumer,
    Pump,
    ScavengePump,
    Valve,
}

/// <summary>A figure of the record as the circuit uses it.</summary>
/// <param name="Name">The dimension or fit.</param>
/// <param name="Value">At the temperature of the point.</param>
/// <param name="IsMeasured">False where the drawing's limits stand in.</param>
public sealed record CircuitFigure(FigureName Name, Estimate Value, bool IsMeasured);

/// <param name="Delivery">[m³/s] what it delivers.</param>
/// <param name="Capacity">[m³/s] what it would deliver without slip, filled.</param>
/// <param name="Slip">[-] share of its capacity that leaks back.</param>
/// <param name="Filling">[-] share of its spaces that fill.</param>
/// <param name="SuctionReserve">[Pa] pressure at its inlet above the least at which it still fills; null where no limit is given.</param>
public sealed record PumpAnswer(ElementAnswer Element, double Delivery, double Capacity, double Slip, double Filling, double? SuctionReserve)
{
    /// <summary>[-] share of the delivery that the main relief valve lets go: what is in hand.</summary>
    public double? Margin { get; init; }

    public ScavengeAnswer? Scavenge { get; init; }
}

/// <param name="Arrives">[m³/s] oil and air that it must take.</param>
/// <param name="Ratio">[-] its capacity by what arrives.</param>
public sealed record ScavengeAnswer(double Arrives, double AirShare, double Ratio)
{
    public bool KeepsUp => Ratio >= 1;
}

/// <param name="Lift">[m]</param>
/// <param name="Cracking">[Pa] of the inlet, with the back pressure as it is here.</param>
public sealed record ValveAnswer(ElementAnswer Element, double Lift, double FullLift, double Cracking)
{
    public bool IsOpen => Lift > 0;
}
