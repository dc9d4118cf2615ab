using Thoubook.Appraisal;
using Thoubook.Record;

namespace Thoubook.Workshop;

public sealed partial class OpenWorkshop
{
    private readonly Dictionary<EngineName, EngineAppraisal> _appraisals = [];

    /// <summary>The whole engine appraised as the database stands; kept until something is written.</summary>
    public Outcome<EngineAppraisal> Appraise(string engine) => Engine(engine).Then<EngineAppraisal>(record =>
    {
        lock (_appraisals)
        {
            if (_appraisals.TryGetValue(record.Engine.Name, out var kept) && ReferenceEquals(kept.Record, record))
                return kept;
            return _appraisals[record.Engine.Name] = Appraiser.Appraise(record);
        }
    });
}
