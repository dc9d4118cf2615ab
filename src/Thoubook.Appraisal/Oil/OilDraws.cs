using Thoubook.Appraisal.Estimates;
using Thoubook.Mechanics.Circuits;
using Thoubook.Mechanics.Metrology;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

/// <summary>Draws of everything uncertain in a circuit, each solved whole: where doubt is wide, flow by the cube of a gap makes the band lopsided.</summary>
internal sealed class OilDraws
{
    private readonly SolvedCircuit _solved;
    private readonly OilPoint _point;
    private readonly List<UncertaintySource> _sources = [];
    private readonly List<DrawnInput> _inputs = [];

    public OilDraws(SolvedCircuit solved, OilPoint point)
    {
        (_solved, _point) = (solved, point);
        foreach (var input in solved.Sizes.Inputs.OrderBy(i => i.Element))
            _inputs.Add(new DrawnInput(input, [.. input.Of.Contributions.Select(c => (Place(c.Source), c.Value))]));
    }

    /// <summary>[Pa] Draws of the pressure at a node.</summary>
    /// <param name="node">Which.</param>
    /// <param name="draws">How many, 2 or more.</param>
    /// <param name="seed">The same seed gives the same draws whatever the number of threads.</param>
    public Sample Of(NodeName node, int draws, ulong seed)
    {
        using var each = new ThreadLocal<OneDraw>(() => new OneDraw(this, node));
        Draw[] how = [.. _sources.Select(s => s.Kind == SourceKind.Drawing ? Draw.Rectangular(0, Math.Sqrt(3)) : Draw.Normal(0, 1)), Draw.Normal(0, _solved.Oil.Doubt)];
        return MonteCarlo.Propagate(how, z => each.Value!.Pressure(z), draws, seed);
    }

    private int Place(UncertaintySource source)
    {
        var place = _sources.IndexOf(source);
        if (place >= 0)
            return place;
        _sources.Add(source);
        return _sources.Count - 1;
    }

    /// <summary>An uncertain size, and how much of each source is in it.</summary>
    private sealed record DrawnInput(SizeInput Input, (int Source, double Share)[] Shares);

    /// <summary>One solver; not for two threads at once.</summary>
    private sealed class OneDraw(OilDraws all, NodeName node)
    {
        private readonly CircuitSolver _solver = all._solved.Solver();
        private readonly int _node = all._solved.Place(node);

        public double Pressure(ReadOnlySpan<double> z)
        {
            for (var i = 0; i < all._inputs.Count;)
            {
                var element = all._inputs[i].Input.Element;
                var sizes = all._solved.Sizes[element].Copy();
                double flow = 0;
                for (; i < all._inputs.Count && all._inputs[i].Input.Element == element; i++)
                {
                    double change = 0;
                    foreach (var (source, share) in all._inputs[i].Shares)
                        change += share * z[source];
                    if (all._inputs[i].Input.Key is >= 0 and var key)
                        sizes.Move(key, change);
                    else
                        flow += change;
                }

                all._solved.Set(_solver, element, sizes, Math.Exp(flow));
            }

            _solver.StartFrom(all._solved.Start);
            _solver.Solve(all._solved.Oil.At(all._point.Speed, Math.Exp(z[^1])));
            return _solver.Pressure(_node);
        }
    }
}
