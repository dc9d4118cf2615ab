using Thoubook.Mechanics.Circuits;

namespace Thoubook.Mechanics.Tests.Circuits;

/// <summary>What cannot be solved is named before it is tried.</summary>
public sealed class InsolubleCircuitTests
{
    private static readonly string[] Abc = ["A", "B", "C"];

    [Fact]
    public void NoReservoir_IsNamed() =>
        Named(CircuitFaultKind.NoReservoir, [], [], [new("A"), new("B")], new Pipe("pipe", 0, 1, 0.01, 1, 0));

    [Fact]
    public void ANodeThatNothingMeets_IsNamed() =>
        Named(CircuitFaultKind.NodeNobodyFeeds, [], ["B"], [Sump, new("A"), new("B")], new Pipe("pipe", 0, 1, 0.01, 1, 0), new Pipe("plugged", 1, 2, 0.01, 1, 0) { Blanked = true });

    [Fact]
    public void NodesJoinedToNoReservoir_AreNamed() =>
        Named(CircuitFaultKind.IslandWithoutReservoir, [], ["B", "C"], [Sump, .. Free()], new Pipe("pipe", 0, 1, 0.01, 1, 0), new Pipe("apart", 2, 3, 0.01, 1, 0));

    [Fact]
    public void APumpOntoAnOpenEnd_IsNamed() =>
        Named(CircuitFaultKind.OpenEnd, ["pump"], ["A"], [Sump, new("A")], new Pump("pump", 0, 1, 1e-5, 0));

    [Fact]
    public void APumpDrawingFromAnOpenEnd_IsNamed() =>
        Named(CircuitFaultKind.OpenEnd, ["pump"], ["A"], [Sump, new("A")], new Pump("pump", 1, 0, 1e-5, 0));

    [Fact]
    public void APumpIntoPipesThatOilCannotLeave_IsNamed() =>
        Named(CircuitFaultKind.NoWayOut, ["pump"], Abc, [Sump, .. Free()], new Pump("pump", 0, 1, 1e-5, 0), new Pipe("AB", 1, 2, 0.01, 1, 0), new LaminarPassage("BC", 2, 3, 1e-15), new Consumer("governor", 3, 0, 1e-6, 1e4));

    [Fact]
    public void AValveTurnedRound_IsNoWayOut() =>
        Named(CircuitFaultKind.NoWayOut, ["pump"], ["A", "B"], [Sump, new("A"), new("B")], new Pump("pump", 0, 1, 1e-5, 0), new Orifice("jet", 1, 2, 0.002, 0.7), Relief("relief", 0, 2));

    [Fact]
    public void AValveIntoAClosedSpace_IsNoWayOut() =>
        Named(CircuitFaultKind.NoWayOut, ["pump"], ["A", "B"], [Sump, new("A"), new("B")], new Pump("pump", 0, 1, 1e-5, 0), Relief("relief", 1, 2), new LaminarPassage("shut", 2, 0, 0));

    [Fact]
    public void APumpDrawingWhereNoOilComes_IsNamed() =>
        Named(CircuitFaultKind.NoWayIn, ["pump"], ["A", "B"], [Sump, new("A"), new("B")], new Pump("pump", 1, 0, 1e-5, 0), new Pipe("suction", 2, 1, 0.01, 1, 0), Relief("check", 2, 0));

    [Fact]
    public void TwoPumpsOneAfterTheOther_AreNamed() =>
        Named(CircuitFaultKind.PumpsInSeries, ["first", "second"], ["A", "B"], [Sump, new("A"), new("B")], new Pump("first", 0, 1, 1e-5, 0), new Pipe("between", 1, 2, 0.01, 1, 0), new Pump("second", 2, 0, 1e-5, 0));

    [Fact]
    public void AGreaterPumpBehindALesser_IsNamed_ThoughAValveCouldSpill() =>
        Named(CircuitFaultKind.PumpsInSeries, ["first", "second"], ["A"], [Sump, new("A")], new Pump("first", 0, 1, 1e-5, 0), Relief("spill", 1, 0), new Pump("second", 1, 0, 2e-5, 0));

    [Fact]
    public void AConsumerThatOilCannotReach_IsNamed() =>
        Named(CircuitFaultKind.ConsumerCannotBeFed, ["governor"], ["A"], [Sump, new("A"), new("B")], new Consumer("governor", 1, 0, 1e-6, 1e4), Relief("valve", 1, 2), new Pipe("pipe", 2, 0, 0.01, 1, 0));

    [Fact]
    public void NamesAndSizes_AreNamed()
    {
        var faults = FaultsOf([Sump, new("A"), new("A"), new("T", double.NaN)], new Pipe("pipe", 0, 1, -0.01, 1, 0), new Pipe("pipe", 0, 9, 0.01, 1, 0), new Orifice("ring", 1, 1, 0.002, 0.7), new Pipe("rough", 0, 2, 0.01, 1, 0.005));
        Assert.Equal(
            [(CircuitFaultKind.DuplicateName, "A"), (CircuitFaultKind.DuplicateName, "pipe"), (CircuitFaultKind.UnphysicalSize, "T"), (CircuitFaultKind.UnphysicalSize, "pipe"), (CircuitFaultKind.UnknownNode, "pipe"), (CircuitFaultKind.FromIsTo, "ring"), (CircuitFaultKind.UnphysicalSize, "rough")],
            faults.Select(f => (f.Kind, f.Elements.Concat(f.Nodes).First())));
        Assert.All(faults, f => Assert.NotEmpty(f.Words));
    }

    public static TheoryData<string, CircuitElement[]> Soluble => new()
    {
        { "the pump leaks", [new Pump("pump", 0, 1, 1e-5, 1e-14)] },
        { "a valve opens", [new Pump("pump", 0, 1, 1e-5, 0), Relief("relief", 1, 0)] },
        { "the second pump may starve", [new Pump("first", 0, 1, 1e-5, 0), new Pump("second", 1, 0, 2e-5, 0) { InletLimit = 3e4 }] },
        { "what the lesser second pump leaves is spilt", [new Pump("first", 0, 1, 2e-5, 0), Relief("spill", 1, 0), new Pump("second", 1, 0, 1e-5, 0)] },
        { "the pump may starve", [new Pump("pump", 1, 0, 1e-5, 0) { InletLimit = 3e4 }] },
        { "a valve that only leaks", [new Pump("pump", 0, 1, 1e-5, 0), Relief("relief", 0, 1) with { SeatGap = 1e-5 }] },
    };

    [Theory]
    [MemberData(nameof(Soluble))]
    public void WhatHasAWay_IsSolved(string why, CircuitElement[] elements)
    {
        var solver = new CircuitSolver(Assert.IsType<CircuitOutcome.Compiled>(Circuit.Compile([Sump, new("A")], elements)).Circuit);
        var report = solver.Solve(new OperatingPoint(100, 0.01, 870));
        Assert.True(report.Converged && report.Iterations <= 40, $"{why}: {report}");
        Assert.True(double.IsFinite(solver.Pressure(1)));
    }

    private static CircuitNode Sump => new("sump", 0);

    private static CircuitNode[] Free() => [.. Abc.Select(name => new CircuitNode(name))];

    private static ReliefValve Relief(string name, int from, int to) => new(name, from, to, 0.01, 30, 5000, 0.003, 0.65);

    private static IReadOnlyList<CircuitFault> FaultsOf(CircuitNode[] nodes, params CircuitElement[] elements) =>
        Assert.IsType<CircuitOutcome.Insoluble>(Circuit.Compile(nodes, elements)).Faults;

    private static void Named(CircuitFaultKind kind, string[] elements, string[] where, CircuitNode[] nodes, params CircuitElement[] all)
    {
        var fault = Assert.Single(FaultsOf(nodes, all));
        Assert.Equal((kind, string.Join(", ", elements), string.Join(", ", where)), (fault.Kind, string.Join(", ", fault.Elements), string.Join(", ", fault.Nodes)));
        Assert.All(elements.Concat(where), name => Assert.Contains(name, fault.Words, StringComparison.Ordinal));
    }
}
