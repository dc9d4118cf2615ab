using Thoubook.Appraisal.Estimates;

namespace Thoubook.Appraisal.Oil;

/// <summary>A doubt that nobody measured and that is assumed instead.</summary>
/// <param name="Source">What it is of.</param>
/// <param name="Value">[any] standard uncertainty, in its own unit.</param>
/// <param name="Stated">The same in words: <c>4 K, the same for all</c>.</param>
public sealed record AssumedDoubt(UncertaintySource Source, double Value, string Stated);

/// <summary>Every doubt that is assumed in the oil system (common practice), in one place; the user is told of each.</summary>
public static class OilDoubts
{
    /// <summary>[-] of where a shaft lies in its bearing, as eccentricity.</summary>
    public static AssumedDoubt Lying { get; } = new(new(SourceKind.Assumed, "where the shafts lie in their bearings"), 0.12, "0.12 of eccentricity, the same for all");

    /// <summary>[K] of how much warmer a film is.</summary>
    public static AssumedDoubt Films { get; } = new(new(SourceKind.Assumed, "how much warmer the films are than the oil that feeds them"), 4, "4 K, the same for all");

    /// <summary>[-] of the closed-form flow of a plain bearing beside a running one's.</summary>
    public static AssumedDoubt BearingLaw { get; } = new(new(SourceKind.Assumed, "the flow of a plain bearing by its closed form"), 0.08, "8 % of its flow, the same for all");

    /// <summary>[-] of a discharge coefficient taken from a book.</summary>
    public static AssumedDoubt Discharges { get; } = new(new(SourceKind.Assumed, "discharge coefficients of jets and valves"), 0.05, "5 %, the same for all");

    /// <summary>[-] of oil caught and timed: volume, time and the oil's temperature together.</summary>
    public static AssumedDoubt Caught { get; } = new(new(SourceKind.Assumed, "what was caught in a flow test"), 0.04, "4 %");

    public static IReadOnlyList<AssumedDoubt> All { get; } = [Lying, Films, BearingLaw, Discharges, Caught];

    /// <summary>How large a source was assumed to be, in words; null for one that was measured, read or looked up.</summary>
    public static string? Stated(UncertaintySource source) =>
        All.FirstOrDefault(d => d.Source == source || (d == Caught && source.Name.StartsWith(TestOf, StringComparison.Ordinal)))?.Stated;

    /// <summary>How the doubt of one flow test is named, its date after it.</summary>
    internal const string TestOf = "the flow test of ";
}
