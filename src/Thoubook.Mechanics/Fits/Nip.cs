using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Fits;

/// <summary>Nip (crush) of two half shells in their bore.</summary>
public static class Nip
{
    /// <summary>Diametral interference of the shells from the gap seen at the joint when one side is released.</summary>
    /// <param name="gap">[m] at the released joint, the excess of both shells together; 0 or more.</param>
    /// <returns>[m] interference on diameter.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Gap below 0 or not finite.</exception>
    /// <remarks>Model: u/π, the gap being excess circumference. Source: geometry of the circle (common practice). Check: NipTests.</remarks>
    public static double Interference(double gap) => Guard.ZeroOrMore(gap, "m") / Math.PI;

    /// <summary>Gap at the released joint that goes with an interference.</summary>
    /// <param name="interference">[m] on diameter, 0 or more.</param>
    /// <returns>[m] gap.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Interference below 0 or not finite.</exception>
    /// <remarks>Model: π times the interference. Source: geometry of the circle (common practice). Check: NipTests.</remarks>
    public static double Gap(double interference) => Math.PI * Guard.ZeroOrMore(interference, "m");
}
