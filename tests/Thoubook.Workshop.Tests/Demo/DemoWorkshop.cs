using NodaTime;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Workshop.Importing;

namespace Thoubook.Workshop.Tests.Demo;

/// <summary>A workshop into which both demo engines were taken, from the files as they stand in the repository.</summary>
public sealed class DemoWorkshop : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("thoubook-demo-").FullName;

    private readonly OpenWorkshop _workshop;

    public DemoWorkshop()
        : this("sandpiper-six", "wagtail")
    {
    }

    private DemoWorkshop(params string[] folders)
    {
        _workshop = Ok(OpenWorkshop.Open(_folder, Store.WhenMissing.MakeOne, SystemClock.Instance));
        foreach (var folder in folders)
            TakeIn(folder);
    }

    public static string Files { get; } = FindFiles();

    public static DemoWorkshop Empty() => new([]);

    public EngineRecord Engine(string name) => Ok(_workshop.Engine(name));

    public CloseUp ClosingUp(string engine) => Ok(_workshop.ClosingUp(engine));

    public PermissionToRun Permission(string engine) => Ok(_workshop.Permission(engine));

    public string Export(string engine) => Ok(_workshop.Export(engine));

    public Imported TakeIn(string folder) => TakeIn([.. new[] { "engine.yaml", "readings.csv" }.Select(file => IncomingFile.OnDisk(Path.Combine(Files, folder, file)))]);

    public Imported TakeIn(params IncomingFile[] files) => Ok(_workshop.Import(files, new ImportOptions("owner")));

    public void Dispose()
    {
        _workshop.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private static T Ok<T>(Outcome<T> outcome) => outcome.IsOk(out var value, out var problems) ? value : throw new Xunit.Sdk.XunitException(string.Join('\n', problems));

    private static string FindFiles()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "thoubook.slnx")))
                return Path.Combine(at.FullName, "demo");
        }

        throw new DirectoryNotFoundException("The tests run inside the repository.");
    }
}
