using NodaTime;
using Thoubook.Record.Closing;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Tests.Closing;

/// <summary>Short ways to write small records.</summary>
internal static class Bench
{
    public static Quantity Q(string text) => QuantityReader.Read(text, ReadingContext.None).IsOk(out var q, out _) ? q : throw new ArgumentException(text);

    public static EngineRecord Record(params Step[] steps) => new(new Engine(new EngineName("Stand"), Purpose.StandRun)) { Steps = steps };

    public static Step Step(string name, StepKind kind = StepKind.Place) => new(new StepName(name)) { Kind = kind, Time = Q("10 min") };

    public static PartName[] Parts(params string[] names) => [.. names.Select(PartName.Of)];

    public static SpaceName[] Spaces(params string[] names) => [.. names.Select(n => new SpaceName(n))];

    public static JointName[] Joints(params string[] names) => [.. names.Select(n => new JointName(n))];

    public static ComesAfter[] After(params string[] names) => [.. names.Select(n => new ComesAfter(new StepName(n), "so"))];

    public static OffsetDateTime At(int minute) => Instant.FromUtc(2026, 3, 1, 9, 0).Plus(Duration.FromMinutes(minute)).WithOffset(Offset.Zero);

    public static string[] Names(IEnumerable<Step> steps) => [.. steps.Select(s => s.Name.Text)];
}
