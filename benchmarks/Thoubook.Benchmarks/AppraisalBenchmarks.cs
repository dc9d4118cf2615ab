using BenchmarkDotNet.Attributes;
using NodaTime;
using Thoubook.Appraisal;
using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;
using Thoubook.Record.Quantities;

namespace Thoubook.Benchmarks;

/// <summary>A whole engine of 2,000 dimensions with 20,000 readings and 1,200 fits, appraised from its record in memory. The aim is 60 ms.</summary>
[MemoryDiagnoser]
public class AppraisalBenchmarks
{
    private const int Dimensions = 2000;
    private const int ReadingsEach = 10;
    private const int Fits = 1200;
    private EngineRecord _record = null!;

    [GlobalSetup]
    public void Setup() => _record = LargeEngine();

    /// <summary>From a record that nothing was looked up in yet.</summary>
    [Benchmark]
    public int Appraise() => Appraiser.Appraise(_record with { Sequence = 1 }).InTheWay.Count;

    public static EngineRecord LargeEngine()
    {
        var random = new Random(1);
        var at = Instant.FromUtc(2026, 3, 1, 9, 0).WithOffset(Offset.Zero);
        var gauges = Enumerable.Range(0, 6).Select(i => new Gauge(new GaugeTag($"M-{i}")) { Uncertainty = Inches(0.0001), Repeatability = Inches(0.00005), Resolution = Inches(0.0001) }).ToArray();
        var parts = new List<Part>();
        var pieces = new List<Piece>();
        var choices = new List<Chosen>();
        var dimensions = new List<Dimension>();
        var readings = new List<Reading>();
        for (var i = 0; i < Dimensions; i++)
        {
            var hole = i % 2 == 0;
            var part = PartName.Of($"engine/group-{i / 50}/part-{i}");
            parts.Add(new Part(part) { Material = hole ? "cast aluminium" : "steel" });
            var tag = new PieceTag($"P-{i}");
            pieces.Add(new Piece(tag));
            choices.Add(new Chosen(FactId.New(), at, "bench", tag, part));
            var name = new FigureName(part, "size");
            dimensions.Add(new Dimension(name)
            {
                LimitSets = [new LimitSet(hole
                    ? new Limits { NewLeast = Inches(2.5010), NewGreatest = Inches(2.5016), WornGreatest = Inches(2.5030) }
                    : new Limits { NewLeast = Inches(2.4990), NewGreatest = Inches(2.4995), WornLeast = Inches(2.4975) })],
            });
            var size = hole ? 2.5012 + (random.NextDouble() * 0.0012) : 2.4993 - (random.NextDouble() * 0.0012);
            for (var j = 0; j < ReadingsEach; j++)
                readings.Add(new Reading(FactId.New(), at, "bench", tag, name, Inches(Math.Round(size + (random.NextDouble() * 0.0002), 4))) { Place = new PlaceName($"{(char)('A' + (j % 3))}{1 + (j % 2)}"), Gauge = gauges[i % 6].Tag, Temperature = new Quantity(292.15, QuantityKind.Temperature, TradeUnit.Default(QuantityKind.Temperature), "292.15 K") });
        }

        var fits = Enumerable.Range(0, Fits).Select(i =>
        {
            var (hole, shaft) = (dimensions[2 * (i % (Dimensions / 2))].Name, dimensions[(2 * (i % (Dimensions / 2))) + 1].Name);
            return new Fit(new FigureName(hole.Part, $"running-{i}")) { Gap = [new GapTerm(1, hole), new GapTerm(-1, shaft)], LimitSets = [new LimitSet(new Limits { NewLeast = Inches(0.0015), NewGreatest = Inches(0.0026), WornGreatest = Inches(0.0045) })] };
        }).ToList();

        return new EngineRecord(new Engine(new EngineName("Large"), Purpose.StandRun)
        {
            Temperatures = [State("hot", 353.15), State("coldest start", 263.15)],
        })
        {
            Parts = parts,
            Pieces = pieces,
            Choices = choices,
            Gauges = gauges,
            Dimensions = dimensions,
            Fits = fits,
            Readings = readings,
        };
    }

    private static TemperatureState State(string name, double kelvin) => new(name, new Quantity(kelvin, QuantityKind.Temperature, TradeUnit.Default(QuantityKind.Temperature), $"{kelvin} K"), []);

    private static Quantity Inches(double inches) => new(inches * 0.0254, QuantityKind.Length, TradeUnit.Inch, $"{inches} in");
}
