namespace Thoubook.Mechanics.Circuits;

public sealed partial class CircuitSolver
{
    /// <summary>[-] Meetings before every third goes half way.</summary>
    private const int FreeMeetings = 3;

    /// <summary>[-] within which Newton's step is taken as it is.</summary>
    private const double Near = 1e-3;

    /// <summary>[-] how far a crossing is looked for, in sizes of what an element sees.</summary>
    private const double Farthest = 1e4;

    private int _meetings;

    /// <summary>
    /// Where a step of Newton's would set an element far off, a straight line has stood for its law too far. All else being straight, the rest of the net answers an element
    /// along one line of flow and drop; the element goes to where its own law crosses that, so that one element's kinks and curves are never stepped over. Every third time
    /// all go half way, so that several that answer each other do not swing for ever.
    /// </summary>
    private void Meet()
    {
        _elimination.Answers();
        for (var i = 0; i < _pressures.Length; i++)
            _pressures[i] = _pressuresBefore[i] + _pressureSteps[i];
        for (var c = 0; c < _ends.Length; c++)
        {
            ref readonly var end = ref _ends[c];
            var (ff, ft, tf, tt) = AnswersOf(end);
            _answers[c] = Math.Max(0, ff + tt - ft - tf);
            _weights[c] = Math.Clamp(1 - (_laws.Gain[c] * _yields[c] * _answers[c]), 1e-12, 1);
            _drops[c] = _laws.Lost[c] + (_laws.Steepness[c] * _placeSteps[c]);
            _flows[c] = _laws.Carried[c] + (_laws.Gain[c] * _placeSteps[c]);
        }

        var isNear = true;
        for (var y = 0; y < _laws.Yielding; y++)
            isNear &= MeetLooking(y);
        _laws.Meet(_drops, _flows, _weights, _answers);
        for (var c = 0; c < _laws.FirstYielding; c++)
        {
            var newton = _placesBefore[c] + _placeSteps[c];
            if (Math.Abs(newton - _laws.Place[c]) <= Near * Math.Abs(newton))
                _laws.Place[c] = newton;
            else
                isNear = false;
        }

        _meetings++;
        if (!isNear && _meetings > FreeMeetings && _meetings % 3 == 0)
            GoHalfWay();
    }

    /// <summary>What looks at another pressure: its look, its drop and its flow all answer to what more flows.</summary>
    private bool MeetLooking(int y)
    {
        var c = _laws.FirstYielding + y;
        var i = _laws.Carriers[c];
        var e = Circuit.Elements[i];
        ref readonly var end = ref _ends[c];
        var (ff, ft, tf, tt) = AnswersOf(end);
        var look = e is ReducingValve ? tf - tt : ff - ft;
        if (e.Third is { } third)
            look -= _elimination.Answer(Unknown(third), end.UnknownFrom, _placesByThird[2 * i]) - _elimination.Answer(Unknown(third), end.UnknownTo, _placesByThird[(2 * i) + 1]);
        var drop = ff + tt - ft - tf;
        var weight = 1 - (_laws.Gain[c] * _yields[c] * drop) - (_laws.ByLook[y] * look);
        weight = Math.CopySign(Math.Max(1e-12, Math.Abs(weight)), weight);
        var (newton, newtonLook) = (_placesBefore[c] + _placeSteps[c], _looksBefore[y] + _lookSteps[y]);
        var most = Farthest * (Math.Abs(_lookSteps[y]) + Math.Abs(_drops[c]) + Math.Abs(_laws.Lost[c])) / Math.Max(Math.Abs(look), Math.Abs(drop));
        _laws.MeetLooking(y, newtonLook, _drops[c], _flows[c] + (_laws.ByLook[y] * _lookSteps[y]), (look, drop, weight), most);
        if (Math.Abs(newton - _laws.Place[c]) > Near * Math.Abs(newton) || Math.Abs(newtonLook - _laws.Look[y]) > Near * Math.Abs(newtonLook))
            return false;
        (_laws.Place[c], _laws.Look[y]) = (newton, newtonLook);
        return true;
    }

    private void GoHalfWay()
    {
        for (var i = 0; i < _pressures.Length; i++)
            _pressures[i] = (_pressuresBefore[i] + _pressures[i]) / 2;
        for (var c = 0; c < _ends.Length; c++)
            _laws.Place[c] = (_placesBefore[c] + _laws.Place[c]) / 2;
        for (var y = 0; y < _laws.Yielding; y++)
            _laws.Look[y] = (_looksBefore[y] + _laws.Look[y]) / 2;
    }

    /// <summary>[Pa for each m³/s] How both ends answer to what is put in at both.</summary>
    private (double FromFrom, double FromTo, double ToFrom, double ToTo) AnswersOf(in Ends end) => (
        _elimination.Answer(end.UnknownFrom, end.UnknownFrom, 0), _elimination.Answer(end.UnknownFrom, end.UnknownTo, end.Pair),
        _elimination.Answer(end.UnknownTo, end.UnknownFrom, end.Pair), _elimination.Answer(end.UnknownTo, end.UnknownTo, 0));
}
