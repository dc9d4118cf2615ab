using Thoubook.Record.Closing;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;

namespace Thoubook.Record.Tests.Closing;

/// <summary>Modification states, parts that go together, and what stands in the stead of others.</summary>
public sealed class PartsApartTests
{
    private static readonly PartName Pump = PartName.Of("late-pump");
    private static readonly PartName Drive = PartName.Of("late-drive");
    private static readonly PartName Old = PartName.Of("early-pump");
    private static readonly PartName Heater = PartName.Of("heater");
    private static readonly PartName Plate = PartName.Of("heater-plate");
    private static readonly SpaceName Case = new("case");

    private static EngineRecord Record(params string[] states)
    {
        var record = Bench.Record(
            Bench.Step("pump-in") with { Places = [Pump] },
            Bench.Step("drive-in") with { Places = [Drive], Needs = [Pump] },
            Bench.Step("old-in") with { Places = [Old] },
            Bench.Step("plate-on") with { Places = [Plate] },
            Bench.Step("shut", StepKind.Close) with { Closes = [Case] })
            with
        {
            Parts = [new Part(Pump) { ModificationState = "mod 12" }, new Part(Drive), new Part(Old) { DeletedBy = "mod 12" }, new Part(Heater) { Intent = PartIntent.Blanked, InItsStead = "heater-plate" }, new Part(Plate) { FunctionUnknown = true }],
            Spaces = [new Space(Case) { Parts = [Pump, Drive, Old, Heater, Plate] }],
            Together = [new Together(new TogetherName("late")) { Parts = [Pump, Drive], Why = "the teeth are finer" }],
            Tools = [new KeptTool(new ToolName("Cam nut spanner")) { Kept = "drawer 3" }],
        };
        return record with { Engine = record.Engine with { States = states } };
    }

    private static CloseUp Of(EngineRecord record, CloseUpTerms? terms = null) => CloseUp.Of(Plan.Of(record), terms ?? new(default));

    private static EngineRecord Sign(EngineRecord record, params string[] steps) => record with { Signatures = [.. record.Signatures, .. steps.Select(s => new Signature(FactId.New(), Bench.At(0), "owner", new StepName(s)))] };

    private static string[] Missing(EngineRecord record) => [.. Of(record).BeforeYouClose(Case).Missing.Select(m => $"{m.Want.Kind.Word()}: {m.Want.Why}")];

    [Fact]
    public void ThePlan_FollowsTheStates()
    {
        var late = Plan.Of(Record("Mod 12"));
        Assert.Equal([true, true, false], new[] { Pump, Drive, Old }.Select(late.IsFitted));
        var early = Plan.Of(Record("mod 4"));
        Assert.Equal([false, true, true], new[] { Pump, Drive, Old }.Select(early.IsFitted));
        Assert.False(early.IsCalledFor(early.Find(new StepName("pump-in"))!));
        Assert.Contains(early.Faults, f => f.What == "drive-in needs late-pump, which is not on this engine.");
        var unsaid = Plan.Of(Record());
        Assert.Equal([true, true, true], new[] { Pump, Drive, Old }.Select(unsaid.IsFitted));
    }

    [Fact]
    public void SomeOfThemFittedAndSomeNot_IsMissingBeforeTheSpaceIsClosed()
    {
        var record = Sign(Record("mod 4"), "drive-in", "old-in", "plate-on");
        Assert.Equal(["together: late-pump and late-drive go together or not at all, for the teeth are finer: late-drive to be fitted, late-pump not"], Missing(record));
        Assert.Contains(Of(record).WantsToSign(new StepName("shut")), w => w.Kind == WantKind.Together);
        Assert.Contains(Plan.Of(record).Faults, f => f.Kind == PlanFaultKind.Contradiction && f.What.EndsWith("late-pump is not to be fitted.", StringComparison.Ordinal));

        // All of them, or none.
        Assert.Empty(Missing(Sign(Record("mod 12"), "pump-in", "drive-in", "plate-on")));
        var none = Sign(Record("mod 4"), "old-in", "plate-on");
        Assert.Empty(Missing(none with { Parts = [.. none.Parts.Select(p => p.Name == Drive ? p with { Intent = PartIntent.NotOnThisEngine } : p)] }));
    }

    [Fact]
    public void ABlankedPart_WantsWhatStandsInItsStead()
    {
        var record = Sign(Record("mod 12"), "pump-in", "drive-in");
        Assert.Equal(["part: heater is blanked, and in its stead heater-plate is not in place", "part: heater-plate is not in place"], Missing(record).Order(StringComparer.Ordinal));
        Assert.Empty(Missing(Sign(record, "plate-on")));

        var inWords = record with { Parts = [.. record.Parts.Select(p => p.Name == Heater ? p with { InItsStead = "a plug of brass" } : p)] };
        Assert.Contains("part: heater is blanked, and nothing says that a plug of brass is in its stead", Missing(Sign(inWords, "plate-on")));
        var agreed = Sign(inWords, "plate-on") with { Departures = [new Departure(FactId.New(), Bench.At(0), "owner", "heater blanked", "cracked") { Item = WorkItem.Of(Heater), Purposes = [Purpose.StandRun] }] };
        Assert.True(Of(agreed).BeforeYouClose(Case).MayBeClosed);
        var byAStep = Sign(inWords with { Joints = [new Joint(new JointName("plug")) { Parts = [Heater, Drive] }], Steps = [.. inWords.Steps, Bench.Step("plug-in", StepKind.Join) with { Places = [Heater], Joints = Bench.Joints("plug") }] }, "plate-on", "plug-in");
        Assert.DoesNotContain(Missing(byAStep), m => m.Contains("heater is blanked", StringComparison.Ordinal));
    }

    [Fact]
    public void WhatIsNotSimplyFitted_IsListed_AndAToolSaysWhereItIsKept()
    {
        var apart = PartsApart.Of(Of(Sign(Record("mod 12"), "pump-in", "drive-in")));
        Assert.Equal(([], [Old], [Heater], [Plate]), (apart.OfAnotherState.Select(p => p.Name).ToArray(), apart.Deleted.Select(p => p.Name).ToArray(), apart.InStead.Select(p => p.Part.Name).ToArray(), apart.FunctionUnknown.Select(p => p.Name).ToArray()), Same);
        Assert.NotNull(apart.InStead[0].Want);
        Assert.True(apart.Together[0].IsWhole);
        Assert.Equal(Pump, PartsApart.Of(Of(Record("mod 4"))).OfAnotherState[0].Name);

        var record = Record("mod 12");
        var wants = Of(record with { Steps = [record.Steps[0] with { Tools = ["cam nut spanner"] }] }, new(default) { ToolsAway = ["cam nut spanner"] }).WantsOf(new StepName("pump-in"));
        Assert.Equal("cam nut spanner is not at hand; kept: drawer 3", Assert.Single(wants).Why);
    }

    private static bool Same((PartName[] A, PartName[] B, PartName[] C, PartName[] D) one, (PartName[] A, PartName[] B, PartName[] C, PartName[] D) other) =>
        one.A.SequenceEqual(other.A) && one.B.SequenceEqual(other.B) && one.C.SequenceEqual(other.C) && one.D.SequenceEqual(other.D);
}
