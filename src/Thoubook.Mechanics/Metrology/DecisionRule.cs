using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Metrology;

/// <summary>What a measured value proves about its limits.</summary>
public enum Proof
{
    /// <summary>Neither.</summary>
    Neither,

    /// <summary>It conforms.</summary>
    Conformity,

    /// <summary>It does not conform.</summary>
    Nonconformity,
}

/// <summary>When a measured value proves that a thing conforms, or that it does not.</summary>
public static class DecisionRule
{
    /// <summary>Share that a proof needs unless something else is stated.</summary>
    public const double UsualProbability = 0.95;

    /// <summary>How far inside a limit, in standard uncertainties, a value must lie to prove conformity.</summary>
    /// <param name="widthInUncertainties">[-] distance between the limits over the standard uncertainty, above 0; infinite for a single limit.</param>
    /// <param name="probability">[-] that the proof needs, strictly between 0 and 1.</param>
    /// <returns>[-] the guard factor, or nothing where the limits are too close together for any value to prove it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: smallest g with Φ(g) − Φ(g − w) = p; 1.645 (printed 1.65) for one active limit at 0.95. Source: ISO 14253-1:2017, default rule (from memory). Check: DecisionRuleTests.</remarks>
    public static double? GuardFactor(double widthInUncertainties, double probability = UsualProbability)
    {
        Guard.Probability(probability);
        if (!(widthInUncertainties > 0))
            Guard.AboveZero(widthInUncertainties, "-");
        var single = Normal.Quantile(probability);
        var middle = 0.5 * widthInUncertainties;
        if (1 - (2 * Normal.Above(middle)) < probability)
            return null;

        // Where the far limit takes away nothing that shows, the factor is that of a single limit; else what is lacking there falls to nothing towards the middle.
        if (Normal.Below(single - widthInUncertainties) < 1e-16 || Lacking(single) <= 0 || single >= middle)
            return Math.Min(single, middle);
        return Roots.Find(Lacking, single, middle) is { Report.Converged: true } found ? found.Root : middle;

        double Lacking(double g) => probability - (Normal.Below(g) - Normal.Below(g - widthInUncertainties));
    }

    /// <summary>The interval in which a measured value proves conformity.</summary>
    /// <param name="interval">[any] the limits.</param>
    /// <param name="standardUncertainty">[any] 0 or more.</param>
    /// <param name="probability">[-] that the proof needs, strictly between 0 and 1.</param>
    /// <returns>[any] the acceptance zone, or nothing where none is left.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: limits moved inwards by g u. Source: ISO 14253-1:2017 (from memory). Check: DecisionRuleTests.</remarks>
    public static Interval? AcceptanceZone(Interval interval, double standardUncertainty, double probability = UsualProbability)
    {
        Guard.ZeroOrMore(standardUncertainty);
        return standardUncertainty == 0 ? interval : Zone(interval, standardUncertainty, probability, default(Silent));
    }

    /// <summary>The same for any trace, after <see cref="Conformance.Within{TTrace}"/> has told u and the limits, and the asker p.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="interval">[any] the limits.</param>
    /// <param name="standardUncertainty">[any] above 0.</param>
    /// <param name="probability">[-] that the proof needs, strictly between 0 and 1.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[any] the acceptance zone, or nothing where none is left.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: as AcceptanceZone. Source: ISO 14253-1:2017 (from memory). Check: DecisionRuleTests.</remarks>
    public static Interval? AcceptanceZone<TTrace>(Interval interval, double standardUncertainty, double probability, TTrace trace)
        where TTrace : struct, ITrace
    {
        Guard.AboveZero(standardUncertainty);
        return Zone(interval, standardUncertainty, probability, trace);
    }

    private static Interval? Zone<TTrace>(Interval limits, double u, double p, TTrace trace)
        where TTrace : struct, ITrace
    {
        const string Rule = "ISO 14253-1:2017";
        var bothLimits = double.IsFinite(limits.Width);
        if (limits.Width == 0 || GuardFactor(limits.Width / u, p) is not { } g)
        {
            trace.Caution("The limits are too close together for this uncertainty: no measured value can prove conformity.");
            return null;
        }

        if (bothLimits)
            trace.Line("w", "distance between the limits, in standard uncertainties", "(U − L)/u", limits.Width / u, Units.None);
        trace.Line("k_g", "guard factor", bothLimits ? "g(w, p)" : "z(p)", g, Units.None, Rule);
        return Interval.Between(
            double.IsFinite(limits.Least) ? trace.Line("A_L", "least value that proves conformity", "L + k_g × u", limits.Least + (g * u), Units.Any, Rule) : limits.Least,
            double.IsFinite(limits.Greatest) ? trace.Line("A_U", "greatest value that proves conformity", "U − k_g × u", limits.Greatest - (g * u), Units.Any, Rule) : limits.Greatest);
    }

    /// <summary>What a measured value proves.</summary>
    /// <param name="value">[any] best value.</param>
    /// <param name="standardUncertainty">[any] 0 or more.</param>
    /// <param name="interval">[any] the limits.</param>
    /// <param name="probability">[-] that a proof needs, strictly between 0 and 1.</param>
    /// <returns>Conformity, nonconformity or neither.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: conformity where the probability within reaches p; nonconformity where the probability beyond one limit does. Source: ISO 14253-1:2017 (from memory). Check: DecisionRuleTests.</remarks>
    public static Proof Prove(double value, double standardUncertainty, Interval interval, double probability = UsualProbability)
    {
        Guard.Probability(probability);
        var p = Conformance.Within(value, standardUncertainty, interval);
        return p.Within >= probability ? Proof.Conformity
            : p.Below >= probability || p.Above >= probability ? Proof.Nonconformity
            : Proof.Neither;
    }

    /// <summary>Limits moved inwards by a share of the expanded uncertainty.</summary>
    /// <param name="interval">[any] the limits.</param>
    /// <param name="standardUncertainty">[any] 0 or more.</param>
    /// <param name="share">[-] guard band over the expanded uncertainty 2u; negative widens.</param>
    /// <returns>[any] the acceptance interval, or nothing where none is left.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input not finite or uncertainty below 0.</exception>
    /// <remarks>Model: w = r U, U = 2u. Source: JCGM 106:2012, 8.3 (from memory). Check: DecisionRuleTests.</remarks>
    public static Interval? GuardBanded(Interval interval, double standardUncertainty, double share) =>
        interval.Inwards(2 * Guard.Finite(share, "-") * Guard.ZeroOrMore(standardUncertainty));
}
