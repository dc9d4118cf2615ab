using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Springs;

/// <summary>What a test of an actual spring at two lengths says of it.</summary>
/// <param name="Rate">[N/m] rate between the two lengths.</param>
/// <param name="Free">[m] free length that the two points point to.</param>
public readonly record struct SpringTest(double Rate, double Free)
{
    /// <summary>The spring by its loads at two lengths.</summary>
    /// <param name="firstLength">[m] one length.</param>
    /// <param name="firstLoad">[N] load there.</param>
    /// <param name="secondLength">[m] another length.</param>
    /// <param name="secondLoad">[N] load there, greater where it is shorter.</param>
    /// <returns>The spring.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A length not above 0, a load below 0, or two points that are not those of a spring.</exception>
    /// <remarks>Model: R = (F2 − F1)/(L1 − L2), L0 = L1 + F1/R. Assumes: a straight characteristic, no coils touching. Source: definition (common practice: two lengths, not the free length alone). Check: SpringTestTests.</remarks>
    public static SpringTest Of(double firstLength, double firstLoad, double secondLength, double secondLoad) => Of(firstLength, firstLoad, secondLength, secondLoad, default(Silent));

    /// <summary>The same for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="firstLength">[m] one length.</param>
    /// <param name="firstLoad">[N] load there.</param>
    /// <param name="secondLength">[m] another length.</param>
    /// <param name="secondLoad">[N] load there, greater where it is shorter.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>The spring.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A length not above 0, a load below 0, or two points that are not those of a spring.</exception>
    /// <remarks>Source: definition (common practice). Check: SpringTestTests.</remarks>
    public static SpringTest Of<TTrace>(double firstLength, double firstLoad, double secondLength, double secondLoad, TTrace trace)
        where TTrace : struct, ITrace
    {
        trace.Given("L_1", "first length", Guard.AboveZero(firstLength, Units.Metre), Units.Metre);
        trace.Given("F_1", "load there", Guard.ZeroOrMore(firstLoad, Units.Newton), Units.Newton);
        trace.Given("L_2", "second length", Guard.AboveZero(secondLength, Units.Metre), Units.Metre);
        trace.Given("F_2", "load there", Guard.ZeroOrMore(secondLoad, Units.Newton), Units.Newton);
        var rate = trace.Line("R", "rate", "(F_2 − F_1) / (L_1 − L_2)", Guard.AboveZero((secondLoad - firstLoad) / (firstLength - secondLength), Units.NewtonPerMetre, "rate"), Units.NewtonPerMetre);
        var free = trace.Line("L_0", "free length that the two points to", "L_1 + F_1 / R", firstLength + (firstLoad / rate), Units.Metre);
        return new SpringTest(rate, free);
    }

    /// <summary>Load at a length.</summary>
    /// <param name="length">[m] the fitted length.</param>
    /// <returns>[N] the load; 0 where the spring is loose.</returns>
    /// <remarks>Source: definition (common practice). Check: SpringTestTests.</remarks>
    public double LoadAt(double length) => Math.Max(0, Rate * (Free - length));

    /// <summary>What to put under the spring for a wanted load.</summary>
    /// <param name="load">[N] wanted.</param>
    /// <param name="length">[m] fitted length as it is.</param>
    /// <returns>[m] thickness of the shim; negative where that much must come out.</returns>
    /// <remarks>Model: t = F/R − (L0 − L). Source: definition (common practice). Check: SpringTestTests.</remarks>
    public double ShimFor(double load, double length) => (load / Rate) - (Free - length);
}
