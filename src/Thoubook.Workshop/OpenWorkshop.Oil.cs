using Thoubook.Appraisal;
using Thoubook.Appraisal.Oil;
using Thoubook.Record;

namespace Thoubook.Workshop;

public sealed partial class OpenWorkshop
{
    private readonly Dictionary<EngineName, (EngineAppraisal Of, Outcome<OilSystem> System)> _oilSystems = [];

    /// <summary>The oil system of an engine as the database stands; kept until something is written.</summary>
    public Outcome<OilSystem> Oil(string engine) => Appraise(engine).Then(appraisal =>
    {
        var name = appraisal.Record.Engine.Name;
        lock (_oilSystems)
        {
            if (!_oilSystems.TryGetValue(name, out var kept) || !ReferenceEquals(kept.Of, appraisal))
                _oilSystems[name] = kept = (appraisal, OilSystem.Of(appraisal));
            return kept.System;
        }
    });
}
