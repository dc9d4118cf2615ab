using CsCheck;
using Thoubook.Mechanics.Metrology;

namespace Thoubook.Mechanics.Tests.Metrology;

public sealed class ReadingsTests
{
    [Fact]
    public void Summarise_AgreesWithCertifiedValues()
    {
        var data = ReferenceTable.Read("nist-strd-data.csv").GroupBy(row => row["dataset"]).ToDictionary(group => group.Key, group => group.Select(row => row.Number("value")).ToArray());
        foreach (var (name, start) in new[] { ("NumAcc2", 1.0), ("NumAcc3", 1_000_000.0), ("NumAcc4", 10_000_000.0) })
            data[name] = [start + 0.2, .. Enumerable.Range(0, 500).SelectMany(_ => new[] { start + 0.1, start + 0.3 })];
        foreach (var row in ReferenceTable.Read("nist-strd.csv").Where(row => row["statistic"] != "autocorrelation_lag1"))
        {
            var readings = data[row["dataset"]];
            Assert.Equal(row.Number("count"), readings.Length);
            var summary = Readings.Summarise(readings);
            var certified = row.Number("certified");

            // The data themselves are rounded to double: half a unit in the last place of the largest reading bounds what can be had.
            var rounding = 0.5 * Math.BitIncrement(Math.Abs(summary.Greatest)) - (0.5 * Math.Abs(summary.Greatest));
            if (row["statistic"] == "sample_mean")
                row.Check("mean", certified, summary.Mean, (4 * rounding) + (1e-14 * Math.Abs(certified)));
            else
                row.Check("scatter", certified, summary.Scatter, (4 * rounding) + (1e-14 * certified));
        }
    }

    [Fact]
    public void Summarise_AgreesWithTheGuide()
    {
        var temperature = new WorkedExample("U1");
        var summary = Readings.Summarise(temperature.Inputs("observations"));
        temperature.Check("mean", summary.Mean);
        temperature.Check("experimental_sd", summary.Scatter);
        temperature.Check("sd_of_mean", summary.StandardUncertaintyOfMean);

        var impedance = new WorkedExample("U3");
        foreach (var letter in new[] { "V", "I", "phi" })
        {
            var one = Readings.Summarise(impedance.Inputs(letter));
            impedance.Check($"mean_{letter}", one.Mean);
            impedance.Check($"u_{letter}", one.StandardUncertaintyOfMean);
        }
    }

    [Fact]
    public void Summarise_OrderAndUnitDoNotMatter() =>
        Gen.Select(Gen.Double[-10, 10].Array[1, 30], Gen.Double[1e-6, 1e6]).Sample((readings, scale) =>
        {
            var one = Readings.Summarise(readings);
            var other = Readings.Summarise([.. readings.Reverse().Select(x => x * scale)]);
            Assert.Equal(one.Mean * scale, other.Mean, 1e-12 * scale * 10);
            Assert.Equal(one.Scatter * scale, other.Scatter, 1e-12 * scale * 10);
            Assert.Equal(one.Range * scale, other.Range, 1e-12 * scale * 20);
        });

    [Fact]
    public void Summarise_AShiftMovesTheMeanOnly() =>
        Gen.Select(Gen.Double[-1, 1].Array[2, 20], Gen.Double[-1000, 1000]).Sample((readings, shift) =>
        {
            var (one, other) = (Readings.Summarise(readings), Readings.Summarise([.. readings.Select(x => x + shift)]));
            Assert.Equal(one.Mean + shift, other.Mean, 1e-11);
            Assert.Equal(one.Scatter, other.Scatter, 1e-11);
        });

    [Fact]
    public void Summarise_ManyAlike_AddUpWithoutLoss()
    {
        var summary = Readings.Summarise([.. Enumerable.Repeat(0.1, 100_000)]);
        Assert.Equal(0.1, summary.Mean, 3e-17);
        Assert.Equal(0, summary.Scatter, 1e-16);
    }

    [Fact]
    public void Summarise_OneReading_ShowsNoScatter()
    {
        var summary = Readings.Summarise([3.5]);
        Assert.Equal(new ReadingsSummary(1, 3.5, 0, 3.5, 3.5), summary);
        Assert.True(double.IsNaN(summary.StandardUncertaintyOfMean));
        Assert.Throws<ArgumentOutOfRangeException>(() => Readings.Summarise([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Readings.Summarise([1, double.NaN]));
    }

    [Fact]
    public void PooledScatter_IsTheScatterAboutEachPlacesOwnMean() =>
        Gen.Double[-1, 1].Array[1, 6].Array[1, 5].Sample(places =>
        {
            var summaries = places.Select(place => Readings.Summarise(place)).ToArray();
            var (scatter, degrees) = Readings.PooledScatter([.. summaries.Select(s => s.Count)], [.. summaries.Select(s => s.Scatter)]);
            var expected = places.Sum(place => place.Length) - places.Length;
            Assert.Equal(expected, degrees);
            var squares = places.Sum(place => place.Sum(x => Math.Pow(x - place.Average(), 2)));
            Assert.Equal(expected == 0 ? 0 : Math.Sqrt(squares / expected), scatter, 1e-12);
        });
}
