using Thoubook.Appraisal.Estimates;
using Thoubook.Mechanics.Circuits;
using Thoubook.Mechanics.Metrology;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

/// <summary>
/// How far a gauge may read below and above: all sources of doubt are moved together, by as much as holds them 95 times in 100, to where the gauge reads least and to where it reads
/// most, and the circuit is solved there. Where nothing bends this is the band by slopes; beside a valve that opens or shuts within it, and where flow by the cube of a gap makes it lopsided, it
/// is not. Which way to move is seen from the slopes as the circuit stands, from those with open valves held shut, and from those at the far point itself.
/// </summary>
internal sealed class GaugeBands(SolvedCircuit solved, TestedSources? test)
{
    /// <summary>How it is told.</summary>
    public const string How = "Bands: everything uncertain is moved together to where the gauge reads least and most of 95 times in 100, and the circuit solved there.";

    /// <summary>[Pa] A valve held shut opens at no pressure below this.</summary>
    private const double Shut = 1e8;

    /// <summary>[-] Standard uncertainties beyond which nothing is looked for.</summary>
    private const double MostSteps = 4.5;

    private const int Halvings = 10;

    /// <summary>[-] of a pressure, that is no change.</summary>
    private const double Hardly = 1e-3;

    private readonly Lazy<MovedCircuit> _moved = new(() => new MovedCircuit(solved));
    private readonly double[] _mean = test?.Mean ?? new double[solved.Sizes.Sources.Count + 1];
    private readonly Dictionary<int, double> _centres = [];
    private readonly Dictionary<int, double[][]> _ways = [];
    private List<CircuitSolver>? _heldShut;

    private MovedCircuit Moved => _moved.Value;

    /// <summary>[Pa] from what a gauge reads down and up to the ends of its band.</summary>
    /// <param name="node">Which it taps.</param>
    /// <param name="reading">With every doubt, its own included.</param>
    /// <param name="own">[Pa] standard uncertainty of the gauge itself.</param>
    public (double Down, double Up) Around(NodeName node, Estimate reading, double own)
    {
        if (!(reading.StandardUncertainty > 0))
            return (0, 0);
        var reach = reading.Band / reading.StandardUncertainty;
        var place = solved.Place(node);
        var centre = Centre(place);
        return (Math.Max(0, centre - Furthest(-1)), Math.Max(0, Furthest(1) - centre));

        double Furthest(int sign)
        {
            var (furthest, best) = (double.NaN, (double[]?)null);
            foreach (var way in Ways(place))
            {
                if (At(place, way, own, sign * reach) is var pressure && !double.IsNaN(pressure) && (best is null || sign * pressure > sign * furthest))
                    (furthest, best) = (pressure, way);
            }

            if (best is null)
                return centre + (sign * reading.Band);

            // And once more as the slopes are at its end.
            At(place, best, own, sign * reach);
            var again = At(place, solved.SlopesBySource(Moved.Solver, place), own, sign * reach);
            return double.IsNaN(again) ? furthest : sign * Math.Max(sign * furthest, sign * again);
        }
    }

    /// <summary>[-] How probable it is that a gauge reads below a limit: by how far everything must be moved together until it does.</summary>
    /// <param name="node">Which it taps.</param>
    /// <param name="reading">With every doubt, its own included.</param>
    /// <param name="own">[Pa] standard uncertainty of the gauge itself.</param>
    /// <param name="limit">[Pa] as the gauge shows it.</param>
    public double Below(NodeName node, Estimate reading, double own, double limit)
    {
        var place = solved.Place(node);
        var centre = Centre(place);
        var wanted = limit - reading.Value + centre;
        if (!(reading.StandardUncertainty > 0))
            return centre < wanted ? 1 : 0;
        var sign = wanted < centre ? -1 : 1;
        var steps = Ways(place).Select(Steps).Min();
        var beyond = Conformance.Within(0, 1, reading.DegreesOfFreedom, Interval.AtLeast(-steps)).Below;
        return sign < 0 ? beyond : 1 - beyond;

        double Steps(double[] way)
        {
            var (from, to) = (0.0, MostSteps);
            if (!IsBeyond(to))
                return MostSteps;
            for (var i = 0; i < Halvings; i++)
            {
                var middle = (from + to) / 2;
                if (IsBeyond(middle))
                    to = middle;
                else
                    from = middle;
            }

            return to;

            bool IsBeyond(double step) => At(place, way, own, sign * step) is var pressure && sign * pressure >= sign * wanted;
        }
    }

    private double[][] Ways(int place)
    {
        if (!_ways.TryGetValue(place, out var ways))
            _ways[place] = ways = [solved.SlopesBySource(solved.Own, place), .. HeldShut.Where(Matters).Select(solver => solved.SlopesBySource(solver, place))];
        return ways;

        // A valve by which the gauge stands where it stands without it is none of its own.
        bool Matters(CircuitSolver shut) => Math.Abs(shut.Pressure(place) - solved.Own.Pressure(place)) > Hardly * Math.Abs(solved.Own.Pressure(place));
    }

    /// <summary>[Pa] at a node with everything moved the way of some slopes, the gauge's own doubt with it; NaN where that cannot be solved.</summary>
    private double At(int place, double[] slopes, double own, double steps)
    {
        var left = test?.Left(slopes) ?? slopes;
        double square = own * own;
        for (var i = 0; i < slopes.Length; i++)
            square += slopes[i] * left[i];
        if (!(square > 0))
            return Centre(place);
        var step = steps / Math.Sqrt(square);
        double[] z = [.. left.Select((l, i) => _mean[i] + (step * l))];
        return Moved.To(z) ? Moved.Solver.Pressure(place) + (step * own * own) : double.NaN;
    }

    /// <summary>Whether a valve may open or shut within the band of a gauge, as far as slopes tell.</summary>
    /// <param name="node">Which it taps.</param>
    /// <param name="reading">With every doubt, by slopes.</param>
    public bool ValvesMayChange(NodeName node, Estimate reading)
    {
        if (!(reading.StandardUncertainty > 0))
            return false;
        var relative = reading.Band / Math.Max(Math.Abs(reading.Value), 1);
        foreach (var (law, valve) in Laws<ReliefValve>())
        {
            if (solved.Own.Lift(law) == 0 && (solved.Own.Pressure(valve.From) - solved.Own.Pressure(valve.Vent ?? valve.To)) * (1 + relative) >= valve.Preload / (Math.PI / 4 * valve.Seat * valve.Seat))
                return true;
        }

        // Open valves hold the pressure as long as what it would be without them lies above it.
        var open = OpenValves;
        if (open.Length == 0)
            return false;
        if (Held(open) is not { } shut)
            return true;
        var place = solved.Place(node);
        var reach = reading.Band / reading.StandardUncertainty;
        var slopes = solved.SlopesBySource(shut, place);
        return shut.Pressure(place) - (reach * Math.Sqrt(slopes.Sum(s => s * s))) < solved.Own.Pressure(place);
    }

    private IEnumerable<(int Law, T Element)> Laws<T>()
        where T : CircuitElement => solved.Own.Circuit.Elements.Select((e, i) => (i, e)).Where(l => l.e is T).Select(l => (l.i, (T)l.e));

    /// <summary>[Pa] at a node with every source where it lies most likely: as the circuit stands, or as the flow test says.</summary>
    public double Centre(NodeName node) => Centre(solved.Place(node));

    private double Centre(int place)
    {
        if (test is null)
            return solved.Own.Pressure(place);
        if (!_centres.TryGetValue(place, out var centre))
            _centres[place] = centre = Moved.To(_mean) ? Moved.Solver.Pressure(place) : solved.Own.Pressure(place);
        return centre;
    }

    private (int Law, ReliefValve Valve)[] OpenValves => [.. Laws<ReliefValve>().Where(l => solved.Own.Lift(l.Law) > 0)];

    /// <summary>The circuit with each of the valves that are open held shut, and with all of them.</summary>
    private List<CircuitSolver> HeldShut => _heldShut ??= OpenValves is var open && open.Length > 1
        ? [.. open.Select(o => Held([o])).Append(Held(open)).OfType<CircuitSolver>()]
        : [.. new[] { open.Length == 1 ? Held(open) : null }.OfType<CircuitSolver>()];

    private CircuitSolver? Held((int Law, ReliefValve Valve)[] shut)
    {
        var solver = solved.Solver();
        foreach (var (law, valve) in shut)
            solver[solver.Circuit.Find(law, nameof(ReliefValve.Preload))] = Shut * Math.PI / 4 * valve.Seat * valve.Seat;
        solver.StartFrom(solved.Start);
        return solver.Solve(solved.Oil.At(solved.Speed)).Converged ? solver : null;
    }
}
