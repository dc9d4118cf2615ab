using CsCheck;
using Thoubook.Mechanics.Metrology;

namespace Thoubook.Mechanics.Tests.Metrology;

public sealed class OutliersTests
{
    [Fact]
    public void CriticalDistance_AgreesWithThePrintedTable()
    {
        foreach (var row in ReferenceTable.Read("grubbs-table.csv"))
        {
            // Printed to three decimals, some last figures truncated rather than rounded.
            row.Check($"Grubbs critical distance, {row["count"]} readings at {row["significance"]}", row.Number("critical"), Outliers.CriticalDistance((int)row.Number("count"), row.Number("significance")), 0.0011);
        }
    }

    [Fact]
    public void Farthest_PointsAtASlip_AndNeverWithoutThree()
    {
        var hint = Outliers.Farthest([1.0001, 1.0002, 1.0000, 1.0101, 1.0001, 1.0002])!.Value;
        Assert.True(hint.IsSuspect);
        Assert.Equal(3, hint.At);
        Assert.False(Outliers.Farthest([1.0, 1.1, 0.9, 1.05])!.Value.IsSuspect);
        Assert.Null(Outliers.Farthest([1, 5]));
        Assert.Null(Outliers.Farthest([2.5, 2.5, 2.5]));
    }

    [Fact]
    public void Farthest_FalseHintsAreAsRareAsStated()
    {
        var random = new Random(5);
        var hints = 0;
        var readings = new double[8];
        for (var trial = 0; trial < 20_000; trial++)
        {
            for (var i = 0; i < readings.Length; i++)
                readings[i] = Normal.Quantile((random.NextDouble() * 0.999999) + 5e-7);
            hints += Outliers.Farthest(readings)!.Value.IsSuspect ? 1 : 0;
        }

        Assert.InRange(hints / 20_000.0, 0.05 - 0.0062, 0.05 + 0.0062);
    }

    [Fact]
    public void Farthest_UnitsDoNotMatter() =>
        Gen.Select(Gen.Double[0, 1].Array[3, 12], Gen.Double[1e-3, 1e3]).Sample((readings, scale) =>
            Assert.Equal(Outliers.Farthest(readings)?.Distance ?? 0, Outliers.Farthest([.. readings.Select(x => x * scale)])?.Distance ?? 0, 1e-9));
}
