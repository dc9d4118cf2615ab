using System.Globalization;
using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Circuits;

/// <summary>Pressures and flows from which a solution may begin; made by <see cref="CircuitSolver.Start"/>.</summary>
public sealed class CircuitStart
{
    internal CircuitStart(double[] pressures, double[] places, double[] looks) => (Pressures, Places, Looks) = (pressures, places, looks);

    internal double[] Pressures { get; }

    internal double[] Places { get; }

    internal double[] Looks { get; }
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

    /// <summary>[-] factorisations, whatever happens.</summary>
    private const int MostSteps = 40;

    /// <summary>[-] of these as many as are Newton's own before elements meet the rest of the net.</summary>
    private const int PlainSteps = 5;

    /// <summary>[-] A step so much smaller than the one before it needs no more care.</summary>
    private const double Settling = 0.02;

    private readonly double[] _values;
    private readonly double[] _pressures;
    private readonly double[] _pressuresBefore;
    private readonly double[] _pressureSteps;
    private readonly double[] _placesBefore;
    private readonly double[] _placeSteps;
    private readonly double[] _left;
    private readonly double[] _looksBefore;
    private readonly double[] _lookSteps;
    private readonly double[] _outLook;
    private readonly double[] _answers;
    private readonly double[] _weights;
    private readonly double[] _drops;
    private readonly double[] _flows;
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
        (_looksBefore, _lookSteps, _outLook) = (new double[_laws.Yielding], new double[_laws.Yielding], new double[_laws.Yielding]);
        (_answers, _weights, _drops, _flows) = (new double[_laws.Carriers.Length], new double[_laws.Carriers.Length], new double[_laws.Carriers.Length], new double[_laws.Carriers.Length]);
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
    public CircuitStart Start() => new([.. _pressures], [.. _laws.Place], [.. _laws.Look]);

    /// <summary>Lets the next solution begin there.</summary>
    /// <param name="start">A solution of the same circuit; null: from nothing.</param>
    public void StartFrom(CircuitStart? start)
    {
        _isCold = start is null;
        start?.Pressures.CopyTo(_pressures, 0);
        start?.Places.CopyTo(_laws.Place, 0);
        start?.Looks.CopyTo(_laws.Look, 0);
    }

    /// <summary>Solves, beginning at the last solution.</summary>
    /// <param name="at">What the circuit runs at.</param>
    /// <returns>How it came about; where it converged, pressures and flows can be read.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Speed below 0, viscosity or density not above 0.</exception>
    /// <remarks>
    /// Model: unknown are the pressures at the nodes and the place of every element, from which its flow and its drop follow. Newton steps with exact slopes; the places
    /// eliminated, a step is one solution of a net of conductances. As pressures and flows pull one way, the work of a step never falls along it: one of the first steps
    /// that goes too far is cut back to where that work is nil. What has not settled by then goes on by meetings: see <see cref="Meet"/>. A step is counted for each
    /// factorisation. Source: none, the pieces are standard (common practice). Check: NetworkTests.
    /// </remarks>
    public SolveReport Solve(in OperatingPoint at)
    {
        Guard.ZeroOrMore(at.Speed, "rad/s");
        Guard.AboveZero(at.Viscosity, "Pa s");
        Guard.AboveZero(at.Density, "kg/m³");
        _laws.Prepare(at, _values);
        var steps = 0;
        var good = Iterate(ref steps, PlainSteps);
        if (!good && steps < MostSteps)
        {
            // It ended in no number: from nothing, and more carefully.
            _isCold = true;
            good = Iterate(ref steps, 1);
        }

        _isCold = !good;
        IsOnlySolution = _elimination.IsNet;
        Report = new(
            good ? SolveStatus.Converged : SolveStatus.OutOfSteps, steps, _greatestFlow > 0 ? Unbalanced() / _greatestFlow : 0, Balanced,
            good ? "" : WhatIsLeft());
        return Report;
    }

    /// <summary>Which elements the last step still moved, and where most is left over.</summary>
    private string WhatIsLeft()
    {
        var restless = Enumerable.Range(0, _ends.Length)
            .Select(c => (Name: Circuit.Elements[_laws.Carriers[c]].Name, Moved: Math.Abs(_laws.Gain[c] * _placeSteps[c])))
            .OrderByDescending(e => double.IsNaN(e.Moved) ? double.PositiveInfinity : e.Moved).Take(MostNamed).Select(e => e.Name);
        var where = $"{string.Join(", ", restless)} did not come to rest: each goes by what the others let pass. Most is left over at {Circuit.Nodes[WorstNode()].Name}";
        var highest = Array.IndexOf(_pressures, _pressures.MaxBy(Math.Abs));
        return Math.Abs(_pressures[highest]) > Absurd
            ? string.Create(CultureInfo.InvariantCulture, $"{where}; the last step had {_pressures[highest] / 1e5:G2} bar at {Circuit.Nodes[highest].Name}: look between the two for a size out of all proportion to what is forced through it.")
            : $"{where}: look there for a size out of all proportion to the rest, or a valve that answers to what it passes itself.";
    }

    /// <summary>[-] elements named where a solution is not found.</summary>
    private const int MostNamed = 3;

    /// <summary>[Pa] No oil circuit holds it.</summary>
    private const double Absurd = 1e10;

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
        return _laws.Carried[_laws.PlaceAmongCarriers[element]];
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
