using System.Diagnostics.CodeAnalysis;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Springs;

/// <summary>What a spring is wound of.</summary>
/// <param name="Name">The usual name.</param>
/// <param name="Shear">[Pa] shear modulus.</param>
/// <param name="Young">[Pa] modulus of elasticity.</param>
/// <param name="Source">Where the figures come from, with their mark.</param>
public sealed record SpringMaterial(string Name, double Shear, double Young, string Source);

/// <summary>Spring wires and their moduli.</summary>
public static class SpringMaterials
{
    private const string En = "EN 13906-1, table of materials (from memory)";

    private static readonly (SpringMaterial Material, string[] OtherNames)[] Table =
    [
        (new("drawn steel wire", 81.5e9, 206e9, "EN 10270-1 wire (published, seen in a spring maker's glossary)"), ["steel", "music wire", "piano wire", "patented wire"]),
        (new("oil-tempered steel wire", 79.5e9, 206e9, En), ["oil tempered", "chrome vanadium", "silicon chrome"]),
        (new("stainless wire", 70e9, 180e9, En), ["stainless", "18-8 stainless"]),
        (new("precipitation-hardened stainless wire", 73e9, 190e9, En), ["17-7 stainless"]),
        (new("phosphor bronze wire", 42e9, 115e9, En), ["bronze", "phosphor bronze"]),
        (new("brass wire", 39e9, 110e9, En), ["brass"]),
        (new("beryllium copper wire", 47e9, 120e9, En), ["beryllium copper"]),
        (new("hot rolled spring steel", 78.5e9, 206e9, En), ["hot rolled steel"]),
    ];

    /// <summary>What most springs of old engines are wound of.</summary>
    public static SpringMaterial Usual => Table[0].Material;

    /// <summary>Every material.</summary>
    public static IReadOnlyList<SpringMaterial> All { get; } = [.. Table.Select(row => row.Material)];

    /// <summary>Finds a material by its usual name or another name for it; capitals and hyphens do not matter.</summary>
    /// <param name="name">The name as it was written.</param>
    /// <param name="material">The material, where it is known.</param>
    /// <param name="nearest">Known names nearest to one that is not known; empty where it is.</param>
    /// <returns>True where it is known.</returns>
    public static bool TryFind(string name, [NotNullWhen(true)] out SpringMaterial? material, out IReadOnlyList<string> nearest)
    {
        ArgumentNullException.ThrowIfNull(name);
        material = Table.FirstOrDefault(row => row.OtherNames.Prepend(row.Material.Name).Any(known => Key(known) == Key(name))).Material;
        nearest = material is null ? NearestName.To(name, Table.SelectMany(row => row.OtherNames.Prepend(row.Material.Name))) : [];
        return material is not null;
    }

    private static string Key(string name) => string.Concat(name.Where(char.IsLetterOrDigit)).ToUpperInvariant();
}
