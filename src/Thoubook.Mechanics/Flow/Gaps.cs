using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Flow;

/// <summary>
/// Laminar gaps. Each gives its conductance G, so that the flow is Q = G Δp/μ; clearances are diametral, and the viscosity is that of the film.
/// </summary>
public static class Gaps
{
    /// <summary>Conductance of the gap round a shaft.</summary>
    /// <param name="diameter">[m] of the shaft.</param>
    /// <param name="clearance">[m] diametral, less than the diameter.</param>
    /// <param name="length">[m] along the shaft.</param>
    /// <param name="eccentricity">[-] 0 in the middle, 1 touching one side.</param>
    /// <returns>[m³] the conductance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: G = π D c³ (1 + 1.5 ε²)/(12 L), c half of the clearance. Assumes: laminar, clearance small against the diameter, shaft parallel to its bore. Source: theory of laminar films (computed from first principles). Check: GapsTests.</remarks>
    public static double Annulus(double diameter, double clearance, double length, double eccentricity) => Annulus(diameter, clearance, length, eccentricity, default(Silent));

    /// <summary>The same for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="diameter">[m] of the shaft.</param>
    /// <param name="clearance">[m] diametral, less than the diameter.</param>
    /// <param name="length">[m] along the shaft.</param>
    /// <param name="eccentricity">[-] 0 in the middle, 1 touching one side.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[m³] the conductance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Source: theory of laminar films (computed from first principles). Check: GapsTests.</remarks>
    public static double Annulus<TTrace>(double diameter, double clearance, double length, double eccentricity, TTrace trace)
        where TTrace : struct, ITrace
    {
        Guard.AboveZero(length, Units.Metre);
        trace.Given("L", "length along the shaft", length, Units.Metre);
        var c = Round(diameter, clearance, eccentricity, trace);
        var widened = trace.Line("E", "what lying out of the middle adds", "1 + 1.5 × ε^2", Eccentric(eccentricity), Units.None);
        return trace.Line("G", "conductance", "π × D × c^3 × E / (12 × L)", Math.PI * diameter * c * c * c * widened / (12 * length), Units.CubicMetre, "laminar film");
    }

    /// <summary>Conductance of a flat gap.</summary>
    /// <param name="width">[m] across the flow.</param>
    /// <param name="gap">[m] from wall to wall.</param>
    /// <param name="length">[m] along the flow.</param>
    /// <returns>[m³] the conductance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: G = w h³/(12 L). Assumes: laminar, gap small against width and length. Source: theory of laminar films (computed from first principles). Check: GapsTests.</remarks>
    public static double Slot(double width, double gap, double length) => Slot(width, gap, length, default(Silent));

    /// <summary>The same for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="width">[m] across the flow.</param>
    /// <param name="gap">[m] from wall to wall.</param>
    /// <param name="length">[m] along the flow.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[m³] the conductance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Source: theory of laminar films (computed from first principles). Check: GapsTests.</remarks>
    public static double Slot<TTrace>(double width, double gap, double length, TTrace trace)
        where TTrace : struct, ITrace
    {
        trace.Given("w", "width across the flow", Guard.AboveZero(width, Units.Metre), Units.Metre);
        trace.Given("h", "gap", Guard.ZeroOrMore(gap, Units.Metre), Units.Metre);
        trace.Given("L", "length along the flow", Guard.AboveZero(length, Units.Metre), Units.Metre);
        return trace.Line("G", "conductance", "w × h^3 / (12 × L)", width * gap * gap * gap / (12 * length), Units.CubicMetre, "laminar film");
    }

    /// <summary>Conductance of a plain bearing fed by a groove all round: oil leaves over its lands.</summary>
    /// <param name="diameter">[m] of the journal.</param>
    /// <param name="clearance">[m] diametral, less than the diameter.</param>
    /// <param name="land">[m] width of one land.</param>
    /// <param name="lands">[-] lands over which oil leaves: 2, or 1 beside a seal.</param>
    /// <param name="eccentricity">[-] of the journal, 0 to 1.</param>
    /// <returns>[m³] the conductance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: G = n π D c³ (1 + 1.5 ε²)/(12 l). Assumes: feed pressure alone; what the turning journal drags out is left out. Source: theory of laminar films (computed from first principles). Check: GapsTests.</remarks>
    public static double GroovedBearing(double diameter, double clearance, double land, double lands, double eccentricity) =>
        GroovedBearing(diameter, clearance, land, lands, eccentricity, isHalf: false, default(Silent));

    /// <summary>Conductance of a plain bearing fed by a groove half round, its middle where the gap is widest.</summary>
    /// <param name="diameter">[m] of the journal.</param>
    /// <param name="clearance">[m] diametral, less than the diameter.</param>
    /// <param name="land">[m] width of one land.</param>
    /// <param name="lands">[-] lands over which oil leaves: 2, or 1 beside a seal.</param>
    /// <param name="eccentricity">[-] of the journal, 0 to 1.</param>
    /// <returns>[m³] the conductance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: as with a groove all round, with (π(1 + 1.5 ε²) + 6ε + 4ε³/3)/(2π) for 1 + 1.5 ε². Source: theory of laminar films (computed from first principles). Check: GapsTests.</remarks>
    public static double HalfGroovedBearing(double diameter, double clearance, double land, double lands, double eccentricity) =>
        GroovedBearing(diameter, clearance, land, lands, eccentricity, isHalf: true, default(Silent));

    /// <summary>Conductance of a plain bearing fed by a groove, for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="diameter">[m] of the journal.</param>
    /// <param name="clearance">[m] diametral, less than the diameter.</param>
    /// <param name="land">[m] width of one land.</param>
    /// <param name="lands">[-] lands over which oil leaves.</param>
    /// <param name="eccentricity">[-] of the journal, 0 to 1.</param>
    /// <param name="isHalf">Whether the groove goes half round only.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[m³] the conductance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Source: theory of laminar films (computed from first principles). Check: GapsTests.</remarks>
    public static double GroovedBearing<TTrace>(double diameter, double clearance, double land, double lands, double eccentricity, bool isHalf, TTrace trace)
        where TTrace : struct, ITrace
    {
        trace.Given("l", "width of one land", Guard.AboveZero(land, Units.Metre), Units.Metre);
        trace.Given("n", "lands over which oil leaves", Guard.Within(lands, 1, 2), Units.None);
        var c = Round(diameter, clearance, eccentricity, trace);
        var widened = isHalf
            ? trace.Line("E", "half groove at the widest gap", "(π × (1 + 1.5 × ε^2) + 6 × ε + 4 × ε^3 / 3) / (2 × π)", ((Math.PI * Eccentric(eccentricity)) + (6 * eccentricity) + (4 * eccentricity * eccentricity * eccentricity / 3)) / (2 * Math.PI), Units.None, "mean of the gap cubed over the groove")
            : trace.Line("E", "groove all round", "1 + 1.5 × ε^2", Eccentric(eccentricity), Units.None, "mean of the gap cubed");
        return trace.Line("G", "conductance", "n × π × D × c^3 × E / (12 × l)", lands * Math.PI * diameter * c * c * c * widened / (12 * land), Units.CubicMetre, "laminar film");
    }

    /// <summary>Conductance of a plain bearing fed through one hole in the middle of its width.</summary>
    /// <param name="clearance">[m] diametral.</param>
    /// <param name="width">[m] of the bearing.</param>
    /// <param name="hole">[m] diameter of the hole at the journal, less than 0.8 of the width.</param>
    /// <param name="angle">[rad] from the widest gap to the hole.</param>
    /// <param name="eccentricity">[-] of the journal, 0 to 1.</param>
    /// <returns>[m³] the conductance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: G = f h³, f = (π/6)/ln(4B/(πd)), h = c (1 + ε cos θ). Assumes: feed pressure alone; hole small against the width. Valid: hole up to 0.3 of the width within 1.5 %; at the widest gap of an eccentric journal up to a tenth too much. Source: line source between two open edges (computed from first principles). Check: GapsTests.</remarks>
    public static double HoleFedBearing(double clearance, double width, double hole, double angle, double eccentricity) =>
        HoleFedBearing(clearance, width, hole, angle, eccentricity, default(Silent));

    /// <summary>The same for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="clearance">[m] diametral.</param>
    /// <param name="width">[m] of the bearing.</param>
    /// <param name="hole">[m] diameter of the hole at the journal, less than 0.8 of the width.</param>
    /// <param name="angle">[rad] from the widest gap to the hole.</param>
    /// <param name="eccentricity">[-] of the journal, 0 to 1.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[m³] the conductance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Source: line source between two open edges (computed from first principles). Check: GapsTests.</remarks>
    public static double HoleFedBearing<TTrace>(double clearance, double width, double hole, double angle, double eccentricity, TTrace trace)
        where TTrace : struct, ITrace
    {
        Guard.AboveZero(width, Units.Metre);
        Guard.AboveZero(hole, Units.Metre);
        Guard.Within(hole / width, 0, GreatestHole, "of the width", nameof(hole));
        trace.Given("C", "diametral clearance", Guard.ZeroOrMore(clearance, Units.Metre), Units.Metre);
        trace.Given("B", "width of the bearing", width, Units.Metre);
        trace.Given("d", "diameter of the hole", hole, Units.Metre);
        trace.Given("θ", "from the widest gap to the hole", Guard.Within(angle, -2 * Math.PI, 2 * Math.PI, Units.Radian), Units.Radian);
        trace.Given("ε", "eccentricity of the journal", Guard.Within(eccentricity, 0, 1), Units.None);
        var h = trace.Line("h", "gap at the hole", "C / 2 × (1 + ε × cos(θ))", clearance / 2 * (1 + (eccentricity * Math.Cos(angle))), Units.Metre);
        var f = trace.Line("f", "share of the hole", "π / 6 / ln(4 × B / (π × d))", Math.PI / 6 / Math.Log(4 * width / (Math.PI * hole)), Units.None, "line source between two open edges");
        return trace.Line("G", "conductance", "f × h^3", f * h * h * h, Units.CubicMetre);
    }

    /// <summary>Tells the flow that a pressure drives through a conductance G told before, across a width of film.</summary>
    internal static double Flow<TTrace>(double conductance, double pressure, double viscosity, double width, TTrace trace)
        where TTrace : struct, ITrace
    {
        trace.Given("Δp", "pressure across it", pressure, Units.Pascal);
        trace.Given("μ", "dynamic viscosity of the film", viscosity, Units.PascalSecond);
        var flow = trace.Line("Q", "flow", "G × Δp / μ", conductance * pressure / viscosity, Units.CubicMetrePerSecond);
        if (UsualHotDensity * flow / (width * viscosity) > LaminarBelow)
            trace.Caution("An oil of usual density would no longer flow as a laminar film here; less will pass than this.");
        return flow;
    }

    /// <summary>[kg/m³] of hot oil, to tell laminar from turbulent.</summary>
    private const double UsualHotDensity = 850;

    /// <summary>[-] Reynolds number ρQ/(wμ) of a film up to which it is laminar.</summary>
    private const double LaminarBelow = 1000;

    /// <summary>[-] widest hole of the width for which its formula means something.</summary>
    internal const double GreatestHole = 0.8;

    /// <summary>Tells what is common to gaps round a shaft and gives half of the clearance.</summary>
    private static double Round<TTrace>(double diameter, double clearance, double eccentricity, TTrace trace)
        where TTrace : struct, ITrace
    {
        Guard.AboveZero(diameter, Units.Metre);
        Guard.Within(clearance, 0, diameter, Units.Metre);
        trace.Given("D", "diameter", diameter, Units.Metre);
        trace.Given("C", "diametral clearance", clearance, Units.Metre);
        trace.Given("ε", "eccentricity: 0 in the middle, 1 touching", Guard.Within(eccentricity, 0, 1), Units.None);
        return trace.Line("c", "half of the clearance", "C / 2", clearance / 2, Units.Metre);
    }

    private static double Eccentric(double eccentricity) => 1 + (1.5 * eccentricity * eccentricity);
}
