using Thoubook.Record;
using Thoubook.Record.Documents;

namespace Thoubook.Appraisal.Verdicts;

/// <summary>How the verdicts of a pair and of its parts combine, by the rule of the document's edition.</summary>
internal static class CombiningRules
{
    public static (Verdict? Combined, FigureName Governing) OfFit(CombiningRule rule, FigureName fit, Verdict? own, IEnumerable<(FigureName Name, Verdict? Verdict)> parts)
    {
        if (rule == CombiningRule.ClearanceGoverns || (own is Verdict.NotMeasured && rule == CombiningRule.BothLimitsMustPass))
            return (own, fit);
        var worst = (Verdict: rule == CombiningRule.DimensionGoverns ? null : own, Name: fit);
        foreach (var part in parts)
        {
            if (part.Verdict is not null && part.Verdict.Gravity() < worst.Verdict.Gravity())
                worst = (part.Verdict, part.Name);
        }

        return (worst.Verdict ?? own, worst.Name);
    }

    /// <summary>Under "clearance governs" a part past its worn limit passes where every measured fit of it does.</summary>
    public static (Verdict? Combined, FigureName Governing) OfDimension(CombiningRule rule, FigureName dimension, Verdict? own, IReadOnlyList<(FigureName Name, Verdict? Verdict)> fits)
    {
        if (rule != CombiningRule.ClearanceGoverns || own is not Verdict.BeyondWornLimits)
            return (own, dimension);
        (Verdict? Verdict, FigureName Name)? worst = null;
        foreach (var fit in fits)
        {
            if (fit.Verdict is not (null or Verdict.NotMeasured) && (worst is null || fit.Verdict.Gravity() < worst.Value.Verdict.Gravity()))
                worst = (fit.Verdict, fit.Name);
        }

        return worst is { } w ? (w.Verdict, w.Name) : (own, dimension);
    }
}
