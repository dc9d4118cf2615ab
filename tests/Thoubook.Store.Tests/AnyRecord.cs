using CsCheck;
using NodaTime;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;
using Thoubook.Record.Quantities;
using Check = Thoubook.Record.Check;

namespace Thoubook.Store.Tests;

/// <summary>Records of every shape that the store must hold: any of the optional things there or not, names and notes in any script.</summary>
internal static class AnyRecord
{
    private static readonly Gen<string?> Note = Gen.Frequency((2, Nothing<string>()), (1, Gen.String[Gen.Char[' ', '\uD7FF'], 0, 40].Select(s => (string?)s)));
    private static readonly Gen<string?> Word = Among<string?>(null, "cast aluminium", "late pump", "Öl, \"naß\"", "'; DROP TABLE reading; --");

    private static readonly Gen<OffsetDateTime> At = Gen.Select(
        Gen.Long[-5_000_000_000_000_000_000, 5_000_000_000_000_000_000],
        Gen.Int[-18 * 60, 18 * 60],
        (ns, minutes) => (NodaConstants.UnixEpoch + Duration.FromNanoseconds(ns)).WithOffset(Offset.FromSeconds(minutes * 60)));

    private static readonly Gen<FactId> Id = Gen.Guid.Select(g => new FactId(g));
    private static readonly Gen<string> By = Among("owner", "bench", "machinist");

    public static Gen<EngineRecord> Generator { get; } = Gen.Select(Engine(), Gen.Int[1, 5], Gen.Int[1, 4], Gen.Int[1, 3]).SelectMany(Record);

    private static Gen<T> Among<T>(params T[] items) => Gen.Int[0, items.Length - 1].Select(i => items[i]);

    private static Gen<T?> Nothing<T>()
        where T : class => Gen.Int[0, 0].Select(_ => (T?)null);

    private static Gen<Quantity> Length(FitSigns signs = FitSigns.NotHere) => Gen.Select(
        Gen.Double[-1, 1],
        Among(TradeUnit.Inch, TradeUnit.Thou, TradeUnit.Millimetre),
        Among("1 1/2 in", "2.5 thou", "80,02 mm", "(0.5 thou)"),
        (si, unit, text) => new Quantity(si, QuantityKind.Length, unit, text) { Signs = signs });

    private static Gen<T?> Perhaps<T>(Gen<T> gen)
        where T : class => Gen.Frequency((1, Nothing<T>()), (2, gen.Select(x => (T?)x)));

    private static Gen<Quantity> Temperature() => Gen.Double[200, 500].Select(k => new Quantity(k, QuantityKind.Temperature, TradeUnit.Fahrenheit, "180 °F"));

    private static Gen<T> Of<T>()
        where T : struct, Enum => Among(Enum.GetValues<T>());

    private static Gen<Engine> Engine() => Gen.Select(Of<Purpose>(), Note, Gen.Bool, Gen.Double[0.5, 1], Temperature().Array[0, 3], Temperature().Array[0, 2], Word).Select((purpose, note, invented, confidence, states, parts, mark) =>
        new Engine(new EngineName("Écluse 4"), purpose)
        {
            Note = note,
            Invented = invented,
            Confidence = confidence,
            Mark = mark,
            Temperatures = [.. states.Select((s, i) => new TemperatureState($"state {i}", s, [.. parts.Select((p, j) => new PartTemperature(PartName.Of($"part-{j}"), p))]))],
        });

    private static Gen<LimitSet> Limits(DocumentName document, FitSigns signs) => Gen.Select(
        Perhaps(Length(signs)), Perhaps(Length(signs)), Perhaps(Length(signs)), Perhaps(Length(signs)), Of<WearAllowance>(), Word, Gen.Bool, (a, b, c, d, wear, row, cited) =>
        new LimitSet(new Limits { NewLeast = a, NewGreatest = b, WornLeast = c, WornGreatest = d, Wear = wear })
        {
            Source = cited ? new Citation(document, row) : null,
            Marks = row is null ? [] : [row, "II"],
        });

    /// <summary>A circuit that takes a size from every dimension.</summary>
    private static OilCircuit Circuit(DocumentName document, FigureName[] dimensions, string? note, string? row)
    {
        var circuit = Bench.Circuit();
        return circuit with
        {
            Oil = note is null ? circuit.Oil : new OilChoice { Grade = note },
            Elements =
            [
                .. dimensions.Select((d, i) => new ElementDefinition(new($"e{i}"), (ElementKind)(i % 23), new("a"), new("b")) { Note = note, Blanked = i % 2 == 0, Part = i == 0 ? d.Part : null, Vent = i == 1 ? new NodeName("c") : null, Values = [new("bore", new CircuitValue.Taken(d)), new("length", new CircuitValue.Given(Bench.Inches(i, "i")))] }),
                circuit.Elements[^1],
            ],
            States = note is null ? [] : [circuit.States[0] with { Limits = [new(new("main")) { Greatest = Bench.Psi(3), Source = new(document, row) }] }, circuit.States[1]],
            FlowTest = note is null ? null : circuit.FlowTest,
            Gauges = note is null ? [] : circuit.Gauges,
        };
    }

    private static Gen<EngineRecord> Record((Engine Engine, int Parts, int Pieces, int Facts) sizes)
    {
        var (engine, partCount, pieceCount, factCount) = sizes;
        var document = new DocumentName("book");
        var parts = Enumerable.Range(0, partCount).Select(i => PartName.Of($"group/part-{i}")).ToArray();
        var dimensions = parts.Select(p => new FigureName(p, "size")).ToArray();
        var fit = FigureName.Of("group.clearance");
        var tags = Enumerable.Range(0, pieceCount).Select(i => new PieceTag($"P {i} ≥")).ToArray();
        var gauge = new GaugeTag("M-1");

        var anyPiece = Among(tags);
        var anyPart = Among(parts);
        var anyDimension = Among(dimensions);
        var definitions = Gen.Select(
            Gen.Select(Word, Word, Of<CombiningRule>(), (a, b, rule) => new Document(document) { Title = a, Edition = b, Rule = rule }),
            Gen.Select(Of<PartIntent>(), Word, Note, (intent, material, note) => (intent, material, note)).Array[partCount],
            Gen.Select(Limits(document, FitSigns.NotHere).Array[0, 3], Perhaps(Length()), Perhaps(Length()), Gen.Bool, Of<Counting>(), Length().Array[0, 2], (limits, ovality, taper, formed, counts, sizes) => (limits, ovality, taper, formed, counts, sizes)).Array[partCount],
            Gen.Select(Limits(document, FitSigns.TightIsNegative).Array[0, 2], Of<FitKind>(), Of<Side>(), Gen.Double[-3, 3], (limits, kind, side, coefficient) => (limits, kind, side, coefficient)),
            Gen.Select(Perhaps(Length()), Perhaps(Length()), Gen.Bool, (a, b, c) => new Gauge(gauge) { Resolution = a, Uncertainty = b, Checked = c ? new LocalDate(1938, 2, 28) : null }),
            Gen.Select(Of<PieceOrigin>(), Word, Note, (origin, material, note) => (origin, material, note)).Array[pieceCount]).Select((d, p, f, gap, g, pieces) => new EngineRecord(engine)
            {
                Documents = [d],
                Parts = [.. parts.Select((name, i) => new Part(name) { Intent = p[i].intent, Material = p[i].material, Note = p[i].note })],
                Dimensions = [.. dimensions.Select((name, i) => new Dimension(name)
                {
                    LimitSets = f[i].limits,
                    Ovality = f[i].formed ? new FormLimit(f[i].ovality, f[i].taper) : null,
                    Taper = f[i].taper is { } worn ? new FormLimit(null, worn) : null,
                    Counts = f[i].formed ? f[i].counts : null,
                    Wear = f[i].formed ? null : WearDirection.Shrinks,
                    Places = f[i].formed ? [new("A1"), new("front/upright")] : [],
                    RepairSizes = [.. f[i].sizes.Select((s, n) => new RepairSize($"+0{n}0", s))],
                })],
                Fits = [new Fit(fit) { FitKind = gap.kind, Side = gap.side, LimitSets = gap.limits, Gap = [.. dimensions.Select((n, i) => new GapTerm(gap.coefficient + i, n))] }],
                Gauges = [g],
                Circuit = gap.coefficient < 0 ? null : Circuit(document, dimensions, p[0].note, d.Title),
                Pieces = [.. tags.Select((t, i) => new Piece(t) { Origin = pieces[i].origin, Material = pieces[i].material, Note = pieces[i].note, For = i == 0 ? parts[0] : null })],
            });

        return definitions.SelectMany(record => Gen.Select(
            Gen.Select(Gen.Select(Id, At, By), anyPiece, anyDimension, Length(), Among("A1", "bottom", "not noted"), Gen.Bool, Perhaps(Temperature()), Note).Select((head, piece, of, value, place, gauged, temperature, note) =>
                new Reading(head.Item1, head.Item2, head.Item3, piece, of, value) { Place = new(place), Gauge = gauged ? gauge : null, Temperature = temperature, Note = note }).Array[0, factCount * 3],
            Gen.Select(Id, At, By, anyPiece, anyPart, (id, at, by, piece, part) => new Chosen(id, at, by, piece, part)).Array[1, factCount],
            Gen.Select(Id, At, By, anyPiece, anyPart, (id, at, by, piece, part) => new Placed(id, at, by, piece, part)).Array[0, factCount],
            Gen.Select(Id, At, By, anyPiece, Word, Gen.Bool, (id, at, by, piece, size, altered) => new Work(id, at, by, piece, "lapped") { RepairSize = size, Altered = altered ? ["size"] : [] }).Array[0, factCount],
            Gen.Select(Id, At, By, anyPiece, anyPart, Of<FindingOutcome>(), Gen.Bool, (id, at, by, piece, part, outcome, onPiece) => new Finding(id, at, by, onPiece ? piece : null, onPiece ? null : part, "scored") { Outcome = outcome }).Array[0, factCount],
            Gen.Select(Id, At, By, Length(FitSigns.TightIsNegative), Of<CheckMethod>(), (id, at, by, value, method) => new Check(id, at, by, fit, value) { Method = method }).Array[0, factCount],
            Gen.Select(Id, At, By, Of<DecisionChoice>(), anyPiece, Note, (id, at, by, choice, piece, why) => new Decision(id, at, by, choice) { Piece = piece, Why = why }).Array[0, factCount],
            Gen.Select(Id, At, By).Array[2]).Select((readings, choices, placings, works, findings, checks, decisions, ends) => ClosedUp.Over(record, record.Parts[0].Note) with
            {
                Readings = readings,
                FlowTests = [Bench.FlowTest() with { Note = record.Documents[0].Title, Caught = record.Circuit is null ? [] : Bench.FlowTest().Caught }],
                Choices = choices,
                Placings = placings,
                Works = works,
                Findings = findings,
                Checks = [.. checks.Select(c => c with { ReliesOn = [.. choices.Select(x => x.Id)] })],
                Decisions = [.. decisions.Select(d => d with { ReliesOn = [.. readings.Select(x => x.Id), .. checks.Select(x => x.Id)] })],
                Liftings = [new Lifted(ends[0].Item1, ends[0].Item2, ends[0].Item3, choices[0].Id)],
                StrikeOuts = [new StrikeOut(ends[1].Item1, ends[1].Item2, ends[1].Item3, readings.FirstOrDefault()?.Id ?? choices[0].Id, "slip")],
            }));
    }
}
