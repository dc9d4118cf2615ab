using Thoubook.Appraisal.Oil;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;
using static Thoubook.Appraisal.Tests.SmallEngine;

namespace Thoubook.Appraisal.Tests;

/// <summary>A pump, two mains and a jet on one gallery, with clearances from readings. Invented figures.</summary>
internal static class OilEngine
{
    public const double Psi = 6894.757293168361;
    public const double Thou = 25.4e-6;

    public static SmallEngine Two(string gaugeDoubt = "0.1 thou", string firstBore = "2.0030 in") => new SmallEngine()
        .Part("crank").Part("main-1").Part("main-2")
        .Gauge("B", gaugeDoubt).Gauge("M", "0.05 thou")
        .Dimension("main-1.bore", "2.0015 in", "2.0025 in").Dimension("main-2.bore", "2.0015 in", "2.0025 in")
        .Dimension("crank.journal-1", "1.9995 in", "2.0005 in").Dimension("crank.journal-2", "1.9995 in", "2.0005 in")
        .Fit("main-1.clearance", [(1, "main-1.bore"), (-1, "crank.journal-1")], "1.5 thou", "2.5 thou", "5 thou")
        .Fit("main-2.clearance", [(1, "main-2.bore"), (-1, "crank.journal-2")], "1.5 thou", "2.5 thou", "5 thou")
        .Reading("main-1.bore", firstBore, gauge: "B").Reading("main-2.bore", "2.0030 in", gauge: "B")
        .Reading("crank.journal-1", "2.0000 in", gauge: "M").Reading("crank.journal-2", "2.0000 in", gauge: "M")
        .Change(r => r with { Circuit = Simple() });

    public static OilCircuit Simple() => new()
    {
        Oil = new OilChoice { Grade = "SAE 40" },
        Nodes = [new NodeDefinition(new NodeName("sump")) { Pressure = Q("0 psi") }],
        Elements =
        [
            Element("pump", ElementKind.Pump, "sump", "gallery", ("displacement", "4 cc")),
            Element("main-1", ElementKind.GroovedBearing, "gallery", "sump", ("diameter", "2 in"), ("clearance", "main-1.clearance"), ("land", "0.5 in")),
            Element("main-2", ElementKind.GroovedBearing, "gallery", "sump", ("diameter", "2 in"), ("clearance", "main-2.clearance"), ("land", "0.5 in")),
        ],
        Gauges = [new OilGauge(new OilGaugeName("main"), new NodeName("gallery"))],
        States = [new OilState(OilState.HotIdle, Q("450 rev/min"), Q("80 °C"))],
    };

    public static ElementDefinition Element(string name, ElementKind kind, string from, string to, params (string Key, string Value)[] values) =>
        new(new ElementName(name), kind, new NodeName(from), new NodeName(to))
        {
            Values = [.. values.Select(v => new ElementValue(v.Key, char.IsAsciiLetter(v.Value[0]) ? new CircuitValue.Taken(FigureName.Of(v.Value)) : new CircuitValue.Given(Read(v.Value, ElementKinds.Of(kind).Key(v.Key)!.Kind))))],
        };

    private static Quantity Read(string text, QuantityKind kind) => Good(QuantityReader.Read(text, new ReadingContext { Kind = kind }));

    public static SmallEngine Circuit(this SmallEngine engine, Func<OilCircuit, OilCircuit> change) => engine.Change(r => r with { Circuit = change(r.Circuit!) });

    public static OilSystem Oil(this SmallEngine engine) => Good(OilSystem.Of(engine.Appraise()));

    public static T Good<T>(Outcome<T> outcome) => outcome.IsOk(out var value, out var problems) ? value : throw new Xunit.Sdk.XunitException(string.Join("\n", problems));

    public static IReadOnlyList<Problem> Bad<T>(Outcome<T> outcome) => outcome.IsOk(out _, out var problems) ? throw new Xunit.Sdk.XunitException("It was taken.") : problems;

    public static GaugeAnswer MainGauge(this OilSystem system) => Good(system.At(system.HotIdle)).Gauges[0];
}
