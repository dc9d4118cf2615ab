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
    private readonly YieldingLaw[] _yielding;

    public CircuitLaws(Circuit circuit)
    {
        _elements = [.. circuit.Elements];
        _numbers = [.. _elements.Select((e, i) => (circuit.FirstParameter(i), e.Rules.Length, circuit.FindHeight(e.From).Index, circuit.FindHeight(e.To).Index))];
        var use = Enumerable.Range(0, circuit.ElementCount).Where(i => !circuit.Elements[i].Blanked).ToList();
        var pipes = use.Where(i => circuit.Elements[i] is Pipe).ToList();
        Pipes = pipes.Count;
        Carriers =
        [
            .. pipes, .. use.Where(i => circuit.Elements[i] is LaminarPassage or QuadraticPassage or Orifice or Pump { InletLimit: null }),
            .. use.Where(i => circuit.Elements[i] is Consumer or ReliefValve { Third: null }), .. use.Where(i => Yields(circuit.Elements[i])),
        ];
        Yielding = Carriers.Count(i => Yields(circuit.Elements[i]));
        FirstYielding = Carriers.Length - Yielding;
        Straight = Carriers.Take(FirstYielding).Count(i => circuit.Elements[i] is not (Consumer or ReliefValve));
        _pipes = new RoughPipes(Pipes);
        var room = RoughPipes.Padded(Carriers.Length) + 4;
        (Place, Carried, Gain, Lost, Steepness) = (new double[room], new double[room], new double[room], new double[room], new double[room]);
        Array.Fill(Gain, 1);
        (_linear, _square, _driven) = (new double[Straight], new double[Straight], new double[Straight]);
        _opening = new OpeningLaw[FirstYielding - Straight];
        _yielding = new YieldingLaw[Yielding];
        (Look, ByLook) = (new double[Yielding], new double[Yielding]);
        Head = new double[circuit.ElementCount];
        CarrierHead = new double[Carriers.Length];
        PlaceAmongCarriers = new int[circuit.ElementCount];
        Array.Fill(PlaceAmongCarriers, -1);
        for (var c = 0; c < Carriers.Length; c++)
            PlaceAmongCarriers[Carriers[c]] = c;

        static bool Yields(CircuitElement e) => e is ReliefValve { Third: not null } or ReducingValve or Pump { InletLimit: not null };
    }

    /// <summary>The pipes first, then what opens, what looks at another pressure last.</summary>
    public int[] Carriers { get; }

    /// <summary>How many look at another pressure.</summary>
    public int Yielding { get; }

    public int FirstYielding { get; }

    /// <summary>By element; −1 for others.</summary>
    public int[] PlaceAmongCarriers { get; }

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

    /// <summary>[Pa] that the yielding look at.</summary>
    public double[] Look { get; }

    /// <summary>[m³/s for each Pa] by which their flow rises with it.</summary>
    public double[] ByLook { get; }

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
            if (c >= FirstYielding)
            {
                _yielding[c - FirstYielding] = Yields(_elements[i], v);
                continue;
            }

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
    }

    private YieldingLaw Yields(CircuitElement element, ReadOnlySpan<double> v) => element switch
    {
        Pump => YieldingLaw.Pump(Moved(v), v[1] / At.Viscosity, v[4] - At.Atmosphere, double.IsNaN(v[5]) ? 0 : v[5] - At.Atmosphere),
        ReliefValve valve => YieldingLaw.Valve(Sprung(valve, v), At.Viscosity, At.Density),
        _ => YieldingLaw.Reducing(new Reducer(v[0], v[1], v[2], v[3], v[4], v[5]), At.Density),
    };

    /// <summary>[Pa for each m³/s] of a passage of no conductance.</summary>
    private const double Blocked = 1e200;

    /// <summary>[any] A place where a carrier may well stand: one metre a second, or the creep of a little pressure.</summary>
    public double Usual(int c, double[] values)
    {
        if (c >= FirstYielding)
            return _yielding[c - FirstYielding].PlaceAt(1e4);
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
    public double AtRest(int c) => c >= FirstYielding ? 0 : c >= Straight ? -_opening[c - Straight].Restful : _driven[c];

    /// <summary>For a first step: a pump that fills wholly, or not at all, may yet starve.</summary>
    public void GuessLooks()
    {
        for (var y = 0; y < _yielding.Length; y++)
            ByLook[y] = _yielding[y].GuessedByLook(ByLook[y]);
    }

    /// <summary>[-] Where something that opens goes on its way from one place to another.</summary>
    public double NextCorner(int c, double from, double to) => _opening[c - Straight].NextCorner(from, to);

    /// <summary>Sets each carrier to where its law crosses the line along which the rest of the net answers it.</summary>
    /// <param name="drops">[Pa] at that step.</param>
    /// <param name="flows">[m³/s] at that step.</param>
    /// <param name="weights">[-] of what a drop is out by.</param>
    /// <param name="answers">[Pa for each m³/s] of what a flow is out by.</param>
    public void Meet(double[] drops, double[] flows, double[] weights, double[] answers)
    {
        double change = 1;
        for (var pass = 0; pass < 12 && change > 1e-4; pass++)
        {
            change = 0;
            _pipes.Losses(Place, Lost, Steepness);
            for (var c = 0; c < Pipes; c++)
            {
                var y = Math.Abs(Place[c]);
                var (loss, slope) = (Math.Abs(Lost[c]), Steepness[c]);
                var (square, linear) = y > 0 ? ((slope - (loss / y)) / y, (2 * loss / y) - slope) : (0, slope);
                var next = linear >= 0
                    ? Crossing(linear, Math.Max(0, square), drops[c], flows[c], weights[c], answers[c])
                    : Nearer(Place[c], y, loss, slope, (weights[c] * drops[c]) + (answers[c] * flows[c]), weights[c], answers[c]);
                change = Math.Max(change, Math.Abs(next - Place[c]) / (Math.Abs(next) + Math.Abs(Place[c]) + double.Epsilon));
                Place[c] = next;
            }
        }

        for (var c = Pipes; c < Straight; c++)
            Place[c] = _driven[c] + Crossing(_linear[c], _square[c], drops[c], flows[c] - _driven[c], weights[c], answers[c]);
        for (var c = Straight; c < FirstYielding; c++)
            Place[c] = _opening[c - Straight].Meeting(Place[c], drops[c], flows[c], weights[c], answers[c]);
    }

    /// <summary>[m³/s] A step of Newton's where a pipe turns turbulent, and its loss rises faster than by the square; not past a third or thrice the flow.</summary>
    private static double Nearer(double flow, double size, double loss, double slope, double right, double weight, double answer)
    {
        var sign = Math.Sign(flow);
        var over = (weight * loss) + (answer * size) - (sign * right);
        return sign * Math.Clamp(size - (over / ((weight * slope) + answer)), size / 3, size * 3);
    }

    /// <summary>[m³/s] Where w (B Q + S Q|Q| − drop) + a (Q − flow) is nil.</summary>
    private static double Crossing(double linear, double square, double drop, double flow, double weight, double answer)
    {
        var right = (weight * drop) + (answer * flow);
        if (right == 0)
            return 0;
        var (b, s) = ((weight * linear) + answer, weight * square);
        return Math.CopySign(2 * Math.Abs(right) / (b + Math.Sqrt((b * b) + (4 * s * Math.Abs(right)))), right);
    }

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

        for (var c = Straight; c < FirstYielding; c++)
            (Carried[c], Gain[c], Lost[c], Steepness[c]) = _opening[c - Straight].At(Place[c]);
        for (var y = 0; y < _yielding.Length; y++)
        {
            var c = FirstYielding + y;
            (Carried[c], Gain[c], Lost[c], Steepness[c], ByLook[y]) = _yielding[y].At(Look[y], Place[c], least);
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

        if (c >= FirstYielding)
            return _yielding[c - FirstYielding].Leak * Lost[c];

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
            ReliefValve { Third: null } valve => Sprung(valve, v).At(drop, drop, At.Viscosity, At.Density).Flow,
            _ => Yielded(Yields(e, v), LookOf(e, pressures), drop),
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

    private static double Yielded(in YieldingLaw law, double look, double drop) => law.At(look, law.PlaceAt(drop), 0).Flow;

    /// <summary>[m³/s] What something that opens carries at another place.</summary>
    public double CarriedAt(int c, double place) => _opening[c - Straight].At(place).Flow;

    /// <summary>[m³/s] What a yielding element passes at other pressures.</summary>
    public double PassedAt(int y, double look, double drop) => Yielded(_yielding[y], look, drop);

    /// <summary>[Pa] What a yielding element looks at.</summary>
    public static double LookOf(CircuitElement e, double[] pressures) => pressures[e is ReducingValve ? e.To : e.From] - ThirdOf(e, pressures);

    /// <summary>The same for one that looks at another pressure.</summary>
    public void MeetLooking(int y, double look, double drop, double flow, (double Look, double Drop, double Flow) answers, double most) =>
        (Look[y], Place[FirstYielding + y]) = _yielding[y].Meeting(look, drop, flow, answers, most);

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
