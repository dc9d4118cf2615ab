using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Valves;

/// <summary>What shims, turns of the screw and work on the seat do to the setting of a spring-loaded valve.</summary>
public static class ValveSetting
{
    /// <summary>Setting for one length more under the spring.</summary>
    /// <param name="spring">[N/m] rate, above 0.</param>
    /// <param name="liftingArea">[m²] what the pressure pushes on, above 0.</param>
    /// <returns>[any] Pa for each metre of shim.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: k/A. Source: spring rate over seat area (common practice). Check: ValveSettingTests.</remarks>
    public static double ByShim(double spring, double liftingArea) => Guard.AboveZero(spring, "N/m") / Guard.AboveZero(liftingArea, "m²");

    /// <summary>Setting after shims are added and the seat is lapped.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="setting">[Pa] before.</param>
    /// <param name="spring">[N/m] rate, above 0.</param>
    /// <param name="seat">[m] contact diameter, above 0.</param>
    /// <param name="shim">[m] added under the spring; below 0 where taken out.</param>
    /// <param name="lapped">[m] taken off the seat or the valve's face, 0 or more.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[Pa] after; below nil where the spring no longer reaches the valve.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: p + k (shim − t)/A. Source: spring rate over seat area (common practice). Check: ValveSettingTests.</remarks>
    public static double After<TTrace>(double setting, double spring, double seat, double shim, double lapped, TTrace trace)
        where TTrace : struct, ITrace
    {
        Guard.Finite(setting, "Pa");
        Guard.AboveZero(seat, "m");
        Guard.Finite(shim, "m");
        Guard.ZeroOrMore(lapped, "m");
        trace.Given("p_0", "setting before", setting, Units.Pascal);
        trace.Given("k", "spring rate", spring, Units.NewtonPerMetre);
        trace.Given("d", "contact diameter of the seat", seat, Units.Metre);
        trace.Given("s", "shim added", shim, Units.Metre);
        trace.Given("t", "taken off seat or face", lapped, Units.Metre);
        var area = trace.Line("A", "area that the pressure pushes on", "π × d^2/4", Math.PI * seat * seat / 4, Units.SquareMetre);
        return trace.Line("p_1", "setting after", "p_0 + k × (s − t)/A", setting + (ByShim(spring, area) * (shim - lapped)), Units.Pascal);
    }

    /// <summary>What is to be added under the spring for a wanted setting.</summary>
    /// <param name="setting">[Pa] now.</param>
    /// <param name="wanted">[Pa] wanted.</param>
    /// <param name="spring">[N/m] rate, above 0.</param>
    /// <param name="seat">[m] contact diameter, above 0.</param>
    /// <returns>[m] shim; below 0 where some is to come out.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: (p_wanted − p) A/k. Source: spring rate over seat area (common practice). Check: ValveSettingTests.</remarks>
    public static double ShimFor(double setting, double wanted, double spring, double seat) =>
        (Guard.Finite(wanted, "Pa") - Guard.Finite(setting, "Pa")) / ByShim(spring, Math.PI * Guard.AboveZero(seat, "m") * seat / 4);

    /// <summary>The gap all round a seat that leaks as much as was caught from it when shut.</summary>
    /// <param name="flow">[m³/s] caught, above 0.</param>
    /// <param name="drop">[Pa] across the shut valve, above 0.</param>
    /// <param name="viscosity">[Pa s] of what was passed, above 0.</param>
    /// <param name="seat">[m] contact diameter, above 0.</param>
    /// <param name="width">[m] of the contact, above 0.</param>
    /// <returns>[m] gap.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: h = (12 μ w Q/(π d Δp))^⅓. Source: plane slot, B. S. Massey and J. Ward-Smith, Mechanics of Fluids, example 6.3 (published). Check: ValveSettingTests.</remarks>
    public static double SeatGap(double flow, double drop, double viscosity, double seat, double width) =>
        Math.Cbrt(12 * Guard.AboveZero(viscosity, "Pa s") * Guard.AboveZero(width, "m") * Guard.AboveZero(flow, "m³/s") / (Math.PI * Guard.AboveZero(seat, "m") * Guard.AboveZero(drop, "Pa")));
}
