using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.EngineFiles;

/// <summary>Writes a record section by section, each entry by its shape, in the order in which the record holds them.</summary>
internal static class EngineFileWriter
{
    public static string Write(EngineRecord record)
    {
        var scope = new Scope(new ProblemList(""), new ImportTerms(default, ""), record, new YamlMap([]));
        (YamlScalar, YamlNode)?[] sections =
        [
            (Key("engine"), Definitions.Engine.Write(record.Engine, scope, isOneLine: false)),
            Named("temperatures", record.Engine.Temperatures, s => s.Name, s => Temperatures(s, scope)),
            Named("documents", record.Documents, d => d.Name.Text, d => Definitions.Document.Write(d, scope, isOneLine: false)),
            Named("gauges", record.Gauges, g => g.Tag.Text, g => Definitions.Gauge.Write(g, scope, isOneLine: false)),
            Named("parts", record.Parts, p => p.Name.Path, p => Definitions.Part.Write(p, scope, isOneLine: true)),
            Named("pieces", record.Pieces, p => p.Tag.Text, p => Definitions.Piece.Write(p, scope, isOneLine: true)),
            Named("dimensions", record.Dimensions, d => d.Name.ToString(), d => Definitions.Dimension.Write(d, scope, isOneLine: false)),
            Named("fits", record.Fits, f => f.Name.ToString(), f => Definitions.Fit.Write(f, scope, isOneLine: false)),
            record.Circuit is { } circuit ? (Key(Circuits.Section), Circuits.Circuit.Write(circuit, scope, isOneLine: false)) : null,
            Named(Closings.Spaces, record.Spaces, s => s.Name.Text, s => Closings.Space.Write(s, scope, isOneLine: true)),
            Named(Closings.Joints, record.Joints, j => j.Name.Text, j => Closings.Joint.Write(j, scope, isOneLine: false)),
            Named(Closings.Steps, record.Steps, s => s.Name.Text, s => Closings.Step.Write(s, scope, isOneLine: false)),
            Named(Closings.Together, record.Together, t => t.Name.Text, t => Closings.Group.Write(t, scope, isOneLine: true)),
            Named(Closings.Tools, record.Tools, t => t.Name.Text, t => Closings.Tool.Write(t, scope, isOneLine: true)),
            Named(Closings.Permission, record.PermissionItems, p => p.Name.Text, p => Closings.PermissionItem.Write(p, scope, isOneLine: true)),
            Facts.Choices.Write(record.Choices, scope),
            Facts.Placings.Write(record.Placings, scope),
            Facts.Liftings.Write(record.Liftings, scope),
            Facts.Readings.Write(record.Readings, scope),
            Facts.Works.Write(record.Works, scope),
            Facts.Findings.Write(record.Findings, scope),
            Facts.Checks.Write(record.Checks, scope),
            Facts.Decisions.Write(record.Decisions, scope),
            Facts.FlowTests.Write(record.FlowTests, scope),
            Facts.Calibrations.Write(record.Calibrations, scope),
            ClosingFacts.JointStates.Write(record.JointStates, scope),
            ClosingFacts.Acceptances.Write(record.Acceptances, scope),
            ClosingFacts.Signatures.Write(record.Signatures, scope),
            ClosingFacts.Departures.Write(record.Departures, scope),
            ClosingFacts.Debts.Write(record.Debts, scope),
            ClosingFacts.Settlements.Write(record.Settlements, scope),
            ClosingFacts.Counts.Write(record.Counts, scope),
            ClosingFacts.Undoings.Write(record.Undoings, scope),
            ClosingFacts.AsFound.Write(record.AsFound, scope),
            ClosingFacts.Permissions.Write(record.Permissions, scope),
            Facts.StrikeOuts.Write(record.StrikeOuts, scope),
        ];
        return YamlWriter.Write(new YamlMap([.. sections.Where(s => s is not null).Select(s => s!.Value)]));
    }

    private static (YamlScalar, YamlNode)? Named<T>(string section, IReadOnlyList<T> items, Func<T, string> name, Func<T, YamlMap> write) => items.Count == 0
        ? null
        : (Key(section), new YamlMap([.. items.Select(i => (TextForm.Scalar(name(i)), (YamlNode)write(i)))]));

    private static YamlMap Temperatures(TemperatureState state, Scope scope)
    {
        var form = Forms.Quantity(QuantityKind.Temperature);
        return new YamlMap(
            [
                (Key(EngineFileReader.Everywhere), form.Write(state.Everywhere, scope)!),
                .. state.Parts.Select(p => (Key(p.Part.Path), form.Write(p.Temperature, scope)!)),
            ])
        { IsOneLine = true };
    }

    private static YamlScalar Key(string key) => new(key, isQuoted: false);
}
