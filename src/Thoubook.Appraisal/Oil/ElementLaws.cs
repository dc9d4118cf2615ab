using Thoubook.Mechanics.Circuits;
using Thoubook.Mechanics.Flow;
using Thoubook.Mechanics.Pumps;
using Thoubook.Mechanics.Valves;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal.Oil;

/// <summary>From an element of the record, with its sizes in SI, to the laws of flow that stand for it. A cooler is two laws side by side: its tubes and its by-pass.</summary>
internal static class ElementLaws
{
    private const double QuarterPi = Math.PI / 4;
    private static readonly double Psi = TradeUnit.Psi.Factor;

    /// <summary>The laws of an element that is not blanked.</summary>
    /// <param name="definition">Which.</param>
    /// <param name="sizes">Defaults filled in.</param>
    /// <param name="from">Place of its first node.</param>
    /// <param name="to">Place of its second.</param>
    /// <param name="vent">Place of the node of its spring chamber; null: as its kind says.</param>
    /// <param name="speed">[rad/s] of the engine.</param>
    /// <param name="density">[kg/m³]</param>
    public static CircuitElement[] Of(ElementDefinition definition, ElementSizes sizes, int from, int to, int? vent, double speed, double density)
    {
        var name = definition.Name.Text;
        return definition.Kind switch
        {
            ElementKind.Pipe or ElementKind.Drilling => [Way(sizes["number"])],
            ElementKind.CrankDrilling => [Way(sizes["number"]) with { FromRadius = sizes["from-radius"], ToRadius = sizes["to-radius"], SpeedRatio = sizes["speed-ratio"] }],
            ElementKind.LaminarPipe => [new LaminarPassage(name, from, to, Math.PI * Math.Pow(sizes["bore"], 4) / (128 * sizes["length"]))],
            ElementKind.Jet => [new Orifice(name, from, to, sizes["bore"], sizes["discharge"])],
            ElementKind.Annulus => [new LaminarPassage(name, from, to, Gaps.Annulus(sizes["diameter"], sizes["clearance"], sizes["length"], sizes["eccentricity"]))],
            ElementKind.Slot => [new LaminarPassage(name, from, to, Gaps.Slot(sizes["width"], sizes["gap"], sizes["length"]))],
            ElementKind.Jacket => [Jacket()],
            ElementKind.GroovedBearing => [Film(Gaps.GroovedBearing(sizes["diameter"], sizes["clearance"], sizes["land"], sizes["lands"], sizes["eccentricity"]))],
            ElementKind.HalfGroovedBearing => [Film(Gaps.HalfGroovedBearing(sizes["diameter"], sizes["clearance"], sizes["land"], sizes["lands"], sizes["eccentricity"]))],
            ElementKind.HoleFedBearing => [Film(Gaps.HoleFedBearing(sizes["clearance"], sizes["width"], sizes["hole"], sizes["hole-angle"], sizes["eccentricity"]))],
            ElementKind.Pump => [Plain()],
            ElementKind.GearPump => [Geared()],
            ElementKind.DiscValve => [Valve(ClosureKind.Disc)],
            ElementKind.PoppetValve => [Valve(ClosureKind.Poppet) with { HalfAngle = sizes["seat-angle"] }],
            ElementKind.BallValve => [Valve(ClosureKind.Ball) with { Ball = sizes["ball"] }],
            ElementKind.PistonValve => [Piston()],
            ElementKind.ReducingValve =>
            [
                new ReducingValve(name, from, to, sizes["seat"], sizes["setting"], sizes["spring"], sizes["piston"], sizes["lift"], sizes["discharge"]) { Vent = vent },
            ],
            ElementKind.CheckValve => [Between(name, sizes["bore"], sizes["cracking"], sizes.Maybe("full-open") ?? sizes["cracking"] + (2 * Psi), sizes["discharge"])],
            ElementKind.Strainer => [Gauze()],
            ElementKind.Filter => [new LaminarPassage(name, from, to, sizes["rated-flow"] * sizes["rated-viscosity"] / sizes["rated-loss"] * (1 - sizes["clogged"]))],
            ElementKind.Cooler => sizes.Maybe("by-pass") is { } opens
                ? [Way(sizes["tubes"]), Between(ByPassOf(name), sizes["by-pass-bore"], opens, opens + (5 * Psi), 0.65)]
                : [Way(sizes["tubes"])],
            ElementKind.Consumer => [new Consumer(name, from, to, sizes["flow"], sizes["full-at"])],
            _ => throw new InvalidOperationException($"No law for {definition.Kind}."),
        };

        Pipe Way(double number) => new(name, from, to, sizes["bore"], sizes["length"], sizes["roughness"]) { Losses = sizes["losses"], Number = number };

        LaminarPassage Film(double conductance) => new(name, from, to, conductance) { FilmRise = sizes["film-rise"] };

        QuadraticPassage Jacket()
        {
            var middle = sizes["diameter"] + sizes["gap"];
            var area = Math.PI * middle * sizes["gap"];
            return new(name, from, to, 1 / Gaps.Annulus(middle, 2 * sizes["gap"], sizes["length"], 0), sizes["losses"] / (2 * area * area));
        }

        QuadraticPassage Gauze()
        {
            var (linear, square) = Strainer.Resistance(sizes["area"], sizes["pitch"], sizes["wire"], sizes["clogged"]);
            return new(name, from, to, linear, square);
        }

        Pump Plain() => new(name, from, to, sizes["displacement"], sizes["leak"])
        {
            SpeedRatio = sizes["speed-ratio"],
            InletLimit = sizes.Maybe("inlet-limit"),
            FillsAt = sizes.Maybe("inlet-limit") is null ? null : sizes.Maybe("fills-at"),
        };

        Pump Geared()
        {
            var pump = GearPump.Characteristic(GearSizes(sizes));
            return new(name, from, to, pump.Displacement, pump.Leak)
            {
                SpeedRatio = sizes["speed-ratio"],
                TipDrag = pump.TipDrag,
                InletLimit = sizes["inlet-limit"],
                FillsAt = Math.Max(pump.FillsAt(sizes["inlet-limit"], density, speed * sizes["speed-ratio"]), sizes["inlet-limit"] + 1),
            };
        }

        ReliefValve Valve(ClosureKind closure) => new(name, from, to, sizes["seat"], Preload(QuarterPi * Square(sizes["seat"])), sizes["spring"], sizes["lift"], sizes["discharge"])
        {
            Closure = closure,
            SeatGap = sizes["seat-gap"],
            SeatWidth = sizes["seat-width"],
            Vent = vent,
        };

        ReliefValve Piston() => new(name, from, to, sizes["piston"], Math.Max(0, Preload(QuarterPi * Square(sizes["piston"])) - (sizes.Maybe("preload") is null ? sizes["spring"] * sizes["overlap"] : 0)), sizes["spring"], sizes["lift"], sizes["discharge"])
        {
            Closure = ClosureKind.Piston,
            Port = sizes["port"],
            Overlap = sizes["overlap"],
            SeatGap = sizes["leak-gap"] / 2,
            SeatWidth = sizes.Maybe("leak-length") ?? 1e-3,
            Vent = vent,
        };

        // A disc that is full open, at a quarter of its bore, where the pressure says.
        ReliefValve Between(string called, double bore, double cracking, double fullOpen, double discharge)
        {
            var area = QuarterPi * Square(bore);
            return new(called, from, to, bore, cracking * area, (fullOpen - cracking) * area / (bore / 4), bore / 4, discharge);
        }

        double Preload(double area) => sizes.Maybe("preload") ?? sizes["cracking"] * area;
    }

    /// <summary>The name of the by-pass law of a cooler.</summary>
    public static string ByPassOf(string cooler) => $"{cooler} by-pass";

    /// <summary>The sizes of a gear pump as its sum takes them.</summary>
    public static GearPumpSizes GearSizes(ElementSizes sizes) => new(
        (int)sizes["teeth"], sizes["tip-diameter"], sizes["centre-distance"], sizes["width"], sizes["pressure-angle"], sizes.Maybe("module") ?? 0,
        sizes["end-float"], sizes["float-share"], sizes["tip-clearance"], sizes.Maybe("root-diameter") ?? 0, sizes["hub-diameter"],
        sizes["bush-clearance"], sizes.Maybe("bush-length") ?? 0, sizes.Maybe("bush-diameter") ?? 0)
    {
        DrivenEndFloat = sizes.Maybe("driven-end-float"),
        MeasuredDisplacement = sizes.Maybe("displacement"),
    };

    private static double Square(double x) => x * x;
}
