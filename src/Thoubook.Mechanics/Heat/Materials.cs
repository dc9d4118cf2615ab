using System.Diagnostics.CodeAnalysis;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Heat;

/// <summary>One published or remembered figure for a coefficient of expansion.</summary>
/// <param name="What">The alloy or grade it was given for.</param>
/// <param name="Least">[1/K] the figure, or the lower end of a range.</param>
/// <param name="Greatest">[1/K] the figure, or the upper end of a range.</param>
/// <param name="Source">Where it was found, with its mark.</param>
public sealed record ExpansionFigure(string What, double Least, double Greatest, string Source);

/// <summary>A material as the trade names it, with its expansion.</summary>
/// <param name="Name">The usual name.</param>
/// <param name="OtherNames">Other names for the same.</param>
/// <param name="Figures">The figures its expansion rests on.</param>
public sealed record Material(string Name, IReadOnlyList<string> OtherNames, IReadOnlyList<ExpansionFigure> Figures)
{
    /// <summary>Least standard uncertainty as a share of the coefficient: one source alone is not believed better than this, nor several that copied each other.</summary>
    private const double LeastShare = 0.02;

    /// <summary>
    /// Best value: the median of the single figures, or the middle of the range where only ranges are known.
    /// Standard uncertainty: the whole spread of the figures taken as rectangular, at least 2 % of the value.
    /// </summary>
    public ExpansionCoefficient Expansion { get; } = Best(Figures);

    /// <summary>Every source, once.</summary>
    public string Source => string.Join("; ", Figures.Select(f => f.Source).Distinct(StringComparer.Ordinal));

    private static ExpansionCoefficient Best(IReadOnlyList<ExpansionFigure> figures)
    {
        var single = figures.Where(f => f.Greatest - f.Least < 1e-12).Select(f => f.Least).Order().ToArray();
        var (least, greatest) = (figures.Min(f => f.Least), figures.Max(f => f.Greatest));
        var value = single.Length == 0 ? 0.5 * (least + greatest) : 0.5 * (single[(single.Length - 1) / 2] + single[single.Length / 2]);
        return new ExpansionCoefficient(value, Math.Max((greatest - least) / Math.Sqrt(12), LeastShare * value));
    }
}

/// <summary>Materials of old engines and their expansion. A value from a certificate or a drawing is better: these are handbook figures.</summary>
public static partial class Materials
{
    /// <summary>Finds a material by the usual name or another name for it; capitals, hyphens and doubled spaces do not matter.</summary>
    /// <param name="name">The name as it was written.</param>
    /// <param name="material">The material, where it is known.</param>
    /// <param name="nearest">Known names nearest to one that is not known; empty where it is.</param>
    /// <returns>True where it is known.</returns>
    public static bool TryFind(string name, [NotNullWhen(true)] out Material? material, out IReadOnlyList<string> nearest)
    {
        ArgumentNullException.ThrowIfNull(name);
        var known = Index.ByName.TryGetValue(Key(name), out material);
        nearest = known ? [] : NearestName.To(Key(name), Index.ByName.Keys);
        return known;
    }

    private static string Key(string name) => string.Join(' ', name.ToLowerInvariant().Replace('-', ' ').Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));

    /// <summary>Made when first asked for, after the table.</summary>
    private static class Index
    {
        public static readonly Dictionary<string, Material> ByName = All
            .SelectMany(material => material.OtherNames.Prepend(material.Name).Select(name => (Key(name), material)))
            .ToDictionary(pair => pair.Item1, pair => pair.material, StringComparer.Ordinal);
    }
}
