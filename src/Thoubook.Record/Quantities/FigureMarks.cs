namespace Thoubook.Record.Quantities;

/// <summary>Marks that are written in more than one way.</summary>
internal static class FigureMarks
{
    public static bool IsBlank(char c) => c is ' ' or '\t' or '\u00A0' or '\u2009' or '\u202F' or '\u2007' or '\u2002' or '\u2003';

    public static bool IsDash(char c) => c is '-' or '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2014' or '\u2015' or '\u2212' or '\uFE63' or '\uFF0D';

    /// <summary>A dash that may join the parts of a mixed number.</summary>
    public static bool IsHyphen(char c) => c is '-' or '\u2010' or '\u2011';

    /// <summary>A dash that may stand before a number as its minus: any but the long ones.</summary>
    public static bool IsMinus(char c) => IsDash(c) && c is not ('\u2014' or '\u2015');

    public static bool IsPrime(char c) => c is '\'' or '\u2032' or '\u2019' or '\u2018' or '\u00B4';

    public static bool IsDoublePrime(char c) => c is '"' or '\u2033' or '\u201D' or '\u201C';

    public static bool IsDegree(char c) => c is '°' or 'º' or '˚';

    public static bool IsStroke(char c) => c is '/' or '\u2044' or '\u2215';

    public static bool IsDigit(char c) => c is >= '0' and <= '9';

    /// <summary>The fractions that have a sign of their own; denominator 0 for any other character.</summary>
    public static (int Over, int Under) Fraction(char c) => c switch
    {
        '½' => (1, 2),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅒' => (1, 10),
        _ => (0, 0),
    };
}
