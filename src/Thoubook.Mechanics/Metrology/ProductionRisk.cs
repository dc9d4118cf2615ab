using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Metrology;

/// <summary>Risks of accepting and rejecting by measurement over a whole production.</summary>
/// <param name="Conforming">[-] share of the production that conforms.</param>
/// <param name="Accepted">[-] share that measurement accepts.</param>
/// <param name="Consumer">[-] share that does not conform and is accepted.</param>
/// <param name="Producer">[-] share that conforms and is rejected.</param>
public readonly record struct ProductionRisk(double Conforming, double Accepted, double Consumer, double Producer)
{
    /// <summary>[-] share of the accepted that does not conform.</summary>
    public double ConsumerAmongAccepted => Accepted > 0 ? Consumer / Accepted : 0;

    /// <summary>Risks where both the making and the measuring scatter normally.</summary>
    /// <param name="processMean">[any] mean of what is made.</param>
    /// <param name="processDeviation">[any] standard deviation of what is made, above 0.</param>
    /// <param name="standardUncertainty">[any] of the measurement, above 0.</param>
    /// <param name="limits">[any] within which a thing conforms.</param>
    /// <param name="acceptance">[any] within which a measured value is accepted, ends included.</param>
    /// <returns>[-] the shares.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: true and measured value are bivariate normal with correlation u0/√(u0² + u²). Source: JCGM 106:2012, 9.5 (from memory). Check: ProductionRiskTests.</remarks>
    public static ProductionRisk Of(double processMean, double processDeviation, double standardUncertainty, Interval limits, Interval acceptance)
    {
        Guard.Finite(processMean);
        Guard.AboveZero(processDeviation);
        Guard.AboveZero(standardUncertainty);
        var measured = Math.Sqrt((processDeviation * processDeviation) + (standardUncertainty * standardUncertainty));
        var conforming = Conformance.Within(processMean, processDeviation, limits).Within;
        var accepted = Conformance.Within(processMean, measured, acceptance).Within;
        var both = BivariateNormal.BothWithin(InDeviations(limits, processDeviation), InDeviations(acceptance, measured), processDeviation / measured);
        return new ProductionRisk(conforming, accepted, Math.Max(0, accepted - both), Math.Max(0, conforming - both));

        Interval InDeviations(Interval interval, double deviation) =>
            Interval.Between((interval.Least - processMean) / deviation, (interval.Greatest - processMean) / deviation);
    }
}
