using Thoubook.Appraisal.Oil;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using static Thoubook.Appraisal.Tests.OilEngine;
using static Thoubook.Appraisal.Tests.SmallEngine;

namespace Thoubook.Appraisal.Tests;

/// <summary>What is supposed and cannot be, or changes nothing; and what else is said rather than left out.</summary>
public sealed class OilTrialTests
{
    private static readonly FigureName First = FigureName.Of("main-1.clearance");
    private static readonly FigureName Bore = FigureName.Of("main-1.bore");

    [Fact]
    public void SupposedImpossible_IsRefusedInTheUnitOfItsLimits()
    {
        var problem = Refused(new OilTrial("") { Set = new Dictionary<FigureName, double> { [First] = -1 * Thou } });
        Assert.Equal(("supposed-impossible", "main-1.clearance", "-1.0000 thou"), (problem.Code, problem.Field, problem.Found));
        Assert.Equal("Nothing would be left of it. It is the clearance of main-1: above 0 thou, up to 500 thou.", problem.Allowed);

        // So is a change by which a fit closes, of the fit or of a dimension of it; one that leaves something is taken.
        Assert.Equal("supposed-impossible", Refused(new OilTrial("") { ChangeBy = new Dictionary<FigureName, double> { [First] = -3.5 * Thou } }).Code);
        Assert.Equal("main-1.clearance", Refused(new OilTrial("") { ChangeBy = new Dictionary<FigureName, double> { [Bore] = -3.5 * Thou } }).Field);
        Assert.True(Two().Oil().Suppose(new OilTrial("") { ChangeBy = new Dictionary<FigureName, double> { [Bore] = -2.5 * Thou } }).IsOk(out _, out _));

        // What could not be before is no fault of another trial.
        var bound = Two(firstBore: "1.9990 in").Oil();
        Assert.True(bound.Suppose(new OilTrial("") { Set = new Dictionary<FigureName, double> { [FigureName.Of("main-2.clearance")] = 2 * Thou } }).IsOk(out _, out _));

        static Problem Refused(OilTrial trial) => Assert.Single(Bad(Two().Oil().Suppose(trial)));
    }

    [Fact]
    public void SupposedButNotTaken_IsSaid()
    {
        var engine = Two().Dimension("crank.throw", "1 in", "2 in")
            .Circuit(c => c with { Elements = [.. c.Elements, Element("jet", ElementKind.Jet, "gallery", "sump", ("bore", "crank.throw")) with { Blanked = true }, Element("port", ElementKind.Jet, "gallery", "sump", ("bore", "1 mm")) with { Blanked = true }] });
        var system = engine.Oil();
        string[] Of(OilTrial trial) => [.. Good(system.Try(trial, system.HotIdle)).Remarks];
        Dictionary<FigureName, double> To(string name, double value) => new() { [FigureName.Of(name)] = value };

        Assert.Equal(["crank.throw is taken only by jet, blanked: nothing here hangs on it."], Of(new OilTrial("") { Set = To("crank.throw", 0.03) }));
        Assert.Equal(["port is blanked: nothing here hangs on its bore."], Of(new OilTrial("") { Sizes = [new TrialSize(new("port"), "bore", 0.002)] }));
        Assert.Empty(Of(new OilTrial("") { Sizes = [new TrialSize(new("port"), "bore", 0.002)], Opened = [new("port")] }));
        Assert.Empty(Of(new OilTrial("") { Set = To("main-1.bore", 2.002 * 0.0254) }));
        Assert.Empty(Of(new OilTrial("") { ChangeBy = To("crank.journal-2", -Thou) }));
        Assert.Equal(["main-2.clearance is taken only by main-2, blanked: nothing here hangs on it."], Of(new OilTrial("") { Set = To("main-2.clearance", 2 * Thou), Blanked = [new("main-2")] }));
        var lost = Two().Dimension("crank.throw", "1 in", "2 in").Oil();
        Assert.Equal("The circuit does not take crank.throw: nothing here hangs on it.", Assert.Single(lost.NotUsed(new OilTrial("") { ChangeBy = To("crank.throw", 0.001) })));
    }

    [Fact]
    public void AGapThatClosesHot_IsARemarkOfTheTrial()
    {
        var engine = Two().Engine(e => e with { Temperatures = [new TemperatureState(TemperatureState.Hot, Q("80 °C"), [])] })
            .Change(r => r with { Parts = [.. r.Parts.Select(p => p.Name.Leaf == "crank" ? p with { Material = "cast aluminium" } : p)] });
        var system = engine.Oil();
        var trial = new OilTrial("tight") { ChangeBy = new Dictionary<FigureName, double> { [First] = -2.9 * Thou } };
        Assert.Contains("nothing is left of its clearance", Assert.Single(Good(system.Try(trial, system.HotIdle)).Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public void ADifferenceOfNothing_IsNought()
    {
        var system = Two().Circuit(c => c with { Elements = [.. c.Elements, Element("port", ElementKind.Jet, "gallery", "sump", ("bore", "0.0005 mm")) with { Blanked = true }] }).Oil();
        Assert.Equal(0, Good(system.Try(new OilTrial("") { Opened = [new("port")] }, system.HotIdle)).Difference.Value);
        Assert.NotEqual(0, Good(system.Try(new OilTrial("") { ChangeBy = new Dictionary<FigureName, double> { [First] = 0.01 * Thou } }, system.HotIdle)).Difference.Value);
    }

    [Fact]
    public void EndsThatLeadNowhere_AreNamed()
    {
        IReadOnlyList<Caution> Of(Func<OilCircuit, OilCircuit> change) => Good(Two().Circuit(change).Oil() is var system ? system.At(system.HotIdle) : default!).Cautions;
        static OilCircuit With(OilCircuit c, params ElementDefinition[] more) => c with { Elements = [.. c.Elements, .. more] };
        var dead = Element("line", ElementKind.Pipe, "gallery", "sumo", ("bore", "0.2 in"), ("length", "10 in"));

        var caution = Assert.Single(Of(c => With(c, dead)));
        Assert.Equal("circuit-open-end", caution.Code);
        Assert.StartsWith("Open end: line leads to sumo", caution.Text, StringComparison.Ordinal);

        // A gauge there, a plugged element behind it, a reservoir: no open end.
        Assert.Empty(Of(c => With(c, dead) with { Gauges = [.. c.Gauges, new OilGauge(new("far"), new("sumo"))] }));
        Assert.Empty(Of(c => With(c, dead, Element("plug", ElementKind.Jet, "sumo", "sump", ("bore", "1 mm")) with { Blanked = true })));
        Assert.Empty(Of(c => With(c, dead) with { Nodes = [.. c.Nodes, new NodeDefinition(new("sumo")) { Pressure = Q("0 psi") }] }));

        Assert.Equal("No element meets galery. Lead one to it, or leave it out.", Assert.Single(Of(c => c with { Nodes = [.. c.Nodes, new NodeDefinition(new("galery")) { Height = Q("2 in") }] })).Text);
        Assert.Equal("The far gauge taps port, which no element in use meets: it is left out.", Assert.Single(Of(c => With(c, Element("plug", ElementKind.Jet, "gallery", "port", ("bore", "1 mm")) with { Blanked = true }) with { Gauges = [.. c.Gauges, new OilGauge(new("far"), new("port"))] })).Text);
    }

    [Fact]
    public void FlowTestThatCannotBeExpected_IsReadAllTheSame()
    {
        var test = new FlowTest(FactId.New(), Two().Now(), "bench", Q("30 psi"), Q("30 °C"), Q("1 l/min")) { FedAt = new("gallery") };
        var reading = Assert.Single(Two().Circuit(c => c with { Oil = OilChoice.NotSaid }).Change(r => r with { FlowTests = [test] }).Oil().FlowTests());
        Assert.Null(reading.Expected);
        Assert.False(reading.Calibrates);
        Assert.Contains("does not say which oil", reading.Says, StringComparison.Ordinal);
    }

    [Fact]
    public void FlowTest_NamesTheWayThatHidesTheBearings()
    {
        FlowTestExpected With(string bore) => Good(Two().Circuit(c => c with
        {
            FlowTest = new(new("gallery"), Q("30 psi"), Q("30 °C")),
            Elements =
            [
                .. c.Elements,
                Element("rockers", ElementKind.Pipe, "gallery", "rail", ("bore", "8 mm"), ("length", "0.4 m")),
                Element("restrictor", ElementKind.Jet, "rail", "box", ("bore", bore)),
                Element("jet-1", ElementKind.Jet, "box", "sump", ("bore", "3 mm")),
                Element("jet-2", ElementKind.Jet, "box", "sump", ("bore", "3 mm")),
            ],
        }).Oil().FlowTestExpected());

        var most = With("2 mm").Most!.Value;
        Assert.Equal("restrictor", most.Element.Name.Text);
        Assert.Equal(With("2 mm").Each.Where(e => e.Element.Name.Text.StartsWith("jet", StringComparison.Ordinal)).Sum(e => e.Flow.Value), most.Flow, 1e-6 * most.Flow);
        Assert.Null(With("0.02 mm").Most);
    }

    /// <summary>Every doubt that is assumed is told of, as large as it is taken.</summary>
    [Fact]
    public void AssumedDoubts_AreThoseOfTheBand_AndOfThePage()
    {
        var page = File.ReadAllText(Path.Combine(Root, "docs", "oil.md"));
        Assert.All(OilDoubts.All, d => Assert.Contains($"| {d.Source.Name} | {d.Stated} |", page, StringComparison.Ordinal));
        Assert.All(OilDoubts.All, d => Assert.Contains((d.Value >= 1 || d == OilDoubts.Lying ? d.Value : 100 * d.Value).ToString("0.##", System.Globalization.CultureInfo.InvariantCulture), d.Stated, StringComparison.Ordinal));

        var system = Two().Circuit(c => c with { Elements = [.. c.Elements, Element("jet", ElementKind.Jet, "gallery", "sump", ("bore", "1 mm"))] }).Oil();
        var doubts = OilSystem.Doubt(Good(system.At(system.HotIdle)));
        Assert.Equal(["0.12 of eccentricity, the same for all", "4 K, the same for all", "5 %, the same for all", "8 % of its flow, the same for all"], doubts.Select(d => OilDoubts.Stated(d.Source)).OfType<string>().Order(StringComparer.Ordinal));
        Assert.All(doubts.Where(d => d.Source.Kind == Estimates.SourceKind.Assumed), d => Assert.NotNull(OilDoubts.Stated(d.Source)));
    }

    private static string Root
    {
        get
        {
            var at = AppContext.BaseDirectory;
            while (!File.Exists(Path.Combine(at, "thoubook.slnx")))
                at = Path.GetDirectoryName(at)!;
            return at;
        }
    }
}
