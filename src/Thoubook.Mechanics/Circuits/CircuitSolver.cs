using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Circuits;

/// <summary>Pressures and flows from which a solution may begin; made by <see cref="CircuitSolver.Start"/>.</summary>
public sealed class CircuitStart
{
    internal CircuitStart(double[] pressures, double[] places) => (Pressures, Places) = (pressures, places);

    internal double[] Pressures { get; }

    internal double[] Places { get; }
}

/// <summary>
/// Solves one circuit again and again: other operating points, other values of its parameters. After it is made nothing is allocated by solving. Not for two
/// threads at once; each thread has its own.
/// </summary>
public sealed partial class CircuitSolver
{
    /// <summary>[-] what may be left unbalanced, as a share of the greatest flow.</summary>
    private const double Balanced = 1e-12;

    /// <summary>[-] what a loss may be out by, as a share of the greatest pressure.</summary>
    private const double Rounding = 1e-13;

    private const int UsualSteps = 40;

    private readonly double[] _values;
    private readonly double[] _pressures;
    private readonly double[] _pressuresBefore;
    private readonly double[] _pressureSteps;
    private readonly double[] _placesBefore;
    private readonly double[] _placeSteps;
    private readonly double[] _left;
    private readonly double[] _rightHand;
    private readonly double[] _out;
    private readonly double[] _yields;
    private readonly Ends[] _ends;
    private readonly int[] _sought;
    private readonly int[] _places;
    private readonly int[] _placesByThird;
    private readonly CircuitLaws _laws;
    private readonly Elimination _elimination;
    private double _greatestFlow;
    private double _greatestPressure;
    private bool _isCold = true;

    /// <summary>A solver of a circuit, its parameters as given.</summary>
    /// <param name="circuit">The circuit.</param>
    public CircuitSolver(Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        Circuit = circuit;
        var n = circuit.Unknowns;
        _values = [.. circuit.Values];
        _laws = new CircuitLaws(circuit);
        (_pressures, _pressuresBefore, _pressureSteps) = (new double[circuit.NodeCount], new double[circuit.NodeCount], new double[circuit.NodeCount]);
        (_placesBefore, _placeSteps) = (new double[_laws.Carried.Length], new double[_laws.Carried.Length]);
        (_left, _rightHand) = (new double[circuit.NodeCount], new double[n]);
        (_out, _yields) = (new double[_laws.Carriers.Length], new double[_laws.Carriers.Length]);
        _ends = Array.ConvertAll(_laws.Carriers, EndsOf);
        _sought = [.. Enumerable.Range(0, circuit.NodeCount).Where(i => Unknown(i) >= 0)];
        _elimination = new Elimination(circuit.Order);
        _places = new int[circuit.ElementCount];
        _placesByThird = new int[2 * circuit.ElementCount];
        for (var i = 0; i < _places.Length; i++)
        {
            var e = circuit.Elements[i];
            if (e.Blanked)
                continue;
            _places[i] = circuit.Order.PlaceOf(Unknown(e.From), Unknown(e.To));
            if (e.Third is not { } third)
                continue;
            _placesByThird[2 * i] = circuit.Order.PlaceOf(Unknown(e.From), Unknown(third));
            _placesByThird[(2 * i) + 1] = circuit.Order.PlaceOf(Unknown(e.To), Unknown(third));
        }
    }

    /// <summary>What is solved.</summary>
    public Circuit Circuit { get; }

    /// <summary>How the last solution came about.</summary>
    public SolveReport Report { get; private set; }

    /// <summary>Whether every element of the last solution obeyed its own pressure difference alone, so that there is no other solution.</summary>
    public bool IsOnlySolution { get; private set; }

    /// <summary>[any] A parameter as it stands.</summary>
    /// <param name="parameter">Which.</param>
    /// <returns>[any] its value.</returns>
    public double this[ParameterId parameter]
    {
        get => _values[parameter.Index];
        set => _values[parameter.Index] = Circuit.Allows(parameter, value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, $"Allowed: {Circuit.Allowed(parameter)}.");
    }

    /// <summary>Where the last solution stands, to begin others there.</summary>
    /// <returns>A copy.</returns>
    public CircuitStart Start() => new([.. _pressures], [.. _laws.Place]);

    /// <summary>Lets the next solution begin there.</summary>
    /// <param name="start">A solution of the same circuit; null: from nothing.</param>
    public void StartFrom(CircuitStart? start)
    {
        _isCold = start is null;
        start?.Pressures.CopyTo(_pressures, 0);
        start?.Places.CopyTo(_laws.Place, 0);
    }

    /// <summary>Solves, beginning at the last solution.</summary>
    /// <param name="at">What the circuit runs at.</param>
    /// <returns>How it came about; where it converged, pressures and flows can be read.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Speed below 0, viscosity or density not above 0.</exception>
    /// <remarks>
    /// Model: unknown are the pressures at the nodes and the flows of pipes, jets and gauzes, whose losses are functions of their flows. Newton steps with exact slopes;
    /// the flows eliminated, a step is one solution of a net of conductances. As pressures and flows pull one way, the work of a step never falls along it: a step that goes
    /// too far is cut back to where that work is nil. Source: none, the pieces are standard (common practice). Check: NetworkTests.
    /// </remarks>
    public SolveReport Solve(in OperatingPoint at)
    {
        Guard.ZeroOrMore(at.Speed, "rad/s");
        Guard.AboveZero(at.Viscosity, "Pa s");
        Guard.AboveZero(at.Density, "kg/m³");
        _laws.Prepare(at, _values);
        var wasCold = _isCold;
        var steps = 0;
        var good = Iterate(ref steps, UsualSteps, 1);
        if (!good && !wasCold)
        {
            _isCold = true;
            good = Iterate(ref steps, steps + UsualSteps, 1);
        }

        for (var greatest = 0.5; !good && greatest > 0.1; greatest /= 2)
        {
            _isCold = true;
            good = Iterate(ref steps, steps + (2 * UsualSteps), greatest);
        }

        // What no start from nothing reaches is led there: the engine runs up to its speed by parts.
        for (var parts = 4; !good && parts <= 16; parts *= 4)
        {
            (_isCold, good) = (true, true);
            for (var part = 1; part <= parts && good; part++)
            {
                _laws.Prepare(at with { Speed = at.Speed * part / parts }, _values);
                good = Iterate(ref steps, steps + UsualSteps, 1);
            }
        }

        _isCold = !good;
        IsOnlySolution = _elimination.IsNet;
        Report = new(
            good ? SolveStatus.Converged : SolveStatus.OutOfSteps, steps, _greatestFlow > 0 ? Unbalanced() / _greatestFlow : 0, Balanced,
            good ? "" : $"Most is left over at {Circuit.Nodes[WorstNode()].Name}: look there for a size out of all proportion to the rest.");
        return Report;
    }

    /// <summary>Pressure at a node.</summary>
    /// <param name="node">[-] its place.</param>
    /// <returns>[Pa] gauge.</returns>
    /// <remarks>Source: none, read from the solution (common practice). Check: NetworkTests.</remarks>
    public double Pressure(int node) => _pressures[node];

    /// <summary>Flow through an element.</summary>
    /// <param name="element">[-] its place.</param>
    /// <returns>[m³/s] from its first node to its second.</returns>
    /// <remarks>Source: none, read from the solution (common practice). Check: NetworkTests.</remarks>
    public double Flow(int element)
    {
        if (Circuit.Elements[element].Blanked)
            return 0;
        return _laws.PlaceAmongCarriers[element] is >= 0 and var c ? _laws.Carried[c]
            : _laws.Yield[_laws.PlaceAmongYielding[element]];
    }

    /// <summary>How far a valve is open.</summary>
    /// <param name="element">[-] its place.</param>
    /// <returns>[m] 0 for what is no valve.</returns>
    /// <remarks>Source: the balance of the valve's forces (common practice). Check: HandSolvedCircuitTests.</remarks>
    public double Lift(int element) => Circuit.Elements[element].Blanked ? 0 : _laws.Lift(element, _values, _pressures);

    /// <summary>Share of its spaces that a pump fills.</summary>
    /// <param name="element">[-] its place.</param>
    /// <returns>[-] 1 for what is no pump.</returns>
    /// <remarks>Source: the law of <see cref="Pump"/> (common practice). Check: HandSolvedCircuitTests.</remarks>
    public double Filling(int element) => Circuit.Elements[element] is Pump pump ? _laws.Filling(_laws.ValuesOf(_values, element), _pressures[pump.From]).Share : 1;

    /// <summary>What the solution is to be read with.</summary>
    /// <returns>Everything that does not go as its laws suppose.</returns>
    public IReadOnlyList<CircuitCaution> Cautions()
    {
        var at = _laws.At;
        var cautions = new List<CircuitCaution>();
        for (var i = 0; i < Circuit.ElementCount; i++)
        {
            var element = Circuit.Elements[i];
            if (element.Blanked)
                continue;
            var absolute = _pressures[element.From] + at.Atmosphere;
            if (element is Pump { InletLimit: null } && absolute < 0)
                cautions.Add(new(CircuitCautionKind.SuctionBelowVacuum, element.Name, absolute, Filling(i)));
            else if (element is Pump && Filling(i) < 1)
                cautions.Add(new(CircuitCautionKind.PumpStarved, element.Name, absolute, Filling(i)));
            else if (element is Pipe { ToRadius: var far, FromRadius: var near } && (far > 0 || near > 0) && absolute < at.Density * Square(at.Speed * _values[Circuit.FirstParameter(i) + 7] * near) / 2)
                cautions.Add(new(CircuitCautionKind.ColumnBroken, element.Name, absolute, 0));
            else if (element is Consumer { Flow: > 0 } && Flow(i) is var flow && _values[Circuit.FirstParameter(i)] is var wanted && flow < wanted * (1 - 1e-9))
                cautions.Add(new(CircuitCautionKind.ConsumerShort, element.Name, absolute, flow / wanted));
        }

        return cautions;
    }

    private Ends EndsOf(int element)
    {
        var e = Circuit.Elements[element];
        return new(e.From, e.To, Unknown(e.From), Unknown(e.To), Circuit.Order.PlaceOf(Unknown(e.From), Unknown(e.To)));
    }

    /// <summary>Where a carrier is joined: nodes, unknowns, and where the pair stands in the matrix.</summary>
    private readonly record struct Ends(int From, int To, int UnknownFrom, int UnknownTo, int Pair);

    private static double Square(double x) => x * x;

    private int Unknown(int node) => Circuit.Unknown[node];

    private double Drop(CircuitElement e, int i) => _pressures[e.From] - _pressures[e.To] + _laws.Head[i];
}
