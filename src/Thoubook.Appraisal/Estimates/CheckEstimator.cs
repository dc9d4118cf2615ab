using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal.Estimates;

/// <summary>Checks taken on parts put together to an estimate of the fit itself.</summary>
internal static class CheckEstimator
{
    /// <summary>[m] Half width within which a method is good, where its gauge is not noted or not checked. Common practice.</summary>
    private static double HalfWidth(CheckMethod method) => method switch
    {
        CheckMethod.Feeler => 12.7e-6,
        CheckMethod.Dial => 5e-6,
        CheckMethod.PlasticStrip => 12.7e-6,
        CheckMethod.SlackenedJoint => 12.7e-6,
        _ => 25.4e-6,
    };

    public sealed record CheckedFit(Estimate Mean, Estimate Least, Estimate Greatest);

    /// <summary>Null where no check stands. Checks at one place are averaged; the closest and the widest are over places.</summary>
    public static CheckedFit? Of(Fit fit, IEnumerable<Check> standing, EngineRecord record)
    {
        List<Estimate> places = [];
        foreach (var place in standing.GroupBy(c => c.Place))
        {
            var shares = new List<Contribution>();
            double sum = 0;
            var count = place.Count();
            foreach (var check in place)
            {
                sum += check.Value.Si;
                var gauge = check.Gauge is { } tag ? record.Index.Gauge(tag) : null;
                var u = gauge?.Uncertainty?.Si ?? (check.Value.Kind == QuantityKind.Length ? HalfWidth(check.Method) / Math.Sqrt(3) : Math.Abs(check.Value.Si) * DimensionEstimator.UncheckedShare);
                var name = check.Gauge is { } g ? g.Text : $"{check.Method.Word()}, {fit.Name}";
                Estimate.AddShare(shares, new(new(SourceKind.Gauge, name), u / count, double.PositiveInfinity));
            }

            var repeat = place.Max(c => (c.Gauge is { } tag ? record.Index.Gauge(tag)?.Repeatability?.Si : null) ?? (c.Value.Kind == QuantityKind.Length ? DimensionEstimator.UnknownRepeatability : 0));
            if (repeat > 0)
                shares.Add(new(new(SourceKind.Repeatability, $"repeats of {fit.Name} at {place.Key}"), repeat / Math.Sqrt(count), double.PositiveInfinity));
            places.Add(new Estimate(sum / count, shares));
        }

        if (places.Count == 0)
            return null;
        var mean = Estimate.Sum([.. places.Select(p => (1.0 / places.Count, p))]);
        return new CheckedFit(mean, places.MinBy(p => p.Value)!, places.MaxBy(p => p.Value)!);
    }
}
