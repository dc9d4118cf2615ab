using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Workshop.Starters;

namespace Thoubook.Web.Sheets;

/// <summary>The addresses of the sheets. A part or a figure keeps its own path.</summary>
internal static partial class Where
{
    public const string Workshop = "/workshop";

    public const string NewEngine = "/workshop/new-engine";

    public const string Sums = "/sums";

    public static string Bench(EngineName engine) => $"/engines/{Uri.EscapeDataString(engine.Text)}";

    public static string Parts(EngineName engine) => $"{Bench(engine)}/parts";

    public static string Part(EngineName engine, PartName part) => $"{Parts(engine)}/{part.Path}";

    public static string Figures(EngineName engine) => $"{Bench(engine)}/measure";

    public static string Figure(EngineName engine, FigureName figure) => $"{Figures(engine)}/{figure}";

    public static string Decide(EngineName engine) => $"{Bench(engine)}/decide";

    public static string Piece(EngineName engine, PieceTag piece) => $"{Decide(engine)}/{string.Join('/', piece.Text.Split('/').Select(Uri.EscapeDataString))}";

    public static string Oil(EngineName engine) => $"{Bench(engine)}/oil";

    public static string OilTrial(EngineName engine) => $"{Oil(engine)}/trial";

    public static string OilSettled(EngineName engine) => $"{Oil(engine)}/settled";

    public static string FlowTest(EngineName engine) => $"{Oil(engine)}/flow-test";

    public static string Calibrations(EngineName engine) => $"{Oil(engine)}/calibrations";

    public static string PumpCard(EngineName engine, string pump) => $"{Oil(engine)}/pumps/{Uri.EscapeDataString(pump)}";

    public static string Circuit(EngineName engine) => $"{Oil(engine)}/circuit";

    public static string CircuitStart(EngineName engine) => $"{Oil(engine)}/start";

    public static string Element(EngineName engine, ElementName element) => $"{Circuit(engine)}/{element}";

    public static string NewElement(EngineName engine) => $"{Circuit(engine)}/new";

    public static string RemoveElement(EngineName engine) => $"{Oil(engine)}/removals";

    public static string Starters(EngineName engine) => $"{Bench(engine)}/starters";

    public static string Starter(EngineName engine, Starter starter) => $"{Starters(engine)}/{starter.Key}";

    public static string Import(EngineName engine) => $"{Bench(engine)}/import";

    public static string Of(SheetName sheet, EngineName? engine) => (sheet, engine) switch
    {
        (SheetName.Sums, _) => Sums,
        (SheetName.Workshop, _) => Workshop,
        (_, null) => "/",
        (SheetName.Strip, { } name) => Strip(name),
        (SheetName.Parts, { } name) => Parts(name),
        (SheetName.Measure, { } name) => Figures(name),
        (SheetName.Decide, { } name) => Decide(name),
        (SheetName.Oil, { } name) => Oil(name),
        (SheetName.CloseUp, { } name) => CloseUp(name),
        (_, { } name) => Bench(name),
    };

    /// <summary>Only an address on this very site may be gone back to.</summary>
    public static string Back(string? asked, string otherwise) =>
        asked is ['/', not ('/' or '\\'), ..] or "/" && !asked.Any(char.IsControl) ? asked : otherwise;
}
