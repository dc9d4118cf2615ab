using Thoubook.Appraisal.Estimates;

namespace Thoubook.Appraisal.Oil;

/// <summary>What a flow test says of the sources of doubt of a circuit: their standard normal draws, given what was caught.</summary>
internal sealed class TestedSources
{
    private readonly double[] _log;
    private readonly double _variance;
    private readonly double _residual;

    /// <param name="solved">Whose sources.</param>
    /// <param name="log">The natural logarithm of what was expected, with what it owes to each source.</param>
    /// <param name="caught">The logarithm of what was caught.</param>
    /// <param name="noise">[-] what the catching itself adds.</param>
    public TestedSources(SolvedCircuit solved, Estimate log, double caught, double noise)
    {
        _log = new double[solved.Sizes.Sources.Count + 1];
        var rest = noise * noise;
        foreach (var share in log.Contributions)
        {
            if (solved.PlaceOf(share.Source) is { } place)
                _log[place] += share.Value;
            else
                rest += share.Value * share.Value;
        }

        Rest = Math.Sqrt(rest);
        _variance = _log.Sum(a => a * a) + rest;
        _residual = caught - log.Value;
    }

    /// <summary>[-] standard deviation of what the test owes to nothing in the circuit.</summary>
    public double Rest { get; }

    /// <summary>Where the sources lie most likely, given the test.</summary>
    public double[] Mean => [.. _log.Select(a => a * _residual / _variance)];

    /// <summary>What is left of slopes when what the test fixes is taken away: their product with the sources' covariance.</summary>
    public double[] Left(double[] slopes)
    {
        double along = 0;
        for (var i = 0; i < slopes.Length; i++)
            along += _log[i] * slopes[i];
        return [.. slopes.Select((s, i) => s - (_log[i] * along / _variance))];
    }

    /// <summary>Makes of a draw that knows nothing of the test one that agrees with it.</summary>
    /// <param name="z">[-] the draw, changed in place.</param>
    /// <param name="rest">[-] a draw of what the test owes to nothing in the circuit.</param>
    public void Agree(Span<double> z, double rest)
    {
        var off = _residual - rest;
        for (var i = 0; i < z.Length; i++)
            off -= _log[i] * z[i];
        for (var i = 0; i < z.Length; i++)
            z[i] += _log[i] * off / _variance;
    }
}
