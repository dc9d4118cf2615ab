using System.Globalization;
using Thoubook.Appraisal.Estimates;
using Thoubook.Appraisal.Oil;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;
using Thoubook.Web.Sheets;

namespace Thoubook.Web.Drawings.Oil;

/// <summary>In which units an oil system is lettered: pressures as its limits were typed, and flows and clearances as whoever types so writes them.</summary>
public sealed class OilUnits
{
    private OilUnits(OilCircuit circuit) => (Pressure, PressureDigits) = (circuit.PressureUnit, circuit.PressureDigits);

    public TradeUnit Pressure { get; }

    public TradeUnit Flow => IsImperial ? TradeUnit.ImperialGallonPerMinute : TradeUnit.LitrePerMinute;

    public TradeUnit Volume => IsImperial ? TradeUnit.ImperialPint : TradeUnit.Litre;

    public TradeUnit Clearance => IsImperial ? TradeUnit.Thou : TradeUnit.Micrometre;

    public bool IsImperial => Pressure == TradeUnit.Psi;

    /// <summary>Digits after the point of a pressure.</summary>
    public int PressureDigits { get; }

    public static OilUnits Of(OilCircuit? circuit) => new(circuit ?? new OilCircuit());

    /// <param name="pascals">[Pa]</param>
    public string PressureOf(double pascals) => Fixed(pascals / Pressure.Factor, PressureDigits);

    public string BandOf(Estimate estimate) => Fixed(estimate.Band / Pressure.Factor, PressureDigits);

    /// <summary>Half the width of a gauge's band; both ways where it is lopsided: <c>−5.1 +0.4</c>.</summary>
    public string BandOf(GaugeAnswer gauge)
    {
        var (down, up) = (Fixed((gauge.Pressure.Value - gauge.Low) / Pressure.Factor, PressureDigits), Fixed((gauge.High - gauge.Pressure.Value) / Pressure.Factor, PressureDigits));
        return down == up ? up : $"−{down} +{up}";
    }

    /// <summary>The same as a speaker says it.</summary>
    public string SpokenBandOf(GaugeAnswer gauge) => BandOf(gauge) is var band && band[0] == '−' ? band.Replace("−", "less ", StringComparison.Ordinal).Replace(" +", " or more ", StringComparison.Ordinal) : $"plus or minus {band}";

    /// <summary>With its sign: +1.6.</summary>
    public string DifferenceOf(double pascals) => Signed(pascals / Pressure.Factor, PressureDigits);

    /// <param name="cubicMetresPerSecond">[m³/s]</param>
    public string FlowOf(double cubicMetresPerSecond) => FlowText(cubicMetresPerSecond / Flow.Factor);

    public string FlowBandOf(Estimate estimate) => FlowText(estimate.Band / Flow.Factor);

    /// <summary>A clearance, float or bore in the small unit.</summary>
    /// <param name="metres">[m]</param>
    public string ClearanceOf(double metres) => Fixed(metres / Clearance.Factor, IsImperial ? 1 : 0);

    public string VolumeOf(double cubicMetres) => $"{Fixed(cubicMetres / Volume.Factor, 1)} {Volume.Symbol}";

    /// <param name="radiansPerSecond">[rad/s]</param>
    public static string SpeedOf(double radiansPerSecond) => $"{Said.Thousands((int)Math.Round(radiansPerSecond / TradeUnit.RevolutionPerMinute.Factor))} rev/min";

    /// <param name="kelvins">[K]</param>
    public static string TemperatureOf(double kelvins) => $"{Fixed(TradeUnit.Celsius.FromSi(kelvins), 0)} °C";

    /// <param name="share">[-]</param>
    public static string InHundred(double share) => $"{Fixed(share * 100, 0)} in 100";

    internal static string Fixed(double value, int digits)
    {
        if (!double.IsFinite(value))
            return "–";
        var text = Math.Abs(value).ToString("F" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return value < 0 && text.AsSpan().IndexOfAnyInRange('1', '9') >= 0 ? "−" + text : text;
    }

    private static string Signed(double value, int digits) => Fixed(value, digits) is var text && text[0] != '−' && text.AsSpan().IndexOfAnyInRange('1', '9') >= 0 ? "+" + text : text;

    /// <summary>Two figures that say something, at least.</summary>
    private static string FlowText(double flow) => Fixed(flow, Math.Abs(flow) switch { < 0.0005 => 0, < 0.0995 => 3, < 9.95 => 2, _ => 1 });
}
