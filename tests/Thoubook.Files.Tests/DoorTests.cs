using Thoubook.Files.EngineFiles;
using Thoubook.Files.Readings;
using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;
using Thoubook.Record.Quantities;
using Thoubook.Record.Tests.Quantities;

namespace Thoubook.Files.Tests;

/// <summary>The same string gives the same reading, refusal or question in an engine file and in a table of readings as at the reader itself.</summary>
public sealed class DoorTests
{
    private static readonly PartName Part = PartName.Of("pump/body");
    private static readonly FigureName Depth = new(Part, "depth");
    private static readonly FigureName Clearance = new(Part, "clearance");

    /// <summary>Places that no limits can make: limits without a unit.</summary>
    private static readonly string[] NoSuchPlace = ["clearance-open", "rise-open"];

    public static TheoryData<string> Contexts => [.. QuantityCorpus.Strings.Select(r => r.Context).Distinct().Except(NoSuchPlace)];

    /// <summary>A table holds readings of dimensions: nothing of fits, and always a kind.</summary>
    public static TheoryData<string> ContextsOfTables =>
        [.. QuantityCorpus.Strings.Select(r => r.Context).Distinct().Except(NoSuchPlace).Where(c => QuantityCorpus.Contexts[c] is { Kind: not null, FitSigns: FitSigns.NotHere })];

    [Theory]
    [MemberData(nameof(Contexts))]
    public void InAnEngineFile_EveryStringIsReadAlike(string context)
    {
        var place = QuantityCorpus.Contexts[context];
        foreach (var row in Rows(context))
            Agree(row, EngineFile.Read(Entry(place, row.Text), "door.yaml", Terms(row)), r => ValueOf(r, place));
    }

    [Theory]
    [MemberData(nameof(ContextsOfTables))]
    public void InATable_EveryStringIsReadAlike(string context)
    {
        var place = QuantityCorpus.Contexts[context];
        foreach (var row in Rows(context))
        {
            var text = $"of,value\n{Depth},\"{row.Text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"\n";
            var outcome = ReadingsFile.Read(text, "door.csv", Known(place), Terms(row));
            if (string.IsNullOrWhiteSpace(row.Text) || row.Text[0] is '=' or '@')
                Assert.False(outcome.IsOk(out _, out _), $"{row}");
            else
                Agree(row, outcome, r => ValueOf(r, place));
        }
    }

    [Fact]
    public void TheHeadOfAColumn_GivesTheUnitOfBareNumbers()
    {
        foreach (var row in QuantityCorpus.Strings.Where(r => r.Context is "fahrenheit" && !r.Text.Contains('"', StringComparison.Ordinal) && r.Text.Trim().Length > 0))
        {
            var text = $"of,value,temperature [°F]\n{Depth},1 in,\"{row.Text}\"\n";
            Agree(row, ReadingsFile.Read(text, "door.csv", Known(QuantityCorpus.Contexts["length"]), Terms(row)), r => r.Readings[0].Temperature);
        }

        foreach (var row in QuantityCorpus.Strings.Where(r => r.Context is "millimetre" && r.Text.Trim().Length > 0 && r.Text[0] is not ('=' or '@')))
        {
            var text = $"of,value [mm]\n{Depth},\"{row.Text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"\n";
            Agree(row, ReadingsFile.Read(text, "door.csv", Known(QuantityCorpus.Contexts["length"]), Terms(row)), r => r.Readings[0].Value);
        }
    }

    private static IEnumerable<CorpusString> Rows(string context) => QuantityCorpus.Strings.Where(r => r.Context == context);

    private static void Agree(CorpusString row, Outcome<EngineRecord> outcome, Func<EngineRecord, Quantity?> value)
    {
        if (outcome.IsOk(out var record, out var problems))
        {
            var quantity = value(record)!;
            Assert.Equal($"{row}: {row.Outcome} {row.Unit}", $"{row}: ok {quantity.Unit.Code}");
            Assert.Equal(row.Si!.Value, quantity.Si, Math.Abs(row.Si.Value) * 1e-15);
            Assert.True(QuantityReader.Read(row.Text, QuantityCorpus.ContextOf(row)).IsOk(out var same, out _));
            Assert.Equal(same.Si, quantity.Si);
            return;
        }

        var problem = Assert.Single(problems);
        var codes = problem.IsQuestion ? problem.Meanings.Select(m => m.Code.Split('@')[0]) : [problem.Code];
        Assert.Equal($"{row}: {row.Outcome} {string.Join(' ', row.Codes)}", $"{row}: {(problem.IsQuestion ? "ask" : "refused")} {string.Join(' ', codes)}");
        Assert.NotNull(problem.At);
    }

    /// <summary>A file with one quantity in the place that the context stands for.</summary>
    private static string Entry(ReadingContext place, string text)
    {
        var quantity = new YamlScalar(text, isQuoted: true);
        (string Section, YamlNode Entries) section = place switch
        {
            { Kind: null } => ("gauges", Map(("M-07", Map(("resolution", quantity))))),
            { FitSigns: FitSigns.TightIsNegative } => ("checks", new YamlList([Map(("of", Word(Clearance.ToString())), ("value", quantity))])),
            _ => ("readings", new YamlList([Map(("of", Word(Depth.ToString())), ("value", quantity))])),
        };
        return YamlWriter.Write(Map(("engine", Map(("name", Word("Test")), ("purpose", Word("display")))), section));
    }

    private static Quantity? ValueOf(EngineRecord record, ReadingContext place) =>
        place.Kind is null ? record.Gauges[0].Resolution : place.FitSigns == FitSigns.NotHere ? record.Readings[0].Value : record.Checks[0].Value;

    private static ImportTerms Terms(CorpusString row) => TestFiles.Terms with
    {
        Confirmed = row.Confirm.ToHashSet(StringComparer.Ordinal),
        Decimal = QuantityCorpus.Contexts[row.Context].Decimal,
        Known = _ => Known(QuantityCorpus.Contexts[row.Context]),
    };

    /// <summary>An engine whose dimension or fit makes the place: its limits give the unit of bare numbers and what is plausible.</summary>
    private static EngineRecord Known(ReadingContext place)
    {
        var kind = place.Kind ?? QuantityKind.Length;
        var sets = place.BareUnit is not { } unit ? [] : new List<LimitSet>
        {
            new(place.Plausible is { } limits
                ? new Limits { NewLeast = new Quantity(limits.Least, kind, unit, ""), NewGreatest = new Quantity(limits.Greatest, kind, unit, "") }
                : new Limits { NewLeast = new Quantity(1, kind, unit, "") }),
        };
        var tag = new PieceTag("P-1");
        var at = TestFiles.Terms.At;
        var record = new EngineRecord(new Engine(new EngineName("Test"), Purpose.Display))
        {
            Parts = [new Part(Part)],
            Pieces = [new Piece(tag)],
            Choices = [new Chosen(FactId.New(), at, "owner", tag, Part)],
            Dimensions = [new Dimension(Depth) { Kind = kind, LimitSets = place.FitSigns == FitSigns.NotHere ? sets : [] }],
            Fits = [new Fit(Clearance) { Kind = kind, LimitSets = sets }],
        };
        var figure = record.Index.Figure(place.FitSigns == FitSigns.NotHere ? Depth : Clearance)!;
        if (place.Kind is not null)
            Assert.Equal(place with { Decimal = DecimalMark.Unstated, Confirmed = ReadingContext.None.Confirmed }, ReadingContexts.For(figure, record) with { Confirmed = ReadingContext.None.Confirmed });
        return record;
    }

    private static YamlScalar Word(string text) => new(text, isQuoted: false);

    private static YamlMap Map(params (string Key, YamlNode Value)[] entries) => new([.. entries.Select(e => (Word(e.Key), e.Value))]);
}
