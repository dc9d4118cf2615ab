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

    private readonly Dictionary<string, UncertaintySource> _expansions = new(StringComparer.Ordinal);

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

        var warmed = new Warmth[terms.List.Count];
        double least = 0, greatest = 0, squares = 0;
        for (var i = 0; i < warmed.Length; i++)
        {
            var (term, of) = terms.List[i];
            if (WarmthOf(of, state) is not { } warmth)
                return new FitState(name, null, null, null, null, null);
            warmed[i] = warmth;

            double low, high;
            if (of.Details.IsMeasured)
            {
                low = (warmth.Factor * of.Details.Least!.Value) - (Coverage * of.Details.Least.StandardUncertainty);
                high = (warmth.Factor * of.Details.Greatest!.Value) + (Coverage * of.Details.Greatest.StandardUncertainty);
            }
            else
            {
                var half = (of.Limits.NewGreatest!.Value - of.Limits.NewLeast!.Value) / 2;
                (low, high) = ((warmth.Factor * of.Details.Counting!.Value) - half, (warmth.Factor * of.Details.Counting.Value) + half);
            }

            var c = term.Coefficient;
            least += c > 0 ? c * low : c * high;
            greatest += c > 0 ? c * high : c * low;
            squares += c * c * (high - low) * (high - low) / 4;
        }

        var expected = Sum(terms, warmed, static (_, d) => d.Counting!);
        var measured = terms.Unmeasured.Count == 0;
        double? risk = null;
        if (measured && nilMatters)
        {
            var nearest = Sum(terms, warmed, static (c, d) => c > 0 ? d.Least! : d.Greatest!);
            risk = Conformance.Within(nearest.Value, nearest.StandardUncertainty, nearest.DegreesOfFreedom, Interval.AtLeast(0)).Below;
        }

        return new FitState(name, measured ? expected : null, expected, (least, greatest), Math.Sqrt(squares), risk);
    }

    /// <summary>How a dimension grows from 20 °C to a state.</summary>
    /// <param name="Factor">[-] size there by size at 20 °C.</param>
    /// <param name="DoubtPerSize">[-] standard uncertainty of the factor, with the sign of the rise.</param>
    /// <param name="Source">What that doubt belongs to.</param>
    private readonly record struct Warmth(double Factor, double DoubtPerSize, UncertaintySource Source);

    private static Estimate Sum(Terms terms, Warmth[] warmed, Func<double, DimensionEstimate, Estimate> which)
    {
        double value = 0;
        var shares = new List<Contribution>(8);
        for (var i = 0; i < warmed.Length; i++)
        {
            var c = terms.List[i].Term.Coefficient;
            var of = which(c, terms.List[i].Of.Details);
            var scale = c * warmed[i].Factor;
            value += scale * of.Value;
            foreach (var share in of.Contributions)
                Estimate.AddShare(shares, share with { Value = scale * share.Value });
            if (warmed[i].DoubtPerSize != 0)
                Estimate.AddShare(shares, new(warmed[i].Source, c * of.Value * warmed[i].DoubtPerSize, double.PositiveInfinity));
        }

        return new Estimate(value, shares);
    }

    /// <summary>Null where the material is not known.</summary>
    private Warmth? WarmthOf(DimensionAppraisal of, TemperatureState? state)
    {
        if (state is null || of.Dimension.Kind != QuantityKind.Length)
            return new Warmth(1, 0, default);
        if (dimensions.MaterialOf(of.Figure.Name.Part, of.Piece?.Tag) is not { } material)
            return null;
        if (!_expansions.TryGetValue(material.Name, out var source))
            _expansions[material.Name] = source = new(SourceKind.Expansion, $"expansion of {material.Name}");
        var rise = state.Of(of.Figure.Name.Part) - Expansion.Reference;
        return new Warmth(1 + (material.Expansion.Value * rise), rise * material.Expansion.StandardUncertainty, source);
    }
}
