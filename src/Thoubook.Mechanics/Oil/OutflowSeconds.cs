using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Oil;

/// <summary>A cup that measures viscosity by the seconds in which it empties.</summary>
public enum OutflowCup
{
    /// <summary>Saybolt Universal.</summary>
    SayboltUniversal,

    /// <summary>Saybolt Furol, for thick oil.</summary>
    SayboltFurol,

    /// <summary>Redwood No 1.</summary>
    RedwoodNo1,

    /// <summary>Redwood No 2, the Admiralty cup, for thick oil.</summary>
    RedwoodNo2,
}

/// <summary>Seconds of the old viscometers into kinematic viscosity and back.</summary>
public static class OutflowSeconds
{
    /// <summary>[s] most seconds for which a conversion is given.</summary>
    public const double Greatest = 1e6;

    private const string Saybolt = "ASTM D2161";

    private const string Redwood = "usual formula of the Redwood cups";

    /// <summary>[-] in mm²/s, most for which a conversion is given.</summary>
    private const double GreatestViscosity = 3e6;

    /// <summary>Fewest seconds that a cup can tell: below, the oil runs out too fast for its viscosity to count.</summary>
    /// <param name="cup">The cup.</param>
    /// <returns>[s] the seconds.</returns>
    public static double Least(OutflowCup cup) => cup switch
    {
        OutflowCup.SayboltUniversal => 32,
        OutflowCup.SayboltFurol => 25,
        OutflowCup.RedwoodNo1 => 34,
        _ => 32.5,
    };

    /// <summary>Kinematic viscosity for the seconds of a cup.</summary>
    /// <param name="cup">The cup.</param>
    /// <param name="seconds">[s] from <see cref="Least"/> to 1e6.</param>
    /// <param name="temperature">[K] of the oil in the cup; only Saybolt's cups heed it.</param>
    /// <returns>[m²/s] the viscosity at that temperature.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: Redwood No 1 0.260 t − 179/t to 100 s, 0.247 t − 50/t above; No 2 2.458 t − 100/t to 90 s, 2.447 t above; Saybolt by inverting <see cref="Seconds(OutflowCup, double, double)"/>. Within about 1 %. Source: ASTM D2161 (published: universal; from memory: Furol); formulas of the Redwood cups (published). Check: OutflowSecondsTests.</remarks>
    public static double Viscosity(OutflowCup cup, double seconds, double temperature) => Viscosity(cup, seconds, temperature, default(Silent));

    /// <summary>Seconds of a cup for a kinematic viscosity.</summary>
    /// <param name="cup">The cup.</param>
    /// <param name="viscosity">[m²/s] that which gives <see cref="Least"/>, or more; 3 at most.</param>
    /// <param name="temperature">[K] of the oil in the cup; only Saybolt's cups heed it.</param>
    /// <returns>[s] the seconds.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Source: ASTM D2161 (published: universal; from memory: Furol); formulas of the Redwood cups (published). Check: OutflowSecondsTests.</remarks>
    public static double Seconds(OutflowCup cup, double viscosity, double temperature) => Seconds(cup, viscosity, temperature, default(Silent));

    /// <summary>[-] What the root of the least seconds may be out by.</summary>
    private const double Hair = 1e-9;

    /// <summary>Kinematic viscosity for the seconds of a cup, for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="cup">The cup.</param>
    /// <param name="seconds">[s] from <see cref="Least"/> to 1e6.</param>
    /// <param name="temperature">[K] of the oil in the cup.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[m²/s] the viscosity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Source: ASTM D2161 (published: universal; from memory: Furol); formulas of the Redwood cups (published). Check: OutflowSecondsTests.</remarks>
    public static double Viscosity<TTrace>(OutflowCup cup, double seconds, double temperature, TTrace trace)
        where TTrace : struct, ITrace
    {
        Guard.Within(seconds, Least(cup), Greatest, Units.Second);
        CheckTemperature(temperature);
        if (IsRedwood(cup))
        {
            var (a, b) = FactorsBySeconds(cup, seconds);
            trace.Given("t", "seconds of the cup", seconds, Units.Second);
            Tell(a, b, trace);
            var n = trace.Line("n", "viscosity in mm²/s", "a × t − b / t", (a * seconds) - (b / seconds), Units.None, Redwood);
            return InSi(n, trace);
        }

        // A hair below the least, so that the least seconds themselves lie between the ends.
        var (found, _) = Roots.Find(n => Saybolted(cup, n, temperature) - seconds, LeastViscosity(cup, temperature) * (1 - Hair), GreatestViscosity);
        trace.Given("n", "viscosity in mm²/s that gives the seconds, found by trial", found, Units.None);
        Saybolted(cup, found, temperature, trace);
        return InSi(found, trace);
    }

    /// <summary>Seconds of a cup for a kinematic viscosity, for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="cup">The cup.</param>
    /// <param name="viscosity">[m²/s] that which gives <see cref="Least"/>, or more; 3 at most.</param>
    /// <param name="temperature">[K] of the oil in the cup.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[s] the seconds.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Source: ASTM D2161 (published: universal; from memory: Furol); formulas of the Redwood cups (published). Check: OutflowSecondsTests.</remarks>
    public static double Seconds<TTrace>(OutflowCup cup, double viscosity, double temperature, TTrace trace)
        where TTrace : struct, ITrace
    {
        CheckTemperature(temperature);
        // The viscosity of the least seconds is itself found to a rounding: it is taken.
        Guard.Within(viscosity, 1e-6 * LeastViscosity(cup, temperature) * (1 - (2 * Hair)), 1e-6 * GreatestViscosity, Units.SquareMetrePerSecond);
        trace.Given("ν", "kinematic viscosity", viscosity, Units.SquareMetrePerSecond);
        var n = trace.Line("n", "viscosity in mm²/s", "1000000 × ν", 1e6 * viscosity, Units.None);
        if (!IsRedwood(cup))
            return Saybolted(cup, n, temperature, trace);
        var (a, b) = FactorsByViscosity(cup, n);
        Tell(a, b, trace);
        return trace.Line("t", "seconds of the cup", "(n + sqrt(n^2 + 4 × a × b)) / (2 × a)", (n + Math.Sqrt((n * n) + (4 * a * b))) / (2 * a), Units.Second, Redwood);
    }

    /// <summary>[-] in mm²/s: the viscosity that gives the fewest seconds of a cup.</summary>
    internal static double LeastViscosity(OutflowCup cup, double temperature)
    {
        if (IsRedwood(cup))
        {
            var (a, b) = FactorsBySeconds(cup, Least(cup));
            return (a * Least(cup)) - (b / Least(cup));
        }

        var (n, _) = Roots.Find(n => Saybolted(cup, n, temperature) - Least(cup), cup == OutflowCup.SayboltUniversal ? 0.5 : 40, 100);
        return n;
    }

    private static bool IsRedwood(OutflowCup cup) => cup is OutflowCup.RedwoodNo1 or OutflowCup.RedwoodNo2;

    private static (double A, double B) FactorsBySeconds(OutflowCup cup, double seconds) => cup == OutflowCup.RedwoodNo1
        ? seconds <= 100 ? (0.260, 179) : (0.247, 50)
        : seconds <= 90 ? (2.458, 100) : (2.447, 0);

    /// <summary>The formulas meet, but for 0.2 %, at 24.21 and at 220.2 mm²/s.</summary>
    private static (double A, double B) FactorsByViscosity(OutflowCup cup, double n) => cup == OutflowCup.RedwoodNo1
        ? n <= 24.205 ? (0.260, 179) : (0.247, 50)
        : n <= 220.17 ? (2.458, 100) : (2.447, 0);

    private static double Saybolted(OutflowCup cup, double n, double temperature) => Saybolted(cup, n, temperature, default(Silent));

    private static double Saybolted<TTrace>(OutflowCup cup, double n, double temperature, TTrace trace)
        where TTrace : struct, ITrace
    {
        if (cup == OutflowCup.SayboltFurol)
        {
            // Two temperatures are known, 122 and 210 °F; the nearer one counts.
            return temperature < 347.6
                ? trace.Line("t", "seconds of the cup at 122 °F", "0.4717 × n + 13924 / (n^2 − 72.59 × n + 6816)", (0.4717 * n) + (13924 / ((n * n) - (72.59 * n) + 6816)), Units.Second, $"{Saybolt} (from memory)")
                : trace.Line("t", "seconds of the cup at 210 °F", "0.4792 × n + 5610 / (n^2 + 2130)", (0.4792 * n) + (5610 / ((n * n) + 2130)), Units.Second, $"{Saybolt} (from memory)");
        }

        trace.Given("T", "temperature of the oil in the cup", temperature, Units.Kelvin);
        var warm = trace.Line("F", "factor of the temperature", "1 + 0.000061 × (1.8 × T − 559.67)", 1 + (0.000061 * ((1.8 * temperature) - 559.67)), Units.None, Saybolt);
        var at100 = trace.Line("t_100", "seconds at 100 °F", "4.6324 × n + (1 + 0.03264 × n) × 100000 / (3930.2 + 262.7 × n + 23.97 × n^2 + 1.646 × n^3)", (4.6324 * n) + ((1 + (0.03264 * n)) * 100000 / (3930.2 + (262.7 * n) + (23.97 * n * n) + (1.646 * n * n * n))), Units.Second, Saybolt);
        return trace.Line("t", "seconds of the cup", "F × t_100", warm * at100, Units.Second, Saybolt);
    }

    private static void Tell<TTrace>(double a, double b, TTrace trace)
        where TTrace : struct, ITrace
    {
        trace.Given("a", "mm²/s for each second", a, Units.None, Redwood);
        trace.Given("b", "what the speed of the stream takes off", b, Units.None, Redwood);
    }

    private static double InSi<TTrace>(double n, TTrace trace)
        where TTrace : struct, ITrace => trace.Line("ν", "kinematic viscosity", "n / 1000000", n / 1e6, Units.SquareMetrePerSecond);

    private static void CheckTemperature(double temperature) => Guard.Within(temperature, 250, 450, Units.Kelvin);
}
