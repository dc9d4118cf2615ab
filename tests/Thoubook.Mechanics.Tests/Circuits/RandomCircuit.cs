using Thoubook.Mechanics.Circuits;
using Thoubook.Mechanics.Flow;
using Thoubook.Mechanics.Valves;

namespace Thoubook.Mechanics.Tests.Circuits;

/// <summary>
/// A circuit made at random from a drawn solution: pressures are drawn first, elements of every kind are put between them, and what is over at a node is taken
/// away or brought by one more element, so that the drawn pressures balance.
/// </summary>
internal sealed class RandomCircuit
{
    private const double Gravity = 9.80665;

    private readonly Random _random;
    private readonly List<CircuitNode> _nodes = [];
    private readonly List<CircuitElement> _elements = [];
    private readonly List<double> _pressures = [];
    private readonly List<double> _left = [];
    private readonly double _decades;
    private readonly double _usual;

    public RandomCircuit(int seed)
    {
        _random = new Random(seed);
        IsOrdinary = _random.NextDouble() < 0.6;
        IsPlain = _random.NextDouble() < 0.5;
        _decades = IsOrdinary ? 1 : 5;
        _usual = IsOrdinary ? Log(5e4, 1e6) : Log(1, 1e9);
        var viscosity = IsOrdinary ? Log(5e-3, 0.1) : Log(5e-4, 30);
        At = new(_random.NextDouble() < 0.1 ? 0 : IsOrdinary ? Log(30, 400) : Log(1e-3, 3e3), viscosity, 780 + (200 * _random.NextDouble()))
        {
            ViscosityAtRise = rise => viscosity * Math.Exp(-0.02 * rise),
        };
        Draw();
    }

    public IReadOnlyList<CircuitNode> Nodes => _nodes;

    public IReadOnlyList<CircuitElement> Elements => _elements;

    public OperatingPoint At { get; }

    /// <summary>[Pa] as drawn.</summary>
    public IReadOnlyList<double> Pressures => _pressures;

    /// <summary>Whether every size is such as an engine has.</summary>
    public bool IsOrdinary { get; }

    /// <summary>Whether every element obeys its own pressure difference: no pump that may starve, no valve vented elsewhere, no reducing valve.</summary>
    public bool IsPlain { get; }

    /// <summary>Whether no element looks at a third pressure and none passes less as its drop rises, so that there is no other solution.</summary>
    public bool IsOnlySolution { get; private set; } = true;

    /// <summary>Spoils it so that it has no solution.</summary>
    /// <returns>What must be named, and a name that must be in it.</returns>
    public (CircuitFaultKind Kind, string Name) Spoil()
    {
        var inside = _random.Next(1, _nodes.Count);
        switch (_random.Next(10))
        {
            case 0:
                for (var i = 0; i < _nodes.Count; i++)
                    _nodes[i] = _nodes[i] with { FixedPressure = null };
                return (CircuitFaultKind.NoReservoir, "");
            case 1:
                _elements.Add(new Pump("spoilt", inside, Another("end"), 1e-6, 0));
                return (CircuitFaultKind.OpenEnd, "spoilt");
            case 2:
                Another("alone");
                return (CircuitFaultKind.NodeNobodyFeeds, "alone");
            case 3:
                _elements.Add(new Orifice("apart", Another("one"), Another("other"), 0.002, 0.6));
                return (CircuitFaultKind.IslandWithoutReservoir, "one");
            case 4:
                var middle = Another("middle");
                _elements.Add(new Pump("first", 0, middle, 1e-6, 0));
                _elements.Add(new Pump("second", middle, inside, 2e-6, 0));
                return (CircuitFaultKind.PumpsInSeries, "second");
            case 5:
                var (shut, behind) = (Another("shut"), Another("behind"));
                _elements.Add(new Pump("spoilt", 0, shut, 1e-6, 0));
                _elements.Add(new Pipe("pipe", shut, behind, 0.005, 0.1, 0));
                _elements.Add(new ReliefValve("turned round", inside, behind, 0.01, 5, 1e3, 0.002, 0.6));
                return (CircuitFaultKind.NoWayOut, "spoilt");
            case 6:
                var (dry, drier) = (Another("dry"), Another("drier"));
                _elements.Add(new Pump("spoilt", dry, 0, 1e-6, 0));
                _elements.Add(new QuadraticPassage("gauze", dry, drier, 1e9, 1e9));
                return (CircuitFaultKind.NoWayIn, "spoilt");
            case 7:
                var unfed = Another("unfed");
                _elements.Add(new Consumer("spoilt", unfed, 0, 1e-6, 1e4));
                return (CircuitFaultKind.ConsumerCannotBeFed, "spoilt");
            case 8:
                _elements.Add(new Pipe("spoilt", 0, inside, _random.NextDouble() < 0.5 ? -1e-3 : double.NaN, 1, 0));
                return (CircuitFaultKind.UnphysicalSize, "spoilt");
            default:
                _elements.Add(new LaminarPassage(_elements[0].Name, 0, inside, 1e-12));
                return (CircuitFaultKind.DuplicateName, _elements[0].Name);
        }
    }

    private int Another(string name)
    {
        _nodes.Add(new(name));
        return _nodes.Count - 1;
    }

    private void Draw()
    {
        var n = _random.Next(5, 151);
        var areHigh = _random.NextDouble() < 0.3;
        for (var i = 0; i < n; i++)
        {
            var pressure = i == 0 ? 0
                : _random.NextDouble() < 0.1 ? _pressures[_random.Next(i)]
                : _random.NextDouble() < 0.05 ? -0.6e5 * _random.NextDouble()
                : IsOrdinary ? _usual * _random.NextDouble() : Log(_usual * 1e-4, _usual);
            var isFixed = i == 0 || (i < n / 4 && _random.NextDouble() < 0.05);
            _nodes.Add(new($"n{i}", isFixed ? pressure : null, areHigh ? _random.NextDouble() : 0));
            _pressures.Add(pressure);
            _left.Add(0);
        }

        // Every node hangs on one before it by something that conducts; then as many more as there is mind for.
        for (var i = 1; i < n; i++)
            Add(Conducting(i, Near(i)));
        for (var more = _random.NextDouble() * 1.2 * n; more > 0; more--)
        {
            var to = _random.Next(1, n);
            var from = _random.NextDouble() < 0.4 ? 0 : Near(to);
            Add(_random.NextDouble() < 0.4 ? Conducting(to, from) : Answering(to, from));
        }

        for (var i = 0; i < n; i++)
        {
            if (_nodes[i].FixedPressure is null)
                SquareUp(i);
        }
    }

    private int Near(int i) => Math.Max(0, i - 1 - (int)(i * Math.Pow(_random.NextDouble(), 4)));

    private void Add((CircuitElement Element, double Flow) drawn)
    {
        if (!double.IsFinite(drawn.Flow) || Math.Abs(drawn.Flow) > 1e6)
            return;
        var (element, flow) = drawn;
        _elements.Add(element);
        _left[element.From] += flow;
        _left[element.To] -= flow;
    }

    /// <summary>[Pa]</summary>
    private double Drive(int from, int to) => _pressures[from] - _pressures[to] + (At.Density * Gravity * (_nodes[from].Height - _nodes[to].Height));

    private (CircuitElement Element, double Flow) Conducting(int a, int b)
    {
        var (from, to) = _random.NextDouble() < 0.5 ? (a, b) : (b, a);
        var drive = Drive(from, to);
        var size = Math.Abs(drive);
        var name = $"e{_elements.Count}";
        switch (_random.Next(5))
        {
            case 0:
            case 1:
                var (fromRadius, toRadius) = _random.NextDouble() < 0.15 ? (0.03 * _random.NextDouble(), 0.08 * _random.NextDouble()) : (0, 0);
                var turned = drive + (At.Density * At.Speed * At.Speed * ((toRadius * toRadius) - (fromRadius * fromRadius)) / 2);
                var bore = Around(5e-3);
                var relative = _random.NextDouble() < 0.3 ? 0 : 0.04 * _random.NextDouble();
                var velocity = Around(1);
                var friction = Friction.Churchill(At.Density * velocity * bore / At.Viscosity, relative);
                var heads = 2 * Math.Abs(turned) / (At.Density * velocity * velocity);
                var losses = _random.NextDouble() < 0.3 ? heads * 0.5 * _random.NextDouble() : 0;
                var length = turned == 0 ? 1 : (heads - losses) * bore / friction;
                if (length is > 0 and < 1e9)
                {
                    var number = _random.Next(1, 4);
                    return (new Pipe(name, from, to, bore, length, relative * bore) { Losses = losses, Number = number, FromRadius = fromRadius, ToRadius = toRadius },
                        Math.Sign(turned) * number * Math.PI / 4 * bore * bore * velocity);
                }

                goto default;
            case 2:
                var jet = Around(2e-3);
                var discharge = 0.5 + (0.4 * _random.NextDouble());
                return (new Orifice(name, from, to, jet, discharge), Math.Sign(drive) * discharge * Math.PI / 4 * jet * jet * Math.Sqrt(2 * size / At.Density));
            case 3:
                var flow = Around(1e-5);
                var linear = size / (At.Viscosity * flow) * (_random.NextDouble() < 0.2 ? 0 : _random.NextDouble());
                if (size == 0)
                    goto default;
                return (new QuadraticPassage(name, from, to, linear, (size - (linear * At.Viscosity * flow)) / (At.Density * flow * flow)), Math.Sign(drive) * flow);
            default:
                var conductance = Around(1e-5) * At.Viscosity / Math.Max(size, 1);
                var rise = _random.NextDouble() < 0.3 ? 30 * _random.NextDouble() : 0;
                return (new LaminarPassage(name, from, to, conductance) { FilmRise = rise }, conductance * drive / (At.Viscosity * Math.Exp(-0.02 * rise)));
        }
    }

    private (CircuitElement Element, double Flow) Answering(int a, int b)
    {
        var (from, to) = Drive(a, b) >= 0 != _random.NextDouble() < 0.2 ? (a, b) : (b, a);
        var drive = Drive(from, to);
        var name = $"e{_elements.Count}";
        switch (IsPlain ? _random.Next(3, 9) : _random.Next(8))
        {
            case 0:
            case 8:
                var takes = Around(1e-5);
                var fullAt = _random.NextDouble() < 0.2 && drive > 0 ? drive : Around(1e4);
                return (new Consumer(name, from, to, takes, fullAt), takes * Math.Clamp(drive / fullAt, 0, 1));
            case 1:
            case 3:
                return Pumped(name, from, to);
            case 2:
                var third = _random.NextDouble() < 0.5 ? (int?)null : _random.Next(_nodes.Count);
                var piston = Around(0.012);
                var behind = _pressures[to] - (third is { } node ? _pressures[node] : 0);
                var open = Around(2e-3);
                var area = Math.PI / 4 * piston * piston;
                var spring = area * _usual * Around(0.3) / open;
                var setting = Math.Max(0, behind + (open * spring / area * (_random.NextDouble() < 0.2 ? _random.Next(2) : (1.4 * _random.NextDouble()) - 0.2)));
                var (reducing, letsThrough) = (Around(6e-3), 0.65);
                IsOnlySolution = false;
                var opening = new Reducer(reducing, setting, spring, piston, open, letsThrough).Opening(behind);
                return (new ReducingValve(name, from, to, reducing, setting, spring, piston, open, letsThrough) { Vent = third },
                    Math.Sign(drive) * letsThrough * Math.PI * reducing * Math.Min(opening, reducing / 4) * Math.Sqrt(2 * Math.Abs(drive) / At.Density));
            default:
                return Valve(name, from, to, drive);
        }
    }

    private (CircuitElement Element, double Flow) Pumped(string name, int from, int to)
    {
        var flow = Around(2e-5);
        var leak = _random.NextDouble() < 0.5 ? 0 : flow * At.Viscosity / Math.Max(Math.Abs(Drive(from, to)), 1) * 0.5 * _random.NextDouble();
        var turns = Math.Max(At.Speed, 1e-3) / (2 * Math.PI);
        var pump = new Pump(name, from, to, flow / turns, leak);
        double share = 1;
        if (!IsPlain && _random.NextDouble() < 0.5)
        {
            var absolute = _pressures[from] + At.Atmosphere;
            share = _random.NextDouble() < 0.4 ? 1 : _random.NextDouble();
            var limit = Math.Max(0, absolute * 0.8 * _random.NextDouble());
            if (absolute - limit is > 1 and var over && share > 0.01)
                pump = pump with { InletLimit = limit, FillsAt = limit + (over / share) };
            else
                share = 1;
        }

        return (pump, (flow / turns * At.Speed / (2 * Math.PI) * share) + (leak / At.Viscosity * Drive(from, to)));
    }

    private (CircuitElement Element, double Flow) Valve(string name, int from, int to, double drive)
    {
        var closure = (ClosureKind)_random.Next(4);
        int? vent = !IsPlain && _random.NextDouble() < 0.15 ? _random.Next(_nodes.Count) : null;
        if (vent == from)
            vent = null;
        var lifting = vent is { } v && vent != to ? _pressures[from] - _pressures[v] : drive;
        var (seat, lift) = (Around(0.01), Around(2e-3));
        var area = Math.PI / 4 * seat * seat;
        var force = Math.Max(area * lifting, 0);
        var preload = _random.Next(5) switch
        {
            0 => force,
            1 => force * (1 + _random.NextDouble()),
            2 => 0,
            _ => force * _random.NextDouble(),
        };
        var spring = _random.NextDouble() < 0.2 && force > preload ? (force - preload) / lift : area * _usual * Around(0.3) / lift;
        var relief = new ReliefValve(name, from, to, seat, preload, spring, lift, 0.5 + (0.3 * _random.NextDouble()))
        {
            Closure = closure,
            SeatGap = _random.NextDouble() < 0.3 ? Around(1e-5) : 0,
            HalfAngle = 0.3 + _random.NextDouble(),
            Ball = seat * (1.05 + _random.NextDouble()),
            Port = Around(4e-3),
            Overlap = lift * 0.8 * _random.NextDouble(),
            Vent = vent,
        };
        IsOnlySolution &= (vent is null || vent == to) && closure is ClosureKind.Disc or ClosureKind.Ball;
        var shut = closure switch
        {
            ClosureKind.Poppet => Closure.Poppet(seat, relief.HalfAngle),
            ClosureKind.Ball => Closure.Ball(seat, relief.Ball),
            ClosureKind.Piston => Closure.Piston(seat, relief.Port, relief.Overlap),
            _ => Closure.Disc(seat),
        };
        var state = new SpringValve(shut, preload, spring, lift, relief.Discharge) { SeatGap = relief.SeatGap, SeatWidth = relief.SeatWidth }.At(drive, lifting, At.Viscosity, At.Density);
        return (relief, state.Flow);
    }

    /// <summary>Takes away what is over at a node, or brings what is short.</summary>
    private void SquareUp(int node)
    {
        var flow = -_left[node];
        if (flow == 0)
            return;
        var name = $"e{_elements.Count}";
        var (from, to, size) = flow > 0 ? (node, 0, flow) : (0, node, -flow);
        var drive = Drive(from, to);
        if (drive > 0 && _random.NextDouble() < 0.6)
        {
            Add(_random.NextDouble() < 0.3
                ? (new Consumer(name, from, to, size, drive * (_random.NextDouble() < 0.3 ? 1 : _random.NextDouble())), size)
                : (new LaminarPassage(name, from, to, size * At.Viscosity / drive), size));
        }
        else if (At.Speed > 0)
        {
            var turns = At.Speed / (2 * Math.PI);
            Add((new Pump(name, from, to, size / turns, 0), size));
        }
        else
        {
            // The engine stands: a tank above or below does it.
            var tank = _nodes.Count;
            var pressure = _pressures[node] + (Math.Sign(-flow) * (_usual * 0.1));
            _nodes.Add(new($"n{tank}", pressure, _nodes[node].Height));
            _pressures.Add(pressure);
            _left.Add(0);
            Add((new LaminarPassage(name, node, tank, flow * At.Viscosity / Drive(node, tank)), flow));
        }
    }

    private double Around(double size) => size * Math.Pow(10, _decades * (_random.NextDouble() - 0.5));

    private double Log(double low, double high) => low * Math.Pow(high / low, _random.NextDouble());
}
