using Thoubook.Appraisal.Estimates;
using Thoubook.Appraisal.Verdicts;
using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;

namespace Thoubook.Appraisal;

/// <summary>Works out a whole engine from its record. Pure: the same record gives the same appraisal.</summary>
public static class Appraiser
{
    public static EngineAppraisal Appraise(EngineRecord record)
    {
        var estimator = new DimensionEstimator(record);
        var dimensions = new Dictionary<FigureName, DimensionAppraisal>(record.Dimensions.Count);
        foreach (var dimension in record.Dimensions)
            dimensions[dimension.Name] = AppraiseDimension(dimension, record, estimator);

        var fitEstimator = new FitEstimator(estimator, dimensions);
        var fits = new Dictionary<FigureName, FitAppraisal>(record.Fits.Count);
        foreach (var fit in record.Fits)
            fits[fit.Name] = AppraiseFit(fit, record, fitEstimator);

        Combine(dimensions, fits);
        return new EngineAppraisal
        {
            Record = record,
            Dimensions = [.. dimensions.Values.OrderBy(d => d.Figure.Name)],
            Fits = [.. fits.Values.OrderBy(f => f.Figure.Name)],
            InTheWay = Matters.Of(record, dimensions, fits, out var accepted),
            Accepted = accepted,
        };
    }

    private static DimensionAppraisal AppraiseDimension(Dimension dimension, EngineRecord record, DimensionEstimator estimator)
    {
        var index = record.Index;
        var piece = index.ChosenFor(dimension.Name.Part)?.Piece;
        var set = dimension.Governing(record.Engine.Mark);
        var size = piece is { } tag && index.RepairSizeOf(tag, dimension.Name.Local) is { } name ? dimension.RepairSizes.FirstOrDefault(s => s.Name == name) : null;
        var limits = BindingLimitsOf.Dimension(dimension, set, size);
        var details = estimator.Of(dimension, limits);
        var cautions = Cautions(dimension, estimator, details);

        Verdict? verdict = null;
        Probabilities? probabilities = null;
        Func<Advice?>? advice = null;
        string reason;
        if (!details.IsMeasured)
        {
            verdict = Verdict.NotMeasured;
            reason = details.NotCounting.Count > 0 ? "Its readings no longer count: struck out, or work came after them." : piece is null ? "No piece is chosen for the part." : "No reading yet.";
        }
        else if (limits.IsEmpty && dimension.Ovality is null && dimension.Taper is null)
        {
            reason = "No limits are given to judge it by.";
        }
        else
        {
            probabilities = Judge.OfDimension(dimension, details, limits);
            verdict = Judge.Say(probabilities, limits.Wear, Judge.OtherEnd.OffSize, record.Engine.Confidence);
            reason = (verdict is Verdict.BeyondWornLimits or Verdict.TooCloseToCall ? Reasons.OfForm(dimension, details, record.Engine.Confidence) : null)
                ?? Reasons.Of(verdict.Value, probabilities, limits, record.Engine.Confidence);
            if (verdict == Verdict.TooCloseToCall)
                advice = () => Adviser.ForDimension(dimension, details, limits, record.Engine.Confidence);
        }

        if (details.IsMeasured && details.MissingPlaces.Count > 0)
            reason += $" Not read: {string.Join(", ", details.MissingPlaces)}.";

        return new DimensionAppraisal
        {
            Figure = dimension,
            Piece = piece is { } chosen ? index.Piece(chosen) : null,
            RepairSize = size,
            Details = details,
            Estimate = details.IsMeasured ? details.Counting : null,
            Verdict = verdict,
            Combined = verdict,
            Governing = dimension.Name,
            Probability = probabilities,
            Limits = limits,
            Reason = reason,
            WorkOutAdvice = advice,
            Rule = RuleOf(set, index),
            Conflicting = Conflicting(dimension, set, record.Engine.Mark),
            Cautions = cautions,
        };
    }

    private static FitAppraisal AppraiseFit(Fit fit, EngineRecord record, FitEstimator estimator)
    {
        var set = fit.Governing(record.Engine.Mark);
        var limits = BindingLimitsOf.Fit(fit, set);
        var nilMatters = BindingLimitsOf.NilIsAFailure(fit, set?.Limits.NewLeast?.Si);
        var terms = estimator.TermsOf(fit);
        var cautions = new List<Caution>();

        var checks = record.Index.ChecksOf(fit.Name).Select(c => (c, Standing.Of(c, record))).ToList();
        var (value, least, greatest, basis) = Best(fit, record, terms, checks, cautions);
        List<FitState> states = [estimator.State(terms, null, nilMatters)];
        foreach (var state in record.Engine.Temperatures)
            states.Add(estimator.State(terms, state, nilMatters));
        if (terms.List.Count > 0 && states.Exists(s => s.Expected is null && s.Name != "20 °C") && states[0].Expected is not null)
            cautions.Add(new("material-unknown", "The material of a part in its gap is not given, so the fit is not worked out hot and cold."));

        Verdict? verdict = null;
        Probabilities? probabilities = null;
        Func<Advice?>? advice = null;
        string reason;
        if (value is null)
        {
            verdict = Verdict.NotMeasured;
            reason = fit.Gap.Count > 0
                ? Reasons.NotMeasured(terms.Unmeasured)
                : checks.Count > 0 ? $"Its checks no longer stand: {checks[^1].Item2.Why}." : "It is measured as such, and has not been.";
        }
        else if (limits.IsEmpty)
        {
            reason = "No limits are given to judge it by.";
        }
        else
        {
            probabilities = Judge.OfFit(least!, greatest!, limits);
            var otherEnd = fit.FitKind is FitKind.Nip or FitKind.Protrusion ? Judge.OtherEnd.OffSize : Judge.OtherEnd.TooTight;
            verdict = Judge.Say(probabilities, limits.Wear, otherEnd, record.Engine.Confidence);
            reason = Reasons.Of(verdict.Value, probabilities, limits, record.Engine.Confidence);
            if (verdict == Verdict.TooCloseToCall)
                advice = () => Adviser.ForFit(value, terms, limits, record.Engine.Confidence);
        }

        return new FitAppraisal
        {
            Figure = fit,
            Estimate = value,
            Least = least,
            Greatest = greatest,
            Basis = basis,
            States = states,
            Checks = checks,
            Terms = terms.List,
            Unmeasured = terms.Unmeasured,
            Verdict = verdict,
            Combined = verdict,
            Governing = fit.Name,
            Probability = probabilities,
            Limits = limits,
            Reason = reason,
            WorkOutAdvice = advice,
            Rule = RuleOf(set, record.Index),
            Conflicting = Conflicting(fit, set, record.Engine.Mark),
            Cautions = cautions,
        };
    }

    /// <summary>Of the gap from the dimensions and the checks that stand, whichever is known better counts; where they disagree it is said.</summary>
    private static (Estimate? Value, Estimate? Least, Estimate? Greatest, FitBasis Basis) Best(
        Fit fit, EngineRecord record, FitEstimator.Terms terms, List<(Check Check, Standing Standing)> checks, List<Caution> cautions)
    {
        if (record.Supposed.TryGetValue(fit.Name, out var supposed))
        {
            var estimate = new Estimate(supposed, []);
            return (estimate, estimate, estimate, FitBasis.Supposed);
        }

        var measured = CheckEstimator.Of(fit, checks.Where(c => c.Standing.Stands).Select(c => c.Check), record);
        if (fit.Gap.Count == 0 || terms.Unmeasured.Count > 0)
            return measured is { } only ? (only.Mean, only.Least, only.Greatest, FitBasis.Check) : (null, null, null, FitBasis.Nothing);

        var summed = FitEstimator.Value(terms);
        var least = FitEstimator.Least(terms);
        var greatest = FitEstimator.Greatest(terms);
        if (measured is not { } check)
            return (summed, least, greatest, FitBasis.Dimensions);

        var apart = check.Mean.Value - summed.Value;
        var u = Math.Sqrt((check.Mean.StandardUncertainty * check.Mean.StandardUncertainty) + (summed.StandardUncertainty * summed.StandardUncertainty));
        if (Math.Abs(apart) > 2.5758 * u)
            cautions.Add(new("check-disagrees", "The fit measured as such and the fit from its dimensions differ by more than either is good for."));
        return check.Mean.StandardUncertainty < summed.StandardUncertainty
            ? (check.Mean, check.Least, check.Greatest, FitBasis.Check)
            : (summed, least, greatest, FitBasis.Dimensions);
    }

    private static void Combine(Dictionary<FigureName, DimensionAppraisal> dimensions, Dictionary<FigureName, FitAppraisal> fits)
    {
        var fitsOf = new Dictionary<FigureName, List<(FigureName, Verdict?)>>();
        foreach (var fit in fits.Values)
        {
            foreach (var term in fit.Fit.Gap)
            {
                if (!fitsOf.TryGetValue(term.Of, out var list))
                    fitsOf[term.Of] = list = [];
                list.Add((fit.Figure.Name, fit.Verdict));
            }

            (fit.Combined, fit.Governing) = CombiningRules.OfFit(fit.Rule, fit.Figure.Name, fit.Verdict, fit.Fit.Gap.Where(t => dimensions.ContainsKey(t.Of)).Select(t => (t.Of, dimensions[t.Of].Verdict)));
        }

        foreach (var dimension in dimensions.Values)
            (dimension.Combined, dimension.Governing) = CombiningRules.OfDimension(dimension.Rule, dimension.Figure.Name, dimension.Verdict, fitsOf.GetValueOrDefault(dimension.Figure.Name) ?? []);
    }

    private static CombiningRule RuleOf(LimitSet? set, RecordIndex index) =>
        set?.Source is { } source && index.Document(source.Document) is { } document ? document.Rule : CombiningRule.BothLimitsMustPass;

    /// <summary>Other sets that apply to this mark and print other figures.</summary>
    private static IReadOnlyList<LimitSet> Conflicting(Figure figure, LimitSet? used, string? mark) => figure.LimitSets.Count < 2 || used is null
        ? []
        : [.. figure.LimitSets.Where(s => s != used && (s.Marks.Count == 0 || (mark is not null && s.Marks.Contains(mark, StringComparer.OrdinalIgnoreCase))) && !SameFigures(s.Limits, used.Limits))];

    private static bool SameFigures(Limits one, Limits other) =>
        Near(one.NewLeast?.Si, other.NewLeast?.Si) && Near(one.NewGreatest?.Si, other.NewGreatest?.Si)
        && Near(one.WornLeast?.Si, other.WornLeast?.Si) && Near(one.WornGreatest?.Si, other.WornGreatest?.Si) && one.Wear == other.Wear;

    private static bool Near(double? one, double? other) => one is null ? other is null : other is { } o && Math.Abs(one.Value - o) <= 1e-9 + (1e-9 * Math.Abs(o));

    private static List<Caution> Cautions(Dimension dimension, DimensionEstimator estimator, DimensionEstimate details)
    {
        var cautions = new List<Caution>();
        foreach (var outlier in details.Outliers)
            cautions.Add(new("stands-out", $"{outlier.Reading.Value.Text} at {outlier.Reading.Place} stands out from the other readings. It still counts; strike it out with a reason if it was a slip."));
        foreach (var d in details.Disagreements)
            cautions.Add(new("gauges-disagree", $"{d.First} and {d.Second} disagree at {d.Place} by more than either is good for."));
        if (details.IsMeasured && details.Readings.Any(r => r.Temperature is { } t && Math.Abs(t.Si - Mechanics.Heat.Expansion.Reference) > 2)
            && estimator.MaterialOf(dimension.Name.Part, details.Readings[0].Piece) is null)
            cautions.Add(new("material-unknown", "Measured away from 20 °C, and the material is not given: not corrected."));
        return cautions;
    }
}
