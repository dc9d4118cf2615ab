using Thoubook.Files.Schedules;
using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Workshop.Importing;

namespace Thoubook.Workshop;

public sealed partial class OpenWorkshop
{
    /// <summary>
    /// Takes the understood rows of a schedule into an engine: all of them or nothing. Parts that are there stay as they are; a figure that is there
    /// gets the schedule's limits beside those it has, in place of those of the same row. Taking it in again changes nothing.
    /// </summary>
    public Outcome<ScheduleTaken> TakeSchedule(string engine, ScheduleReading reading, Document document, string by) => Engine(engine).Then(record =>
    {
        var proposal = ScheduleProposal.From(reading, document.Name);
        var incoming = new EngineRecord(record.Engine)
        {
            Documents = [record.Index.Document(document.Name) ?? document],
            Parts = [.. proposal.Parts.Where(p => record.Index.Part(p.Name) is null)],
            Dimensions = [.. proposal.Dimensions.Select(d => Beside(d, record))],
            Fits = [.. proposal.Fits.Select(f => Beside(f, record))],
        };
        return Save(incoming, by).Then<ScheduleTaken>(changed => new ScheduleTaken(proposal, changed));
    });

    private static T Beside<T>(T proposed, EngineRecord record)
        where T : Figure
    {
        if (record.Index.Figure(proposed.Name) is not T there)
            return proposed;
        var set = proposed.LimitSets[0];
        var at = there.LimitSets.ToList().FindIndex(s => s.Source == set.Source);
        return there with { LimitSets = at < 0 ? [.. there.LimitSets, set] : [.. there.LimitSets.Take(at), set, .. there.LimitSets.Skip(at + 1)] };
    }
}
