using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Valves;

/// <summary>What closes a valve.</summary>
public enum ClosureKind
{
    /// <summary>A flat disc on its seat.</summary>
    Disc,

    /// <summary>A cone on the edge of its seat.</summary>
    Poppet,

    /// <summary>A ball on the edge of its seat.</summary>
    Ball,

    /// <summary>A piston that uncovers a port.</summary>
    Piston,
}

/// <summary>The closing part of a valve and its seat: what the oil pushes on, and what opens as it lifts. Made by the function of its kind.</summary>
public readonly record struct Closure
{
    private readonly double _sine;
    private readonly double _cosine;
    private readonly double _size;
    private readonly double _overlap;

    private Closure(ClosureKind kind, double seat, double size, double overlap, double sine, double cosine, double jetCosine)
    {
        (Kind, Seat, _size, _overlap, _sine, _cosine, JetCosine) = (kind, seat, size, overlap, sine, cosine, jetCosine);
        LiftingArea = Math.PI * seat * seat / 4;
    }

    /// <summary>What closes it.</summary>
    public ClosureKind Kind { get; }

    /// <summary>[m] diameter of the seat where it touches, or of the piston.</summary>
    public double Seat { get; }

    /// <summary>[m²] what the pressure pushes on.</summary>
    public double LiftingArea { get; }

    /// <summary>[-] cosine of the angle at which the jet leaves, from the axis; 0 where the flow closes nothing.</summary>
    public double JetCosine { get; init; }

    /// <summary>[m] lift from which oil passes: the overlap of a port.</summary>
    internal double OpensAt => Kind == ClosureKind.Piston ? _overlap : 0;

    /// <summary>[m²] the widest opening: the bore of the seat; a port has none but its lift.</summary>
    public double WidestArea => Kind == ClosureKind.Piston ? double.PositiveInfinity : LiftingArea;

    /// <summary>A flat disc; the oil leaves across the axis and closes nothing.</summary>
    /// <param name="seat">[m] contact diameter, above 0.</param>
    /// <returns>The closure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Seat not above 0.</exception>
    /// <remarks>Model: opening π d x, lifting area π d²/4. Source: geometry (common practice). Check: ClosureTests.</remarks>
    public static Closure Disc(double seat) => new(ClosureKind.Disc, Guard.AboveZero(seat, "m"), 0, 0, 1, 0, 0);

    /// <summary>A cone on a sharp seat.</summary>
    /// <param name="seat">[m] contact diameter, above 0.</param>
    /// <param name="halfAngle">[rad] between axis and cone, 0.1 to 1.5.</param>
    /// <returns>The closure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: opening π x sin β (d − x sin β cos β); jet along the cone. Source: geometry and momentum (from memory). Check: ClosureTests.</remarks>
    public static Closure Poppet(double seat, double halfAngle)
    {
        var (sine, cosine) = Math.SinCos(Guard.Within(halfAngle, 0.1, 1.5, "rad"));
        return new(ClosureKind.Poppet, Guard.AboveZero(seat, "m"), halfAngle, 0, sine, cosine, cosine);
    }

    /// <summary>A ball on a sharp seat; what the jet closes is small and left out.</summary>
    /// <param name="seat">[m] contact diameter, above 0.</param>
    /// <param name="ball">[m] diameter, above the seat's.</param>
    /// <returns>The closure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: opening π s (l − R)(1 + R/l), l from the seat's edge to the ball's centre. Source: geometry (from memory). Check: ClosureTests.</remarks>
    public static Closure Ball(double seat, double ball)
    {
        Guard.AboveZero(seat, "m");
        var radius = Guard.Within(ball, double.BitIncrement(seat), double.MaxValue, "m") / 2;
        return new(ClosureKind.Ball, seat, radius, Math.Sqrt((radius * radius) - (seat * seat / 4)), 0, 0, 0);
    }

    /// <summary>A piston that uncovers a port.</summary>
    /// <param name="piston">[m] diameter, above 0.</param>
    /// <param name="port">[m] width of the port round the bore, above 0.</param>
    /// <param name="overlap">[m] lift before the port opens, 0 or more.</param>
    /// <returns>The closure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: opening port width times lift beyond the overlap; jet at 69° from the axis. Source: H. E. Merritt, Hydraulic Control Systems (from memory). Check: ClosureTests.</remarks>
    public static Closure Piston(double piston, double port, double overlap = 0) =>
        new(ClosureKind.Piston, Guard.AboveZero(piston, "m"), Guard.AboveZero(port, "m"), Guard.ZeroOrMore(overlap, "m"), 1, 0, Math.Cos(69 * Math.PI / 180));

    /// <summary>Opening at a lift.</summary>
    /// <param name="lift">[m] 0 or more.</param>
    /// <returns>[m²] opening; not above <see cref="WidestArea"/>.</returns>
    /// <remarks>Model: by kind, as where it is made. Source: geometry (from memory). Check: ClosureTests.</remarks>
    public double Area(double lift) => Opening(lift).Area;

    /// <summary>How fast the opening grows with lift.</summary>
    /// <param name="lift">[m] 0 or more.</param>
    /// <returns>[m] opening by lift; 0 where it grows no more.</returns>
    /// <remarks>Model: derivative of the opening; at a kink the side beyond it. Source: geometry (from memory). Check: ClosureTests.</remarks>
    public double AreaSlope(double lift) => Opening(lift).Slope;

    /// <summary>Closing force of the flow by pressure drop.</summary>
    /// <param name="lift">[m] 0 or more.</param>
    /// <param name="discharge">[-] discharge coefficient.</param>
    /// <returns>[m²] force over pressure drop.</returns>
    /// <remarks>Model: 2 Cd a cos β; for a piston 0.43 a, the same with Cd 0.6. Source: momentum of the jet; H. E. Merritt, Hydraulic Control Systems (from memory). Check: ClosureTests.</remarks>
    public double FlowForce(double lift, double discharge) => ForceByOpening(discharge) * Area(lift);

    /// <summary>[-] closing force over opening and pressure drop.</summary>
    internal double ForceByOpening(double discharge) => Kind == ClosureKind.Piston ? (JetCosine > 0 ? 0.43 : 0) : 2 * discharge * JetCosine;

    /// <summary>Lift at which what is left of the pressure's force holds spring and flow in balance; without end.</summary>
    /// <param name="force">[N] above what holds it shut, above 0.</param>
    /// <param name="spring">[N/m] rate, above 0.</param>
    /// <param name="flowForce">[Pa] closing force over opening.</param>
    /// <returns>[m] lift.</returns>
    internal double Balance(double force, double spring, double flowForce)
    {
        if (flowForce <= 0)
            return force / spring;
        var free = Kind switch
        {
            ClosureKind.Disc => force / (spring + (flowForce * Math.PI * Seat)),
            ClosureKind.Piston => force <= spring * _overlap ? force / spring : (force + (flowForce * _size * _overlap)) / (spring + (flowForce * _size)),
            ClosureKind.Poppet => Cone(force, spring, flowForce * Math.PI * _sine),
            _ => double.NaN,
        };
        if (double.IsNaN(free))
            free = Search(force, spring, flowForce);

        // Once the seat's bore is the narrowest, the closing force grows no more.
        return Area(free) < WidestArea ? free : (force - (flowForce * WidestArea)) / spring;
    }

    /// <summary>The first crossing of spring and cone; infinite where the bore is reached before.</summary>
    private double Cone(double force, double spring, double perLift)
    {
        var linear = spring + (perLift * Seat);
        var root = (linear * linear) - (4 * perLift * _sine * _cosine * force);
        return root > 0 ? 2 * force / (linear + Math.Sqrt(root)) : double.PositiveInfinity;
    }

    private double Search(double force, double spring, double flowForce)
    {
        // Newton's steps on a balance that rises with lift, kept within the bracket.
        var (low, high) = (0.0, force / spring);
        var lift = high;
        for (var step = 0; step < 100 && high - low > 1e-15 * high; step++)
        {
            var (area, slope) = Opening(lift);
            var over = (spring * lift) + (flowForce * area) - force;
            if (over > 0)
                high = lift;
            else
                low = lift;
            var next = lift - (over / (spring + (flowForce * slope)));
            if (next == lift)
                break;
            lift = next > low && next < high ? next : (low + high) / 2;
        }

        return lift;
    }

    private (double Area, double Slope) Opening(double lift)
    {
        var (area, slope) = Kind switch
        {
            ClosureKind.Disc => (Math.PI * Seat * lift, Math.PI * Seat),
            ClosureKind.Piston => lift < _overlap ? (0, 0) : (_size * (lift - _overlap), _size),
            ClosureKind.Poppet => lift * _sine * _cosine >= Seat / 2
                ? (WidestArea, 0)
                : (Math.PI * lift * _sine * (Seat - (lift * _sine * _cosine)), Math.PI * _sine * (Seat - (2 * lift * _sine * _cosine))),
            _ => Round(lift),
        };
        return area < WidestArea ? (area, slope) : (WidestArea, 0);
    }

    private (double Area, double Slope) Round(double lift)
    {
        var rise = _overlap + lift;
        var (edge, ball) = (Seat / 2, _size);
        var distance = Math.Sqrt((edge * edge) + (rise * rise));

        // l − R without the loss of figures near the seat.
        var gap = lift * ((2 * _overlap) + lift) / (distance + ball);
        return (Math.PI * edge * gap * (1 + (ball / distance)), Math.PI * edge * (1 + (ball * ball / (distance * distance))) * rise / distance);
    }
}
