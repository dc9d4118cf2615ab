using Thoubook.Record;

namespace Thoubook.Files.EngineFiles;

/// <summary>What a workshop holds of an engine with what a file says of it laid over: definitions by their names, facts by their identifiers.</summary>
public static class Joining
{
    public static EngineRecord Join(EngineRecord? known, EngineRecord file) => known is null
        ? file
        : new EngineRecord(file.Engine)
        {
            Sequence = known.Sequence,
            Documents = Over(known.Documents, file.Documents, d => d.Name),
            Parts = Over(known.Parts, file.Parts, p => p.Name),
            Dimensions = Over(known.Dimensions, file.Dimensions, d => d.Name),
            Fits = Over(known.Fits, file.Fits, f => f.Name),
            Circuit = file.Circuit ?? known.Circuit,
            Spaces = Over(known.Spaces, file.Spaces, s => s.Name),
            Joints = Over(known.Joints, file.Joints, j => j.Name),
            Steps = Over(known.Steps, file.Steps, s => s.Name),
            Together = Over(known.Together, file.Together, t => t.Name),
            Tools = Over(known.Tools, file.Tools, t => t.Name),
            PermissionItems = Over(known.PermissionItems, file.PermissionItems, p => p.Name),
            Gauges = Over(known.Gauges, file.Gauges, g => g.Tag),
            Pieces = Over(known.Pieces, file.Pieces, p => p.Tag),
            Readings = After(known.Readings, file.Readings),
            Choices = After(known.Choices, file.Choices),
            Placings = After(known.Placings, file.Placings),
            Liftings = After(known.Liftings, file.Liftings),
            Works = After(known.Works, file.Works),
            Findings = After(known.Findings, file.Findings),
            Checks = After(known.Checks, file.Checks),
            Decisions = After(known.Decisions, file.Decisions),
            FlowTests = After(known.FlowTests, file.FlowTests),
            Calibrations = After(known.Calibrations, file.Calibrations),
            JointStates = After(known.JointStates, file.JointStates),
            Acceptances = After(known.Acceptances, file.Acceptances),
            Signatures = After(known.Signatures, file.Signatures),
            Departures = After(known.Departures, file.Departures),
            Debts = After(known.Debts, file.Debts),
            Settlements = After(known.Settlements, file.Settlements),
            Counts = After(known.Counts, file.Counts),
            Undoings = After(known.Undoings, file.Undoings),
            AsFound = After(known.AsFound, file.AsFound),
            Permissions = After(known.Permissions, file.Permissions),
            StrikeOuts = After(known.StrikeOuts, file.StrikeOuts),
        };

    private static IReadOnlyList<T> Over<T, TName>(IReadOnlyList<T> known, IReadOnlyList<T> file, Func<T, TName> name)
        where TName : notnull
    {
        if (file.Count == 0)
            return known;
        var given = file.ToDictionary(name);
        var joined = known.Select(k => given.Remove(name(k), out var instead) ? instead : k).ToList();
        joined.AddRange(file.Where(f => given.ContainsKey(name(f))));
        return joined;
    }

    private static IReadOnlyList<T> After<T>(IReadOnlyList<T> known, IReadOnlyList<T> file)
        where T : Fact
    {
        if (file.Count == 0)
            return known;
        var ids = known.Select(k => k.Id).ToHashSet();
        return [.. known, .. file.Where(f => !ids.Contains(f.Id))];
    }
}
