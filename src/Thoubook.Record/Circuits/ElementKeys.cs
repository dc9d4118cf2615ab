using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Circuits;

/// <summary>The keys that several kinds of element share, and the few ways in which keys are made.</summary>
internal static class ElementKeys
{
    private const double Inch = 0.0254;
    private const double Thou = Inch / 1000;
    private static readonly double Psi = TradeUnit.Psi.Factor;
    private const double Degree = Math.PI / 180;
    private const double ImperialGallon = 4.54609e-3;
    private const double PoundForce = 4.4482216152605;

    /// <summary>[m] No passage, journal or gear of these engines is larger.</summary>
    private const double Largest = 60 * Inch;

    /// <summary>[m] No gap that leaks is wider.</summary>
    private const double Widest = 0.5 * Inch;

    /// <summary>[m²]</summary>
    public const double SquareInch = Inch * Inch;

    /// <summary>[m³/s] No circuit of these engines moves more.</summary>
    public const double MostFlow = 10_000 * ImperialGallon / 60;

    public static ElementKey Bore { get; } = Size("bore", "bore");

    public static ElementKey[] Way(double roughness, string roughnessWords, double losses) =>
    [
        Bore,
        Length,
        Left(Size("roughness", $"roughness of the wall; {roughnessWords} where left out"), roughness) with { IsAboveLeast = false },
        Losses(losses),
        Left(Count("number", "how many lie side by side; 1 where left out"), 1),
    ];

    public static ElementKey Length { get; } = Size("length", "length along the flow") with { Greatest = 6000 * Inch };

    public static ElementKey Losses(double velocityHeads) =>
        Left(Number("losses", $"bends, entry and exit in velocity heads; {velocityHeads:0.#} where left out", 0, 1000), velocityHeads);

    public static ElementKey Diameter { get; } = Size("diameter", "diameter of the journal");

    public static ElementKey Clearance { get; } = Gap("clearance", "running clearance on diameter") with { Side = Side.Diametral };

    public static ElementKey Eccentricity(double usual) =>
        Left(Number("eccentricity", $"how far the journal lies off centre, as a share of the clearance: 0 is central, 1 touches; {usual:0.#} where left out", 0, 1) with { IsBelowGreatest = true }, usual);

    public static ElementKey FilmRise { get; } =
        Left(new ElementKey("film-rise", QuantityKind.TemperatureDifference, KeyNeed.MayBeLeftOut, "how much warmer the film is than the oil that feeds it; 10 K where left out") { Greatest = 150 }, 10);

    public static ElementKey Discharge(double usual) =>
        Left(Number("discharge", $"discharge coefficient; {usual:0.##} where left out", 0, 1) with { IsAboveLeast = true }, usual);

    public static ElementKey SpeedRatio { get; } =
        Left(Number("speed-ratio", "its turns for one turn of the crank; 1 where left out", 0, 50) with { IsAboveLeast = true }, 1);

    public static ElementKey InletLimit { get; } = Absolute("inlet-limit", "inlet pressure, absolute, at which nothing fills it any more; no limit where left out");

    public static ElementKey GearPumpInletLimit { get; } =
        Left(Absolute("inlet-limit", "inlet pressure, absolute, at which nothing fills it any more; 5 psi absolute where left out"), 5 * Psi);

    public static ElementKey[] Scavenging { get; } =
    [
        Optional(Number("need", "the share of all oil falling to the sump that it must take; it is a scavenge pump where this is given", 0, 10) with { IsAboveLeast = true }),
        Left(Number("air", "the share of air in what it picks up; 0 where left out", 0, 1) with { IsBelowGreatest = true }, 0),
    ];

    public static ElementKey Displacement { get; } =
        new("displacement", QuantityKind.Volume, KeyNeed.Required, "what it moves in one of its turns") { IsAboveLeast = true, Greatest = 20 * ImperialGallon };

    public static ElementKey Seat { get; } = Size("seat", "bore of the seat");

    public static ElementKey[] Loading { get; } =
    [
        Optional(Pressure("cracking", "pressure difference at which it begins to open")),
        Optional(new ElementKey("preload", QuantityKind.Force, KeyNeed.MayBeLeftOut, "force of the spring on the shut valve") { Greatest = 20_000 * PoundForce }),
        new("spring", QuantityKind.Stiffness, KeyNeed.Required, "rate of the spring") { IsAboveLeast = true, Greatest = 500_000 * PoundForce / Inch },
        Size("lift", "lift at which it stops"),
    ];

    public static ElementKey[] Leaking { get; } =
    [
        Left(Gap("seat-gap", "a leaking seat as an even gap all round it; 0 where left out") with { IsAboveLeast = false }, 0),
        Left(Size("seat-width", "width of the seat; 1 mm where left out"), 1e-3),
    ];

    public static ElementKey Piston { get; } = Size("piston", "diameter of the piston");

    public static ElementKey Clogged { get; } =
        Left(Number("clogged", "the share that is stopped up; 0 where left out", 0, 0.99), 0);

    public static ElementKey SeatAngle { get; } =
        Left(new ElementKey("seat-angle", QuantityKind.Angle, KeyNeed.MayBeLeftOut, "half angle of the cone; 45° where left out") { Least = 6 * Degree, Greatest = 85 * Degree }, 45 * Degree);

    public static ElementKey PressureAngle { get; } =
        Left(new ElementKey("pressure-angle", QuantityKind.Angle, KeyNeed.MayBeLeftOut, "pressure angle of the cutter; 20° where left out") { Least = 5 * Degree, Greatest = 35 * Degree }, 20 * Degree);

    public static ElementKey TipClearance { get; } =
        Left(Gap("tip-clearance", "clearance of the gears in their pockets, pocket less tip diameter; 4 thou where left out") with { Side = Side.Diametral }, 4 * Thou);

    public static double TwoPsi => 2 * Psi;

    public static ElementKey Size(string name, string says) =>
        new(name, QuantityKind.Length, KeyNeed.Required, says) { IsAboveLeast = true, Greatest = Largest };

    public static ElementKey Gap(string name, string says) =>
        new(name, QuantityKind.Length, KeyNeed.Required, says) { IsAboveLeast = true, Greatest = Widest };

    public static ElementKey Number(string name, string says, double least, double greatest) =>
        new(name, QuantityKind.Number, KeyNeed.Required, says) { Least = least, Greatest = greatest };

    public static ElementKey Count(string name, string says) => Number(name, says, 1, 10_000) with { IsWhole = true };

    public static ElementKey Pressure(string name, string says) => new(name, QuantityKind.Pressure, KeyNeed.Required, says) { Greatest = 15_000 * Psi };

    public static ElementKey Absolute(string name, string says) => Optional(Pressure(name, says) with { Greatest = 15 * Psi });

    public static ElementKey Optional(ElementKey key) => key with { Need = KeyNeed.MayBeLeftOut };

    public static ElementKey Left(ElementKey key, double si) => key with { Need = KeyNeed.MayBeLeftOut, Default = si };
}
