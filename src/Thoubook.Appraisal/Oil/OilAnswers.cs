using System.Globalization;
using Thoubook.Mechanics.Circuits;
using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Valves;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

/// <summary>From a solved circuit to what the fronts show of it.</summary>
internal static class OilAnswers
{
    /// <summary>The keys by which an element's flow is decided, the first that is taken from the record.</summary>
    private static readonly string[] Deciding = ["clearance", "end-float", "gap", "leak-gap", "seat-gap", "bore", "tip-clearance", "bush-clearance"];

    public static OilAnswer Of(OilSystem system, OilPoint point, SolvedCircuit solved)
    {
        var circuit = system.Circuit;
        var reservoirs = circuit.Nodes.Where(n => n.Pressure is not null).Select(n => n.Name).ToHashSet();
        var delivered = Enumerable.Range(0, circuit.Elements.Count).Where(i => OilSystem.IsPressurePump(circuit.Elements[i]) && !circuit.Elements[i].Blanked).Sum(solved.Flow);
        var figures = solved.Sizes.Inputs.Where(i => i.Figure is not null).ToLookup(i => i.Element);
        var elements = new ElementAnswer[circuit.Elements.Count];
        for (var i = 0; i < elements.Length; i++)
        {
            var element = circuit.Elements[i];
            var flow = solved.Flow(i);
            elements[i] = new ElementAnswer(element, flow, solved.Pressure(element.From) ?? 0, solved.Pressure(element.To) ?? 0)
            {
                Role = Role(element, reservoirs),
                Share = delivered > 0 ? flow / delivered : 0,
                Deciding = Deciding.Select(key => figures[i].FirstOrDefault(f => f.Key >= 0 && element.Shape.Keys[f.Key].Name == key)?.Figure).FirstOrDefault(f => f is not null),
            };
        }

        var consumers = elements.Where(e => e.Role == ElementRole.Consumer && !e.Element.Blanked).OrderByDescending(e => e.Flow).ToList();
        var valves = Enumerable.Range(0, elements.Length).Where(i => elements[i].Role == ElementRole.Valve && !elements[i].Element.Blanked).Select(i => Valve(elements[i], i, solved)).ToList();
        var toSump = elements.Where(e => e.Role is ElementRole.Consumer or ElementRole.Valve && reservoirs.Contains(e.Element.To)).Sum(e => Math.Max(0, e.Flow));
        var bands = system.Bands(solved);
        return new OilAnswer
        {
            Point = point,
            Viscosity = solved.Oil.Viscosity,
            Density = solved.Oil.Density,
            Gauges = [.. system.Gauges.Where(g => solved.Pressure(g.At) is not null).Select(g => system.Gauge(g, solved, bands))],
            Nodes = [.. circuit.NodeNames.Where(n => solved.Pressure(n) is not null).Select(n => new NodeAnswer(n, solved.Pressure(n)!.Value, reservoirs.Contains(n), circuit.Node(n)?.Height?.Si ?? 0))],
            Elements = elements,
            Consumers = consumers,
            Pumps = [.. Enumerable.Range(0, elements.Length).Where(i => OilSystem.IsPump(elements[i].Element) && !elements[i].Element.Blanked).Select(i => Pump(elements, i, point, solved, valves, delivered, toSump))],
            Valves = valves,
            Furthest = consumers.Where(e => IsBearing(e.Element.Kind)).MinBy(e => e.From),
            HowSolved = string.Create(CultureInfo.InvariantCulture, $"Solved in {solved.Report.Iterations} steps; {solved.Report.Residual:G2} of the greatest flow is left unbalanced."),
            Cautions = [.. solved.Sizes.Cautions, .. CircuitCautions.OfShape(circuit), .. solved.Cautions.Select(c => CircuitCautions.Of(c, circuit))],
        };
    }

    internal static bool IsBearing(ElementKind kind) => kind is ElementKind.GroovedBearing or ElementKind.HalfGroovedBearing or ElementKind.HoleFedBearing;

    private static ElementRole Role(ElementDefinition element, HashSet<NodeName> reservoirs) => element.Kind switch
    {
        ElementKind.Pump or ElementKind.GearPump => OilSystem.IsPressurePump(element) ? ElementRole.Pump : ElementRole.ScavengePump,
        ElementKind.DiscValve or ElementKind.PoppetValve or ElementKind.BallValve or ElementKind.PistonValve or ElementKind.ReducingValve => ElementRole.Valve,
        ElementKind.Strainer or ElementKind.Filter or ElementKind.Cooler or ElementKind.CheckValve or ElementKind.Pipe or ElementKind.Drilling or ElementKind.CrankDrilling => ElementRole.Passage,
        _ => reservoirs.Contains(element.To) && !reservoirs.Contains(element.From) ? ElementRole.Consumer : ElementRole.Passage,
    };

    private static ValveAnswer Valve(ElementAnswer element, int place, SolvedCircuit solved)
    {
        var law = solved.Law(place);
        var (preload, area, full) = law switch
        {
            ReliefValve valve => (valve.Preload + (valve.Closure == ClosureKind.Piston ? valve.Spring * valve.Overlap : 0), Math.PI / 4 * valve.Seat * valve.Seat, valve.Lift),
            ReducingValve reducing => (reducing.Setting, 1.0, reducing.Lift),
            _ => (0, 1, 0),
        };
        var vent = element.Element.Vent is { } node ? solved.Pressure(node) ?? 0 : law is ReducingValve ? 0 : element.To;
        return new ValveAnswer(element, solved.Lift(place), full, (preload / area) + vent);
    }

    private static PumpAnswer Pump(ElementAnswer[] elements, int place, OilPoint point, SolvedCircuit solved, List<ValveAnswer> valves, double delivered, double toSump)
    {
        var element = elements[place];
        var law = (Pump)solved.Law(place)!;
        var capacity = (law.Displacement + law.TipDrag) * law.SpeedRatio * point.Speed / (2 * Math.PI);
        var filling = solved.Filling(place);
        var reserve = law.InletLimit is { } limit ? element.From + StandardValues.Atmosphere - Math.Max(limit, Math.Min(law.FillsAt ?? StandardValues.Atmosphere, StandardValues.Atmosphere)) : (double?)null;
        var fed = valves.Select(v => v.Element.Element.To).ToHashSet();
        var pump = new PumpAnswer(element, element.Flow, capacity, capacity > 0 ? Math.Max(0, (capacity * filling) - element.Flow) / capacity : 0, filling, reserve);
        if (element.Role == ElementRole.Pump)
            return pump with { Margin = delivered > 0 && valves.Count > 0 ? valves.Where(v => !fed.Contains(v.Element.Element.From) && v.Element.Element.Kind != ElementKind.ReducingValve && !IsByPass(v.Element.Element, elements)).Sum(v => Math.Max(0, v.Element.Flow)) / delivered : null };
        var sizes = solved.Sizes[place];
        var (need, air) = (sizes["need"], sizes["air"]);
        var arrives = need * toSump / (1 - air);
        return pump with { Scavenge = arrives > 0 ? new ScavengeAnswer(arrives, air, element.Flow / arrives) : null };
    }

    /// <summary>A valve across a filter or a cooler lets go of nothing: its oil goes the same way as the rest.</summary>
    private static bool IsByPass(ElementDefinition valve, ElementAnswer[] elements) =>
        elements.Any(e => e.Element.Name != valve.Name && e.Element.From == valve.From && e.Element.To == valve.To && e.Role == ElementRole.Passage);
}
