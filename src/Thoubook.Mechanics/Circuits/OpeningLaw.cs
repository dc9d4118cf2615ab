using Thoubook.Mechanics.Valves;

namespace Thoubook.Mechanics.Circuits;

/// <summary>
/// Elements that open as their own drop rises: valves whose spring chamber is vented to where they deliver, and consumers. Each is told by how far it is open: flow and
/// drop are both functions of that, without a root, below nil while it is shut, nil to one while it opens, above one at its stop. So neither its steep nor its level part is without end.
/// </summary>
internal struct OpeningLaw
{
    private Closure _closure;
    private double _preload;
    private double _spring;
    private double _lift;
    private double _closing;
    private double _speed;
    private double _stopDrop;
    private double _stopFlow;
    private double _stopSlope;
    private double _firstSlope;
    private double _passes;
    private double _isWide;

    /// <summary>[-] share of the lifting area that is left over at the least, however hard the jet draws it shut.</summary>
    private const double LeastLeft = 1e-6;

    /// <summary>[m³/s for each Pa] that passes besides.</summary>
    public double Leak { get; private set; }

    /// <summary>[Pa] at which it begins to open.</summary>
    public double Cracks { get; private set; }

    /// <summary>[-] how far below opening it stands where nothing drives it.</summary>
    public readonly double Restful => _lift == 0 ? 0 : Cracks / _firstSlope;

    public static OpeningLaw Consumer(double flow, double fullAt) => new() { _stopFlow = flow, _stopDrop = fullAt, _isWide = 1 };

    public static OpeningLaw Valve(in SpringValve valve, double viscosity, double density)
    {
        var law = new OpeningLaw
        {
            _closure = valve.Closure,
            _preload = valve.Preload,
            _spring = valve.Spring,
            _lift = valve.Lift,
            _closing = valve.Closure.ForceByOpening(valve.Discharge),
            _speed = valve.Discharge * Math.Sqrt(2 / density),
            Leak = valve.SeatLeak / viscosity,
            Cracks = valve.Cracking,
            _passes = valve.Closure.OpensAt / valve.Lift,
            _isWide = valve.Closure.Kind == ClosureKind.Disc ? Math.Min(1, valve.Closure.Seat / 4 / valve.Lift) : 1,
        };
        law._firstSlope = law.Lifted(0).DropSlope;
        (law._stopFlow, _, law._stopDrop, law._stopSlope) = law.Lifted(1);
        return law;
    }

    /// <summary>[-] Where it goes on its way from one place to another: not past more than one of the corners at which it begins to open, passes oil, is as wide as its seat, and stops.</summary>
    public readonly double NextCorner(double from, double to) =>
        to > from
            ? from < 0 ? Math.Min(to, 0) : from < _passes ? Math.Min(to, _passes + Past) : from < _isWide ? Math.Min(to, _isWide + Past) : from <= 1 ? Math.Min(to, 1 + Past) : to
            : from > 1 ? Math.Max(to, 1) : from > _isWide ? Math.Max(to, _isWide - Past) : from > _passes && _passes > 0 ? Math.Max(to, _passes - Past) : from >= 0 ? Math.Max(to, -Past) : to;

    /// <summary>[-]</summary>
    private const double Past = 1e-9;

    /// <summary>Flow and drop where it is so far open, and how both rise with that.</summary>
    public readonly (double Flow, double FlowSlope, double Drop, double DropSlope) At(double open)
    {
        if (_lift == 0)
            return (_stopFlow * Math.Clamp(open, 0, 1), open is >= 0 and < 1 ? _stopFlow : 0, _stopDrop * open, _stopDrop);
        var state = open < 0 ? (0, 0, Cracks + (open * _firstSlope), _firstSlope) : open <= 1 ? Lifted(open) : Stopped(open);
        return Leak == 0 ? state : (state.Item1 + (Leak * state.Item3), state.Item2 + (Leak * state.Item4), state.Item3, state.Item4);
    }

    private readonly (double Flow, double FlowSlope, double Drop, double DropSlope) Stopped(double open)
    {
        var rate = _stopSlope / (2 * _stopDrop);
        var faster = 1 + ((open - 1) * rate);
        return (_stopFlow * faster, _stopFlow * rate, _stopDrop * faster * faster, 2 * _stopDrop * faster * rate);
    }

    private readonly (double Flow, double FlowSlope, double Drop, double DropSlope) Lifted(double open)
    {
        var lift = open * _lift;
        var (area, widening) = (_closure.Area(lift), _closure.AreaSlope(lift));
        var left = _closure.LiftingArea - (_closing * area);
        var least = LeastLeft * _closure.LiftingArea;
        var isHeld = left <= least;
        left = Math.Max(left, least);
        var drop = (_preload + (_spring * lift)) / left;
        var dropSlope = _lift * (_spring + (isHeld ? 0 : _closing * widening * drop)) / left;
        var root = Math.Sqrt(drop);
        return (_speed * area * root, drop > 0 ? _speed * ((widening * _lift * root) + (area * dropSlope / (2 * root))) : 0, drop, dropSlope);
    }
}
