using Thoubook.Mechanics.Circuits;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

/// <summary>A solved circuit with every source of doubt moved by some standard uncertainties, solved whole. Not for two threads at once.</summary>
internal sealed class MovedCircuit
{
    private readonly SolvedCircuit _solved;
    private readonly (int Element, int[] Inputs)[] _elements;

    public MovedCircuit(SolvedCircuit solved)
    {
        _solved = solved;
        Solver = solved.Solver();
        _elements = [.. Enumerable.Range(0, solved.Sizes.Inputs.Count).GroupBy(i => solved.Sizes.Inputs[i].Element).Select(g => (g.Key, g.ToArray()))];
    }

    public CircuitSolver Solver { get; }

    /// <summary>Moves every source from where it stands and solves.</summary>
    /// <param name="z">[-] standard uncertainties of each of the sources of the sizes, then of how thick the oil is.</param>
    /// <returns>Whether it could be solved.</returns>
    public bool To(ReadOnlySpan<double> z)
    {
        foreach (var (element, inputs) in _elements)
        {
            var sizes = _solved.Sizes[element].Copy();
            double flow = 0;
            foreach (var input in inputs)
            {
                double change = 0;
                foreach (var (source, share) in _solved.Sizes.SharesOf(input))
                    change += share * z[source];
                if (_solved.Sizes.Inputs[input].Key is >= 0 and var key)
                    sizes.Move(key, change);
                else
                    flow += change;
            }

            _solved.Set(Solver, element, sizes, Math.Exp(flow));
        }

        Solver.StartFrom(_solved.Start);
        return Solver.Solve(_solved.Oil.At(_solved.Speed, Math.Exp(z[^1] * _solved.Oil.Doubt))).Converged;
    }

    /// <summary>[Pa] at a node, where it was moved to last.</summary>
    public double Pressure(NodeName node) => Solver.Pressure(_solved.Place(node));
}
