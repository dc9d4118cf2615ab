using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;
using Thoubook.Store;

namespace Thoubook.Workshop;

// A definition is posted with the revision that it was made from; revision 0 says that it is new. Where somebody else was faster, both values are shown.
public sealed partial class OpenWorkshop
{
    /// <summary>Makes an engine.</summary>
    public Outcome<Engine> MakeEngine(Engine engine, string by) => EditEngine(engine with { Revision = 0 }, by);

    public Outcome<Engine> EditEngine(Engine engine, string by) => engine.Confidence is > 0.5 and < 1
        ? Define(engine.Name, by, c => c with { Definition = engine }, r => r.Engine)
        : new Problem("confidence", "confidence", $"{engine.Confidence}", "A probability between 0.5 and 1, usually 0.95.", "Correct it.");

    public Outcome<Document> Define(string engine, Document document, string by) =>
        Define(engine, by, _ => c => c with { Documents = [document] }, r => r.Index.Document(document.Name));

    public Outcome<Part> Define(string engine, Part part, string by) =>
        Define(engine, by, _ => c => c with { Parts = [part] }, r => r.Index.Part(part.Name));

    /// <summary>A dimension brings its part along where that is not there yet.</summary>
    public Outcome<Dimension> Define(string engine, Dimension dimension, string by) => Define(
        engine,
        by,
        record => c => c with { Figures = [dimension], Parts = record.Index.Part(dimension.Name.Part) is null ? [new(dimension.Name.Part)] : [] },
        r => r.Index.Figure(dimension.Name) as Dimension);

    public Outcome<Fit> Define(string engine, Fit fit, string by) =>
        Define(engine, by, _ => c => c with { Figures = [fit] }, r => r.Index.Figure(fit.Name) as Fit);

    public Outcome<Gauge> Define(string engine, Gauge gauge, string by) =>
        Define(engine, by, _ => c => c with { Gauges = [gauge] }, r => r.Index.Gauge(gauge.Tag));

    public Outcome<Piece> Define(string engine, Piece piece, string by) =>
        Define(engine, by, _ => c => c with { Pieces = [piece] }, r => r.Index.Piece(piece.Tag));

    private Outcome<T> Define<T>(string engine, string by, Func<EngineRecord, Func<Change, Change>> what, Func<EngineRecord, T?> stored)
        where T : class => Engine(engine).Then(record => Define(record.Engine.Name, by, what(record), stored));

    private Outcome<T> Define<T>(EngineName engine, string by, Func<Change, Change> what, Func<EngineRecord, T?> stored)
        where T : class => _store.Write(what(new Change(engine, by) { WhenThere = WhenThere.MatchRevision }))
            .Then(_ => Engine(engine))
            .Then<T>(record => stored(record) ?? throw new InvalidOperationException("What was written is not in the record."));
}
