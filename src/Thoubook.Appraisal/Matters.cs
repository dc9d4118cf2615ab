using Thoubook.Appraisal.Verdicts;
using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Parts;

namespace Thoubook.Appraisal;

/// <summary>What stands in the way of the engine, worst first, and what was accepted on judgement and so does not.</summary>
internal static class Matters
{
    public static IReadOnlyList<Matter> Of(
        EngineRecord record, IReadOnlyDictionary<FigureName, DimensionAppraisal> dimensions, IReadOnlyDictionary<FigureName, FitAppraisal> fits, out IReadOnlyList<Matter> accepted)
    {
        var found = new List<Matter>();
        var intents = new Dictionary<PartName, PartIntent>();

        foreach (var finding in record.Findings)
        {
            if (finding.Outcome != FindingOutcome.NotSound || record.Index.StrikeOutOf(finding.Id) is not null)
                continue;
            var part = finding.Part ?? (finding.Piece is { } piece ? record.Index.PartOf(piece) : null);
            if (part is { } at && Intent(at) == PartIntent.Fitted && (finding.Piece is not { } tag || record.Index.ChosenFor(at)?.Piece == tag))
                found.Add(new Matter(MatterKind.NotSound, at, finding.Headline) { Piece = finding.Piece ?? record.Index.ChosenFor(at)?.Piece });
        }

        foreach (var figure in dimensions.Values.Concat<FigureAppraisal>(fits.Values))
        {
            if (Intent(figure.Figure.Name.Part) != PartIntent.Fitted || !AllFitted(figure))
                continue;

            if (CountsByItself(figure) && Kind(figure.Verdict) is { } kind)
                found.Add(Matter(kind, figure, figure.Reason));
            if (figure is FitAppraisal { Verdict: not Verdict.TooTight } fit)
            {
                foreach (var state in fit.States.Skip(1))
                {
                    if (state.RiskOfNil is { } risk && risk > 1 - record.Engine.Confidence)
                        found.Add(Matter(MatterKind.MayBind, fit, $"May bind at {state.Name}: {Reasons.InHundred(risk)} in 100 that nothing is left."));
                }

                if (fit.Checks.Count > 0 && fit.Checks[^1] is { Standing: { Stands: false, BrokenBy: not StrikeOut } standing, Check: var check })
                    found.Add(Matter(MatterKind.NoLongerStands, fit, $"{check.Headline} no longer stands: {standing.Why}."));
            }
        }

        foreach (var decision in Latest(record))
        {
            if (Standing.Of(decision, record) is { Stands: false, BrokenBy: not StrikeOut } standing && PartOf(decision, record) is { } part && Intent(part) == PartIntent.Fitted)
                found.Add(new Matter(MatterKind.NoLongerStands, part, $"{decision.Headline} no longer stands: {standing.Why}.") { Figure = decision.Figure, Piece = decision.Piece });
        }

        foreach (var part in record.Parts)
        {
            if (part.ModificationState is { } wanted && Intent(part.Name) == PartIntent.Fitted && record.Index.ChosenFor(part.Name)?.Piece is { } tag
                && record.Index.Piece(tag)?.ModificationState is { } has && !string.Equals(wanted, has, StringComparison.OrdinalIgnoreCase))
                found.Add(new Matter(MatterKind.WrongModificationState, part.Name, $"{tag} belongs to {has}; the part wants {wanted}.") { Piece = tag });
        }

        var cleared = new List<Matter>();
        var judged = Latest(record).Where(d => d.Basis == DecisionBasis.AcceptedOnJudgement && Standing.Of(d, record).Stands).ToList();
        var open = new List<Matter>();
        foreach (var matter in found)
        {
            if (judged.Find(d => Clears(d, matter)) is { } decision)
                cleared.Add(matter with { Decision = decision });
            else
                open.Add(matter);
        }

        accepted = [.. cleared.OrderBy(m => m.Kind).ThenBy(m => m.Part)];
        return [.. open.OrderBy(m => m.Kind).ThenBy(m => m.Verdict).ThenBy(m => m.Part).ThenBy(m => m.Figure)];

        PartIntent Intent(PartName name)
        {
            if (intents.TryGetValue(name, out var known))
                return known;
            var own = record.Index.Part(name)?.IntentOn(record.Engine) ?? PartIntent.Fitted;
            return intents[name] = own != PartIntent.Fitted || name.Parent is not { } parent ? own : Intent(parent);
        }

        bool AllFitted(FigureAppraisal figure)
        {
            if (figure is not FitAppraisal fit)
                return true;
            foreach (var term in fit.Fit.Gap)
            {
                if (Intent(term.Of.Part) != PartIntent.Fitted)
                    return false;
            }

            return true;
        }
    }

    private static Matter Matter(MatterKind kind, FigureAppraisal figure, string text) => new(kind, figure.Figure.Name.Part, text)
    {
        Figure = figure.Figure.Name,
        Piece = (figure as DimensionAppraisal)?.Piece?.Tag,
        Verdict = figure.Verdict,
    };

    /// <summary>
    /// Whether a figure's own verdict stands in the way, by the rule of its document: a fit's does not where dimensions govern, a worn part's not where
    /// the clearance governs and passes it. What stands in the way through another figure is listed under that one, once.
    /// </summary>
    private static bool CountsByItself(FigureAppraisal figure) => figure switch
    {
        FitAppraisal => figure.Rule != CombiningRule.DimensionGoverns,
        _ => figure.Governing == figure.Figure.Name,
    };

    private static MatterKind? Kind(Verdict? verdict) => verdict switch
    {
        Verdict.BeyondWornLimits or Verdict.TooTight or Verdict.OffSize => MatterKind.BeyondLimits,
        Verdict.TooCloseToCall => MatterKind.TooCloseToCall,
        Verdict.NotMeasured => MatterKind.NotMeasured,
        _ => null,
    };

    /// <summary>The last decision on each piece or figure that is not struck out.</summary>
    private static IEnumerable<Decision> Latest(EngineRecord record) => record.Decisions
        .Where(d => record.Index.StrikeOutOf(d.Id) is null)
        .GroupBy(d => (d.Piece, d.Figure))
        .Select(g => g.Last());

    private static PartName? PartOf(Decision decision, EngineRecord record) =>
        decision.Figure?.Part ?? (decision.Piece is { } piece ? record.Index.PartOf(piece) : null);

    /// <summary>A judgement on a figure clears that figure; one on a whole piece clears what is about that piece.</summary>
    private static bool Clears(Decision decision, Matter matter) => decision.Figure is { } figure
        ? matter.Figure == figure
        : decision.Piece is { } piece && matter.Piece == piece && matter.Kind != MatterKind.NoLongerStands;
}
