using System.Collections;
using System.Reflection;
using CsCheck;
using Thoubook.Files.EngineFiles;
using Thoubook.Files.Readings;
using Thoubook.Record;

namespace Thoubook.Files.Tests.EngineFiles;

public sealed class RoundTripTests
{
    [Fact]
    public void ARecord_WrittenAndRead_IsTheSameRecord() => ComesBack(RandomRecords.Records, 1500);

    [Fact]
    public void WhatAnEngineIsClosedUpBy_WrittenAndRead_IsTheSame() => ComesBack(RandomClosings.Records, 600);

    private static void ComesBack(Gen<EngineRecord> records, int times) => records.Sample(
        record =>
        {
            var text = EngineFile.Write(record);
            var outcome = EngineFile.Read(text, "random.yaml", TestFiles.Terms);
            Assert.True(outcome.IsOk(out var read, out var problems), string.Join('\n', problems) + "\n" + text);
            var difference = Difference(record, read, "");
            Assert.True(difference is null, difference + "\n" + text);
            Assert.Equal(text, EngineFile.Write(read));
        },
        iter: times,
        threads: 1);

    public static TheoryData<string> Demos => [.. Directory.GetDirectories(Path.Combine(TestFiles.Root, "demo")).Select(Path.GetFileName).OfType<string>()];

    [Theory]
    [MemberData(nameof(Demos))]
    public void ADemoEngine_WrittenAndRead_IsTheSameRecord(string demo)
    {
        var engine = Ok(EngineFile.Read(TestFiles.Read($"demo/{demo}/engine.yaml"), "engine.yaml", TestFiles.Terms));
        var whole = Joining.Join(engine, Ok(ReadingsFile.Read(TestFiles.Read($"demo/{demo}/readings.csv"), "readings.csv", engine, TestFiles.Terms)));

        var text = EngineFile.Write(whole);
        var read = Ok(EngineFile.Read(text, "export.yaml", TestFiles.Terms));
        Assert.Null(Difference(whole, read, ""));
        Assert.Equal(text, EngineFile.Write(read));
    }

    private static EngineRecord Ok(Outcome<EngineRecord> outcome)
    {
        Assert.True(outcome.IsOk(out var record, out var problems), string.Join('\n', problems));
        return record;
    }

    /// <summary>The first place in which two records differ, in everything that they hold but the workshop's own numbers.</summary>
    internal static string? Difference(object? a, object? b, string where)
    {
        if (a is null || b is null || a is string || a.GetType().IsPrimitive || a.GetType().IsEnum || a.GetType().Namespace is "NodaTime" || a is Guid or Thoubook.Record.Quantities.TradeUnit)
            return Equals(a, b) ? null : $"{where}: {a ?? "nothing"} became {b ?? "nothing"}";
        if (a is IEnumerable list)
        {
            var (ours, theirs) = (list.Cast<object>().ToList(), ((IEnumerable)b).Cast<object>().ToList());
            return ours.Count != theirs.Count
                ? $"{where}: {ours.Count} became {theirs.Count}"
                : ours.Zip(theirs).Select((pair, i) => Difference(pair.First, pair.Second, $"{where}[{i}]")).FirstOrDefault(d => d is not null);
        }

        if (a.GetType() != b.GetType())
            return $"{where}: {a.GetType().Name} became {b.GetType().Name}";
        return a.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.GetIndexParameters().Length == 0 && p.Name is not ("Sequence" or "Index" or "Facts" or "Supposed" or "Revision" or "Parent" or "Given" or "UnitOfLimits"))
            .Select(p => Difference(p.GetValue(a), p.GetValue(b), $"{where}.{p.Name}"))
            .FirstOrDefault(d => d is not null);
    }
}
