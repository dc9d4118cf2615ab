using Thoubook.Appraisal.Estimates;
using Thoubook.Mechanics.Metrology;
using Contribution = Thoubook.Appraisal.Estimates.Contribution;

namespace Thoubook.Appraisal;

/// <summary>
/// A fit by random draws, on request: each named source is drawn once a draw and moves every term that shares it. Seeded, so that the same fit gives
/// the same answer; to be set beside the closed form of every appraisal, which it must agree with where the shares are near normal.
/// </summary>
public sealed record FitDraws(int Draws, ulong Seed, double Mean, double StandardDeviation, double Low, double High, double ProbabilityNew, double ProbabilityWorn, double RiskOfNil)
{
    public const int UsualDraws = 100_000;

    /// <summary>Draws a measured fit at 20 °C.</summary>
    /// <param name="fit">Measured: its estimate is not null.</param>
    /// <param name="draws">[-] 2 or more; 100,000 for the tails.</param>
    /// <param name="seed">[-] the same seed gives the same answer, whatever the number of threads.</param>
    /// <exception cref="ArgumentException">The fit is not measured.</exception>
    public static FitDraws Of(FitAppraisal fit, int draws = UsualDraws, ulong seed = 1)
    {
        if (fit is not { Estimate: { } value, Least: { } least, Greatest: { } greatest })
            throw new ArgumentException($"{fit.Figure.Name} is not measured.", nameof(fit));

        var sources = new List<Contribution>();
        foreach (var share in value.Contributions.Concat(least.Contributions).Concat(greatest.Contributions))
        {
            if (!sources.Exists(s => s.Source == share.Source))
                sources.Add(share);
        }

        Draw[] inputs = [.. sources.Select(DrawOf)];
        if (inputs.Length == 0)
            inputs = [Draw.Normal(0, 0)];
        double[] onValue = Shares(value), onLeast = Shares(least), onGreatest = Shares(greatest);

        var gap = MonteCarlo.Propagate(inputs, z => value.Value + Moved(onValue, z), draws, seed);
        return new FitDraws(draws, seed, gap.Mean, gap.StandardDeviation, gap.Quantile(0.025), gap.Quantile(0.975),
            Conforming(fit.Limits.NewLeast, fit.Limits.NewGreatest),
            Conforming(fit.Limits.WornLeast, fit.Limits.WornGreatest),
            1 - Conforming(double.Epsilon, null));

        // All places conform where the room left at the nearer limit is not below nothing.
        double Conforming(double? from, double? to) => MonteCarlo.Propagate(
            inputs,
            z => Math.Min(
                from is { } l ? least.Value + Moved(onLeast, z) - l : double.MaxValue,
                to is { } u ? u - greatest.Value - Moved(onGreatest, z) : double.MaxValue),
            draws,
            seed).ShareWithin(Interval.AtLeast(0));

        double[] Shares(Estimate estimate) => [.. sources.Select(s => estimate.Contributions.FirstOrDefault(c => c.Source == s.Source).Value), .. sources.Count == 0 ? new[] { 0.0 } : []];

        static double Moved(double[] shares, ReadOnlySpan<double> z)
        {
            double sum = 0;
            for (var i = 0; i < z.Length; i++)
                sum += shares[i] * z[i];
            return sum;
        }
    }

    /// <summary>A source in its own standard deviations.</summary>
    private static Draw DrawOf(Contribution source) => source.Source.Kind switch
    {
        SourceKind.Drawing => Draw.Rectangular(0, Math.Sqrt(3)),
        _ when double.IsPositiveInfinity(source.DegreesOfFreedom) => Draw.Normal(0, 1),
        _ => Draw.Student(0, 1, source.DegreesOfFreedom),
    };
}
