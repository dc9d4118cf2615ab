using System.Collections.Immutable;
using System.Text;
using Thoubook.Files.Schedules;

namespace Thoubook.Files.Tests.Schedules;

/// <summary>Short ways to read a schedule in a test.</summary>
internal static class Understood
{
    public static ScheduleReading Read(byte[] bytes, ScheduleOptions? options = null)
    {
        var outcome = ScheduleReader.Read(bytes, "limits.csv", options ?? ScheduleOptions.None);
        Assert.True(outcome.IsOk(out var reading, out var problems), string.Join('\n', problems));
        return reading;
    }

    public static ScheduleReading Read(string text, ScheduleOptions? options = null) => Read(Encoding.UTF8.GetBytes(text), options);

    public static ScheduleOptions Confirming(params string[] codes) => new() { Confirmed = codes.ToImmutableHashSet() };

    /// <summary>Everything about the rows, for a failing test's message.</summary>
    public static string Show(ScheduleReading reading) => string.Join('\n', reading.Rows.Select(row =>
        $"{row.Row,3} {row.Kind.Word(),-12} {row.Name} new {Show(row.New)} worn {Show(row.Worn)} {row.Unit} {(row.WearAmount is { } wear ? $"wear {wear} " : "")}{row.Rule} {(row.ContinuationOf is { } of ? $"of {of} " : "")}{(row.Ask is { } ask ? $"ASK {ask.Code}: {ask.Why}" : "")}{string.Concat(row.Notes.Select(note => $" [{note}]"))}"));

    private static string Show(Bounds bounds) => bounds.IsEmpty ? "-" : $"{bounds.Min?.ToString() ?? ""}..{bounds.Max?.ToString() ?? ""}";
}
