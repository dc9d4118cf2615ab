using CsCheck;
using Thoubook.Mechanics.Gears;

namespace Thoubook.Mechanics.Tests.Gears;

public sealed class MeetingTeethTests
{
    [Fact]
    [CommonPractice("gears of equal count always bring the same teeth together; 10 and 11 teeth meet each with each, 110 engagements before a pair meets again")]
    public void TenAndEleven_AndEqualCounts()
    {
        Outside.Check("engagements of 10 and 11 teeth before a pair meets again", 110, MeetingTeeth.Of(10, 11).Engagements, 0);
        Outside.Check("greatest common divisor of 10 and 11 teeth", 1, MeetingTeeth.Of(10, 11).CommonDivisor, 0);
        Outside.Check("teeth that one tooth meets, both gears of 11", 1, MeetingTeeth.Of(11, 11).Partners, 0);
        // An odd number alone proves nothing.
        Outside.Check("teeth that one tooth meets, 15 and 21 teeth", 7, MeetingTeeth.Of(15, 21).Partners, 0);
    }

    [Fact]
    public void CountedOut_IsTheSame()
    {
        Gen.Select(Gen.Int[1, 60], Gen.Int[1, 60]).Sample((first, second) =>
        {
            var met = new HashSet<int>();
            var engagements = 0;
            do
            {
                if (engagements % first == 0)
                    met.Add(engagements % second);
                engagements++;
            }
            while (engagements % first != 0 || engagements % second != 0);
            var got = MeetingTeeth.Of(first, second);
            Assert.Equal((met.Count, engagements), (got.Partners, got.Engagements));
            Assert.Equal(0, first % got.CommonDivisor);
            Assert.Equal(second / got.CommonDivisor, got.Partners);
        });
    }

    [Fact]
    public void NoTeeth_AreRefused() => Assert.Throws<ArgumentOutOfRangeException>(() => MeetingTeeth.Of(0, 3));
}
