using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Thoubook.Mechanics.Metrology;

namespace Thoubook.Mechanics.Tests;

/// <summary>Reads the doc comments that are shipped: units of every number, a source and a check for every sum.</summary>
public sealed partial class DocCommentsTests
{
    private static readonly string[] Units =
    [
        "-", "any", "m", "m²", "m³", "m/s", "K", "1/K", "Pa", "N", "N m", "N/m", "rad", "rad/s", "s", "kg", "m³/s", "m²/s", "Pa s", "kg/m³", "W", "J/(kg K)", "W/(m K)",
    ];

    private static readonly Assembly Mechanics = typeof(Readings).Assembly;
    private static readonly Dictionary<string, XElement> Comments = XDocument.Load(Path.ChangeExtension(Mechanics.Location, ".xml")).Descendants("member").ToDictionary(member => (string)member.Attribute("name")!);

    [Fact]
    public void EveryNumber_StatesItsUnit()
    {
        var missing = new List<string>();
        var seen = 0;
        foreach (var (method, comment) in PublicMethods())
        {
            foreach (var parameter in method.GetParameters().Where(parameter => IsNumber(parameter.ParameterType)))
            {
                seen++;
                var text = comment.Elements("param").SingleOrDefault(param => (string?)param.Attribute("name") == parameter.Name)?.Value.Trim() ?? "";
                if (!StartsWithUnit(text))
                    missing.Add($"{Name(method)}, {parameter.Name}: \"{text}\"");
            }

            if (IsNumber(method.ReturnType) && !StartsWithUnit(comment.Element("returns")?.Value.Trim() ?? ""))
                missing.Add($"{Name(method)}, what it returns");
        }

        foreach (var property in Types().SelectMany(type => type.GetProperties(Declared)).Where(property => IsNumber(property.PropertyType)))
        {
            seen++;
            if (!StartsWithUnit(OfProperty(property)))
                missing.Add($"{property.DeclaringType!.Name}.{property.Name}");
        }

        Assert.True(missing.Count == 0, "A number without its unit: begin its comment with [unit], one of " + string.Join(" ", Units) + ".\n" + string.Join("\n", missing));
        Assert.True(seen > 100, $"Only {seen} numbers were found: the test looks in the wrong place.");
    }

    [Fact]
    public void EverySum_NamesItsSourceAndItsCheck()
    {
        var tests = typeof(DocCommentsTests).Assembly.GetTypes().Select(type => type.Name).ToHashSet();
        var missing = new List<string>();
        var seen = 0;
        foreach (var (method, comment) in PublicMethods())
        {
            var space = method.DeclaringType!.Namespace!;
            if (space.EndsWith(".Numerics", StringComparison.Ordinal) || space.EndsWith(".Sums", StringComparison.Ordinal) || !method.GetParameters().Any(parameter => IsNumber(parameter.ParameterType)))
                continue;
            seen++;
            var remarks = comment.Element("remarks")?.Value ?? "";
            if (!Source().IsMatch(remarks))
                missing.Add($"{Name(method)}: the remarks want \"Source: … (published | from memory | common practice | computed …).\"");
            if (Check().Match(remarks) is not { Success: true } check)
                missing.Add($"{Name(method)}: the remarks want \"Check: the test class.\"");
            else if (!tests.Contains(check.Groups["test"].Value))
                missing.Add($"{Name(method)}: there is no test class {check.Groups["test"].Value}");
        }

        Assert.True(missing.Count == 0, string.Join("\n", missing));
        Assert.True(seen > 40, $"Only {seen} sums were found: the test looks in the wrong place.");
    }

    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static IEnumerable<Type> Types() => Mechanics.GetExportedTypes().Where(type => !typeof(Delegate).IsAssignableFrom(type));

    private static IEnumerable<(MethodInfo Method, XElement Comment)> PublicMethods() =>
        from type in Types()
        where !type.IsInterface
        from method in type.GetMethods(Declared)
        where !method.IsSpecialName && method.GetBaseDefinition() == method && !method.Name.StartsWith('<') && !IsMadeByTheCompiler(method)
        let comment = CommentOf(method)
        where comment.Element("inheritdoc") is null
        select (method, comment);

    private static bool IsMadeByTheCompiler(MethodInfo method) =>
        method.Name is "Equals" or "GetHashCode" or "ToString" or "Deconstruct" or "<Clone>$" || method.IsDefined(typeof(System.Runtime.CompilerServices.CompilerGeneratedAttribute));

    private static XElement CommentOf(MethodInfo method)
    {
        // The identifiers of overloads differ only in their parameters; each parameter's name is in its own comment.
        var start = $"M:{method.DeclaringType!.FullName!.Replace('+', '.')}.{method.Name}";
        var names = method.GetParameters().Select(parameter => parameter.Name).ToArray();
        return Comments
            .Where(pair => pair.Key == start || pair.Key.StartsWith(start + "(", StringComparison.Ordinal) || pair.Key.StartsWith(start + "`", StringComparison.Ordinal))
            .Select(pair => pair.Value)
            .FirstOrDefault(comment => comment.Element("inheritdoc") is not null || names.SequenceEqual(comment.Elements("param").Select(param => (string?)param.Attribute("name"))))
            ?? throw new InvalidOperationException($"{Name(method)} has no doc comment with a line for each of its parameters in order.");
    }

    /// <summary>A property's own summary, or what the record says of the parameter that makes it.</summary>
    private static string OfProperty(PropertyInfo property)
    {
        var type = property.DeclaringType!.FullName!.Replace('+', '.');
        var own = property.GetIndexParameters().Length > 0
            ? Comments.Single(pair => pair.Key.StartsWith($"P:{type}.{property.Name}(", StringComparison.Ordinal)).Value
            : Comments.GetValueOrDefault($"P:{type}.{property.Name}");
        if (own?.Element("summary") is { } summary)
            return summary.Value.Trim();
        return Comments.GetValueOrDefault($"T:{type}")?.Elements("param").SingleOrDefault(param => (string?)param.Attribute("name") == property.Name)?.Value.Trim() ?? "";
    }

    private static bool IsNumber(Type type)
    {
        if (type.IsByRef)
            type = type.GetElementType()!;
        if (type.IsGenericType && type.GetGenericTypeDefinition() is { } open && (open == typeof(ReadOnlySpan<>) || open == typeof(Span<>) || open == typeof(Nullable<>) || open == typeof(IReadOnlyList<>)))
            type = type.GetGenericArguments()[0];
        return type == typeof(double) || type == typeof(int) || type == typeof(ulong);
    }

    private static bool StartsWithUnit(string text) => Unit().Match(text) is { Success: true } match && Units.Contains(match.Groups["unit"].Value);

    private static string Name(MethodInfo method) => $"{method.DeclaringType!.Name}.{method.Name}";

    [GeneratedRegex(@"^\[(?<unit>[^\]]+)\]", RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture)]
    private static partial Regex Unit();

    [GeneratedRegex(@"Source: .+\((published|from memory|common practice|computed)[^)]*\)", RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture)]
    private static partial Regex Source();

    [GeneratedRegex(@"Check: (?<test>\w+)\.", RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture)]
    private static partial Regex Check();
}
