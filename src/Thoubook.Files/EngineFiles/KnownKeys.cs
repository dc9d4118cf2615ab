using Thoubook.Record;
using Thoubook.Record.Circuits;

namespace Thoubook.Files.EngineFiles;

/// <summary>Every key that is read, under the names that the published schema gives to the groups.</summary>
internal static class KnownKeys
{
    /// <summary>The keys of each kind of element stand under the kind's word, hyphens for blanks.</summary>
    public static string GroupOf(ElementKind kind) => $"element-{kind.Word().Replace(' ', '-')}";

    public static IReadOnlyDictionary<string, IReadOnlyList<string>> ByGroup { get; } =
        new Dictionary<string, IReadOnlyList<string>>(ElementKinds.All.Select(k => KeyValuePair.Create(GroupOf(k.Kind), ElementForm.KeysOf(k.Kind))), StringComparer.Ordinal)
        {
            [""] = EngineFileReader.Sections,
            ["engine"] = Definitions.Engine.Keys,
            ["temperature-state"] = [EngineFileReader.Everywhere],
            ["document"] = Definitions.Document.Keys,
            ["gauge"] = Definitions.Gauge.Keys,
            ["part"] = Definitions.Part.Keys,
            ["piece"] = Definitions.Piece.Keys,
            ["dimension"] = Definitions.Dimension.Keys,
            ["fit"] = Definitions.Fit.Keys,
            ["limit-row"] = LimitKeys.Row.Keys,
            ["form-limit"] = Definitions.FormLimitKeys,
            ["typed-quantity"] = QuantityForm.Keys,
            ["circuit"] = Circuits.Circuit.Keys,
            ["oil"] = Circuits.Oil.Keys,
            ["viscosity-point"] = Circuits.Point.Keys,
            ["node"] = Circuits.NodeShape.Keys,
            ["oil-gauge"] = Circuits.Gauge.Keys,
            ["oil-state"] = Circuits.State.Keys,
            ["gauge-limit"] = Circuits.Limit.Keys,
            ["flow-test-setting"] = Circuits.FlowTest.Keys,
            ["space"] = Closings.Space.Keys,
            ["joint"] = Closings.Joint.Keys,
            ["step"] = Closings.Step.Keys,
            ["hold-point"] = Closings.Hold.Keys,
            ["comes-after"] = Closings.After.Keys,
            ["together"] = Closings.Group.Keys,
            ["tool"] = Closings.Tool.Keys,
            ["permission-item"] = Closings.PermissionItem.Keys,
            ["choice"] = Facts.Choices.Keys,
            ["placing"] = Facts.Placings.Keys,
            ["lifting"] = Facts.Liftings.Keys,
            ["reading"] = Facts.Readings.Keys,
            ["work"] = Facts.Works.Keys,
            ["finding"] = Facts.Findings.Keys,
            ["check"] = Facts.Checks.Keys,
            ["decision"] = Facts.Decisions.Keys,
            ["flow-test"] = Facts.FlowTests.Keys,
            ["caught"] = Facts.Caught.Keys,
            ["calibration"] = Facts.Calibrations.Keys,
            ["joint-state"] = ClosingFacts.JointStates.Keys,
            ["acceptance"] = ClosingFacts.Acceptances.Keys,
            ["signature"] = ClosingFacts.Signatures.Keys,
            ["departure"] = ClosingFacts.Departures.Keys,
            ["debt"] = ClosingFacts.Debts.Keys,
            ["settlement"] = ClosingFacts.Settlements.Keys,
            ["count"] = ClosingFacts.Counts.Keys,
            ["undoing"] = ClosingFacts.Undoings.Keys,
            ["as-found"] = ClosingFacts.AsFound.Keys,
            ["permission"] = ClosingFacts.Permissions.Keys,
            ["strike-out"] = Facts.StrikeOuts.Keys,
        };
}
