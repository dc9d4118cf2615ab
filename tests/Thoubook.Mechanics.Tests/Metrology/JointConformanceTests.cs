using CsCheck;
using Thoubook.Mechanics.Metrology;

namespace Thoubook.Mechanics.Tests.Metrology;

public sealed class JointConformanceTests
{
    private static readonly Gen<(double[] Values, double[] Own, double[] Shared)> Places =
        Gen.Int[1, 12].SelectMany(n => Gen.Select(Gen.Double[-0.2, 1.2].Array[n], Gen.Double[0.01, 0.3].Array[n], Gen.Double[-0.3, 0.3].Array[n]));

    [Fact]
    public void AllWithin_AgreesWithQuadrature()
    {
        foreach (var row in ReferenceTable.Read("joint-conformance.csv"))
        {
            var limits = Interval.Between(row.NumberOrNone("least") ?? double.NegativeInfinity, row.NumberOrNone("greatest") ?? double.PositiveInfinity);
            var got = Conformance.AllWithin(row.Numbers("values"), row.Numbers("independent"), row.Numbers("shared"), limits);
            var tolerance = row.Number("tolerance");
            row.Check($"joint conformance case {row["case"]}: all within", row.Number("all_within"), got.Within, tolerance);
            row.Check($"joint conformance case {row["case"]}: any below", row.Number("any_below"), got.Below, tolerance);
            row.Check($"joint conformance case {row["case"]}: any above", row.Number("any_above"), got.Above, tolerance);
        }
    }

    [Fact]
    public void AllWithin_OnePlace_IsTheSinglePlaceWithBothPartsCombined() =>
        Gen.Select(Gen.Double[-0.5, 1.5], Gen.Double[0.01, 0.3], Gen.Double[-0.3, 0.3]).Sample((y, own, shared) =>
        {
            var joint = Conformance.AllWithin([y], [own], [shared], Interval.Between(0, 1));
            var single = Conformance.Within(y, Math.Sqrt((own * own) + (shared * shared)), Interval.Between(0, 1));
            Assert.Equal(single.Within, joint.Within, 1e-6);
            Assert.Equal(single.Below, joint.Below, 1e-6);
            Assert.Equal(single.Above, joint.Above, 1e-6);
        });

    [Fact]
    public void AllWithin_NothingShared_IsTheProduct() =>
        Places.Sample(p =>
        {
            var joint = Conformance.AllWithin(p.Values, p.Own, new double[p.Values.Length], Interval.Between(0, 1));
            var product = p.Values.Zip(p.Own).Aggregate(1.0, (sofar, place) => sofar * Conformance.Within(place.First, place.Second, Interval.Between(0, 1)).Within);
            Assert.Equal(product, joint.Within, 1e-13);
        });

    [Fact]
    public void AllWithin_SharedOnly_IsTheLimitOfASmallOwnPart() =>
        Places.Sample(p =>
        {
            var exact = Conformance.AllWithin(p.Values, new double[p.Values.Length], p.Shared, Interval.Between(0, 1));
            var near = Conformance.AllWithin(p.Values, [.. p.Shared.Select(s => Math.Abs(s) / 48)], p.Shared, Interval.Between(0, 1));
            Assert.Equal(exact.Within, near.Within, 0.02);
            Assert.Equal(exact.Below, near.Below, 0.02);
            Assert.Equal(exact.Above, near.Above, 0.02);
        });

    [Fact]
    public void AllWithin_DoesNotDependOnTheOrder_AndBoundsHold() =>
        Places.Sample(p =>
        {
            var joint = Conformance.AllWithin(p.Values, p.Own, p.Shared, Interval.Between(0, 1));
            var turned = Conformance.AllWithin([.. p.Values.Reverse()], [.. p.Own.Reverse()], [.. p.Shared.Reverse()], Interval.Between(0, 1));
            Assert.Equal(joint.Within, turned.Within, 1e-13);
            var worst = p.Values.Select((y, i) => Conformance.Within(y, Math.Sqrt((p.Own[i] * p.Own[i]) + (p.Shared[i] * p.Shared[i])), Interval.Between(0, 1)).Within).Min();
            Assert.True(joint.Within <= worst + 1e-6);
            Assert.True(joint.Below + joint.Above + joint.Within >= 1 - 1e-6);
        });

    [Fact]
    public void AllWithin_TheSharedErrorHasNoSide() =>
        Gen.Select(Places, Gen.Int[0, 11]).Sample((p, bare) =>
        {
            var own = p.Own.Select((u, i) => i == bare ? 0 : u).ToArray();
            var one = Conformance.AllWithin(p.Values, own, p.Shared, Interval.Between(0, 1));
            var other = Conformance.AllWithin(p.Values, own, [.. p.Shared.Select(s => -s)], Interval.Between(0, 1));
            Assert.Equal(one.Within, other.Within, 1e-12);
            Assert.Equal(one.Below, other.Below, 1e-12);
            Assert.Equal(one.Above, other.Above, 1e-12);
        });

    [Fact]
    public void AllWithin_WiderLimits_AreNeverLessProbable() =>
        Gen.Select(Places, Gen.Double[0, 0.5], Gen.Double[0, 0.5]).Sample((p, left, right) =>
            Assert.True(
                Conformance.AllWithin(p.Values, p.Own, p.Shared, Interval.Between(-left, 1 + right)).Within
                >= Conformance.AllWithin(p.Values, p.Own, p.Shared, Interval.Between(0, 1)).Within - 1e-9));
}
