namespace Thoubook.Architecture.Tests;

/// <summary>The checkout that these tests were built from.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    public static IReadOnlyList<string> SourceProjects { get; } = [.. Directory.GetFiles(Path.Combine(Root, "src"), "*.csproj", SearchOption.AllDirectories).Order(StringComparer.Ordinal)];

    public static IEnumerable<string> SourceFiles(string project) =>
        Directory.EnumerateFiles(Path.Combine(Root, "src", project), "*.cs", SearchOption.AllDirectories).Order(StringComparer.Ordinal);

    private static string FindRoot()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "thoubook.slnx")))
                return at.FullName;
        }

        throw new DirectoryNotFoundException("The tests must be built inside the repository.");
    }
}
