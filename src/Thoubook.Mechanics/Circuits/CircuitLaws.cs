using System.Diagnostics;
using Thoubook.Mechanics.Valves;

namespace Thoubook.Mechanics.Circuits;

/// <summary>
/// The elements of a circuit sorted by how they answer. <b>Carriers</b> are told by their place, from which both flow and drop follow without a root, so that nil flow is no corner and no
/// spread of sizes loses figures: for pipes, gaps, jets, gauzes and pumps the place is the flow itself, for what opens how far it is open. <b>Yielding</b> ones (valves vented elsewhere,
/// pumps that may starve) are told by the pressures.
/// </summary>
internal sealed class CircuitLaws
{
    private readonly CircuitElement[] _elements;
    private readonly (int First, int Count, int HeightFrom, int HeightTo)[] _numbers;
    private readonly RoughPipes _pipes;
    private readonly double[] _linear;
    private readonly double[] _square;
    private readonly double[] _driven;
    private readonly OpeningLaw[] _opening;

    public CircuitLaws(Circuit circuit)
    {
        _elements = [.. circuit.Elements];
        _numbers = [.. _elements.Select((e, i) => (circuit.FirstParameter(i), e.Rules.Length, circuit.FindHeight(e.From).Index, circuit.FindHeight(e.To).Index))];
        var use = Enumerable.Range(0, circuit.ElementCount).Where(i => !circuit.Elements[i].Blanked).ToList();
        var pipes = use.Where(i => circuit.Elements[i] is Pipe).ToList();
        Pipes = pipes.Count;
        Carriers = [.. pipes, .. use.Where(i => circuit.Elements[i] is LaminarPassage or QuadraticPassage or Orifice or Pump { InletLimit: null }), .. use.Where(i => circuit.Elements[i] is Consumer or ReliefValve { Third: null })];
        Straight = Carriers.Count(i => circuit.Elements[i] is not (Consumer or ReliefValve));
        Yielding = [.. use.Where(i => circuit.Elements[i] is ReliefValve { Third: not null } or ReducingValve or Pump { InletLimit: not null })];
        _pipes = new RoughPipes(Pipes);
        var room = RoughPipes.Padded(Carriers.Length) + 4;
        (Place, Carried, Gain, Lost, Steepness) = (new double[room], new double[room], new double[room], new double[room], new double[room]);
        Array.Fill(Gain, 1);
        (_linear, _square, _driven) = (new double[Straight], new double[Straight], new double[Straight]);
        _opening = new OpeningLaw[Carriers.Length - Straight];
        Head = new double[circuit.ElementCount];
        CarrierHead = new double[Carriers.Length];
        (Yield, ByFrom, ByTo, ByThird) = (new double[Yielding.Length], new double[Yielding.Length], new double[Yielding.Length], new double[Yielding.Length]);
        Valves = new SpringValve[Yielding.Length];
        (PlaceAmongCarriers, PlaceAmongYielding) = (Places(Carriers), Places(Yielding));

        int[] Places(int[] some)
        {
            var places = new int[circuit.ElementCount];
            Array.Fill(places, -1);
            for (var place = 0; place < some.Length; place++)
                places[some[place]] = place;
            return places;
        }
    }

    /// <summary>The pipes first, what opens last.</summary>
    public int[] Carriers { get; }

    public int[] Yielding { get; }

    /// <summary>By element; −1 for others.</summary>
    public int[] PlaceAmongCarriers { get; }

    /// <summary>By element; −1 for others.</summary>
    public int[] PlaceAmongYielding { get; }

    public int Pipes { get; }

    /// <summary>How many carriers stand before those that open.</summary>
    public int Straight { get; }

    /// <summary>[Pa] what heights and turning add to the drop, by element.</summary>
    public double[] Head { get; }

    /// <summary>[Pa] the same by carrier.</summary>
    public double[] CarrierHead { get; }

    /// <summary>[any] where the carriers stand: their flow, or how far they are open.</summary>
    public double[] Place { get; }

    /// <summary>[m³/s] of the carriers.</summary>
    public double[] Carried { get; }

    /// <summary>[any] m³/s that a carrier carries more for each unit of its place: 1 where the flow is its place.</summary>
    public double[] Gain { get; }

    /// <summary>[Pa] that the carriers lose at it.</summary>
    public double[] Lost { get; }

    /// <summary>[any] Pa by which that rises for each unit of its place.</summary>
    public double[] Steepness { get; }

    /// <summary>[m³/s] of the yielding.</summary>
    public double[] Yield { get; }

    public double[] ByFrom { get; }

    public double[] ByTo { get; }

    public double[] ByThird { get; }

    private SpringValve[] Valves { get; }

    public OperatingPoint At { get; private set; }

    /// <summary>Folds everything that does not hang on the pressures.</summary>
    public void Prepare(in OperatingPoint at, double[] values)
    {
        At = at;
        var (lastRise, warmer) = (double.NaN, 0.0);
        for (var c = 0; c < Carriers.Length; c++)
        {
            var i = Carriers[c];
            var v = ValuesOf(values, i);
            Head[i] = Static(values, i);
            switch (_elements[i])
            {
                case Pipe:
                    var turning = at.Speed * v[7];
                    Head[i] += at.Density * turning * turning * ((v[6] * v[6]) - (v[5] * v[5])) / 2;
                    _pipes.Prepare(c, v, at.Viscosity, at.Density);
                    break;
                case LaminarPassage:
                    var viscosity = at.Viscosity;
                    if (v[1] != 0 && at.ViscosityAtRise is { } atRise)
                    {
                        if (v[1] != lastRise)
                            (lastRise, warmer) = (v[1], atRise(v[1]));
                        viscosity = warmer;
                    }

                    (_linear[c], _square[c]) = (Math.Min(viscosity / v[0], Blocked), 0);
                    break;
                case Orifice:
                    var k = v[1] * Math.PI / 4 * v[0] * v[0];
                    (_linear[c], _square[c]) = (0, at.Density / (2 * k * k));
                    break;
                case Pump:
                    (_linear[c], _square[c], _driven[c]) = (Math.Min(at.Viscosity / v[1], Blocked), 0, Moved(v));
                    if (v[1] == 0)
                        Place[c] = _driven[c];
                    break;
                case Consumer:
                    _opening[c - Straight] = OpeningLaw.Consumer(v[0], v[1]);
                    break;
                case ReliefValve valve:
                    _opening[c - Straight] = OpeningLaw.Valve(Sprung(valve, v), at.Viscosity, at.Density);
                    break;
                default:
                    (_linear[c], _square[c]) = (v[0] * at.Viscosity, v[1] * at.Density);
                    break;
            }
        }

        for (var c = 0; c < Carriers.Length; c++)
            CarrierHead[c] = Head[Carriers[c]];
        for (var y = 0; y < Yielding.Length; y++)
        {
            var i = Yielding[y];
            Head[i] = Static(values, i);
            if (_elements[i] is ReliefValve valve)
                Valves[y] = Sprung(valve, ValuesOf(values, i));
        }
    }

    /// <summary>[Pa for each m³/s] of a passage of no conductance.</summary>
    private const double Blocked = 1e200;

    /// <summary>[any] A place where a carrier may well stand: one metre a second, or the creep of a little pressure.</summary>
    public double Usual(int c, double[] values)
    {
        var v = ValuesOf(values, Carriers[c]);
        return _elements[Carriers[c]] switch
        {
            Pipe => Math.PI / 4 * v[0] * v[0] * v[4],
            Orifice => v[1] * Math.PI / 4 * v[0] * v[0] * 5,
            Consumer or ReliefValve => 0.1,
            Pump => _driven[c] + (1e4 / _linear[c]),
            _ => 2 * 1e4 / (_linear[c] + Math.Sqrt((_linear[c] * _linear[c]) + (4 * _square[c] * 1e4))),
        };
    }

    /// <summary>[any] Where a carrier stands while nothing drives it.</summary>
    public double AtRest(int c) => c >= Straight ? -_opening[c - Straight].Restful : _driven[c];

    /// <summary>[m³/s for each Pa] How a yielding element that is level where it stands may well answer once it is not.</summary>
    /// <param name="y">Which.</param>
    /// <param name="values">All parameters.</param>
    public double GuessedYield(int y, double[] values)
    {
        var v = ValuesOf(values, Yielding[y]);
        return _elements[Yielding[y]] switch
        {
            Pump when v[4] != At.Atmosphere => Moved(v) / Math.Abs(At.Atmosphere - v[4]),
            _ => 0,
        };
    }

    /// <summary>[-] Where something that opens goes on its way from one place to another.</summary>
    public double NextCorner(int c, double from, double to) => _opening[c - Straight].NextCorner(from, to);

    /// <summary>Losses of all carriers at their flows.</summary>
    /// <param name="least">[m³/s] Below it the slope of a sharp edge is held, so that a step from nil flow is finite; the loss itself is not touched.</param>
    public void Lose(double least)
    {
        _pipes.Losses(Place, Lost, Steepness);
        Place.AsSpan(0, Straight).CopyTo(Carried);
        for (var c = Pipes; c < Straight; c++)
        {
            var flow = Place[c] - _driven[c];
            var size = Math.Abs(flow);
            Lost[c] = (_linear[c] + (_square[c] * size)) * flow;
            Steepness[c] = _linear[c] + (2 * _square[c] * Math.Max(size, least));
        }

        for (var c = Straight; c < Carriers.Length; c++)
            (Carried[c], Gain[c], Lost[c], Steepness[c]) = _opening[c - Straight].At(Place[c]);
    }

    /// <summary>Flows and slopes of the yielding elements at these pressures.</summary>
    public void Give(double[] pressures, double[] values)
    {
        for (var y = 0; y < Yielding.Length; y++)
        {
            var i = Yielding[y];
            var e = _elements[i];
            (Yield[y], ByFrom[y], ByTo[y], ByThird[y]) = Given(e, ValuesOf(values, i), Valves[y], pressures[e.From], pressures[e.To], ThirdOf(e, pressures), Head[i]);
        }
    }

    /// <summary>[Pa] The loss of a carrier with other numbers, at the flow that it has.</summary>
    public double LossWith(int c, ReadOnlySpan<double> v)
    {
        var flow = Place[c];
        switch (_elements[Carriers[c]])
        {
            case Pipe:
                var turning = At.Speed * v[7];
                return RoughPipes.Loss(v, flow, At.Viscosity, At.Density) - (At.Density * turning * turning * ((v[6] * v[6]) - (v[5] * v[5])) / 2);
            case Orifice:
                var k = v[1] * Math.PI / 4 * v[0] * v[0];
                return At.Density / (2 * k * k) * flow * Math.Abs(flow);
            default:
                return ((v[0] * At.Viscosity) + (v[1] * At.Density * Math.Abs(flow))) * flow;
        }
    }

    /// <summary>[m³/s] What less a carrier passes, the pressures kept, for the natural logarithm of the viscosity.</summary>
    public double FlowLostByThickness(int c, double[] values)
    {
        const double Step = 1e-5;
        var v = ValuesOf(values, Carriers[c]);

        // A valve loses what leaks round its seat, open or shut.
        if (_elements[Carriers[c]] is ReliefValve)
            return _opening[c - Straight].Leak * Lost[c];
        return Gain[c] / Steepness[c] * _elements[Carriers[c]] switch
        {
            Pipe => (RoughPipes.Loss(v, Carried[c], At.Viscosity * (1 + Step), At.Density) - RoughPipes.Loss(v, Carried[c], At.Viscosity * (1 - Step), At.Density)) / (2 * Step),
            Orifice or Consumer => 0,
            Pump => Lost[c],
            _ => _linear[c] * Carried[c],
        };
    }

    /// <summary>[m³/s for each Pa] What a yielding element leaks besides.</summary>
    public double Leak(int y, double[] values) => _elements[Yielding[y]] switch
    {
        Pump => ValuesOf(values, Yielding[y])[1] / At.Viscosity,
        ReliefValve => Valves[y].SeatLeak / At.Viscosity,
        _ => 0,
    };

    /// <summary>[m³/s] The flow of a creeping or yielding element with other numbers, at the pressures as they are.</summary>
    public double FlowWith(int i, ReadOnlySpan<double> v, double[] pressures)
    {
        var e = _elements[i];
        var drop = pressures[e.From] - pressures[e.To] + Head[i];
        return e switch
        {
            LaminarPassage => v[0] / (v[1] != 0 && At.ViscosityAtRise is { } atRise ? atRise(v[1]) : At.Viscosity) * drop,
            Pump { InletLimit: null } => Moved(v) + (v[1] / At.Viscosity * drop),
            Consumer => v[0] * Math.Clamp(drop / v[1], 0, 1),
            ReliefValve valve => Given(e, v, Sprung(valve, v), pressures[e.From], pressures[e.To], ThirdOf(e, pressures), Head[i]).Flow,
            _ => Given(e, v, default, pressures[e.From], pressures[e.To], ThirdOf(e, pressures), Head[i]).Flow,
        };
    }

    /// <summary>[m] how far a valve is open.</summary>
    public double Lift(int i, double[] values, double[] pressures)
    {
        var e = _elements[i];
        var v = ValuesOf(values, i);
        var drop = pressures[e.From] - pressures[e.To] + Head[i];
        return e switch
        {
            ReliefValve valve => Sprung(valve, v).At(drop, valve.Third is null ? drop : pressures[e.From] - ThirdOf(e, pressures), At.Viscosity, At.Density).Lift,
            ReducingValve => new Reducer(v[0], v[1], v[2], v[3], v[4], v[5]).Opening(pressures[e.To] - ThirdOf(e, pressures)),
            _ => 0,
        };
    }

    /// <summary>[-] share of its spaces that a pump fills, and how it changes with the pressure at its inlet.</summary>
    public (double Share, double Slope) Filling(ReadOnlySpan<double> v, double from)
    {
        if (double.IsNaN(v[4]))
            return (1, 0);
        var wholly = double.IsNaN(v[5]) ? At.Atmosphere : v[5];
        var share = (from + At.Atmosphere - v[4]) / (wholly - v[4]);
        return share <= 0 ? (0, 0) : share >= 1 ? (1, 0) : (share, 1 / (wholly - v[4]));
    }

    public ReadOnlySpan<double> ValuesOf(double[] values, int element) => values.AsSpan(_numbers[element].First, _numbers[element].Count);

    private double Moved(ReadOnlySpan<double> v) => (v[0] + v[3]) * At.Speed / (2 * Math.PI) * v[2];

    private double Static(double[] values, int i) => At.Density * OperatingPoint.Gravity * (values[_numbers[i].HeightFrom] - values[_numbers[i].HeightTo]);

    private static double ThirdOf(CircuitElement e, double[] pressures) => e.Third is { } third ? pressures[third] : 0;

    private (double Flow, double ByFrom, double ByTo, double ByThird) Given(CircuitElement element, ReadOnlySpan<double> v, in SpringValve sprung, double from, double to, double third, double head)
    {
        var drop = from - to + head;
        switch (element)
        {
            case Pump:
                var moved = Moved(v);
                var (share, filled) = Filling(v, from);
                var leak = v[1] / At.Viscosity;
                return ((moved * share) + (leak * drop), (moved * filled) + leak, -leak, 0);
            case ReliefValve valve:
                var isPlain = valve.Third is null;
                var state = sprung.At(drop, isPlain ? drop : from - third, At.Viscosity, At.Density);
                if (state.Lift > 0 && drop == 0)
                    return (state.Flow, sprung.SeatLeak / At.Viscosity, -sprung.SeatLeak / At.Viscosity, 0);
                return isPlain
                    ? (state.Flow, state.ByDrop + state.ByLifting, -(state.ByDrop + state.ByLifting), 0)
                    : (state.Flow, state.ByDrop + state.ByLifting, -state.ByDrop, -state.ByLifting);
            case ReducingValve:
                return Reduced(v, to - third, drop);
            default:
                throw new UnreachableException($"{element.GetType().Name} does not yield.");
        }
    }

    private (double Flow, double ByFrom, double ByTo, double ByThird) Reduced(ReadOnlySpan<double> v, double behind, double drop)
    {
        var stiff = Math.PI * v[3] * v[3] / 4 / v[2];
        var opening = Math.Clamp((v[1] - behind) * stiff, 0, v[4]);
        var bore = Math.PI * v[0] * v[0] / 4;
        var area = Math.Min(Math.PI * v[0] * opening, bore);
        if (area == 0)
            return default;

        // Within a pascal of nil drop the root is taken as straight, so that its slope is finite.
        var size = Math.Abs(drop);
        var root = Math.Sqrt(Math.Max(size, Level));
        var speed = v[5] * Math.Sqrt(2 / At.Density) * drop / root;
        var bySpeed = v[5] * Math.Sqrt(2 / At.Density) / root * (size > Level ? 0.5 : 1);
        var yields = opening < v[4] && Math.PI * v[0] * opening < bore ? -Math.PI * v[0] * stiff * speed : 0;
        return (area * speed, area * bySpeed, (-area * bySpeed) + yields, -yields);
    }

    /// <summary>[Pa]</summary>
    private const double Level = 1e-6;

    private static SpringValve Sprung(ReliefValve valve, ReadOnlySpan<double> v) => new(
        valve.Closure switch
        {
            ClosureKind.Poppet => Closure.Poppet(v[0], v[7]),
            ClosureKind.Ball => Closure.Ball(v[0], v[8]),
            ClosureKind.Piston => Closure.Piston(v[0], v[9], v[10]),
            _ => Closure.Disc(v[0]),
        },
        v[1], v[2], v[3], v[4])
    {
        SeatGap = v[5],
        SeatWidth = v[6],
    };
}
