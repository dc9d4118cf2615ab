using Thoubook.Record;
using Thoubook.Store;
using Thoubook.Workshop.Starters;

namespace Thoubook.Workshop;

public sealed partial class OpenWorkshop
{
    /// <summary>Adds a starter to an engine at a place in its tree of parts; left blank: the usual one.</summary>
    public Outcome<Changed> AddStarter(string engine, string starter, string? under, string by) => Engine(engine).Then(record => Starter.Find(starter).Then(found =>
    {
        if (string.IsNullOrWhiteSpace(under))
            return found.For(record, found.UsualPlace).Then(drawn => Save(drawn, by));
        return PartName.TryRead(under.Trim(), out var place, out var problem) ? found.For(record, place).Then(drawn => Save(drawn, by)) : problem with { Field = "under" };
    }));
}
