using System.Globalization;
using NodaTime;
using NodaTime.Text;
using Thoubook.Appraisal;
using Thoubook.Record;

namespace Thoubook.Web.Sheets;

/// <summary>How counts, times and chances are said.</summary>
internal static class Said
{
    private static readonly OffsetDateTimePattern Moment = OffsetDateTimePattern.CreateWithInvariantCulture("d MMMM uuuu, HH:mm");

    public static string At(OffsetDateTime at) => Moment.Format(at);

    public static string Day(LocalDate date) => LocalDatePattern.CreateWithInvariantCulture("d MMMM uuuu").Format(date);

    /// <summary>3 readings, 1 reading, no readings.</summary>
    public static string Count(int count, string one, string? many = null) => count switch
    {
        0 => $"no {many ?? one + "s"}",
        1 => $"1 {one}",
        _ => $"{Thousands(count)} {many ?? one + "s"}",
    };

    /// <summary>1 612: a narrow gap, never a comma that could be read as a decimal mark.</summary>
    public static string Thousands(int number) => number.ToString("#,0", CultureInfo.InvariantCulture).Replace(',', '\u202f');

    /// <summary>[min] 20 min, 2 h 10: no finer than it is known.</summary>
    public static string Time(double minutes)
    {
        var whole = (long)Math.Round(minutes);
        var (hours, rest) = (whole / 60, whole % 60);
        return hours == 0 ? $"{whole} min" : rest == 0 ? $"{hours} h" : $"{hours} h {rest:00}";
    }

    /// <summary>In hundredths, never rounded up to certainty nor down to nothing.</summary>
    public static string InHundred(double probability) => probability switch
    {
        > 0.999 => "over 99.9",
        > 0.99 => (probability * 100).ToString("0.0", CultureInfo.InvariantCulture),
        < 0.001 => "under 0.1",
        < 0.01 => (probability * 100).ToString("0.0", CultureInfo.InvariantCulture),
        _ => (probability * 100).ToString("0", CultureInfo.InvariantCulture),
    };

    /// <summary>The words of a name: <c>driver-end-float</c> is said <c>driver end float</c>.</summary>
    public static string Words(string segment) => segment.Replace('-', ' ');

    public static string Title(string segment) => Words(segment) is [var first, .. var rest] ? char.ToUpperInvariant(first) + rest : segment;

    /// <summary>A sentence begins with a capital.</summary>
    public static string Sentence(string text) => text is [var first, .. var rest] ? char.ToUpperInvariant(first) + rest : text;

    /// <summary>What would settle a verdict, with the figure named as a person says it.</summary>
    public static string Advice(Advice advice) => advice.Text.Replace(advice.ReadAgain.ToString(), $"{Words(advice.ReadAgain.Part.Leaf)} {Words(advice.ReadAgain.Local)}", StringComparison.Ordinal);

    /// <summary>Pressure pump driver: a part with what it is part of.</summary>
    public static string Title(PartName part) => Title(part.Parent is { } parent ? $"{Words(parent.Leaf)} {Words(part.Leaf)}" : part.Leaf);

    /// <summary>Driver, width.</summary>
    public static string Title(FigureName figure) => $"{Title(figure.Part.Leaf)}, {Words(figure.Local)}";
}
