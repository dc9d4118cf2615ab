using Thoubook.Files.EngineFiles;
using Thoubook.Record;

namespace Thoubook.Files.Tests.EngineFiles;

public sealed class ExampleTests
{
    private static readonly string Example = TestFiles.Block("docs/engine-file.md", "yaml");

    [Fact]
    public void TheExampleOfTheDocumentation_Imports()
    {
        var record = Read(Example);

        Assert.Equal("Sandpiper six", record.Engine.Name.Text);
        Assert.Equal(["body.depth", "driver.width", "joint.thickness"], record.Fits[0].Gap.Select(t => t.Of.Part.Leaf + "." + t.Of.Local));
        Assert.Equal([1, -1, 1], record.Fits[0].Gap.Select(t => t.Coefficient));
    }

    [Fact]
    public void TheExample_WrittenAndReadAgain_IsTheSameTextAgain()
    {
        var written = EngineFile.Write(Read(Example));

        Assert.Equal(written, EngineFile.Write(Read(written)));
    }

    private static EngineRecord Read(string text)
    {
        var outcome = EngineFile.Read(text, "example.yaml", TestFiles.Terms);
        Assert.True(outcome.IsOk(out var record, out var problems), string.Join('\n', problems));
        return record;
    }
}
