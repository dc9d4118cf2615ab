using System.Reflection;
using Thoubook.Record;

namespace Thoubook.Architecture.Tests;

/// <summary>Where the record has a type for a name, a verdict or a quantity, its public members use it and not a string or a bare number.</summary>
public sealed class RecordTypesTests
{
    // Property and parameter names that mean a thing for which a type exists.
    private static readonly Dictionary<string, Type> Typed = new(StringComparer.OrdinalIgnoreCase)
    {
        ["Part"] = typeof(PartName),
        ["Piece"] = typeof(PieceTag),
        ["Gauge"] = typeof(GaugeTag),
        ["Figure"] = typeof(FigureName),
        ["Place"] = typeof(PlaceName),
        ["Document"] = typeof(DocumentName),
        ["Value"] = typeof(Record.Quantities.Quantity),
        ["Temperature"] = typeof(Record.Quantities.Quantity),
        ["Purpose"] = typeof(Purpose),
    };

    [Fact]
    public void PublicMembers_NoStringWhereATypeExists()
    {
        var offenders = new List<string>();
        foreach (var type in typeof(EngineRecord).Assembly.GetExportedTypes())
        {
            foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly))
            {
                if (property.PropertyType == typeof(string) && Typed.TryGetValue(property.Name, out var right))
                    offenders.Add($"{type.Name}.{property.Name} is a string; use {right.Name}.");
            }

            foreach (var method in type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly).Where(m => !m.IsSpecialName))
            {
                foreach (var parameter in method.GetParameters())
                {
                    if (parameter.ParameterType == typeof(string) && parameter.Name is { } name && Typed.TryGetValue(name, out var right))
                        offenders.Add($"{type.Name}.{method.Name}({name}) is a string; use {right.Name}.");
                }
            }
        }

        Assert.Empty(offenders);
    }

    [Fact]
    public void Facts_AreImmutable()
    {
        foreach (var type in typeof(Fact).Assembly.GetExportedTypes().Where(t => t.IsSubclassOf(typeof(Fact))))
        {
            foreach (var property in type.GetProperties().Where(p => p.SetMethod is not null))
                Assert.Contains(typeof(System.Runtime.CompilerServices.IsExternalInit), property.SetMethod!.ReturnParameter.GetRequiredCustomModifiers());
        }
    }
}
