using NodaTime;
using Thoubook.Files;
using Thoubook.Files.EngineFiles;
using Thoubook.Record;

namespace Thoubook.Workshop.Tests.Demo;

/// <summary>The files of the demo engines as they stand in the repository.</summary>
internal static class DemoFiles
{
    private static readonly ImportTerms Terms = new(new LocalDateTime(2026, 11, 1, 12, 0).WithOffset(Offset.Zero), "owner");

    public static string Root { get; } = FindRoot();

    public static string Readme { get; } = File.ReadAllText(Path.Combine(Root, "README.md"));

    /// <summary>The record that an engine's two files give.</summary>
    public static EngineRecord Read(string folder)
    {
        var (path, text) = WithReadings(folder);
        return Accepted(EngineFile.Read(text, path, Terms));
    }

    private static (string Path, string Text) WithReadings(string folder)
    {
        var path = Path.Combine(Root, folder, "engine.yaml");
        var readings = File.ReadLines(Path.Combine(Root, folder, "readings.csv")).Skip(1).Select(line => line.Split(',')).Select(c =>
            $"  - {{ of: {c[0]}, piece: {Text(c[1])}, place: {Text(c[2])}, value: \"{c[3]}\", gauge: {c[4]}, temperature: {c[5]}, by: {c[6]}, at: \"{c[7]}\" }}");
        return (path, File.ReadAllText(path).Replace("\nreadings:\n", $"\nreadings:\n{string.Join('\n', readings)}\n", StringComparison.Ordinal));

        static string Text(string cell) => cell.Length == 0 ? "~" : cell;
    }

    private static EngineRecord Accepted(Outcome<EngineRecord> read) =>
        read.IsOk(out var record, out var problems) ? record : throw new Xunit.Sdk.XunitException(string.Join('\n', problems));

    private static string FindRoot()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "thoubook.slnx")))
                return Path.Combine(at.FullName, "demo");
        }

        throw new DirectoryNotFoundException("The tests run inside the repository.");
    }
}
