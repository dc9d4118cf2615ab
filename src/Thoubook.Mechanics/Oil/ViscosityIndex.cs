using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Oil;

/// <summary>Viscosity index: how little an oil thins between 40 and 100 °C.</summary>
public static partial class ViscosityIndex
{
    /// <summary>[m²/s] least viscosity at 100 °C for which the index is defined.</summary>
    public const double LeastAt100 = 2e-6;

    /// <summary>Index of an oil, not rounded; reports round it to a whole number.</summary>
    /// <param name="at40">[m²/s] kinematic viscosity at 40 °C.</param>
    /// <param name="at100">[m²/s] kinematic viscosity at 100 °C, 2e-6 or more, less than at 40 °C.</param>
    /// <returns>[-] the index.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A viscosity outside its range.</exception>
    /// <remarks>Model: procedure A up to 100, procedure B above; L and H interpolated in table 1, or by its two fits above 70 mm²/s. Source: ASTM D2270-10 (published: table and worked examples seen in transcription). Check: ViscosityIndexTests.</remarks>
    public static double Of(double at40, double at100) => Of(at40, at100, default(Silent));

    /// <summary>The same for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="at40">[m²/s] kinematic viscosity at 40 °C.</param>
    /// <param name="at100">[m²/s] kinematic viscosity at 100 °C, 2e-6 or more, less than at 40 °C.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[-] the index.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A viscosity outside its range.</exception>
    /// <remarks>Source: ASTM D2270-10 (published). Check: ViscosityIndexTests.</remarks>
    public static double Of<TTrace>(double at40, double at100, TTrace trace)
        where TTrace : struct, ITrace
    {
        Guard.Within(at100, LeastAt100, 1e-2, Units.SquareMetrePerSecond);
        Guard.Within(at40, at100, 1, Units.SquareMetrePerSecond);
        trace.Given("ν_40", "kinematic viscosity at 40 °C", at40, Units.SquareMetrePerSecond);
        trace.Given("ν_100", "kinematic viscosity at 100 °C", at100, Units.SquareMetrePerSecond);
        var u = trace.Line("U", "viscosity at 40 °C in mm²/s", "1000000 × ν_40", 1e6 * at40, Units.None);
        var y = trace.Line("Y", "viscosity at 100 °C in mm²/s", "1000000 × ν_100", 1e6 * at100, Units.None);
        var (l, h) = Reference(y);
        if (y > 70)
        {
            trace.Line("L", "viscosity at 40 °C of an oil of index 0", "0.8353 × Y^2 + 14.67 × Y − 216", l, Units.None, "ASTM D2270-10, fit above 70 mm²/s");
            trace.Line("H", "viscosity at 40 °C of an oil of index 100", "0.1684 × Y^2 + 11.85 × Y − 97", h, Units.None, "ASTM D2270-10, fit above 70 mm²/s");
        }
        else
        {
            trace.Given("L", "viscosity at 40 °C of an oil of index 0, mm²/s", l, Units.None, "ASTM D2270-10, table 1 at Y");
            trace.Given("H", "viscosity at 40 °C of an oil of index 100, mm²/s", h, Units.None, "ASTM D2270-10, table 1 at Y");
        }

        if (u >= h)
            return trace.Line("VI", "viscosity index", "100 × (L − U) / (L − H)", 100 * (l - u) / (l - h), Units.None, "ASTM D2270-10, procedure A");
        var n = trace.Line("N", "power of Y that brings U to H", "(ln(H) − ln(U)) / ln(Y)", (Math.Log(h) - Math.Log(u)) / Math.Log(y), Units.None, "ASTM D2270-10, procedure B");
        return trace.Line("VI", "viscosity index", "(10^N − 1) / 0.00715 + 100", ((Math.Pow(10, n) - 1) / 0.00715) + 100, Units.None, "ASTM D2270-10, procedure B");
    }

    /// <summary>Viscosity at 40 °C of an oil known by its index and its viscosity at 100 °C.</summary>
    /// <param name="index">[-] viscosity index, 0 to 400.</param>
    /// <param name="at100">[m²/s] kinematic viscosity at 100 °C, 2e-6 or more.</param>
    /// <returns>[m²/s] kinematic viscosity at 40 °C.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: the inverse of <see cref="Of(double, double)"/>. Source: ASTM D2270-10 (published). Check: ViscosityIndexTests.</remarks>
    public static double ViscosityAt40(double index, double at100)
    {
        Guard.Within(index, 0, 400);
        var y = 1e6 * Guard.Within(at100, LeastAt100, 1e-2, Units.SquareMetrePerSecond);
        var (l, h) = Reference(y);
        return 1e-6 * (index <= 100 ? l - (index * (l - h) / 100) : h / Math.Pow(y, Math.Log10(1 + (0.00715 * (index - 100)))));
    }

    /// <summary>L and H, all in mm²/s.</summary>
    private static (double L, double H) Reference(double y)
    {
        if (y > 70)
            return ((0.8353 * y * y) + (14.67 * y) - 216, (0.1684 * y * y) + (11.85 * y) - 97);

        // The table steps by 0.1 up to 20, by 0.2 up to 30 and by 0.5 up to 70.
        var at = y <= 20 ? (y - 2) / 0.1 : y <= 30 ? 180 + ((y - 20) / 0.2) : 230 + ((y - 30) / 0.5);
        var row = Math.Clamp((int)Math.Floor(at), 0, L.Length - 2);
        var share = at - row;
        return (L[row] + (share * (L[row + 1] - L[row])), H[row] + (share * (H[row + 1] - H[row])));
    }
}
