using Thoubook.Record;
using Thoubook.Record.Circuits;
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

    /// <summary>Draws the circuit of an engine that has none from the answers to <see cref="CircuitStarter.Questions"/>, and adds what has to be measured for it.</summary>
    public Outcome<OilCircuit> StartCircuit(string engine, IReadOnlyDictionary<string, string> answers, string by) => Engine(engine).Then(record => record.Circuit is not null
        ? new Problem("circuit-there", "engine", record.Engine.Name.Text, "This engine has a circuit already.", "Correct it element by element.")
        : CircuitStarter.Make(record, answers).Then(started => Define(
            record.Engine.Name,
            by,
            c => c with { Parts = started.Added.Parts, Figures = [.. started.Added.Fits], Circuit = started.Circuit },
            r => r.Circuit)));
}
