using CsCheck;
using Thoubook.Mechanics.Gears;

namespace Thoubook.Mechanics.Tests.Gears;

public sealed class GearTrainTests
{
    [Fact]
    public void Hand_IsReversedByEachOutsideMesh_AndByNothingElse()
    {
        Assert.Equal(new Driven(1, Hand.Clockwise), GearTrain.Through(Hand.Clockwise, []));
        Assert.Equal(new Driven(2, Hand.Anticlockwise), GearTrain.Through(Hand.Clockwise, [new Drive(40, 20)]));
        Assert.Equal(Hand.Clockwise, GearTrain.Through(Hand.Clockwise, [new Drive(40, 30), new Drive(30, 20)]).Hand);
        Assert.Equal(Hand.Anticlockwise, GearTrain.Through(Hand.Anticlockwise, [new Drive(20, 60, DriveKind.Inside), new Drive(20, 20, DriveKind.Chain)]).Hand);
        Assert.Throws<ArgumentOutOfRangeException>(() => GearTrain.Through(Hand.Clockwise, [new Drive(0, 1)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => GearTrain.Through(Hand.Clockwise, [new Drive(1, 0)]));
    }

    [Fact]
    public void Idler_ChangesTheHandAndNotTheRatio()
    {
        Gen.Select(Gen.Int[10, 80], Gen.Int[10, 80], Gen.Int[10, 80]).Sample((first, idler, last) =>
        {
            var with = GearTrain.Through(Hand.Clockwise, [new Drive(first, idler), new Drive(idler, last)]);
            var without = GearTrain.Through(Hand.Clockwise, [new Drive(first, last)]);
            Assert.Equal((double)first / last, with.Ratio, 1e-12);
            Assert.Equal(without.Ratio, with.Ratio, 1e-12);
            Assert.Equal(GearTrain.Other(without.Hand), with.Hand);
        });
    }

    [Fact]
    [CommonPractice("gear pumps carry the oil round the outside, in the tooth spaces; the teeth come out of mesh on the inlet side")]
    public void Outlet_IsWhereTheTeethGoIntoMesh()
    {
        // Drawn out: the driver left of its mate and turning with the clock moves its teeth down through the mesh; below they part and draw in.
        Outside.CheckWord("side that delivers, driver to the left, with the clock", "Above", GearTrain.Outlet(Hand.Clockwise, Beside.Left).ToString());
        Outside.CheckWord("side that delivers, driver to the left, against the clock", "Below", GearTrain.Outlet(Hand.Anticlockwise, Beside.Left).ToString());
        Outside.CheckWord("side that delivers, driver above, with the clock", "Right", GearTrain.Outlet(Hand.Clockwise, Beside.Above).ToString());
    }

    [Fact]
    public void Outlet_FollowsFromHowTheTeethMove()
    {
        foreach (var hand in Enum.GetValues<Hand>())
        {
            foreach (var lies in Enum.GetValues<Beside>())
            {
                // Towards the mate, and the way the driver's teeth move there: the turn of that direction by the hand.
                var (x, y) = lies switch { Beside.Left => (1, 0), Beside.Right => (-1, 0), Beside.Above => (0, -1), _ => (0, 1) };
                var (moveX, moveY) = hand == Hand.Clockwise ? (y, -x) : (-y, x);
                var inlet = (moveX, moveY) switch { (1, 0) => Beside.Right, (-1, 0) => Beside.Left, (0, 1) => Beside.Above, _ => Beside.Below };
                Assert.Equal(GearTrain.Across(inlet), GearTrain.Outlet(hand, lies));

                // Turned the other way, or driven from the other gear the same way round, the ports change places.
                Assert.Equal(inlet, GearTrain.Outlet(GearTrain.Other(hand), lies));
                Assert.Equal(inlet, GearTrain.Outlet(hand, GearTrain.Across(lies)));
            }
        }
    }
}
