using BenchmarkDotNet.Attributes;
using NodaTime;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;
using Thoubook.Record.Quantities;

namespace Thoubook.Benchmarks;

/// <summary>A plan of 2,000 steps, half of it signed: what can be done now after one more signature, the order found afresh.</summary>
[MemoryDiagnoser]
public class ClosingBenchmarks
{
    private static readonly OffsetDateTime At = Instant.FromUtc(2026, 3, 1, 9, 0).WithOffset(Offset.Zero);
    private EngineRecord _record = null!;
    private EngineRecord _changed = null!;

    [GlobalSetup]
    public void SetUp()
    {
        _record = Record();
        var next = CloseUp.Of(Plan.Of(_record), new(At.ToInstant())).Now[0].Step.Name;
        _changed = _record with { Signatures = [.. _record.Signatures, new Signature(FactId.New(), At, "bench", next)] };
    }

    [Benchmark]
    public int Readiness() => CloseUp.Of(Plan.Of(_changed with { Sequence = 1 }), new(At.ToInstant())).Now.Count;

    [Benchmark]
    public double Times() => Schedule.Of(Plan.Of(_changed with { Sequence = 1 }))!.Length;

    /// <summary>Ten casings, each of twenty spaces, each of three parts placed, three joints made, one closed, and so on.</summary>
    private static EngineRecord Record()
    {
        var (parts, joints, spaces, steps) = (new List<Part>(), new List<Joint>(), new List<Space>(), new List<Step>());
        QuantityReader.Read("12 min", ReadingContext.None).IsOk(out var time, out _);
        for (var c = 0; c < 10; c++)
        {
            var casing = new SpaceName($"casing-{c}");
            spaces.Add(new Space(casing));
            for (var s = 0; s < 20; s++)
            {
                var space = new SpaceName($"casing-{c}/space-{s}");
                var at = PartName.Of($"casing-{c}/space-{s}");
                spaces.Add(new Space(space) { In = casing, Parts = [at] });
                for (var p = 0; p < 4; p++)
                {
                    parts.Add(new Part(at.Child($"part-{p}")));
                    steps.Add(new Step(new StepName($"{space}/place-{p}")) { Time = time, Places = [parts[^1].Name] });
                }

                for (var j = 0; j < 3; j++)
                {
                    joints.Add(new Joint(new JointName($"{space}/joint-{j}")) { Parts = [at.Child($"part-{j}"), at.Child($"part-{j + 1}")], Tightening = "by figure", Locking = "tab" });
                    steps.Add(new Step(new StepName($"{space}/make-{j}")) { Time = time, Kind = StepKind.Join, Joints = [joints[^1].Name] });
                }

                steps.Add(new Step(new StepName($"{space}/oil")) { Time = time, Kind = StepKind.Lubricate, In = [space] });
                steps.Add(new Step(new StepName($"{space}/close")) { Time = time, Kind = StepKind.Close, Closes = [space], Holds = [new HoldPoint(HoldKind.Judgement, "turns free")] });
            }

            for (var more = 0; more < 19; more++)
                steps.Add(new Step(new StepName($"casing-{c}/look-{more}")) { Time = time, Kind = StepKind.Inspect, In = [casing] });
            steps.Add(new Step(new StepName($"casing-{c}/close")) { Time = time, Kind = StepKind.Close, Closes = [casing] });
        }

        var record = new EngineRecord(new Engine(new EngineName("Great many"), Purpose.StandRun))
        {
            Parts = parts,
            Joints = joints,
            Spaces = spaces,
            Steps = steps,
            Pieces = [.. parts.Select(p => new Piece(new PieceTag(p.Name.Path)) { For = p.Name })],
            Choices = [.. parts.Select(p => new Chosen(FactId.New(), At, "bench", new PieceTag(p.Name.Path), p.Name))],
        };
        record = record with
        {
            Placings = [.. parts.Take(parts.Count / 2).Select(p => new Placed(FactId.New(), At, "bench", new PieceTag(p.Name.Path), p.Name))],
        };
        record = record with
        {
            JointStates = [.. joints.Take(joints.Count / 2).Select(j => new JointState(FactId.New(), At, "bench", j.Name, JointStage.Locked) { ReliesOn = [.. j.Parts.Select(p => record.Index.PlacedIn(p)!.Id)] })],
            Acceptances = [.. steps.Take(steps.Count / 2).Where(s => s.Holds.Count > 0).Select(s => new Accepted(FactId.New(), At, "bench", s.Name, s.Holds[0].What))],
        };
        var closeUp = CloseUp.Of(Plan.Of(record), new(At.ToInstant()));
        return record with
        {
            Signatures = [.. steps.Take(steps.Count / 2).Select(s => new Signature(FactId.New(), At, "bench", s.Name) { ReliesOn = closeUp.ReliedOn(s.Name) })],
        };
    }
}
