using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Flow;

/// <summary>What a flow costs in wire gauze of a plain square weave.</summary>
public static class Strainer
{
    private const string Source = "Armour and Cannon, 1968 (from memory)";

    /// <summary>The two parts of the loss, for those who solve for the flow: Δp = Linear μ Q + Square ρ Q².</summary>
    /// <param name="area">[m²] of the whole gauze.</param>
    /// <param name="pitch">[m] from wire to wire, middle to middle.</param>
    /// <param name="wire">[m] diameter of the wire, less than the pitch.</param>
    /// <param name="clogged">[-] share of the area that is blocked, 0 to 0.99.</param>
    /// <returns>Linear [1/m³] and Square [1/m⁴].</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: f = 8.61/R + 0.52 with R = ρv/(μ a² D), f = Δp e² D/(B ρ v²), B = 2d, D the clear width, e the void share, a the wire surface in a volume. Source: Armour and Cannon, AIChE J. 14 (1968) 415 (from memory). Check: StrainerTests.</remarks>
    public static (double Linear, double Square) Resistance(double area, double pitch, double wire, double clogged) => Resistance(area, pitch, wire, clogged, default(Silent));

    /// <summary>Pressure that a flow costs.</summary>
    /// <param name="area">[m²] of the whole gauze.</param>
    /// <param name="pitch">[m] from wire to wire, middle to middle.</param>
    /// <param name="wire">[m] diameter of the wire, less than the pitch.</param>
    /// <param name="clogged">[-] share of the area that is blocked, 0 to 0.99.</param>
    /// <param name="flow">[m³/s] the flow.</param>
    /// <param name="viscosity">[Pa s] dynamic viscosity.</param>
    /// <param name="density">[kg/m³] density.</param>
    /// <returns>[Pa] the loss.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Source: Armour and Cannon, AIChE J. 14 (1968) 415 (from memory). Check: StrainerTests.</remarks>
    public static double Loss(double area, double pitch, double wire, double clogged, double flow, double viscosity, double density) =>
        Loss(area, pitch, wire, clogged, flow, viscosity, density, default(Silent));

    /// <summary>The same for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="area">[m²] of the whole gauze.</param>
    /// <param name="pitch">[m] from wire to wire, middle to middle.</param>
    /// <param name="wire">[m] diameter of the wire, less than the pitch.</param>
    /// <param name="clogged">[-] share of the area that is blocked, 0 to 0.99.</param>
    /// <param name="flow">[m³/s] the flow.</param>
    /// <param name="viscosity">[Pa s] dynamic viscosity.</param>
    /// <param name="density">[kg/m³] density.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[Pa] the loss.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Source: Armour and Cannon, AIChE J. 14 (1968) 415 (from memory). Check: StrainerTests.</remarks>
    public static double Loss<TTrace>(double area, double pitch, double wire, double clogged, double flow, double viscosity, double density, TTrace trace)
        where TTrace : struct, ITrace
    {
        var (linear, square) = Resistance(area, pitch, wire, clogged, trace);
        trace.Given("Q", "flow", Guard.ZeroOrMore(flow, Units.CubicMetrePerSecond), Units.CubicMetrePerSecond);
        trace.Given("μ", "dynamic viscosity", Guard.AboveZero(viscosity, Units.PascalSecond), Units.PascalSecond);
        trace.Given("ρ", "density", Guard.AboveZero(density, Units.KilogramPerCubicMetre), Units.KilogramPerCubicMetre);
        trace.Line("v", "velocity towards the open gauze", "Q / A_o", flow / OpenArea(area, clogged), Units.MetrePerSecond);
        var thick = trace.Line("Δp_μ", "part by viscosity", "8.61 × a^2 × B / e^2 × μ × v", linear * viscosity * flow, Units.Pascal, Source);
        var heavy = trace.Line("Δp_ρ", "part by inertia", "0.52 × B / (e^2 × D) × ρ × v^2", square * density * flow * flow, Units.Pascal, Source);
        return trace.Line("Δp", "loss of pressure", "Δp_μ + Δp_ρ", thick + heavy, Units.Pascal);
    }

    private static (double Linear, double Square) Resistance<TTrace>(double area, double pitch, double wire, double clogged, TTrace trace)
        where TTrace : struct, ITrace
    {
        Guard.AboveZero(area, Units.SquareMetre);
        Guard.AboveZero(pitch, Units.Metre);
        Guard.AboveZero(wire, Units.Metre);
        Guard.Within(wire / pitch, 0, 0.9, "of the pitch", nameof(wire));
        Guard.Within(clogged, 0, 0.99);
        trace.Given("A", "area of the gauze", area, Units.SquareMetre);
        trace.Given("p", "pitch, from wire to wire", pitch, Units.Metre);
        trace.Given("d", "diameter of the wire", wire, Units.Metre);
        trace.Given("k", "share that is blocked", clogged, Units.None);
        var open = trace.Line("A_o", "area left open", "A × (1 − k)", OpenArea(area, clogged), Units.SquareMetre);
        var crimp = trace.Line("q", "length of a bent wire over its pitch", "sqrt(1 + d^2 / p^2)", Math.Sqrt(1 + (wire * wire / (pitch * pitch))), Units.None);
        var surface = trace.Line("a", "surface of wire in a volume, 1/m", "π × q / p", Math.PI * crimp / pitch, "1/m", "geometry of the weave");
        var voids = trace.Line("e", "share of the volume that is open", "1 − π × d × q / (4 × p)", 1 - (Math.PI * wire * crimp / (4 * pitch)), Units.None, "geometry of the weave");
        var clear = trace.Line("D", "clear width between wires", "p − d", pitch - wire, Units.Metre);
        var thickness = trace.Line("B", "thickness of the gauze", "2 × d", 2 * wire, Units.Metre);
        return (8.61 * surface * surface * thickness / (voids * voids * open), 0.52 * thickness / (voids * voids * clear * open * open));
    }

    private static double OpenArea(double area, double clogged) => area * (1 - clogged);
}
