using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Metrology;

/// <summary>What would turn "too close to call" into a verdict.</summary>
public enum SettledBy
{
    /// <summary>It is proved already.</summary>
    Nothing,

    /// <summary>More readings with the same gauge.</summary>
    MoreReadings,

    /// <summary>A measurement of smaller uncertainty than this gauge can give.</summary>
    BetterGauge,
}

/// <summary>What to do to settle a doubt, and how probably that does it.</summary>
/// <param name="By">What would do it.</param>
/// <param name="FurtherReadings">[-] with the same gauge at the same place; 0 where that is not the way.</param>
/// <param name="StandardUncertainty">[any] that the new measurement must have in all (gauge and repeatability together); 0 where that is not the way.</param>
/// <param name="Probability">[-] that a verdict is then reached.</param>
public readonly record struct SettlingAdvice(SettledBy By, int FurtherReadings, double StandardUncertainty, double Probability);

/// <summary>Which further measurement would settle a doubt.</summary>
public static class Settling
{
    private const int MostIntervals = 8;

    /// <summary>The least number of further readings, or failing that the greatest uncertainty of a new measurement, with which a verdict becomes probable enough.</summary>
    /// <param name="value">[any] best value now.</param>
    /// <param name="floor">[any] standard uncertainty that more readings with this gauge do not reduce, 0 or more.</param>
    /// <param name="repeatability">[any] standard uncertainty of one reading on its own, 0 or more.</param>
    /// <param name="readings">[-] readings so far, 1 or more.</param>
    /// <param name="anyOf">[any] one to eight intervals; proving that the thing lies within any one of them, or beyond all of them on one side, is a verdict.</param>
    /// <param name="probability">[-] that a proof needs.</param>
    /// <param name="wanted">[-] probability with which the advice must lead to a verdict.</param>
    /// <param name="mostReadings">[-] most further readings worth asking for.</param>
    /// <returns>The advice.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range, or no uncertainty at all.</exception>
    /// <remarks>Model: after a further measurement the estimate moves normally with variance u² − u′² and its uncertainty is u′ = √(floor² + repeatability²/n); a new gauge is taken at the worse of two ways to use it (alone, or weighted with what is there). Assumes: normal errors. Source: preposterior analysis with JCGM 106:2012, 7 (computed). Check: SettlingTests.</remarks>
    public static SettlingAdvice Advise(double value, double floor, double repeatability, int readings, ReadOnlySpan<Interval> anyOf, double probability = DecisionRule.UsualProbability, double wanted = 0.85, int mostReadings = 20)
    {
        Guard.Finite(value);
        Guard.ZeroOrMore(floor);
        Guard.ZeroOrMore(repeatability);
        Guard.AtLeast(readings, 1);
        Guard.AtLeast(anyOf.Length, 1, "number of intervals");
        Guard.AtLeast(MostIntervals - anyOf.Length, 0, "eight less the number of intervals");
        Guard.Probability(probability);
        Guard.Probability(wanted);
        var u = After(0);
        Guard.AboveZero(u, "", "standard uncertainty");
        if (Settled(value, 0, u, anyOf, probability) > 0)
            return new SettlingAdvice(SettledBy.Nothing, 0, 0, 1);

        for (var more = 1; repeatability > 0 && more <= mostReadings; more++)
        {
            var after = After(more);
            var chance = Settled(value, Math.Sqrt(Math.Max(0, (u * u) - (after * after))), after, anyOf, probability);
            if (chance >= wanted)
                return new SettlingAdvice(SettledBy.MoreReadings, more, 0, chance);
        }

        var fresh = GreatestUncertainty(value, u, anyOf, probability, wanted);
        return new SettlingAdvice(SettledBy.BetterGauge, 0, fresh, WithNewGauge(value, u, fresh, anyOf, probability));

        double After(int more) => Math.Sqrt((floor * floor) + (repeatability * repeatability / (readings + more)));
    }

    /// <summary>From the present uncertainty downwards to the first that does, with all finer ones tried doing as well; then between it and the one before.</summary>
    private static double GreatestUncertainty(double value, double u, ReadOnlySpan<Interval> anyOf, double probability, double wanted)
    {
        const double Finer = 0.8;
        var (failed, found) = (u, u * Finer);
        while (found > 1e-4 * u && !(Does(found, anyOf) && Does(0.8 * found, anyOf) && Does(0.5 * found, anyOf)))
            (failed, found) = (found, found * Finer);
        for (var step = 0; step < 8; step++)
        {
            var between = 0.5 * (failed + found);
            (failed, found) = Does(between, anyOf) ? (failed, between) : (between, found);
        }

        return found;

        bool Does(double fresh, ReadOnlySpan<Interval> intervals) => WithNewGauge(value, u, fresh, intervals, probability) >= wanted;
    }

    /// <summary>The lesser of the probabilities of a verdict when the new measurement counts alone and when it is weighted with the old.</summary>
    private static double WithNewGauge(double value, double u, double fresh, ReadOnlySpan<Interval> anyOf, double probability)
    {
        var alone = Settled(value, Math.Sqrt((u * u) + (fresh * fresh)), fresh, anyOf, probability);
        var both = u * fresh / Math.Sqrt((u * u) + (fresh * fresh));
        var weighted = Settled(value, Math.Sqrt((u * u) - (both * both)), both, anyOf, probability);
        return Math.Min(alone, weighted);
    }

    /// <summary>Probability that an estimate spread normally about a value falls where its uncertainty then proves something.</summary>
    private static double Settled(double value, double spread, double u, ReadOnlySpan<Interval> anyOf, double probability)
    {
        Span<Interval> zones = stackalloc Interval[MostIntervals + 2];
        var count = 0;
        var (least, greatest) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var interval in anyOf)
        {
            if (DecisionRule.AcceptanceZone(interval, u, probability) is { } zone)
                zones[count++] = zone;
            least = Math.Min(least, interval.Least);
            greatest = Math.Max(greatest, interval.Greatest);
        }

        var margin = Normal.Quantile(probability) * u;
        if (!double.IsNegativeInfinity(least))
            zones[count++] = Interval.AtMost(least - margin);
        if (!double.IsPositiveInfinity(greatest))
            zones[count++] = Interval.AtLeast(greatest + margin);

        // Union of the zones, from left to right.
        zones = zones[..count];
        zones.Sort((a, b) => a.Least.CompareTo(b.Least));
        var (sum, reached) = (0.0, double.NegativeInfinity);
        foreach (var zone in zones)
        {
            var from = Math.Max(zone.Least, reached);
            if (zone.Greatest < from)
                continue;
            sum += Conformance.Within(value, spread, Interval.Between(from, zone.Greatest)).Within;
            reached = zone.Greatest;
        }

        return Math.Min(1, sum);
    }
}
