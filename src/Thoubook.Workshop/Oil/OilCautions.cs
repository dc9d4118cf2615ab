using Thoubook.Record;

namespace Thoubook.Workshop.Oil;

/// <summary>Where the oil system can do harm: said at the same place by every door.</summary>
public static class OilCautions
{
    public static Caution Prediction { get; } = new(
        "prediction",
        "These figures are predicted from sizes. The limits at which the engine is stopped are fixed from its documents before the start; no predicted band loosens them.");

    public static Caution FlowTest { get; } = new(
        "flow-test",
        "Flow test: ignition dead and plugs out, hot oil under pressure behind every union, hands clear of the crank while it is turned. Oil may lie on a piston afterwards: turn by hand with the plugs out before anything else turns it.");

    public static Caution ReliefValve { get; } = new(
        "relief-valve",
        "The spring of a relief valve is loaded under its cap: hold the cap down as it comes off, and never adjust it with the engine running.");

    public static Caution BlankedPort { get; } = new(
        "blanked-port",
        "A blanked port carries the full pressure behind it: a plug or plate made for that pressure, locked, and written down where it is.");

    public static Caution SuctionShutOff { get; } = new(
        "suction-shut-off",
        "The shut-off in the suction is proved open before the engine is turned: closed, it leaves every bearing dry.");
}
