using Thoubook.Record.Quantities;
using UnitsNet;
using UnitsNet.Units;

namespace Thoubook.Record.Tests.Quantities;

public class TradeUnitTests
{
    /// <summary>
    /// Every unit of the catalogue with what UnitsNet says a number of it is in SI. Six compound units (lbf/in, kgf/mm, imperial gal/min, rev/min,
    /// rev/s, lb/in³) are put together from their parts, because UnitsNet's own factor for the whole is rounded: to between 6 and 12 figures.
    /// </summary>
    private static readonly Dictionary<TradeUnit, Func<double, double>> ByUnitsNet = new()
    {
        [TradeUnit.Inch] = x => Length.From(x, LengthUnit.Inch).Meters,
        [TradeUnit.Thou] = x => Length.From(x, LengthUnit.Mil).Meters,
        [TradeUnit.Tenth] = x => Length.From(x / 10, LengthUnit.Mil).Meters,
        [TradeUnit.MicroInch] = x => Length.From(x, LengthUnit.Microinch).Meters,
        [TradeUnit.Foot] = x => Length.From(x, LengthUnit.Foot).Meters,
        [TradeUnit.Millimetre] = x => Length.From(x, LengthUnit.Millimeter).Meters,
        [TradeUnit.TenthMillimetre] = x => Length.From(x / 10, LengthUnit.Millimeter).Meters,
        [TradeUnit.Micrometre] = x => Length.From(x, LengthUnit.Micrometer).Meters,
        [TradeUnit.Centimetre] = x => Length.From(x, LengthUnit.Centimeter).Meters,
        [TradeUnit.Metre] = x => Length.From(x, LengthUnit.Meter).Meters,
        [TradeUnit.Kelvin] = x => Temperature.From(x, TemperatureUnit.Kelvin).Kelvins,
        [TradeUnit.Celsius] = x => Temperature.From(x, TemperatureUnit.DegreeCelsius).Kelvins,
        [TradeUnit.Fahrenheit] = x => Temperature.From(x, TemperatureUnit.DegreeFahrenheit).Kelvins,
        [TradeUnit.KelvinDifference] = x => TemperatureDelta.From(x, TemperatureDeltaUnit.Kelvin).Kelvins,
        [TradeUnit.CelsiusDifference] = x => TemperatureDelta.From(x, TemperatureDeltaUnit.DegreeCelsius).Kelvins,
        [TradeUnit.FahrenheitDifference] = x => TemperatureDelta.From(x, TemperatureDeltaUnit.DegreeFahrenheit).Kelvins,
        [TradeUnit.Pascal] = x => Pressure.From(x, PressureUnit.Pascal).Pascals,
        [TradeUnit.Kilopascal] = x => Pressure.From(x, PressureUnit.Kilopascal).Pascals,
        [TradeUnit.Megapascal] = x => Pressure.From(x, PressureUnit.Megapascal).Pascals,
        [TradeUnit.Bar] = x => Pressure.From(x, PressureUnit.Bar).Pascals,
        [TradeUnit.Millibar] = x => Pressure.From(x, PressureUnit.Millibar).Pascals,
        [TradeUnit.Psi] = x => Pressure.From(x, PressureUnit.PoundForcePerSquareInch).Pascals,
        [TradeUnit.KilogramForcePerSquareCentimetre] = x => Pressure.From(x, PressureUnit.KilogramForcePerSquareCentimeter).Pascals,
        [TradeUnit.Atmosphere] = x => Pressure.From(x, PressureUnit.Atmosphere).Pascals,
        [TradeUnit.NewtonMetre] = x => Torque.From(x, TorqueUnit.NewtonMeter).NewtonMeters,
        [TradeUnit.PoundForceFoot] = x => Torque.From(x, TorqueUnit.PoundForceFoot).NewtonMeters,
        [TradeUnit.PoundForceInch] = x => Torque.From(x, TorqueUnit.PoundForceInch).NewtonMeters,
        [TradeUnit.KilogramForceMetre] = x => Torque.From(x, TorqueUnit.KilogramForceMeter).NewtonMeters,
        [TradeUnit.KilogramForceCentimetre] = x => Torque.From(x, TorqueUnit.KilogramForceCentimeter).NewtonMeters,
        [TradeUnit.Newton] = x => Force.From(x, ForceUnit.Newton).Newtons,
        [TradeUnit.Kilonewton] = x => Force.From(x, ForceUnit.Kilonewton).Newtons,
        [TradeUnit.PoundForce] = x => Force.From(x, ForceUnit.PoundForce).Newtons,
        [TradeUnit.KilogramForce] = x => Force.From(x, ForceUnit.KilogramForce).Newtons,
        [TradeUnit.OunceForce] = x => Force.From(x, ForceUnit.OunceForce).Newtons,
        [TradeUnit.NewtonPerMetre] = x => ForcePerLength.From(x, ForcePerLengthUnit.NewtonPerMeter).NewtonsPerMeter,
        [TradeUnit.NewtonPerMillimetre] = x => ForcePerLength.From(x, ForcePerLengthUnit.NewtonPerMillimeter).NewtonsPerMeter,
        [TradeUnit.PoundForcePerInch] = x => Force.From(x, ForceUnit.PoundForce).Newtons / Length.From(1, LengthUnit.Inch).Meters,
        [TradeUnit.KilogramForcePerMillimetre] = x => Force.From(x, ForceUnit.KilogramForce).Newtons / Length.From(1, LengthUnit.Millimeter).Meters,
        [TradeUnit.Kilogram] = x => Mass.From(x, MassUnit.Kilogram).Kilograms,
        [TradeUnit.Gram] = x => Mass.From(x, MassUnit.Gram).Kilograms,
        [TradeUnit.Milligram] = x => Mass.From(x, MassUnit.Milligram).Kilograms,
        [TradeUnit.Pound] = x => Mass.From(x, MassUnit.Pound).Kilograms,
        [TradeUnit.Ounce] = x => Mass.From(x, MassUnit.Ounce).Kilograms,
        [TradeUnit.Radian] = x => Angle.From(x, AngleUnit.Radian).Radians,
        [TradeUnit.Degree] = x => Angle.From(x, AngleUnit.Degree).Radians,
        [TradeUnit.MinuteOfArc] = x => Angle.From(x, AngleUnit.Arcminute).Radians,
        [TradeUnit.SecondOfArc] = x => Angle.From(x, AngleUnit.Arcsecond).Radians,
        [TradeUnit.Turn] = x => Angle.From(x, AngleUnit.Revolution).Radians,
        [TradeUnit.SquareMetre] = x => Area.From(x, AreaUnit.SquareMeter).SquareMeters,
        [TradeUnit.SquareMillimetre] = x => Area.From(x, AreaUnit.SquareMillimeter).SquareMeters,
        [TradeUnit.SquareCentimetre] = x => Area.From(x, AreaUnit.SquareCentimeter).SquareMeters,
        [TradeUnit.SquareInch] = x => Area.From(x, AreaUnit.SquareInch).SquareMeters,
        [TradeUnit.CubicMetre] = x => Volume.From(x, VolumeUnit.CubicMeter).CubicMeters,
        [TradeUnit.Litre] = x => Volume.From(x, VolumeUnit.Liter).CubicMeters,
        [TradeUnit.CubicCentimetre] = x => Volume.From(x, VolumeUnit.CubicCentimeter).CubicMeters,
        [TradeUnit.CubicMillimetre] = x => Volume.From(x, VolumeUnit.CubicMillimeter).CubicMeters,
        [TradeUnit.CubicInch] = x => Volume.From(x, VolumeUnit.CubicInch).CubicMeters,
        [TradeUnit.ImperialGallon] = x => Volume.From(x, VolumeUnit.ImperialGallon).CubicMeters,
        [TradeUnit.UsGallon] = x => Volume.From(x, VolumeUnit.UsGallon).CubicMeters,
        [TradeUnit.ImperialPint] = x => Volume.From(x, VolumeUnit.ImperialPint).CubicMeters,
        [TradeUnit.UsPint] = x => Volume.From(x, VolumeUnit.UsPint).CubicMeters,
        [TradeUnit.ImperialQuart] = x => Volume.From(x, VolumeUnit.ImperialQuart).CubicMeters,
        [TradeUnit.UsQuart] = x => Volume.From(x, VolumeUnit.UsQuart).CubicMeters,
        [TradeUnit.CubicMetrePerSecond] = x => VolumeFlow.From(x, VolumeFlowUnit.CubicMeterPerSecond).CubicMetersPerSecond,
        [TradeUnit.CubicMetrePerHour] = x => VolumeFlow.From(x, VolumeFlowUnit.CubicMeterPerHour).CubicMetersPerSecond,
        [TradeUnit.LitrePerMinute] = x => VolumeFlow.From(x, VolumeFlowUnit.LiterPerMinute).CubicMetersPerSecond,
        [TradeUnit.LitrePerSecond] = x => VolumeFlow.From(x, VolumeFlowUnit.LiterPerSecond).CubicMetersPerSecond,
        [TradeUnit.LitrePerHour] = x => VolumeFlow.From(x, VolumeFlowUnit.LiterPerHour).CubicMetersPerSecond,
        [TradeUnit.CubicCentimetrePerMinute] = x => VolumeFlow.From(x, VolumeFlowUnit.CubicCentimeterPerMinute).CubicMetersPerSecond,
        [TradeUnit.ImperialGallonPerMinute] = x => Volume.From(x, VolumeUnit.ImperialGallon).CubicMeters / Duration.From(1, DurationUnit.Minute).Seconds,
        [TradeUnit.UsGallonPerMinute] = x => VolumeFlow.From(x, VolumeFlowUnit.UsGallonPerMinute).CubicMetersPerSecond,
        [TradeUnit.CubicInchPerSecond] = x => Volume.From(x, VolumeUnit.CubicInch).CubicMeters,
        [TradeUnit.RadianPerSecond] = x => RotationalSpeed.From(x, RotationalSpeedUnit.RadianPerSecond).RadiansPerSecond,
        [TradeUnit.RevolutionPerMinute] = x => Angle.From(x, AngleUnit.Revolution).Radians / Duration.From(1, DurationUnit.Minute).Seconds,
        [TradeUnit.RevolutionPerSecond] = x => Angle.From(x, AngleUnit.Revolution).Radians / Duration.From(1, DurationUnit.Second).Seconds,
        [TradeUnit.Second] = x => Duration.From(x, DurationUnit.Second).Seconds,
        [TradeUnit.Minute] = x => Duration.From(x, DurationUnit.Minute).Seconds,
        [TradeUnit.Hour] = x => Duration.From(x, DurationUnit.Hour).Seconds,
        [TradeUnit.SquareMetrePerSecond] = x => KinematicViscosity.From(x, KinematicViscosityUnit.SquareMeterPerSecond).SquareMetersPerSecond,
        [TradeUnit.Centistokes] = x => KinematicViscosity.From(x, KinematicViscosityUnit.Centistokes).SquareMetersPerSecond,
        [TradeUnit.PascalSecond] = x => DynamicViscosity.From(x, DynamicViscosityUnit.PascalSecond).PascalSeconds,
        [TradeUnit.Centipoise] = x => DynamicViscosity.From(x, DynamicViscosityUnit.Centipoise).PascalSeconds,
        [TradeUnit.KilogramPerCubicMetre] = x => Density.From(x, DensityUnit.KilogramPerCubicMeter).KilogramsPerCubicMeter,
        [TradeUnit.GramPerCubicCentimetre] = x => Density.From(x, DensityUnit.GramPerCubicCentimeter).KilogramsPerCubicMeter,
        [TradeUnit.PoundPerCubicInch] = x => Mass.From(x, MassUnit.Pound).Kilograms / Volume.From(1, VolumeUnit.CubicInch).CubicMeters,
        [TradeUnit.PerKelvin] = x => CoefficientOfThermalExpansion.From(x, CoefficientOfThermalExpansionUnit.PerKelvin).PerKelvin,
        [TradeUnit.PerFahrenheitDegree] = x => CoefficientOfThermalExpansion.From(x, CoefficientOfThermalExpansionUnit.PerDegreeFahrenheit).PerKelvin,
        [TradeUnit.PartPerMillionPerKelvin] = x => CoefficientOfThermalExpansion.From(x, CoefficientOfThermalExpansionUnit.PpmPerKelvin).PerKelvin,
        [TradeUnit.PartPerMillionPerFahrenheitDegree] = x => CoefficientOfThermalExpansion.From(x, CoefficientOfThermalExpansionUnit.PpmPerDegreeFahrenheit).PerKelvin,
        [TradeUnit.One] = x => Ratio.From(x, RatioUnit.DecimalFraction).DecimalFractions,
        [TradeUnit.Percent] = x => Ratio.From(x, RatioUnit.Percent).DecimalFractions,
    };

    public static TheoryData<string> Codes => [.. TradeUnit.All.Select(unit => unit.Code)];

    /// <summary>Twelve figures: UnitsNet multiplies doubles, some of them factors of thirteen figures.</summary>
    [Theory]
    [MemberData(nameof(Codes))]
    [Computed("UnitsNet 5.75.1, the general units library of .NET")]
    public void ToSi_OfEveryUnit_AgreesWithUnitsNet(string code)
    {
        var unit = TradeUnit.FromCode(code)!;
        Outside.CheckRelative($"2.5 {unit.Symbol} ({unit.Kind.Word()}) in SI", ByUnitsNet[unit](2.5), unit.ToSi(new Exact(5, 2)), 1e-12);
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void FromSi_OfEveryUnit_UndoesToSi(string code)
    {
        var unit = TradeUnit.FromCode(code)!;
        Assert.Equal(2.5, unit.FromSi(unit.ToSi(new Exact(5, 2))), 1e-12);
    }

    [Theory]
    [InlineData("2.4010", 0.0609854)]
    [InlineData("0.0025", 0.0000635)]
    [InlineData("0.1", 0.00254)]
    [InlineData("1.2530", 0.0318262)]
    public void ToSi_OfInches_IsTheNearestDoubleOfTheExactProduct(string inches, double metres)
    {
        var number = Assert.Single(FigureLexer.Scan(inches)).Values[0].Value;
        Assert.Equal(metres, TradeUnit.Inch.ToSi(number));
    }

    [Fact]
    public void EveryUnit_HasACodeOfItsOwn_AndIsFoundBySymbolAndKind()
    {
        Assert.Equal(TradeUnit.All.Count, TradeUnit.All.Select(unit => unit.Code).Distinct(StringComparer.Ordinal).Count());
        Assert.All(TradeUnit.All.Where(unit => unit != TradeUnit.One), unit => Assert.Contains(unit, TradeUnit.FindAll(unit.Symbol, unit.Kind)));
        Assert.All(TradeUnit.All.Where(unit => unit.Symbol is not ("" or "lb")), unit => Assert.Same(unit, TradeUnit.Find(unit.Symbol, unit.Kind)));
    }

    [Fact]
    public void EverySpelling_OfEveryUnit_IsReadAsThatUnit() =>
        Assert.All(
            from unit in TradeUnit.All
            from spelling in unit.Spellings.Concat(unit.SpellingsWhereExpected)
            select (unit, spelling),
            pair => Assert.Contains(pair.unit, TradeUnit.FindAll(pair.spelling, pair.unit.Kind)));

    [Fact]
    public void Default_OfEveryKind_IsItsSiUnit() => Assert.All(Enum.GetValues<QuantityKind>(), kind =>
    {
        Assert.Equal((1.0, 0.0, kind), (TradeUnit.Default(kind).Factor, TradeUnit.Default(kind).Offset, TradeUnit.Default(kind).Kind));
        Assert.All(TradeUnit.Usual(kind), unit => Assert.Equal(kind, unit.Kind));
        Assert.NotEmpty(kind.Word());
    });

    [Fact]
    public void Find_WhatMayBeTwoUnits_IsNone()
    {
        Assert.Null(TradeUnit.Find("lb"));
        Assert.Same(TradeUnit.Pound, TradeUnit.Find("lb", QuantityKind.Mass));
        Assert.Null(TradeUnit.Find("gal"));
        Assert.Null(TradeUnit.Find("mil"));
        Assert.Null(TradeUnit.Find("furlong"));
        Assert.Same(TradeUnit.Inch, TradeUnit.Find("in."));
        Assert.Same(TradeUnit.FahrenheitDifference, TradeUnit.Find("°F", QuantityKind.TemperatureDifference));
    }

    [Fact]
    public void Show_WritesTheUnitWithItsFigures()
    {
        Assert.Equal("2.5 thou", TradeUnit.Thou.Show(0.0000635));
        Assert.Equal("1.2530 in", TradeUnit.Inch.Show(0.0318262, 4));
        Assert.Equal("0.0000 in", TradeUnit.Inch.Show(-1e-9, 4));
        Assert.Equal("30°", TradeUnit.Degree.Show(Math.PI / 6));
    }
}
