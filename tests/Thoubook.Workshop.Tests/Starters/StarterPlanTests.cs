using CsCheck;
using NodaTime;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Record.Measures;
using Thoubook.Workshop.Starters;

namespace Thoubook.Workshop.Tests.Starters;

/// <summary>The plans that starters give.</summary>
public sealed class StarterPlanTests
{
    public static TheoryData<string> Keys => [.. Starter.All.Select(s => s.Key)];

    [Theory]
    [MemberData(nameof(Keys))]
    public void OnAnEmptyEngine_ThePlanHasNoFault_FewQuestionsAndFewEdgesByHand(string key)
    {
        var starter = StarterBench.Ok(Starter.Find(key));
        var started = StarterBench.Ok(starter.On(StarterBench.Bare, StarterBench.None));
        var record = StarterBench.Laid(StarterBench.Bare, started);
        var plan = Plan.Of(record);

        Assert.Empty(plan.Faults);
        Assert.Empty(started.Faults);
        Assert.Empty(started.Unplaced);
        Assert.InRange(starter.Questions.Count, 1, 12);
        Assert.All(starter.Questions, q => Assert.True(q.Choices.Count == 0 || q.Choices.Contains(q.Usual)));
        Assert.True(10 * plan.Edges.Count(e => e.Kind == EdgeKind.ByHand) < plan.Edges.Count);
        Assert.All(record.Steps.SelectMany(s => s.After), a => Assert.NotNull(a.Why));
        Assert.All(record.Steps, s => Assert.True(s.Time is not null, $"{s.Name} has no time"));
        Assert.All(record.Fits.SelectMany(f => f.Gap), t => Assert.NotNull(record.Index.Figure(t.Of)));
        Assert.All(record.Dimensions.Concat<Figure>(record.Fits), f => Assert.Empty(f.LimitSets));
        Assert.All(record.Dimensions, d => Assert.NotNull(d.Wear));
        Assert.Contains(record.Steps, s => s.Closes.Count > 0);
        Assert.True(record.Steps.SelectMany(s => s.Holds).Select(h => h.Kind).Distinct().Count() >= 4);
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void WithNothingMissing_EveryStepIsSigned_InTheOrderOfThePlan(string key)
    {
        var record = Done(StarterBench.Laid(StarterBench.Bare, key));
        foreach (var step in Plan.Of(record).InOrder)
        {
            var closeUp = CloseUp.Of(Plan.Of(record), Later);
            Assert.True(closeUp.WantsToSign(step.Name) is [], $"{step.Name} wants {string.Join("; ", closeUp.WantsToSign(step.Name).Select(w => w.Why))}");
            record = record with { Signatures = [.. record.Signatures, .. Looks(step, closeUp.ReliedOn(step.Name))] };
        }
    }

    /// <summary>All is done but one thing, each in turn: the step that closes over it cannot be signed.</summary>
    [Theory]
    [MemberData(nameof(Keys))]
    public void WithAnythingMissing_NoClosingStepCanBeSigned(string key)
    {
        var record = StarterBench.Laid(StarterBench.Bare, key);
        var plan = Plan.Of(record);
        var all = Done(record) with { Signatures = [.. record.Steps.SelectMany(s => Looks(s, []))] };
        foreach (var closing in plan.Steps.Where(s => s.Closes.Count > 0))
        {
            Assert.Empty(CloseUp.Of(Plan.Of(all), Later).WantsToSign(closing.Name));
            var inside = plan.Steps.Where(s => s != closing && plan.SpacesOf(s.Name).Overlaps(closing.Closes)).ToList();
            Assert.NotEmpty(inside);
            WorkItem[] missing =
            [
                .. inside.Select(s => WorkItem.Of(s.Name)),
                .. inside.Append(closing).SelectMany(s => s.Holds.Select(h => WorkItem.Of(s.Name, h))),
                .. record.Joints.Where(j => closing.Joints.Contains(j.Name) || plan.Spaces.Of(j.Name).Overlaps(closing.Closes)).Select(j => WorkItem.Of(j.Name)),
            ];
            foreach (var item in missing)
                Assert.True(CloseUp.Of(Plan.Of(Without(all, item)), Later).WantsToSign(closing.Name).Count > 0, $"{closing.Name} is signed without {item}");
        }
    }

    [Fact]
    public void WhateverIsAnswered_ThereIsAnOrder_AndEveryReferenceIsWhole()
    {
        var drawn = 0;
        Gen.Select(Gen.Int[0, Starter.All.Count - 1].Array[1, 4], Gen.Int[0, 1_000_000].Array[60]).Sample((which, dice) =>
        {
            var record = StarterBench.Bare;
            var at = 0;
            foreach (var starter in which.Select(i => Starter.All[i]))
            {
                var answers = new Dictionary<string, string>();
                foreach (var question in starter.Questions)
                {
                    var roll = dice[at++ % dice.Length];
                    if (roll % 3 == 0 || question.IsPart || question.AtMost is not null)
                        continue;
                    answers[question.Key] = question.Choices.Count > 0 ? question.Choices[roll % question.Choices.Count]
                        : question.Most is { } most ? $"{question.Fewest + (roll % (Math.Min(most, question.Fewest + 5) - question.Fewest + 1))}"
                        : "BSF";
                }

                record = StarterBench.Laid(record, StarterBench.Ok(starter.On(record, answers)));
                drawn++;
            }

            // The same again with other answers may leave something over, which is told; never a circle.
            Assert.Empty(ClosingCheck.Of(record));
            Assert.False(Plan.Of(record).HasCircle);
            if (which.Distinct().Count() == which.Length)
                Assert.Empty(Plan.Of(record).Faults);
            Assert.All(record.Fits.SelectMany(f => f.Gap), t => Assert.NotNull(record.Index.Figure(t.Of)));
        }, iter: 60, threads: 1);
        Assert.True(drawn >= 60);
    }

    /// <summary>Run in any order, the sub-assemblies find each other: all that lies in the crankcase comes before the sump.</summary>
    [Theory]
    [InlineData("sump", "main-bearings", "pistons", "gear-pump", "relief-valve", "cylinder-head", "timing-drive")]
    [InlineData("timing-drive", "cylinder-head", "relief-valve", "gear-pump", "pistons", "main-bearings", "sump")]
    [InlineData("pistons", "cylinder-head", "main-bearings", "sump", "timing-drive", "gear-pump", "relief-valve")]
    public void AllTogether_InWhateverOrderTheyCome_GiveOneOrder(params string[] keys)
    {
        var record = keys.Aggregate(StarterBench.Bare, (engine, key) => StarterBench.Laid(engine, key));
        var plan = Plan.Of(record);

        Assert.Empty(plan.Faults);
        Assert.True(10 * plan.Edges.Count(e => e.Kind == EdgeKind.ByHand) < plan.Edges.Count);
        var order = plan.InOrder.Select(s => s.Name.Text).ToList();
        Assert.All(
            ["mains/locked", "pistons/locked", "pressure-pump/fixings-locked", "relief-valve/fixings-locked", "sump/oil-through", "timing/camshaft-in"],
            first => Assert.True(order.IndexOf(first) is >= 0 and var at && at < order.IndexOf("sump/on"), $"{first} is not before the sump"));
        Assert.True(order.IndexOf("pistons/piston-2-in") < order.IndexOf("head/on"));
        Assert.True(order.IndexOf("mains/crank-in") < order.IndexOf("pistons/cap-1-on"));
        Assert.Equal("crankcase", plan.Spaces.Find(new SpaceName("crankcase/main-2/bearing"))!.In?.Text);
        Assert.Equal("crankcase", plan.Spaces.Find(new SpaceName("pressure-pump/chamber"))!.In?.Text);
    }

    /// <summary>A pump within the sump is no part of the sump's own step, whichever starter came first.</summary>
    [Theory]
    [InlineData("sump", "gear-pump")]
    [InlineData("gear-pump", "sump")]
    public void APumpWithinTheSump_IsPutInBeforeTheSumpIsOn(string first, string then)
    {
        var engine = StarterBench.Read("parts: { crankcase: {}, sump/oil-pump/body: {}, sump/oil-pump/cover: {}, sump/magnet: {} }");
        var before = StarterBench.Ok(StarterBench.Ok(Starter.Find(first)).On(engine, StarterBench.None));
        var started = StarterBench.Ok(StarterBench.Ok(Starter.Find(then)).On(StarterBench.Laid(engine, before), StarterBench.None));
        var plan = Plan.Of(StarterBench.Laid(StarterBench.Laid(engine, before), started));

        Assert.Empty(plan.Faults);
        Assert.Contains(PartName.Of("sump/magnet"), (first == "sump" ? before : started).Unplaced);
        var order = plan.InOrder.Select(s => s.Name.Text).ToList();
        Assert.True(order.IndexOf("sump/oil-pump/cover-locked") is >= 0 and var at && at < order.IndexOf("sump/on"));
    }

    private static OffsetDateTime At { get; } = new LocalDateTime(2026, 3, 1, 8, 0).WithOffset(Offset.Zero);

    private static CloseUpTerms Later { get; } = new(At.ToInstant().Plus(Duration.FromMinutes(1)));

    /// <summary>Every joint made and every hold point accepted.</summary>
    private static EngineRecord Done(EngineRecord record) => record with
    {
        JointStates = [.. record.Joints.Select(j => new JointState(FactId.New(), At, "bench", j.Name, j.Last))],
        Acceptances = [.. record.Steps.SelectMany(s => s.Holds.Select(h => new Accepted(FactId.New(), At, "owner", s.Name, h.What)))],
    };

    private static EngineRecord Without(EngineRecord record, WorkItem item) => record with
    {
        JointStates = [.. record.JointStates.Where(j => WorkItem.Of(j.Joint) != item)],
        Acceptances = [.. record.Acceptances.Where(a => item.Kind != ItemKind.Hold || $"{a.Step}: {a.Hold}" != item.Name)],
        Signatures = [.. record.Signatures.Where(s => WorkItem.Of(s.Step) != item)],
    };

    private static IEnumerable<Signature> Looks(Step step, IReadOnlyList<FactId> relied)
    {
        yield return new Signature(FactId.New(), At, "bench", step.Name) { Photographed = true, ReliesOn = relied };
        if (step.SecondLook)
            yield return new Signature(FactId.New(), At, "owner", step.Name) { SecondLook = true, ReliesOn = relied };
    }
}
