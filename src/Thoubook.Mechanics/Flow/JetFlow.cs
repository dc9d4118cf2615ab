using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Flow;

/// <summary>Flow of a jet or orifice.</summary>
public static class JetFlow
{
    /// <summary>[-] usual discharge coefficient of a sharp edge.</summary>
    public const double SharpDischarge = 0.62;

    /// <summary>Flow through a round hole.</summary>
    /// <param name="bore">[m] its diameter.</param>
    /// <param name="discharge">[-] discharge coefficient, above 0, 1 at most: 0.62 for a sharp edge, 0.8 for a short tube.</param>
    /// <param name="pressure">[Pa] difference across it, 0 or more.</param>
    /// <param name="density">[kg/m³] density.</param>
    /// <returns>[m³/s] the flow.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: Q = Cd A √(2Δp/ρ). Assumes: no velocity before it. Source: orifice equation with its usual coefficients (published). Check: JetFlowTests.</remarks>
    public static double Of(double bore, double discharge, double pressure, double density) => Of(bore, discharge, pressure, density, default(Silent));

    /// <summary>The same for any trace, which has heard of the coefficient Cd.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="bore">[m] its diameter.</param>
    /// <param name="discharge">[-] discharge coefficient.</param>
    /// <param name="pressure">[Pa] difference across it, 0 or more.</param>
    /// <param name="density">[kg/m³] density.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[m³/s] the flow.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Source: orifice equation (published). Check: JetFlowTests.</remarks>
    public static double Of<TTrace>(double bore, double discharge, double pressure, double density, TTrace trace)
        where TTrace : struct, ITrace
    {
        Guard.AboveZero(bore, Units.Metre);
        Guard.Within(discharge, 1e-6, 1);
        Guard.ZeroOrMore(pressure, Units.Pascal);
        Guard.AboveZero(density, Units.KilogramPerCubicMetre);
        trace.Given("d", "bore", bore, Units.Metre);
        trace.Given("Cd", "discharge coefficient", discharge, Units.None);
        trace.Given("Δp", "pressure across it", pressure, Units.Pascal);
        trace.Given("ρ", "density", density, Units.KilogramPerCubicMetre);
        var area = trace.Line("A", "area", "π × d^2 / 4", Math.PI * bore * bore / 4, Units.SquareMetre);
        var ideal = trace.Line("v", "velocity of an ideal jet", "sqrt(2 × Δp / ρ)", Math.Sqrt(2 * pressure / density), Units.MetrePerSecond);
        return trace.Line("Q", "flow", "Cd × A × v", discharge * area * ideal, Units.CubicMetrePerSecond, "orifice equation");
    }

    /// <summary>Discharge coefficient of a long orifice, whose length is a few bores.</summary>
    /// <param name="bore">[m] its diameter.</param>
    /// <param name="length">[m] its length, 2 to 10 bores.</param>
    /// <param name="pressure">[Pa] difference across it, above 0.</param>
    /// <param name="viscosity">[Pa s] dynamic viscosity.</param>
    /// <param name="density">[kg/m³] density.</param>
    /// <returns>[-] the coefficient.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: 1/Cd = 1/Cu + (20/R)(1 + 2.25 L/d) − 0.005 (L/d)/(1 + 7.5 (log 0.00015 R)²), Cu = 0.827 − 0.0085 L/d, R with the velocity of an ideal jet; but never more flow than friction without entry lets through, 1/Cd² = 64 (L/d)/(Cd R). Valid: R from 10 to 20,000. Source: Lichtarowicz, Duggins and Markland, J. Mech. Eng. Sci. 7 (1965) 210 (from memory). Check: JetFlowTests.</remarks>
    public static double LongDischarge(double bore, double length, double pressure, double viscosity, double density)
    {
        var ratio = Guard.Within(length / Guard.AboveZero(bore, Units.Metre), 2, 10, "bores", "length");
        var reynolds = IdealReynolds(bore, pressure, viscosity, density);
        return LongDischarge(ratio, reynolds);
    }

    /// <summary>[-] Reynolds number with the velocity of an ideal jet.</summary>
    internal static double IdealReynolds(double bore, double pressure, double viscosity, double density) =>
        density * bore * Math.Sqrt(2 * Guard.AboveZero(pressure, Units.Pascal) / Guard.AboveZero(density, Units.KilogramPerCubicMetre)) / Guard.AboveZero(viscosity, Units.PascalSecond);

    /// <summary>Tells the coefficient of a long orifice.</summary>
    internal static double LongDischarge<TTrace>(double bore, double length, double pressure, double viscosity, double density, TTrace trace)
        where TTrace : struct, ITrace
    {
        const string source = "Lichtarowicz, Duggins and Markland, 1965 (from memory)";
        trace.Given("L_h", "length of the hole", length, Units.Metre);
        trace.Given("d_h", "bore of the hole", bore, Units.Metre);
        trace.Given("μ", "dynamic viscosity", viscosity, Units.PascalSecond);
        trace.Given("ρ_h", "density of the oil", density, Units.KilogramPerCubicMetre);
        trace.Given("Δp_h", "pressure over the hole", pressure, Units.Pascal);
        var ratio = trace.Line("r", "length in bores", "L_h / d_h", length / bore, Units.None);
        var reynolds = trace.Line("R", "Reynolds number of an ideal jet", "ρ_h × d_h × sqrt(2 × Δp_h / ρ_h) / μ", IdealReynolds(bore, pressure, viscosity, density), Units.None);
        trace.Line("Cu", "coefficient at high speed", "0.827 − 0.0085 × r", 0.827 - (0.0085 * ratio), Units.None, source);
        trace.Line("C_entry", "coefficient by entry and friction", "1 / (1 / Cu + 20 / R × (1 + 2.25 × r) − 0.005 × r / (1 + 7.5 × (ln(0.00015 × R) / ln(10))^2))", Entry(ratio, reynolds), Units.None, source);
        trace.Line("C_pipe", "coefficient by friction alone", "R / (64 × r)", reynolds / (64 * ratio), Units.None, "laminar flow");
        return trace.Line("C_long", "the lesser of the two", "min(C_entry, C_pipe)", LongDischarge(ratio, reynolds), Units.None);
    }

    private static double LongDischarge(double ratio, double reynolds) => Math.Min(Entry(ratio, reynolds), reynolds / (64 * ratio));

    private static double Entry(double ratio, double reynolds) =>
        1 / ((1 / (0.827 - (0.0085 * ratio))) + (20 / reynolds * (1 + (2.25 * ratio))) - (0.005 * ratio / (1 + (7.5 * Math.Pow(Math.Log10(0.00015 * reynolds), 2)))));
}
