using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Flow;

/// <summary>Friction of a round pipe, laminar to turbulent in one formula.</summary>
public static class Friction
{
    /// <summary>[-] below this Reynolds number flow is laminar past doubt, and the formula is left for 64/Re.</summary>
    private const double CreepingBelow = 1e-3;

    /// <summary>Darcy's friction factor.</summary>
    /// <param name="reynolds">[-] Reynolds number, above 0.</param>
    /// <param name="roughness">[-] roughness over bore, 0 to 0.2.</param>
    /// <returns>[-] the factor; 64/Re in laminar flow.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: f = 8 ((8/Re)^12 + (a + b)^−1.5)^(1/12), a = (−2.457 ln((7/Re)^0.9 + 0.27 e/d))^16, b = (37530/Re)^16. Valid: any Reynolds number; roughness up to 0.05 of the bore. Source: Churchill, Chemical Engineering 84 (1977) 91 (published: formula and values seen in a library of fluid formulas). Check: FrictionTests.</remarks>
    public static double Churchill(double reynolds, double roughness) => Churchill(reynolds, roughness, out _);

    /// <summary>The same with its derivative, for those who solve for the flow.</summary>
    /// <param name="reynolds">[-] Reynolds number, above 0.</param>
    /// <param name="roughness">[-] roughness over bore, 0 to 0.2.</param>
    /// <param name="slope">[-] derivative of the factor with respect to the Reynolds number.</param>
    /// <returns>[-] the factor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Source: Churchill, 1977 (published). Check: FrictionTests.</remarks>
    public static double Churchill(double reynolds, double roughness, out double slope)
    {
        Guard.AboveZero(reynolds);
        Guard.Within(roughness, 0, 0.2);
        if (reynolds < CreepingBelow)
        {
            slope = -64 / (reynolds * reynolds);
            return 64 / reynolds;
        }

        var smooth = Math.Pow(7 / reynolds, 0.9);
        var wall = smooth + (0.27 * roughness);
        var root = -2.457 * Math.Log(wall);
        var (a, b) = (Math.Pow(root, 16), Math.Pow(37530 / reynolds, 16));
        var laminar = Math.Pow(8 / reynolds, 12);
        var turbulent = Math.Pow(a + b, -1.5);
        var f = 8 * Math.Pow(laminar + turbulent, 1 / 12.0);
        var slopeOfA = 16 * Math.Pow(root, 15) * 2.457 * 0.9 * smooth / (wall * reynolds);
        var slopeOfB = -16 * b / reynolds;
        var slopeOfSum = (-12 * laminar / reynolds) - (1.5 * turbulent / (a + b) * (slopeOfA + slopeOfB));
        slope = f / 12 * slopeOfSum / (laminar + turbulent);
        return f;
    }

    /// <summary>Tells the factor to a trace that has heard of Re, roughness e and bore d.</summary>
    internal static double Told<TTrace>(double reynolds, double roughness, TTrace trace)
        where TTrace : struct, ITrace
    {
        const string source = "Churchill, 1977";
        var f = Churchill(reynolds, roughness);
        if (!TTrace.Writes)
            return f;
        if (reynolds < CreepingBelow)
            return trace.Line("f", "Darcy's friction factor", "64 / Re", f, Units.None, "laminar flow");
        trace.Line("a", "smooth and rough wall together", "abs(2.457 × ln((7 / Re)^0.9 + 0.27 × e / d))^16", Math.Pow(Math.Abs(2.457 * Math.Log(Math.Pow(7 / reynolds, 0.9) + (0.27 * roughness))), 16), Units.None, source);
        trace.Line("b", "where the flow turns turbulent", "(37530 / Re)^16", Math.Pow(37530 / reynolds, 16), Units.None, source);
        return trace.Line("f", "Darcy's friction factor", "8 × ((8 / Re)^12 + (a + b)^−1.5)^(1 / 12)", f, Units.None, source);
    }
}
