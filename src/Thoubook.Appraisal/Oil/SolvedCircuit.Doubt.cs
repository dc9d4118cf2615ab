using Thoubook.Appraisal.Estimates;
using Thoubook.Mechanics.Circuits;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

/// <summary>How pressures and flows hang on every uncertain size.</summary>
internal sealed partial class SolvedCircuit
{
    private static readonly UncertaintySource Thickness = new(SourceKind.Oil, "how thick this oil is for its grade");

    private readonly Dictionary<int, (double[] ByParameter, double ByThickness)> _slopes = [];
    private readonly Dictionary<Estimate, double[]> _flowChanges = [];
    private double[]? _flowChangesByOil;
    private CircuitSolver? _other;

    /// <summary>[Pa] The pressure at a node with the doubt of every size and of the oil.</summary>
    public Estimate PressureOf(NodeName node)
    {
        var shares = SlopesBySource(_solver, _nodes[node]);
        var contributions = new List<Contribution>(shares.Length);
        for (var i = 0; i < _sizes.Sources.Count; i++)
        {
            if (shares[i] != 0)
                contributions.Add(_sizes.Sources[i] with { Value = shares[i] });
        }

        if (_oil.Doubt > 0)
            contributions.Add(new Contribution(Thickness, shares[^1], double.PositiveInfinity));
        return new Estimate(Pressure(node)!.Value, contributions);
    }

    /// <summary>The place of a source among those of the sizes, the oil's thickness last; null where the circuit does not know it.</summary>
    public int? PlaceOf(UncertaintySource source)
    {
        if (source == Thickness)
            return _sizes.Sources.Count;
        for (var i = 0; i < _sizes.Sources.Count; i++)
        {
            if (_sizes.Sources[i].Source == source)
                return i;
        }

        return null;
    }

    /// <summary>[Pa] at a node for one standard uncertainty of each source of the sizes, then of how thick the oil is.</summary>
    /// <param name="solver">Of this circuit, solved; where its sizes are others, how they enter the laws is taken as it is here.</param>
    /// <param name="node">Place of the node.</param>
    public double[] SlopesBySource(CircuitSolver solver, int node)
    {
        var (byParameter, byThickness) = Slopes(solver, node);
        var shares = new double[_sizes.Sources.Count + 1];
        for (var i = 0; i < _sizes.Inputs.Count; i++)
        {
            var slope = Slope(solver, byParameter, i);
            if (slope == 0)
                continue;
            foreach (var (source, share) in _sizes.SharesOf(i))
                shares[source] += slope * share;
        }

        shares[^1] = byThickness * _oil.Doubt;
        return shares;
    }

    /// <summary>[m³/s] The flow of an element with the doubt of every size and of the oil: each is changed a little and the circuit solved anew.</summary>
    public Estimate FlowOf(int element)
    {
        var terms = new List<(double, Estimate)>();
        foreach (var group in _sizes.Inputs.GroupBy(i => i.Of))
            terms.Add((FlowChanges(group.Key, [.. group])[element], group.Key));
        if (_oil.Doubt > 0)
            terms.Add((FlowChangesByOil()[element], new Estimate(1, [new Contribution(Thickness, _oil.Doubt, double.PositiveInfinity)])));
        return new Estimate(Flow(element), Estimate.Sum([.. terms]).Contributions);
    }

    private (double[] ByParameter, double ByThickness) Slopes(CircuitSolver solver, int node)
    {
        if (ReferenceEquals(solver, _solver) && _slopes.TryGetValue(node, out var slopes))
            return slopes;
        var byParameter = new double[solver.Circuit.ParameterCount];
        slopes = (byParameter, solver.Sensitivities(node, byParameter));
        if (ReferenceEquals(solver, _solver))
            _slopes[node] = slopes;
        return slopes;
    }

    /// <summary>[any] Pa at a node for one SI unit of a size, or for the natural logarithm of the element's flow.</summary>
    private double Slope(CircuitSolver solver, double[] slopes, int input)
    {
        var (element, key) = (_sizes.Inputs[input].Element, _sizes.Inputs[input].Key);
        var (first, count) = _laws[element];
        var parameter = _solver.Circuit.FirstParameter(first);
        double sum = 0;
        if (key < 0)
        {
            for (var law = first; law < first + count; law++)
            {
                var conductance = _solver.Circuit.FirstParameter(law);
                sum += slopes[conductance] * solver[new ParameterId(conductance)];
            }

            return sum;
        }

        // The numbers of the laws of one element stand one after the other.
        var bySize = _sizes.LawSlopes(input, NumbersWith);
        for (var p = 0; p < bySize.Length; p++)
            sum += bySize[p] == 0 ? 0 : slopes[parameter + p] * bySize[p];
        return sum;
    }

    private double[] NumbersWith(int element, int key, double value) => [.. LawsWith(_sizes.Circuit.Elements[element], element, key, value).SelectMany(law => law.Numbers)];

    /// <summary>[any] m³/s of every element for one unit of an uncertain thing, or for the logarithm of a flow.</summary>
    private double[] FlowChanges(Estimate of, IReadOnlyList<SizeInput> inputs)
    {
        if (_flowChanges.TryGetValue(of, out var known))
            return known;
        var value = inputs[0].Key < 0 ? 1 : Math.Abs(of.Value);
        var h = Math.Max(value * 1e-3, 1e-9);
        var (more, less) = (FlowsWith(inputs, h), FlowsWith(inputs, -h));
        var changes = new double[more.Length];
        for (var i = 0; i < changes.Length; i++)
            changes[i] = (more[i] - less[i]) / (2 * h);
        return _flowChanges[of] = changes;
    }

    private double[] FlowsWith(IReadOnlyList<SizeInput> inputs, double by)
    {
        _other ??= new CircuitSolver(_solver.Circuit);
        var changed = new List<(ParameterId Parameter, double Was)>();
        foreach (var input in inputs)
        {
            var (first, count) = _laws[input.Element];
            var definition = _sizes.Circuit.Elements[input.Element];
            var laws = input.Key < 0 ? null : LawsWith(definition, input.Element, input.Key, _sizes[input.Element][definition.Shape.Keys[input.Key].Name] + by);
            for (var law = 0; law < count; law++)
            {
                var start = _solver.Circuit.FirstParameter(first + law);
                var numbers = _solver.Circuit.Elements[first + law].Numbers;
                for (var p = 0; p < numbers.Count; p++)
                {
                    var value = laws is null ? (p == 0 ? numbers[0] * (1 + by) : numbers[p]) : laws[law].Numbers[p];
                    if (!value.Equals(numbers[p]))
                    {
                        changed.Add((new(start + p), numbers[p]));
                        _other[new(start + p)] = value;
                    }
                }
            }
        }

        _other.Solve(_oil.At(_point.Speed));
        var flows = Flows(_other);
        foreach (var (parameter, was) in changed)
            _other[parameter] = was;
        return flows;
    }

    private double[] FlowChangesByOil()
    {
        const double Step = 0.01;
        _other ??= new CircuitSolver(_solver.Circuit);
        if (_flowChangesByOil is not null)
            return _flowChangesByOil;
        _other.Solve(_oil.At(_point.Speed, 1 + Step));
        var more = Flows(_other);
        _other.Solve(_oil.At(_point.Speed, 1 - Step));
        var less = Flows(_other);
        return _flowChangesByOil = [.. more.Zip(less, (a, b) => (a - b) / (2 * Step))];
    }

    private double[] Flows(CircuitSolver solver)
    {
        var flows = new double[_laws.Length];
        for (var i = 0; i < flows.Length; i++)
            flows[i] = Sum(i, solver.Flow);
        return flows;
    }
}
