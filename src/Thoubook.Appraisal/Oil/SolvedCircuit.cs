using Thoubook.Mechanics.Circuits;
using Thoubook.Mechanics.Oil;
using Thoubook.Record;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

/// <summary>The oil as it runs.</summary>
/// <param name="Viscosity">[Pa·s]</param>
/// <param name="Density">[kg/m³]</param>
/// <param name="Doubt">[-] standard relative uncertainty of the viscosity.</param>
/// <param name="AtRise">[Pa·s] of oil warmer by so many kelvins; null where it does not change.</param>
internal sealed record RunningOil(double Viscosity, double Density, double Doubt, Func<double, double>? AtRise)
{
    public static Outcome<RunningOil> Of(EngineOil? oil, OilPoint point)
    {
        if (point is { Viscosity: { } viscosity, Density: { } density })
            return new RunningOil(viscosity, density, 0, null);
        if (oil is null)
            return new Problem("oil-not-said", "circuit, oil", "nothing", "The circuit does not say which oil it runs on.", "Give its grade, or its viscosity at two temperatures.");
        if (oil.Remark(point.OilTemperature) is { } remark && (point.OilTemperature < 200 || point.OilTemperature > 500))
            return new Problem("oil-temperature", "oil temperature", $"{point.OilTemperature - 273.15:F0} °C", remark, "Ask within the oil's range.");
        return new RunningOil(
            point.Viscosity ?? oil.DynamicViscosity(point.OilTemperature),
            point.Density ?? oil.Density(point.OilTemperature),
            point.Viscosity is null ? oil.ViscosityUncertainty(point.OilTemperature) : 0,
            point.Viscosity is null ? rise => oil.DynamicViscosity(point.OilTemperature + rise) : null);
    }

    public OperatingPoint At(double speed, double thicker = 1) => new(speed, Viscosity * thicker, Density)
    {
        ViscosityAtRise = AtRise is { } warmer ? (thicker == 1 ? warmer : rise => warmer(rise) * thicker) : null,
    };
}

/// <summary>A circuit of the record solved at one point, and how its pressures hang on every uncertain size.</summary>
internal sealed partial class SolvedCircuit
{
    private readonly CircuitSizes _sizes;
    private readonly CircuitSolver _solver;
    private readonly IReadOnlyDictionary<NodeName, int> _nodes;
    private readonly (int First, int Count)[] _laws;
    private readonly OilPoint _point;
    private readonly RunningOil _oil;

    private SolvedCircuit(CircuitSizes sizes, CircuitSolver solver, IReadOnlyDictionary<NodeName, int> nodes, (int, int)[] laws, OilPoint point, RunningOil oil)
    {
        (_sizes, _solver, _nodes, _laws, _point, _oil) = (sizes, solver, nodes, laws, point, oil);
    }

    public CircuitSizes Sizes => _sizes;

    /// <summary>[rad/s] of the engine.</summary>
    public double Speed => _point.Speed;

    /// <summary>The solver that stands at this solution; it is not to be moved.</summary>
    public CircuitSolver Own => _solver;

    public RunningOil Oil => _oil;

    public Mechanics.Numerics.SolveReport Report => _solver.Report;

    public IReadOnlyList<CircuitCaution> Cautions => _solver.Cautions();

    public static Outcome<SolvedCircuit> Of(CircuitSizes sizes, OilPoint point, RunningOil oil)
    {
        var circuit = sizes.Circuit;
        var names = circuit.NodeNames;
        var places = new Dictionary<NodeName, int>(names.Count);
        var nodes = new List<CircuitNode>(names.Count);
        var used = circuit.Elements.Where(e => !e.Blanked).SelectMany(e => e.NodesNamed).ToHashSet();
        foreach (var name in names.Where(n => used.Contains(n) || circuit.Node(n)?.Pressure is not null))
        {
            places[name] = nodes.Count;
            var node = circuit.Node(name);
            nodes.Add(new CircuitNode(name.Text, node?.Pressure?.Si, node?.Height?.Si ?? 0));
        }

        var faults = new List<Problem>();
        var laws = new List<CircuitElement>(circuit.Elements.Count + 4);
        var spans = new (int, int)[circuit.Elements.Count];
        for (var i = 0; i < spans.Length; i++)
        {
            if (circuit.Elements[i] is not { Blanked: false } element)
                continue;
            if (CircuitFaults.Of(element, sizes[i]) is { } fault)
            {
                faults.Add(fault);
                continue;
            }

            var own = ElementLaws.Of(element, sizes[i], places[element.From], places[element.To], element.Vent is { } vent ? places[vent] : null, point.Speed, oil.Density);
            spans[i] = (laws.Count, own.Length);
            laws.AddRange(own);
        }

        if (faults.Count > 0)
            return new Outcome<SolvedCircuit>.Refused(faults);
        var outcome = Circuit.Compile(nodes, laws);
        if (outcome is CircuitOutcome.Insoluble insoluble)
            return new Outcome<SolvedCircuit>.Refused([.. insoluble.Faults.Select(f => CircuitFaults.Of(f, circuit))]);
        var compiled = (CircuitOutcome.Compiled)outcome;
        var solver = new CircuitSolver(compiled.Circuit);
        var report = solver.Solve(oil.At(point.Speed));
        return report.Converged
            ? new SolvedCircuit(sizes, solver, places, spans, point, oil)
            : CircuitFaults.Of(report);
    }

    /// <summary>The same circuit with the same sizes at another speed of the engine, solved from here; this one is then no longer to be asked.</summary>
    public Outcome<SolvedCircuit> Again(OilPoint point)
    {
        for (var i = 0; i < _laws.Length; i++)
        {
            // How fast a gear pump turns decides at which pressure it fills.
            if (_sizes.Circuit.Elements[i] is { Blanked: false, Kind: ElementKind.GearPump } pump && ((Pump)LawsOf(pump, i, _sizes[i], point.Speed)[0]).FillsAt is { } fills)
                _solver[_solver.Circuit.Find(_laws[i].First, nameof(Pump.FillsAt))] = fills;
        }

        var report = _solver.Solve(_oil.At(point.Speed));
        return report.Converged ? new SolvedCircuit(_sizes, _solver, _nodes, _laws, point, _oil) : CircuitFaults.Of(report);
    }

    /// <summary>The same circuit at the same point with another size of one figure, solved from here.</summary>
    public Outcome<SolvedCircuit> With(CircuitSizes sizes, FigureName figure)
    {
        var solver = new CircuitSolver(_solver.Circuit);
        foreach (var element in _sizes.Inputs.Where(i => i.Figure?.Name == figure).Select(i => i.Element).Distinct())
        {
            if (CircuitFaults.Of(_sizes.Circuit.Elements[element], sizes[element]) is { } fault)
                return fault;
            Set(solver, element, sizes[element], 1);
        }

        solver.StartFrom(Start);
        var report = solver.Solve(_oil.At(_point.Speed));
        return report.Converged ? new SolvedCircuit(sizes, solver, _nodes, _laws, _point, _oil) : CircuitFaults.Of(report);
    }

    /// <summary>[Pa] gauge; that of a node that only blanked elements meet is not known.</summary>
    public double? Pressure(NodeName node) => _nodes.TryGetValue(node, out var place) ? _solver.Pressure(place) : null;

    /// <summary>[m³/s] of an element, all its laws together.</summary>
    public double Flow(int element) => Sum(element, _solver.Flow);

    public double Lift(int element) => Sum(element, _solver.Lift);

    public double Filling(int element) => _laws[element].Count > 0 ? _solver.Filling(_laws[element].First) : 1;

    public CircuitElement? Law(int element) => _laws[element].Count > 0 ? _solver.Circuit.Elements[_laws[element].First] : null;

    /// <summary>Where others like it may begin.</summary>
    public CircuitStart Start => field ??= _solver.Start();

    /// <summary>Another solver of the same circuit.</summary>
    public CircuitSolver Solver() => new(_solver.Circuit);

    public int Place(NodeName node) => _nodes[node];

    /// <summary>Gives a solver other sizes of an element.</summary>
    /// <param name="solver">Of this circuit.</param>
    /// <param name="element">Place of the element.</param>
    /// <param name="sizes">Its sizes.</param>
    /// <param name="flow">[-] What its creeping flow is multiplied by besides.</param>
    public void Set(CircuitSolver solver, int element, ElementSizes sizes, double flow)
    {
        var (first, count) = _laws[element];
        var laws = LawsOf(_sizes.Circuit.Elements[element], element, sizes, _point.Speed);
        for (var law = 0; law < count; law++)
        {
            var start = _solver.Circuit.FirstParameter(first + law);
            var numbers = laws[law].Numbers;
            for (var i = 0; i < numbers.Count; i++)
            {
                if (!double.IsNaN(numbers[i]))
                    solver[new ParameterId(start + i)] = i == 0 && flow != 1 ? numbers[i] * flow : numbers[i];
            }
        }
    }

    private CircuitElement[] LawsWith(ElementDefinition definition, int element, int key, double value) => LawsOf(definition, element, _sizes[element].With(key, value), _point.Speed);

    private CircuitElement[] LawsOf(ElementDefinition definition, int element, ElementSizes sizes, double speed)
    {
        var law = _solver.Circuit.Elements[_laws[element].First];
        return ElementLaws.Of(definition, sizes, law.From, law.To, definition.Vent is { } vent ? _nodes[vent] : null, speed, _oil.Density);
    }

    private double Sum(int element, Func<int, double> of)
    {
        var (first, count) = _laws[element];
        double sum = 0;
        for (var i = first; i < first + count; i++)
            sum += of(i);
        return sum;
    }
}
