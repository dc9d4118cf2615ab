using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Runtime.CompilerServices;

namespace Thoubook.Mechanics.Numerics;

/// <summary>Checks at the public door of a sum. A broken contract throws, naming what was given, its value, its unit and what is allowed.</summary>
public static class Guard
{
    /// <summary>Refuses what is not a finite number.</summary>
    /// <param name="value">[any] what was given.</param>
    /// <param name="unit">SI unit for the message; empty where the sum takes any unit.</param>
    /// <param name="name">What it is called; the compiler fills it in.</param>
    /// <returns>[any] the value.</returns>
    public static double Finite(double value, string unit = "", [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!double.IsFinite(value))
            Refuse(name, value, unit, "a finite number");
        return value;
    }

    /// <summary>Refuses what is not above zero and finite.</summary>
    /// <param name="value">[any] what was given.</param>
    /// <param name="unit">SI unit for the message.</param>
    /// <param name="name">What it is called; the compiler fills it in.</param>
    /// <returns>[any] the value.</returns>
    public static double AboveZero(double value, string unit = "", [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > 0 && double.IsFinite(value)))
            Refuse(name, value, unit, "above 0");
        return value;
    }

    /// <summary>Refuses what is below zero or not finite.</summary>
    /// <param name="value">[any] what was given.</param>
    /// <param name="unit">SI unit for the message.</param>
    /// <param name="name">What it is called; the compiler fills it in.</param>
    /// <returns>[any] the value.</returns>
    public static double ZeroOrMore(double value, string unit = "", [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value >= 0 && double.IsFinite(value)))
            Refuse(name, value, unit, "0 or more");
        return value;
    }

    /// <summary>Refuses what lies outside a range, both ends allowed.</summary>
    /// <param name="value">[any] what was given.</param>
    /// <param name="least">[any] least allowed.</param>
    /// <param name="greatest">[any] greatest allowed.</param>
    /// <param name="unit">SI unit for the message.</param>
    /// <param name="name">What it is called; the compiler fills it in.</param>
    /// <returns>[any] the value.</returns>
    public static double Within(double value, double least, double greatest, string unit = "", [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value >= least && value <= greatest))
            Refuse(name, value, unit, string.Create(CultureInfo.InvariantCulture, $"{least:G6} to {greatest:G6}"));
        return value;
    }

    /// <summary>Refuses what is not a probability strictly between 0 and 1.</summary>
    /// <param name="value">[-] what was given.</param>
    /// <param name="name">What it is called; the compiler fills it in.</param>
    /// <returns>[-] the value.</returns>
    public static double Probability(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > 0 && value < 1))
            Refuse(name, value, "", "above 0 and below 1");
        return value;
    }

    /// <summary>Refuses a count below the least that makes sense.</summary>
    /// <param name="count">[-] what was given.</param>
    /// <param name="least">[-] least allowed.</param>
    /// <param name="name">What it is called; the compiler fills it in.</param>
    /// <returns>[-] the count.</returns>
    public static int AtLeast(int count, int least, [CallerArgumentExpression(nameof(count))] string name = "")
    {
        if (count < least)
            Refuse(name, count, "", string.Create(CultureInfo.InvariantCulture, $"{least} or more"));
        return count;
    }

    /// <summary>Refuses a list whose count differs from the one it goes with.</summary>
    /// <param name="count">[-] count given.</param>
    /// <param name="expected">[-] count of the list it goes with.</param>
    /// <param name="name">What it is called; the compiler fills it in.</param>
    public static void SameCount(int count, int expected, [CallerArgumentExpression(nameof(count))] string name = "")
    {
        if (count != expected)
            Refuse(name, count, "", string.Create(CultureInfo.InvariantCulture, $"exactly {expected}, one for each"));
    }

    /// <summary>Catches a number that is not finite where it is born; only in a debug build.</summary>
    /// <param name="value">[any] what was computed.</param>
    /// <param name="name">What it is called; the compiler fills it in.</param>
    [Conditional("DEBUG")]
    public static void DebugFinite(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        Debug.Assert(double.IsFinite(value), name);

    [DoesNotReturn]
    private static void Refuse(string name, double value, string unit, string allowed)
    {
        var space = unit.Length == 0 ? "" : " ";
        throw new ArgumentOutOfRangeException(name, value, string.Create(CultureInfo.InvariantCulture, $"{name}: {value:G9}{space}{unit}; allowed: {allowed}{space}{unit}."));
    }
}
