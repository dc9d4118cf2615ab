using Thoubook.Record.Quantities;

namespace Thoubook.Record.Measures;

/// <summary>The one place that says how a reading of a figure is to be read: in which unit a bare number is, and what would be no surprise.</summary>
public static class ReadingContexts
{
    /// <summary>For a reading of a dimension or a check of a fit.</summary>
    public static ReadingContext For(Figure figure, EngineRecord record) => new()
    {
        Kind = figure.Kind,
        BareUnit = figure.Governing(record.Engine.Mark)?.Limits.Given.FirstOrDefault()?.Unit ?? figure.UnitOfLimits,
        Plausible = PlausibleOf(figure),
        FitSigns = SignsOf(figure),
    };

    /// <summary>For the limits of a figure themselves: nothing is known yet, and each names its unit.</summary>
    public static ReadingContext ForLimitsOf(Figure figure) => new() { Kind = figure.Kind, FitSigns = SignsOf(figure) };

    private static FitSigns SignsOf(Figure figure) => figure is Fit ? FitSigns.TightIsNegative : FitSigns.NotHere;

    /// <summary>[SI] The least and greatest of all its limits, repair sizes among them; null where they are open above and so say nothing.</summary>
    private static (double Least, double Greatest)? PlausibleOf(Figure figure)
    {
        var limits = figure.LimitSets.Select(s => s.Limits).ToList();
        var greatest = limits.SelectMany(l => new[] { l.NewGreatest, l.WornGreatest }).OfType<Quantity>().Select(q => q.Si).ToList();
        if (greatest.Count == 0 || greatest.Max() <= 0 && !limits.Any(IsClosedBelow))
            return null;

        // Limits that only say "not above" leave everything from nil upwards free.
        var least = limits.Any(IsClosedBelow) ? limits.SelectMany(l => l.Given).Min(q => q.Si) : 0;
        var steps = (figure as Dimension)?.RepairSizes.Select(r => r.Step.Si).Append(0).ToList() ?? [0];
        return (least + steps.Min(), Math.Max(least, greatest.Max()) + steps.Max());
    }

    private static bool IsClosedBelow(Limits limits) => limits.NewLeast is not null || limits.WornLeast is not null;
}
