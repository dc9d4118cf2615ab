using System.Globalization;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

/// <summary>What is said of each gauge in a state.</summary>
internal static class GaugeVerdicts
{
    public static IReadOnlyList<GaugeVerdict> Of(OilState state, OilAnswer answer, double confidence) =>
        [.. answer.Gauges.Select(gauge => Of(gauge, state.Limits.FirstOrDefault(l => l.Gauge == gauge.Gauge.Name), confidence))];

    private static GaugeVerdict Of(GaugeAnswer gauge, GaugeLimit? limit, double confidence)
    {
        if (limit is null || (limit.Least is null && limit.Greatest is null))
            return new GaugeVerdict(gauge, limit, null, 1, "Nothing is asked of it here.");
        var (below, above) = (limit.Least is { } least ? gauge.Below(least.Si) : 0, limit.Greatest is { } greatest ? 1 - gauge.Below(greatest.Si) : 0);
        var p = (Below: below, Within: Math.Max(0, 1 - below - above), Above: above);
        return p switch
        {
            _ when p.Within >= confidence => new(gauge, limit, OilVerdict.Enough, p.Within, $"{InHundred(p.Within)} in 100 that it reads inside its limits."),
            _ when p.Below >= confidence => new(gauge, limit, OilVerdict.TooLow, p.Within, $"{InHundred(p.Below)} in 100 that it reads less than is asked for."),
            _ when p.Above >= confidence => new(gauge, limit, OilVerdict.TooHigh, p.Within, $"{InHundred(p.Above)} in 100 that it reads more than is allowed."),
            _ => new(gauge, limit, OilVerdict.TooCloseToCall, p.Within, $"{InHundred(p.Within)} in 100 that it reads inside its limits; {InHundred(confidence)} are asked for."),
        };
    }

    private static string InHundred(double probability) => probability switch
    {
        >= 0.995 => "over 99",
        < 0.01 => "under 1",
        _ => (probability * 100).ToString("0", CultureInfo.InvariantCulture),
    };
}
