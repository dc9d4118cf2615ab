using CsCheck;
using Thoubook.Record.Closing;
using Thoubook.Record.Parts;

namespace Thoubook.Record.Tests.Closing;

public sealed class PlanTests
{
    private static readonly PartName Gears = PartName.Of("case/pump/gears");
    private static readonly PartName Cover = PartName.Of("case/pump/cover");

    private static EngineRecord Pump() => Bench.Record(
        Bench.Step("cover-on", StepKind.Close) with { Places = [Cover], Joints = Bench.Joints("cover"), Brings = JointStage.PulledUp, Closes = Bench.Spaces("pump") },
        Bench.Step("lock", StepKind.Join) with { Joints = Bench.Joints("cover"), Brings = JointStage.Locked },
        Bench.Step("tighten", StepKind.Join) with { Joints = Bench.Joints("cover"), Brings = JointStage.Tightened },
        Bench.Step("gears-in") with { Places = [Gears] },
        Bench.Step("float", StepKind.Measure) with { In = Bench.Spaces("pump"), Needs = [Gears], Measures = [FigureName.Of("case/pump.float")] })
        with
    {
        Parts = [new Part(Gears), new Part(Cover), new Part(PartName.Of("case/body"))],
        Spaces = [new Space(new SpaceName("pump")) { Parts = [Gears], In = new SpaceName("case") }],
        Joints = [new Joint(new JointName("cover")) { Parts = [Cover, PartName.Of("case/body")], Tightening = "8 lbf ft, oiled", Locking = "tab washers" }],
    };

    private static string[] Order(Plan plan) => Bench.Names(plan.InOrder);

    [Fact]
    public void Order_IsFoundFromPartsJointsAndSpaces()
    {
        var plan = Plan.Of(Pump());
        Assert.Equal(["gears-in", "float", "cover-on", "tighten", "lock"], Order(plan));
        Assert.DoesNotContain(plan.Edges, e => e.Kind == EdgeKind.ByHand);
        Assert.Equal("it lies in pump, which cover-on closes", plan.Before(new StepName("cover-on")).Single(e => e.First.Name.Text == "gears-in").Why);
    }

    [Fact]
    public void HoldOnAFit_ComesAfterWhatMeasuresIt()
    {
        var record = Pump();
        var plan = Plan.Of(record with
        {
            Steps = [.. record.Steps, Bench.Step("fit-pump") with { Holds = [new HoldPoint(HoldKind.Fit, "float") { Figure = FigureName.Of("case/pump.float") }] }],
        });
        Assert.Contains(plan.Before(new StepName("fit-pump")), e => e is { Kind: EdgeKind.Hold, First.Name.Text: "float" });
    }

    [Fact]
    public void Nested_WhatLiesInTheInnerSpaceComesBeforeTheOuterIsClosed()
    {
        var record = Pump();
        var plan = Plan.Of(record with { Steps = [.. record.Steps, Bench.Step("sump-on", StepKind.Close) with { Closes = Bench.Spaces("case") }] });
        foreach (var inside in new[] { "gears-in", "float", "cover-on" })
            Assert.Contains(plan.Before(new StepName("sump-on")), e => e.First.Name.Text == inside && e.Kind == EdgeKind.Space);
    }

    [Fact]
    public void Circle_IsToldWithItsStepsAndReasons()
    {
        var record = Pump();
        var plan = Plan.Of(record with
        {
            Steps = [.. record.Steps.Select(s => s.Name.Text == "gears-in" ? s with { After = [new ComesAfter(new StepName("lock"), "the gears come from the other pump")] } : s), Bench.Step("later") with { After = Bench.After("lock") }],
        });
        Assert.True(plan.HasCircle);
        Assert.Null(Schedule.Of(plan));
        var circle = Assert.Single(plan.Faults, f => f.Kind == PlanFaultKind.Circle);
        Assert.Contains("gears-in comes before cover-on: it lies in pump", circle.What, StringComparison.Ordinal);
        Assert.Contains("lock comes before gears-in: the gears come from the other pump", circle.What, StringComparison.Ordinal);
        Assert.DoesNotContain(new StepName("later"), circle.Steps);
    }

    [Fact]
    public void Faults_NameWhatContradictsAndWhatIsAlone()
    {
        var plan = Plan.Of(Bench.Record(
            Bench.Step("one") with { Places = [Gears] },
            Bench.Step("two") with { Places = [Gears], In = Bench.Spaces("pump"), Closes = Bench.Spaces("pump") },
            Bench.Step("alone"),
            Bench.Step("three") with { Needs = [Cover] })
            with
        { Spaces = [new Space(new SpaceName("box"))], Joints = [new Joint(new JointName("loose")) { Parts = [Gears, Cover] }] });
        string[] told =
        [
            "case/pump/gears is put in place by one and two. One step places a part; the others need it.",
            "two closes pump and lies in it: it would shut itself in.",
            "alone has nothing to do with any other step: it can be done at any time, and be forgotten.",
            "No step closes box.",
            "No step makes the joint loose.",
            "No step puts case/pump/cover in place, and the plan needs it.",
        ];
        foreach (var what in told)
            Assert.Contains(plan.Faults, f => f.What == what);
    }

    [Fact]
    public void BlankedPart_ItsStepIsNotCalledFor()
    {
        var record = Pump();
        var plan = Plan.Of(record with { Parts = [new Part(Gears) { Intent = PartIntent.Deferred }] });
        Assert.False(plan.IsCalledFor(plan.Find(new StepName("gears-in"))!));
        Assert.Equal(0, Schedule.Of(plan)!.Of(new StepName("gears-in")).EarliestFinish);
    }

    [Fact]
    public void AddingASpace_NeverMakesFewerEdges()
    {
        Gen.Select(RandomPlans.Records, Gen.Int[0, 7].Array[0, 4], Gen.Int[-1, 3]).Sample((record, parts, around) =>
        {
            var added = new Space(new SpaceName("added")) { Parts = [.. parts.Select(p => RandomPlans.Part(p)).Distinct()], In = around < 0 ? null : RandomPlans.Space(around) };
            var before = Plan.Of(record).Edges.Select(e => (e.First.Name, e.Then.Name)).ToHashSet();
            var after = Plan.Of(record with { Spaces = [.. record.Spaces, added] }).Edges.Select(e => (e.First.Name, e.Then.Name)).ToHashSet();
            Assert.Superset(before, after);
        }, iter: 300);
    }
}
