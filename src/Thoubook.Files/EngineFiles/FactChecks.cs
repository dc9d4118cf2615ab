using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Circuits;

namespace Thoubook.Files.EngineFiles;

/// <summary>What can be checked only when the whole file is read: that facts point to facts that are there, and to names that dimensions have.</summary>
internal static class FactChecks
{
    public static void Check(EngineRecord file, Scope scope)
    {
        var record = scope.Record;
        var facts = record.Facts.Select(f => f.Id).ToHashSet();
        var occupations = record.Choices.Select(c => c.Id).Concat(record.Placings.Select(p => p.Id)).ToHashSet();
        var locals = record.Dimensions.Select(d => d.Name.Local).ToHashSet(StringComparer.Ordinal);
        var sizes = record.Dimensions.SelectMany(d => d.RepairSizes).Select(r => r.Name).ToHashSet(StringComparer.Ordinal);

        foreach (var lifted in file.Liftings.Where(l => !occupations.Contains(l.Of)))
            Missing(scope, lifted, "of", new Problem("file-choice-missing", "", lifted.Of.ToString(), "A lifting ends a choice or a placing, named by its id.", "Copy the id of the choice or placing that ended."));
        foreach (var strikeOut in file.StrikeOuts.Where(s => !facts.Contains(s.Of)))
            Missing(scope, strikeOut, "of", new Problem("file-fact-missing", "", strikeOut.Of.ToString(), "A strike-out names by its id what is struck out.", "Copy the id of the fact that was wrong."));
        foreach (var calibration in file.Calibrations.Where(c => record.FlowTests.All(t => t.Id != c.Of)))
            Missing(scope, calibration, "of", new Problem("file-flow-test-missing", "", calibration.Of.ToString(), "A calibration names by its id the flow test that is accepted.", "Copy the id of the flow test."));
        foreach (var test in file.FlowTests)
        {
            Within(scope, test, "pressure", CircuitRanges.FeedPressure.Against(test.Pressure, "The pressure of a flow test"));
            Within(scope, test, "oil", CircuitRanges.OilTemperature.Against(test.OilTemperature, "An oil's temperature"));
            Within(scope, test, "flow", CircuitRanges.CaughtFlow.Against(test.Flow, "The flow of a flow test"));
        }

        foreach (var settled in file.Settlements.Where(s => record.Debts.All(d => d.Id != s.Of)))
            Missing(scope, settled, "of", new Problem("file-debt-missing", "", settled.Of.ToString(), "A settlement names by its id what was owed.", "Copy the id of the debt."));
        foreach (var undone in file.Undoings.Where(u => record.Signatures.All(s => s.Id != u.Of) && record.JointStates.All(s => s.Id != u.Of) && record.Permissions.All(p => p.Id != u.Of)))
            Missing(scope, undone, "of", new Problem("file-signature-missing", "", undone.Of.ToString(), "An undoing names by its id the signature, the joint's state or the line granted that it ends.", "Copy the id of what was undone."));
        foreach (var found in file.AsFound.Where(f => (f.Part is null) == (f.Joint is null)))
            Missing(scope, found, "part", new Problem("file-found-of-what", "", found.Part is null ? "neither a part nor a joint" : "a part and a joint", "What was found is of one part or of one joint.", "Write part: or joint: and its name."));
        foreach (var accepted in file.Acceptances.Where(a => record.Steps.FirstOrDefault(s => s.Name == a.Step) is { } step && step.Holds.All(h => h.What != a.Hold)))
            Missing(scope, accepted, "hold", References.Missing("hold point", accepted.Hold, record.Steps.First(s => s.Name == accepted.Step).Holds.Select(h => h.What)));
        foreach (var conclusion in file.Facts.Where(f => f is IConclusion and not Calibration))
        {
            foreach (var id in ((IConclusion)conclusion).ReliesOn.Where(id => !facts.Contains(id)))
                Missing(scope, conclusion, "relies-on", new Problem("file-fact-missing", "", id.ToString(), "A conclusion names by their ids the facts that it relies on.", "Copy the ids, or leave the list out."));
        }

        foreach (var work in file.Works)
        {
            foreach (var local in work.Altered.Where(a => !locals.Contains(a)))
                Missing(scope, work, "altered", new Problem("file-dimension-missing", "", $"\"{local}\"", "Altered are dimensions of the piece, by their names without the part.", Nearest.Advice(local, locals, "Correct the name, or add the dimension.")));
            if (work.RepairSize is { } size && !sizes.Contains(size))
                Missing(scope, work, "size", Size(size, sizes));
        }

        foreach (var piece in file.Pieces.Where(p => p.RepairSize is { } size && !sizes.Contains(size)))
        {
            scope.Entry = piece.Tag.Text;
            scope.Refuse(scope.Root["pieces"] is YamlMap pieces && pieces[piece.Tag.Text] is { } at ? Inner(at, "size") : scope.Root, "size", Size(piece.RepairSize!, sizes));
        }

        scope.Entry = "";
    }

    private static Problem Size(string size, HashSet<string> sizes) =>
        new("file-repair-size-missing", "", $"\"{size}\"", "A repair size is one that a dimension names under repair-sizes.", Nearest.Advice(size, sizes, "Correct the name, or add the size to its dimension."));

    private static void Within(Scope scope, Fact fact, string key, Problem? problem)
    {
        if (problem is not null)
            Missing(scope, fact, key, problem);
    }

    private static void Missing(Scope scope, Fact fact, string key, Problem problem)
    {
        scope.Entry = fact.Headline;
        scope.Refuse(scope.Facts.TryGetValue(fact.Id, out var entry) ? Inner(entry, key) : scope.Root, key, problem);
    }

    private static YamlNode Inner(YamlNode entry, string key) => (entry as YamlMap)?[key] ?? entry;
}
