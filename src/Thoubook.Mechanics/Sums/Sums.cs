using Thoubook.Mechanics.Fits;
using Thoubook.Mechanics.Flow;
using Thoubook.Mechanics.Gears;
using Thoubook.Mechanics.Heat;
using Thoubook.Mechanics.Metrology;
using Thoubook.Mechanics.Oil;
using Thoubook.Mechanics.Pumps;
using Thoubook.Mechanics.Springs;
using Thoubook.Mechanics.Valves;

namespace Thoubook.Mechanics.Sums;

/// <summary>Every sum that can be asked by name.</summary>
public static class Sums
{
    /// <summary>In the order of the alphabet.</summary>
    public static IReadOnlyList<Sum> All { get; } =
    [
        AnnulusFlowSum.Description,
        CentrifugalHeadSum.Description,
        ConformanceSum.Description,
        ExpansionSum.Description,
        FillingLimitSum.Description,
        GearPumpSum.Description,
        GearPumpPowerSum.Description,
        GearPumpSlipSum.Description,
        GroovedBearingFlowSum.Description,
        HoleFedBearingFlowSum.Description,
        MeetingTeethSum.Description,
        OilPropertiesSum.Description,
        OrificeFlowSum.Description,
        PipeLossSum.Description,
        PortSideSum.Description,
        PumpChambersSum.Description,
        ReliefSettingSum.Description,
        ReliefStagesSum.Description,
        ReliefValveSum.Description,
        SeatLeakSum.Description,
        SecondsSum.Description,
        SlotFlowSum.Description,
        SpringSum.Description,
        SpringTestSum.Description,
        StackSum.Description,
        StrainerLossSum.Description,
        UncertaintySum.Description,
        ViscositySum.Description,
        ViscosityIndexSum.Description,
    ];

    /// <summary>Finds a sum by name.</summary>
    /// <param name="name">What the asker calls it.</param>
    /// <param name="nearest">Known names nearest to one that is not known; empty where it is.</param>
    /// <returns>The sum, or nothing.</returns>
    public static Sum? Find(string name, out IReadOnlyList<string> nearest)
    {
        ArgumentNullException.ThrowIfNull(name);
        var found = All.FirstOrDefault(sum => sum.Name == name);
        nearest = found is null ? NearestName.To(name, All.Select(sum => sum.Name)) : [];
        return found;
    }
}
