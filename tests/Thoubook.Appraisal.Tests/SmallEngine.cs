using NodaTime;
using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal.Tests;

/// <summary>Builds the record of a small engine, a line a fact. Invented figures: for rules and properties, never a check against the outside.</summary>
internal sealed class SmallEngine
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 1, 9, 0);
    private long _sequence;

    public EngineRecord Record { get; private set; } = new(new Engine(new EngineName("Test stand"), Purpose.StandRun));

    public static Quantity Q(string text) => QuantityReader.Read(text, ReadingContext.None).IsOk(out var quantity, out var problems)
        ? quantity
        : throw new ArgumentException(string.Join("; ", problems), nameof(text));

    public SmallEngine Engine(Func<Engine, Engine> change)
    {
        Record = Record with { Engine = change(Record.Engine) };
        return this;
    }

    /// <summary>A part with the piece chosen for it, tagged with the part's last name.</summary>
    public SmallEngine Part(string name, string? material = "steel", Func<Part, Part>? change = null, Func<Piece, Piece>? piece = null)
    {
        var part = new Part(PartName.Of(name)) { Material = material };
        var made = new Piece(new PieceTag(part.Name.Leaf)) { For = part.Name };
        Record = Record with
        {
            Parts = [.. Record.Parts, change?.Invoke(part) ?? part],
            Pieces = [.. Record.Pieces, piece?.Invoke(made) ?? made],
            Choices = [.. Record.Choices, new Chosen(FactId.New(), Now(), "owner", made.Tag, part.Name) { Sequence = ++_sequence }],
        };
        return this;
    }

    public SmallEngine Gauge(string tag, string uncertainty, string? repeatability = null, string? resolution = null)
    {
        Record = Record with
        {
            Gauges = [.. Record.Gauges, new Gauge(new GaugeTag(tag))
            {
                Uncertainty = Q(uncertainty),
                Repeatability = repeatability is null ? null : Q(repeatability),
                Resolution = resolution is null ? null : Q(resolution),
            }],
        };
        return this;
    }

    public SmallEngine Document(string name, CombiningRule rule)
    {
        Record = Record with { Documents = [.. Record.Documents, new Document(new DocumentName(name)) { Rule = rule }] };
        return this;
    }

    public SmallEngine Dimension(string name, string? newLeast = null, string? newGreatest = null, string? wornLeast = null, string? wornGreatest = null, Func<Dimension, Dimension>? change = null, WearAllowance wear = WearAllowance.AsGiven, string? document = null)
    {
        var dimension = new Dimension(FigureName.Of(name)) { LimitSets = Set(newLeast, newGreatest, wornLeast, wornGreatest, wear, document) };
        Record = Record with { Dimensions = [.. Record.Dimensions, change?.Invoke(dimension) ?? dimension] };
        return this;
    }

    public SmallEngine Fit(string name, (double, string)[] gap, string? newLeast = null, string? newGreatest = null, string? wornGreatest = null, FitKind kind = FitKind.Clearance, string? document = null)
    {
        Record = Record with
        {
            Fits = [.. Record.Fits, new Fit(FigureName.Of(name))
            {
                FitKind = kind,
                Side = Side.Diametral,
                Gap = [.. gap.Select(t => new GapTerm(t.Item1, FigureName.Of(t.Item2)))],
                LimitSets = Set(newLeast, newGreatest, null, wornGreatest, WearAllowance.AsGiven, document),
            }],
        };
        return this;
    }

    public SmallEngine Reading(string figure, string value, string place = "A1", string? gauge = null, string? temperature = "20 °C", string? piece = null)
    {
        var name = FigureName.Of(figure);
        Record = Record with
        {
            Readings = [.. Record.Readings, new Reading(FactId.New(), Now(), "bench", new PieceTag(piece ?? name.Part.Leaf), name, Q(value))
            {
                Place = new PlaceName(place),
                Gauge = gauge is null ? null : new GaugeTag(gauge),
                Temperature = temperature is null ? null : Q(temperature),
                Sequence = ++_sequence,
            }],
        };
        return this;
    }

    public SmallEngine Work(string piece, string[] altered, string? repairSize = null)
    {
        Record = Record with
        {
            Works = [.. Record.Works, new Work(FactId.New(), Now(), "machinist", new PieceTag(piece), "ground") { Altered = altered, RepairSize = repairSize, Sequence = ++_sequence }],
        };
        return this;
    }

    public SmallEngine Check(string fit, string value, string place = "A1", CheckMethod method = CheckMethod.Feeler, string? gauge = null)
    {
        var name = FigureName.Of(fit);
        var parts = Record.Fits.Single(f => f.Name == name).Gap.Select(t => t.Of.Part).Append(name.Part).Distinct();
        Record = Record with
        {
            Checks = [.. Record.Checks, new Check(FactId.New(), Now(), "bench", name, Q(value))
            {
                Method = method,
                Place = new PlaceName(place),
                Gauge = gauge is null ? null : new GaugeTag(gauge),
                ReliesOn = [.. parts.Select(p => Record.Index.ChosenFor(p)?.Id).OfType<FactId>()],
                Sequence = ++_sequence,
            }],
        };
        return this;
    }

    public SmallEngine StrikeOut(FactId of, string why = "a slip")
    {
        Record = Record with { StrikeOuts = [.. Record.StrikeOuts, new StrikeOut(FactId.New(), Now(), "owner", of, why) { Sequence = ++_sequence }] };
        return this;
    }

    public SmallEngine Change(Func<EngineRecord, EngineRecord> change)
    {
        Record = change(Record);
        return this;
    }

    public OffsetDateTime Now() => Start.Plus(Duration.FromMinutes(++_sequence)).WithOffset(Offset.Zero);

    public EngineAppraisal Appraise() => Appraiser.Appraise(Record);

    public DimensionAppraisal AppraiseDimension(string name) => (DimensionAppraisal)Appraise()[FigureName.Of(name)]!;

    public FitAppraisal AppraiseFit(string name) => (FitAppraisal)Appraise()[FigureName.Of(name)]!;

    private static IReadOnlyList<LimitSet> Set(string? newLeast, string? newGreatest, string? wornLeast, string? wornGreatest, WearAllowance wear, string? document)
    {
        var limits = new Limits { NewLeast = Maybe(newLeast), NewGreatest = Maybe(newGreatest), WornLeast = Maybe(wornLeast), WornGreatest = Maybe(wornGreatest), Wear = wear };
        return limits.IsEmpty ? [] : [new LimitSet(limits) { Source = document is null ? null : new Citation(new DocumentName(document), "1") }];
    }

    private static Quantity? Maybe(string? text) => text is null ? null : Q(text);
}
