using Thoubook.Appraisal.Oil;
using Thoubook.Record.Circuits;
using Thoubook.Web.Drawings.Circuits;
using Thoubook.Web.Sheets;

namespace Thoubook.Web.Drawings.Oil;

/// <summary>From what the oil system answers to what is drawn of it.</summary>
internal static class CircuitSketching
{
    public static CircuitSketch Of(StateAnswer state, OilCircuit circuit, OilUnits units)
    {
        var answer = state.Answer;
        var at = answer.Nodes.Select((n, i) => (n.Name, i)).ToDictionary(p => p.Name, p => p.i);
        return new CircuitSketch
        {
            Title = $"Oil circuit, {state.State.Name}",
            Spoken = Spoken(state, units),
            PressureUnit = units.Pressure.Symbol,
            FlowUnit = units.IsImperial ? "gal/min" : units.Flow.Symbol,
            FigureUnit = units.Clearance.Symbol,
            PressureDigits = units.PressureDigits,
            Nodes = [.. answer.Nodes.Select(n => new SketchNode(circuit.Node(n.Name)?.Label ?? Said.Words(n.Name.Text), n.Pressure / units.Pressure.Factor) { IsReservoir = n.IsReservoir })],
            Elements = [.. answer.Elements.Select(e => Element(e, answer, at, units))],
            Gauges =
            [
                .. state.Gauges.Where(g => at.ContainsKey(g.Gauge.Gauge.At)).Select(g => new SketchGauge(g.Gauge.Gauge.Name.Text, at[g.Gauge.Gauge.At], units.PressureOf(g.Gauge.Pressure.Value))
                {
                    Band = $"{(units.BandOf(g.Gauge)[0] == '−' ? "" : "± ")}{units.BandOf(g.Gauge)} {units.Pressure.Symbol}",
                    Least = g.Limit?.Least?.Si / units.Pressure.Factor,
                    Greatest = g.Limit?.Greatest?.Si / units.Pressure.Factor,
                }),
            ],
        };
    }

    /// <summary>A circuit that nobody has solved, or none at all: its shape, in dashes.</summary>
    public static CircuitSketch Imagined(OilCircuit circuit, string title)
    {
        var nodes = circuit.NodeNames;
        var at = nodes.Select((n, i) => (n, i)).ToDictionary(p => p.n, p => p.i);
        return new CircuitSketch
        {
            Title = title,
            Spoken = $"{title}: {Said.Count(circuit.Elements.Count, "element")}, not to height.",
            PressureUnit = "",
            FlowUnit = "",
            IsImagined = true,
            Nodes = [.. nodes.Select(n => new SketchNode(circuit.Node(n)?.Label ?? Said.Words(n.Text), ImaginedHeights.Of(circuit, n)) { IsReservoir = circuit.Node(n)?.Pressure is not null })],
            Elements = [.. circuit.Elements.Select(e => new SketchElement(NameOf(e), at[e.From], at[e.To], MarkOf(e, e.Kind is ElementKind.Pump or ElementKind.GearPump && e.Value("need") is not null ? ElementRole.ScavengePump : ElementRole.Passage)) { IsBlanked = e.Blanked })],
            Gauges = [.. circuit.Gauges.Where(g => at.ContainsKey(g.At)).Select(g => new SketchGauge(g.Name.Text, at[g.At], ""))],
        };
    }

    public static string NameOf(ElementDefinition element) => element.Label ?? Said.Words(element.Name.Text);

    private static SketchElement Element(ElementAnswer of, OilAnswer answer, Dictionary<NodeName, int> at, OilUnits units) =>
        new(NameOf(of.Element), at[of.Element.From], at[of.Element.To], MarkOf(of.Element, of.Role))
        {
            Flow = of.Flow / units.Flow.Factor,
            Figure = of.Role == ElementRole.Consumer && of.Deciding is { } figure ? units.ClearanceOf(figure.Value.Value) : null,
            Says = SaysOf(of, answer, units),
            IsMeasured = of.Deciding?.IsMeasured ?? true,
            IsBlanked = of.Element.Blanked,
        };

    private static string? SaysOf(ElementAnswer of, OilAnswer answer, OilUnits units)
    {
        if (answer.Pumps.FirstOrDefault(p => p.Element.Element.Name == of.Element.Name) is { } pump)
            return pump.Scavenge is { } scavenge ? $"{OilUnits.Fixed(scavenge.Ratio, 1)} times what arrives" : $"slip {OilUnits.InHundred(pump.Slip)}";
        if (answer.Valves.FirstOrDefault(v => v.Element.Element.Name == of.Element.Name) is not { } valve)
            return null;
        return valve.IsOpen ? $"open {units.ClearanceOf(valve.Lift)} {units.Clearance.Symbol}" : $"shut, {units.PressureOf(valve.Cracking)} to open";
    }

    private static SketchMark MarkOf(ElementDefinition element, ElementRole role) => element.Kind switch
    {
        ElementKind.Pump or ElementKind.GearPump => role == ElementRole.ScavengePump ? SketchMark.ScavengePump : SketchMark.Pump,
        ElementKind.GroovedBearing or ElementKind.HalfGroovedBearing or ElementKind.HoleFedBearing => SketchMark.Bearing,
        ElementKind.Jet => SketchMark.Jet,
        ElementKind.Annulus or ElementKind.Slot => SketchMark.Gap,
        ElementKind.DiscValve or ElementKind.PoppetValve or ElementKind.BallValve or ElementKind.PistonValve or ElementKind.ReducingValve or ElementKind.CheckValve => SketchMark.Valve,
        ElementKind.Strainer => SketchMark.Strainer,
        ElementKind.Filter => SketchMark.Filter,
        ElementKind.Cooler => SketchMark.Cooler,
        ElementKind.Consumer => SketchMark.Consumer,
        _ => role == ElementRole.Consumer ? SketchMark.Jet : SketchMark.Line,
    };

    private static string Spoken(StateAnswer state, OilUnits units)
    {
        var gauges = string.Join(", ", state.Answer.Gauges.Select(g => $"{g.Gauge.Name} {units.PressureOf(g.Pressure.Value)} {units.SpokenBandOf(g)}"));
        var most = string.Join(" and ", state.Answer.Consumers.Take(2).Select(c => $"{NameOf(c.Element)} takes {units.FlowOf(c.Flow)}"));
        return $"Gauges in {units.Pressure.Symbol}: {gauges}. {(most.Length > 0 ? $"{Said.Sentence(most)} {units.Flow.Symbol}. " : "")}The path as a list has every figure.";
    }
}
