using Thoubook.Mechanics.Valves;

namespace Thoubook.Mechanics.Circuits;

/// <summary>
/// Elements whose flow hangs on a pressure besides their own drop: valves vented elsewhere, reducing valves, pumps that may starve. Each is told by two numbers: the pressure
/// that it looks at, and its place, from which its drop follows without a root: for valves the signed root of the drop, for pumps the drop itself.
/// </summary>
internal struct YieldingLaw
{
    private bool _isPump;
    private bool _shutsAsItRises;
    private Closure _closure;
    private double _preload;
    private double _spring;
    private double _lift;
    private double _closing;
    private double _speed;
    private double _seat;
    private double _widest;
    private double _moved;
    private double _empty;
    private double _full;

    /// <summary>[m³/s for each Pa] that passes besides.</summary>
    public double Leak { get; private set; }

    public static YieldingLaw Pump(double moved, double leak, double empty, double full) => new() { _isPump = true, _moved = moved, Leak = leak, _empty = empty, _full = full };

    public static YieldingLaw Valve(in SpringValve valve, double viscosity, double density) => new()
    {
        _closure = valve.Closure,
        _preload = valve.Preload,
        _spring = valve.Spring,
        _lift = valve.Lift,
        _closing = valve.Closure.ForceByOpening(valve.Discharge),
        _speed = valve.Discharge * Math.Sqrt(2 / density),
        _widest = valve.Closure.Area(valve.Lift),
        Leak = valve.SeatLeak / viscosity,
    };

    public static YieldingLaw Reducing(in Reducer reducer, double density) => new()
    {
        _shutsAsItRises = true,
        _preload = reducer.Setting,
        _spring = Math.PI * reducer.Piston * reducer.Piston / 4 / reducer.Spring,
        _lift = reducer.Lift,
        _seat = reducer.Seat,
        _speed = reducer.Discharge * Math.Sqrt(2 / density),
        _widest = Math.PI * reducer.Seat * Math.Min(reducer.Lift, reducer.Seat / 4),
    };

    /// <summary>[m³/s for each Pa] How it may well answer to what it looks at where it stands level.</summary>
    public readonly double GuessedByLook(double byLook) => _isPump ? _moved / (_full - _empty) : byLook;

    /// <summary>[any] The place at a drop.</summary>
    public readonly double PlaceAt(double drop) => _isPump ? drop : Math.CopySign(Math.Sqrt(Math.Abs(drop)), drop);

    /// <summary>Flow and drop where it stands, and how they rise with its place and with the pressure that it looks at.</summary>
    /// <param name="look">[Pa] that it looks at.</param>
    /// <param name="place">[any] where it stands.</param>
    /// <param name="least">[m³/s] Below it the slope of the drop is held.</param>
    public readonly (double Flow, double Gain, double Drop, double Steepness, double ByLook) At(double look, double place, double least)
    {
        if (_isPump)
        {
            var share = (look - _empty) / (_full - _empty);
            return (_moved * Math.Clamp(share, 0, 1) + (Leak * place), Leak, place, 1, share is > 0 and < 1 ? _moved / (_full - _empty) : 0);
        }

        var size = Math.Abs(place);
        var drop = size * place;
        var steepness = 2 * Math.Max(size, least / (_speed * _widest));
        var (area, byDrop, byLook) = _shutsAsItRises ? Reduced(look) : Lifted(look, size * size);
        return ((_speed * area * place) + (Leak * drop), (_speed * (area + (byDrop * size * size * 2))) + (Leak * steepness), drop, steepness, _speed * byLook * place);
    }

    private readonly (double Area, double ByDrop, double ByLook) Reduced(double look)
    {
        var opening = Math.Clamp((_preload - look) * _spring, 0, _lift);
        var area = Math.PI * _seat * opening;
        return area >= _widest ? (_widest, 0, 0) : (area, 0, opening > 0 ? -Math.PI * _seat * _spring : 0);
    }

    private readonly (double Area, double ByDrop, double ByLook) Lifted(double look, double drop)
    {
        var force = (look * _closure.LiftingArea) - _preload;
        if (force <= 0)
            return default;
        var free = _closure.Balance(force, _spring, _closing * drop);
        if (free >= _lift)
            return (_widest, 0, 0);
        var (area, slope) = (_closure.Area(free), _closure.AreaSlope(free));
        var opens = slope / (_spring + (_closing * drop * slope));
        return (area, -opens * _closing * area, opens * _closure.LiftingArea);
    }

    /// <summary>Where its law meets the line along which the rest of the net answers it.</summary>
    /// <param name="look">[Pa] that it looks at where nothing differs from the step.</param>
    /// <param name="drop">[Pa] the same of the drop.</param>
    /// <param name="flow">[m³/s] the same of the flow.</param>
    /// <param name="answers">[Pa for each m³/s] by which look and drop fall, and [-] the share that flows, for what more is driven through it.</param>
    /// <param name="most">[m³/s] that may be driven more either way.</param>
    public readonly (double Look, double Place) Meeting(double look, double drop, double flow, (double Look, double Drop, double Flow) answers, double most)
    {
        var (at, over) = (0.0, Over(0, look, drop, flow, answers));
        if (over == 0)
            return (look, PlaceAt(drop));
        // The nearest crossing on either side.
        var (far, farOver) = (0.0, over);
        var (less, more) = ((Place: 0.0, Over: over), (Place: 0.0, Over: over));
        for (var (reach, i) = (most * 1e-6, 0); i < 11 && farOver * over > 0; i++, reach *= 4)
        {
            var (down, up) = (Over(-reach, look, drop, flow, answers), Over(reach, look, drop, flow, answers));
            if (up * over <= 0)
                (at, over, far, farOver) = (more.Place, more.Over, reach, up);
            else if (down * over <= 0)
                (at, over, far, farOver) = (less.Place, less.Over, -reach, down);
            (less, more) = ((-reach, down), (reach, up));
        }

        if (farOver * over > 0)
            return (look, PlaceAt(drop));
        var side = 0;
        for (var i = 0; i < 100 && farOver != 0 && Math.Abs(far - at) > 1e-12 * Math.Abs(far); i++)
        {
            var middle = i % 3 == 2 ? (at + far) / 2 : at + ((far - at) * over / (over - farOver));
            var middleOver = Over(middle, look, drop, flow, answers);
            if (middleOver * farOver <= 0)
            {
                (at, over, far, farOver) = (far, farOver, middle, middleOver);
                side = 0;
            }
            else
            {
                (far, farOver) = (middle, middleOver);
                if (++side > 0)
                    over /= 2;
            }
        }

        return (look - (answers.Look * far), PlaceAt(drop - (answers.Drop * far)));
    }

    private readonly double Over(double more, double look, double drop, double flow, (double Look, double Drop, double Flow) answers) =>
        At(look - (answers.Look * more), PlaceAt(drop - (answers.Drop * more)), 0).Flow - flow - (answers.Flow * more);
}
