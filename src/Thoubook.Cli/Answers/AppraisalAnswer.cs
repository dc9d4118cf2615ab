using Thoubook.Appraisal;
using Thoubook.Appraisal.Verdicts;
using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Cli.Answers;

// The shapes of docs/scripts.md. A property is never renamed; new ones may come beside.

internal sealed record EngineAnswer(string Name, string Purpose);

/// <summary>What <c>appraise ENGINE --json</c> answers. Figures in the SI unit named beside them.</summary>
internal sealed record AppraisalAnswer(
    string Engine,
    string Purpose,
    bool Invented,
    long Sequence,
    CountsAnswer Counts,
    IReadOnlyList<FigureAnswer> Dimensions,
    IReadOnlyList<FigureAnswer> Fits,
    IReadOnlyList<MatterAnswer> InTheWay,
    IReadOnlyList<MatterAnswer> Accepted)
{
    public static AppraisalAnswer Of(EngineAppraisal appraisal, PartName? within, string? state)
    {
        bool Wanted(PartName part) => within is not { } whole || part.IsWithin(whole);
        var dimensions = appraisal.Dimensions.Where(d => Wanted(d.Figure.Name.Part)).ToArray();
        var fits = appraisal.Fits.Where(f => Wanted(f.Figure.Name.Part)).ToArray();
        var engine = appraisal.Record.Engine;
        return new(
            engine.Name.Text,
            engine.Purpose.Word(),
            engine.Invented,
            appraisal.Record.Sequence,
            new(Count(dimensions), Count(fits)),
            [.. dimensions.Select(FigureAnswer.Of)],
            [.. fits.Select(f => FigureAnswer.Of(f, state))],
            [.. appraisal.InTheWay.Where(m => Wanted(m.Part)).Select(MatterAnswer.Of)],
            [.. appraisal.Accepted.Where(m => Wanted(m.Part)).Select(MatterAnswer.Of)]);
    }

    /// <summary>All seven verdicts, those that nothing has among them.</summary>
    private static Dictionary<string, int> Count(IReadOnlyCollection<FigureAppraisal> figures) =>
        Enum.GetValues<Verdict>().ToDictionary(v => v.Word(), v => EngineAppraisal.Count(figures, v));
}

internal sealed record CountsAnswer(IReadOnlyDictionary<string, int> Dimensions, IReadOnlyDictionary<string, int> Fits);

internal sealed record BoundsAnswer(double? Min, double? Max);

internal sealed record LimitsAnswer(BoundsAnswer New, BoundsAnswer Worn);

internal sealed record ProbabilityAnswer(double? New, double? Worn);

internal sealed record AdviceAnswer(string ReadAgain, string? Place, int? MoreReadings, double? GaugeUncertainty, string Text);

internal sealed record StateAnswer(string Name, double? Value, double? StandardUncertainty, double? Expected, BoundsAnswer? WorstCase, double? RootSumSquare, double? RiskOfNil);

internal sealed record FigureAnswer(
    string Name,
    double? Value,
    double? StandardUncertainty,
    string Unit,
    LimitsAnswer Limits,
    ProbabilityAnswer Probability,
    string? Verdict,
    string Side,
    string Reason,
    string Rule,
    string Governing,
    string? Combined,
    string? Piece,
    AdviceAnswer? Advice,
    IReadOnlyList<string> Cautions,
    IReadOnlyList<StateAnswer>? States)
{
    public static FigureAnswer Of(DimensionAppraisal dimension) => Of(dimension, dimension.Piece?.Tag, null);

    public static FigureAnswer Of(FitAppraisal fit, string? state) =>
        Of(fit, null, [.. fit.States.Where(s => state is null || s.Name == state).Select(Of)]);

    private static FigureAnswer Of(FigureAppraisal figure, PieceTag? piece, IReadOnlyList<StateAnswer>? states)
    {
        var limits = figure.Limits;
        return new(
            figure.Figure.Name.ToString(),
            figure.Estimate?.Value,
            figure.Estimate?.StandardUncertainty,
            TradeUnit.Default(figure.Figure.Kind).Symbol,
            new(new(limits.NewLeast, limits.NewGreatest), new(limits.WornLeast, limits.WornGreatest)),
            new(figure.Probability?.New, figure.Probability?.Worn),
            figure.Verdict?.Word(),
            figure.Side.Word(),
            figure.Reason,
            figure.Rule.Word(),
            figure.Governing.ToString(),
            figure.Combined?.Word(),
            piece?.Text,
            figure.Advice is { } advice ? new(advice.ReadAgain.ToString(), advice.Place?.Text, advice.MoreReadings, advice.GaugeUncertainty, advice.Text) : null,
            [.. figure.Cautions.Select(c => c.Text)],
            states);
    }

    private static StateAnswer Of(FitState state) => new(
        state.Name,
        state.Estimate?.Value,
        state.Estimate?.StandardUncertainty,
        state.Expected?.Value,
        state.WorstCase is { } worst ? new(worst.Least, worst.Greatest) : null,
        state.RootSumSquareHalfWidth,
        state.RiskOfNil);
}

internal sealed record MatterAnswer(string Kind, string Part, string? Figure, string? Piece, string? Verdict, string Text)
{
    public static MatterAnswer Of(Matter matter) =>
        new(matter.Kind.Word(), matter.Part.Path, matter.Figure?.ToString(), matter.Piece?.Text, matter.Verdict?.Word(), matter.Text);
}
