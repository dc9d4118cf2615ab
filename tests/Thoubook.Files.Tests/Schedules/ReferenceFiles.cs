using System.Text.Json;

namespace Thoubook.Files.Tests.Schedules;

/// <summary>Schedules copied from published manuals, and what each line of them means.</summary>
internal static class ReferenceFiles
{
    public static string Folder { get; } = Find();

    public static byte[] Csv(string name) => File.ReadAllBytes(Path.Combine(Folder, $"{name}.csv"));

    public static JsonElement[] Rows(string name)
    {
        using var document = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Folder, $"{name}.expected.json")));
        return [.. document.RootElement.GetProperty("rows").EnumerateArray().Select(row => row.Clone())];
    }

    private static string Find()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (at is not null && !Directory.Exists(Path.Combine(at.FullName, "tests", "reference", "schedules")))
            at = at.Parent;
        return Path.Combine(at?.FullName ?? throw new DirectoryNotFoundException("tests/reference/schedules"), "tests", "reference", "schedules");
    }
}
