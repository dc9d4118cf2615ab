using System.Runtime.CompilerServices;

namespace Thoubook.Mechanics.Metrology;

/// <summary>The two ways in which a shared error is dealt with in <see cref="Conformance.AllWithin"/>.</summary>
internal static class JointConformance
{
    /// <summary>Beyond this many standard deviations a probability is 0 or 1 to the last digit that counts here.</summary>
    private const double Far = 6.5;

    /// <summary>The shared error is followed so many standard deviations to either side; beyond lie 7e-8.</summary>
    private const double Reach = 5.4;

    private const int PointsPerDeviation = 64;

    private static readonly (double Value, double Slope)[] Tail = TableOfTail();

    /// <summary>A place's own error is taken as at least this share of its shared one, so that the steps stay few.</summary>
    private const double LeastOwnShare = 1.0 / 48;

    /// <summary>Every place moves with the shared error alone: the limits become limits on that error.</summary>
    public static ConformanceProbability SharedErrorOnly(ReadOnlySpan<double> values, ReadOnlySpan<double> shared, Interval interval)
    {
        // All within: the shared error, in its standard deviations, lies in [low, high]. None below, none above: likewise with one limit.
        var (lowNotBelow, highNotBelow) = (double.NegativeInfinity, double.PositiveInfinity);
        var (lowNotAbove, highNotAbove) = (double.NegativeInfinity, double.PositiveInfinity);
        for (var i = 0; i < values.Length; i++)
        {
            Narrow(values[i] - interval.Least, shared[i], ref lowNotBelow, ref highNotBelow);
            Narrow(interval.Greatest - values[i], -shared[i], ref lowNotAbove, ref highNotAbove);
        }

        return new ConformanceProbability(
            Between(Math.Max(lowNotBelow, lowNotAbove), Math.Min(highNotBelow, highNotAbove)),
            1 - Between(lowNotBelow, highNotBelow),
            1 - Between(lowNotAbove, highNotAbove));

        static double Between(double low, double high) =>
            high <= low ? 0 : low > 0 ? Normal.Above(low) - Normal.Above(high) : Normal.Below(high) - Normal.Below(low);

        // room + s z ≥ 0
        static void Narrow(double room, double s, ref double low, ref double high)
        {
            if (s > 0)
                low = Math.Max(low, -room / s);
            else if (s < 0)
                high = Math.Min(high, -room / s);
            else if (room < 0)
                high = double.NegativeInfinity;
        }
    }

    /// <summary>Equal steps over the shared error; the sum of a smooth bell-shaped function at equal steps is exact far beyond its step size (1e-6 here, for dozens of places).</summary>
    public static ConformanceProbability OverSharedError(ReadOnlySpan<double> values, ReadOnlySpan<double> independent, ReadOnlySpan<double> shared, Interval interval)
    {
        var n = values.Length;
        const int Stack = 64;
        Span<double> work = n <= Stack ? stackalloc double[3 * Stack] : new double[3 * n];
        var roomBelow = work[..n];
        var roomAbove = work.Slice(n, n);
        var slope = work.Slice(2 * n, n);
        var sharpest = 0.0;
        var kept = 0;
        bool certainBelow = false, certainAbove = false;
        for (var i = 0; i < n; i++)
        {
            // A side so far off that it cannot matter, or is past for certain, needs no integration.
            var own = Math.Max(independent[i], LeastOwnShare * Math.Abs(shared[i]));
            var total = Math.Sqrt((own * own) + (shared[i] * shared[i]));
            var toBelow = InDeviations(values[i] - interval.Least, total);
            var toAbove = InDeviations(interval.Greatest - values[i], total);
            certainBelow |= toBelow < -Far;
            certainAbove |= toAbove < -Far;
            if (toBelow > Far && toAbove > Far)
                continue;
            roomBelow[kept] = toBelow > Far ? double.PositiveInfinity : InDeviations(values[i] - interval.Least, own);
            roomAbove[kept] = toAbove > Far ? double.PositiveInfinity : InDeviations(interval.Greatest - values[i], own);
            slope[kept] = own > 0 ? shared[i] / own : 0;
            sharpest = Math.Max(sharpest, Math.Abs(slope[kept]));
            kept++;
        }

        if (kept == 0)
            return new ConformanceProbability(1, 0, 0);
        if (certainBelow && certainAbove)
            return new ConformanceProbability(0, 1, 1);
        n = kept;

        var half = (int)Math.Ceiling(Reach * Math.Sqrt(1 + (sharpest * sharpest)) / 0.85);
        var step = Reach / half;
        var (within, noneBelow, noneAbove, weights) = (0.0, 0.0, 0.0, 0.0);
        for (var k = -half; k <= half; k++)
        {
            var z = k * step;
            var weight = Math.Exp(-0.5 * z * z);
            weights += weight;
            var (all, notBelow, notAbove) = (weight, weight, weight);
            for (var i = 0; i < n; i++)
            {
                var move = slope[i] * z;
                var below = Beyond(roomBelow[i] + move);
                var above = Beyond(roomAbove[i] - move);
                all *= Math.Max(0, 1 - below - above);
                notBelow *= 1 - below;
                notAbove *= 1 - above;
            }

            within += all;
            noneBelow += notBelow;
            noneAbove += notAbove;
        }

        return new ConformanceProbability(within / weights, 1 - (noneBelow / weights), 1 - (noneAbove / weights));
    }

    // An exact place is within or not; on the limit counts as within, as everywhere.
    private static double InDeviations(double room, double own) => own > 0 ? room / own : room >= 0 ? double.PositiveInfinity : double.NegativeInfinity;

    /// <summary>Probability of going beyond a limit that is so many standard deviations away; between the points of a table by cubics, to 2e-10.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Beyond(double room)
    {
        if (room > Far)
            return 0;
        if (room < -Far)
            return 1;
        var at = Math.Abs(room) * PointsPerDeviation;
        var k = (int)at;
        var t = at - k;
        var (here, next) = (Tail[k], Tail[k + 1]);
        var rise = next.Value - here.Value;
        var tail = here.Value + (t * (here.Slope + (t * ((3 * rise) - (2 * here.Slope) - next.Slope + (t * (here.Slope + next.Slope - (2 * rise)))))));
        return room < 0 ? 1 - tail : tail;
    }

    private static (double Value, double Slope)[] TableOfTail()
    {
        var table = new (double, double)[(int)(Far * PointsPerDeviation) + 2];
        for (var k = 0; k < table.Length; k++)
            table[k] = (Normal.Above((double)k / PointsPerDeviation), -Normal.Density((double)k / PointsPerDeviation) / PointsPerDeviation);
        return table;
    }
}
