using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Workshop.Starters;

namespace Thoubook.Workshop;

public sealed partial class OpenWorkshop
{
    /// <summary>What a starter would add to an engine; nothing is written.</summary>
    /// <param name="engine">The engine by name.</param>
    /// <param name="starter">The starter by its key.</param>
    /// <param name="answers">Text by the question's key; what is left out is as usual.</param>
    public Outcome<Started> SeeStarter(string engine, string starter, IReadOnlyDictionary<string, string> answers) =>
        Engine(engine).Then(record => Starter.Find(starter).Then(found => found.On(record, answers)));

    /// <summary>Adds to an engine what a starter draws and it lacks. What is there already stays as it is.</summary>
    public Outcome<Started> AddStarter(string engine, string starter, IReadOnlyDictionary<string, string> answers, string by) =>
        SeeStarter(engine, starter, answers).Then(started => Save(started.Added, by).Then<Started>(_ => started));

    /// <summary>Draws the circuit of an engine that has none from the answers to <see cref="CircuitStarter.Questions"/>, and adds what has to be measured for it.</summary>
    public Outcome<OilCircuit> StartCircuit(string engine, IReadOnlyDictionary<string, string> answers, string by) => Engine(engine).Then(record => record.Circuit is not null
        ? new Problem("circuit-there", "engine", record.Engine.Name.Text, "This engine has a circuit already.", "Correct it element by element.")
        : CircuitStarter.Make(record, answers).Then(started => Define(
            record.Engine.Name,
            by,
            c => c with { Parts = started.Added.Parts, Figures = [.. started.Added.Fits], Circuit = started.Circuit },
            r => r.Circuit)));
}
