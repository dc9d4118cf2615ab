using CsCheck;
using Thoubook.Record.Closing;
using Thoubook.Record.Pieces;

namespace Thoubook.Record.Tests.Closing;

/// <summary>What holds for every plan.</summary>
public sealed class ClosingPropertyTests
{
    /// <summary>Whatever is ready is done in any order; whenever something is closed, all inside is looked at afresh, without the graph.</summary>
    [Fact]
    public void NoOrder_EverSignsAClosingStepWithSomethingInsideThatIsNotAccepted()
    {
        var closings = 0;
        Gen.Select(RandomPlans.Records, Gen.Int[0, 1000].Array[40]).Sample((plan, choices) =>
        {
            if (Plan.Of(plan).HasCircle)
                return;
            var record = plan;
            foreach (var choice in choices)
            {
                var closeUp = CloseUp.Of(Plan.Of(record), new(default));
                var may = record.Steps.Where(s => !closeUp.IsDone(s.Name)).ToList();
                if (may.Count == 0)
                    break;
                record = TryToSign(record, may[choice % may.Count], choice, ref closings);
            }
        }, iter: 150, threads: 1);
        Assert.True(closings > 100, $"{closings} closings");
    }

    private static EngineRecord TryToSign(EngineRecord record, Step step, int choice, ref int closings)
    {
        // Some of what a step is to bring about is left undone.
        var done = record with
        {
            JointStates = [.. record.JointStates, .. step.Joints.Where(_ => choice % 5 != 0).Select(j => new JointState(FactId.New(), Bench.At(0), "bench", j, choice % 7 == 0 ? JointStage.Placed : step.Brings ?? record.Joints.First(k => k.Name == j).Last))],
            Acceptances = [.. record.Acceptances, .. step.Holds.Where(_ => choice % 3 != 0).Select(h => new Accepted(FactId.New(), Bench.At(0), "owner", step.Name, h.What))],
        };
        var closeUp = CloseUp.Of(Plan.Of(done), new(default));
        if (closeUp.WantsToSign(step.Name).Count > 0)
            return done;
        foreach (var space in step.Closes)
        {
            closings++;
            Assert.True(AllIsWell(done, space));
            Assert.All(step.Holds, h => Assert.Contains(done.Acceptances, a => a.Step == step.Name && a.Hold == h.What));
        }

        return done with { Signatures = [.. done.Signatures, new Signature(FactId.New(), Bench.At(0), "owner", step.Name) { ReliesOn = closeUp.ReliedOn(step.Name) }] };
    }

    /// <summary>By the definitions alone: every part and joint that lies in the space or in one within it, and every step in it.</summary>
    private static bool AllIsWell(EngineRecord record, SpaceName closed)
    {
        var spaces = new HashSet<SpaceName> { closed };
        while (record.Spaces.Any(s => s.In is { } around && spaces.Contains(around) && spaces.Add(s.Name)))
        {
        }

        var parts = record.Spaces.Where(s => spaces.Contains(s.Name)).SelectMany(s => s.Parts).ToHashSet();
        var signed = record.Signatures.Select(s => s.Step).ToHashSet();
        return parts.All(p => signed.Contains(record.Steps.First(s => s.Places.Contains(p)).Name))
            && record.Joints.Where(j => j.Parts.All(parts.Contains)).All(j => record.JointStates.LastOrDefault(s => s.Joint == j.Name)?.Stage == j.Last)
            && record.Steps.Where(s => s.In.Any(spaces.Contains)).All(s => signed.Contains(s.Name));
    }

    /// <summary>Of all sets of signed steps that leave nothing standing on what is undone, none with the covers off is smaller.</summary>
    [Fact]
    public void WhatComesOff_IsTheLeast()
    {
        Gen.Select(RandomPlans.Records, Gen.Int[0, RandomPlans.SpaceCount - 1], Gen.Int[6, 14]).Sample((record, space, signed) =>
        {
            var plan = Plan.Of(record);
            if (plan.HasCircle)
                return;
            var done = plan.InOrder.Take(signed).Select(s => s.Name).ToList();
            var closeUp = CloseUp.Of(Plan.Of(record with { Signatures = [.. done.Select(s => new Signature(FactId.New(), Bench.At(0), "owner", s))] }), new(default));
            var got = closeUp.ToGetBackIn(RandomPlans.Space(space)).Steps.ToHashSet();

            var around = plan.Spaces.Upwards(RandomPlans.Space(space));
            var covers = done.Where(d => plan.Find(d)!.Closes.Any(around.Contains)).ToList();
            var edges = plan.Edges.Where(e => done.Contains(e.First.Name) && done.Contains(e.Then.Name)).Select(e => (done.IndexOf(e.First.Name), done.IndexOf(e.Then.Name))).ToList();
            var must = covers.Sum(c => 1 << done.IndexOf(c));
            var least = Enumerable.Range(0, 1 << done.Count)
                .Where(set => (set & must) == must && edges.TrueForAll(e => (set & (1 << e.Item1)) == 0 || (set & (1 << e.Item2)) != 0))
                .MinBy(set => System.Numerics.BitOperations.PopCount((uint)set));
            Assert.Equal(Enumerable.Range(0, done.Count).Where(i => (least & (1 << i)) != 0).Select(i => done[i]).ToHashSet(), got);
        }, iter: 60);
    }

    /// <summary>A piece (a gear, a gasket, a shim) is swapped: those conclusions fall that lead back to its placing, and no others.</summary>
    [Fact]
    public void SwappingAPiece_VoidsExactlyWhatReliedOnIt()
    {
        var fallen = 0;
        Gen.Select(RandomPlans.Records, Gen.Int[0, RandomPlans.PartCount - 1]).Sample((plan, swapped) =>
        {
            if (Plan.Of(plan).HasCircle)
                return;
            var record = RandomPlans.AllDone(plan);
            var placed = record.Placings.First(p => p.Part == RandomPlans.Part(swapped));
            var relying = new HashSet<FactId> { placed.Id };
            foreach (var conclusion in record.JointStates.Concat<Fact>(record.Signatures))
            {
                if (((IConclusion)conclusion).ReliesOn.Any(relying.Contains))
                    relying.Add(conclusion.Id);
            }

            var after = record with
            {
                Pieces = [.. record.Pieces, new Piece(new PieceTag("new"))],
                Placings = [.. record.Placings, new Placed(FactId.New(), Bench.At(900), "bench", new PieceTag("new"), placed.Part)],
            };
            foreach (var conclusion in record.JointStates.Concat<Fact>(record.Signatures))
                Assert.Equal(!relying.Contains(conclusion.Id), Standing.Of(conclusion, after).Stands);
            fallen += relying.Count - 1;

            // The step that placed it, those that made its joints and those that closed it in are among them.
            var lies = Plan.Of(plan).Spaces.Of(placed.Part);
            foreach (var signature in record.Signatures)
            {
                var step = plan.Steps.First(s => s.Name == signature.Step);
                var isConcerned = step.Places.Contains(placed.Part) || step.Closes.Any(lies.Contains)
                    || plan.Joints.Any(j => j.Parts.Contains(placed.Part) && (step.Joints.Contains(j.Name) || step.Closes.Any(Plan.Of(plan).Spaces.Of(j.Name).Contains)));
                Assert.Equal(isConcerned, relying.Contains(signature.Id));
            }
        }, iter: 100, threads: 1);
        Assert.True(fallen > 100, $"{fallen} fell");
    }
}
