using Thoubook.Files.EngineFiles;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Workshop.Starters;

namespace Thoubook.Workshop.Tests.Starters;

/// <summary>The small demo engine is closed up by starters alone.</summary>
public sealed class WagtailTests
{
    [Fact]
    public void ItsPlan_IsWhatTheStartersGive_FromTheAnswersThatStandAboveIt()
    {
        Assert.Equal(Starter.All.Select(s => s.Key).Order(), Wagtail.Runs.Select(r => r.Starter.Key).Order());
        var unplaced = new List<PartName>();
        var closed = Wagtail.Runs.Aggregate(Wagtail.Begun(Wagtail.Record), (engine, run) =>
        {
            var started = StarterBench.Ok(run.Starter.On(engine, run.Answers));
            Assert.Empty(started.Faults);
            unplaced = started.Unplaced.Union(unplaced).ToList();
            return StarterBench.Laid(engine, started);
        });

        Assert.Equal(EngineFile.Write(closed), EngineFile.Write(Wagtail.Record));

        // What no starter knows of is told.
        var placed = closed.Steps.SelectMany(s => s.Places).ToHashSet();
        Assert.Equal(["cylinder/drain-cock", "cylinder/hopper"], unplaced.Where(p => !placed.Contains(p)).Select(p => p.Path).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void ItsPlan_HasNoFault_AndFewEdgesByHand_EachWithAReason()
    {
        var plan = Plan.Of(Wagtail.Record);

        Assert.Empty(plan.Faults);
        Assert.False(plan.HasCircle);
        Assert.True(plan.Steps.Count >= 70, $"{plan.Steps.Count} steps");
        var byHand = plan.Edges.Where(e => e.Kind == EdgeKind.ByHand).ToList();
        Assert.True(10 * byHand.Count < plan.Edges.Count, $"{byHand.Count} of {plan.Edges.Count}");
        Assert.All(plan.Steps.SelectMany(s => s.After), a => Assert.False(string.IsNullOrWhiteSpace(a.Why)));
    }

    [Fact]
    public void ItsOwnParts_AreUsed_NotDoubled()
    {
        var placed = Wagtail.Record.Steps.SelectMany(s => s.Places).ToList();
        Assert.All(
            ["bed/bearing-flywheel-side", "bed/bearing-caps", "bed/shims", "crank", "piston/third-ring", "piston/pin-screw", "rod/big-end-shims", "cylinder/base-joint", "head/exhaust-valve", "cam-gear", "cam-gear/stud"],
            p => Assert.Contains(PartName.Of(p), placed));
        Assert.Single(Wagtail.Record.Fits, f => f.Gap.Any(t => t.Of.ToString() == "crank.journal-pulley-side"));
        Assert.Contains(Wagtail.Record.Steps.Single(s => s.Name.Text == "mains/cap-2-on").Holds, h => h.Figure.ToString() == "bed.clearance-pulley-side");
    }
}
