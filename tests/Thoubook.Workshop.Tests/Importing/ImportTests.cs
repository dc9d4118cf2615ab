using System.Runtime.CompilerServices;
using NodaTime;
using Thoubook.Record;
using Thoubook.Workshop.Importing;

namespace Thoubook.Workshop.Tests.Importing;

public sealed class ImportTests : IDisposable
{
    private static readonly ImportOptions Owner = new("owner");

    private readonly string _folder = Directory.CreateTempSubdirectory("thoubook-").FullName;
    private readonly OpenWorkshop _workshop;

    public ImportTests()
    {
        Assert.True(OpenWorkshop.Open(_folder, Store.WhenMissing.MakeOne, SystemClock.Instance).IsOk(out _workshop, out var problems), string.Join('\n', problems));
    }

    public void Dispose()
    {
        _workshop.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public void TheExample_IsStored_AndAgainChangesNothing()
    {
        Assert.False(Import(Example()).Changed.IsNothing);
        var sequence = _workshop.Sequence();

        Assert.True(Import(Example()).Changed.IsNothing);
        Assert.Equal(sequence, _workshop.Sequence());
    }

    [Fact]
    public void TheExport_TakenIntoAnotherWorkshop_ExportsTheSame()
    {
        Import(Example());
        var export = Ok(_workshop.Export("Sandpiper six"));

        using var other = new ImportTests();
        other.Import(Pasted("export.yaml", export));
        Assert.Equal(export, Ok(other._workshop.Export("Sandpiper six")));
        Assert.True(Import(Pasted("export.yaml", export)).Changed.IsNothing);
    }

    private Imported Import(params IncomingFile[] files) => Ok(_workshop.Import(files, Owner));

    private static IncomingFile Pasted(string name, string text) => IncomingFile.Pasted(name, text);

    private static IncomingFile Example()
    {
        var page = File.ReadAllText(Path.Combine(Here(), "../../../docs/engine-file.md"));
        var start = page.IndexOf("```yaml\n", StringComparison.Ordinal) + 8;
        return Pasted("example.yaml", page[start..page.IndexOf("```", start, StringComparison.Ordinal)]);
    }

    private static T Ok<T>(Outcome<T> outcome)
    {
        Assert.True(outcome.IsOk(out var value, out var problems), string.Join('\n', problems));
        return value;
    }

    private static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
