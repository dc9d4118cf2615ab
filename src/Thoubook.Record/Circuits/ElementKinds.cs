using System.Collections.Frozen;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;
using static Thoubook.Record.Circuits.ElementKeys;

namespace Thoubook.Record.Circuits;

/// <summary>
/// Every kind of element with its keys, described once: the engine file, its schema, the pages and the solving of the circuit all go by it.
/// Clearances are on diameter, end float is total, pressures are gauge unless a key says otherwise.
/// </summary>
public static class ElementKinds
{
    private const string DrilledRoughness = "6 µm";

    private static readonly SizeOrder ClearanceBelowJournal = new("clearance", "diameter", "A clearance is less than the diameter of its journal");

    private static readonly ElementKey[] GroovedSizes =
    [
        Diameter,
        Clearance,
        Size("land", "width of one land beside the groove"),
        Left(Count("lands", "how many lands the oil leaves by; 2 where left out") with { Greatest = 2 }, 2),
        Eccentricity(0.6),
        FilmRise,
    ];

    /// <summary>Every kind, in the order of <see cref="ElementKind"/>.</summary>
    public static IReadOnlyList<ElementShape> All { get; } =
    [
        new(ElementKind.Pipe, "A pipe with its bends: smooth or rough, in whatever kind of flow.", Way(1.5e-6, "1.5 µm, drawn tube,", 0)) { Orders = [RoughBelow] },
        new(ElementKind.LaminarPipe, "A pipe in which the flow is always laminar: long, thin, thick oil.", [Bore, Length]),
        new(ElementKind.Drilling, "A drilled way through a casting or a shaft.", Way(6e-6, DrilledRoughness, 1.5)) { Orders = [RoughBelow] },
        new(
            ElementKind.CrankDrilling,
            "A drilling in the turning crank: the oil in it is thrown outwards.",
            [
                .. Way(6e-6, DrilledRoughness, 1.5),
                Size("from-radius", "distance of its first end from the axis") with { IsAboveLeast = false },
                Size("to-radius", "distance of its far end from the axis") with { IsAboveLeast = false },
                SpeedRatio,
            ])
        { Orders = [RoughBelow] },
        new(ElementKind.Jet, "A jet or a restrictor: a short hole with a sharp edge.", [Bore, Discharge(0.62)]),
        new(
            ElementKind.Annulus,
            "The gap round a spindle, a bush or a plunger, along its length.",
            [Diameter with { Says = "diameter of the spindle" }, Clearance, Length, Eccentricity(0)])
        { Orders = [ClearanceBelowJournal] },
        new(ElementKind.Slot, "A flat gap between two faces.", [Size("width", "width across the flow"), Gap("gap", "height of the gap"), Length])
        { Orders = [new("gap", "width", "A slot is wider than it is high")] },
        new(
            ElementKind.Jacket,
            "The space between two cylinders that a cooler, a heater or a jacketed pipe leaves for the oil.",
            [Diameter with { Says = "diameter of the inner cylinder" }, Size("gap", "space on one side") with { Side = Side.PerSide }, Length, Losses(1.5)])
        { Orders = [new("gap", "diameter", "The space of a jacket is narrower than the cylinder within is thick")] },
        new(ElementKind.GroovedBearing, "A plain bearing fed by a groove all round it.", GroovedSizes) { Orders = [ClearanceBelowJournal] },
        new(ElementKind.HalfGroovedBearing, "A plain bearing with a groove half way round, in the unloaded shell.", GroovedSizes) { Orders = [ClearanceBelowJournal] },
        new(
            ElementKind.HoleFedBearing,
            "A plain bearing fed by one hole.",
            [
                Diameter,
                Clearance,
                Size("width", "width of the bearing"),
                Size("hole", "diameter of the hole at the bearing's face"),
                Left(new ElementKey("hole-angle", QuantityKind.Angle, KeyNeed.MayBeLeftOut, "how far the hole lies from the widest gap, round the journal; 0° where left out") { Least = -Math.PI, Greatest = Math.PI }, 0),
                Eccentricity(0.6),
                FilmRise,
            ])
        { Orders = [ClearanceBelowJournal, new("hole", "width", "The hole is at most 0.8 of the width of the bearing") { MayBeEqual = true, Share = 0.8 }] },
        new(
            ElementKind.Pump,
            "A pump known by what it moves in a turn and how it leaks.",
            [
                Displacement,
                Left(new ElementKey("leak", QuantityKind.Volume, KeyNeed.MayBeLeftOut, "how it leaks: flow back times viscosity over pressure; 0 where left out") { Greatest = 1e-6 }, 0),
                SpeedRatio,
                InletLimit,
                Absolute("fills-at", "inlet pressure, absolute, from which it fills wholly; where left out it fills in proportion, wholly at one atmosphere"),
                .. Scavenging,
            ])
        { Together = [["fills-at", "inlet-limit"]], Orders = [new("inlet-limit", "fills-at", "A pump fills wholly at a higher inlet pressure than that at which nothing fills it")] },
        new(
            ElementKind.GearPump,
            "Two spur gears in a body, known by their sizes: what it moves, how it slips and how it fills are worked out.",
            [
                Count("teeth", "teeth of one gear") with { Least = 4, Greatest = 200 },
                Size("tip-diameter", "diameter over the teeth"),
                Size("centre-distance", "distance of the two spindles"),
                Size("width", "width of the gears"),
                PressureAngle,
                Optional(Size("module", "module; centre distance over teeth where left out")),
                Optional(Displacement) with { Says = "what it moves in a turn, where it was measured by the chambers; worked out from the gears where left out" },
                Gap("end-float", "end float of the driver, total") with { IsAboveLeast = false, Side = Side.Total },
                Optional(Gap("driven-end-float", "end float of the driven gear, total; that of the driver where left out") with { IsAboveLeast = false, Side = Side.Total }),
                Left(Number("float-share", "the share of the end float that lies on one face: 0.5 is central, 1 is all on one side; 0.5 where left out", 0.5, 1), 0.5),
                TipClearance,
                Optional(Size("root-diameter", "diameter at the root of the teeth; what the tips of the other gear and a root clearance of a quarter module leave, where left out")),
                Size("hub-diameter", "diameter of the spindle or hub at the gear's face"),
                Left(Gap("bush-clearance", "clearance of the spindles in their bushes; 0, nothing leaks there, where left out") with { IsAboveLeast = false, Side = Side.Diametral }, 0),
                Optional(Size("bush-length", "length of one bush")),
                Optional(Size("bush-diameter", "diameter of the spindles in the bushes")),
                SpeedRatio,
                GearPumpInletLimit,
                .. Scavenging,
            ])
        {
            Together = [["bush-clearance", "bush-length", "bush-diameter"]],
            Orders =
            [
                new("centre-distance", "tip-diameter", "The gears mesh, so their spindles are nearer to each other than the diameter over the teeth"),
                new("root-diameter", "centre-distance", "The root of one gear clears the tip of the other"),
                new("hub-diameter", "root-diameter", "The hub is smaller than the root of the teeth"),
                new("hub-diameter", "centre-distance", "The two hubs do not touch"),
                new("bush-clearance", "bush-diameter", "A clearance is less than the diameter of its spindle"),
            ],
        },
        Valve(ElementKind.DiscValve, "A relief valve with a flat disc on its seat.", []),
        Valve(ElementKind.PoppetValve, "A relief valve with a mushroom on a coned seat.", [SeatAngle]),
        Valve(ElementKind.BallValve, "A relief valve with a ball on its seat.", [Size("ball", "diameter of the ball")])
            with
        { Orders = [new("seat", "ball", "A ball is larger than its seat")] },
        new(
            ElementKind.PistonValve,
            "A relief valve with a piston that uncovers a port in its bore.",
            [
                Piston,
                Size("port", "width of the port round the bore, all openings together"),
                Left(Size("overlap", "how far it lifts before the port begins to open; 0 where left out") with { IsAboveLeast = false }, 0),
                Loading[0] with { Says = "pressure difference at which the port begins to open" },
                .. Loading[1..],
                Discharge(0.65),
                Left(Gap("leak-gap", "clearance of the piston in its bore; 0 where left out") with { IsAboveLeast = false, Side = Side.Diametral }, 0),
                Optional(Size("leak-length", "length over which the piston seals")),
            ])
        {
            VentLeftOut = "the node that it delivers to",
            OneOf = [["cracking", "preload"]],
            Together = [["leak-gap", "leak-length"]],
            Orders =
            [
                new("overlap", "lift", "The port begins to open before the piston stops"),
                new("leak-gap", "piston", "A clearance is less than the diameter of its piston"),
                new("port", "piston", "All openings of the port together go at most once round the piston") { MayBeEqual = true, Share = Math.PI },
            ],
        },
        new(
            ElementKind.ReducingValve,
            "A valve that lets through as much as holds a lower pressure behind it: it shuts as that pressure rises.",
            [
                Seat with { Says = "bore of the way when full open" },
                Pressure("setting", "the pressure behind it, above that of its spring chamber, at which it is just shut") with { IsAboveLeast = true },
                Loading[2],
                Piston,
                Loading[3],
                Discharge(0.65),
            ])
        { VentLeftOut = "the open air" },
        new(
            ElementKind.CheckValve,
            "A valve that lets oil through one way only.",
            [
                Bore,
                Left(Pressure("cracking", "pressure difference at which it begins to open; 0 where left out"), 0),
                Optional(Pressure("full-open", "pressure difference at which it is full open; 2 psi above cracking where left out")),
                Discharge(0.65),
            ])
        { Orders = [new("cracking", "full-open", "A valve is full open at a higher pressure than that at which it begins to open")] },
        new(
            ElementKind.Strainer,
            "Woven wire: a gauze on a pick-up or in a filter.",
            [
                new ElementKey("area", QuantityKind.Area, KeyNeed.Required, "area of the gauze") { IsAboveLeast = true, Greatest = 10_000 * SquareInch },
                Gap("pitch", "from one wire to the next, middle to middle"),
                Gap("wire", "diameter of the wire"),
                Clogged,
            ])
        { Orders = [new("wire", "pitch", "Between two wires there is a hole, so the wire is at most 0.9 of the pitch") { MayBeEqual = true, Share = 0.9 }] },
        new(
            ElementKind.Filter,
            "A filter known by the loss that it is rated at.",
            [
                new ElementKey("rated-flow", QuantityKind.Flow, KeyNeed.Required, "flow at which it is rated") { IsAboveLeast = true, Greatest = MostFlow },
                Pressure("rated-loss", "pressure difference at that flow") with { IsAboveLeast = true },
                new ElementKey("rated-viscosity", QuantityKind.DynamicViscosity, KeyNeed.Required, "viscosity of the oil at which it is rated") { IsAboveLeast = true, Greatest = 100 },
                Clogged,
            ]),
        new(
            ElementKind.Cooler,
            "Tubes side by side, with a by-pass valve across them where it has one.",
            [
                Count("tubes", "how many tubes the oil flows through side by side"),
                Bore with { Says = "bore of one tube" },
                Length with { Says = "length of one tube" },
                Left(Size("roughness", "roughness of the wall; 1.5 µm where left out"), 1.5e-6) with { IsAboveLeast = false },
                Losses(1.5),
                Optional(Pressure("by-pass", "pressure difference at which the by-pass begins to open; no by-pass where left out") with { IsAboveLeast = true }),
                Optional(Size("by-pass-bore", "bore of the by-pass")),
            ])
        { Together = [["by-pass", "by-pass-bore"], ["by-pass-bore", "by-pass"]], Orders = [RoughBelow] },
        new(
            ElementKind.Consumer,
            "Something that takes a stated flow: a hydraulic propeller, a governor, a spray.",
            [
                new ElementKey("flow", QuantityKind.Flow, KeyNeed.Required, "what it takes") { Greatest = MostFlow },
                Left(Pressure("full-at", "pressure difference from which it gets all of it; 2 psi where left out") with { IsAboveLeast = true }, TwoPsi),
            ]),
    ];

    private static readonly FrozenDictionary<ElementKind, ElementShape> Shapes = All.ToFrozenDictionary(s => s.Kind);

    public static ElementShape Of(ElementKind kind) => Shapes[kind];

    private static SizeOrder RoughBelow => new("roughness", "bore", "The roughness is less than the bore");

    private static ElementShape Valve(ElementKind kind, string says, ElementKey[] own) =>
        new(kind, says, [Seat, .. own, .. Loading, Discharge(0.65), .. Leaking])
        {
            VentLeftOut = "the node that it delivers to",
            OneOf = [["cracking", "preload"]],
        };
}
