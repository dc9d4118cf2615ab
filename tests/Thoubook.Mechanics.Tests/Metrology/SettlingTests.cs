using Thoubook.Mechanics.Metrology;

namespace Thoubook.Mechanics.Tests.Metrology;

/// <summary>Applies the advice to simulated readings, from the errors themselves and not from the formula that gave the advice.</summary>
public sealed class SettlingTests
{
    private const int Repeats = 300;
    private static readonly Interval New = Interval.Between(0, 0.4);
    private static readonly Interval Worn = Interval.Between(0, 1);

    [Fact]
    public void Advice_AppliedToSimulatedReadings_SettlesAsOftenAsItSays()
    {
        var random = new Random(20);
        var settled = new Dictionary<SettledBy, (double Promised, double Kept, int Cases, double Worst)>();
        for (var scenario = 0; scenario < 800; scenario++)
        {
            var value = -0.3 + (1.6 * random.NextDouble());
            var floor = random.Next(4) == 0 ? 0.15 * random.NextDouble() : 0.004;
            var repeatability = 0.02 + (0.3 * random.NextDouble());
            var readings = random.Next(1, 5);
            Interval[] limits = scenario % 3 == 0 ? [New, Worn] : scenario % 3 == 1 ? [Worn] : [Interval.AtMost(1)];
            var advice = Settling.Advise(value, floor, repeatability, readings, limits);
            if (advice.By == SettledBy.Nothing)
            {
                Assert.True(IsProved(value, Math.Sqrt((floor * floor) + (repeatability * repeatability / readings)), limits));
                continue;
            }

            var kept = 0;
            for (var i = 0; i < Repeats; i++)
                kept += Follow(advice, value, floor, repeatability, readings, limits, random) ? 1 : 0;
            var share = (double)kept / Repeats;
            var sofar = settled.GetValueOrDefault(advice.By, (0, 0, 0, 1));
            settled[advice.By] = (sofar.Promised + advice.Probability, sofar.Kept + share, sofar.Cases + 1, Math.Min(sofar.Worst, share));
        }

        foreach (var by in new[] { SettledBy.MoreReadings, SettledBy.BetterGauge })
        {
            var (promised, kept, cases, worst) = settled[by];
            Assert.True(cases > 30, $"{by}: only {cases} cases");
            Assert.True(kept / cases >= 0.80, $"{by}: settled {kept / cases:P1}");
            Assert.True(worst >= 0.85 - (4 * Math.Sqrt(0.85 * 0.15 / Repeats)), $"{by}: worst {worst:P1}");
            if (by == SettledBy.MoreReadings)
                Assert.Equal(promised / cases, kept / cases, 0.01);
            else
                Assert.True(kept / cases >= (promised / cases) - 0.01);
        }
    }

    [Fact]
    public void BetterGauge_PromisesTheWorseOfAloneAndWeighted()
    {
        // Content with little, the new gauge may be nearly as doubtful as the old, and how it is used matters.
        var random = new Random(8);
        foreach (var (value, u) in new[] { (0.8, 0.15), (1.15, 0.15), (1.05, 0.1), (0.9, 0.09) })
        {
            const int Trials = 40_000;
            var advice = Settling.Advise(value, u, 0, 1, [Worn], wanted: 0.45);
            Assert.Equal(SettledBy.BetterGauge, advice.By);
            Assert.True(advice.StandardUncertainty > 0.2 * u);
            var fresh = advice.StandardUncertainty;
            var both = u * fresh / Math.Sqrt((u * u) + (fresh * fresh));
            var (alone, weighted) = (0, 0);
            for (var i = 0; i < Trials; i++)
            {
                var found = value + (u * Gauss(random)) + (fresh * Gauss(random));
                alone += IsProved(found, fresh, [Worn]) ? 1 : 0;
                weighted += IsProved(both * both * ((value / (u * u)) + (found / (fresh * fresh))), both, [Worn]) ? 1 : 0;
            }

            Assert.Equal(Math.Min(alone, weighted) / (double)Trials, advice.Probability, 4 * 0.5 / Math.Sqrt(Trials));
        }
    }

    [Fact]
    public void MoreReadings_OneFewer_WouldNotDo()
    {
        var found = 0;
        var random = new Random(3);
        for (var scenario = 0; scenario < 60; scenario++)
        {
            var value = 0.7 + (0.28 * random.NextDouble());
            var advice = Settling.Advise(value, 0.005, 0.15, 1, [Worn]);
            if (advice is not { By: SettledBy.MoreReadings, FurtherReadings: > 1 })
                continue;
            found++;
            var fewer = Settling.Advise(value, 0.005, 0.15, 1, [Worn], mostReadings: advice.FurtherReadings - 1);
            Assert.Equal(SettledBy.BetterGauge, fewer.By);
            Assert.True(advice.Probability >= 0.85);
        }

        Assert.True(found > 10);
    }

    [Fact]
    public void OnTheLimit_OnlyAMuchBetterGaugeHelps()
    {
        var advice = Settling.Advise(1, 0.1, 0.01, 3, [Worn]);
        Assert.Equal(SettledBy.BetterGauge, advice.By);
        Assert.InRange(advice.StandardUncertainty, 0.008, 0.014);
    }

    [Fact]
    public void ClearOfTheLimits_NothingIsNeeded() =>
        Assert.Equal(new SettlingAdvice(SettledBy.Nothing, 0, 0, 1), Settling.Advise(0.5, 0.05, 0.05, 2, [Worn]));

    [Fact]
    public void Advice_UnitsDoNotMatter()
    {
        var one = Settling.Advise(0.95, 0.02, 0.1, 1, [Worn]);
        var inMetres = Settling.Advise(0.95e-3, 0.02e-3, 0.1e-3, 1, [Interval.Between(0, 1e-3)]);
        Assert.Equal((one.By, one.FurtherReadings), (inMetres.By, inMetres.FurtherReadings));
        Assert.Equal(one.StandardUncertainty, inMetres.StandardUncertainty * 1e3, 1e-12);
    }

    private static bool Follow(in SettlingAdvice advice, double value, double floor, double repeatability, int readings, Interval[] limits, Random random)
    {
        var gaugeError = floor * Gauss(random);
        var meanError = repeatability / Math.Sqrt(readings) * Gauss(random);
        var truth = value - gaugeError - meanError;
        if (advice.By == SettledBy.MoreReadings)
        {
            var sum = readings * value;
            for (var i = 0; i < advice.FurtherReadings; i++)
                sum += truth + gaugeError + (repeatability * Gauss(random));
            var n = readings + advice.FurtherReadings;
            return IsProved(sum / n, Math.Sqrt((floor * floor) + (repeatability * repeatability / n)), limits);
        }

        var fresh = truth + (advice.StandardUncertainty * Gauss(random));
        return IsProved(fresh, advice.StandardUncertainty, limits);
    }

    private static bool IsProved(double value, double u, Interval[] limits)
    {
        var hull = Interval.Between(limits.Min(l => l.Least), limits.Max(l => l.Greatest));
        return limits.Any(l => Conformance.Within(value, u, l).Within >= 0.95) || DecisionRule.Prove(value, u, hull) == Proof.Nonconformity;
    }

    private static double Gauss(Random random) => Normal.Quantile((random.NextDouble() * 0.9999999) + 5e-8);
}
