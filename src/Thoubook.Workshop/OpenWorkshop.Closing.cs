using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Workshop.Closing;

namespace Thoubook.Workshop;

public sealed partial class OpenWorkshop
{
    private readonly Dictionary<EngineName, Plan> _plans = [];

    /// <summary>How far the closing up of an engine is as the database stands at this moment; figures are good by their verdicts.</summary>
    public Outcome<CloseUp> ClosingUp(string engine, ClosingQuestion? question = null) => Appraise(engine).Then<CloseUp>(appraisal =>
        CloseUp.Of(PlanOf(appraisal.Record), new CloseUpTerms(_clock.GetCurrentInstant())
        {
            Attitude = question?.Attitude,
            ToolsAway = question?.ToolsAway ?? [],
            Judged = new HoldFigures(appraisal).Judge,
        }));

    /// <summary>The state of the work where it was left.</summary>
    public Outcome<LeavingNote> LeavingNote(string engine) => ClosingUp(engine).Then<LeavingNote>(closing => Record.Closing.LeavingNote.Of(closing));

    private Plan PlanOf(EngineRecord record)
    {
        lock (_plans)
        {
            if (_plans.TryGetValue(record.Engine.Name, out var kept) && ReferenceEquals(kept.Record, record))
                return kept;
            return _plans[record.Engine.Name] = Plan.Of(record);
        }
    }

    /// <summary>The closing up of a state that nothing has written yet, judged as the engine stands.</summary>
    private Outcome<CloseUp> ClosingUp(EngineRecord supposed) => Appraise(supposed.Engine.Name.Text).Then<CloseUp>(appraisal =>
        CloseUp.Of(Plan.Of(supposed), new CloseUpTerms(_clock.GetCurrentInstant()) { Judged = new HoldFigures(appraisal).Judge }));
}
