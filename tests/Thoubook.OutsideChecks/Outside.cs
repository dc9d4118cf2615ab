using System.Reflection;
using System.Text.Json;
using Xunit;
using Xunit.v3;

namespace Thoubook.OutsideChecks;

/// <summary>Compares what the code got with what the outside says, and writes the comparison into the ledger of this test run.</summary>
public static class Outside
{
    private static readonly Lock Gate = new();
    private static readonly string LedgerFile = PrepareLedgerFile();

    /// <summary>Checks one quantity against the source that the running test names by attribute.</summary>
    /// <param name="quantity">What is compared, in words; with the source it identifies the check.</param>
    /// <param name="expected">The outside's value.</param>
    /// <param name="got">Our value, same unit.</param>
    /// <param name="tolerance">Absolute, same unit; say in the test why it is what it is.</param>
    public static void Check(string quantity, double expected, double got, double tolerance)
    {
        var source = SourceOfRunningTest();
        Check(quantity, expected, got, tolerance, source.Source, source.Kind);
    }

    /// <summary>The same within a relative tolerance.</summary>
    public static void CheckRelative(string quantity, double expected, double got, double relativeTolerance) =>
        Check(quantity, expected, got, Math.Abs(expected) * relativeTolerance);

    /// <summary>For tables whose rows name their own source.</summary>
    public static void Check(string quantity, double expected, double got, double tolerance, string source, string kind)
    {
        Assert.False(string.IsNullOrWhiteSpace(source), "A check against the outside needs a source.");
        var agrees = Math.Abs(got - expected) <= tolerance;
        Write(new Entry(quantity, source, kind, expected, got, tolerance, agrees));
        Assert.True(agrees, $"{quantity}: expected {expected:R} ({source}), got {got:R}; differs by {Math.Abs(got - expected):G3}, tolerance {tolerance:G3}.");
    }

    /// <summary>For answers in words (a verdict, an order, a name).</summary>
    public static void CheckWord(string quantity, string expected, string got)
    {
        var source = SourceOfRunningTest();
        var agrees = string.Equals(expected, got, StringComparison.Ordinal);
        Write(new Entry(quantity, source.Source, source.Kind, expected, got, 0, agrees));
        Assert.True(agrees, $"{quantity}: expected {expected} ({source.Source}), got {got}.");
    }

    private static SourceAttribute SourceOfRunningTest()
    {
        var method = (TestContext.Current.TestMethod as IXunitTestMethod)?.Method
            ?? throw new InvalidOperationException("Outside.Check is for use inside a test.");
        return method.GetCustomAttribute<SourceAttribute>()
            ?? method.DeclaringType?.GetCustomAttribute<SourceAttribute>()
            ?? throw new InvalidOperationException($"{method.DeclaringType?.Name}.{method.Name} checks against the outside and names no source.");
    }

    private static void Write(Entry entry)
    {
        var line = JsonSerializer.Serialize(entry, JsonSerializerOptions.Web);
        lock (Gate)
        {
            File.AppendAllText(LedgerFile, line + "\n");
        }
    }

    private static string PrepareLedgerFile()
    {
        var folder = Environment.GetEnvironmentVariable("THOUBOOK_LEDGER");
        if (string.IsNullOrEmpty(folder))
        {
            var at = new DirectoryInfo(AppContext.BaseDirectory);
            while (at is not null && at.Name != "artifacts")
                at = at.Parent;
            folder = Path.Combine(at?.FullName ?? Path.GetTempPath(), "outside-checks");
        }

        Directory.CreateDirectory(folder);
        var file = Path.Combine(folder, $"{Assembly.GetEntryAssembly()?.GetName().Name}.jsonl");
        File.Delete(file);
        return file;
    }

    private sealed record Entry(string Quantity, string Source, string Kind, object Expected, object Got, double Tolerance, bool Agrees);
}
