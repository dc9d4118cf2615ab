using Thoubook.Appraisal;
using Thoubook.Appraisal.Oil;
using Thoubook.Record;
using Thoubook.Record.Circuits;

namespace Thoubook.Workshop.Tests.Demo;

/// <summary>The oil of the demo engines is that of such an engine, and what <c>demo/README.md</c> says was planted in it is found.</summary>
public sealed class OilDemoTests(DemoWorkshop demo) : IClassFixture<DemoWorkshop>
{
    private const string Six = "Sandpiper six";
    private const double Psi = 6894.757293168361;

    [Fact]
    public void SandpiperSix_HasItsWholeCircuit()
    {
        var circuit = demo.Engine(Six).Circuit!;

        Assert.True(circuit.Elements.Count >= 70, $"{circuit.Elements.Count} elements");
        Assert.Equal(7, circuit.Elements.Count(e => e.Kind == ElementKind.GroovedBearing && e.Name.Text.StartsWith("main-", StringComparison.Ordinal)));
        Assert.Equal(6, circuit.Elements.Count(e => e.Kind == ElementKind.CrankDrilling));
        Assert.Equal(3, circuit.Elements.Count(e => e.Kind == ElementKind.GearPump));
        Assert.Equal(2, circuit.Elements.Count(e => e.Value("need") is not null));
        Assert.Equal(4, circuit.Elements.Count(e => e.Kind == ElementKind.PistonValve));
        Assert.Contains(circuit.Elements, e => e is { Kind: ElementKind.Consumer, Blanked: true });
        Assert.Single(circuit.Elements.Where(e => e.Kind == ElementKind.GearPump).Select(e => ((CircuitValue.Given)e.Value("speed-ratio")!).Quantity.Si).Distinct());
    }

    [Theory]
    [InlineData("hot idle", 10, 20)]
    [InlineData("cruise", 40, 62)]
    [InlineData("cold start", 40, 75)]
    public void SandpiperSix_MainGauge_IsThatOfSuchAnEngine(string name, double least, double greatest)
    {
        var state = State(name);
        var main = state.Answer.Gauges[0].Pressure;

        Assert.InRange(main.Value, least * Psi, greatest * Psi);
        Assert.InRange(main.Band, 0.3 * Psi, 0.6 * main.Value);
    }

    [Fact]
    public void SandpiperSix_AtCruise_TheMainStageLifts_AndEveryPumpKeepsUp()
    {
        var answer = State("cruise").Answer;

        Assert.True(answer.Valves.Single(v => v.Element.Element.Name.Text == "main-stage").IsOpen);
        Assert.InRange(answer.Gauges[1].Pressure.Value, 3 * Psi, 10 * Psi);
        var scavenge = answer.Pumps.Select(p => p.Scavenge).OfType<ScavengeAnswer>().ToList();
        Assert.Equal(2, scavenge.Count);
        Assert.All(scavenge, s => Assert.True(s.Ratio > 1.2, $"scavenge ratio {s.Ratio}"));
        Assert.All(answer.Pumps, p => Assert.True(p.Filling > 0.99, $"{p.Element.Element.Name}: filling {p.Filling}"));
    }

    [Theory]
    [InlineData("hot idle", 0, 0.01)]
    [InlineData("cruise", 0.1, 0.4)]
    [InlineData("cold start", 0.6, 1)]
    public void SandpiperSix_WhatTheMainStageLetsGo_IsAShareOfTheDelivery(string state, double least, double greatest) =>
        Assert.InRange(State(state).Answer.Pumps.Single(p => p.Scavenge is null).Margin!.Value, least, greatest);

    [Fact]
    public void SandpiperSix_Oil_SaysWhatWasPlantedAndNothingElse()
    {
        var system = SystemOf(Six);
        var said = system.States().Select(Ok)
            .SelectMany(s => s.Gauges.Where(g => g.Verdict is not (null or OilVerdict.Enough)).Select(g => new Said($"{s.State.Name}, {g.Gauge.Gauge.Name}", g.Verdict!.Value.Word())))
            .Append(new Said("hot idle, costs the most", Ok(system.Costs(system.HotIdle))[0].Figure.Name.ToString()))
            .Append(new Said("hot idle, measure next", Ok(system.MeasureNext(system.HotIdle))[0].Figure.ToString()))
            .ToList();

        Assert.Equal(PlantedFaultsTests.TableUnder("### Sandpiper six, its oil"), said);
    }

    [Fact]
    public void Wagtail_HasItsCircuitByTheStarter_AndItIsSolved()
    {
        var system = SystemOf("Wagtail");
        var answer = Ok(system.At(system.HotIdle));

        Assert.NotEmpty(answer.Gauges);
        Assert.True(answer.Gauges[0].Pressure.Value > 0);
    }

    private StateAnswer State(string name) => SystemOf(Six).States().Select(Ok).Single(s => s.State.Name == name);

    private OilSystem SystemOf(string engine) => Ok(OilSystem.Of(Appraiser.Appraise(demo.Engine(engine))));

    private static T Ok<T>(Outcome<T> outcome) => outcome.IsOk(out var value, out var problems) ? value : throw new Xunit.Sdk.XunitException(string.Join('\n', problems));
}
