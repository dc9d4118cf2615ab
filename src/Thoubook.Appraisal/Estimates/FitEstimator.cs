using Thoubook.Mechanics.Heat;
using Thoubook.Mechanics.Metrology;
using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal.Estimates;

/// <summary>Dimensions to fits: the gap as a sum, at 20 °C and in each temperature state.</summary>
internal sealed class FitEstimator(DimensionEstimator dimensions, IReadOnlyDictionary<FigureName, DimensionAppraisal> appraised)
{
    /// <summary>[-] What a measured term is widened by for a worst case: its expanded uncertainty at 95 in 100.</summary>
    private const double Coverage = 2;

    public sealed record Terms(IReadOnlyList<(GapTerm Term, DimensionAppraisal Of)> List, IReadOnlyList<FigureName> Unmeasured);

    public Terms TermsOf(Fit fit)
    {
        var list = new List<(GapTerm, DimensionAppraisal)>(fit.Gap.Count);
        var unmeasured = new List<FigureName>();
        foreach (var term in fit.Gap)
        {
            if (!appraised.TryGetValue(term.Of, out var dimension))
            {
                unmeasured.Add(term.Of);
                continue;
            }

            list.Add((term, dimension));
            if (!dimension.Details.IsMeasured)
                unmeasured.Add(term.Of);
        }

        return new Terms(list, unmeasured);
    }

    /// <summary>The gap at 20 °C where every place counts as each dimension says.</summary>
    public static Estimate Value(Terms terms) => Sum(terms, static (_, d) => d.Counting!);

    /// <summary>The gap with every mating place at its closest.</summary>
    public static Estimate Least(Terms terms) => Sum(terms, static (c, d) => c > 0 ? d.Least! : d.Greatest!);

    /// <summary>The gap with every mating place at its widest.</summary>
    public static Estimate Greatest(Terms terms) => Sum(terms, static (c, d) => c > 0 ? d.Greatest! : d.Least!);

    private static Estimate Sum(Terms terms, Func<double, DimensionEstimate, Estimate> which)
    {
        var sum = new (double, Estimate)[terms.List.Count];
        for (var i = 0; i < sum.Length; i++)
            sum[i] = (terms.List[i].Term.Coefficient, which(terms.List[i].Term.Coefficient, terms.List[i].Of.Details));
        return Estimate.Sum(sum);
    }

    /// <summary>The fit at 20 °C (a null state) or in a temperature state.</summary>
    /// <param name="nilMatters">Whether a gap of nil would be a failure, so that its risk is worked out.</param>
    public FitState State(Terms terms, TemperatureState? state, bool nilMatters)
    {
        var name = state?.Name ?? "20 °C";
        if (terms.List.Count == 0 || terms.List.Any(t => t.Of.Details.Counting is null))
            return new FitState(name, null, null, null, null, null);

        var values = new (double, Estimate)[terms.List.Count];
        var closest = new (double, Estimate)[terms.List.Count];
        double least = 0, greatest = 0, squares = 0;
        for (var i = 0; i < values.Length; i++)
        {
            var (term, of) = terms.List[i];
            var c = term.Coefficient;
            if (Growth(of, state) is not { } growth)
                return new FitState(name, null, null, null, null, null);
            values[i] = (c, growth(of.Details.Counting!));
            closest[i] = (c, growth(c > 0 ? of.Details.Least! : of.Details.Greatest!));

            double low, high;
            if (of.Details.IsMeasured)
            {
                low = growth(of.Details.Least!).Value - (Coverage * of.Details.Least!.StandardUncertainty);
                high = growth(of.Details.Greatest!).Value + (Coverage * of.Details.Greatest!.StandardUncertainty);
            }
            else
            {
                var middle = growth(of.Details.Counting!);
                var half = (of.Limits.NewGreatest!.Value - of.Limits.NewLeast!.Value) / 2;
                (low, high) = (middle.Value - half, middle.Value + half);
            }

            least += c > 0 ? c * low : c * high;
            greatest += c > 0 ? c * high : c * low;
            squares += c * c * (high - low) * (high - low) / 4;
        }

        var expected = Estimate.Sum(values);
        var measured = terms.Unmeasured.Count == 0;
        var nearest = Estimate.Sum(closest);
        return new FitState(
            name,
            measured ? expected : null,
            expected,
            (least, greatest),
            Math.Sqrt(squares),
            measured && nilMatters ? StudentT.Below((0 - nearest.Value) / Math.Max(nearest.StandardUncertainty, 1e-12), nearest.DegreesOfFreedom) : null);
    }

    /// <summary>How a dimension of a part grows from 20 °C to the state; null where its material is not known.</summary>
    private Func<Estimate, Estimate>? Growth(DimensionAppraisal of, TemperatureState? state)
    {
        if (state is null || of.Dimension.Kind != QuantityKind.Length)
            return static e => e;
        var rise = state.Of(of.Figure.Name.Part) - Expansion.Reference;
        if (dimensions.MaterialOf(of.Figure.Name.Part, of.Piece?.Tag) is not { } material)
            return null;
        return e => Warmed(e, material, rise);
    }

    private static Estimate Warmed(Estimate at20, Material material, double rise)
    {
        var shares = new List<Contribution>(at20.Contributions.Count + 1);
        var factor = 1 + (material.Expansion.Value * rise);
        foreach (var share in at20.Contributions)
            shares.Add(share with { Value = share.Value * factor });
        shares.Add(new(new(SourceKind.Expansion, $"expansion of {material.Name}"), at20.Value * rise * material.Expansion.StandardUncertainty, double.PositiveInfinity));
        return new Estimate(at20.Value * factor, shares);
    }
}
