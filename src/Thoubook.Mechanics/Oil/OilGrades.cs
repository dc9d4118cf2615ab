using System.Globalization;
using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Oil;

/// <summary>The grades of the open standards, each as the oils that it allows.</summary>
internal static class OilGrades
{
    private const double At40 = 313.15;
    private const double At100 = 373.15;

    /// <summary>Index of a straight mineral oil, and how far either way one may lie (common practice).</summary>
    private const double StraightIndex = 95;
    private const double IndexEitherWay = 10;

    /// <summary>
    /// What an oil has of its grade's greatest viscosity at cranking: most of it, since with less it would pass for the next colder grade, which
    /// cranks 5 K lower at about twice the viscosity; a little more than all of it where the rapid shear of that test thins it (common practice).
    /// </summary>
    private const double CrankingShare = 0.85;
    private const double LeastCrankingShare = 0.6;
    private const double GreatestCrankingShare = 1.1;

    /// <summary>SAE J300 (2015): kinematic viscosities at 100 °C in mm²/s, from, and to but less than.</summary>
    private static readonly (int Number, double Least, double Greatest)[] Hot =
    [
        (8, 4.0, 6.1), (12, 5.0, 7.1), (16, 6.1, 8.2), (20, 6.9, 9.3), (30, 9.3, 12.5), (40, 12.5, 16.3), (50, 16.3, 21.9), (60, 21.9, 26.1),
    ];

    /// <summary>SAE J300: least viscosity at 100 °C in mm²/s, greatest at cranking in mPa s, and that temperature in °C.</summary>
    private static readonly (int Number, double Least, double Cranking, double Celsius)[] Winter =
    [
        (0, 3.8, 6200, -35), (5, 3.8, 6600, -30), (10, 4.1, 7000, -25), (15, 5.6, 7000, -20), (20, 5.6, 9500, -15), (25, 9.3, 13000, -10),
    ];

    /// <summary>ISO 3448: middle of the grade at 40 °C in mm²/s; its limits lie 10 % either way.</summary>
    private static readonly int[] Industrial = [10, 15, 22, 32, 46, 68, 100, 150, 220, 320, 460, 680, 1000, 1500, 2200, 3200];

    /// <summary>SAE J1966 and J1899: commercial number, military number, and the SAE grade that is the same.</summary>
    private static readonly (int Commercial, int Military, int Sae)[] Aviation = [(65, 1065, 30), (80, 1080, 40), (100, 1100, 50), (120, 1120, 60)];

    /// <summary>Each grade by what is left of its name when blanks, hyphens, strokes and capitals do not matter.</summary>
    private static readonly Dictionary<string, (string Name, Func<string, EngineOil> Make)> ByKey = All().ToDictionary(grade => Key(grade.Written), grade => (grade.Name, grade.Make), StringComparer.Ordinal);

    /// <summary>Every grade by its usual name.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. ByKey.Values.Select(grade => grade.Name).Distinct()];

    public static EngineOil? Find(string name, out IReadOnlyList<string> nearest)
    {
        var known = ByKey.TryGetValue(Key(name), out var grade);
        nearest = known ? [] : NearestName.To(name, Names);
        return known ? grade.Make(grade.Name) : null;
    }

    private static string Key(string name) => string.Concat(name.Where(char.IsLetterOrDigit)).ToUpperInvariant();

    private static IEnumerable<(string Written, string Name, Func<string, EngineOil> Make)> All()
    {
        foreach (var hot in Hot)
            yield return ($"SAE {Text(hot.Number)}", $"SAE {Text(hot.Number)}", name => Straight(name, hot.Least, hot.Greatest));
        foreach (var winter in Winter)
        {
            foreach (var hot in Hot.Where(hot => hot.Number >= 16 && hot.Greatest > winter.Least))
            {
                var name = $"{Text(winter.Number)}W-{Text(hot.Number)}";
                yield return ($"SAE {name}", $"SAE {name}", text => Multigrade(text, winter, Math.Max(hot.Least, winter.Least), hot.Greatest));
                yield return (name, $"SAE {name}", text => Multigrade(text, winter, Math.Max(hot.Least, winter.Least), hot.Greatest));
            }
        }

        foreach (var middle in Industrial)
        {
            yield return ($"ISO VG {Text(middle)}", $"ISO VG {Text(middle)}", name => Viscosity(name, middle));
            yield return ($"VG {Text(middle)}", $"ISO VG {Text(middle)}", name => Viscosity(name, middle));
        }

        foreach (var (commercial, military, sae) in Aviation)
        {
            var hot = Hot.Single(grade => grade.Number == sae);
            foreach (var number in (int[])[commercial, military])
                yield return ($"aviation {Text(number)}", $"aviation {Text(number)}", name => Straight(name, hot.Least, hot.Greatest));
        }
    }

    private static EngineOil Straight(string name, double least, double greatest)
    {
        var middle = 0.5 * (least + greatest);
        return new EngineOil(name, ByIndex(StraightIndex, middle), EngineOil.UsualColdest)
        {
            Doubts = [new(ByIndex(StraightIndex, least), ByIndex(StraightIndex, greatest)), new(ByIndex(StraightIndex - IndexEitherWay, middle), ByIndex(StraightIndex + IndexEitherWay, middle))],
        };
    }

    private static EngineOil Multigrade(string name, (int Number, double Least, double Cranking, double Celsius) winter, double least, double greatest)
    {
        var middle = 0.5 * (least + greatest);
        var coldest = 273.15 + winter.Celsius;
        return new EngineOil(name, Line(CrankingShare, middle), coldest)
        {
            ShearFactor = EngineOil.MultigradeShearFactor,
            ShearIsAssumed = true,
            Doubts = [new(Line(CrankingShare, least), Line(CrankingShare, greatest)), new(Line(LeastCrankingShare, middle), Line(GreatestCrankingShare, middle))],
        };

        ViscosityLine Line(double share, double hot) => ViscosityLine.Through(coldest, share * 1e-3 * winter.Cranking / OilProperties.Density(OilProperties.UsualDensity, coldest), At100, 1e-6 * hot);
    }

    private static EngineOil Viscosity(string name, double middle) => new(name, At(middle, StraightIndex), EngineOil.UsualColdest)
    {
        Doubts = [new(At(0.9 * middle, StraightIndex), At(1.1 * middle, StraightIndex)), new(At(middle, StraightIndex - IndexEitherWay), At(middle, StraightIndex + IndexEitherWay))],
    };

    /// <summary>Line of an oil known by its index and its viscosity at 100 °C in mm²/s.</summary>
    private static ViscosityLine ByIndex(double index, double hot) => ViscosityLine.Through(At40, ViscosityIndex.ViscosityAt40(index, 1e-6 * hot), At100, 1e-6 * hot);

    /// <summary>Line of an oil known by its index and its viscosity at 40 °C in mm²/s.</summary>
    private static ViscosityLine At(double warm, double index)
    {
        var (hot, _) = Roots.Find(y => ViscosityIndex.ViscosityAt40(index, 1e-6 * y) - (1e-6 * warm), 2, 1000);
        return ByIndex(index, hot);
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
