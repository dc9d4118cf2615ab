using Thoubook.Mechanics.Flow;
using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Valves;

/// <summary>A valve held shut by a spring: relief, by-pass or check.</summary>
/// <param name="Closure">What closes it.</param>
/// <param name="Preload">[N] spring force when shut, 0 or more.</param>
/// <param name="Spring">[N/m] rate, above 0.</param>
/// <param name="Lift">[m] at its stop, above 0.</param>
/// <param name="Discharge">[-] discharge coefficient, above 0 to 1.</param>
public readonly record struct SpringValve(Closure Closure, double Preload, double Spring, double Lift, double Discharge)
{
    /// <summary>[m] height of the gap that leaks as the shut seat does, or of the gap round a piston; 0: tight.</summary>
    public double SeatGap { get; init; }

    /// <summary>[m] width of the seat across which it leaks, or length of the piston in its bore.</summary>
    public double SeatWidth { get; init; } = 1e-3;

    /// <summary>[Pa] drop from inlet to spring chamber at which it begins to lift.</summary>
    public double Cracking => Preload / Closure.LiftingArea;

    /// <summary>[m³] leak of the shut seat: times pressure drop over viscosity it is a flow.</summary>
    public double SeatLeak => SeatGap > 0 ? Gaps.Slot(Math.PI * Closure.Seat, SeatGap, SeatWidth) : 0;

    /// <summary>Where it stands and what it passes.</summary>
    /// <param name="drop">[Pa] inlet less outlet.</param>
    /// <param name="lifting">[Pa] inlet less spring chamber; the drop itself where the chamber opens to the outlet.</param>
    /// <param name="viscosity">[Pa s] above 0; counts for the seat's leak alone.</param>
    /// <param name="density">[kg/m³] above 0.</param>
    /// <returns>Lift, flow and how the flow changes.</returns>
    /// <remarks>Model: lifting·A = preload + k x + 2 Cd a(x) cos β Δp, 0 ≤ x ≤ stop; Q = Cd a(x) √(2Δp/ρ) and the seat's leak, both ways. Assumes: turbulent edge. Valid: Reynolds number of the opening above some 100; below, the valve lifts further. Source: force balance and orifice equation, A. Esposito, Fluid Power with Applications, chapter 8 (published). Check: SpringValveTests.</remarks>
    public ValveState At(double drop, double lifting, double viscosity, double density)
    {
        var leak = SeatLeak / viscosity;
        var force = (lifting * Closure.LiftingArea) - Preload;
        if (force <= 0)
            return new(0, leak * drop, leak, 0);
        var closing = Closure.ForceByOpening(Discharge);
        var free = Closure.Balance(force, Spring, closing * Math.Abs(drop));
        var lift = Math.Min(free, Lift);
        var (area, slope) = (Closure.Area(lift), Closure.AreaSlope(lift));
        var speed = Math.CopySign(Discharge * Math.Sqrt(2 * Math.Abs(drop) / density), drop);
        var yielding = free < Lift ? 1 / (Spring + (closing * Math.Abs(drop) * slope)) : 0;
        var byDrop = area == 0 ? 0 : area * ((Discharge / Math.Sqrt(2 * Math.Abs(drop) * density)) - (Math.Abs(speed) * slope * closing * yielding));
        return new(lift, (speed * area) + (leak * drop), byDrop + leak, speed * slope * Closure.LiftingArea * yielding);
    }

    /// <summary>The drop at which it passes a flow, its spring chamber open to the outlet.</summary>
    /// <param name="flow">[m³/s] above 0.</param>
    /// <param name="viscosity">[Pa s] above 0; counts for the seat's leak alone.</param>
    /// <param name="density">[kg/m³] above 0.</param>
    /// <returns>[Pa] drop.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Flow not above 0.</exception>
    /// <remarks>Model: root of the flow of At. Where the force of the flow makes the flow fall with rising drop there are several; this is the first. Source: as At (published). Check: SpringValveTests.</remarks>
    public double DropFor(double flow, double viscosity, double density)
    {
        Guard.AboveZero(flow, "m³/s");
        var valve = this;
        var high = Math.Max(Cracking, 1);
        while (valve.At(high, high, viscosity, density).Flow < flow)
            high *= 1.5;
        return Roots.Find(drop => valve.At(drop, drop, viscosity, density).Flow - flow, 0, high).Root;
    }
}

/// <summary>Where a valve stands and what it passes.</summary>
/// <param name="Lift">[m] from its seat.</param>
/// <param name="Flow">[m³/s] from inlet to outlet.</param>
/// <param name="ByDrop">[any] m³/s for each Pa of inlet less outlet, the lifting pressure kept; below 0 where the flow closes the valve faster than it feeds it, without end at no drop across an open valve.</param>
/// <param name="ByLifting">[any] m³/s for each Pa of inlet less spring chamber, the drop kept.</param>
public readonly record struct ValveState(double Lift, double Flow, double ByDrop, double ByLifting);
