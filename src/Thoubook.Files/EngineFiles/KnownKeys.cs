namespace Thoubook.Files.EngineFiles;

/// <summary>Every key that is read, under the names that the published schema gives to the groups.</summary>
internal static class KnownKeys
{
    public static IReadOnlyDictionary<string, IReadOnlyList<string>> ByGroup { get; } = new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal)
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
        ["choice"] = Facts.Choices.Keys,
        ["placing"] = Facts.Placings.Keys,
        ["lifting"] = Facts.Liftings.Keys,
        ["reading"] = Facts.Readings.Keys,
        ["work"] = Facts.Works.Keys,
        ["finding"] = Facts.Findings.Keys,
        ["check"] = Facts.Checks.Keys,
        ["decision"] = Facts.Decisions.Keys,
        ["strike-out"] = Facts.StrikeOuts.Keys,
    };
}
