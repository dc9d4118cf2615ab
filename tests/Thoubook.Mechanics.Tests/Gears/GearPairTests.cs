using CsCheck;
using Thoubook.Mechanics.Gears;
using Thoubook.Mechanics.Tests.Pumps;

namespace Thoubook.Mechanics.Tests.Gears;

public sealed class GearPairTests
{
    // A pair that runs: eleven teeth of module 3.175 mm (8 to the inch of diameter), tips 2 modules over the pitch circle, standard centres.
    private static readonly GearPair Plain = InvolutePairs.Drawn(3.175, 20, (11, 0, 20.6375), (11, 0, 20.6375), 34.925);

    [Fact]
    [Computed("polygons of the involute form by quadrature, 500 points a flank; angle to 1e-6°, backlash to 1e-4 mm, contact ratio to 1e-5")]
    public void GeometryOfEightPairs()
    {
        foreach (var row in ReferenceTable.Read("c05-gear-pump.csv"))
        {
            var pair = InvolutePairs.Of(row);
            var id = row["gear_id"];
            Assert.Equal(GearFault.None, pair.Fault);
            Outside.Check($"working pressure angle of {id}, degrees", row.Number("working_pressure_angle_deg"), pair.WorkingAngle * 180 / Math.PI, 1e-6);
            Outside.Check($"backlash of {id}, mm", row.Number("circumferential_backlash_mm"), pair.Backlash * 1e3, 1e-4);
            Outside.Check($"contact ratio of {id}", row.Number("contact_ratio_dimless"), pair.ContactRatio, 1e-5);
        }
    }

    [Theory]
    [InlineData("GP1")]
    [InlineData("GP5")]
    [InlineData("GP6")]
    public void PathsOfContact(string id)
    {
        var example = new WorkedExample(id, "gear-pump.csv");
        var pair = InvolutePairs.Of(example);
        Assert.Equal(example.Input("path_of_approach_ga"), pair.Approach * 1e3, 2e-6);
        Assert.Equal(example.Input("path_of_recess_gf"), pair.Recess * 1e3, 2e-6);
    }

    [Fact]
    public void StandardGear_IsHalfThePitchThickAtItsPitchCircle() =>
        Assert.Equal(Math.PI * 3.175e-3 / 2, Plain.First.Thickness(11 * 3.175e-3 / 2), 1e-15);

    [Fact]
    public void Measured_FillsThePitch_AndKeepsTheBasePitch()
    {
        Gen.Select(Gen.Int[6, 30], Gen.Int[6, 30], Gen.Double[0.7, 0.95]).Sample((z1, z2, cosine) =>
        {
            var centres = 0.002 * (z1 + z2);
            var pitch = 2 * Math.PI * centres * cosine / (z1 + z2);
            var pair = GearPair.Measured(z1, z2, (centres * z1 / (z1 + z2)) + 0.002, (centres * z2 / (z1 + z2)) + 0.002, centres, pitch);
            Assert.Equal(pitch, pair.BasePitch, 1e-15);
            Assert.Equal(0, pair.Backlash, 1e-15);
            Assert.Equal(cosine, Math.Cos(pair.WorkingAngle), 1e-12);
        });
    }

    [Fact]
    public void Fault_NamesWhatCannotBe()
    {
        Assert.Equal(GearFault.None, Plain.Fault);
        Assert.Equal(GearFault.TipsApart, (Plain with { CentreDistance = 0.0413 }).Fault);
        Assert.Equal(GearFault.TipsTooDeep, (Plain with { First = Plain.First with { TipRadius = 0.034 } }).Fault);
        Assert.Equal(GearFault.TipsTooDeep, (Plain with { Second = Plain.Second with { TipRadius = 0.034 } }).Fault);
        Assert.Equal(GearFault.BaseBeyondCentres, (Plain with { CentreDistance = 0.032 }).Fault);
        Assert.Equal(GearFault.TipInsideBase, (Plain with { Second = Plain.Second with { TipRadius = 0.016 } }).Fault);
        Assert.Equal(GearFault.TipInsideBase, (Plain with { First = Plain.First with { TipRadius = 0.016 } }).Fault);
    }
}
