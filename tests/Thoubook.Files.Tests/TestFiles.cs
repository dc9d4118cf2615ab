using System.Runtime.CompilerServices;
using NodaTime;

namespace Thoubook.Files.Tests;

/// <summary>Where the files of the source tree lie, and the terms under which tests take files in.</summary>
internal static class TestFiles
{
    public static readonly ImportTerms Terms = new(new LocalDateTime(2026, 12, 1, 9, 0).WithOffset(Offset.Zero), "owner");

    public static string Root { get; } = Path.GetFullPath(Path.Combine(Here(), "../.."));

    public static string Read(string path) => File.ReadAllText(Path.Combine(Root, path));

    /// <summary>The first fenced block of a kind in a page of the documentation.</summary>
    public static string Block(string page, string kind)
    {
        var text = Read(page);
        var start = text.IndexOf($"```{kind}\n", StringComparison.Ordinal) + kind.Length + 4;
        return text[start..text.IndexOf("```", start, StringComparison.Ordinal)];
    }

    private static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
