using Thoubook.Mechanics.Oil;
using Thoubook.Mechanics.Pumps;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

/// <summary>What a pressure pump has to do at hot idle, at least: the main gauge at its least limit.</summary>
/// <param name="State">The state of the record.</param>
/// <param name="Speed">[rad/s] of the pump.</param>
/// <param name="Viscosity">[Pa·s]</param>
/// <param name="Pressure">[Pa] the least that the main gauge may show.</param>
public sealed record PumpDuty(OilState State, double Speed, double Viscosity, double Pressure)
{
    /// <summary>Null where the circuit does not say: no such state, oil or limit, or a scavenge pump.</summary>
    internal static PumpDuty? Of(OilCircuit? circuit, ElementDefinition? element)
    {
        if (circuit is not { States: [var state, ..], Gauges: [var main, ..] } || element is not { Kind: ElementKind.GearPump } || element.Value("need") is not null
            || state.Limits.FirstOrDefault(l => l.Gauge == main.Name)?.Least is not { } least || OilOf(circuit.Oil) is not { } oil || state.OilTemperature.Si is not (> 210 and < 640))
            return null;
        var ratio = element.Value("speed-ratio") is CircuitValue.Given { Quantity.Si: var given } ? given : 1;
        return new PumpDuty(state, state.Speed.Si * ratio, oil.DynamicViscosity(state.OilTemperature.Si), least.Si);
    }

    /// <summary>The pump's sizes with other end floats; null where one is not known or they cannot be.</summary>
    /// <param name="appraisal">The engine.</param>
    /// <param name="element">The pump in the circuit.</param>
    /// <param name="endFloat">[m] of the driver, there and then.</param>
    /// <param name="drivenEndFloat">[m] of the driven gear.</param>
    internal static GearPumpSizes? Sizes(EngineAppraisal appraisal, ElementDefinition element, double endFloat, double drivenEndFloat)
    {
        var sizes = new GearPumpSizes(
            (int)Of("teeth"), Of("tip-diameter"), Of("centre-distance"), Of("width"), Of("pressure-angle"), Of("module"), Math.Max(0, endFloat), Of("float-share"), Of("tip-clearance"),
            Of("root-diameter"), Of("hub-diameter"), Of("bush-clearance"), Of("bush-length"), Of("bush-diameter"))
        {
            DrivenEndFloat = Math.Max(0, drivenEndFloat),
            MeasuredDisplacement = element.Value("displacement") is null ? null : Of("displacement"),
        };
        return sizes.Fault == GearPumpFault.None ? sizes : null;

        double Of(string key) => element.Value(key) switch
        {
            CircuitValue.Given given => given.Quantity.Si,
            CircuitValue.Taken taken => appraisal[taken.Figure] switch
            {
                DimensionAppraisal { Details.Counting: { } counting } => counting.Value,
                FitAppraisal fit => (fit.Estimate ?? fit.States[0].Expected)?.Value ?? double.NaN,
                _ => double.NaN,
            },
            _ => element.Shape.Key(key)?.Default ?? 0,
        };
    }

    private static EngineOil? OilOf(OilChoice choice)
    {
        if (choice.Points is { Count: >= 2 } points)
        {
            var (cold, hot) = (points.MinBy(p => p.Temperature.Si)!, points.MaxBy(p => p.Temperature.Si)!);
            return ViscosityLine.Fault(cold.Temperature.Si, cold.Viscosity.Si, hot.Temperature.Si, hot.Viscosity.Si) == ViscosityPointsFault.None
                ? EngineOil.FromTwoPoints(cold.Temperature.Si, cold.Viscosity.Si, hot.Temperature.Si, hot.Viscosity.Si)
                : null;
        }

        return choice.Grade is { } grade && EngineOil.TryGrade(grade, out var oil, out _) ? oil : null;
    }
}
