using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Springs;

/// <summary>A helical compression spring of round wire, as drawn.</summary>
/// <param name="Wire">[m] diameter of the wire.</param>
/// <param name="Coil">[m] mean diameter of the coils, 2 wires or more.</param>
/// <param name="Active">[-] coils that work.</param>
/// <param name="Total">[-] coils in all; two more than work where the ends are closed.</param>
/// <param name="Free">[m] free length.</param>
/// <param name="Shear">[Pa] shear modulus.</param>
/// <param name="Young">[Pa] modulus of elasticity.</param>
/// <param name="IsGround">Whether the ends are ground flat.</param>
public readonly record struct CompressionSpring(double Wire, double Coil, double Active, double Total, double Free, double Shear, double Young, bool IsGround)
{
    private const string En = "EN 13906-1 (from memory)";

    /// <summary>[-] least spring index for which the formulas hold.</summary>
    internal const double LeastIndex = 2;

    /// <summary>[N/m] rate.</summary>
    /// <remarks>Model: R = G d⁴/(8 D³ n). Source: every handbook of machine elements (published). Check: CompressionSpringTests.</remarks>
    public double Rate => Shear * Math.Pow(Wire, 4) / (8 * Math.Pow(Coil, 3) * Active);

    /// <summary>[-] spring index: coil over wire.</summary>
    public double Index => Coil / Wire;

    /// <summary>[-] stress factor for the curvature of the wire, of EN 13906-1.</summary>
    public double StressFactor => (Index + 0.5) / (Index - 0.75);

    /// <summary>[m] length with all coils touching.</summary>
    public double SolidLength => (Total + (IsGround ? 0 : 1.5)) * Wire;

    /// <summary>[m] gaps that must be left together at the shortest length in use, for a cold coiled spring that is not moved often.</summary>
    public double LeastGaps => Active * ((0.0015 * Coil * Coil / Wire) + (0.1 * Wire));

    /// <summary>Greatest stress in the wire, with the curvature.</summary>
    /// <param name="load">[N] on the spring.</param>
    /// <returns>[Pa] shear stress.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The load negative or not finite.</exception>
    /// <remarks>Model: τ = k 8 D F/(π d³), k = (w + 0.5)/(w − 0.75). Source: EN 13906-1 (from memory). Check: CompressionSpringTests.</remarks>
    public double Stress(double load) => StressFactor * UncorrectedStress(Guard.ZeroOrMore(load, Units.Newton));

    /// <summary>How far the spring can be pressed before it buckles.</summary>
    /// <param name="seat">[-] 0.5 with both ends flat and guided, 0.7 with one on a pivot, 1 with both, 2 with one free.</param>
    /// <returns>[m] the deflection; nothing where it never buckles.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A seat coefficient outside 0.5 to 2.</exception>
    /// <remarks>Model: s = L0/(2(1 − G/E)) (1 − √(1 − (1 − G/E)/(½ + G/E) (πD/(νL0))²)). Source: EN 13906-1 (from memory). Check: CompressionSpringTests.</remarks>
    public double? BucklingDeflection(double seat)
    {
        var under = UnderTheRoot(Guard.Within(seat, 0.5, 2));
        return under < 0 ? null : 0.5 * Free / (1 - Ratio) * (1 - Math.Sqrt(under));
    }

    /// <summary>Tells everything about the spring to a trace, under a load where there is one.</summary>
    internal void Told<TTrace>(double? load, double seat, TTrace trace)
        where TTrace : struct, ITrace
    {
        trace.Given("d", "diameter of the wire", Wire, Units.Metre);
        trace.Given("n", "coils that work", Active, Units.None);
        trace.Given("n_t", "coils in all", Total, Units.None);
        trace.Given("L_0", "free length", Free, Units.Metre);
        var rate = trace.Line("R", "rate", "G × d^4 / (8 × D^3 × n)", Rate, Units.NewtonPerMetre);
        trace.Line("w", "spring index", "D / d", Index, Units.None);
        trace.Line("k", "stress factor for the curvature", "(w + 0.5) / (w − 0.75)", StressFactor, Units.None, En);
        var solid = trace.Line("L_c", "solid length", IsGround ? "n_t × d" : "(n_t + 1.5) × d", SolidLength, Units.Metre, En);
        var solidLoad = trace.Line("F_c", "load that makes it solid", "R × (L_0 − L_c)", rate * (Free - solid), Units.Newton);
        trace.Line("τ_c", "stress then, without the curvature", "8 × D × F_c / (π × d^3)", UncorrectedStress(solidLoad), Units.Pascal);
        var gaps = trace.Line("S_a", "gaps to be left together", "n × (0.0015 × D^2 / d + 0.1 × d)", LeastGaps, Units.Metre, En);
        trace.Line("L_n", "shortest length in use", "L_c + S_a", solid + gaps, Units.Metre, En);
        if (BucklingDeflection(seat) is { } buckling)
        {
            trace.Given("ν", "how the ends are held", seat, Units.None, En);
            trace.Line("g", "shear modulus over modulus of elasticity", "G / E", Ratio, Units.None);
            trace.Line("X", "what stands under the root", "1 − (1 − g) / (0.5 + g) × (π × D / (ν × L_0))^2", UnderTheRoot(seat), Units.None, En);
            trace.Line("s_k", "deflection at which it buckles", "0.5 × L_0 / (1 − g) × (1 − sqrt(X))", buckling, Units.Metre, En);
        }

        if (load is not { } force)
            return;
        trace.Given("F", "load", force, Units.Newton);
        var pressed = trace.Line("s", "deflection under the load", "F / R", force / rate, Units.Metre);
        trace.Line("L_1", "length under the load", "L_0 − s", Free - pressed, Units.Metre);
        trace.Line("τ", "greatest stress under the load", "k × 8 × D × F / (π × d^3)", Stress(force), Units.Pascal, En);
    }

    private double Ratio => Shear / Young;

    private double UncorrectedStress(double load) => 8 * Coil * load / (Math.PI * Math.Pow(Wire, 3));

    private double UnderTheRoot(double seat) => 1 - ((1 - Ratio) / (0.5 + Ratio) * Math.Pow(Math.PI * Coil / (seat * Free), 2));
}
