using CsCheck;
using NodaTime;
using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Tests.EngineFiles;

/// <summary>Engines at random: every kind of entry, awkward texts, quantities in every unit and spelling.</summary>
internal static class RandomRecords
{
    public static readonly Gen<string> Texts = Gen.OneOf(
        OneOf(
            "cast aluminium", "2nd", "3", "187", "1.5", "true", "null", "~", "no", "yes", "- a dash", "a: colon", "# hash", "\"quoted\"", "it's", "a, b", "[x]", "{y}", "&anchor", "*alias", "!tag", "%percent", "@at", "`tick`",
            "2026-01-02", "0x1F", "1e3", ".5", "½ worn", "line one\nline two", "tab\there", "back\\slash", "ends:", "trailing #", "Überholung", "日本", "\U0001F527 spanner", "?", "|", ">", "--- x", "...", "=1+1", "a  b", "null ", "12:30:45"),
        Gen.String[Gen.Char['!', '~'], 1, 30]).Select(t => t.Trim()).Where(t => t.Length > 0);

    private static readonly Gen<string?> Notes = Gen.OneOf(Gen.Const((string?)null), Texts.Select(t => (string?)t));

    private static readonly Gen<IReadOnlyList<string>> Marks = Texts.List[0, 2].Select(m => (IReadOnlyList<string>)m);

    private static readonly Gen<string> Segments = OneOf("body", "driver", "driven", "cover", "no-1", "2", "main-bearing", "a", "b");

    private static readonly Gen<PartName> PartNames = Segments.List[1, 3].Select(s => PartName.Of(string.Join('/', s)));

    internal static readonly Gen<OffsetDateTime> Times = Gen.Select(Gen.Long[0, 4_000_000_000], Gen.Int[-12, 14], Gen.Int[0, 999_999_999]).Select((seconds, hours, nanoseconds) =>
        Instant.FromUnixTimeSeconds(seconds).PlusNanoseconds(nanoseconds).WithOffset(Offset.FromHours(hours)));

    private static readonly Gen<FactId> Ids = Gen.Guid.Select(g => new FactId(g));

    /// <summary>Lengths as people write them, and as a reader of doubtful ones was answered.</summary>
    public static Gen<Quantity> Length(ReadingContext context) => Gen.OneOf(
        Gen.Select(Gen.Int[1, 99_999], OneOf("thou", "in", "mm", "\"", "µm", "tenths", "")).Select((n, unit) => $"{n / 10_000.0:0.####} {unit}".Trim()),
        OneOf("1 1/2 in", "1-1/2\"", "11/64 in", "80,02 mm", "1,250 mm", "2.5T thou", "(0.5 thou)", "-0.5 thou", "0", ".0015", " 2.5 thou ", "4 tenths"))
        .Select(text => Answered(text, context))
        .Where(q => q is not null).Select(q => q!);

    public static readonly Gen<EngineRecord> Records =
        from names in PartNames.List[1, 5]
        from parts in Gen.Select(Gen.Enum<PartIntent>(), Notes, Notes, Notes, Notes).Select((intent, a, b, c, d) => new Part(default) { Intent = intent, Material = a, ModificationState = b, InItsStead = c, Note = d }).List[names.Count]
        from documents in Gen.Select(Notes, Notes, Notes, Gen.Enum<CombiningRule>(), Marks).Select((title, edition, amendment, rule, marks) => (title, edition, amendment, rule, marks)).List[0, 3]
        from gauges in Gen.Select(Notes, Gen.Null(Length(ReadingContext.None)), Notes).Select((what, resolution, note) => (what, resolution, note)).List[0, 3]
        from engine in Gen.Select(Texts, Gen.Enum<Purpose>(), Notes, Notes, Gen.Double[0.51, 0.99], Gen.Bool)
        let record = Defined(engine, [.. names.Distinct().Zip(parts, (name, part) => part with { Name = name })], documents, gauges)
        from dimensions in Dimensions(record).List[0, 6]
        let measured = record with { Dimensions = [.. dimensions.DistinctBy(d => d.Name)] }
        from fits in Fits(measured).List[0, 4]
        let whole = measured with { Fits = [.. fits.DistinctBy(f => f.Name).Where(f => measured.Index.Figure(f.Name) is null)] }
        from facts in FactsOf(whole)
        select facts;

    private static EngineRecord Defined(
        (string Name, Purpose Purpose, string? Mark, string? Serial, double Confidence, bool Invented) engine,
        List<Part> parts,
        List<(string? Title, string? Edition, string? Amendment, CombiningRule Rule, IReadOnlyList<string> Marks)> documents,
        List<(string? What, Quantity? Resolution, string? Note)> gauges) => new(new Engine(new EngineName(Label(engine.Name)), engine.Purpose)
        {
            Mark = engine.Mark,
            SerialNumber = engine.Serial,
            Confidence = engine.Confidence,
            Invented = engine.Invented,
            Temperatures = [new TemperatureState("hot", Read("80 °C", QuantityKind.Temperature), [new PartTemperature(parts[0].Name, Read("180 °F", QuantityKind.Temperature))])],
        })
        {
            Parts = parts,
            Documents = [.. documents.Select((d, i) => new Document(new DocumentName($"book-{i}")) { Title = d.Title, Edition = d.Edition, Amendment = d.Amendment, Rule = d.Rule, Marks = d.Marks })],
            Gauges = [.. gauges.Select((g, i) => new Gauge(new GaugeTag($"M {i}: #")) { What = g.What, Resolution = g.Resolution, Note = g.Note, Checked = i == 0 ? null : new LocalDate(2026, 1, i) })],
            Pieces = [.. parts.Select((p, i) => new Piece(new PieceTag(i % 2 == 0 ? $"{i:000}" : $"P-{i}")) { For = i == 0 ? null : p.Name, Origin = (PieceOrigin)(i % 4), Note = p.Note })],
        };

    private static Gen<LimitSet> Sets(Figure figure, EngineRecord record) =>
        from pair in Length(ReadingContexts.ForLimitsOf(figure)).List[4]
        from shape in Gen.Int[0, 6]
        from wear in Gen.Enum<WearAllowance>()
        from marks in Marks
        from row in Notes
        let sorted = pair.OrderBy(q => q.Si).ToList()
        select new LimitSet(shape switch
        {
            0 => new Limits { NewLeast = sorted[1], NewGreatest = sorted[2], WornLeast = sorted[0], WornGreatest = sorted[3], Wear = wear },
            1 => new Limits { NewLeast = sorted[1], NewGreatest = sorted[2], WornGreatest = sorted[3] },
            2 => new Limits { NewLeast = sorted[1], NewGreatest = sorted[2], WornLeast = sorted[0] },
            3 => new Limits { NewLeast = sorted[1], NewGreatest = sorted[1], Wear = wear },
            4 => new Limits { NewGreatest = sorted[2], WornGreatest = sorted[3] },
            5 => new Limits { WornLeast = sorted[0], Wear = wear },
            _ => new Limits { NewLeast = sorted[1], NewGreatest = sorted[2] },
        })
        {
            Marks = marks,
            Source = record.Documents.Count == 0 ? null : new Citation(record.Documents[^1].Name, row),
        };

    private static Gen<Dimension> Dimensions(EngineRecord record) =>
        from part in Gen.Int[0, record.Parts.Count - 1]
        from local in OneOf("depth", "width", "bore", "od-2")
        let blank = new Dimension(new FigureName(record.Parts[part].Name, local))
        from sets in Sets(blank, record).List[0, 2]
        from wear in Gen.Nullable(Gen.Enum<WearDirection>())
        from counts in Gen.Nullable(Gen.Enum<Counting>())
        from side in Gen.Enum<Side>()
        from ovality in Gen.Null(Length(new ReadingContext { Kind = QuantityKind.Length }))
        from note in Notes
        select blank with
        {
            LimitSets = sets,
            Wear = wear,
            Counts = counts,
            Side = side,
            Ovality = ovality is null ? null : new FormLimit(ovality, null),
            Taper = ovality is null ? null : new FormLimit(ovality, ovality),
            RepairSizes = part % 2 == 0 ? [] : [new RepairSize("+010", Read("10 thou", QuantityKind.Length)), new RepairSize("1st: re-grind", Read("-0.25 mm", QuantityKind.Length))],
            Note = note,
        };

    private static Gen<Fit> Fits(EngineRecord record) =>
        from part in Gen.Int[0, record.Parts.Count - 1]
        from local in OneOf("clearance", "end-float", "width")
        from kind in Gen.Enum<FitKind>()
        let blank = new Fit(new FigureName(record.Parts[part].Name.Parent ?? record.Parts[part].Name, local)) { FitKind = kind }
        from sets in Sets(blank, record).List[0, 2]
        from side in Gen.Enum<Side>()
        from coefficients in OneOf(1.0, -1.0, 2.0, -0.5, 0.1, 1.0 / 3, 1e-7).List[record.Dimensions.Count]
        from terms in Gen.Int[0, record.Dimensions.Count]
        select blank with
        {
            LimitSets = sets,
            Side = side,
            Gap = [.. record.Dimensions.Take(terms).Zip(coefficients, (d, c) => new GapTerm(c, d.Name))],
        };

    private static Gen<EngineRecord> FactsOf(EngineRecord record) =>
        from ids in Ids.List[12]
        from times in Times.List[12]
        from who in Texts
        from notes in Notes.List[4]
        from values in Gen.Int[0, Math.Max(0, record.Dimensions.Count - 1)].SelectMany(i => record.Dimensions.Count == 0
            ? Gen.Const(new List<(Dimension, Quantity)>())
            : Length(ReadingContexts.For(record.Dimensions[i], record)).Select(q => (record.Dimensions[i], q)).List[0, 3])
        from gap in record.Fits.Count == 0 ? Gen.Const((Quantity?)null) : Gen.Null(Length(ReadingContexts.For(record.Fits[0], record)))
        let piece = record.Pieces[0].Tag
        let part = record.Parts[0].Name
        let chosen = new Chosen(ids[0], times[0], who, piece, part)
        let placed = new Placed(ids[1], times[1], who, piece, part)
        let finding = new Finding(ids[2], times[2], who, null, part, "pitting: light") { Outcome = FindingOutcome.NotSound }
        select record with
        {
            Choices = [chosen],
            Placings = [placed],
            Liftings = [new Lifted(ids[3], times[3], who, chosen.Id) { Why = notes[0] }],
            Findings = [finding, new Finding(ids[4], times[4], who, piece, null, who)],
            Works = record.Dimensions.Count == 0 ? [] : [new Work(ids[5], times[5], who, piece, who) { Altered = [record.Dimensions[0].Name.Local], RepairSize = (record.Dimensions[0].RepairSizes.Count == 0 ? null : record.Dimensions[0].RepairSizes[0].Name) }],
            Readings = [.. values.Select((v, i) => new Reading(ids[6 + i], times[6], who, piece, v.Item1.Name, v.Item2)
            {
                Place = i == 0 ? PlaceName.NotNoted : new PlaceName(i == 1 ? "A1" : "front/upright"),
                Gauge = record.Gauges.Count == 0 ? null : record.Gauges[0].Tag,
                Temperature = i == 0 ? null : Read("19 °C", QuantityKind.Temperature),
                Note = notes[1],
            })],
            Checks = gap is null ? [] : [new Record.Check(ids[9], times[9], who, record.Fits[0].Name, gap) { Method = CheckMethod.PlasticStrip, ReliesOn = [placed.Id, finding.Id], Note = notes[2] }],
            Decisions = [new Decision(ids[10], times[10], who, DecisionChoice.Hold) { Piece = piece, Figure = record.Dimensions.Count == 0 ? null : record.Dimensions[0].Name, Basis = DecisionBasis.AcceptedOnJudgement, Why = notes[3], ReliesOn = [finding.Id] }],
            StrikeOuts = [new StrikeOut(ids[11], times[11], who, finding.Id, who)],
        };

    /// <summary>The quantity that a text is taken for, every question answered with its first meaning; null where it is refused.</summary>
    private static Quantity? Answered(string text, ReadingContext context)
    {
        var confirmed = new HashSet<string>(StringComparer.Ordinal);
        for (var asked = 0; asked < 5; asked++)
        {
            if (QuantityReader.Read(text, context with { Confirmed = confirmed }).IsOk(out var quantity, out var problems))
                return quantity;
            if (!problems[0].IsQuestion)
                return null;
            confirmed.Add(problems[0].Meanings[0].Code);
        }

        return null;
    }

    private static Quantity Read(string text, QuantityKind kind) => QuantityReader.Read(text, new ReadingContext { Kind = kind }).IsOk(out var quantity, out _) ? quantity : throw new InvalidOperationException(text);

    private static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    internal static string Label(string text) => new([.. text.Where(c => !char.IsControl(c)).DefaultIfEmpty('x')]);
}
