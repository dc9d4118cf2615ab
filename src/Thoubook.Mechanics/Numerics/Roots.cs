namespace Thoubook.Mechanics.Numerics;

/// <summary>Where a function of one unknown crosses zero.</summary>
public static class Roots
{
    /// <summary>Finds a crossing between two ends whose values differ in sign, by inverse quadratic steps kept safe by halving.</summary>
    /// <param name="function">Continuous between the ends; [any] in and out.</param>
    /// <param name="low">[any] one end.</param>
    /// <param name="high">[any] the other end.</param>
    /// <param name="tolerance">[any] width of the interval within which the crossing is known at the end; 0 asks for the last digit.</param>
    /// <param name="steps">[-] most steps taken.</param>
    /// <returns>[any] the crossing and how the search stopped.</returns>
    public static (double Root, SolveReport Report) Find(Func<double, double> function, double low, double high, double tolerance = 0, int steps = 200)
    {
        ArgumentNullException.ThrowIfNull(function);
        Guard.Finite(low);
        Guard.Finite(high);
        var (a, b) = (high, low);
        var (fa, fb) = (function(a), function(b));
        if (fa == 0 || fb == 0)
            return (fa == 0 ? a : b, new SolveReport(SolveStatus.Converged, 0, 0, tolerance, ""));
        if (!(fa < 0 ^ fb < 0) || double.IsNaN(fa) || double.IsNaN(fb))
            return (double.NaN, new SolveReport(SolveStatus.NotBracketed, 0, Math.Min(Math.Abs(fa), Math.Abs(fb)), tolerance, "The function has the same sign at both ends: choose ends that enclose the answer."));

        // a is the newest end, b the end of the other sign, c the one before.
        var (c, fc) = (a, fa);
        var share = 0.5;
        for (var step = 1; step <= steps; step++)
        {
            var x = a + (share * (b - a));
            var fx = function(x);
            if (fx < 0 == fa < 0)
                (c, fc) = (a, fa);
            else
                (c, b, fc, fb) = (b, a, fb, fa);
            (a, fa) = (x, fx);

            var (best, fBest) = Math.Abs(fa) < Math.Abs(fb) ? (a, fa) : (b, fb);
            var least = (2 * double.BitIncrement(Math.Abs(best))) - (2 * Math.Abs(best)) + (0.5 * tolerance);
            var relative = least / Math.Abs(b - a);
            if (relative > 0.5 || fBest == 0)
                return (best, new SolveReport(SolveStatus.Converged, step, fBest, tolerance, ""));

            share = 0.5;
            var xi = (a - b) / (c - b);
            var phi = (fa - fb) / (fc - fb);
            if (phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi)
                share = (fa / (fb - fa) * (fc / (fb - fc))) + ((c - a) / (b - a) * (fa / (fc - fa)) * (fb / (fc - fb)));
            share = Math.Clamp(share, relative, 1 - relative);
        }

        return (a, new SolveReport(SolveStatus.OutOfSteps, steps, fa, tolerance, "Allow more steps or a wider tolerance."));
    }
}
