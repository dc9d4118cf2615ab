using CsCheck;
using Thoubook.Record.Closing;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;

namespace Thoubook.Record.Tests.Closing;

/// <summary>Small plans of every shape: parts in nested spaces, joints between them, steps in any order.</summary>
internal static class RandomPlans
{
    public const int PartCount = 8;
    public const int SpaceCount = 4;

    public static PartName Part(int i) => PartName.Of(i < 4 ? $"case/p{i}" : $"head/p{i}");

    public static SpaceName Space(int i) => new($"space-{i}");

    /// <summary>Each part placed by its own step, each joint made by one or two, each space closed by one; a few steps by the way.</summary>
    public static Gen<EngineRecord> Records { get; } =
        from lies in Gen.Int[-1, SpaceCount - 1].Array[PartCount]
        from nested in Gen.Int[-1, SpaceCount - 2].Array[SpaceCount]
        from joined in Gen.Select(Gen.Int[0, PartCount - 1], Gen.Int[0, PartCount - 1]).Array[0, 4]
        from split in Gen.Bool.Array[4]
        from locked in Gen.Bool.Array[4]
        from after in Gen.Select(Gen.Int[0, PartCount - 1], Gen.Int[0, PartCount - 1]).Array[0, 3]
        from held in Gen.Bool.Array[SpaceCount]
        from looks in Gen.Int[-1, SpaceCount - 1].Array[2]
        select Make(lies, nested, [.. joined.Where(j => j.Item1 != j.Item2)], split, locked, after, held, looks);

    private static EngineRecord Make(int[] lies, int[] nested, (int A, int B)[] joined, bool[] split, bool[] locked, (int A, int B)[] after, bool[] held, int[] looks)
    {
        var joints = joined.Select((j, i) => new Joint(new JointName($"joint-{i}")) { Parts = [Part(j.A), Part(j.B)], Tightening = "hand tight", Locking = locked[i] ? "wire" : null }).ToList();
        var steps = new List<Step>();
        for (var p = 0; p < PartCount; p++)
        {
            steps.Add(Bench.Step($"place-{p}") with
            {
                Places = [Part(p)],
                After = Bench.After([.. after.Where(a => Math.Max(a.A, a.B) == p && a.A != a.B).Select(a => $"place-{Math.Min(a.A, a.B)}").Distinct()]),
            });
        }

        for (var j = 0; j < joints.Count; j++)
        {
            if (split[j])
                steps.Add(Bench.Step($"pull-{j}", StepKind.Join) with { Joints = [joints[j].Name], Brings = JointStage.PulledUp });
            steps.Add(Bench.Step($"make-{j}", StepKind.Join) with { Joints = [joints[j].Name] });
        }

        for (var s = 0; s < SpaceCount; s++)
        {
            steps.Add(Bench.Step($"close-{s}", StepKind.Close) with
            {
                Closes = [Space(s)],
                Spoils = [$"gasket {s}"],
                Holds = held[s] ? [new HoldPoint(HoldKind.Judgement, "turns free")] : [],
            });
        }

        for (var l = 0; l < looks.Length; l++)
        {
            if (looks[l] >= 0)
                steps.Add(Bench.Step($"look-{l}", StepKind.Inspect) with { In = [Space(looks[l])] });
        }

        return Bench.Record([.. steps]) with
        {
            Joints = joints,
            Parts = [.. Enumerable.Range(0, PartCount).Select(p => new Part(Part(p)))],
            Spaces = [.. Enumerable.Range(0, SpaceCount).Select(s => new Space(Space(s))
            {
                In = nested[s] >= s ? null : nested[s] < 0 ? null : Space(nested[s]),
                Parts = [.. Enumerable.Range(0, PartCount).Where(p => lies[p] == s).Select(Part)],
            })],
        };
    }

    /// <summary>Everything placed, made, accepted and signed in an order of the plan.</summary>
    public static EngineRecord AllDone(EngineRecord record)
    {
        var minute = 0;
        foreach (var step in Plan.Of(record).InOrder)
        {
            foreach (var part in step.Places)
            {
                var tag = new PieceTag($"of {part.Leaf}");
                record = record with { Pieces = [.. record.Pieces, new Piece(tag)], Placings = [.. record.Placings, new Placed(FactId.New(), Bench.At(++minute), "bench", tag, part)] };
            }

            foreach (var name in step.Joints)
            {
                var joint = record.Joints.First(j => j.Name == name);
                record = record with
                {
                    JointStates = [.. record.JointStates, new JointState(FactId.New(), Bench.At(++minute), "bench", name, step.Brings ?? joint.Last)
                    {
                        ReliesOn = [.. joint.Parts.Select(p => record.Index.PlacedIn(p)!.Id)],
                    }],
                };
            }

            record = record with
            {
                Acceptances = [.. record.Acceptances, .. step.Holds.Select(h => new Accepted(FactId.New(), Bench.At(++minute), "owner", step.Name, h.What))],
            };
            var closeUp = CloseUp.Of(Plan.Of(record), new(Bench.At(minute).ToInstant()));
            Assert.Empty(closeUp.WantsToSign(step.Name));
            record = record with { Signatures = [.. record.Signatures, new Signature(FactId.New(), Bench.At(++minute), "owner", step.Name) { ReliesOn = closeUp.ReliedOn(step.Name) }] };
        }

        return record;
    }
}
