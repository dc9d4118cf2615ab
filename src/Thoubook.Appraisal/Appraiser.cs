using Thoubook.Record;

namespace Thoubook.Appraisal;

/// <summary>Works out a whole engine from its record. Pure: the same record gives the same appraisal.</summary>
public static class Appraiser
{
    public static EngineAppraisal Appraise(EngineRecord record) => throw new NotSupportedException();
}
