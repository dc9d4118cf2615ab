using Thoubook.Appraisal.Estimates;
using Thoubook.Mechanics.Metrology;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

/// <summary>Draws of everything uncertain in a circuit, each solved whole, and each in agreement with the flow test that was accepted.</summary>
/// <param name="solved">The circuit as it stands.</param>
/// <param name="test">The flow test; null where there is none.</param>
internal sealed class OilDraws(SolvedCircuit solved, TestedSources? test)
{
    /// <summary>[Pa] Draws of the pressure at a node.</summary>
    /// <param name="node">Which.</param>
    /// <param name="draws">How many, 2 or more.</param>
    /// <param name="seed">The same seed gives the same draws whatever the number of threads.</param>
    public Sample Of(NodeName node, int draws, ulong seed)
    {
        using var each = new ThreadLocal<MovedCircuit>(() => new MovedCircuit(solved));
        var sources = solved.Sizes.Sources;
        Draw[] how = [.. sources.Select(s => s.Source.Kind == SourceKind.Drawing ? Draw.Rectangular(0, Math.Sqrt(3)) : Draw.Normal(0, 1)), Draw.Normal(0, 1), Draw.Normal(0, test?.Rest ?? 0)];
        return MonteCarlo.Propagate(
            how,
            drawn =>
            {
                double[] z = [.. drawn[..^1]];
                test?.Agree(z, drawn[^1]);
                each.Value!.To(z);
                return each.Value!.Pressure(node);
            },
            draws,
            seed);
    }
}
