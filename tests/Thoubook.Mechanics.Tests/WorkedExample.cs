namespace Thoubook.Mechanics.Tests;

/// <summary>One worked example of a table of examples: its inputs, and its answers to check with.</summary>
internal sealed class WorkedExample(string id, string file = "uncertainty.csv")
{
    private readonly List<ReferenceTable.Row> _rows = [.. ReferenceTable.Read(file).Where(row => row["case"] == id)];

    public double Input(string quantity) => Find("input", quantity).Number("printed");

    public double[] Inputs(string quantity) => Find("input", quantity).Numbers("printed");

    /// <summary>Checks against the value recomputed from the source's inputs at full precision (seven digits); what the source prints is rounded from it.</summary>
    public void Check(string quantity, double got, double relative = 1e-6, double absolute = 0)
    {
        var row = Find("answer", quantity);
        var expected = row.Number("recomputed");
        row.Check($"{id} {quantity}", expected, got, Math.Max(absolute, Math.Abs(expected) * relative));
    }

    private ReferenceTable.Row Find(string role, string quantity) => _rows.Single(row => row["role"] == role && row["quantity"] == quantity);
}
