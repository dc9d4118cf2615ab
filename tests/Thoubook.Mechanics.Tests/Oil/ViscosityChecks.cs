namespace Thoubook.Mechanics.Tests.Oil;

/// <summary>The table of checks on viscosity and the other properties of oil.</summary>
internal static class ViscosityChecks
{
    private static readonly IReadOnlyList<ReferenceTable.Row> Rows = ReferenceTable.Read("lubrication/viscosity-checks.csv");

    public static IReadOnlyList<ReferenceTable.Row> Of(string topic, string output) => [.. Rows.Where(row => row["topic"] == topic && row["out"] == output)];

    /// <summary>Checks a value against a row within the row's tolerance, or half of its last printed digit where it states none.</summary>
    public static void Check(ReferenceTable.Row row, double got, double relative = 0)
    {
        var inputs = Enumerable.Range(1, 4).Where(i => row[$"in{i}"].Length > 0).Select(i => $"{row[$"in{i}"]} {row[$"in{i}_value"]}");
        var expected = row.Number("out_value");
        row.Check($"{row["topic"]} {row["out"]} at {string.Join(", ", inputs)} [{row["out_unit"]}]", expected, got, Math.Max(row.Number("tolerance_abs"), Math.Max(1e-9, relative) * Math.Abs(expected)));
    }
}
