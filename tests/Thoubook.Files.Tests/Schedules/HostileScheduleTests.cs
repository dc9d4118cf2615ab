using System.Text;
using CsCheck;
using Thoubook.Files.Schedules;
using Thoubook.Files.Text;
using Thoubook.Record;

namespace Thoubook.Files.Tests.Schedules;

/// <summary>Files that are no schedules, or are damaged: a refusal with its place, or a question; never an exception, never a value.</summary>
public class HostileScheduleTests
{
    private static Gen<string> Pick(params string[] pieces) => Gen.Int[0, pieces.Length - 1].Select(index => pieces[index]);

    private static Problem Refused(byte[] bytes)
    {
        Assert.False(ScheduleReader.Read(bytes, "limits.csv", ScheduleOptions.None).IsOk(out _, out var problems));
        Assert.NotNull(problems[0].At);
        Assert.NotEmpty(problems[0].DoThis);
        return problems[0];
    }

    private static Problem Refused(string text) => Refused(Encoding.UTF8.GetBytes(text));

    [Fact]
    public void NulByte_IsRefusedWhereItStands()
    {
        var problem = Refused("Part,New\nBore,\0");
        Assert.Equal(("not-text", 2, 6), (problem.Code, problem.At!.Line, problem.At.Column));
    }

    [Theory]
    [InlineData(new byte[] { 0x50, 0x4B, 0x03, 0x04, 0 }, "workbook")]
    [InlineData(new byte[] { 0x25, 0x50, 0x44, 0x46, 0x2D }, "PDF")]
    [InlineData(new byte[] { 0x89, 0x50, 0x4E, 0x47, 0x0D }, "picture")]
    public void OtherFormats_AreRefusedByName(byte[] bytes, string name) => Assert.Contains(name, Refused(bytes).Found, StringComparison.Ordinal);

    [Fact]
    public void Latin1_IsRefusedWithTheByteAndWhatToDo()
    {
        var problem = Refused(Encoding.Latin1.GetBytes("Part,New\nBore at 20 °C,2.5 in\n"));
        Assert.Equal(("not-utf8", 2, 12), (problem.Code, problem.At!.Line, problem.At.Column));
        Assert.Contains("UTF-8", problem.DoThis, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void ByteOrderMark_OfUtf8AndUtf16_IsNoPartOfTheText(bool wide)
    {
        var encoding = wide ? Encoding.Unicode : Encoding.UTF8;
        byte[] bytes = [.. encoding.Preamble, .. encoding.GetBytes("Part,New (in),Worn (in)\nBore,2.5010-2.5016,2.5030\n")];
        Assert.Null(Understood.Read(bytes).Rows[1].Ask);
    }

    [Fact]
    public void MoreThanTheLargestFile_IsRefusedUnread() => Assert.Equal("file-too-large", Refused(new byte[TextFile.MostBytes + 1]).Code);

    [Fact]
    public void QuotationMarkNotClosed_IsRefusedWhereItOpens()
    {
        var problem = Refused("Part,New\nBore,\"2.5010\nPin,2.4\nBush,2.6\n");
        Assert.Equal(("quotation-mark", 2), (problem.Code, problem.At!.Line));
    }

    [Fact]
    public void QuotedCellOverSeparators_IsRefused() => Assert.Equal("quotation-mark", Refused("Part,New,Worn\nBore,\",\",2.5\n").Code);

    [Fact]
    public void MillionCommas_IsRefused() => Assert.Equal("too-many-cells", Refused(new string(',', 1_000_000)).Code);

    [Fact]
    public void HugeCell_IsRefused() => Assert.Equal("cell-too-long", Refused($"Part,New\n{new string('x', 1_000_000)},2\n").Code);

    [Fact]
    public void EmptyFile_HasNoRowsAndAsksNothing() => Assert.Empty(Understood.Read("").Rows);

    [Fact]
    public void LineBreaksInCells_EveryLineOfTheFileHasItsRow()
    {
        var rows = Understood.Read("Part,New (in),Worn (in)\r\n\"Main\r\nbearing\r\nbore\",2.5010-2.5016,2.5030\r\n\r\nPin,0.5,\r\n").Rows;
        Assert.Equal([1, 2, 3, 4, 5, 6], rows.Select(row => row.Row));
        Assert.Equal("Main bearing bore", rows[1].Name);
        Assert.Equal(2, rows[2].ContinuationOf);
        Assert.Equal("Pin", rows[5].Name);
    }

    [Fact]
    public void HundredThousandLines_AreReadInSeconds()
    {
        var text = new StringBuilder("Description,Minimum (in),Maximum (in),Worn limit (in)\n");
        for (var line = 0; line < 100_000; line++)
            text.Append("Main bearing bore,2.5010,2.5016,2.5030\n");
        var started = System.Diagnostics.Stopwatch.StartNew();
        Assert.Equal(100_001, Understood.Read(text.ToString()).Rows.Length);
        Assert.True(started.Elapsed < TimeSpan.FromSeconds(60), $"took {started.Elapsed}");
    }

    [Fact]
    public void HeadsOnEveryOtherLine_AreReadInSeconds()
    {
        var text = new StringBuilder();
        for (var page = 0; page < 20_000; page++)
            text.Append("Description,Minimum (in),Maximum (in),Worn limit (in)\nMain bearing bore,2.5010,2.5016,2.5030\n");
        var started = System.Diagnostics.Stopwatch.StartNew();
        var rows = Understood.Read(text.ToString()).Rows;
        Assert.All(rows, row => Assert.Null(row.Ask));
        Assert.True(started.Elapsed < TimeSpan.FromSeconds(60), $"took {started.Elapsed}");
    }

    [Fact]
    public void AnyText_GivesOneRowForEveryLine_OrARefusal_AndNoValueInDoubt()
    {
        var piece = Pick("Part", "New", "Worn", "min", "max", "(in)", "mm", "Bore", "pin", "clearance", "0.0015", "2.5010-2.5016", "2,5", "2,500", "nil", "---", "\"", "\"\"", "(", ")", ".0005T", "do.", "per inch", "over high limit", "%", "±", "=1+1", "½", "Press", "Loose", " ", "-", "1.", "A.", ":");
        Gen.Select(piece.Array[0, 4], Pick(",", ",", ";", "\n", "\n", "\t")).Array[0, 30].Sample(cells =>
        {
            var text = string.Concat(cells.Select(cell => string.Join(' ', cell.Item1) + cell.Item2));
            if (!ScheduleReader.ReadText(text, "limits.csv", ScheduleOptions.None).IsOk(out var reading, out var problems))
            {
                Assert.All(problems, problem => Assert.NotNull(problem.At));
                return;
            }

            Assert.Equal(Enumerable.Range(1, reading.Rows.Length), reading.Rows.Select(row => row.Row));
            foreach (var row in reading.Rows)
            {
                Assert.False(row.New is { Min: { } min, Max: { } max } && min > max, text);
                Assert.False(row.Ask is { Meanings.Count: 0 }, text);
                Assert.All(new[] { row.New.Min, row.New.Max, row.Worn.Min, row.Worn.Max }, value => Assert.True(value is null || double.IsFinite(value.Value)));
            }
        }, iter: 3000);
    }
}
