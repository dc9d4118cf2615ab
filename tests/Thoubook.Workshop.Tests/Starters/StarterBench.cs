using NodaTime;
using Thoubook.Files;
using Thoubook.Files.EngineFiles;
using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Workshop.Starters;

namespace Thoubook.Workshop.Tests.Starters;

internal static class StarterBench
{
    public static readonly IReadOnlyDictionary<string, string> None = new Dictionary<string, string>();

    public static readonly EngineRecord Bare = new(new Engine(new EngineName("Curlew"), Purpose.StandRun));

    public static EngineRecord Read(string sections) =>
        Ok(EngineFile.Read($"engine: {{ name: Curlew, purpose: stand-run }}\n{sections}\n", "engine.yaml", new ImportTerms(new LocalDateTime(2026, 1, 1, 0, 0).WithOffset(Offset.Zero), "owner")));

    /// <summary>The engine with what the starter adds.</summary>
    public static EngineRecord Laid(EngineRecord record, Started started) => Joining.Join(record, started.Added);

    public static EngineRecord Laid(EngineRecord record, string starter, params IEnumerable<(string Key, string Text)> answers) =>
        Laid(record, Ok(Ok(Starter.Find(starter)).On(record, answers.ToDictionary(a => a.Key, a => a.Text))));

    public static IEnumerable<string> Added(Started started) =>
    [
        .. started.Added.Parts.Select(p => p.Name.Path),
        .. started.Added.Dimensions.Concat<Figure>(started.Added.Fits).Select(f => f.Name.ToString()),
        .. started.Added.Spaces.Select(s => s.Name.Text),
        .. started.Added.Joints.Select(j => j.Name.Text),
        .. started.Added.Steps.Select(s => s.Name.Text),
    ];

    public static T Ok<T>(Outcome<T> outcome)
    {
        Assert.True(outcome.IsOk(out var value, out var problems), string.Join('\n', problems));
        return value;
    }
}
