using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Store;
using Thoubook.Workshop;
using Thoubook.Workshop.Importing;

namespace Thoubook.Cli.Verbs;

internal static class DemoVerb
{
    private static readonly Option NoServe = new("no-serve", null, "only makes it");

    public static readonly Verb Demo = new("demo", "Makes a workshop with two invented engines and opens it in the browser.", Run)
    {
        Options = [NoServe, ServeVerb.Port],
        More = "It is made once, in your data directory unless --workshop says another folder; what is there already is opened and never overwritten.",
        Examples =
        [
            new("thoubook demo", $"then look at http://127.0.0.1:{ServeVerb.UsualPort}."),
            new("thoubook demo --no-serve --workshop ~/demo", "only makes it, to be asked by the command."),
        ],
    };

    /// <summary>The engine files shipped beside the program: a folder for each engine.</summary>
    private static string Shipped => Path.Combine(AppContext.BaseDirectory, "demo");

    private static ExitStatus Run(Request request, Terminal terminal)
    {
        var folder = Workshops.Folder(request, terminal, "demo");
        if (!ServeVerb.ReadPort(request).Then(_ => Prepare(folder, terminal)).IsOk(out var what, out var problems))
            return terminal.Refuse(request, problems);
        terminal.Error.WriteLine(what);
        terminal.Error.WriteLine($"To ask it by the command: thoubook engines --workshop \"{folder}\"");
        return request.Has(NoServe) ? ExitStatus.Good : ServeVerb.Run(request, terminal, folder);
    }

    /// <summary>Makes the workshop beside its place and moves it there whole, so that a demo broken off half-way leaves none.</summary>
    private static Outcome<string> Prepare(string folder, Terminal terminal)
    {
        if (File.Exists(Path.Combine(folder, WorkshopStore.DatabaseName)))
            return $"The workshop in {folder} is there already and is opened as it is.";
        if (File.Exists(folder) || (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any()))
            return new Problem("folder-taken", "--workshop", folder, "The demo is made in a folder that is empty or not there yet.", "Name another folder.");

        var making = $"{folder.TrimEnd(Path.DirectorySeparatorChar)}.making-{Environment.ProcessId}";
        try
        {
            var made = Make(making, terminal);
            if (made is Outcome<string>.Ok)
            {
                if (Directory.Exists(folder))
                    Directory.Delete(folder);
                Directory.Move(making, folder);
            }

            return made.Then<string>(engines => $"Made in {folder}: {engines}. Invented for demonstration.");
        }
        finally
        {
            if (Directory.Exists(making))
                Directory.Delete(making, recursive: true);
        }
    }

    private static Outcome<string> Make(string folder, Terminal terminal)
    {
        if (!Directory.Exists(Shipped))
            return new Problem("demo-missing", "", Shipped, "The demo's engine files lie in the folder demo beside the program.", "Install the program again.");
        if (!OpenWorkshop.Open(folder, WhenMissing.MakeOne, terminal.Clock).IsOk(out var workshop, out var problems))
            return new Outcome<string>.Refused(problems);
        using (workshop)
        {
            var engines = new List<string>();
            foreach (var engine in Directory.EnumerateDirectories(Shipped).Order(StringComparer.Ordinal))
            {
                terminal.Progress($"Taking in {Path.GetFileName(engine)} …");
                var files = Directory.EnumerateFiles(engine).Where(f => Path.GetExtension(f) is ".yaml" or ".csv").Order(StringComparer.Ordinal).Select(IncomingFile.OnDisk);
                if (!workshop.Import([.. files], new ImportOptions("owner")).IsOk(out var imported, out problems))
                    return new Outcome<string>.Refused(problems);
                engines.Add(imported.Reading.Record.Engine.Name.Text);
            }

            return string.Join(", ", engines);
        }
    }
}
