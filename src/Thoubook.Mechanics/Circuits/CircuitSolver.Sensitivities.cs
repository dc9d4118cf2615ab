namespace Thoubook.Mechanics.Circuits;

public sealed partial class CircuitSolver
{
    /// <summary>How the pressure at a node changes with every parameter, by one adjoint solution.</summary>
    /// <param name="node">[-] its place.</param>
    /// <param name="slopes">[any] filled in: Pa for one SI unit of each parameter, in the order of <see cref="ParameterId.Index"/>; 0 for a parameter that is left out.</param>
    /// <returns>[Pa] gained where all the oil is thicker, for the natural logarithm of its viscosity.</returns>
    /// <remarks>
    /// Model: λ with Jᵀ λ = e_node at the solution, then λ_to − λ_from times what an element's flow gains for each of its numbers, pressures kept; that gain by central differences of the law itself,
    /// good to 1e-8 of it. Source: none, the adjoint of Newton's matrix (common practice). Check: NetworkTests.
    /// </remarks>
    public double Sensitivities(int node, Span<double> slopes)
    {
        slopes.Clear();
        if (Unknown(node) < 0)
        {
            slopes[Circuit.FindPressure(node).Index] = 1;
            return 0;
        }

        Assemble();
        if (!_elimination.Factorise())
            return 0;
        Array.Clear(_rightHand);
        _rightHand[Unknown(node)] = 1;
        _elimination.Solve(_rightHand, transposed: true);
        double byThickness = 0;
        for (var c = 0; c < _laws.Carriers.Length; c++)
        {
            var g = _laws.Gain[c] / _laws.Steepness[c];
            var i = _laws.Carriers[c];
            Told(i, slopes, Circuit.Elements[i] is Pipe or Orifice or QuadraticPassage ? c : -1, g);
            byThickness -= Weight(i) * _laws.FlowLostByThickness(c, _values);
        }

        for (var y = 0; y < _laws.Yielding; y++)
        {
            var i = _laws.Carriers[_laws.FirstYielding + y];
            var e = Circuit.Elements[i];
            Seen(e is ReducingValve ? e.To : e.From, Weight(i) * _laws.ByLook[y], slopes);
            if (e.Third is { } third)
                Seen(third, -Weight(i) * _laws.ByLook[y], slopes);
        }

        return byThickness;
    }

    private double Weight(int i) => Adjoint(Circuit.Elements[i].To) - Adjoint(Circuit.Elements[i].From);

    /// <summary>The pressure of a reservoir that flows hang on.</summary>
    private void Seen(int node, double slope, Span<double> slopes)
    {
        if (Unknown(node) < 0)
            slopes[Circuit.FindPressure(node).Index] += slope;
    }

    private void Told(int i, Span<double> slopes, int carrier, double byDrop)
    {
        var e = Circuit.Elements[i];
        var weight = Weight(i);
        if (weight == 0)
            return;
        Seen(e.From, weight * byDrop, slopes);
        Seen(e.To, -weight * byDrop, slopes);
        var lifted = weight * byDrop * _laws.At.Density * OperatingPoint.Gravity;
        slopes[Circuit.FindHeight(e.From).Index] += lifted;
        slopes[Circuit.FindHeight(e.To).Index] -= lifted;

        Span<double> v = stackalloc double[16];
        _laws.ValuesOf(_values, i).CopyTo(v);
        v = v[..e.Rules.Length];
        var first = Circuit.FirstParameter(i);
        for (var k = 0; k < v.Length; k++)
        {
            var value = v[k];
            if (double.IsNaN(value))
                continue;
            // From nil there is only one way to go.
            var h = value == 0 ? 1e-9 : Math.Abs(value) * 1e-5;
            var less = value == 0 ? 0 : h;
            v[k] = value + h;
            var more = With(i, carrier, v);
            v[k] = value - less;
            var gained = (more - With(i, carrier, v)) / (h + less);
            v[k] = value;
            slopes[first + k] = weight * gained;
        }
    }

    /// <summary>[m³/s] The flow with other numbers, or for a carrier how much that differs from what it carries.</summary>
    private double With(int i, int carrier, ReadOnlySpan<double> v) =>
        carrier >= 0 ? -_laws.LossWith(carrier, v) / _laws.Steepness[carrier] : _laws.FlowWith(i, v, _pressures);

    private double Adjoint(int node) => Unknown(node) is >= 0 and var u ? _rightHand[u] : 0;
}
