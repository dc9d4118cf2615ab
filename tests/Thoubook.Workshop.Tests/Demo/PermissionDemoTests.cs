using Thoubook.Record.Closing;

namespace Thoubook.Workshop.Tests.Demo;

/// <summary>Permission to run Sandpiper six, and what it would take to strip it.</summary>
public sealed class PermissionDemoTests(DemoWorkshop demo) : IClassFixture<DemoWorkshop>
{
    [Fact]
    public void TheOil_HasALineForEachState_ThatRestsOnTheReadings()
    {
        var permission = demo.Permission("Sandpiper six");
        var circuit = demo.Engine("Sandpiper six").Circuit!;
        var oil = permission.Lines.Where(l => l.Ground.Line.Kind == LineKind.Oil).ToList();
        Assert.Equal(circuit.States.Select(s => s.Name), oil.Select(l => l.Ground.Line.Name));
        Assert.All(oil, l => Assert.True(l.Ground.ReliesOn.Count > 10));
        Assert.False(permission.IsGranted);
    }
}
