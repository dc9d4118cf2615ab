using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Gears;

/// <summary>Which teeth of two gears meet, and when they meet again.</summary>
/// <param name="CommonDivisor">[-] greatest common divisor of the two counts; 1 where each tooth meets each.</param>
/// <param name="Partners">[-] teeth of the second gear that one tooth of the first ever meets.</param>
/// <param name="Engagements">[-] engagements of teeth before a pair meets again.</param>
public readonly record struct MeetingTeeth(int CommonDivisor, int Partners, int Engagements)
{
    /// <summary>How two gears meet.</summary>
    /// <param name="first">[-] teeth of the first gear, 1 or more.</param>
    /// <param name="second">[-] teeth of the second gear, 1 or more.</param>
    /// <returns>What meets.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count below 1.</exception>
    /// <remarks>Model: greatest common divisor g; a tooth meets z2/g others, a pair meets again after z1 z2/g engagements. Source: arithmetic of the hunting tooth (common practice). Check: MeetingTeethTests.</remarks>
    public static MeetingTeeth Of(int first, int second) => Of(first, second, default(Silent));

    /// <summary>The same for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="first">[-] teeth of the first gear, 1 or more.</param>
    /// <param name="second">[-] teeth of the second gear, 1 or more.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>What meets.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count below 1.</exception>
    /// <remarks>Model: as the other. Source: arithmetic of the hunting tooth (common practice). Check: MeetingTeethTests.</remarks>
    public static MeetingTeeth Of<TTrace>(int first, int second, TTrace trace)
        where TTrace : struct, ITrace
    {
        var (a, b) = (Guard.AtLeast(first, 1), Guard.AtLeast(second, 1));
        while (b != 0)
            (a, b) = (b, a % b);
        trace.Given("z_1", "teeth of the first gear", first, Units.None);
        trace.Given("z_2", "teeth of the second gear", second, Units.None);
        trace.Given("g_c", "greatest number that divides both", a, Units.None);
        var partners = trace.Line("n", "teeth of the second gear that one tooth of the first meets", "z_2/g_c", second / a, Units.None);
        var engagements = trace.Line("N", "engagements before a pair meets again", "z_1 × n", first * (second / a), Units.None);
        trace.Line("r_1", "turns of the first gear before a pair meets again", "N/z_1", partners, Units.None);
        return new MeetingTeeth(a, (int)partners, (int)engagements);
    }
}
