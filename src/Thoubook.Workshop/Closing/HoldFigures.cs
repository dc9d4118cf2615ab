using Thoubook.Appraisal;
using Thoubook.Appraisal.Verdicts;
using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Workshop.Closing;

/// <summary>Whether a hold point's figure is good, by the verdict on it.</summary>
internal sealed class HoldFigures(EngineAppraisal appraisal)
{
    private readonly ILookup<FigureName, Matter> _inTheWay = appraisal.InTheWay.Where(m => m.Figure is not null).ToLookup(m => m.Figure!.Value);

    /// <summary>Null of it: the figure is good. Else whether a reading or a verdict is wanted, and why.</summary>
    public (WantKind Kind, string Why)? Judge(FigureName name)
    {
        if (appraisal[name] is not { } figure)
            return (WantKind.Reading, $"{name} is not in the record");
        if (_inTheWay[name].FirstOrDefault() is { } matter)
            return (matter.Kind == MatterKind.NotMeasured ? WantKind.Reading : WantKind.Verdict, $"{name}: {matter.Kind.Word()}. {matter.Text}");
        return (figure.Combined ?? figure.Verdict) switch
        {
            Verdict.AsNew or Verdict.WithinWornLimits => null,
            null when figure.Estimate is not null => (WantKind.Verdict, $"{name} is measured and has no limits to judge it by: accept it by name"),
            null or Verdict.NotMeasured => (WantKind.Reading, $"{name} is not measured"),
            { } verdict when appraisal.Accepted.Any(m => m.Figure == name) => null,
            { } verdict => (WantKind.Verdict, $"{name}: {verdict.Word()}. {figure.Reason}"),
        };
    }
}
