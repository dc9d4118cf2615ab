using Thoubook.Mechanics.Flow;
using Thoubook.Mechanics.Valves;

namespace Thoubook.Mechanics.Circuits;

/// <summary>What an element passes and how that changes with the pressures that it looks at.</summary>
/// <param name="Flow">[m³/s] from its first node to its second.</param>
/// <param name="ByFrom">[any] m³/s for each Pa at its first node.</param>
/// <param name="ByTo">[any] m³/s for each Pa at its second.</param>
/// <param name="ByThird">[any] m³/s for each Pa at the node that it looks at besides.</param>
internal readonly record struct FlowAndSlopes(double Flow, double ByFrom, double ByTo, double ByThird)
{
    public static FlowAndSlopes OfDrop(double flow, double slope) => new(flow, slope, -slope, 0);
}

/// <summary>The laws of the elements, each with its exact derivatives.</summary>
internal static class ElementFlow
{
    /// <summary>[Pa] Within it a sharp edge is taken as straight, so that its slope is finite; the flow there is below what is asked of the balance.</summary>
    private const double Nearly = 1e-9;

    /// <summary>The flow of an element between given pressures.</summary>
    /// <param name="element">Its kind; its numbers stand in <paramref name="v"/>.</param>
    /// <param name="v">[any] its numbers, in its own order.</param>
    /// <param name="at">What the circuit runs at.</param>
    /// <param name="from">[Pa] gauge.</param>
    /// <param name="to">[Pa] gauge.</param>
    /// <param name="third">[Pa] gauge, of the node that it looks at besides.</param>
    /// <param name="head">[Pa] what heights add to the drop.</param>
    public static FlowAndSlopes Of(CircuitElement element, ReadOnlySpan<double> v, in OperatingPoint at, double from, double to, double third, double head)
    {
        var drop = from - to + head;
        switch (element)
        {
            case LaminarPassage:
                var conductance = v[0] / (v[1] != 0 && at.ViscosityAtRise is { } warmer ? warmer(v[1]) : at.Viscosity);
                return FlowAndSlopes.OfDrop(conductance * drop, conductance);
            case QuadraticPassage:
                return Quadratic(v[0] * at.Viscosity, v[1] * at.Density, drop);
            case Orifice:
                return Edge(v[1] * Math.PI / 4 * v[0] * v[0] * Math.Sqrt(2 / at.Density), drop);
            case Pipe:
                var turning = at.Speed * v[7];
                return Rough(v, at, drop + (at.Density * turning * turning * ((v[6] * v[6]) - (v[5] * v[5])) / 2));
            case Pump:
                return Pumped(v, at, from, to, head);
            case Consumer:
                var full = drop / v[1];
                return full <= 0 ? default : full >= 1 ? new(v[0], 0, 0, 0) : FlowAndSlopes.OfDrop(v[0] * full, v[0] / v[1]);
            case ReliefValve valve:
                return Relieved(valve, v, at, drop, valve.Third is null ? drop : from - third, valve.Third is null);
            case ReducingValve:
                return Reduced(v, at, to - third, drop);
            default:
                throw new InvalidOperationException($"No law for {element.GetType().Name}.");
        }
    }

    /// <summary>[m] how far a valve is open.</summary>
    public static double Lift(CircuitElement element, ReadOnlySpan<double> v, in OperatingPoint at, double from, double to, double third, double head) => element switch
    {
        ReliefValve valve => Sprung(valve, v).At(from - to + head, valve.Third is null ? from - to + head : from - third, at.Viscosity, at.Density).Lift,
        ReducingValve => new Reducer(v[0], v[1], v[2], v[3], v[4], v[5]).Opening(to - third),
        _ => 0,
    };

    /// <summary>[-] share of its spaces that a pump fills, and how it changes with the pressure at its inlet.</summary>
    public static (double Share, double Slope) Filling(ReadOnlySpan<double> v, in OperatingPoint at, double from)
    {
        if (double.IsNaN(v[4]))
            return (1, 0);
        var wholly = double.IsNaN(v[5]) ? at.Atmosphere : v[5];
        var share = (from + at.Atmosphere - v[4]) / (wholly - v[4]);
        return share <= 0 ? (0, 0) : share >= 1 ? (1, 0) : (share, 1 / (wholly - v[4]));
    }

    private static FlowAndSlopes Pumped(ReadOnlySpan<double> v, in OperatingPoint at, double from, double to, double head)
    {
        var moved = (v[0] + v[3]) * at.Speed / (2 * Math.PI) * v[2];
        var (share, slope) = Filling(v, at, from);
        var leak = v[1] / at.Viscosity;
        return new((moved * share) + (leak * (from - to + head)), (moved * slope) + leak, -leak, 0);
    }

    private static FlowAndSlopes Quadratic(double linear, double square, double drop)
    {
        // The root of square·q² + linear·q = |drop|, written so that neither part may vanish.
        var root = Math.Sqrt((linear * linear) + (4 * square * Math.Max(Math.Abs(drop), linear > 0 ? 0 : Nearly)));
        return FlowAndSlopes.OfDrop(2 * drop / (linear + root), 1 / root);
    }

    private static FlowAndSlopes Edge(double k, double drop)
    {
        var size = Math.Abs(drop);
        if (size < Nearly)
            return FlowAndSlopes.OfDrop(k * drop / Math.Sqrt(Nearly), k / Math.Sqrt(Nearly));
        var root = Math.Sqrt(size);
        return FlowAndSlopes.OfDrop(Math.CopySign(k * root, drop), k / (2 * root));
    }

    private static SpringValve Sprung(ReliefValve valve, ReadOnlySpan<double> v) => new(
        valve.Closure switch
        {
            ValveClosure.Poppet => Closure.Poppet(v[0], v[7]),
            ValveClosure.Ball => Closure.Ball(v[0], v[8]),
            ValveClosure.Piston => Closure.Piston(v[0], v[9], v[10]),
            _ => Closure.Disc(v[0]),
        },
        v[1], v[2], v[3], v[4])
    {
        SeatGap = v[5],
        SeatWidth = v[6],
    };

    private static FlowAndSlopes Relieved(ReliefValve valve, ReadOnlySpan<double> v, in OperatingPoint at, double drop, double lifting, bool isVentedToOutlet)
    {
        var sprung = Sprung(valve, v);
        var state = sprung.At(drop, lifting, at.Viscosity, at.Density);
        if (Math.Abs(drop) < Nearly)
            return FlowAndSlopes.OfDrop(state.Flow, sprung.SeatLeak / at.Viscosity);
        return isVentedToOutlet
            ? FlowAndSlopes.OfDrop(state.Flow, state.ByDrop + state.ByLifting)
            : new(state.Flow, state.ByDrop + state.ByLifting, -state.ByDrop, -state.ByLifting);
    }

    private static FlowAndSlopes Reduced(ReadOnlySpan<double> v, in OperatingPoint at, double behind, double drop)
    {
        var stiff = Math.PI * v[3] * v[3] / 4 / v[2];
        var opening = Math.Clamp((v[1] - behind) * stiff, 0, v[4]);
        var bore = Math.PI * v[0] * v[0] / 4;
        var area = Math.Min(Math.PI * v[0] * opening, bore);
        if (area == 0)
            return default;
        var edge = Edge(v[5] * Math.Sqrt(2 / at.Density), drop);
        var yields = opening < v[4] && Math.PI * v[0] * opening < bore ? -Math.PI * v[0] * stiff * edge.Flow : 0;
        return new(area * edge.Flow, area * edge.ByFrom, (area * edge.ByTo) + yields, -yields);
    }

    /// <summary>A rough pipe: its flow is found from the drop by Newton steps on ln Re, which are safe because the drop rises with the flow.</summary>
    private static FlowAndSlopes Rough(ReadOnlySpan<double> v, in OperatingPoint at, double drop)
    {
        var (bore, length, roughness, losses, number) = (v[0], v[1], v[2], v[3], v[4]);
        var area = Math.PI * bore * bore / 4;
        var size = Math.Abs(drop);
        var creeping = area * bore * bore / (32 * at.Viscosity * length);

        // size = (f L/d + K) μ²/(2 ρ d²) Re²; t = (f + K d/L) Re².
        var t = size * 2 * at.Density * bore * bore * bore / (at.Viscosity * at.Viscosity * length);
        var end = losses * bore / length;
        if (t < 64e-3)
            return FlowAndSlopes.OfDrop(number * creeping * drop, number * creeping);
        var lnT = Math.Log(t);
        var (low, high) = (Math.Log(1e-4), lnT - Math.Log(64));
        var y = high;
        double slope = 1;
        for (var step = 0; step < 60; step++)
        {
            var re = Math.Exp(y);
            var f = Friction.Churchill(re, roughness / bore, out var fSlope);
            var sum = f + end;
            var g = Math.Log(sum) + (2 * y) - lnT;
            slope = 2 + (fSlope * re / sum);
            if (g > 0)
                high = y;
            else
                low = y;
            var next = y - (g / slope);
            if (next < low || next > high)
                next = (low + high) / 2;
            var moved = Math.Abs(next - y);
            y = next;
            if (moved < 1e-15 * Math.Max(1, Math.Abs(y)))
                break;
        }

        var flow = number * area * at.Viscosity / (at.Density * bore) * Math.Exp(y);
        return FlowAndSlopes.OfDrop(Math.CopySign(flow, drop), flow / (slope * size));
    }
}
