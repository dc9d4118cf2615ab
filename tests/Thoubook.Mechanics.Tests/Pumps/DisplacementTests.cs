using CsCheck;
using Thoubook.Mechanics.Gears;
using Thoubook.Mechanics.Pumps;

namespace Thoubook.Mechanics.Tests.Pumps;

public sealed class DisplacementTests
{
    [Fact]
    [Computed("area of the delivery chamber as a function of rotation, polygons of the involute form; displacement to 1e-6, ripple to 5e-6")]
    public void EightPairs_ByAreasAsTheyTurn()
    {
        foreach (var row in ReferenceTable.Read("c05-gear-pump.csv"))
        {
            var got = Displacement.Of(InvolutePairs.Of(row), row.Number("face_width_mm") * 1e-3, TrappedOil.Relieved, 0.5, default(Mechanics.Sums.Silent));
            var id = row["gear_id"];
            Outside.CheckRelative($"displacement of {id}, mm³ a turn", row.Number("displacement_mm3_per_rev"), got.Volume * 1e9, 1e-6);
            Outside.CheckRelative($"ripple of {id}", row.Number("flow_ripple_max_minus_min_over_mean_dimless"), got.Ripple, 5e-6);
            Outside.CheckRelative($"displacement of {id} from areas at rest, mm³ a turn", row.Number("displacement_static_areas_mm3_per_rev"), got.Volume * 1e9, 5e-6);
        }
    }

    [Theory]
    [InlineData("GP1")]
    [InlineData("GP2")]
    [InlineData("GP3")]
    [InlineData("GP4")]
    [InlineData("GP5")]
    [InlineData("GP6")]
    [InlineData("GP7")]
    public void EveryWayOfTheTrappedOil_ByAreasAtRest(string id)
    {
        var example = new WorkedExample(id, "gear-pump.csv");
        var pair = InvolutePairs.Of(example);
        var width = example.Input("face_width_b") * 1e-3;
        // Backlash is taken from both teeth alike.
        var share = (pair.First.Thickness(pair.FirstWorkingRadius) + (pair.Backlash / 2)) / (2 * Math.PI * pair.FirstWorkingRadius / pair.First.Teeth);
        example.Check("displacement relieved", Displacement.Of(pair, width) * 1e9, 1e-6);
        example.Check("displacement carried over", Displacement.Of(pair, width, TrappedOil.CarriedOver) * 1e9, 1e-6);
        example.Check("displacement two flanks", Displacement.Of(pair, width, TrappedOil.TwoFlanks, share) * 1e9, 1e-6);
        example.Check("ripple relieved", Displacement.Of(pair, width, TrappedOil.Relieved, 0.5, default(Mechanics.Sums.Silent)).Ripple, 1e-6);
    }

    [Theory]
    [InlineData(TrappedOil.Relieved)]
    [InlineData(TrappedOil.CarriedOver)]
    [InlineData(TrappedOil.TwoFlanks)]
    public void MeanAndRipple_FollowFromTheFlowAtEachMoment(TrappedOil trapped)
    {
        // The flow at each moment is (b ω/2)(R − (1 + i) l²), l running over the stretch that the sealing contact covers.
        var pair = InvolutePairs.Of(new WorkedExample("GP5", "gear-pump.csv"));
        const double width = 0.02, share = 0.47;
        var got = Displacement.Of(pair, width, trapped, share, default(Mechanics.Sums.Silent));
        var pitch = pair.BasePitch;
        (double From, double To)[] stretches = trapped switch
        {
            TrappedOil.Relieved => [(-pitch / 2, pitch / 2)],
            TrappedOil.TwoFlanks => [(-pitch / 2 * share, pitch / 2 * share), (-pitch / 2 * (1 - share), pitch / 2 * (1 - share))],
            _ => [(-pair.Approach, pitch - pair.Approach)],
        };
        var reach = Math.Pow(pair.First.TipRadius, 2) - Math.Pow(pair.FirstWorkingRadius, 2) + (pair.Ratio * (Math.Pow(pair.Second.TipRadius, 2) - Math.Pow(pair.SecondWorkingRadius, 2)));
        const int points = 20_000;
        var flows = stretches.SelectMany(stretch => Enumerable.Range(0, points).Select(k =>
        {
            var l = stretch.From + ((stretch.To - stretch.From) * (k + 0.5) / points);
            return (Weight: (stretch.To - stretch.From) / pitch / points, Flow: reach - ((1 + pair.Ratio) * l * l));
        })).ToList();
        var mean = flows.Sum(flow => flow.Weight * flow.Flow);
        Assert.Equal(1, got.Volume / (Math.PI * width * mean), 1e-8);
        Assert.Equal(got.Ripple, (flows.Max(flow => flow.Flow) - flows.Min(flow => flow.Flow)) / mean, got.Ripple * 2e-4);
    }

    [Fact]
    [CommonPractice("on the same centres, width and speed, fewer and deeper teeth deliver more")]
    public void FewerDeeperTeeth_CarryMore()
    {
        // Tips one module over the pitch circle, whatever the module: the centres stay, the teeth get deeper as they get fewer.
        const double centres = 0.04;
        var last = 0.0;
        var fewest = 0;
        for (var teeth = 20; teeth >= 8; teeth--)
        {
            var module = centres / teeth;
            var pair = InvolutePairs.Drawn(module * 1e3, 20, (teeth, 0, (centres / 2 * 1e3) + (module * 1e3)), (teeth, 0, (centres / 2 * 1e3) + (module * 1e3)), centres * 1e3);
            var carried = Displacement.Of(pair, 0.025);
            Assert.True(carried > last, $"{teeth} teeth carry {carried}, {teeth + 1} carry {last}");
            (last, fewest) = (carried, teeth);
        }

        Outside.CheckWord("which of two pumps on the same centres carries more, 8 teeth or 20", "8", fewest.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    [Fact]
    public void ScalesWithTheCubeOfSize_AndWithWidth()
    {
        var example = new WorkedExample("GP5", "gear-pump.csv");
        var pair = InvolutePairs.Of(example);
        Gen.Double[0.1, 10].Sample(k =>
        {
            var larger = new GearPair(Scaled(pair.First, k), Scaled(pair.Second, k), pair.CentreDistance * k);
            foreach (var trapped in Enum.GetValues<TrappedOil>())
            {
                Assert.Equal(1, Displacement.Of(larger, 0.02 * k, trapped) / Displacement.Of(pair, 0.02, trapped) / (k * k * k), 1e-12);
                Assert.Equal(1, Displacement.Of(pair, 0.02 * k, trapped) / Displacement.Of(pair, 0.02, trapped) / k, 1e-12);
            }
        });

        static SpurGear Scaled(SpurGear gear, double k) => gear with { TipRadius = gear.TipRadius * k, BaseRadius = gear.BaseRadius * k };
    }

    [Fact]
    public void TheOtherGearDriving_CarriesTheSameForEachTooth()
    {
        var pair = InvolutePairs.Of(new WorkedExample("GP5", "gear-pump.csv"));
        var turned = new GearPair(pair.Second, pair.First, pair.CentreDistance);
        Assert.Equal(1, Displacement.Of(turned, 0.02) / Displacement.Of(pair, 0.02) * pair.First.Teeth / pair.Second.Teeth, 1e-12);
    }

    [Fact]
    [Published("leaflet of a pump maker on displacement")]
    public void RuleOfTipsAndCentres_LiesAboveTheTrueDisplacement()
    {
        // The leaflet's rule (π/2) b (da² − a²) leaves the mesh out; its gear set is sold as 19 cm³.
        var example = new WorkedExample("GP20", "gear-pump.csv");
        var (width, tip, centres) = (example.Input("face_width"), example.Input("tip_diameter"), example.Input("centre_distance"));
        var pair = GearPair.Measured(12, 12, tip / 200, tip / 200, centres / 100, Math.PI * centres / 100 / 12 * Math.Cos(Math.PI / 9));
        var rule = Math.PI * width / 100 * ((2 * pair.First.TipRadius * pair.First.TipRadius) - (centres * centres / 2e4));
        example.Check("displacement (pi/2) b (da^2 - a^2)", rule * 1e6, 1e-6);
        Assert.InRange(Displacement.Of(pair, width / 100) / rule, 0.93, 0.98);
    }

    [Fact]
    public void FromSpaces_CountsWhatTheMeshCarriesBack()
    {
        Assert.Equal(11 * (2e-6 + 1.8e-6 - 0.3e-6), Displacement.FromSpaces(11, 2e-6, 1.8e-6, 0.3e-6), 1e-18);
        Assert.Throws<ArgumentOutOfRangeException>(() => Displacement.FromSpaces(3, 2e-6, 1.8e-6, 0));
    }

    [Fact]
    public void GearsThatCannotRun_AreRefused()
    {
        var pair = InvolutePairs.Of(new WorkedExample("GP1", "gear-pump.csv"));
        Assert.Throws<ArgumentOutOfRangeException>(() => Displacement.Of(pair with { CentreDistance = 1 }, 0.02));
        Assert.Throws<ArgumentOutOfRangeException>(() => Displacement.Of(pair, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Displacement.Of(pair, 0.02, TrappedOil.TwoFlanks, 1));
    }
}
