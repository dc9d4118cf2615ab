using System.Text.RegularExpressions;
using NodaTime;
using Thoubook.Files;
using Thoubook.Files.EngineFiles;
using Thoubook.Record;
using Thoubook.Workshop.Starters;
using Thoubook.Workshop.Tests.Demo;

namespace Thoubook.Workshop.Tests.Starters;

/// <summary>The small demo engine, and the command lines by which its file says that it was closed up.</summary>
internal static partial class Wagtail
{
    private const string Command = "#   thoubook closeup start Wagtail ";

    private static readonly string File = System.IO.File.ReadAllText(Path.Combine(DemoWorkshop.Files, "wagtail", "engine.yaml"));

    /// <summary>The names of what its owner wrote; what the starters added stands below a remark in each section.</summary>
    private static readonly HashSet<string> Own = [.. Entry().Matches(Additions().Replace(File, "")).Select(m => m.Groups["name"].Value)];

    public static EngineRecord Record { get; } = StarterBench.Ok(EngineFile.Read(File, "engine.yaml", new ImportTerms(new LocalDateTime(2026, 1, 1, 0, 0).WithOffset(Offset.Zero), "owner")));

    /// <summary>Each starter with its answers, in the order in which they were run.</summary>
    public static IReadOnlyList<(Starter Starter, IReadOnlyDictionary<string, string> Answers)> Runs { get; } =
    [
        .. File.Split('\n').Where(l => l.StartsWith(Command, StringComparison.Ordinal)).Select(l => Words().Matches(l[Command.Length..]).Select(m => m.Value.Replace("\"", "", StringComparison.Ordinal)).ToList())
            .Select(w => (StarterBench.Ok(Starter.Find(w[0])), (IReadOnlyDictionary<string, string>)w.Skip(1).ToDictionary(a => a[..a.IndexOf('=')], a => a[(a.IndexOf('=') + 1)..]))),
    ];

    /// <summary>The dimensions and fits that the starters added.</summary>
    public static IEnumerable<FigureName> Added => Record.Dimensions.Select(d => d.Name).Concat(Record.Fits.Select(f => f.Name)).Where(n => !Own.Contains(n.ToString()));

    /// <summary>As it was before the starters.</summary>
    public static EngineRecord Begun(EngineRecord record) => record with
    {
        Parts = [.. record.Parts.Where(p => Own.Contains(p.Name.Path))],
        Dimensions = [.. record.Dimensions.Where(d => Own.Contains(d.Name.ToString()))],
        Fits = [.. record.Fits.Where(f => Own.Contains(f.Name.ToString()))],
        Spaces = [],
        Joints = [],
        Steps = [],
    };

    [GeneratedRegex("""^  # Added by the starters.*?(?=^\S)""", RegexOptions.Singleline | RegexOptions.Multiline | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Additions();

    [GeneratedRegex("^  (?<name>[a-z][^:]*):", RegexOptions.Multiline | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Entry();

    [GeneratedRegex("""("[^"]*"|[^ "]+)+""", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Words();
}
