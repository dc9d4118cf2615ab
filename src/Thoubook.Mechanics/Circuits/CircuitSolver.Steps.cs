namespace Thoubook.Mechanics.Circuits;

public sealed partial class CircuitSolver
{
    private const int MostCuts = 20;

    /// <summary>[m³/s] No oil circuit knows less.</summary>
    private const double NilFlow = 1e-18;

    /// <summary>Steps from where it stands, or from nothing.</summary>
    /// <param name="steps">[-] factorisations so far.</param>
    /// <param name="plain">[-] how many steps are Newton's own before elements meet the rest.</param>
    /// <returns>Whether it balances.</returns>
    private bool Iterate(ref int steps, int plain)
    {
        if (_isCold)
            Array.Clear(_pressures);
        for (var i = 0; i < _pressures.Length; i++)
        {
            if (Unknown(i) < 0)
                _pressures[i] = _values[Circuit.FindPressure(i).Index];
        }

        var isFirst = _isCold;
        double sizeBefore = 0;
        (_isCold, _meetings) = (false, 0);
        if (isFirst)
            GuessSlopes();
        else
            Evaluate();
        while (true)
        {
            if (!isFirst && IsBalanced())
                return true;
            if (steps >= MostSteps)
                return false;
            steps++;
            Assemble();
            if (!_elimination.Factorise())
                return false;
            FindStep();
            Keep();
            var size = StepSize();
            if (plain-- > 0 || (_meetings == 0 && size < Settling * sizeBefore))
            {
                var before = Work();
                Move(1);
                Evaluate();
                if (!isFirst)
                    CutBack(before);
            }
            else
            {
                Meet();
                Evaluate();
            }

            (isFirst, sizeBefore) = (false, size);
            if (!double.IsFinite(_greatestFlow + _greatestPressure))
                return false;
        }
    }

    /// <summary>[Pa]</summary>
    private double StepSize()
    {
        double size = 0;
        foreach (var step in _pressureSteps)
            size = Math.Max(size, Math.Abs(step));
        return size;
    }

    /// <summary>For a first step from nothing: every element as a straight one through a point that it may well have.</summary>
    private void GuessSlopes()
    {
        for (var c = 0; c < _laws.Carriers.Length; c++)
            _laws.Place[c] = _laws.Usual(c, _values);
        for (var y = 0; y < _laws.Yielding; y++)
            _laws.Look[y] = CircuitLaws.LookOf(Circuit.Elements[_laws.Carriers[_laws.FirstYielding + y]], _pressures);
        _laws.Lose(0);
        for (var c = 0; c < _laws.Carriers.Length; c++)
        {
            var rest = _laws.AtRest(c);
            if (c < _laws.Straight)
            {
                _laws.Steepness[c] = _laws.Place[c] == rest ? _laws.Steepness[c] : _laws.Lost[c] / (_laws.Place[c] - rest);
                (_laws.Place[c], _laws.Carried[c], _laws.Lost[c]) = (rest, rest, 0);
            }
            else
            {
                _laws.Steepness[c] = _laws.Lost[c] / (_laws.Place[c] - rest);
                var atRest = c < _laws.FirstYielding ? 0 : _laws.Carried[c] - (_laws.Gain[c] * _laws.Place[c]);
                _laws.Gain[c] = (_laws.Carried[c] - atRest) / (_laws.Place[c] - rest);
                (_laws.Place[c], _laws.Carried[c], _laws.Lost[c]) = (rest, atRest, 0);
            }
        }

        _laws.GuessLooks();
        Balance();
    }

    private void Evaluate()
    {
        _laws.Lose(Math.Max(_greatestFlow, NilFlow) * 1e-12);
        Balance();
    }

    /// <summary>What leaves every node less what comes, and the greatest flow and pressure.</summary>
    private void Balance()
    {
        Array.Clear(_left);
        double greatest = NilFlow;
        var (carried, lost, head, ends, left, pressures, remains) = (_laws.Carried, _laws.Lost, _laws.CarrierHead, _ends, _left, _pressures, _out);
        for (var c = 0; c < ends.Length; c++)
        {
            ref readonly var end = ref ends[c];
            var flow = carried[c];
            left[end.From] += flow;
            left[end.To] -= flow;
            greatest = Math.Max(greatest, Math.Abs(flow));
            remains[c] = lost[c] - (pressures[end.From] - pressures[end.To] + head[c]);
        }

        for (var y = 0; y < _outLook.Length; y++)
            _outLook[y] = _laws.Look[y] - CircuitLaws.LookOf(Circuit.Elements[_laws.Carriers[_laws.FirstYielding + y]], pressures);
        _greatestFlow = greatest;
        _greatestPressure = 1;
        foreach (var p in _pressures)
            _greatestPressure = Math.Max(_greatestPressure, Math.Abs(p));
    }

    private bool IsBalanced()
    {
        if (Unbalanced() > Balanced * _greatestFlow)
            return false;
        var (gain, steepness) = (_laws.Gain, _laws.Steepness);
        var (rounding, least) = (Rounding * _greatestPressure, Balanced * _greatestFlow);
        for (var c = 0; c < _laws.Straight; c++)
        {
            var size = Math.Abs(_out[c]);
            if (size > rounding && size * gain[c] > least * steepness[c])
                return false;
        }

        // What has kinks is not to be judged by its slope: shut, it has none.
        for (var c = _laws.Straight; c < _laws.FirstYielding; c++)
        {
            if (Math.Abs(_out[c]) > rounding && Math.Abs(_laws.CarriedAt(c, _laws.Place[c] - (_out[c] / steepness[c])) - _laws.Carried[c]) > least)
                return false;
        }

        for (var y = 0; y < _outLook.Length; y++)
        {
            var c = _laws.FirstYielding + y;
            if ((Math.Abs(_out[c]) > rounding || Math.Abs(_outLook[y]) > rounding) && Math.Abs(_laws.PassedAt(y, _laws.Look[y] - _outLook[y], _laws.Lost[c] - _out[c]) - _laws.Carried[c]) > least)
                return false;
        }

        return true;
    }

    private double Unbalanced()
    {
        double worst = 0;
        foreach (var i in _sought)
            worst = Math.Max(worst, Math.Abs(_left[i]));
        return worst;
    }

    private int WorstNode()
    {
        var worst = 0;
        for (var i = 0; i < _left.Length; i++)
        {
            if (Unknown(i) >= 0 && (Unknown(worst) < 0 || Math.Abs(_left[i]) > Math.Abs(_left[worst])))
                worst = i;
        }

        return worst;
    }

    private void Assemble()
    {
        _elimination.Clear(1e-14 * _greatestFlow / _greatestPressure);
        for (var c = 0; c < _ends.Length; c++)
        {
            ref readonly var end = ref _ends[c];
            var yields = 1 / _laws.Steepness[c];
            _yields[c] = yields;
            _elimination.Conductance(end.UnknownFrom, end.UnknownTo, end.Pair, _laws.Gain[c] * yields);
        }

        for (var y = 0; y < _laws.Yielding; y++)
        {
            var i = _laws.Carriers[_laws.FirstYielding + y];
            var e = Circuit.Elements[i];
            var (from, to, more) = (Unknown(e.From), Unknown(e.To), _laws.ByLook[y]);
            if (e is ReducingValve)
                _elimination.Looks(from, to, to, _places[i], 0, more);
            else
                _elimination.Looks(from, to, from, 0, _places[i], more);
            if (e.Third is { } t)
                _elimination.Looks(from, to, Unknown(t), _placesByThird[2 * i], _placesByThird[(2 * i) + 1], -more);
        }
    }

    private void FindStep()
    {
        for (var u = 0; u < _sought.Length; u++)
            _rightHand[u] = -_left[_sought[u]];
        var (gain, yields) = (_laws.Gain, _yields);
        for (var c = 0; c < _ends.Length; c++)
        {
            ref readonly var end = ref _ends[c];
            var carries = gain[c] * _out[c] * yields[c];
            if (end.UnknownFrom >= 0)
                _rightHand[end.UnknownFrom] += carries;
            if (end.UnknownTo >= 0)
                _rightHand[end.UnknownTo] -= carries;
        }

        for (var y = 0; y < _outLook.Length; y++)
        {
            ref readonly var end = ref _ends[_laws.FirstYielding + y];
            var carries = _laws.ByLook[y] * _outLook[y];
            if (end.UnknownFrom >= 0)
                _rightHand[end.UnknownFrom] += carries;
            if (end.UnknownTo >= 0)
                _rightHand[end.UnknownTo] -= carries;
        }

        _elimination.Solve(_rightHand);
        for (var u = 0; u < _sought.Length; u++)
            _pressureSteps[_sought[u]] = _rightHand[u];
        for (var c = 0; c < _ends.Length; c++)
            _placeSteps[c] = (_pressureSteps[_ends[c].From] - _pressureSteps[_ends[c].To] - _out[c]) * yields[c];
        for (var y = 0; y < _outLook.Length; y++)
            _lookSteps[y] = CircuitLaws.LookOf(Circuit.Elements[_laws.Carriers[_laws.FirstYielding + y]], _pressureSteps) - _outLook[y];
    }

    private void Keep()
    {
        _pressures.CopyTo(_pressuresBefore, 0);
        _laws.Place.AsSpan(0, _placesBefore.Length).CopyTo(_placesBefore);
        _laws.Look.CopyTo(_looksBefore, 0);
    }

    private void Move(double share)
    {
        for (var i = 0; i < _pressures.Length; i++)
            _pressures[i] = _pressuresBefore[i] + (share * _pressureSteps[i]);
        for (var c = 0; c < _laws.Straight; c++)
            _laws.Place[c] = _placesBefore[c] + (share * _placeSteps[c]);
        for (var c = _laws.Straight; c < _laws.FirstYielding; c++)
            _laws.Place[c] = _laws.NextCorner(c, _placesBefore[c], _placesBefore[c] + (share * _placeSteps[c]));
        for (var c = _laws.FirstYielding; c < _laws.Carriers.Length; c++)
            _laws.Place[c] = _placesBefore[c] + (share * _placeSteps[c]);
        for (var y = 0; y < _laws.Yielding; y++)
            _laws.Look[y] = _looksBefore[y] + (share * _lookSteps[y]);
    }

    /// <summary>What is left over, along the step: below nil while the step still helps.</summary>
    private double Work()
    {
        double work = 0;
        for (var i = 0; i < _left.Length; i++)
            work += _left[i] * _pressureSteps[i];
        for (var c = 0; c < _out.Length; c++)
            work += _out[c] * _laws.Gain[c] * _placeSteps[c];
        return work;
    }

    /// <summary>[-] share of the step that is as great as the pressures that it begins at, or a bar.</summary>
    private double UsualShare()
    {
        var (greatest, step) = (1e5, 0.0);
        for (var i = 0; i < _pressures.Length; i++)
            (greatest, step) = (Math.Max(greatest, Math.Abs(_pressuresBefore[i])), Math.Max(step, Math.Abs(_pressureSteps[i])));
        return step > 100 * greatest ? greatest / step : 1;
    }

    /// <summary>Cuts a step that went too far back to where its work is about nil.</summary>
    private void CutBack(double before)
    {
        var after = Work();
        if (!(before < 0) || after <= 0.9 * -before)
            return;
        var (low, lowWork, high, highWork) = (0.0, before, 1.0, after);
        var usual = UsualShare();

        // What looks at a third pressure has corners that a straight step cannot be cut back to for ever.
        var least = _laws.Yielding > 0 ? 0.05 * Math.Min(1, usual) : 0;
        for (var cut = 0; cut < MostCuts && high > least; cut++)
        {
            var middle = double.IsFinite(highWork) ? low + ((high - low) * lowWork / (lowWork - highWork)) : high / 8;
            middle = Math.Clamp(middle, low + (0.02 * (high - low)), high - (0.02 * (high - low)));

            // Where nothing answered, the step has no size of its own: it is halved in its order of magnitude.
            if (high > 10 * Math.Max(low, usual))
                middle = Math.Sqrt(Math.Max(low, usual) * high);
            Move(middle);
            Evaluate();
            var work = Work();
            if (Math.Abs(work) <= 0.5 * -before)
                return;
            if (work < 0)
                (low, lowWork, highWork) = (middle, work, highWork / 2);
            else
                (high, highWork, lowWork) = (middle, double.IsNaN(work) ? double.PositiveInfinity : work, lowWork / 2);
        }
    }
}
