using Thoubook.OutsideChecks;
using Thoubook.Record.Closing;

namespace Thoubook.Record.Tests.Closing;

/// <summary>Every trap of assembly that is told of can be written in the record, and none can be closed over.</summary>
public sealed class TrapTests
{
    public static TheoryData<string> Names { get; } = [.. Trap.All.Select(t => t.Name)];

    /// <summary>For each of its safeguards: all else seen to, this one is wanted by name, and nothing but it; when it is seen to as well, nothing is.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Trap_IsCaughtBeforeTheClosingStepIsSigned(string name)
    {
        var trap = Trap.All.Single(t => t.Name == name);
        var closedOver = 0;
        foreach (var safeguard in trap.Safeguards)
        {
            var wants = new TrapBench(trap, safeguard).WantsToSign();
            closedOver += wants.Count == 0 ? 1 : 0;
            Assert.Contains(TrapBench.Item(safeguard), wants.Select(w => w.Item));
            Assert.All(wants, w => Assert.Contains(w.Item, new[] { TrapBench.Item(safeguard), WorkItem.Of(TrapBench.StepOf(safeguard)) }));
            Assert.All(wants, w => Assert.NotEmpty(w.Why));
        }

        Outside.Check($"ways to close over: {name}", 0, closedOver, 0, trap.Source, trap.Provenance);
        var seenTo = new TrapBench(trap, null);
        Assert.Equal([], seenTo.WantsToSign().Select(w => w.Why));
        Assert.DoesNotContain(seenTo.Faults, f => f.Kind is PlanFaultKind.Circle or PlanFaultKind.Contradiction);
    }

    [Fact]
    public void Table_HasEveryRowExpressedOnce_AndEveryKindOfTrap()
    {
        Assert.Equal(Trap.All.Select(t => t.Name), Trap.Rows("expressed-traps.csv").Select(r => r["trap"]));
        Assert.Equal(129, Trap.All.Select(t => t.Name).Distinct().Count());
        Assert.All(Trap.All, t => Assert.NotEmpty(t.Safeguards));
        Assert.Equal(
            ["access", "cleanliness", "enclosure", "identity", "locking", "lubrication", "measurement", "order", "orientation", "sealing"],
            Trap.All.Select(t => t.Kind).Distinct().Order(StringComparer.Ordinal));
    }
}
