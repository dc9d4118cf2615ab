using Thoubook.Appraisal.Oil;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;

namespace Thoubook.Workshop.Oil;

/// <summary>The speeds and oil temperatures that a map covers where nobody says otherwise: those of the engine's states and somewhat beyond.</summary>
/// <param name="Speeds">[rad/s] rising.</param>
/// <param name="Temperatures">[K] rising.</param>
public sealed record OilMapRange(IReadOnlyList<double> Speeds, IReadOnlyList<double> Temperatures)
{
    private const double SpeedStep = 100;
    private const double TemperatureStep = 10;
    private const int MostSteps = 12;

    public static OilMapRange Of(OilCircuit circuit, OilPoint hotIdle)
    {
        var speeds = circuit.States.Select(s => s.Speed.Si).Append(hotIdle.Speed).ToList();
        var temperatures = circuit.States.Select(s => s.OilTemperature.Si).Append(hotIdle.OilTemperature).ToList();
        return new(
            Steps(TradeUnit.RevolutionPerMinute, speeds.Min() * 0.8, speeds.Max() * 1.15, SpeedStep),
            Steps(TradeUnit.Celsius, temperatures.Min(), temperatures.Max() + TemperatureStep, TemperatureStep));
    }

    /// <summary>Round figures of the unit from at most the least to at least the greatest, not more than a page has room for.</summary>
    private static List<double> Steps(TradeUnit unit, double least, double greatest, double step)
    {
        var (from, to) = (unit.FromSi(least), unit.FromSi(greatest));
        while ((to - from) / step > MostSteps)
            step *= 2;
        var first = Math.Floor((from / step) + 1e-9);
        if (unit.Kind == QuantityKind.RotationalSpeed)
            first = Math.Max(first, 1);
        var last = Math.Max(Math.Ceiling((to / step) - 1e-9), first + 1);
        return [.. Enumerable.Range(0, (int)(last - first) + 1).Select(i => ((first + i) * step * unit.Factor) + unit.Offset)];
    }
}
