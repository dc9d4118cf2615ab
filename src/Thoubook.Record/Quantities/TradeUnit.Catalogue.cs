namespace Thoubook.Record.Quantities;

/// <remarks>
/// The factors are the definitions: inch 25.4 mm, pound 0.45359237 kg, standard gravity 9.80665 m/s², US gallon 231 in³, imperial gallon 4.54609 L.
/// A test compares every one with UnitsNet.
/// </remarks>
public sealed partial class TradeUnit
{
    private static readonly Exact InchInMetres = Exact.Decimal(254, -4);
    private static readonly Exact PoundInKilograms = Exact.Decimal(45359237, -8);
    private static readonly Exact KilogramForceInNewtons = Exact.Decimal(980665, -5);
    private static readonly Exact PoundForceInNewtons = PoundInKilograms * KilogramForceInNewtons;
    private static readonly Exact ImperialGallonInCubicMetres = Exact.Decimal(454609, -8);
    private static readonly Exact CubicInchInCubicMetres = InchInMetres * InchInMetres * InchInMetres;
    private static readonly Exact UsGallonInCubicMetres = CubicInchInCubicMetres * new Exact(231, 1);
    private static readonly Exact FahrenheitDegreeInKelvins = new(5, 9);

    public static TradeUnit Inch { get; } = Of("in", "in", QuantityKind.Length, InchInMetres, ["in", "ins", "inch", "inches", "\""]);
    public static TradeUnit Thou { get; } = Of("thou", "thou", QuantityKind.Length, InchInMetres * Exact.Decimal(1, -3), ["thou", "thous", "thousandth", "thousandths", "thousandths of an inch", "thousandth of an inch", "mil", "mils"]);
    public static TradeUnit Tenth { get; } = Of("tenth", "tenths", QuantityKind.Length, InchInMetres * Exact.Decimal(1, -4), ["tenth", "tenths", "tenths of a thou", "tenth of a thou"]);
    public static TradeUnit MicroInch { get; } = Of("microinch", "µin", QuantityKind.Length, InchInMetres * Exact.Decimal(1, -6), ["µin", "uin", "microinch", "microinches", "micro inch", "micro inches"]);
    public static TradeUnit Foot { get; } = Of("ft", "ft", QuantityKind.Length, InchInMetres * new Exact(12, 1), ["ft", "foot", "feet", "'"]);
    public static TradeUnit Millimetre { get; } = Of("mm", "mm", QuantityKind.Length, Exact.Decimal(1, -3), ["mm", "mms", "millimetre", "millimetres", "millimeter", "millimeters", "mil", "mils"]);
    public static TradeUnit TenthMillimetre { get; } = Of("tenth-mm", "tenths of a mm", QuantityKind.Length, Exact.Decimal(1, -4), ["tenths of a mm", "tenth of a mm", "tenths of mm", "tenth mm", "tenths mm"]);
    public static TradeUnit Micrometre { get; } = Of("um", "µm", QuantityKind.Length, Exact.Decimal(1, -6), ["µm", "um", "µ", "micron", "microns", "micrometre", "micrometres", "micrometer", "micrometers"]);
    public static TradeUnit Centimetre { get; } = Of("cm", "cm", QuantityKind.Length, Exact.Decimal(1, -2), ["cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters"]);
    public static TradeUnit Metre { get; } = Of("m", "m", QuantityKind.Length, Exact.One, ["m", "metre", "metres", "meter", "meters"]);

    public static TradeUnit Kelvin { get; } = Of("kelvin", "K", QuantityKind.Temperature, Exact.One, ["K", "kelvin", "kelvins"]);
    public static TradeUnit Celsius { get; } = new("degc", "°C", QuantityKind.Temperature, Exact.One, 1, Exact.Decimal(27315, -2), ["°C", "C", "deg C", "degC", "degree C", "degrees C", "celsius", "degrees celsius", "centigrade", "°", "deg", "degree", "degrees"], []);
    public static TradeUnit Fahrenheit { get; } = new("degf", "°F", QuantityKind.Temperature, FahrenheitDegreeInKelvins, FahrenheitDegreeInKelvins.ToDouble(), Exact.Decimal(45967, -2) * FahrenheitDegreeInKelvins, ["°F", "F", "deg F", "degF", "degree F", "degrees F", "fahrenheit", "degrees fahrenheit", "°", "deg", "degree", "degrees"], []);
    public static TradeUnit KelvinDifference { get; } = Of("kelvin-difference", "K", QuantityKind.TemperatureDifference, Exact.One, [], ["K", "kelvin", "kelvins"]);
    public static TradeUnit CelsiusDifference { get; } = Of("degc-difference", "°C", QuantityKind.TemperatureDifference, Exact.One, ["C°"], [.. Celsius.Spellings]);
    public static TradeUnit FahrenheitDifference { get; } = Of("degf-difference", "°F", QuantityKind.TemperatureDifference, FahrenheitDegreeInKelvins, ["F°"], [.. Fahrenheit.Spellings]);

    public static TradeUnit Pascal { get; } = Of("pa", "Pa", QuantityKind.Pressure, Exact.One, ["Pa", "N/m2"]);
    public static TradeUnit Kilopascal { get; } = Of("kpa", "kPa", QuantityKind.Pressure, new(1000, 1), ["kPa", "kN/m2"]);
    public static TradeUnit Megapascal { get; } = Of("mpa", "MPa", QuantityKind.Pressure, new(1000000, 1), ["MPa", "Mpa", "MPA", "N/mm2", "MN/m2"]);
    public static TradeUnit Bar { get; } = Of("bar", "bar", QuantityKind.Pressure, new(100000, 1), ["bar", "bars", "bar g", "barg"]);
    public static TradeUnit Millibar { get; } = Of("mbar", "mbar", QuantityKind.Pressure, new(100, 1), ["mbar", "millibar", "millibars"]);
    public static TradeUnit Psi { get; } = Of("psi", "psi", QuantityKind.Pressure, Over(PoundForceInNewtons, InchInMetres * InchInMetres), ["psi", "p s i", "psig", "psi g", "lb/sq in", "lbs/sq in", "lbf/sq in", "lb/in2", "lbs/in2", "lbf/in2", "lb/square inch", "lbs/square inch", "pounds/square inch", "lb/sq inch", "lbs/sq inch"]);
    public static TradeUnit KilogramForcePerSquareCentimetre { get; } = Of("kgf-per-cm2", "kgf/cm²", QuantityKind.Pressure, KilogramForceInNewtons * new Exact(10000, 1), ["kgf/cm2", "kg/cm2", "kgf/sq cm", "kg/sq cm", "kp/cm2"]);
    public static TradeUnit Atmosphere { get; } = Of("atm", "atm", QuantityKind.Pressure, new(101325, 1), ["atm"]);

    public static TradeUnit NewtonMetre { get; } = Of("nm", "N m", QuantityKind.Torque, Exact.One, ["N m", "Nm", "newton metre", "newton metres", "newton meters"]);
    public static TradeUnit PoundForceFoot { get; } = Of("lbf-ft", "lbf ft", QuantityKind.Torque, PoundForceInNewtons * InchInMetres * new Exact(12, 1), ["lbf ft", "lb ft", "lbs ft", "ft lbf", "ft lb", "ft lbs", "foot pound", "foot pounds", "pound foot", "pound feet", "pounds feet", "pounds foot"]);
    public static TradeUnit PoundForceInch { get; } = Of("lbf-in", "lbf in", QuantityKind.Torque, PoundForceInNewtons * InchInMetres, ["lbf in", "lb in", "lbs in", "in lbf", "in lb", "in lbs", "inch pound", "inch pounds", "pound inch", "pound inches", "inch lb", "inch lbs", "lb inch", "lbs inch", "lb inches"]);
    public static TradeUnit KilogramForceMetre { get; } = Of("kgf-m", "kgf m", QuantityKind.Torque, KilogramForceInNewtons, ["kgf m", "kg m", "m kgf", "m kg", "mkg", "kgm", "kgfm", "kp m", "mkp"]);
    public static TradeUnit KilogramForceCentimetre { get; } = Of("kgf-cm", "kgf cm", QuantityKind.Torque, KilogramForceInNewtons * Exact.Decimal(1, -2), ["kgf cm", "kg cm", "cm kg", "cm kgf", "kp cm"]);

    public static TradeUnit Newton { get; } = Of("n", "N", QuantityKind.Force, Exact.One, ["N", "newton", "newtons"]);
    public static TradeUnit Kilonewton { get; } = Of("kn", "kN", QuantityKind.Force, new(1000, 1), ["kN"]);
    public static TradeUnit PoundForce { get; } = Of("lbf", "lbf", QuantityKind.Force, PoundForceInNewtons, ["lbf", "lb f", "lbs f", "pound force", "pounds force", "lb", "lbs", "pound", "pounds"]);
    public static TradeUnit KilogramForce { get; } = Of("kgf", "kgf", QuantityKind.Force, KilogramForceInNewtons, ["kgf", "kp"], ["kg", "kgs", "kilo", "kilos"]);
    public static TradeUnit OunceForce { get; } = Of("ozf", "ozf", QuantityKind.Force, PoundForceInNewtons * new Exact(1, 16), ["ozf"], ["oz", "ounce", "ounces"]);

    public static TradeUnit NewtonPerMetre { get; } = Of("n-per-m", "N/m", QuantityKind.Stiffness, Exact.One, ["N/m"]);
    public static TradeUnit NewtonPerMillimetre { get; } = Of("n-per-mm", "N/mm", QuantityKind.Stiffness, new(1000, 1), ["N/mm", "kN/m"]);
    public static TradeUnit PoundForcePerInch { get; } = Of("lbf-per-in", "lbf/in", QuantityKind.Stiffness, Over(PoundForceInNewtons, InchInMetres), ["lbf/in", "lb/in", "lbs/in", "lbf/inch", "lb/inch", "lbs/inch", "pounds/inch"]);
    public static TradeUnit KilogramForcePerMillimetre { get; } = Of("kgf-per-mm", "kgf/mm", QuantityKind.Stiffness, KilogramForceInNewtons * new Exact(1000, 1), ["kgf/mm", "kg/mm", "kp/mm"]);

    public static TradeUnit Kilogram { get; } = Of("kg", "kg", QuantityKind.Mass, Exact.One, ["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"]);
    public static TradeUnit Gram { get; } = Of("g", "g", QuantityKind.Mass, Exact.Decimal(1, -3), ["g", "gm", "gms", "gram", "grams", "gramme", "grammes"]);
    public static TradeUnit Milligram { get; } = Of("mg", "mg", QuantityKind.Mass, Exact.Decimal(1, -6), ["mg", "milligram", "milligrams"]);
    public static TradeUnit Pound { get; } = Of("lb", "lb", QuantityKind.Mass, PoundInKilograms, ["lb", "lbs", "pound", "pounds", "lbm"]);
    public static TradeUnit Ounce { get; } = Of("oz", "oz", QuantityKind.Mass, PoundInKilograms * new Exact(1, 16), ["oz", "ounce", "ounces"]);

    public static TradeUnit Radian { get; } = Of("rad", "rad", QuantityKind.Angle, Exact.One, ["rad", "radian", "radians"]);
    public static TradeUnit Degree { get; } = WithPi("deg", "°", QuantityKind.Angle, Math.PI / 180, ["°", "deg", "degree", "degrees"]);
    public static TradeUnit MinuteOfArc { get; } = WithPi("arcmin", "min of arc", QuantityKind.Angle, Math.PI / 10800, ["min of arc", "minute of arc", "minutes of arc", "arcmin"], ["'", "min", "minute", "minutes"]);
    public static TradeUnit SecondOfArc { get; } = WithPi("arcsec", "s of arc", QuantityKind.Angle, Math.PI / 648000, ["s of arc", "sec of arc", "second of arc", "seconds of arc", "arcsec"], ["\"", "sec", "second", "seconds"]);
    public static TradeUnit Turn { get; } = WithPi("turn", "turns", QuantityKind.Angle, 2 * Math.PI, ["turn", "turns", "rev", "revs"]);

    public static TradeUnit SquareMetre { get; } = Of("m2", "m²", QuantityKind.Area, Exact.One, ["m2", "sq m"]);
    public static TradeUnit SquareMillimetre { get; } = Of("mm2", "mm²", QuantityKind.Area, Exact.Decimal(1, -6), ["mm2", "sq mm"]);
    public static TradeUnit SquareCentimetre { get; } = Of("cm2", "cm²", QuantityKind.Area, Exact.Decimal(1, -4), ["cm2", "sq cm"]);
    public static TradeUnit SquareInch { get; } = Of("in2", "in²", QuantityKind.Area, InchInMetres * InchInMetres, ["in2", "sq in", "sq inch", "sq inches", "square inch", "square inches"]);

    public static TradeUnit CubicMetre { get; } = Of("m3", "m³", QuantityKind.Volume, Exact.One, ["m3", "cu m"]);
    public static TradeUnit Litre { get; } = Of("l", "L", QuantityKind.Volume, Exact.Decimal(1, -3), ["L", "l", "ltr", "litre", "litres", "liter", "liters", "dm3"]);
    public static TradeUnit CubicCentimetre { get; } = Of("cm3", "cm³", QuantityKind.Volume, Exact.Decimal(1, -6), ["cm3", "cc", "ccs", "c c", "cu cm", "ml", "mL", "millilitre", "millilitres"]);
    public static TradeUnit CubicMillimetre { get; } = Of("mm3", "mm³", QuantityKind.Volume, Exact.Decimal(1, -9), ["mm3", "cu mm"]);
    public static TradeUnit CubicInch { get; } = Of("in3", "in³", QuantityKind.Volume, CubicInchInCubicMetres, ["in3", "cu in", "cu ins", "cubic inch", "cubic inches"]);
    public static TradeUnit ImperialGallon { get; } = Of("gal-imperial", "imp gal", QuantityKind.Volume, ImperialGallonInCubicMetres, ["imp gal", "imperial gallon", "imperial gallons", "gal imp", "UK gal", "gal", "gals", "gallon", "gallons"]);
    public static TradeUnit UsGallon { get; } = Of("gal-us", "US gal", QuantityKind.Volume, UsGallonInCubicMetres, ["US gal", "U S gal", "US gallon", "US gallons", "gal US", "gal", "gals", "gallon", "gallons"]);
    public static TradeUnit ImperialPint { get; } = Of("pt-imperial", "imp pt", QuantityKind.Volume, ImperialGallonInCubicMetres * new Exact(1, 8), ["imp pt", "imp pint", "imperial pint", "imperial pints", "UK pint", "UK pints", "pt", "pts", "pint", "pints"]);
    public static TradeUnit UsPint { get; } = Of("pt-us", "US pt", QuantityKind.Volume, UsGallonInCubicMetres * new Exact(1, 8), ["US pt", "US pint", "US pints", "pt", "pts", "pint", "pints"]);
    public static TradeUnit ImperialQuart { get; } = Of("qt-imperial", "imp qt", QuantityKind.Volume, ImperialGallonInCubicMetres * new Exact(1, 4), ["imp qt", "imperial quart", "imperial quarts", "qt", "qts", "quart", "quarts"]);
    public static TradeUnit UsQuart { get; } = Of("qt-us", "US qt", QuantityKind.Volume, UsGallonInCubicMetres * new Exact(1, 4), ["US qt", "US quart", "US quarts", "qt", "qts", "quart", "quarts"]);

    public static TradeUnit CubicMetrePerSecond { get; } = Of("m3-per-s", "m³/s", QuantityKind.Flow, Exact.One, ["m3/s"]);
    public static TradeUnit CubicMetrePerHour { get; } = Of("m3-per-h", "m³/h", QuantityKind.Flow, new(1, 3600), ["m3/h", "m3/hr"]);
    public static TradeUnit LitrePerMinute { get; } = Of("l-per-min", "L/min", QuantityKind.Flow, new(1, 60000), ["L/min", "l/min", "lpm", "litre/min", "litres/min", "litres/minute", "litre/minute"]);
    public static TradeUnit LitrePerSecond { get; } = Of("l-per-s", "L/s", QuantityKind.Flow, new(1, 1000), ["L/s", "l/s", "litres/second"]);
    public static TradeUnit LitrePerHour { get; } = Of("l-per-h", "L/h", QuantityKind.Flow, new(1, 3600000), ["L/h", "l/h", "L/hr", "l/hr", "litres/hour"]);
    public static TradeUnit CubicCentimetrePerMinute { get; } = Of("cm3-per-min", "cm³/min", QuantityKind.Flow, new(1, 60000000), ["cm3/min", "cc/min", "ml/min", "mL/min"]);
    public static TradeUnit ImperialGallonPerMinute { get; } = Of("gal-imperial-per-min", "imp gal/min", QuantityKind.Flow, ImperialGallonInCubicMetres * new Exact(1, 60), ["imp gal/min", "imperial gallons/minute", "gal/min", "gals/min", "gallons/min", "gallons/minute", "gpm"]);
    public static TradeUnit UsGallonPerMinute { get; } = Of("gal-us-per-min", "US gal/min", QuantityKind.Flow, UsGallonInCubicMetres * new Exact(1, 60), ["US gal/min", "US gpm", "US gallons/minute", "gal/min", "gals/min", "gallons/min", "gallons/minute", "gpm"]);
    public static TradeUnit CubicInchPerSecond { get; } = Of("in3-per-s", "in³/s", QuantityKind.Flow, CubicInchInCubicMetres, ["in3/s", "cu in/s"]);

    public static TradeUnit RadianPerSecond { get; } = Of("rad-per-s", "rad/s", QuantityKind.RotationalSpeed, Exact.One, ["rad/s"]);
    public static TradeUnit RevolutionPerMinute { get; } = WithPi("rev-per-min", "rev/min", QuantityKind.RotationalSpeed, Math.PI / 30, ["rev/min", "revs/min", "rpm", "r p m", "r/min", "revs/minute", "rev/minute", "1/min"]);
    public static TradeUnit RevolutionPerSecond { get; } = WithPi("rev-per-s", "rev/s", QuantityKind.RotationalSpeed, 2 * Math.PI, ["rev/s", "revs/s", "rps", "r/s"]);

    public static TradeUnit Second { get; } = Of("s", "s", QuantityKind.Time, Exact.One, ["s", "sec", "secs", "second", "seconds"]);
    public static TradeUnit Minute { get; } = Of("min", "min", QuantityKind.Time, new(60, 1), ["min", "mins", "minute", "minutes"]);
    public static TradeUnit Hour { get; } = Of("h", "h", QuantityKind.Time, new(3600, 1), ["h", "hr", "hrs", "hour", "hours"]);

    public static TradeUnit SquareMetrePerSecond { get; } = Of("m2-per-s", "m²/s", QuantityKind.KinematicViscosity, Exact.One, ["m2/s"]);
    public static TradeUnit Centistokes { get; } = Of("cst", "cSt", QuantityKind.KinematicViscosity, Exact.Decimal(1, -6), ["cSt", "centistoke", "centistokes", "mm2/s"]);

    public static TradeUnit PascalSecond { get; } = Of("pas", "Pa s", QuantityKind.DynamicViscosity, Exact.One, ["Pa s", "Pas"]);
    public static TradeUnit Centipoise { get; } = Of("cp", "cP", QuantityKind.DynamicViscosity, Exact.Decimal(1, -3), ["cP", "centipoise", "mPa s", "mPas"]);

    public static TradeUnit KilogramPerCubicMetre { get; } = Of("kg-per-m3", "kg/m³", QuantityKind.Density, Exact.One, ["kg/m3"]);
    public static TradeUnit GramPerCubicCentimetre { get; } = Of("g-per-cm3", "g/cm³", QuantityKind.Density, new(1000, 1), ["g/cm3", "g/cc", "g/ml", "kg/l", "kg/L", "kg/dm3"]);
    public static TradeUnit PoundPerCubicInch { get; } = Of("lb-per-in3", "lb/in³", QuantityKind.Density, Over(PoundInKilograms, CubicInchInCubicMetres), ["lb/in3", "lb/cu in"]);

    public static TradeUnit PerKelvin { get; } = Of("per-k", "1/K", QuantityKind.Expansion, Exact.One, ["1/K", "/K", "1/°C", "/°C", "/C", "1/C", "/deg C", "1/deg C", "/degree C"]);
    public static TradeUnit PerFahrenheitDegree { get; } = Of("per-degf", "1/°F", QuantityKind.Expansion, new(9, 5), ["1/°F", "/°F", "/F", "1/F", "/deg F", "1/deg F", "/degree F", "in/in/°F", "in/in °F"]);
    public static TradeUnit PartPerMillionPerKelvin { get; } = Of("ppm-per-k", "ppm/K", QuantityKind.Expansion, Exact.Decimal(1, -6), ["ppm/K", "ppm/°C", "µm/m K", "um/m K", "µm/m/K", "µm/m °C", "µm/m/°C"]);
    public static TradeUnit PartPerMillionPerFahrenheitDegree { get; } = Of("ppm-per-degf", "ppm/°F", QuantityKind.Expansion, Exact.Decimal(1, -6) * new Exact(9, 5), ["ppm/°F", "µin/in °F", "µin/in/°F"]);

    /// <summary>A bare number that is meant to be one.</summary>
    public static TradeUnit One { get; } = Of("none", "", QuantityKind.Number, Exact.One, []);
    public static TradeUnit Percent { get; } = Of("percent", "%", QuantityKind.Number, Exact.Decimal(1, -2), ["%", "per cent", "percent"]);

    public static IReadOnlyList<TradeUnit> All { get; } =
    [
        Inch, Thou, Tenth, MicroInch, Foot, Millimetre, TenthMillimetre, Micrometre, Centimetre, Metre,
        Kelvin, Celsius, Fahrenheit, KelvinDifference, CelsiusDifference, FahrenheitDifference,
        Pascal, Kilopascal, Megapascal, Bar, Millibar, Psi, KilogramForcePerSquareCentimetre, Atmosphere,
        NewtonMetre, PoundForceFoot, PoundForceInch, KilogramForceMetre, KilogramForceCentimetre,
        Newton, Kilonewton, PoundForce, KilogramForce, OunceForce,
        NewtonPerMetre, NewtonPerMillimetre, PoundForcePerInch, KilogramForcePerMillimetre,
        Kilogram, Gram, Milligram, Pound, Ounce,
        Radian, Degree, MinuteOfArc, SecondOfArc, Turn,
        SquareMetre, SquareMillimetre, SquareCentimetre, SquareInch,
        CubicMetre, Litre, CubicCentimetre, CubicMillimetre, CubicInch, ImperialGallon, UsGallon, ImperialPint, UsPint, ImperialQuart, UsQuart,
        CubicMetrePerSecond, CubicMetrePerHour, LitrePerMinute, LitrePerSecond, LitrePerHour, CubicCentimetrePerMinute, ImperialGallonPerMinute, UsGallonPerMinute, CubicInchPerSecond,
        RadianPerSecond, RevolutionPerMinute, RevolutionPerSecond,
        Second, Minute, Hour,
        SquareMetrePerSecond, Centistokes, PascalSecond, Centipoise,
        KilogramPerCubicMetre, GramPerCubicCentimetre, PoundPerCubicInch,
        PerKelvin, PerFahrenheitDegree, PartPerMillionPerKelvin, PartPerMillionPerFahrenheitDegree,
        One, Percent,
    ];

    private static TradeUnit[] Usual(QuantityKind kind, bool si) => kind switch
    {
        QuantityKind.Length => si ? [Metre] : [Inch, Thou, Millimetre],
        QuantityKind.Temperature => si ? [Kelvin] : [Fahrenheit, Celsius],
        QuantityKind.TemperatureDifference => si ? [KelvinDifference] : [FahrenheitDifference, CelsiusDifference],
        QuantityKind.Pressure => si ? [Pascal] : [Psi, Bar, Kilopascal],
        QuantityKind.Torque => si ? [NewtonMetre] : [PoundForceFoot, PoundForceInch, NewtonMetre],
        QuantityKind.Force => si ? [Newton] : [PoundForce, Newton],
        QuantityKind.Stiffness => si ? [NewtonPerMetre] : [PoundForcePerInch, NewtonPerMillimetre],
        QuantityKind.Mass => si ? [Kilogram] : [Pound, Ounce, Kilogram, Gram],
        QuantityKind.Angle => si ? [Radian] : [Degree, Radian],
        QuantityKind.Area => si ? [SquareMetre] : [SquareInch, SquareMillimetre],
        QuantityKind.Volume => si ? [CubicMetre] : [ImperialGallon, UsGallon, Litre, CubicCentimetre],
        QuantityKind.Flow => si ? [CubicMetrePerSecond] : [ImperialGallonPerMinute, UsGallonPerMinute, LitrePerMinute],
        QuantityKind.RotationalSpeed => si ? [RadianPerSecond] : [RevolutionPerMinute, RadianPerSecond],
        QuantityKind.Time => si ? [Second] : [Second, Minute, Hour],
        QuantityKind.KinematicViscosity => si ? [SquareMetrePerSecond] : [Centistokes, SquareMetrePerSecond],
        QuantityKind.DynamicViscosity => si ? [PascalSecond] : [Centipoise, PascalSecond],
        QuantityKind.Density => si ? [KilogramPerCubicMetre] : [KilogramPerCubicMetre, GramPerCubicCentimetre],
        QuantityKind.Expansion => si ? [PerKelvin] : [PartPerMillionPerKelvin, PerKelvin, PerFahrenheitDegree],
        QuantityKind.Number => [One],
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind of quantity."),
    };

    private static TradeUnit Of(string code, string symbol, QuantityKind kind, Exact factor, string[] spellings, string[]? onlyWhereExpected = null) =>
        new(code, symbol, kind, factor, factor.ToDouble(), default, spellings, onlyWhereExpected ?? []);

    private static TradeUnit WithPi(string code, string symbol, QuantityKind kind, double factor, string[] spellings, string[]? onlyWhereExpected = null) =>
        new(code, symbol, kind, null, factor, default, spellings, onlyWhereExpected ?? []);

    private static Exact Over(Exact above, Exact below) => above * new Exact(below.Denominator, below.Numerator);
}
