using Thoubook.Mechanics.Metrology;

namespace Thoubook.Appraisal.Estimates;

/// <summary>Where a share of an uncertainty comes from. Two figures that share a source share its error.</summary>
public readonly record struct UncertaintySource(SourceKind Kind, string Name)
{
    public override string ToString() => Name;
}

public enum SourceKind
{
    /// <summary>The gauge as last checked: one error for all readings taken with it.</summary>
    Gauge,

    /// <summary>What differs between readings at one place: the hand, the seating, the least step.</summary>
    Repeatability,

    /// <summary>The places read stand for the whole surface.</summary>
    Place,

    /// <summary>How warm the piece was.</summary>
    Temperature,

    /// <summary>The coefficient of expansion.</summary>
    Expansion,

    /// <summary>Not measured: anywhere between the drawing's limits.</summary>
    Drawing,

    /// <summary>The oil: how thick this batch is for its grade.</summary>
    Oil,

    /// <summary>Taken for want of better: a discharge coefficient, where a shaft lies in its bearing.</summary>
    Assumed,
}

/// <summary>One source's share: its sensitivity times its standard uncertainty, with sign, so that shares of one source add before they are squared.</summary>
/// <param name="Source">The source by name.</param>
/// <param name="Value">[SI of the figure] signed.</param>
/// <param name="DegreesOfFreedom">Infinite where the uncertainty is taken as known.</param>
public readonly record struct Contribution(UncertaintySource Source, double Value, double DegreesOfFreedom);

/// <summary>A best value with what it owes to each named source.</summary>
public sealed class Estimate
{
    public Estimate(double value, IReadOnlyList<Contribution> contributions)
    {
        Value = value;
        Contributions = contributions;
        double variance = 0, fourth = 0;
        foreach (var c in contributions)
        {
            var square = c.Value * c.Value;
            variance += square;
            fourth += square * square / c.DegreesOfFreedom;
        }

        StandardUncertainty = Math.Sqrt(variance);
        DegreesOfFreedom = fourth > 0 ? variance * variance / fourth : double.PositiveInfinity;
    }

    /// <summary>[SI] at 20 °C unless the state says otherwise.</summary>
    public double Value { get; }

    /// <summary>One entry a source.</summary>
    public IReadOnlyList<Contribution> Contributions { get; }

    /// <summary>[SI] combined, all sources.</summary>
    public double StandardUncertainty { get; }

    /// <summary>Effective, by Welch and Satterthwaite.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>[SI] Half the width of the band that holds it 95 times in 100.</summary>
    public double Band => BandOf(StandardUncertainty, DegreesOfFreedom);

    /// <summary>[SI] Half the width of the band that holds a value 95 times in 100.</summary>
    public static double BandOf(double standardUncertainty, double degreesOfFreedom) =>
        standardUncertainty > 0 ? StudentT.Quantile(0.975, Math.Max(degreesOfFreedom, 1)) * standardUncertainty : 0;

    /// <summary>Covariance with another estimate: through the sources that they share.</summary>
    public double CovarianceWith(Estimate other)
    {
        double sum = 0;
        foreach (var mine in Contributions)
        {
            foreach (var theirs in other.Contributions)
            {
                if (mine.Source == theirs.Source)
                    sum += mine.Value * theirs.Value;
            }
        }

        return sum;
    }

    /// <summary>Adds coefficient × estimate for each term; shares of one source add with their signs.</summary>
    public static Estimate Sum(ReadOnlySpan<(double Coefficient, Estimate Of)> terms)
    {
        double value = 0;
        var shares = new List<Contribution>();
        foreach (var (coefficient, of) in terms)
        {
            value += coefficient * of.Value;
            foreach (var c in of.Contributions)
                AddShare(shares, c with { Value = coefficient * c.Value });
        }

        return new Estimate(value, shares);
    }

    internal static void AddShare(List<Contribution> shares, Contribution share)
    {
        for (var i = 0; i < shares.Count; i++)
        {
            if (shares[i].Source == share.Source)
            {
                shares[i] = shares[i] with { Value = shares[i].Value + share.Value };
                return;
            }
        }

        shares.Add(share);
    }
}
