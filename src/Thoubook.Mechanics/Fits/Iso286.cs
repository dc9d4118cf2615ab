using System.Globalization;
using Thoubook.Mechanics.Metrology;
using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Fits;

/// <summary>Limits of holes and shafts by class, such as H7 or k6, for sizes over 1 up to 500 mm and grades 5 to 11.</summary>
public static partial class Iso286
{
    private enum DeviationEnd
    {
        Lower,
        Upper,
        UpperWithDelta,
    }

    private sealed record Deviation(string Letter, int GradeFrom, int GradeTo, DeviationEnd End, double[] Micrometres);

    /// <summary>Limits of a class as deviations from the nominal size.</summary>
    /// <param name="size">[m] nominal diameter, above 0.</param>
    /// <param name="letter">Capital for a hole, small for a shaft: F G H JS K N P, e f g h js k m n p r s.</param>
    /// <param name="grade">[-] tolerance grade.</param>
    /// <param name="deviations">[m] lower and upper deviation, where the class is in the tables.</param>
    /// <param name="why">Why it is not; empty where it is.</param>
    /// <returns>True where it is.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Size not above 0.</exception>
    /// <remarks>Model: one deviation from the table, the other by the tolerance of the grade; holes K, N, P in the finer grades with Δ; JS and js half the tolerance on either side, not rounded. Source: ISO 286-1:2010 and ISO 286-2:2010 (published). Check: Iso286Tests.</remarks>
    public static bool TryDeviations(double size, string letter, int grade, out Interval deviations, out string why)
    {
        Guard.AboveZero(size, "m");
        ArgumentNullException.ThrowIfNull(letter);
        deviations = default;

        // To the nanometre, so that a size on the border of two ranges stays in the lower one.
        var millimetres = Math.Round(size * 1e3, 6);
        if (millimetres <= 1 || millimetres > MainRanges[^1])
        {
            why = string.Create(CultureInfo.InvariantCulture, $"The tables here hold sizes over 1 up to 500 mm, not {millimetres:G9} mm.");
            return false;
        }

        if (!Tolerances.TryGetValue(grade, out var tolerances))
        {
            why = string.Create(CultureInfo.InvariantCulture, $"The tables here hold grades 5 to 11, not {grade}.");
            return false;
        }

        var main = RangeOf(millimetres, MainRanges);
        var tolerance = tolerances[main];
        why = "";
        if (letter is "JS" or "js")
        {
            deviations = Interval.Between(-0.5e-6 * tolerance, 0.5e-6 * tolerance);
            return true;
        }

        if (Array.Find(Deviations, d => d.Letter == letter && grade >= d.GradeFrom && grade <= d.GradeTo) is not { } deviation)
        {
            why = string.Create(CultureInfo.InvariantCulture, $"The tables here do not hold {letter}{grade}; for holes F G H JS K N P, for shafts e f g h js k m n p r s (K up to grade 8).");
            return false;
        }

        var given = deviation.Micrometres[RangeOf(millimetres, FineRanges)];
        if (deviation.End == DeviationEnd.UpperWithDelta)
            given += Deltas.TryGetValue(grade, out var deltas) ? deltas[main] : 0;
        deviations = deviation.End == DeviationEnd.Lower
            ? Interval.Between(1e-6 * given, 1e-6 * (given + tolerance))
            : Interval.Between(1e-6 * (given - tolerance), 1e-6 * given);
        return true;
    }

    private static int RangeOf(double millimetres, double[] ends) => Array.FindIndex(ends, end => millimetres <= end);
}
