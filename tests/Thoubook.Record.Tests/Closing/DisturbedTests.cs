using CsCheck;
using Thoubook.Record.Closing;
using Thoubook.Record.Pieces;

namespace Thoubook.Record.Tests.Closing;

/// <summary>Something is disturbed in an engine that is closed up and permitted to run: those conclusions fall that led back to it, and no others.</summary>
public sealed class DisturbedTests
{
    private static readonly PieceTag New = new("new");

    [Fact]
    public void WhateverIsDisturbed_ExactlyWhatReliedOnItFalls()
    {
        var (fallen, lines, standing) = (0, 0, 0);
        Gen.Select(RandomPlans.Records, Gen.Int[0, 5], Gen.Int[0, 1000], Gen.Enum<JointStage>(), Gen.Int[0, 1000].Array[3]).Sample((plan, how, which, stage, on) =>
        {
            if (Plan.Of(plan).HasCircle)
                return;
            var record = Permitted(Checked(RandomPlans.AllDone(plan)), on);
            var (after, broken) = Disturb(record, how, which, stage);

            var conclusions = record.Facts.Where(f => f is IConclusion).ToList();
            while (conclusions.Exists(c => ((IConclusion)c).ReliesOn.Any(broken.Contains) && broken.Add(c.Id)))
            {
            }

            foreach (var conclusion in conclusions)
            {
                Assert.Equal(!broken.Contains(conclusion.Id), Standing.Of(conclusion, after).Stands);
                fallen += broken.Contains(conclusion.Id) ? 1 : 0;
            }

            lines += record.Permissions.Count(p => broken.Contains(p.Id));
            standing += record.Permissions.Count(p => !broken.Contains(p.Id));
        }, iter: 200, threads: 1);
        Assert.True(fallen > 300 && lines > 100 && standing > 300, $"{fallen} fell, {lines} lines among them; {standing} lines stood");
    }

    /// <summary>What is done to the engine, and the conclusions and facts that it breaks of itself.</summary>
    private static (EngineRecord After, HashSet<FactId> Broken) Disturb(EngineRecord record, int how, int which, JointStage stage)
    {
        var placed = record.Placings[which % record.Placings.Count];
        var joint = record.Joints.Count == 0 ? null : record.Joints[which % record.Joints.Count];
        switch (how)
        {
            case 0:
                return (record with { Pieces = [.. record.Pieces, new Piece(New)], Placings = [.. record.Placings, new Placed(FactId.New(), Bench.At(900), "bench", New, placed.Part)] }, [placed.Id]);
            case 1:
                return (record with { Liftings = [new Lifted(FactId.New(), Bench.At(900), "bench", placed.Id)] }, [placed.Id]);
            case 2 when joint is not null:
                // A lower state takes higher ones back; any at all disturbs the lines that rest on one.
                var states = record.JointStates.Where(s => s.Joint == joint.Name).ToList();
                var lines = record.Permissions.Where(p => states.Exists(s => p.ReliesOn.Contains(s.Id)));
                return (record with { JointStates = [.. record.JointStates, new JointState(FactId.New(), Bench.At(900), "bench", joint.Name, stage)] },
                    [.. states.Where(s => s.Stage > stage).Select(s => s.Id), .. lines.Select(l => l.Id)]);
            case 3:
                var signature = record.Signatures[which % record.Signatures.Count];
                return (record with { Undoings = [new Undone(FactId.New(), Bench.At(900), "bench", signature.Id)] }, [signature.Id]);
            case 4:
                // Work on a piece takes what was concluded of it in place, and leaves it there.
                return (record with { Works = [new Work(FactId.New(), Bench.At(900), "machinist", placed.Piece, "lapped") { Altered = ["width"] }] },
                    [.. record.Facts.OfType<IConclusion>().Where(c => c.ReliesOn.Contains(placed.Id)).Select(c => ((Fact)c).Id)]);
            default:
                var facts = record.Facts.ToList();
                var struck = facts[which % facts.Count];
                return (record with { StrikeOuts = [new StrikeOut(FactId.New(), Bench.At(900), "owner", struck.Id, "written twice")] },
                    [struck.Id]);
        }
    }

    /// <summary>A fit of each two parts, checked with them in place.</summary>
    private static EngineRecord Checked(EngineRecord record) => record with
    {
        Checks =
        [
            .. Enumerable.Range(0, RandomPlans.PartCount - 1).Select(i => new Check(FactId.New(), Bench.At(800), "bench", new FigureName(RandomPlans.Part(i), "float"), Bench.Q("2 thou"))
            {
                ReliesOn = [record.Index.PlacedIn(RandomPlans.Part(i))!.Id, record.Index.PlacedIn(RandomPlans.Part(i + 1))!.Id],
            }),
        ],
    };

    /// <summary>Every line granted, some written ones among them.</summary>
    private static EngineRecord Permitted(EngineRecord record, int[] on)
    {
        WorkItem[] items = [.. Enumerable.Range(0, RandomPlans.PartCount).Select(i => WorkItem.Of(RandomPlans.Part(i))), .. record.Joints.Select(j => WorkItem.Of(j.Name)), .. record.Steps.Select(s => WorkItem.Of(s.Name))];
        record = record with { PermissionItems = [.. on.Select((o, i) => new PermissionItem(new PermissionName($"line-{i}")) { On = [items[o % items.Length]] })] };
        var permission = PermissionToRun.Of(CloseUp.Of(Plan.Of(record), new(Bench.At(850).ToInstant())), []);
        Assert.All(permission.Lines, l => Assert.True(l.CanBeGranted, $"{l.Ground.Line}: {l.Ground.Missing}"));
        return record with
        {
            Permissions = [.. permission.Lines.Select(l => new PermissionLine(FactId.New(), Bench.At(850), "owner", l.Ground.Line, record.Engine.Purpose) { ReliesOn = l.Ground.ReliesOn })],
        };
    }
}
