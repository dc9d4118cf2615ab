using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;
using Thoubook.Files.Schedules;

namespace Thoubook.Files.Tests.Schedules;

/// <summary>Schedules spoilt on purpose, one place at a time: what comes out is what was meant, or a question, never another value in silence.</summary>
public partial class SlippedFigureTests
{
    /// <summary>All figures invented.</summary>
    private const string Table = """
        Description,Minimum (in),Maximum (in),Worn limit (in)
        Main bearing bore,2.5010,2.5016,2.5030
        Main journal diameter,2.4990,2.4995,2.4975
        Main bearing clearance,0.0015,0.0026,0.0045
        Crankshaft end float,0.0040,0.0080,0.0120
        Gudgeon pin bush inside diameter,0.8753,0.8756,0.8765
        Gudgeon pin outside diameter,0.8748,0.8750,0.8744
        Piston ring gap,0.0150,0.0200,0.0450
        Timing gear backlash,0.0030,0.0060,0.0100
        Thrust washer thickness,0.1200,0.1220,0.1170
        Cylinder bore,3.1250,3.1260,3.1340
        """;

    [Fact]
    public void DecimalPointMoved_OnAnyFigure_IsAsked()
    {
        var silent = new List<string>();
        foreach (Match figure in Figures().Matches(Table))
        {
            foreach (var moved in new[] { MovedRight(figure.Value), MovedLeft(figure.Value) })
            {
                var spoilt = Table[..figure.Index] + moved + Table[(figure.Index + figure.Length)..];
                var line = Table[..figure.Index].Count(c => c == '\n') + 1;
                var reading = Understood.Read(spoilt);
                if (reading.Rows[line - 1].Ask is null)
                    silent.Add($"{reading.Rows[line - 1].Name}: {figure.Value} as {moved}: {reading.Rows[line - 1].New} {reading.Rows[line - 1].Worn}");
            }
        }

        Assert.True(silent.Count == 0, string.Join('\n', silent));
    }

    [Theory]
    [InlineData("Minimum (in),Maximum (in),Worn limit (in)", "Maximum (in),Minimum (in),Worn limit (in)")]
    [InlineData("Minimum (in),Maximum (in),Worn limit (in)", "Worn limit (in),Minimum (in),Maximum (in)")]
    [InlineData("Minimum (in),Maximum (in),Worn limit (in)", "Minimum (in),Worn limit (in),Maximum (in)")]
    [InlineData("Minimum (in),Maximum (in),Worn limit (in)", "Maximum (in),Worn limit (in),Minimum (in)")]
    [InlineData("Minimum (in),Maximum (in),Worn limit (in)", "Worn limit (in),Maximum (in),Minimum (in)")]
    [InlineData("Minimum (in),Maximum (in),Worn limit (in)", "Minimum,Maximum,Worn limit")]
    [InlineData("Minimum (in),Maximum (in),Worn limit (in)", "A,B,C")]
    [InlineData("Minimum (in),Maximum (in),Worn limit (in)", ",,")]
    [InlineData("Minimum (in),Maximum (in),Worn limit (in)", "Minimum,Maximum,Limits")]
    [InlineData("Minimum (in),Maximum (in),Worn limit (in)", "Limits (in),Limits (in),Limits (in)")]
    [InlineData("Minimum (in),Maximum (in),Worn limit (in)", "in / mm,in / mm,in / mm")]
    public void HeadingsSpoilt_NoRowIsTakenInSilence(string heads, string spoilt)
    {
        var reading = Understood.Read(Table.Replace(heads, spoilt, StringComparison.Ordinal));

        var silent = reading.Rows.Where(row => row.Ask is null && (!row.New.IsEmpty || !row.Worn.IsEmpty)).ToList();
        Assert.True(silent.Count == 0, Understood.Show(reading));
    }

    [Fact]
    public void UnitOfHeadingWrong_IsAsked()
    {
        // Millimetres under a heading that says inches: no row of sizes or clearances can pass.
        const string table = """
            Description,Minimum (in),Maximum (in),Worn limit (in)
            Main bearing clearance,0.038,0.066,0.114
            Crankshaft end float,0.102,0.203,0.305
            Piston ring gap,0.38,0.51,1.14
            Main journal diameter,63.475,63.487,63.437
            Cylinder bore,79.375,79.400,79.604
            """;
        var reading = Understood.Read(table);

        Assert.All(reading.Rows.Where(row => row.Name?.Contains("gap", StringComparison.Ordinal) == true || row.Name?.Contains("bore", StringComparison.Ordinal) == true), row => Assert.NotNull(row.Ask));
    }

    [Fact]
    public void CellsSlidSideways_IsAsked()
    {
        var silent = new List<string>();
        var lines = Table.Split('\n');
        for (var line = 1; line < lines.Length; line++)
        {
            var cells = lines[line].Split(',');
            foreach (var slid in new[] { $"{cells[0]},,{cells[1]},{cells[2]}", $"{cells[0]},{cells[1]},{cells[2]},{cells[2]}x", $"{cells[0]},{cells[1]},,", $"{cells[0]},,,{cells[3]}" })
            {
                var spoilt = (string[])lines.Clone();
                spoilt[line] = slid;
                var row = Understood.Read(string.Join('\n', spoilt)).Rows[line];
                if (row.Ask is null)
                    silent.Add($"{slid}: {row.New} {row.Worn}");
            }
        }

        Assert.True(silent.Count == 0, string.Join('\n', silent));
    }

    private static string MovedRight(string figure)
    {
        var point = figure.IndexOf('.');
        return new StringBuilder(figure).Remove(point, 1).Insert(point + 1, '.').ToString();
    }

    private static string MovedLeft(string figure)
    {
        var point = figure.IndexOf('.');
        return $"0.{figure[..point]}{figure[(point + 1)..]}";
    }

    [GeneratedRegex(@"\d\.\d+", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Figures();
}
