using Thoubook.Record.Measures;

namespace Thoubook.Appraisal.Verdicts;

/// <summary>From the limits as printed to the limits that bind: the repair size, what the worn column says, and nil clearance.</summary>
internal static class BindingLimitsOf
{
    public static BindingLimits Dimension(Dimension dimension, LimitSet? set, RepairSize? size)
    {
        if (set is null)
            return BindingLimits.None with { Wear = dimension.Wear ?? WearDirection.None };
        var step = size?.Step.Si ?? 0;
        var limits = set.Limits;
        return Bind(limits, limits.NewLeast?.Si + step, limits.NewGreatest?.Si + step, limits.WornLeast?.Si + step, limits.WornGreatest?.Si + step, dimension.Wear ?? WearSeen(limits));
    }

    public static BindingLimits Fit(Fit fit, LimitSet? set)
    {
        var wear = fit.Wear ?? (fit.FitKind switch
        {
            FitKind.Nip => WearDirection.Shrinks,
            FitKind.Protrusion => set is null ? WearDirection.None : WearSeen(set.Limits),
            _ => WearDirection.Grows,
        });
        var limits = set?.Limits ?? Limits.None;
        var newLeast = limits.NewLeast?.Si;
        if (newLeast is null && NilIsAFailure(fit, null))
            newLeast = 0;
        return Bind(limits, newLeast, limits.NewGreatest?.Si, limits.WornLeast?.Si, limits.WornGreatest?.Si, wear);
    }

    /// <summary>Whether nil is a hard limit: for everything that must run free, unless its own least limit allows tightness.</summary>
    public static bool NilIsAFailure(Fit fit, double? newLeast) =>
        fit.FitKind is FitKind.Clearance or FitKind.EndFloat or FitKind.Backlash or FitKind.Gap && newLeast is null or >= 0;

    private static BindingLimits Bind(Limits limits, double? newLeast, double? newGreatest, double? wornLeast, double? wornGreatest, WearDirection wear)
    {
        if (limits.Wear == WearAllowance.NotAWearItem)
            return new(newLeast, newGreatest, newLeast, newGreatest, WearDirection.None);
        if (limits.Wear == WearAllowance.NoWearPermitted)
            return new(newLeast, newGreatest, newLeast, newGreatest, wear);
        return new(newLeast, newGreatest, wornLeast ?? newLeast, wornGreatest ?? newGreatest, wear);
    }

    private static WearDirection WearSeen(Limits limits) => limits switch
    {
        { WornGreatest: not null, WornLeast: null } => WearDirection.Grows,
        { WornLeast: not null, WornGreatest: null } => WearDirection.Shrinks,
        _ => WearDirection.None,
    };
}
