using System.Text.Json;
using Thoubook.Files.Schedules;

namespace Thoubook.Files.Tests.Schedules;

/// <summary>Every line of four schedules copied from published manuals, against what it means as worked out by hand.</summary>
[Published("Limits tables of three US Army technical manuals and one maker's manual; tests/reference/schedules/README.md")]
public class PublishedScheduleTests
{
    /// <summary>[m] The figures were multiplied as decimals.</summary>
    private const double Tolerance = 1e-9;

    /// <summary>Rows whose meaning the source's reader found certain and which are asked all the same, with the reason.</summary>
    private static readonly Dictionary<string, int[]> AskedThoughCertain = new()
    {
        // 61: a limit 0.059 in beyond a range of 0.002 in.
        ["s1-diesel-v12-stacked-units"] = [61],
        ["s2-camshaft-desired-clearance"] = [],
        ["s3-flat-four-millimetres"] = [],

        // Rules are asked, never applied.
        ["s4-rules-per-inch"] = [1, 4, 8, 9, 11, 13, 14, 16, 17, 18, 19, 20, 24],
    };

    public static TheoryData<string> Schedules =>
        ["s1-diesel-v12-stacked-units", "s2-camshaft-desired-clearance", "s3-flat-four-millimetres", "s4-rules-per-inch"];

    [Theory]
    [MemberData(nameof(Schedules))]
    public void EveryLine_ReadsAsTheManualMeansIt_OrAsks(string name)
    {
        var rows = Understood.Read(ReferenceFiles.Csv(name)).Rows;
        var expected = ReferenceFiles.Rows(name);
        var wrong = new List<string>();
        Assert.Equal(expected.Length, rows.Length);
        for (var index = 0; index < expected.Length; index++)
            Compare(name, expected[index], rows[index], wrong);
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    private static void Compare(string schedule, JsonElement expected, ScheduleRow row, List<string> wrong)
    {
        var at = $"row {row.Row} {row.Name}";
        var uncertain = expected.TryGetProperty("uncertain", out var flag) && flag.GetBoolean();
        if (uncertain != (row.Ask is not null) && !(row.Ask is not null && AskedThoughCertain[schedule].Contains(row.Row)))
            wrong.Add($"{at}: {(uncertain ? "not asked" : $"asked: {row.Ask!.Why}")}");
        if (row.Ask is null && !uncertain && row.Kind.Word() != expected.GetProperty("kind").GetString())
            wrong.Add($"{at}: kind {row.Kind.Word()}, expected {expected.GetProperty("kind").GetString()}");
        if (Int(expected, "continuation_of") != row.ContinuationOf)
            wrong.Add($"{at}: continues {row.ContinuationOf}, expected {Int(expected, "continuation_of")}");
        var quantity = expected.TryGetProperty("quantity", out var found) && found.ValueKind == JsonValueKind.Object ? found : default;
        var (source, suffix) = quantity.ValueKind == JsonValueKind.Object ? (quantity, "") : (expected, "_m");
        if (quantity.ValueKind == JsonValueKind.Object && row.Ask is null && row.Unit != quantity.GetProperty("unit").GetString())
            wrong.Add($"{at}: unit {row.Unit}, expected {quantity.GetProperty("unit").GetString()}");
        CompareFigure(at, "new min", Number(source, $"new_min{suffix}"), row.New.Min, row, wrong);
        CompareFigure(at, "new max", Number(source, $"new_max{suffix}"), row.New.Max, row, wrong);
        CompareFigure(at, "worn min", Number(source, $"worn_min{suffix}"), row.Worn.Min, row, wrong);
        CompareFigure(at, "worn max", Number(source, $"worn_max{suffix}"), row.Worn.Max, row, wrong);
        CompareFigure(at, "wear amount", Number(expected, "wear_amount_m"), row.WearAmount, row, wrong);
        CompareRule(at, expected, row, wrong);
    }

    private static void CompareFigure(string at, string what, double? expected, double? got, ScheduleRow row, List<string> wrong)
    {
        // A row that asks may leave its figures empty; what it does give must be right.
        if (row.Ask is not null && got is null)
            return;
        if (expected is null && got is null)
            return;
        if (expected is not { } meant || got is not { } read)
        {
            wrong.Add($"{at}: {what} {got?.ToString() ?? "none"}, expected {expected?.ToString() ?? "none"}");
            return;
        }

        Outside.Check($"{at}, {what}", meant, read, Tolerance);
    }

    private static void CompareRule(string at, JsonElement expected, ScheduleRow row, List<string> wrong)
    {
        if (!expected.TryGetProperty("rule", out var rule) || rule.ValueKind != JsonValueKind.Object)
        {
            if (row.Rule is not null)
                wrong.Add($"{at}: a rule, {row.Rule}, where none is printed");
            return;
        }

        if (row.Rule is not { } read)
        {
            wrong.Add($"{at}: no rule");
            return;
        }

        if (Number(rule, "ratio") is { } ratio)
            Outside.Check($"{at}, ratio", ratio, read.Ratio ?? double.NaN, Tolerance);
        if (Number(rule, "add_m") is { } add)
            Outside.Check($"{at}, added", add, read.Add ?? double.NaN, Tolerance);
        var from = rule.GetProperty("measured_from").GetString();
        if (from != read.MeasuredFrom)
            wrong.Add($"{at}: rule counted from {read.MeasuredFrom}, expected {from}");
        if (rule.TryGetProperty("per", out var per) && per.ValueKind == JsonValueKind.String && per.GetString() != read.Per)
            wrong.Add($"{at}: rule per '{read.Per}', expected '{per.GetString()}'");
        if (!row.New.IsEmpty || !row.Worn.IsEmpty)
            wrong.Add($"{at}: a rule was worked out");
    }

    private static double? Number(JsonElement element, string name) =>
        element.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Number ? value.GetDouble() : null;

    private static int? Int(JsonElement element, string name) =>
        element.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Number ? value.GetInt32() : null;
}
