using System.Globalization;
using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Circuits;

/// <summary>Solves one circuit again and again: other operating points, other values of its parameters. Not for two threads at once.</summary>
public sealed class CircuitSolver
{
    /// <summary>[-] what may be left unbalanced at a node, as a share of what flows through the circuit.</summary>
    private const double Balanced = 1e-12;

    private const int MostSteps = 200;

    private readonly double[] _values;
    private readonly double[] _pressures;
    private readonly double[] _flows;
    private readonly double[] _byFrom;
    private readonly double[] _byTo;
    private readonly double[] _byThird;
    private readonly double[] _residual;
    private readonly double[] _trial;
    private readonly double[] _step;
    private readonly double[] _matrix;
    private readonly int[] _pivots;
    private OperatingPoint _at;

    /// <summary>A solver of a circuit, its parameters as given.</summary>
    /// <param name="circuit">The circuit.</param>
    public CircuitSolver(Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        Circuit = circuit;
        var n = circuit.Unknowns;
        _values = [.. circuit.Values];
        _pressures = new double[circuit.NodeCount];
        (_flows, _byFrom, _byTo, _byThird) = (new double[circuit.ElementCount], new double[circuit.ElementCount], new double[circuit.ElementCount], new double[circuit.ElementCount]);
        (_residual, _trial, _step, _matrix, _pivots) = (new double[n], new double[circuit.NodeCount], new double[n], new double[n * n], new int[n]);
    }

    /// <summary>What is solved.</summary>
    public Circuit Circuit { get; }

    /// <summary>How the last solution came about.</summary>
    public SolveReport Report { get; private set; }

    /// <summary>A parameter as it stands.</summary>
    /// <param name="parameter">Which.</param>
    /// <returns>[any] its value.</returns>
    public double this[ParameterId parameter]
    {
        get => _values[parameter.Index];
        set => _values[parameter.Index] = Circuit.Allows(parameter, value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, $"Allowed: {Circuit.Allowed(parameter)}.");
    }

    /// <summary>Lets the next solution begin at these pressures.</summary>
    /// <param name="pressures">[Pa] gauge, of every node; those of reservoirs are not looked at.</param>
    public void StartFrom(ReadOnlySpan<double> pressures) => pressures.CopyTo(_pressures);

    /// <summary>Solves from the pressures of the last solution.</summary>
    /// <param name="at">What the circuit runs at.</param>
    /// <returns>How it came about; where it converged, pressures and flows can be read.</returns>
    /// <remarks>
    /// Model: the flows at every node add up to nothing; Newton steps on that, damped so that what is left falls, with the exact slopes of the laws. Source: none, a plain method (common practice). Check: CircuitSolverTests.
    /// </remarks>
    public SolveReport Solve(in OperatingPoint at)
    {
        Guard.ZeroOrMore(at.Speed, "rad/s");
        Guard.AboveZero(at.Viscosity, "Pa s");
        Guard.AboveZero(at.Density, "kg/m³");
        _at = at;
        for (var i = 0; i < _pressures.Length; i++)
        {
            if (Circuit.Unknown[i] < 0)
                _pressures[i] = _values[Circuit.FindPressure(i).Index];
        }

        if (!Iterate())
        {
            for (var i = 0; i < _pressures.Length; i++)
            {
                if (Circuit.Unknown[i] >= 0)
                    _pressures[i] = 0;
            }

            Iterate();
        }

        return Report;
    }

    /// <summary>Pressure at a node.</summary>
    /// <param name="node">[-] its place.</param>
    /// <returns>[Pa] gauge.</returns>
    public double Pressure(int node) => _pressures[node];

    /// <summary>Flow through an element.</summary>
    /// <param name="element">[-] its place.</param>
    /// <returns>[m³/s] from its first node to its second.</returns>
    public double Flow(int element) => _flows[element];

    /// <summary>How far a valve is open.</summary>
    /// <param name="element">[-] its place.</param>
    /// <returns>[m] 0 for what is no valve.</returns>
    public double Lift(int element) => Circuit.Elements[element] is { Blanked: false } e ? ElementFlow.Lift(e, ValuesOf(element), _at, _pressures[e.From], _pressures[e.To], Third(e), Head(e)) : 0;

    /// <summary>Share of its spaces that a pump fills.</summary>
    /// <param name="element">[-] its place.</param>
    /// <returns>[-] 1 for what is no pump.</returns>
    public double Filling(int element) => Circuit.Elements[element] is Pump pump ? ElementFlow.Filling(ValuesOf(element), _at, _pressures[pump.From]).Share : 1;

    /// <summary>What the solution is to be read with.</summary>
    /// <returns>Everything that does not go as its laws suppose.</returns>
    public IReadOnlyList<CircuitCaution> Cautions()
    {
        var cautions = new List<CircuitCaution>();
        for (var i = 0; i < Circuit.ElementCount; i++)
        {
            var element = Circuit.Elements[i];
            if (element.Blanked)
                continue;
            var absolute = _pressures[element.From] + _at.Atmosphere;
            var pascals = string.Create(CultureInfo.InvariantCulture, $"{absolute:F0} Pa absolute");
            if (element is Pump { InletLimit: null } && absolute < 0)
                cautions.Add(new(CircuitCautionKind.SuctionBelowVacuum, element.Name, $"{element.Name} would draw its inlet down to {pascals}, below nothing at all: no pump does. Give it an inlet limit."));
            else if (element is Pump && Filling(i) < 1)
                cautions.Add(new(CircuitCautionKind.PumpStarved, element.Name, string.Create(CultureInfo.InvariantCulture, $"{element.Name} fills only {Filling(i) * 100:F0} in 100: its inlet is at {pascals}.")));
            else if (element is Pipe { ToRadius: var far, FromRadius: var near } && (far > 0 || near > 0) && absolute < _at.Density * Square(_at.Speed * _values[Circuit.FirstParameter(i) + 7] * near) / 2)
                cautions.Add(new(CircuitCautionKind.ColumnBroken, element.Name, $"{element.Name}: at {pascals} the oil does not reach the middle of the shaft at this speed; the column parts."));
            else if (element is Consumer { Flow: > 0 } && _flows[i] < _values[Circuit.FirstParameter(i)] * (1 - 1e-9))
                cautions.Add(new(CircuitCautionKind.ConsumerShort, element.Name, $"{element.Name} does not get all that it takes."));
        }

        return cautions;
    }

    /// <summary>How the pressure at a node changes with every parameter, by one adjoint solution.</summary>
    /// <param name="node">[-] its place.</param>
    /// <param name="slopes">[any] filled in: Pa for one SI unit of each parameter, in the order of <see cref="ParameterId.Index"/>.</param>
    /// <remarks>Model: λ with Jᵀ λ = e_node, then −λ · ∂R/∂θ for each parameter, the law's own slope taken by central differences at the pressures found. Source: none, the adjoint of Newton's matrix (common practice). Check: CircuitSolverTests.</remarks>
    public void Sensitivities(int node, Span<double> slopes)
    {
        slopes.Clear();
        if (Circuit.Unknown[node] < 0)
            return;
        Evaluate(_pressures);
        Assemble(transposed: true);
        Array.Clear(_step);
        _step[Circuit.Unknown[node]] = 1;
        if (!Factorise(0))
            return;
        Substitute(_step);
        Span<double> v = stackalloc double[16];
        for (var i = 0; i < Circuit.ElementCount; i++)
        {
            var element = Circuit.Elements[i];
            if (element.Blanked)
                continue;

            // A flow from → to takes from the first node's balance and gives to the second's.
            var weight = Adjoint(element.To) - Adjoint(element.From);
            var (first, count) = (Circuit.FirstParameter(i), element.Rules.Length);
            for (var k = 0; k < count; k++)
            {
                var value = _values[first + k];
                if (double.IsNaN(value))
                    continue;
                var h = Math.Abs(value) * 1e-6;
                if (h == 0)
                    h = 1e-9;
                slopes[first + k] = weight * (FlowWith(i, k, value + h, v) - FlowWith(i, k, value - h, v)) / (2 * h);
            }
        }
    }

    private double FlowWith(int i, int k, double value, Span<double> v)
    {
        var element = Circuit.Elements[i];
        ValuesOf(i).CopyTo(v);
        v[k] = value;
        return ElementFlow.Of(element, v, _at, _pressures[element.From], _pressures[element.To], Third(element), Head(element)).Flow;
    }

    private double Adjoint(int node) => Circuit.Unknown[node] is >= 0 and var at ? _step[at] : 0;

    private static double Square(double x) => x * x;

    private bool Iterate()
    {
        var left = Evaluate(_pressures);
        var steps = 0;
        var damping = 0.0;
        while (steps < MostSteps)
        {
            if (left <= Balanced)
                break;
            steps++;
            Assemble(transposed: false);
            _residual.CopyTo(_step, 0);
            if (!Factorise(damping))
            {
                damping = Math.Max(damping * 10, 1e-8);
                continue;
            }

            Substitute(_step);
            double share = 1, best = double.PositiveInfinity;
            for (var halving = 0; halving < 30; halving++, share /= 2)
            {
                for (var i = 0; i < _pressures.Length; i++)
                    _trial[i] = _pressures[i] + (Circuit.Unknown[i] is >= 0 and var u ? share * _step[u] : 0);
                best = Evaluate(_trial);
                if (best < left * (1 - (1e-4 * share)))
                    break;
            }

            if (best < left)
            {
                _trial.CopyTo(_pressures, 0);
                left = best;
                damping = damping < 1e-10 ? 0 : damping / 10;
                continue;
            }

            Evaluate(_pressures);
            if (left <= 1e-10)
                break;
            damping = Math.Max(damping * 10, 1e-8);
            if (damping > 1e6)
                break;
        }

        Evaluate(_pressures);
        var good = left <= 1e-10;
        Report = new(good ? SolveStatus.Converged : SolveStatus.OutOfSteps, steps, left, Balanced, good ? "" : "The circuit did not balance; look for an element whose sizes are out of all proportion to the rest.");
        return good;
    }

    /// <summary>Flows and slopes at these pressures, and what is left unbalanced as a share of what flows.</summary>
    private double Evaluate(double[] pressures)
    {
        Array.Clear(_residual);
        double greatest = 0;
        for (var i = 0; i < Circuit.ElementCount; i++)
        {
            var e = Circuit.Elements[i];
            if (e.Blanked)
                continue;
            var f = ElementFlow.Of(e, ValuesOf(i), _at, pressures[e.From], pressures[e.To], e.Third is { } third ? pressures[third] : 0, Head(e));
            (_flows[i], _byFrom[i], _byTo[i], _byThird[i]) = (f.Flow, f.ByFrom, f.ByTo, f.ByThird);
            greatest = Math.Max(greatest, Math.Abs(f.Flow));
            if (Circuit.Unknown[e.From] is >= 0 and var from)
                _residual[from] -= f.Flow;
            if (Circuit.Unknown[e.To] is >= 0 and var to)
                _residual[to] += f.Flow;
        }

        double worst = 0;
        foreach (var r in _residual)
            worst = Math.Max(worst, Math.Abs(r));
        return greatest > 0 ? worst / greatest : 0;
    }

    /// <summary>The slope of what leaves each node: row node, column the pressure that it looks at.</summary>
    private void Assemble(bool transposed)
    {
        Array.Clear(_matrix);
        for (var i = 0; i < Circuit.ElementCount; i++)
        {
            var e = Circuit.Elements[i];
            if (e.Blanked)
                continue;
            var (from, to) = (Circuit.Unknown[e.From], Circuit.Unknown[e.To]);
            Add(from, from, _byFrom[i]);
            Add(from, to, _byTo[i]);
            Add(to, from, -_byFrom[i]);
            Add(to, to, -_byTo[i]);
            if (e.Third is { } t)
            {
                Add(from, Circuit.Unknown[t], _byThird[i]);
                Add(to, Circuit.Unknown[t], -_byThird[i]);
            }
        }

        void Add(int row, int column, double value)
        {
            if (row < 0 || column < 0)
                return;
            _matrix[transposed ? (column * _step.Length) + row : (row * _step.Length) + column] += value;
        }
    }

    /// <summary>Triangles of the matrix with row exchanges; false where it has none.</summary>
    private bool Factorise(double damping)
    {
        var n = _step.Length;
        double scale = 0;
        for (var i = 0; i < n; i++)
            scale = Math.Max(scale, Math.Abs(_matrix[(i * n) + i]));
        for (var i = 0; i < n; i++)
            _matrix[(i * n) + i] += (Math.Abs(_matrix[(i * n) + i]) * damping) + (scale * 1e-18);
        for (var k = 0; k < n; k++)
        {
            var pivot = k;
            for (var i = k + 1; i < n; i++)
            {
                if (Math.Abs(_matrix[(i * n) + k]) > Math.Abs(_matrix[(pivot * n) + k]))
                    pivot = i;
            }

            _pivots[k] = pivot;
            if (!(Math.Abs(_matrix[(pivot * n) + k]) > 0))
                return false;
            if (pivot != k)
            {
                for (var j = 0; j < n; j++)
                    (_matrix[(k * n) + j], _matrix[(pivot * n) + j]) = (_matrix[(pivot * n) + j], _matrix[(k * n) + j]);
            }

            for (var i = k + 1; i < n; i++)
            {
                var factor = _matrix[(i * n) + k] /= _matrix[(k * n) + k];
                if (factor == 0)
                    continue;
                for (var j = k + 1; j < n; j++)
                    _matrix[(i * n) + j] -= factor * _matrix[(k * n) + j];
            }
        }

        return true;
    }

    private void Substitute(double[] x)
    {
        var n = x.Length;
        for (var k = 0; k < n; k++)
            (x[k], x[_pivots[k]]) = (x[_pivots[k]], x[k]);
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < i; j++)
                x[i] -= _matrix[(i * n) + j] * x[j];
        }

        for (var i = n - 1; i >= 0; i--)
        {
            for (var j = i + 1; j < n; j++)
                x[i] -= _matrix[(i * n) + j] * x[j];
            x[i] /= _matrix[(i * n) + i];
        }
    }

    private ReadOnlySpan<double> ValuesOf(int element) => _values.AsSpan(Circuit.FirstParameter(element), Circuit.Elements[element].Rules.Length);

    private double Third(CircuitElement e) => e.Third is { } third ? _pressures[third] : 0;

    private double Head(CircuitElement e) =>
        _at.Density * OperatingPoint.Gravity * (_values[Circuit.FindHeight(e.From).Index] - _values[Circuit.FindHeight(e.To).Index]);
}
