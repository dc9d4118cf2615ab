using Thoubook.Appraisal;
using Thoubook.Appraisal.Verdicts;
using Thoubook.Record;
using Thoubook.Record.Parts;

namespace Thoubook.Workshop.Tests.Demo;

/// <summary>Something said of a place in an engine, other than that it is good: a row of the tables in <c>demo/README.md</c>.</summary>
internal readonly record struct Said(string Where, string What)
{
    public override string ToString() => $"{Where} | {What}";

    /// <summary>Everything that a record and its appraisal say, other than that a figure is good.</summary>
    public static IEnumerable<Said> Of(EngineAppraisal appraisal) =>
        [.. OfFigures(appraisal), .. OfReadings(appraisal), .. OfMatters(appraisal), .. OfParts(appraisal.Record)];

    private static IEnumerable<Said> OfFigures(EngineAppraisal appraisal)
    {
        foreach (var figure in appraisal.Dimensions.Concat<FigureAppraisal>(appraisal.Fits))
        {
            var name = figure.Figure.Name.ToString();
            if (!IsGood(figure.Verdict))
                yield return new(name, Word(figure.Verdict));
            if (IsGood(figure.Combined) != IsGood(figure.Verdict))
                yield return new(name, $"combined: {Word(figure.Combined)}");
            if (figure.Conflicting.Count > 0)
                yield return new(name, "editions differ");
            foreach (var caution in figure.Cautions)
            {
                // These two name a place, and are told with the readings.
                if (caution.Code is not ("stands-out" or "gauges-disagree"))
                    yield return new(name, caution.Text);
            }
        }
    }

    private static IEnumerable<Said> OfReadings(EngineAppraisal appraisal)
    {
        foreach (var dimension in appraisal.Dimensions)
        {
            var name = dimension.Figure.Name;
            foreach (var hint in dimension.Details.Outliers)
                yield return new($"{name} at {hint.Reading.Place}", "stands out");
            foreach (var apart in dimension.Details.Disagreements)
                yield return new($"{name} at {apart.Place}", "gauges disagree");
            foreach (var place in dimension.Details.IsMeasured ? dimension.Details.MissingPlaces : [])
                yield return new($"{name} at {place}", "place missing");
        }

        foreach (var reading in appraisal.Record.Readings)
        {
            if (appraisal.Record.Index.StrikeOutOf(reading.Id) is not null)
                yield return new($"{reading.Figure} at {reading.Place}", "struck out");
        }
    }

    private static IEnumerable<Said> OfMatters(EngineAppraisal appraisal)
    {
        foreach (var matter in appraisal.InTheWay)
        {
            // The verdicts are told with the figures.
            if (matter.Kind is MatterKind.MayBind)
                yield return new(Where(matter), matter.Text[..matter.Text.IndexOf(':', StringComparison.Ordinal)].ToLowerInvariant());
            else if (matter.Kind is not (MatterKind.BeyondLimits or MatterKind.TooCloseToCall or MatterKind.NotMeasured))
                yield return new(Where(matter), matter.Kind.Word());
        }

        foreach (var matter in appraisal.Accepted)
            yield return new(Where(matter), "accepted on judgement");

        static string Where(Matter matter) => matter.Figure?.ToString() ?? matter.Part.ToString();
    }

    private static IEnumerable<Said> OfParts(EngineRecord record) =>
        record.Parts.Where(p => p.Intent != PartIntent.Fitted).Select(p => new Said(p.Name.ToString(), p.Intent.Word()));

    private static bool IsGood(Verdict? verdict) => verdict is Verdict.AsNew or Verdict.WithinWornLimits;

    private static string Word(Verdict? verdict) => verdict?.Word() ?? "no limits";
}
