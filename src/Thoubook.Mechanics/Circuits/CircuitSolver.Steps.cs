namespace Thoubook.Mechanics.Circuits;

public sealed partial class CircuitSolver
{
    private const int MostCuts = 20;

    /// <summary>[m³/s] No oil circuit knows less.</summary>
    private const double NilFlow = 1e-18;

    private bool Iterate(ref int steps, int mostSteps, double greatestShare)
    {
        if (_isCold)
            Array.Clear(_pressures);
        for (var i = 0; i < _pressures.Length; i++)
        {
            if (Unknown(i) < 0)
                _pressures[i] = _values[Circuit.FindPressure(i).Index];
        }

        var isFirst = _isCold;
        var stepsBefore = steps;
        _isCold = false;
        if (isFirst)
            GuessSlopes();
        else
            Evaluate();
        while (true)
        {
            if (!isFirst && IsBalanced())
                return true;
            if (steps >= mostSteps)
                return false;
            steps++;
            Assemble();
            if (!_elimination.Factorise())
                return false;
            FindStep();
            Keep();
            var share = isFirst ? 1 : ShareOf(steps - stepsBefore) * greatestShare;
            var before = Work();
            Move(share);
            Evaluate();
            if (!isFirst)
                CutBack(share, before);
            isFirst = false;
            if (!double.IsFinite(_greatestFlow + _greatestPressure))
                return false;
        }
    }

    /// <summary>[-] Valves can hand an opening round in a ring; a shorter step now and then breaks it.</summary>
    private static double ShareOf(int step) => step > 10 && step % (step > 24 ? 5 : 6) < 2 ? 0.35 : 1;

    /// <summary>For a first step from nothing: every element as a straight one through a point that it may well have.</summary>
    private void GuessSlopes()
    {
        for (var c = 0; c < _laws.Carriers.Length; c++)
            _laws.Place[c] = _laws.Usual(c, _values);
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
                _laws.Gain[c] = _laws.Carried[c] / (_laws.Place[c] - rest);
                (_laws.Place[c], _laws.Carried[c], _laws.Lost[c]) = (rest, 0, 0);
            }
        }

        _laws.Give(_pressures, _values);
        for (var y = 0; y < _laws.Yielding.Length; y++)
        {
            if (_laws.GuessedYield(y, _values) is > 0 and var g && _laws.ByFrom[y] == 0 && _laws.ByTo[y] == 0)
                (_laws.ByFrom[y], _laws.ByTo[y]) = (g, -g);
        }

        Balance();
    }

    private void Evaluate()
    {
        _laws.Lose(Math.Max(_greatestFlow, NilFlow) * 1e-12);
        _laws.Give(_pressures, _values);
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

        for (var y = 0; y < _laws.Yielding.Length; y++)
            greatest = Math.Max(greatest, Passes(Circuit.Elements[_laws.Yielding[y]], _laws.Yield[y]));
        _greatestFlow = greatest;
        _greatestPressure = 1;
        foreach (var p in _pressures)
            _greatestPressure = Math.Max(_greatestPressure, Math.Abs(p));

        double Passes(CircuitElement e, double flow)
        {
            _left[e.From] += flow;
            _left[e.To] -= flow;
            return Math.Abs(flow);
        }
    }

    private bool IsBalanced()
    {
        if (Unbalanced() > Math.Max(Balanced * _greatestFlow, Math.Min(100 * Balanced * _greatestFlow, 4e-16 * _greatestPressure * SteepestYield())))
            return false;
        var (gain, steepness) = (_laws.Gain, _laws.Steepness);
        var (rounding, least) = (Rounding * _greatestPressure, Balanced * _greatestFlow);
        for (var c = 0; c < _out.Length; c++)
        {
            var size = Math.Abs(_out[c]);
            if (size > rounding && size * gain[c] > least * steepness[c])
                return false;
        }

        return true;
    }

    /// <summary>[m³/s for each Pa] of what is told by pressures: the rounding of a pressure times this cannot be balanced away.</summary>
    private double SteepestYield()
    {
        double steepest = 0;
        for (var y = 0; y < _laws.Yielding.Length; y++)
            steepest = Math.Max(steepest, Math.Abs(_laws.ByFrom[y]) + Math.Abs(_laws.ByTo[y]) + Math.Abs(_laws.ByThird[y]));
        return steepest;
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

        for (var y = 0; y < _laws.Yielding.Length; y++)
        {
            var i = _laws.Yielding[y];
            var (from, to, third) = (_laws.ByFrom[y], _laws.ByTo[y], _laws.ByThird[y]);
            if (third == 0 && from == -to)
            {
                // A valve that its own jet draws shut would have a slope that falls: it is held level for the step.
                Conducts(i, Math.Max(0, from));
                continue;
            }

            var e = Circuit.Elements[i];
            var (a, b) = (Unknown(e.From), Unknown(e.To));
            _elimination.Single(a, a, 0, from);
            _elimination.Single(a, b, _places[i], to);
            _elimination.Single(b, a, _places[i], -from);
            _elimination.Single(b, b, 0, -to);
            if (e.Third is { } t)
            {
                _elimination.Single(a, Unknown(t), _placesByThird[2 * i], third);
                _elimination.Single(b, Unknown(t), _placesByThird[(2 * i) + 1], -third);
            }
        }

        void Conducts(int i, double g) => _elimination.Conductance(Unknown(Circuit.Elements[i].From), Unknown(Circuit.Elements[i].To), _places[i], g);
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

        _elimination.Solve(_rightHand);
        for (var u = 0; u < _sought.Length; u++)
            _pressureSteps[_sought[u]] = _rightHand[u];
        for (var c = 0; c < _ends.Length; c++)
            _placeSteps[c] = (_pressureSteps[_ends[c].From] - _pressureSteps[_ends[c].To] - _out[c]) * yields[c];
    }

    private void Keep()
    {
        _pressures.CopyTo(_pressuresBefore, 0);
        _laws.Place.CopyTo(_placesBefore, 0);
    }

    private void Move(double share)
    {
        for (var i = 0; i < _pressures.Length; i++)
            _pressures[i] = _pressuresBefore[i] + (share * _pressureSteps[i]);
        for (var c = 0; c < _laws.Straight; c++)
            _laws.Place[c] = _placesBefore[c] + (share * _placeSteps[c]);
        for (var c = _laws.Straight; c < _laws.Carriers.Length; c++)
            _laws.Place[c] = _laws.NextCorner(c, _placesBefore[c], _placesBefore[c] + (share * _placeSteps[c]));
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
    private void CutBack(double share, double before)
    {
        var after = Work();
        if (!(before < 0) || after <= 0.9 * -before)
            return;
        var (low, lowWork, high, highWork) = (0.0, before, share, after);
        var usual = UsualShare();

        // What looks at a third pressure has corners that a straight step cannot be cut back to for ever.
        var least = _laws.Yielding.Length > 0 ? 0.05 * Math.Min(1, usual) : 0;
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
