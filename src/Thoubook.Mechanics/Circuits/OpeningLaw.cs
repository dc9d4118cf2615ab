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
    private double _turnDrop;
    private double _rate;
    private double _firstSlope;
    private double _passes;
    private double _isWide;
    private double _turn;
    private double _stop;

    /// <summary>[-] share of the lifting area that the jet takes up from where a valve is told by the root of its drop.</summary>
    private const double Taken = 0.5;

    /// <summary>[m³/s for each Pa] that passes besides.</summary>
    public double Leak { get; private set; }

    /// <summary>[Pa] at which it begins to open.</summary>
    public double Cracks { get; private set; }

    /// <summary>[-] how far below opening it stands where nothing drives it.</summary>
    public readonly double Restful => _lift == 0 ? 0 : Cracks / _firstSlope;

    public static OpeningLaw Consumer(double flow, double fullAt) => new() { _stopFlow = flow, _stopDrop = fullAt, _isWide = 1, _turn = 1, _stop = 1 };

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
        law._turn = law.TurnsAt();
        (_, _, law._turnDrop, var slope) = law.Lifted(law._turn);
        law._rate = slope / (2 * law._turnDrop);
        var left = law._closure.LiftingArea - (law._closing * law._closure.Area(valve.Lift));
        law._stop = law._turn == 1 ? 1
            : left > 0 ? law._turn + ((Math.Sqrt((valve.Preload + (valve.Spring * valve.Lift)) / left / law._turnDrop) - 1) / law._rate)
            : double.PositiveInfinity;
        return law;
    }

    /// <summary>[-] Where the jet takes up so much of the force that the lift no longer tells the drop well; the stop, where it never does.</summary>
    private readonly double TurnsAt()
    {
        var taken = Taken * _closure.LiftingArea;
        if (_closing * _closure.Area(_lift) <= taken)
            return 1;

        // An opening grows ever more slowly with lift, so that these steps come from one side.
        var lift = _closure.OpensAt;
        for (var i = 0; i < 50; i++)
        {
            var more = (taken - (_closing * _closure.Area(lift))) / (_closing * _closure.AreaSlope(lift));
            lift += more;
            if (!(more > 1e-9 * lift))
                break;
        }

        return Math.Min(1, lift / _lift);
    }

    /// <summary>[-] Where it goes on its way from one place to another: not past more than one of the corners at which it begins to open, passes oil, is as wide as its seat, and stops.</summary>
    public readonly double NextCorner(double from, double to) =>
        to > from
            ? from < 0 ? Math.Min(to, 0) : from < _passes ? Math.Min(to, _passes + Past) : from < _isWide ? Math.Min(to, _isWide + Past) : from <= _stop ? Math.Min(to, _stop + Past) : to
            : from > _stop ? Math.Max(to, _stop) : from > _isWide ? Math.Max(to, _isWide - Past) : from > _passes && _passes > 0 ? Math.Max(to, _passes - Past) : from >= 0 ? Math.Max(to, -Past) : to;

    /// <summary>[-]</summary>
    private const double Past = 1e-9;

    /// <summary>[-] Where it stands if its drop falls short of, and its flow goes past, what they would be alone in a given proportion.</summary>
    /// <param name="from">[-] where to begin.</param>
    /// <param name="drop">[Pa]</param>
    /// <param name="flow">[m³/s]</param>
    /// <param name="weight">[-] of what the drop is out by.</param>
    /// <param name="answer">[Pa for each m³/s] of what the flow is out by.</param>
    public readonly double Meeting(double from, double drop, double flow, double weight, double answer)
    {
        var (low, high) = (double.NegativeInfinity, double.PositiveInfinity);
        Span<double> corners = [0, _passes, _isWide, _turn, _stop];
        foreach (var corner in corners)
        {
            if (corner == double.PositiveInfinity)
                continue;
            if (Over(corner, drop, flow, weight, answer, out _) > 0)
                high = Math.Min(high, corner);
            else
                low = Math.Max(low, corner);
        }

        var open = from > low && from < high ? from : double.IsFinite(low + high) ? (low + high) / 2 : double.IsFinite(low) ? low + 1 : high - 1;
        for (var i = 0; i < 60; i++)
        {
            var over = Over(open, drop, flow, weight, answer, out var slope);
            if (over > 0)
                high = Math.Min(high, open);
            else
                low = Math.Max(low, open);
            if (over == 0)
                return open;
            var next = open - (over / slope);
            if (!(next >= low && next <= high))
                next = double.IsFinite(low + high) ? (low + high) / 2 : Math.Max(low, Math.Min(next, high));
            if (Math.Abs(next - open) <= 1e-9 * Math.Abs(next))
                return next;
            open = next;
        }

        return open;
    }

    private readonly double Over(double at, double drop, double flow, double weight, double answer, out double slope)
    {
        var (f, fs, d, ds) = At(at);
        slope = (weight * ds) + (answer * fs);
        return (weight * (d - drop)) + (answer * (f - flow));
    }

    /// <summary>Flow and drop where it is so far open, and how both rise with that.</summary>
    public readonly (double Flow, double FlowSlope, double Drop, double DropSlope) At(double open)
    {
        if (_lift == 0)
            return (_stopFlow * Math.Clamp(open, 0, 1), open is >= 0 and < 1 ? _stopFlow : 0, _stopDrop * open, _stopDrop);
        var state = open < 0 ? (0, 0, Cracks + (open * _firstSlope), _firstSlope) : open <= _turn ? Lifted(open) : Driven(open);
        return Leak == 0 ? state : (state.Item1 + (Leak * state.Item3), state.Item2 + (Leak * state.Item4), state.Item3, state.Item4);
    }

    /// <summary>At its stop, or where the jet draws it shut nearly as hard as the pressure lifts it: the place is the root of the drop, and the lift follows from the forces.</summary>
    private readonly (double Flow, double FlowSlope, double Drop, double DropSlope) Driven(double open)
    {
        var faster = 1 + ((open - _turn) * _rate);
        var drop = _turnDrop * faster * faster;
        var dropSlope = 2 * _turnDrop * faster * _rate;
        var root = Math.Sqrt(drop);
        if (open >= _stop)
        {
            var flow = _speed * _closure.Area(_lift) * root;
            return (flow, flow * _rate / faster, drop, dropSlope);
        }

        var lift = Math.Min(_lift, _closure.Balance((drop * _closure.LiftingArea) - _preload, _spring, _closing * drop));
        var (area, widening) = (_closure.Area(lift), _closure.AreaSlope(lift));
        var lifting = (_preload + (_spring * lift)) / drop / (_spring + (_closing * widening * drop));
        return (_speed * area * root, (_speed * area * root * _rate / faster) + (_speed * root * widening * lifting * dropSlope), drop, dropSlope);
    }

    private readonly (double Flow, double FlowSlope, double Drop, double DropSlope) Lifted(double open)
    {
        var lift = open * _lift;
        var (area, widening) = (_closure.Area(lift), _closure.AreaSlope(lift));
        var left = _closure.LiftingArea - (_closing * area);
        var drop = (_preload + (_spring * lift)) / left;
        var dropSlope = _lift * (_spring + (_closing * widening * drop)) / left;
        var root = Math.Sqrt(drop);
        return (_speed * area * root, drop > 0 ? _speed * ((widening * _lift * root) + (area * dropSlope / (2 * root))) : 0, drop, dropSlope);
    }
}
