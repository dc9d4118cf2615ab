using Thoubook.Files.EngineFiles;
using Thoubook.Files.Readings;
using Thoubook.Record;

namespace Thoubook.Files.Tests.Readings;

public sealed class ReadingsFileTests
{
    private static readonly EngineRecord Engine = Ok(EngineFile.Read(
        """
        engine: { name: Sandpiper six, purpose: stand-run }
        gauges: { M-07: {} }
        parts: { pump/body: {}, pump/driver: {} }
        pieces: { P-31: { for: pump/body } }
        dimensions:
          pump/body.depth: { new: [1.2530 in, 1.2540 in], places: [A1, A2] }
          pump/driver.width: { new: [31.70 mm, 31.75 mm] }
          pump/body.angle: { kind: angle, new: [10 °, 12 °] }
        fits: { pump.end-float: { gap: body.depth - driver.width } }
        choices: [{ piece: P-31, part: pump/body }]
        """,
        "engine.yaml",
        TestFiles.Terms));

    [Fact]
    public void TheExampleOfTheDocumentation_IsRead()
    {
        var engine = Ok(EngineFile.Read(TestFiles.Block("docs/engine-file.md", "yaml"), "engine.yaml", TestFiles.Terms));

        var reading = Assert.Single(Ok(ReadingsFile.Read(TestFiles.Block("docs/engine-file.md", "csv"), "readings.csv", engine, TestFiles.Terms)).Readings);
        Assert.Equal(("P-31", "A1", "M-07", "owner"), (reading.Piece.Text, reading.Place.Text, reading.Gauge!.Value.Text, reading.By));
        Assert.Equal(1.2535 * 0.0254, reading.Value.Si, 1e-15);
        Assert.Equal(292.15, reading.Temperature!.Si, 1e-9);
    }

    [Theory]
    [InlineData(',')]
    [InlineData(';')]
    [InlineData('\t')]
    public void CellsAreParted_ByWhateverPartsTheHeads(char mark)
    {
        var text = "of,value [in],place,note\n\"pump/body.depth\",1.2535,A1,\"said \"\"tight\"\"\"\n\n".Replace(',', mark);
        var reading = Assert.Single(Ok(Read(text)).Readings);
        Assert.Equal("said \"tight\"", reading.Note);
        Assert.Equal("P-31", reading.Piece.Text);
    }

    [Fact]
    public void ANoteOfSeveralLines_MovesTheLinesBelow()
    {
        var problem = Assert.Single(Problems("of,value,note\npump/body.depth,1.2535,\"one\ntwo\nthree\"\npump/body.depth,1.2.535,\n"));
        Assert.Equal((5, 17), (problem.At!.Line, problem.At.Column));
    }

    [Fact]
    public void AReadingWithoutAPiece_MakesOneForThePart_Once()
    {
        var read = Ok(Read("of,value [mm]\npump/driver.width,31.72\npump/driver.width,31.73\npump/body.depth,31.84\n"));

        Assert.Equal("pump/driver", Assert.Single(read.Pieces).Tag.Text);
        Assert.Equal("pump/driver", Assert.Single(read.Choices).Part.Path);
        Assert.Equal(["pump/driver", "pump/driver", "P-31"], read.Readings.Select(r => r.Piece.Text));
    }

    [Fact]
    public void TheSameLine_HasTheSameIdentifierInATableAndInAnEngineFile()
    {
        const string Line = "\nreadings: [{ of: pump/body.depth, place: A1, value: 1.2535, gauge: M-07 }]\n";
        var inFile = Ok(EngineFile.Read("engine: { name: Sandpiper six, purpose: stand-run }" + Line, "engine.yaml", TestFiles.Terms with { Known = _ => Engine }));
        var inTable = Ok(Read("of,place,value,gauge\npump/body.depth,A1,1.2535,M-07\n"));

        Assert.Equal(Assert.Single(inFile.Readings).Id, Assert.Single(inTable.Readings).Id);
    }

    [Theory]
    [InlineData("of,value\npump/body.depth,=1.2535\n", "table-formula", 2, 17)]
    [InlineData("of,value,note\npump/body.depth,1.2535,@sum\n", "table-formula", 2, 24)]
    [InlineData("of,value,note\npump/body.depth,1.2535,+cmd\n", "table-formula", 2, 24)]
    [InlineData("of,value,note\npump/body.depth,1.2535,-(1)\n", "table-formula", 2, 24)]
    [InlineData("of,vlaue\npump/body.depth,1.2535\n", "table-head-unknown", 1, 4)]
    [InlineData("of,value,value [in]\n", "table-head-twice", 1, 10)]
    [InlineData("of,piece\n", "table-head-missing", 1, 1)]
    [InlineData("of,value [furlong]\n", "table-head-unit", 1, 4)]
    [InlineData("of,value [°C]\npump/body.depth,1.2535\n", "table-head-kind", 2, 17)]
    [InlineData("of,value,temperature [in]\n", "table-head-unit", 1, 10)]
    [InlineData("of,value\npump/body.depth,1,2535\n", "table-cells", 2, 19)]
    [InlineData("of,value\npump/body.depth,1253.5 in\n", "slip-as-typed@2", 2, 17)]
    [InlineData("of,value\npump/body.depth,60 psi\n", "unit-wrong-kind", 2, 17)]
    [InlineData("of,value,place\npump/body.depth,1.2535,A9\n", "place-new@2", 2, 1)]
    [InlineData("of,value\npump/body.width,1.2535\n", "file-dimension-missing", 2, 1)]
    [InlineData("of,value\npump.end-float,1.5 thou\n", "file-fit-read", 2, 1)]
    [InlineData("of,value,piece\npump/body.depth,1.2535,P-99\n", "file-piece-missing", 2, 24)]
    [InlineData("of,value\npump/body.depth,\"1.2535\n", "table-quote-open", 2, 17)]
    [InlineData("of,value\npump/body.depth,\"1.2535\" in\n", "table-quote", 2, 25)]
    [InlineData("of,value,at\npump/body.depth,1.2535,yesterday\n", "file-time", 2, 24)]
    [InlineData("", "table-empty", 1, 1)]
    public void WhatIsWrong_IsToldWithItsLineAndColumn(string text, string code, int line, int column)
    {
        var problem = Problems(text)[0];
        Assert.Equal((code, line, column), (problem.Code, problem.At!.Line, problem.At.Column));
    }

    [Fact]
    public void AllProblemsOfATable_AreToldAtOnce() =>
        Assert.Equal([2, 3, 5], Problems("of,value\npump/body.depth,1.25.3\npump/bodi.depth,1.2535\npump/body.depth,1.2535\npump/body.depth,\n").Select(p => p.At!.Line));

    [Fact]
    public void WhatIsATableOfReadings_IsSeenByItsHead()
    {
        Assert.True(ReadingsFile.IsHead("of;place;value [mm]\n"));
        Assert.False(ReadingsFile.IsHead("Description,New,Worn\n"));
        Assert.False(ReadingsFile.IsHead(""));
    }

    private static Outcome<EngineRecord> Read(string text) => ReadingsFile.Read(text, "readings.csv", Engine, TestFiles.Terms);

    private static IReadOnlyList<Problem> Problems(string text)
    {
        Assert.False(Read(text).IsOk(out _, out var problems));
        return problems;
    }

    private static EngineRecord Ok(Outcome<EngineRecord> outcome)
    {
        Assert.True(outcome.IsOk(out var record, out var problems), string.Join('\n', problems));
        return record;
    }
}
